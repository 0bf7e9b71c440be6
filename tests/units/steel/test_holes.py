from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.steel import (
    SPEC_YEARS,
    HoleKind,
    all_bolts,
    bolt,
    hole_size,
    leg_gage,
    minimum_edge_distance,
    minimum_spacing,
)
from gageline.units import Length, parse_length


@pytest.mark.parametrize("year", SPEC_YEARS)
def test_every_bolt_fits_its_holes(year: int) -> None:
    for entry in all_bolts().values():
        standard = hole_size(entry, HoleKind.STD, year)
        assert entry.diameter < standard.width == standard.length
        over, short, long = (
            hole_size(entry, kind, year) for kind in (HoleKind.OVS, HoleKind.SSL, HoleKind.LSL)
        )
        assert over.width == over.length > standard.width
        assert short.width == long.width == standard.width
        assert standard.length < short.length < long.length
        assert abs((long.length - entry.diameter * 5 / 2).inches) <= 1 / 32 + 1e-9


def test_an_edition_that_is_not_kept_is_refused() -> None:
    with pytest.raises(ValueProblem, match="AISC 360 edition 2013 is not kept: choose one of 2005, 2010"):
        hole_size(bolt("1"), year=2013)


def test_edge_distance_grows_only_where_the_hole_does_towards_the_edge() -> None:
    chosen = bolt("3/4")
    assert minimum_edge_distance(chosen) == parse_length("1")
    assert minimum_edge_distance(chosen, HoleKind.SSL) == parse_length("1")
    assert minimum_edge_distance(chosen, HoleKind.OVS) == parse_length("1-1/16")
    assert minimum_edge_distance(chosen, HoleKind.SSL, slot_to_edge=True) == parse_length("1-1/8")
    assert minimum_edge_distance(chosen, HoleKind.LSL, slot_to_edge=True) == parse_length("1-9/16")


def test_the_least_spacing_is_a_multiple_of_the_diameter() -> None:
    assert minimum_spacing(bolt("M24")) == Length.from_mm(64)


def test_a_wide_leg_takes_two_lines() -> None:
    gages = leg_gage(parse_length("6"))
    assert (gages.first, gages.second) == (parse_length("2-1/4"), parse_length("2-1/2"))
    assert leg_gage(parse_length("4")).first is None


def test_a_leg_of_no_usual_gage_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match='leg 9" has no usual gage: give the gage, or use a leg of 8, 7, 6'
    ):
        leg_gage(parse_length("9"))
