"""The checker finds every kind of fault in a plan that was right before."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest

from gageline.stock import CutPlan, End, Held, Offer, Piece, Saw, Steel, StickPlan, check_plan, plan_cuts
from gageline.stock.check import check_counts
from gageline.units import Length

BEAM = Steel("W12X26", "A992")
SLOPE = End(Length.from_inches(6), Length.from_inches(12))
SAW = Saw(
    Length.from_inches(Fraction(1, 8)),
    start_trim=Length.from_inches(0.5),
    grip=Length.from_inches(6),
    keep=Length.from_inches(24),
    drop_percent=50,
)
PIECES = [
    Piece("B1", BEAM, Length.from_inches(90), heat="H1"),
    Piece("B2", BEAM, Length.from_inches(60), certificate=True, one_heat="frame"),
    Piece("B3", BEAM, Length.from_inches(30), needed=date(2026, 5, 1), turnable=False),
]
STOCKS: list[Offer | Held] = [Held("R1", BEAM, Length.from_inches(230), 9000, "H1", certificate=True)]


def right() -> CutPlan:
    plan = plan_cuts(PIECES, STOCKS, SAW)
    assert check_plan(plan, PIECES, STOCKS, SAW) == []
    return plan


def with_stick(change: Callable[[StickPlan], StickPlan]) -> CutPlan:
    plan = right()
    section = plan.sections[0]
    return CutPlan((replace(section, sticks=tuple(change(s) for s in section.sticks)),))


def moved(stick: StickPlan, at: int, by: float) -> StickPlan:
    pieces = list(stick.pieces)
    step = Length.from_inches(by)
    pieces[at] = replace(pieces[at], start=pieces[at].start + step, stop=pieces[at].stop + step)
    return replace(stick, pieces=tuple(pieces))


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (lambda s: moved(s, 0, -0.25), "B1 starts inside the trim"),
        (lambda s: moved(s, 1, -0.1), "B1 and B2 stand"),
        (lambda s: moved(s, 2, 45), "B3 ends beyond what the saw can use"),
        (lambda s: replace(s, drop=s.drop + s.drop), "the drop is"),
        (lambda s: replace(s, credit=s.credit + 1), "the drop earns"),
        (lambda s: replace(s, number=2), "sticks are not numbered"),
        (lambda s: replace(s, pieces=s.pieces[:2]), "B3: 0 cut, 1 wanted"),
        (lambda s: replace(s, stock=replace(s.stock, heat="H2")), "B1 is from heat H2, wanted H1"),
        (
            lambda s: replace(s, stock=replace(s.stock, certificate=False)),
            "B2 is from a stick without a certificate",
        ),
        (lambda s: replace(s, stock=replace(s.stock, heat=None)), "group frame comes from heats"),
        (lambda s: replace(s, stock=replace(s.stock, mark="R9")), "that there is none of"),
        (
            lambda s: replace(s, pieces=(*s.pieces[:2], replace(s.pieces[2], turned=True))),
            "B3 may not be turned",
        ),
        (
            lambda s: replace(s, pieces=(s.pieces[0], replace(s.pieces[1], shares=True), s.pieces[2])),
            "B1 and B2 cannot share a cut",
        ),
        (
            lambda s: replace(
                s, pieces=(replace(s.pieces[0], stop=s.pieces[0].stop - SAW.kerf), *s.pieces[1:])
            ),
            "B1 is cut to",
        ),
        (
            lambda s: replace(
                s,
                stock=Offer(
                    BEAM, s.stock.length, 9000, certificate=True, arrives=date(2026, 6, 1), heat="H1"
                ),
            ),
            "B3 is from a stick that comes too late",
        ),
    ],
)
def test_faults_are_found(change: Callable[[StickPlan], StickPlan], fault: str) -> None:
    said = check_plan(with_stick(change), PIECES, STOCKS, SAW)
    assert any(fault in sentence for sentence in said)


def test_a_bound_above_the_cost_is_found() -> None:
    plan = right()
    wrong = CutPlan((replace(plan.sections[0], bound=plan.cents + 1),))
    assert check_plan(wrong, PIECES, STOCKS, SAW) == [
        f"W12X26 A992: the bound {plan.cents + 1} is above the cost"
    ]


def test_an_overlap_at_a_shared_cut_is_found() -> None:
    pieces = [Piece("M1", BEAM, Length.from_inches(60), 2, SLOPE, SLOPE)]
    plan = plan_cuts(pieces, STOCKS, SAW)
    assert check_plan(plan, pieces, STOCKS, SAW) == []
    section = plan.sections[0]
    wrong = CutPlan((replace(section, sticks=(moved(section.sticks[0], 1, -0.01),)),))
    said = check_plan(wrong, pieces, STOCKS, SAW)
    assert any("M1 and M1 overlap at their shared cut" in sentence for sentence in said)


def test_counts() -> None:
    stocks: list[tuple[int, int, int | None]] = [(100, 7, 1), (60, 5, None)]
    items = [(40, 3), (20, 2)]
    good = [(0, {0: 2, 1: 1}, 1), (1, {0: 1, 1: 1}, 1)]
    assert check_counts(stocks, items, good, 12) == []
    assert check_counts(stocks, items, good, 11) == ["the plan says it costs 11, the sticks cost 12"]
    bad = [(0, {0: 3, 1: 2}, 2)]
    assert check_counts(stocks, items, bad, 14) == [
        "stick of 100 is filled to 160",
        "piece of 40: 6 cut, 3 wanted",
        "piece of 20: 4 cut, 2 wanted",
        "stick of 100: 2 used, 1 on hand",
    ]


def test_more_set_ups_than_the_saw_may_have() -> None:
    pieces = [Piece("B1", BEAM, Length.from_inches(130)), Piece("B2", BEAM, Length.from_inches(125))]
    stocks: list[Offer | Held] = [Offer(BEAM, Length.from_inches(240), 9000)]
    plan = plan_cuts(pieces, stocks, SAW)
    assert check_plan(plan, pieces, stocks, replace(SAW, most_setups=2)) == []
    assert check_plan(plan, pieces, stocks, replace(SAW, most_setups=1)) == [
        "W12X26 A992: 2 set-ups, at most 1 are allowed"
    ]
