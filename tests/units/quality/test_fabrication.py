"""Limits of finished work on both sides of each step; sources are those printed with each limit."""

from dataclasses import replace

import pytest

from gageline.errors import ValueProblem
from gageline.part import EndCut
from gageline.quality.fabrication import GAP_FREE, Rules, rules_of
from gageline.quality.limits import Limit, Trust
from gageline.units import Length, parse_slope
from jobs import inches, piece_of

US, COARSE, FINE = Rules(metric=False), Rules(metric=True), Rules(metric=True, tolerance_class=2)
PART = piece_of().main
METRIC = piece_of(stock="IPE 300", units="mm", length="5000").main


def values(limit: Limit | None) -> tuple[float | None, float | None]:
    assert limit is not None
    return tuple(None if way is None else round(way.inches, 6) for way in (limit.over, limit.under))  # type: ignore[return-value] # two of two


def values_mm(limit: Limit | None) -> tuple[float | None, float | None]:
    assert limit is not None
    return tuple(None if way is None else round(way.mm, 3) for way in (limit.over, limit.under))  # type: ignore[return-value] # two of two


@pytest.mark.parametrize(
    ("long", "most"), [("10'", 1 / 16), ("30'", 1 / 16), ("30'-0 1/16", 1 / 8), ("60'", 1 / 8)]
)
def test_length_of_what_frames_to_steel(long: str, most: float) -> None:
    """AISC 303, 6.4 (read): ±1/16 to 30 ft, ±1/8 over; ±1/32 finished for bearing."""
    assert values(US.length(inches(long))) == (most, most)
    assert values(replace(US, bearing=True).length(inches(long))) == (1 / 32, 1 / 32)
    assert US.length(inches(long)).trust is Trust.READ


def test_bearing_counts_for_square_ends_only() -> None:
    assert rules_of(PART, metric=False, bearing=True).bearing
    bevelled = replace(PART, left=EndCut(parse_slope("3 in 12")))
    assert not rules_of(bevelled, metric=False, bearing=True).bearing


def test_fillet_gaps() -> None:
    """AWS D1.1, 7.21.1 (read): 3/16; 5/16 for 3 in and more; legs grow over 1/16."""
    assert values(US.weld_gap(inches("2 63/64"))) == (3 / 16, None)
    assert values(US.weld_gap(inches("3"))) == (5 / 16, None)
    assert inches("1/16") == GAP_FREE
    assert values(US.weld_leg()) == (None, 0)
    assert COARSE.weld_gap(inches("1")) is None


def test_holes_may_be_1_32_over_and_never_under() -> None:
    """RCSC 2020 Table 3.1, footnote (read)."""
    assert values(US.hole()) == (1 / 32, 0)


@pytest.mark.parametrize(("radius", "under"), [("1/2", 0), ("3/4", 1 / 4), ("1/4", 0)])
def test_a_cope_may_be_down_to_1_2_round(radius: str, under: float) -> None:
    assert values(US.cope_radius(inches(radius))) == (None, under)


def test_squareness_is_that_of_the_mill_where_there_is_one() -> None:
    assert values(US.square(PART)) == (round(15.7 / 64, 6), None)
    box = piece_of(stock="HSS6X6X3/8").main
    assert values(US.square(box)) == (6 / 64, None)
    assert US.square(box).trust is Trust.COMMON


def test_straightness_is_that_of_the_mill() -> None:
    assert values(US.bow(PART, sideways=False)) == (0.125, 0.125)
    assert values(US.bow(PART, sideways=True)) == (0.25, 0.25)
    box = piece_of(stock="HSS6X6X3/8").main
    assert values(US.bow(box, sideways=True)) == (0.25, 0.25)
    assert US.bow(piece_of(stock="PL1/2X9").main, sideways=False) is None


@pytest.mark.parametrize(
    ("feet", "over"), [("20'", 1 / 2), ("50'", 1 / 2), ("50'-1", 5 / 8), ("60'", 5 / 8), ("60'-1", 3 / 4)]
)
def test_camber_that_was_asked_for(feet: str, over: float) -> None:
    """AISC 303, 6.4.4 (read): nothing under; 1/2 over to 50 ft, 1/8 more for each further 10 ft."""
    rules = replace(US, camber=inches("1"))
    long = replace(PART, length=inches(feet))
    assert values(rules.bow(long, sideways=False)) == (over, 0)
    assert values(rules.bow(long, sideways=True)) == values(US.bow(long, sideways=True))
    assert values_mm(replace(COARSE, camber=inches("1")).bow(METRIC, sideways=False)) == (10, 10)


def test_members_in_compression_are_straight_to_a_thousandth() -> None:
    """AISC 303, 6.4 (read)."""
    column = rules_of(PART, metric=False, compression=True)
    assert values(column.bow(PART, sideways=True)) == pytest.approx((0.12, 0.12), abs=1e-5)


def test_gouges() -> None:
    """AISC 360-22, M2.2 (read as quoted): 3/16."""
    assert values(US.gouge()) == (3 / 16, None)
    assert COARSE.gouge() is None


def test_what_has_no_published_rule_says_so() -> None:
    for limit in (US.hole_place(), US.spacing(), US.cope(), US.fitting()):
        assert limit.trust is Trust.COMMON
    assert values(US.hole_place()) == values(US.cope()) == values(US.fitting()) == (1 / 16, 1 / 16)
    assert values(US.spacing()) == (1 / 32, 1 / 32)


def test_european_classes_all_from_memory() -> None:
    long = Length.from_mm(10_000)
    assert (values_mm(COARSE.length(long)), values_mm(FINE.length(long))) == ((4, 4), (3, 3))
    assert (values_mm(COARSE.square(METRIC)), values_mm(FINE.square(METRIC))) == ((3, None), (1, None))
    assert values_mm(replace(FINE, bearing=True).square(METRIC)) == (0.3, None)
    assert (values_mm(COARSE.hole_place()), values_mm(FINE.hole_place())) == ((2, 2), (1, 1))
    assert (values_mm(COARSE.spacing()), values_mm(FINE.spacing())) == ((2, 2), (1, 1))
    assert (values_mm(COARSE.hole()), values_mm(FINE.hole())) == ((1, 0), (0.5, 0))
    assert (values_mm(COARSE.cope()), values_mm(FINE.cope())) == ((3, 0), (2, 0))
    assert (values_mm(COARSE.fitting()), values_mm(FINE.fitting())) == ((3, 3), (2, 2))
    assert values_mm(COARSE.bow(METRIC, sideways=True)) == (5, 5)
    assert values_mm(COARSE.cope_radius(Length.from_mm(12))) == (None, 7)
    assert values_mm(COARSE.weld_leg()) == (None, 0)
    assert COARSE.length(long).trust is Trust.MEMORY


def test_there_are_two_classes() -> None:
    with pytest.raises(ValueProblem, match="tolerance class 3 is not one of EN 1090-2: give 1 or 2"):
        rules_of(PART, metric=True, tolerance_class=3)
