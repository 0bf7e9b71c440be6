from __future__ import annotations

import math

import pytest

from assembling import bay, detailed, overlaps, worst_mate
from gageline.detail.rows import Ladder
from gageline.detail.shop import Shop
from gageline.detail.stagger import Legs, legs_of, staggered
from gageline.detail.wrench import wrench_of
from gageline.job import default_practice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.part import End
from gageline.steel import bolt
from gageline.units import System, parse_length

SHOP = Shop(default_practice(System.FT_IN), frame_practice(FramePracticeEntry(), System.FT_IN), System.FT_IN)
SIZE = bolt("3/4")
# socket 2 1/4, nut 47/64, flats 1 1/4, washer 5/32, shank 1 3/8 out


def beside(off: float) -> Legs:
    wrench = wrench_of(SIZE)
    assert wrench is not None
    return Legs(SIZE, wrench, off)


def ladder(rows: int = 3, room: tuple[float, float] = (-20, 5)) -> Ladder:
    return Ladder(rows, 0.0, parse_length("3"), parse_length("1 1/4"), room)


def test_the_line_of_bolts_and_the_face_of_the_web_leg() -> None:
    # spread 5 1/2, web 0.400, leg 5/16: 2.75 - 0.2 - 0.3125
    legs = legs_of(SIZE, parse_length("5 1/2"), parse_length("0.4"), parse_length("5/16"))
    assert legs is not None
    assert legs.off == pytest.approx(2.2375)
    assert legs.clear == pytest.approx(2.2375 - 47 / 64 - 0.25)
    assert legs.wanted == 1.125


@pytest.mark.parametrize("off", [1.25, 1.5, 1.875, 2.0, 2.25])
def test_the_stagger_clears_nut_and_shank(off: float) -> None:
    corners = 1.25 * 2 / math.sqrt(3) / 2
    nut = off - 47 / 64 - 5 / 32
    past_nut = math.sqrt(1.125**2 - nut**2) + corners + 0.125 if nut < 1.125 else 0.0
    shank = max(0.0, off - 1.375)
    past_shank = math.sqrt(1.125**2 - shank**2) + 0.375 + 0.125
    assert beside(off).stagger == pytest.approx(max(past_nut, past_shank))


def test_less_room_never_wants_less_stagger() -> None:
    wanted = [beside(off / 16).stagger for off in range(20, 48)]
    assert wanted == sorted(wanted, reverse=True)
    assert wanted[-1] == 0.0


def test_rows_are_staggered_only_where_it_is_wanted_and_helps() -> None:
    assert staggered(ladder(), beside(2.25), "start", SHOP) == (ladder(), None)
    assert staggered(ladder(), beside(1.4), "start", SHOP) == (ladder(), None)
    lower, why = staggered(ladder(), beside(2.0), "start", SHOP)
    assert why is not None
    assert (lower.first, lower.first_in_web) == (-1.5, 0.0)
    assert lower.length == parse_length("10")
    assert why.decision == 'rows of the outstanding leg 1 1/2" lower, material 10" long'


def test_no_stagger_past_the_room() -> None:
    tight = ladder(room=(-7.25, 1.25))
    assert staggered(tight, beside(2.0), "start", SHOP) == (tight, None)


def test_a_thick_angle_is_staggered_and_still_meets_its_girder() -> None:
    result = detailed(bay(ends={"angle": "L4x3-1/2x1/2"}))
    found = result.joints["B1", End.LEFT].ladder
    assert found is not None
    assert found.stagger == parse_length("1 1/2")
    assert not [one for one in result.findings if one.code == "bolt-clearance"]
    assert worst_mate(result, "B1") <= 1e-6
    assert not overlaps(result)
    (angle, *_) = result.member("B1").assembly.fittings
    web, out = (sorted(hole.x.inches for hole in group.holes) for group in angle.part.groups)
    assert [b - a for a, b in zip(web, out, strict=True)] == pytest.approx([1.5] * 3)
