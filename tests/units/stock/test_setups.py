"""Among plans of one cost the one with the fewest set-ups, as known by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from cutting import random_problem
from gageline.stock.heuristics import best_fit
from gageline.stock.problem import Packing, Pattern, Problem, Stick, packing
from gageline.stock.setups import Merit, fewer_setups, least_setups, merit, setups_refuted
from gageline.stock.watch import start_watch

# 50 + 30 + 20 fill a stick; so do two 50s, and two 30s with two 20s
PROBLEM = Problem((50, 30, 20), (4, 4, 4), (Stick(100, 7),))
MIXED = Pattern(0, ((0, 1), (1, 1), (2, 1)))
SCATTERED = Packing(((Pattern(0, ((0, 2),)), 2), (Pattern(0, ((1, 2), (2, 2))), 2)), 28)


def better(problem: Problem, plan: Packing, most: int | None = None) -> Packing | None:
    return fewer_setups(problem, plan, (), most, start_watch(20.0))


def held(problem: Problem, plan: Packing) -> list[int]:
    return [sum(dict(p.counts).get(i, 0) * n for p, n in plan.patterns) for i in range(len(problem.demand))]


def test_merit_counts_patterns_lengths_and_squares_of_what_is_left() -> None:
    problem = Problem((60, 40), (2, 2), (Stick(100, 10), Stick(50, 6)))
    plan = packing(problem, [Pattern(0, ((0, 1),))] * 2 + [Pattern(1, ((1, 1),))] * 2)
    # 40 of 100 left twice and 10 of 100 twice
    found = merit(problem, plan)
    assert (found.setups, found.lengths) == (2, 2)
    assert found.scattered == pytest.approx(-2 * (0.16 + 0.01))
    full = packing(problem, [Pattern(0, ((0, 1), (1, 1)))] * 2)
    assert merit(problem, full) == Merit(1, 1, 0.0)


def test_one_set_up_for_all_is_found_unasked() -> None:
    assert better(PROBLEM, SCATTERED) == Packing(((MIXED, 4),), 28)


def test_a_plan_with_fewer_set_ups_may_cost_less_as_well() -> None:
    plan = Packing(((Pattern(0, ((0, 1),)), 4), (Pattern(0, ((1, 2), (2, 2))), 2)), 42)
    assert better(PROBLEM, plan) == Packing(((MIXED, 4),), 28)


def test_dearer_plans_do_not_hide_those_of_equal_cost() -> None:
    # 60 + 40 + 40 on the dear stick is one set-up for 10; 60 + 40 and 40 + 40 are two for 3
    problem = Problem((60, 40), (2, 4), (Stick(100, 1), Stick(140, 5)))
    ways = [((0, 1), (1, 1)), ((0, 1),), ((1, 2),), ((1, 1),)]
    plan = packing(problem, [Pattern(0, way) for way in ways])
    found = better(problem, plan)
    assert found is not None
    assert found.cost <= plan.cost
    assert (merit(problem, plan).setups, merit(problem, found).setups) == (4, 2)


def test_fewer_stick_lengths_where_set_ups_are_equal() -> None:
    problem = Problem((50, 30), (1, 1), (Stick(60, 5), Stick(55, 5), Stick(40, 5, fits=(False, True))))
    plan = packing(problem, [Pattern(0, ((0, 1),)), Pattern(2, ((1, 1),))])
    found = fewer_setups(
        problem, plan, (Pattern(0, ((1, 1),)), Pattern(1, ((0, 1),))), None, start_watch(20.0)
    )
    assert found is not None
    assert found.cost == 10
    assert (merit(problem, plan).lengths, merit(problem, found).lengths) == (2, 1)


def test_the_left_over_is_gathered_in_one_stick() -> None:
    # two set-ups either way: 40 + 20 and 50, or 50 + 40 and 20 with 80 left in one piece
    problem = Problem((50, 40, 20), (1, 1, 1), (Stick(100, 7),))
    plan = packing(problem, [Pattern(0, ((0, 1),)), Pattern(0, ((1, 1), (2, 1)))])
    ways = (Pattern(0, ((0, 1), (1, 1))), Pattern(0, ((2, 1),)))
    found = fewer_setups(problem, plan, ways, None, start_watch(20.0))
    assert found is not None
    assert {p for p, _ in found.patterns} == set(ways)


def test_the_cost_rises_for_set_ups_only_when_so_few_are_asked_for() -> None:
    # 60 + 40 and 40 alone on sticks of 100 for 2; all three on one of 140 for 5
    problem = Problem((60, 40), (1, 2), (Stick(100, 1), Stick(140, 5)))
    plan = packing(problem, [Pattern(0, ((0, 1), (1, 1))), Pattern(0, ((1, 1),))])
    kept = better(problem, plan)
    assert kept is not None
    assert (kept.cost, merit(problem, kept).setups) == (2, 2)
    assert better(problem, plan, most=2) == kept
    assert better(problem, plan, most=1) == Packing(((Pattern(1, ((0, 1), (1, 2))), 1),), 5)


def test_fewer_than_can_be_is_no_plan() -> None:
    # no stick takes both kinds
    problem = Problem((60, 40), (1, 1), (Stick(60, 1, fits=(True, False)), Stick(40, 1, fits=(False, True))))
    plan = packing(problem, [Pattern(0, ((0, 1),)), Pattern(1, ((1, 1),))])
    assert better(problem, plan, most=1) is None
    assert better(problem, plan, most=2) == plan


def test_limits_of_sticks_are_kept() -> None:
    # the mixed set-up would need four sticks of the kind of which there are two
    other = (Stick(100, 7, 2), Stick(100, 7, 2, fits=(True, False, False)))
    problem = replace(PROBLEM, sticks=other)
    plan = packing(problem, [Pattern(1, ((0, 2),))] * 2 + [Pattern(0, ((1, 2), (2, 2)))] * 2)
    assert better(problem, plan) == plan


@pytest.mark.parametrize("drops", [False, True])
@pytest.mark.parametrize("seed", range(12))
def test_the_plan_stays_a_plan_and_gets_no_worse(seed: int, *, drops: bool) -> None:
    problem = random_problem(seed, drops=drops)
    quick = best_fit(problem)
    assert quick is not None
    plan = packing(problem, quick)
    found = better(problem, plan)
    assert found is not None
    assert held(problem, found) == list(problem.demand)
    assert found.cost <= plan.cost
    if found.cost == plan.cost:
        assert merit(problem, found).setups <= merit(problem, plan).setups
    for s, most in enumerate(problem.limits()):
        assert sum(n for p, n in found.patterns if p.stick == s) <= most


def test_so_many_set_ups_as_sticks_for_one_piece_of_each_length() -> None:
    # 60 + 40, 55 + 45 and 70 + 30: three sticks of 100, however many of each are wanted
    problem = Problem((70, 60, 55, 45, 40, 30), (9, 1, 4, 2, 8, 3), (Stick(80, 1), Stick(100, 1, 2)))
    assert least_setups(problem, start_watch(5.0)) == 3


@pytest.mark.parametrize("seed", range(20))
def test_what_is_refuted_is_above_every_plan_there_is(seed: int) -> None:
    problem = random_problem(seed)
    simple = best_fit(problem)
    assert simple is not None
    count = len(packing(problem, simple).patterns)
    assert not setups_refuted(problem, count, start_watch(10.0))
    fewest = min(n for n in range(1, count + 1) if not setups_refuted(problem, n, start_watch(10.0)))
    found = better(problem, packing(problem, simple), fewest)
    assert found is not None
    assert len(found.patterns) <= fewest


def test_counts_that_do_not_go_up_refute() -> None:
    problem = Problem((130, 75), (2, 1), (Stick(240, 1),))
    assert setups_refuted(problem, 1, start_watch(5.0))
    assert not setups_refuted(problem, 2, start_watch(5.0))


def test_too_many_patterns_refute_nothing() -> None:
    many = Problem(tuple(range(10, 30)), (3,) * 20, (Stick(240, 1),))
    assert not setups_refuted(many, 1, start_watch(5.0))
