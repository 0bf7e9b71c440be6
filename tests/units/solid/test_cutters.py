import math

import numpy as np
import pytest
from shapely import Polygon

from gageline.errors import ValueProblem
from gageline.part import Clip, Cope, End, Face, Opening
from gageline.solid.cutters import CHORDS, cutters, hole_points
from pieces import at, drilled, hole, piece


@pytest.mark.parametrize(("width", "length"), [(0.8125, 0.8125), (0.8125, 1.0), (1.0, 2.5)])
@pytest.mark.parametrize("angle", [0, 30, 90])
def test_a_holes_polygon_has_its_own_area(width: float, length: float, angle: float) -> None:
    points = hole_points(width, length, angle)
    assert points.shape == (CHORDS + 2, 2)
    assert Polygon(points).area == pytest.approx(math.pi / 4 * width**2 + width * (length - width))
    assert points.mean(axis=0) == pytest.approx((0, 0), abs=1e-12)


def test_a_slot_lies_along_its_angle() -> None:
    points = hole_points(1, 3, 90)
    assert np.ptp(points[:, 1]) == pytest.approx(3, abs=0.02)
    assert np.ptp(points[:, 0]) == pytest.approx(1, abs=0.02)
    leaning = hole_points(1, 3, 30)
    far = leaning[np.argmax(np.hypot(*leaning.T))]
    assert abs(math.degrees(math.atan2(far[1], far[0])) % 180 - 30) < 8


def test_one_body_for_every_cut() -> None:
    plate = piece(
        "PL1/2X8",
        "1'-0",
        copes=(Cope(End.LEFT, Face.TOP, at("2in"), at("1in"), at("1/2")),),
        clips=(Clip(End.RIGHT, Face.BOTTOM, at("1in"), at("1in")),),
        openings=(Opening(Face.FACE, at("6in"), at("4in"), at("2in"), at("2in"), at("1in")),),
        groups=(drilled(Face.FACE, hole("3", "2"), hole("3", "5"), name="holes"),),
    )
    assert len(cutters(plate)) == 5
    assert cutters(piece()) == []


def test_clips_are_for_plates() -> None:
    assert cutters(piece("W16X26", clips=(Clip(End.LEFT, Face.TOP, at("1in"), at("1in")),))) == []


def test_a_face_that_the_section_does_not_have() -> None:
    part = piece("W16X26", groups=(drilled(Face.LEG_A, hole("3", "2")),))
    with pytest.raises(ValueProblem, match="part B1: W16X26 has no face leg_a: use one of top, near"):
        cutters(part)
