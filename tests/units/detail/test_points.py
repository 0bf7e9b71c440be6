from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail.carrier import Carrier
from gageline.detail.points import field_points, maker_of
from gageline.detail.shop import Shop
from gageline.job import default_practice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.part import End
from gageline.units import System, parse_length


def test_the_holes_of_outstanding_legs_lie_on_the_web_they_bolt_to() -> None:
    beam = detailed(bay()).member("B1")
    carrier = Carrier("B1", beam.assembly.main, beam.placement)
    points = field_points(carrier, beam.assembly.fittings[0])
    assert len(points) == 3
    # play of 1/16 off the girder's web, half of 0.400 off its line; 2 1/2 + 3/16 aside
    assert {round(point[1], 4) for point in points} == {0.2625}
    assert points[0][0] == pytest.approx(120 + 2.6875, abs=1e-4)


def test_holes_are_for_the_bolt_of_the_connection() -> None:
    joint = detailed(bay(ends={"bolt": "7/8"})).joints["B1", End.LEFT]
    shop = Shop(
        default_practice(System.FT_IN), frame_practice(FramePracticeEntry(), System.FT_IN), System.FT_IN
    )
    assert maker_of(joint, shop).width == parse_length("15/16")
