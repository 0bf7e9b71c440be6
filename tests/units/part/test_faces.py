import pytest

from gageline.part import (
    End,
    Face,
    Side,
    extent_y,
    extent_z,
    face_point,
    face_range,
    face_thickness,
    faces_of,
    normal,
)
from gageline.steel import find
from gageline.units import ZERO
from pieces import ONE_OF_EACH, at

W, C, WT, HSS, TUBE, ANGLE, PLATE = (find(name) for name in ONE_OF_EACH)


def test_faces_of_each_profile() -> None:
    walls = (Face.TOP, Face.NEAR, Face.BOTTOM, Face.FAR)
    assert faces_of(W) == faces_of(C) == faces_of(HSS) == faces_of(TUBE) == walls
    assert faces_of(WT) == (Face.TOP, Face.NEAR, Face.FAR)
    assert faces_of(ANGLE) == (Face.LEG_A, Face.LEG_B)
    assert faces_of(PLATE) == (Face.FACE,)


def test_the_other_end_and_side() -> None:
    assert (End.LEFT.other, End.RIGHT.other) == (End.RIGHT, End.LEFT)
    assert (Side.NEAR.other, Side.FAR.other) == (Side.FAR, Side.NEAR)


def test_extents() -> None:
    assert extent_y(W) == (ZERO, at("15.7in"))
    assert extent_z(W) == (-at("2.75in"), at("2.75in"))
    assert extent_z(C) == (-at("2.26in"), ZERO)
    assert extent_y(ANGLE) == (ZERO, at("6in"))
    assert extent_z(ANGLE) == (-at("4in"), ZERO)
    assert extent_y(PLATE) == (ZERO, at("8in"))
    assert extent_z(PLATE) == (-at("1/2"), ZERO)


def test_y_of_a_flange_is_measured_from_the_web_and_of_a_leg_from_the_heel() -> None:
    assert face_range(W, Face.TOP) == extent_z(W)
    assert face_range(W, Face.NEAR) == extent_y(W)
    assert face_range(ANGLE, Face.LEG_B) == (ZERO, at("4in"))
    assert face_range(ANGLE, Face.LEG_A) == (ZERO, at("6in"))


def test_thickness_under_a_face() -> None:
    assert face_thickness(W, Face.NEAR) == at("0.25in")
    assert face_thickness(W, Face.TOP) == at("0.345in")
    assert face_thickness(ANGLE, Face.LEG_B) == at("1/2")
    assert face_thickness(PLATE, Face.FACE) == at("1/2")


@pytest.mark.parametrize("stock", [W, C, WT, HSS, TUBE, ANGLE, PLATE], ids=lambda s: s.designation)
def test_a_point_on_a_face_lies_on_the_surface_that_looks_along_its_normal(stock) -> None:  # type: ignore[no-untyped-def]
    for face in faces_of(stock):
        low, high = face_range(stock, face)
        x, y, z = face_point(stock, face, at("3in"), (low + high) / 2)
        assert x == at("3in")
        assert extent_y(stock)[0] <= y <= extent_y(stock)[1]
        assert extent_z(stock)[0] <= z <= extent_z(stock)[1]
        _, up, out = normal(face)
        assert abs(up) + abs(out) == 1
        if up:
            assert y == extent_y(stock)[up > 0]


def test_points_on_webs_and_walls() -> None:
    x, y = at("1in"), at("2in")
    assert face_point(W, Face.NEAR, x, y) == (x, y, at("1/8"))
    assert face_point(W, Face.FAR, x, y) == (x, y, -at("1/8"))
    assert face_point(C, Face.NEAR, x, y) == (x, y, ZERO)
    assert face_point(C, Face.FAR, x, y) == (x, y, -at("0.22in"))
    assert face_point(HSS, Face.FAR, x, y) == (x, y, -at("3in"))
    assert face_point(ANGLE, Face.LEG_A, x, y) == (x, y, ZERO)
    assert face_point(ANGLE, Face.LEG_B, x, y) == (x, ZERO, -y)
    assert face_point(W, Face.TOP, x, -y) == (x, at("15.7in"), -y)
    assert face_point(PLATE, Face.FACE, x, y) == (x, y, ZERO)
