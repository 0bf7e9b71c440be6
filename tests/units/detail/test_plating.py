from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail.plating import bolt_edge, off_the_face, plate_thickness, plate_weld
from gageline.detail.shop import Shop
from gageline.job import default_practice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.part import End
from gageline.units import System, parse_length

SHOP = Shop(default_practice(System.FT_IN), frame_practice(FramePracticeEntry(), System.FT_IN), System.FT_IN)


@pytest.mark.parametrize(("plate", "weld"), [("1/4", "3/16"), ("3/8", "1/4"), ("1/2", "5/16")])
def test_the_weld_is_five_eighths_of_the_plate(plate: str, weld: str) -> None:
    assert plate_weld(parse_length(plate), SHOP) == parse_length(weld)


@pytest.mark.parametrize(
    ("plate", "skew", "weld"), [("1/2", 10.0, "3/8"), ("3/8", -40.0, "1/4"), ("3/8", 44.0, "5/16")]
)
def test_at_a_skew_the_weld_is_larger_by_what_its_throat_is_less(plate: str, skew: float, weld: str) -> None:
    """5/16 over cos 5 is 0.3137; 0.2344 over cos 20 is 0.2494, over cos 22 0.2528."""
    assert plate_weld(parse_length(plate), SHOP, skew) == parse_length(weld)


def test_thickness_and_edge_are_those_given_or_of_the_practice() -> None:
    keys = {"connection": "single plate", "thickness": "1/2", "bolt": "1"}
    given = detailed(bay(ends=keys)).joints["B1", End.LEFT].choice
    usual = detailed(bay(ends={"connection": "single plate"})).joints["B1", End.LEFT].choice
    assert (plate_thickness(given, SHOP), bolt_edge(given, SHOP)) == (parse_length("1/2"), parse_length("2"))
    assert (plate_thickness(usual, SHOP), bolt_edge(usual, SHOP)) == tuple(
        map(parse_length, ("3/8", "1-1/2"))
    )


def test_bolts_are_as_far_off_the_face_as_edge_and_practice_say() -> None:
    choice = detailed(bay(ends={"connection": "single plate"})).joints["B1", End.LEFT].choice
    assert off_the_face(choice, parse_length("3/8"), 0.5, SHOP)[0] == parse_length("3")
    assert off_the_face(choice, parse_length("3/8"), 2.0, SHOP)[0] == parse_length("3-1/2")
    gage, rule = off_the_face(choice, parse_length("0.18 in"), 0.5, SHOP)
    assert gage == parse_length("2-1/2")
    assert rule.endswith('at least 3", less as 12 thicknesses of the web go only to 2 1/2"')
