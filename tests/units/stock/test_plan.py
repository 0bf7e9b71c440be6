"""Plans made from pieces, sticks and saw; the checker verifies every one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.stock import (
    CutPlan,
    Effort,
    End,
    Held,
    Offer,
    Piece,
    Progress,
    Saw,
    Steel,
    by_weight,
    check_plan,
    plan_cuts,
)
from gageline.units import ZERO, Length

BEAM = Steel("W12X26", "A992")
ANGLE = Steel("L3X3X1/4", "A36", "galvanised")
KERF = Length.from_inches(Fraction(1, 8))
SAW = Saw(KERF)


def inches(value: float) -> Length:
    return Length.from_inches(value)


def offer(feet: int, cents: int, **more: object) -> Offer:
    return replace(Offer(BEAM, inches(12 * feet), cents), **more)  # type: ignore[arg-type]  # fields by name


def checked(pieces: Sequence[Piece], stocks: Sequence[Offer | Held], saw: Saw = SAW) -> CutPlan:
    plan = plan_cuts(pieces, stocks, saw)
    assert check_plan(plan, pieces, stocks, saw) == []
    return plan


def test_running_dimensions_hold_trim_and_kerf() -> None:
    saw = Saw(KERF, start_trim=inches(0.5), end_trim=inches(0.5), grip=inches(6))
    plan = checked([Piece("B1", BEAM, inches(100), 2)], [offer(20, 10000)], saw)
    (stick,) = plan.sections[0].sticks
    assert [(p.start.inches, p.stop.inches) for p in stick.pieces] == [(0.5, 100.5), (100.625, 200.625)]
    assert stick.drop.inches == 240 - 200.625 - 0.125
    assert plan.proven


def test_a_stick_filled_to_the_last_tick_needs_no_last_cut() -> None:
    plan = checked([Piece("B1", BEAM, inches(119.9375), 2)], [offer(20, 10000)])
    (stick,) = plan.sections[0].sticks
    assert stick.drop == ZERO
    assert plan.cents == 10000


def test_kerf_of_zero_is_a_shear() -> None:
    plan = checked([Piece("B1", BEAM, inches(120), 2)], [offer(20, 10000)], Saw(ZERO))
    assert plan.cents == 10000


def test_mixed_inches_and_millimetres_stay_exact() -> None:
    pieces = [Piece("B1", BEAM, Length.from_mm(3046.41), 2), Piece("B2", BEAM, inches(7 / 256), 1)]
    plan = checked(pieces, [offer(20, 10000), offer(40, 19000)])
    assert plan.cents in {10000, 19000}
    assert plan.bound <= plan.cents


def test_cheapest_mix_of_lengths_by_weight() -> None:
    # 3 pieces of 13 ft: one 40 ft stick (26 lb/ft x 40 ft x 0.70) beats three of 20 ft
    offers = [by_weight(BEAM, inches(12 * feet), Fraction(26), Fraction(70)) for feet in (20, 40)]
    assert [o.cents for o in offers] == [36400, 72800]
    plan = checked([Piece("B1", BEAM, inches(156), 3)], offers)
    assert plan.order() == ((offers[1], 1),)
    assert plan.cents == 72800


def test_the_rack_is_used_where_it_saves() -> None:
    rack = [Held("R1", BEAM, inches(130), 500, "H7"), Held("R2", BEAM, inches(90), 100, "H8")]
    plan = checked([Piece("B1", BEAM, inches(120), 3)], [offer(20, 10000), *rack], Saw(ZERO))
    heats = {s.heat for s in plan.sections[0].sticks}
    assert plan.cents == 10500
    assert heats == {None, "H7"}


def test_each_steel_is_planned_by_itself() -> None:
    angle = Offer(ANGLE, inches(240), 4000)
    plan = checked(
        [Piece("B1", BEAM, inches(50)), Piece("A1", ANGLE, inches(40), 9)], [offer(20, 10000), angle]
    )
    assert [s.steel for s in plan.sections] == [ANGLE, BEAM]
    assert plan.cents == 18000


def test_a_kept_drop_is_credited() -> None:
    saw = Saw(ZERO, keep=inches(60), drop_percent=50)
    plan = checked([Piece("B1", BEAM, inches(150))], [offer(20, 24000)], saw)
    (stick,) = plan.sections[0].sticks
    # 90 in of 240 in at half of 24000 cents
    assert (stick.kept, stick.credit, plan.cents) == (True, 4500, 19500)
    assert plan.proven


def test_credit_can_change_which_stick_is_best() -> None:
    pieces = [Piece("B1", BEAM, inches(150))]
    offers = [offer(15, 21000), offer(20, 24000)]
    assert checked(pieces, offers, Saw(ZERO)).order()[0][0].cents == 21000
    assert checked(pieces, offers, Saw(ZERO, keep=inches(60), drop_percent=80)).order()[0][0].cents == 24000


def test_heat_certificate_and_date_are_kept() -> None:
    pieces = [
        Piece("B1", BEAM, inches(100), heat="H1"),
        Piece("B2", BEAM, inches(100), certificate=True),
        Piece("B3", BEAM, inches(100), needed=date(2026, 5, 1)),
    ]
    stocks: list[Offer | Held] = [
        Held("R1", BEAM, inches(110), 0, "H1"),
        offer(10, 100, arrives=date(2026, 6, 1)),
        offer(10, 5000),
        offer(10, 7000, certificate=True),
    ]
    plan = checked(pieces, stocks)
    by_mark = {p.mark: s.stock for s in plan.sections[0].sticks for p in s.pieces}
    assert plan.cents == 12000
    assert by_mark["B1"].heat == "H1"
    assert by_mark["B2"].certificate
    assert by_mark["B3"] == stocks[2]


def test_one_heat_for_a_group() -> None:
    pieces = [Piece("B1", BEAM, inches(100), 2, one_heat="frame"), Piece("B2", BEAM, inches(100), 1)]
    rack = [
        Held(f"R{k}", BEAM, inches(110), 10 * k, heat) for k, heat in enumerate(["A", "B", "B", "C"], start=1)
    ]
    plan = checked(pieces, rack)
    heats = {s.heat for s in plan.sections[0].sticks for p in s.pieces if p.mark == "B1"}
    assert heats == {"B"}
    assert plan.cents == 10 + 20 + 30


def test_recutting_leaves_what_is_done() -> None:
    pieces = [Piece("B1", BEAM, inches(100), 4), Piece("B2", BEAM, inches(60), 4)]
    stocks: list[Offer | Held] = [offer(20, 10000), Held("R1", BEAM, inches(110), 50, "H1")]
    first = checked(pieces, stocks)
    done = first.sections[0].sticks[:2]
    more = [replace(pieces[0], quantity=5), pieces[1]]
    again = plan_cuts(more, stocks, SAW, done)
    assert check_plan(again, more, stocks, SAW) == []
    assert [s.pieces for s in again.sections[0].sticks[:2]] == [s.pieces for s in done]
    assert [s.done for s in again.sections[0].sticks[:3]] == [True, True, False]


def test_angled_ends_share_a_cut() -> None:
    slope = End(inches(12), inches(12))
    pieces = [Piece("M1", BEAM, inches(60), 4, slope, slope)]
    # 4 x 60 - 3 shared x 12, with 5 cuts at 45 degrees of 1/8 x sqrt 2, is less than 17 1/2 ft
    plan = checked(pieces, [offer(20, 10000), Offer(BEAM, inches(210), 9000)])
    assert plan.cents == 9000
    assert [p.shares for p in plan.sections[0].sticks[0].pieces] == [False, True, True, True]
    assert plan.proven


def test_pieces_that_may_not_be_turned_share_only_parallel_cuts() -> None:
    left, right = End(inches(12), inches(12), long_side="low"), End(inches(12), inches(12), long_side="high")
    stocks = [Offer(BEAM, inches(110), 9000), Offer(BEAM, inches(130), 12000)]
    parallel = [Piece("M1", BEAM, inches(60), 2, left, right, turnable=False)]
    tapered = [Piece("M1", BEAM, inches(60), 2, left, replace(right, long_side="low"), turnable=False)]
    assert checked(parallel, stocks).cents == 9000
    assert checked(tapered, stocks).cents == 12000


def test_fewer_setups_among_plans_of_one_cost() -> None:
    # 2 sticks hold everything in many ways; two alike are one set-up
    pieces = [Piece(f"B{k}", BEAM, inches(n), 2) for k, n in enumerate((90, 70, 50, 30))]
    plan = checked(pieces, [offer(20, 10000)], Saw(ZERO))
    assert (plan.cents, plan.sections[0].setups) == (20000, 1)


def test_a_limit_on_setups_is_kept_and_paid_for() -> None:
    pieces = [Piece("B1", BEAM, inches(130), 2), Piece("B2", BEAM, inches(75), 2)]
    stocks = [offer(20, 10000), Offer(BEAM, inches(80), 3000), Offer(BEAM, inches(140), 6000)]
    free = checked(pieces, stocks, Saw(ZERO))
    limited = checked(pieces, stocks, Saw(ZERO, most_setups=1))
    assert (free.cents, free.sections[0].setups) == (18000, 2)
    assert (limited.cents, limited.sections[0].setups) == (20000, 1)
    assert limited.bound == 18000


def test_a_limit_on_setups_that_cannot_be_kept_for_the_lengths() -> None:
    pieces = [Piece(f"B{k}", BEAM, inches(130 - k), 3) for k in range(3)]
    with pytest.raises(
        ValueProblem,
        match="W12X26 A992: no plan has at most 1 set-ups: its 3 different lengths take at least 3: allow 3",
    ):
        plan_cuts(pieces, [offer(20, 10000)], Saw(ZERO, most_setups=1))


def test_a_limit_on_setups_that_cannot_be_kept_for_the_counts() -> None:
    # 130 and 75 go on one stick, but two sticks so cut would hold one 75 too many
    pieces = [Piece("B1", BEAM, inches(130), 2), Piece("B2", BEAM, inches(75))]
    with pytest.raises(
        ValueProblem, match="W12X26 A992: no plan has at most 1 set-ups, every way to cut a stick being tried"
    ):
        plan_cuts(pieces, [offer(20, 10000)], Saw(ZERO, most_setups=1))
    assert checked(pieces, [offer(20, 10000)], Saw(ZERO, most_setups=2)).sections[0].setups == 2


def test_a_limit_on_setups_not_kept_and_not_refuted_is_said_to_be_so() -> None:
    # so many lengths that not every way to cut a stick can be tried
    pieces = [Piece(f"B{k}", BEAM, inches(11 + k), 2 + k % 3) for k in range(14)]
    with pytest.raises(
        ValueProblem,
        match="no plan with at most 2 set-ups was found, though it is not proven that there is none: allow",
    ):
        plan_cuts(pieces, [offer(20, 10000)], Saw(ZERO, most_setups=2))


def test_pieces_of_one_length_count_as_one_set_up_whatever_their_heats() -> None:
    pieces = [Piece("B1", BEAM, inches(100), heat="H1"), Piece("B2", BEAM, inches(100), heat="H2")]
    stocks = [Held("R1", BEAM, inches(120), 30, "H1"), Held("R2", BEAM, inches(120), 30, "H2")]
    assert checked(pieces, stocks, Saw(ZERO, most_setups=1)).sections[0].setups == 1


def test_a_limit_on_setups_is_kept_with_angled_ends() -> None:
    slope = End(inches(6), inches(12))
    pieces = [
        Piece("B1", BEAM, inches(60), 4, right=slope),
        Piece("B2", BEAM, inches(60), 4, left=slope),
        Piece("B3", BEAM, inches(40), 4),
    ]
    stocks = [offer(20, 10000), offer(40, 19500)]
    for most in (1, 2):
        assert checked(pieces, stocks, Saw(KERF, most_setups=most)).sections[0].setups <= most


def test_progress_is_told_and_a_stop_keeps_the_best_plan() -> None:
    told: list[tuple[Steel, Progress]] = []
    pieces = [Piece(f"B{k}", BEAM, inches(31 + 17 * k), 3) for k in range(12)]
    effort = Effort(stop=lambda: bool(told), tell=lambda steel, progress: told.append((steel, progress)))
    plan = plan_cuts(pieces, [offer(40, 19000), offer(20, 10000)], SAW, effort=effort)
    assert check_plan(plan, pieces, [offer(40, 19000), offer(20, 10000)], SAW) == []
    assert told[0][0] == BEAM
    assert told[-1][1].bound <= plan.cents


def test_order_of_input_does_not_matter() -> None:
    pieces = [Piece(f"B{k}", BEAM, inches(31 + 17 * (k % 7)), 2) for k in range(12)]
    stocks: list[Offer | Held] = [offer(40, 19000), offer(20, 10000), Held("R1", BEAM, inches(100), 30, "H1")]
    one, other = plan_cuts(pieces, stocks, SAW), plan_cuts(pieces[::-1], stocks[::-1], SAW)
    assert [s.sticks for s in one.sections] == [s.sticks for s in other.sections]


def test_too_few_sticks() -> None:
    with pytest.raises(
        ValueProblem, match=r"W12X26 A992: the sticks cannot hold the pieces: 33'-4\" of pieces"
    ):
        plan_cuts([Piece("B1", BEAM, inches(100), 4)], [offer(20, 10000, limit=1)], SAW)


def test_too_little_of_a_heat_names_the_pieces_that_ask_for_it() -> None:
    pieces = [Piece("B1", BEAM, inches(60), 4, heat="H1"), Piece("B2", BEAM, inches(60), 4)]
    stocks: list[Offer | Held] = [offer(20, 10000), Held("R1", BEAM, inches(130), 30, "H1")]
    with pytest.raises(
        ValueProblem,
        match=r"sticks that B1 may come from cannot hold the pieces: 20'-0\" of pieces before kerfs, "
        r"10'-10\" of sticks after trims and grip: .* longer sticks of that heat, certificate or date",
    ):
        plan_cuts(pieces, stocks, SAW)


def test_sticks_long_enough_in_all_but_not_one_by_one() -> None:
    pieces = [Piece("B1", BEAM, inches(100), 3)]
    with pytest.raises(ValueProblem, match="W12X26 A992: the pieces do not go up in the sticks there are"):
        plan_cuts(pieces, [Held(f"R{k}", BEAM, inches(170), 30) for k in range(2)], SAW)


def test_more_cut_than_wanted() -> None:
    pieces = [Piece("B1", BEAM, inches(100), 2)]
    done = plan_cuts(pieces, [offer(20, 10000)], SAW).sections[0].sticks
    with pytest.raises(ValueProblem, match=r'piece "B1": 2 already cut, but 1 wanted'):
        plan_cuts([replace(pieces[0], quantity=1)], [offer(20, 10000)], SAW, done)


def test_angled_and_square_pieces_nest_in_two_sticks() -> None:
    slope = End(inches(6), inches(12))
    pieces = [
        Piece("M1", BEAM, inches(100), 7, slope, slope),
        Piece("M2", BEAM, inches(80), 5, right=slope),
        Piece("M3", BEAM, inches(60), 6),
    ]
    saw = Saw(KERF, start_trim=inches(0.5), end_trim=inches(0.5), grip=inches(6))
    # overall lengths and kerfs alone come to 1460 in, more than two sticks of 713 in hold without sharing
    plan = checked(pieces, [offer(60, 10000), offer(20, 4000)], saw)
    assert plan.cents == 20000
    assert plan.proven


def test_a_stop_before_the_setups_are_few_enough_says_so() -> None:
    pieces = [Piece(f"B{k}", BEAM, inches(11 + k), 2 + k % 3) for k in range(14)]
    effort = Effort(stop=lambda: True)
    with pytest.raises(ValueProblem, match=r"W12X26 A992: no plan was found in \d+ s: give more time"):
        plan_cuts(pieces, [offer(20, 10000)], Saw(ZERO, most_setups=2), effort=effort)
