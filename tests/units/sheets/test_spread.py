import pytest

from gageline.part import Clip, End, Face
from gageline.sheets.spread import spread_out
from pieces import at, drilled, hole, piece

ANGLE = piece(
    "L4X3-1/2X5/16",
    '8 1/2"',
    "a1",
    groups=(
        drilled(Face.LEG_A, hole('1 1/4"', '2 1/2"')),
        drilled(Face.LEG_B, hole('7 1/4"', '2"', length='1"', angle=90)),
    ),
)


def test_an_angle_opens_at_its_heel() -> None:
    flat = spread_out(ANGLE)
    assert flat.size == pytest.approx((8.5 * 25.4, 7.5 * 25.4))
    ((start, stop),) = flat.folds
    assert start == pytest.approx((0.0, 4 * 25.4))
    assert stop == pytest.approx((8.5 * 25.4, 4 * 25.4))
    assert [one.at for one in flat.holes] == [
        pytest.approx((1.25 * 25.4, 1.5 * 25.4)),  # 2 1/2 above the heel
        pytest.approx((7.25 * 25.4, 6 * 25.4)),  # 2 below it
    ]
    assert [name for name, _ in flat.starts] == [Face.LEG_A, Face.LEG_B]


def test_turned_the_left_end_is_at_the_top_and_leg_a_at_the_right() -> None:
    flat = spread_out(ANGLE, turned=True)
    assert flat.size == pytest.approx((7.5 * 25.4, 8.5 * 25.4))
    assert flat.holes[0].at == pytest.approx((6 * 25.4, 1.25 * 25.4))


def test_a_slot_keeps_its_length_and_its_way() -> None:
    slot = spread_out(ANGLE).holes[1]
    assert slot.half == pytest.approx((0.0, 3 / 32 * 25.4))
    ys = [y for _, y in slot.rim()]
    assert max(ys) - min(ys) == pytest.approx(25.4)
    assert slot.reach == pytest.approx(12.7)


def test_a_plate_shows_its_clipped_corner() -> None:
    plate = piece("PL3/8X10", '13 1/2"', "g1", clips=(Clip(End.RIGHT, Face.TOP, at('4"'), at('3"')),))
    flat = spread_out(plate)
    assert flat.steel.area == pytest.approx((13.5 * 10 - 6) * 25.4**2)
    assert any(point == pytest.approx((13.5 * 25.4, 3 * 25.4)) for point in flat.outlines[0])
