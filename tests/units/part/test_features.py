from dataclasses import replace
from fractions import Fraction

from gageline.part import SQUARE_CUT, EndCut, Face, Opening
from gageline.units import ZERO, parse_slope
from pieces import at, hole


def test_a_square_cut() -> None:
    assert SQUARE_CUT.square
    assert not EndCut(bevel=parse_slope("3 in 12")).square
    assert not EndCut(mitre=-parse_slope("3 in 12")).square


def test_a_slot_is_longer_than_wide() -> None:
    assert hole("2", "3", "13/16", "1").is_slot
    assert not hole("2", "3").is_slot


def test_a_hole_moved() -> None:
    assert hole("2", "3").moved(at("1/2")) == hole("2 1/2", "3")
    assert hole("2", "3").moved(-at("1/2"), at("1")) == hole("1 1/2", "4")


def test_round_openings() -> None:
    four, two = at("4in"), at("2in")
    assert Opening(Face.NEAR, four, four, four, four, two).is_round
    assert not Opening(Face.NEAR, four, four, four, four, at("1in")).is_round
    assert not Opening(Face.NEAR, four, four, four, two, at("1in")).is_round
    assert not Opening(Face.NEAR, four, four, four, four, ZERO).is_round


def test_one_hole_is_written_in_one_way() -> None:
    """A round hole has no turn, and a slot turned half round is the same slot."""
    round_hole = hole("2", "3")
    slot = replace(round_hole, length=round_hole.width * 2)
    assert replace(round_hole, angle=Fraction(90)) == round_hole
    assert replace(slot, angle=Fraction(-90)) == replace(slot, angle=Fraction(90))
    assert replace(slot, angle=Fraction(180)) == slot
    assert replace(slot, angle=Fraction(-45)).angle == -45
