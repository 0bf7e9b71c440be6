"""The checker of plate plans: right plans pass, and each kind of fault is found and said."""

from __future__ import annotations

from dataclasses import replace

import pytest

from gageline.stock import Burner, Laid, Plate, PlatePlan, Sheet, SheetPlan, Steel, check_plates
from gageline.units import ZERO, Length

STEEL = Steel("PL3/8", "A36")
SHEET = Sheet(STEEL, Length(1000), Length(600), 5000)
PLATES = [Plate("P1", STEEL, Length(400), Length(300), 2), Plate("P2", STEEL, Length(100), Length(50))]
BURNER = Burner(Length(10), trim=Length(20))
# in the corner, turned a kerf beside it, and in the other corner
RIGHT = (("P1", 20, 20, 400, 300), ("P1", 430, 20, 300, 400), ("P2", 880, 530, 100, 50))

Numbers = tuple[str, int, int, int, int]


def plan(*pieces: Numbers, bound: int = 5000, sheet: Sheet = SHEET) -> PlatePlan:
    laid = tuple(Laid(mark, *(Length(n) for n in numbers)) for mark, *numbers in pieces)
    return PlatePlan((SheetPlan(1, sheet, laid),), bound)


def faults(*pieces: Numbers, burner: Burner = BURNER, plates: list[Plate] | None = None) -> list[str]:
    return check_plates(plan(*pieces), PLATES if plates is None else plates, [SHEET], burner)


def test_a_plan_that_keeps_every_kerf_and_edge_to_the_tick_is_right() -> None:
    assert faults(*RIGHT) == []
    assert faults(*RIGHT, burner=replace(BURNER, shear=True)) == []


def test_one_tick_less_than_a_kerf() -> None:
    assert faults(RIGHT[0], ("P1", 429, 20, 300, 400), RIGHT[2]) == [
        "sheet 1: P1 and P1 are closer than a kerf"
    ]
    # above one another it counts as well
    assert faults(RIGHT[0], ("P1", 20, 329, 300, 251), RIGHT[2])[-1] == (
        "sheet 1: P1 and P1 are closer than a kerf"
    )


@pytest.mark.parametrize("at", [(19, 530), (880, 19), (881, 530), (880, 531)])
def test_one_tick_beyond_each_edge(at: tuple[int, int]) -> None:
    pieces = (("P1", 120, 70, 400, 300), ("P1", 530, 70, 300, 400), ("P2", *at, 100, 50))
    assert faults(*pieces) == ["sheet 1: P2 lies beyond the edge"]


def test_wrong_sizes_and_across_the_grain() -> None:
    told = ["sheet 1: P2 has the wrong sizes or lies across the grain"]
    assert faults(*RIGHT[:2], ("P2", 880, 530, 100, 49)) == told
    grained = [PLATES[0], replace(PLATES[1], grain=True)]
    turned = (*RIGHT[:2], ("P2", 880, 480, 50, 100))
    assert faults(*turned) == []
    assert faults(*turned, plates=grained) == told


def test_more_fewer_and_other_pieces_than_wanted() -> None:
    assert faults(*RIGHT[:2]) == ["P2: 0 cut, 1 wanted"]
    assert faults(*RIGHT, ("P2", 880, 20, 100, 50)) == ["P2: 2 cut, 1 wanted"]
    assert faults(*RIGHT, ("P9", 880, 20, 100, 50)) == ["P9: 1 cut, none wanted"]


def test_sheets_that_are_not_there() -> None:
    told = ["1 sheets of 1000 x 600 ticks are not there"]
    assert check_plates(plan(*RIGHT), PLATES, [replace(SHEET, cents=4999)], BURNER) == told
    none_left = replace(SHEET, limit=0)
    assert check_plates(plan(*RIGHT, sheet=none_left), PLATES, [none_left], BURNER) == told
    one_left = replace(SHEET, limit=1)
    assert check_plates(plan(*RIGHT, sheet=one_left), PLATES, [one_left], BURNER) == []


def test_a_bound_above_the_cost() -> None:
    assert check_plates(plan(*RIGHT, bound=5001), PLATES, [SHEET], BURNER) == ["the bound is above the cost"]


def test_shear_cuts_are_found_one_inside_another() -> None:
    # first cut upright at 600, then the left part level, then its upper part upright again
    nested = [
        ("A", 0, 0, 600, 200),
        ("B", 0, 200, 250, 400),
        ("C", 250, 200, 350, 400),
        ("D", 600, 0, 400, 600),
    ]
    plates = [Plate(m, STEEL, Length(a), Length(b)) for m, _, _, a, b in nested]
    shear = Burner(ZERO, shear=True)
    assert faults(*nested, burner=shear, plates=plates) == []
    # a pinwheel inside one of the parts spoils it
    wheel = [
        ("A", 0, 0, 600, 200),
        ("E", 0, 200, 400, 100),
        ("F", 400, 200, 200, 300),
        ("G", 200, 500, 400, 100),
    ]
    wheel += [("H", 0, 300, 200, 300), ("I", 200, 300, 200, 200), ("D", 600, 0, 400, 600)]
    plates = [Plate(m, STEEL, Length(a), Length(b)) for m, _, _, a, b in wheel]
    assert faults(*wheel, burner=Burner(ZERO), plates=plates) == []
    assert faults(*wheel, burner=shear, plates=plates) == [
        "sheet 1: the pieces cannot be cut from edge to edge"
    ]


def test_a_mark_asked_for_twice() -> None:
    assert "P2: asked for twice" in faults(*RIGHT, plates=[*PLATES, replace(PLATES[1], length=Length(90))])
