import pytest

from gageline.part import HERE, Placement
from gageline.units import ZERO
from pieces import at

A, B, C = at("1in"), at("2in"), at("3in")


def test_here_moves_nothing() -> None:
    assert HERE.point((A, B, C)) == (A, B, C)
    assert HERE.ez == (0, 0, 1)


def test_a_part_stood_up_and_moved() -> None:
    up = Placement((at("10in"), ZERO, ZERO), (0, 1, 0), (-1, 0, 0))
    assert up.ez == (0, 0, 1)
    assert up.point((A, B, C)) == (at("10in") - B, A, C)


def test_a_part_turned_to_face_away() -> None:
    away = Placement((ZERO, ZERO, ZERO), (-1, 0, 0), (0, 1, 0))
    assert away.ez == (0, 0, -1)
    assert away.point((A, B, C)) == (-A, B, -C)


def test_a_direction_is_turned_and_not_moved() -> None:
    up = Placement((at("10in"), ZERO, ZERO), (0, 1, 0), (-1, 0, 0))
    assert up.turn((1, 0, 0)) == (0, 1, 0)


def test_a_skewed_placing_keeps_distances() -> None:
    skew = Placement((ZERO, ZERO, ZERO), (0.6, 0.8, 0), (-0.8, 0.6, 0))
    x, y, z = skew.point((at("5in"), ZERO, ZERO))
    assert (x.inches, y.inches, z.inches) == pytest.approx((3, 4, 0), abs=1e-5)


def test_one_placing_inside_another() -> None:
    inner = Placement((A, ZERO, ZERO), (0, 1, 0), (-1, 0, 0))
    outer = Placement((ZERO, at("7in"), ZERO), (0, 0, 1), (0, 1, 0))
    point = (A, B, C)
    assert inner.then(outer).point(point) == outer.point(inner.point(point))
