from __future__ import annotations

from gageline.detail.carrier import Carrier
from gageline.job import HoleMaker, HoleSize, default_practice
from gageline.part import HERE, Face
from gageline.units import System, parse_length
from pieces import at, piece


def carrier() -> Carrier:
    return Carrier("B1", piece("W16X26", "10'-0"), HERE)


def maker() -> HoleMaker:
    return HoleMaker.of(HoleSize(), default_practice(System.FT_IN))


def test_a_hole_that_is_there_is_not_drilled_again() -> None:
    one = carrier()
    one.drill("near, for a beam", Face.NEAR, ((10.0, 5.0, 0.125), (10.0, 8.0, 0.125)), maker(), at("1/64"))
    one.drill("near, for a beam", Face.NEAR, ((10.0, 5.0, 0.125), (10.0, 11.0, 0.125)), maker(), at("1/64"))
    assert [len(group.holes) for group in one.groups] == [2, 1]
    assert [group.name for group in one.groups] == ["near, for a beam", "near, for a beam, 2"]


def test_holes_in_a_flange_are_placed_across_it() -> None:
    one = carrier()
    one.drill("bottom", Face.BOTTOM, ((10.0, 0.0, 1.75),), maker(), at("1/64"))
    assert one.groups[0].holes[0].y == parse_length("1 3/4")


def test_a_name_not_taken_is_kept() -> None:
    assert carrier().free_fitting("near plate") == "near plate"


def test_groups_stand_in_the_order_of_the_part() -> None:
    one = carrier()
    one.drill("second", Face.NEAR, ((50.0, 5.0, 0.0),), maker(), at("1/64"))
    one.drill("first", Face.NEAR, ((10.0, 5.0, 0.0),), maker(), at("1/64"))
    assert [group.name for group in one.assembly("none").main.groups] == ["first", "second"]


def test_spacings_that_roundings_left_beside_a_division_are_put_on_it() -> None:
    one = carrier()
    tick = 1 / 162_560
    points = ((10.0, 5.0, 0.0), (15.375 - tick, 5.0 + 2 * tick, 0.0), (20.0, 5.0 + 20 * tick, 0.0))
    one.drill("for a beam", Face.NEAR, points, maker(), at("1/64"))
    first, second, third = one.groups[0].holes
    assert (second.x - first.x, second.y - first.y) == (at("5 3/8"), at("0"))
    assert (third.y - first.y).ticks == 20  # a spacing of its own
