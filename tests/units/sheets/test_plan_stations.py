"""Stations of members: the side that they stand on, and the ends of skewed ones."""

import pytest

from gageline.sheets.labels import Side
from gageline.sheets.notation import Scribe
from gageline.sheets.plan_members import FREE, PlanBeam
from gageline.sheets.plan_regions import Region
from gageline.sheets.plan_stations import edges_of, is_skewed, skewed_ends
from gageline.steel import Section, find
from gageline.units import Length, System

FEET = Scribe(System.FT_IN, Length.from_inches(1 / 16))
METRIC = Scribe(System.MM, Length.from_mm(1))

GRID = ({"1": 0.0, "2": 240.0}, {"A": 0.0, "B": 200.0})
REGION = Region(-6, -6, 246, 206)
W16 = find("W16x26")


def beam(
    one: tuple[float, float],
    two: tuple[float, float],
    kinds: tuple[str, str] = ("double angles", "double angles"),
) -> PlanBeam:
    assert isinstance(W16, Section)
    return PlanBeam("B", "B", W16, one, two, (one, two), kinds, (0.0, 0.0), 0.0, (0.0, 0.0), 0.0)


def stations(*beams: PlanBeam) -> dict[Side, tuple[float, ...]]:
    return {edge.side: edge.stations for edge in edges_of(REGION, beams, GRID) if edge.stations}


def test_a_member_is_dimensioned_once_on_the_side_it_is_nearer_to() -> None:
    assert stations(beam((60, 0), (60, 90))) == {Side.BELOW: (60,)}
    assert stations(beam((60, 110), (60, 200))) == {Side.ABOVE: (60,)}
    assert stations(beam((0, 50), (100, 50))) == {Side.LEFT: (50,)}
    assert stations(beam((140, 50), (240, 50))) == {Side.RIGHT: (50,)}


def test_a_member_on_a_grid_line_needs_no_station() -> None:
    assert stations(beam((240, 0), (240, 90))) == {}


def test_bubbles_stand_above_and_at_the_left() -> None:
    edges = edges_of(REGION, (), GRID)
    assert [edge.side for edge in edges if edge.bubbles] == [Side.ABOVE, Side.LEFT]
    assert [edge.grid for edge in edges[:2]] == [(("1", 0.0), ("2", 240.0))] * 2


def test_a_skewed_member_stands_in_no_chain_and_its_ends_say_where_they_are() -> None:
    skewed = beam((60, 0), (100, 200))
    assert is_skewed(skewed)
    assert stations(skewed) == {}
    assert skewed_ends(skewed, GRID, FEET) == ("5'-0\" from 1", "8'-4\" from 1")
    assert skewed_ends(skewed, GRID, METRIC) == ("1524 from 1", "2540 from 1")


def test_the_nearest_grid_line_is_named_and_an_end_on_one_says_nothing() -> None:
    assert skewed_ends(beam((0, 0), (180, 200)), GRID, FEET) == ("", "5'-0\" from 2")


def test_a_square_member_says_nothing_at_its_ends() -> None:
    assert skewed_ends(beam((60, 0), (60.02, 200)), GRID, FEET) == ("", "")


def test_without_a_grid_both_ends_of_a_skewed_member_stand_in_the_chains() -> None:
    skewed = beam((60, 0), (100, 200))
    edges = edges_of(REGION, [skewed], ({}, {}))
    assert {edge.side: edge.stations for edge in edges if edge.stations} == {
        Side.BELOW: (60,),
        Side.ABOVE: (100,),
    }
    assert skewed_ends(skewed, ({}, {}), FEET) == ("", "")


@pytest.mark.parametrize(("tip", "side"), [((60, 30), Side.LEFT), ((180, 30), Side.RIGHT)])
def test_the_tip_of_a_cantilever_is_dimensioned_along_it(tip: tuple[float, float], side: Side) -> None:
    overhang = beam((tip[0], 90), tip, ("bearing", FREE))
    assert stations(overhang)[side] == (30,)
