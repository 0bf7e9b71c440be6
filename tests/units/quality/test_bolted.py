"""A joint as drawn, with what goes wrong in each way of joining."""

from math import hypot, sqrt

import pytest

from gageline.quality.bolted import Bolted, Hold, Joining
from gageline.quality.joint import BoltPlace
from gageline.quality.spread import ASSUMED

ROUND = (BoltPlace(0, 0, 1 / 16), BoltPlace(0, 3, 1 / 16))
SLOTTED = (BoltPlace(0, 0, 1 / 16, 3 / 32), BoltPlace(0, 3, 1 / 16, 3 / 32))
HOLD = Hold(free=True, web_off=None, permitted=3 / 16)


@pytest.mark.parametrize(
    ("way", "across", "up", "turn", "field"),
    [
        (Joining.SHOP, sqrt(2) * ASSUMED.tape, sqrt(2) * ASSUMED.gage, sqrt(2) * ASSUMED.square, False),
        (Joining.PART, sqrt(2) * ASSUMED.tape, sqrt(2) * ASSUMED.gage, sqrt(2) * ASSUMED.square, True),
        (
            Joining.FITTING, hypot(ASSUMED.tape, ASSUMED.setting), hypot(ASSUMED.gage, ASSUMED.setting),
            sqrt(2) * ASSUMED.square, True,
        ),
        (Joining.SUPPORT, ASSUMED.setting, ASSUMED.setting, ASSUMED.square, True),
    ],
)  # fmt: skip
def test_what_goes_wrong_follows_from_the_way_of_joining(
    way: Joining, across: float, up: float, turn: float, field: bool
) -> None:
    joint = Bolted("j", way, ROUND, SLOTTED).joint(ASSUMED, HOLD)
    (lot,) = joint.lots
    assert (lot.across, lot.up, joint.turn) == pytest.approx((across, up, turn))
    assert joint.hole == pytest.approx(sqrt(2) * ASSUMED.hole)
    assert (joint.bolts, joint.field) == (ROUND, field)


def test_slots_of_the_supports_take_the_place_of_round_holes() -> None:
    assert Bolted("j", Joining.SUPPORT, ROUND, SLOTTED).joint(ASSUMED, HOLD, slotted=True).bolts == SLOTTED


def test_only_a_support_feels_the_web_off_centre() -> None:
    support, part = (
        Bolted("j", way, ROUND, ROUND).joint(ASSUMED, HOLD) for way in (Joining.SUPPORT, Joining.PART)
    )
    assert (support.mill, part.mill) == (3 / 16, 0.0)
    read = Bolted("j", Joining.SUPPORT, ROUND, ROUND).joint(
        ASSUMED, Hold(free=False, web_off=0.1, permitted=0.2)
    )
    assert (read.mill, read.free, read.lots[0].off_across) == (0.0, False, 0.1)


def test_lots_far_apart_are_taped_and_squared_each_by_itself() -> None:
    far = (ROUND[0], BoltPlace(60, 0, 1 / 16, lot=1))
    joint = Bolted("j", Joining.PART, far, far).joint(ASSUMED, HOLD)
    assert joint.turn == 0
    assert [(lot.across, lot.turn) for lot in joint.lots] == [
        pytest.approx((sqrt(2) * ASSUMED.tape, sqrt(2) * ASSUMED.square))
    ] * 2
