"""Patterns that a better plan could use: none is missed, and the program over them decides."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from cutting import least_cost, random_problem
from gageline.stock.affordable import Listing, affordable, choose
from gageline.stock.bounds import exact_prices
from gageline.stock.columns import Master
from gageline.stock.problem import Ints, Pattern, Problem, Stick, packing
from gageline.stock.program import Answer
from gageline.stock.watch import start_watch

PAIRS = Problem((51, 49), (2, 2), (Stick(100, 10),))
PAIR = Pattern(0, ((0, 1), (1, 1)))
TWO_SHORT = Pattern(0, ((1, 2),))


def listed(problem: Problem, duals: list[float], target: int, *, most: int = 100) -> Listing | None:
    demand = np.array(problem.demand)
    prices = exact_prices(problem, demand, np.array(duals))
    kinds = tuple(range(len(problem.demand)))
    return affordable(problem, demand, problem.limits(), prices, target, most, kinds)


def test_at_the_bound_only_patterns_that_earn_their_stick_are_listed() -> None:
    # at 5.1 and 4.9 a pair earns the 10 of its stick; two 49s earn 9.8
    found = listed(PAIRS, [5.1, 4.9], 20)
    assert found == Listing([PAIR], (0, 1))


def test_a_cost_more_lets_in_what_earns_one_less() -> None:
    found = listed(PAIRS, [5.1, 4.9], 21)
    assert found is not None
    # one 51 or one 49 alone could hold a further piece, and so need not be listed
    assert set(found.patterns) == {PAIR, TWO_SHORT}
    assert len(found.patterns) == 2


def test_a_pattern_with_room_for_one_more_to_the_tick_is_left_out() -> None:
    found = listed(Problem((50,), (2,), (Stick(100, 10),)), [5.0], 30)
    assert found is not None
    assert found.patterns == [Pattern(0, ((0, 2),))]


def test_a_stick_that_pays_back_must_do_so_in_full() -> None:
    # at 10 and 9 the bound is 19, less 4 for a 60 on the cheap stick; a 55 there would pay back only 3
    problem = Problem((60, 55), (1, 1), (Stick(100, 10), Stick(100, 6, 1)))
    found = listed(problem, [10.0, 9.0], 15)
    assert found is not None
    assert found.patterns == [Pattern(0, ((0, 1),)), Pattern(1, ((0, 1),))]
    assert least_cost(problem) == 16


def test_too_long_a_listing_is_given_up() -> None:
    assert listed(PAIRS, [5.1, 4.9], 21, most=2) is not None
    assert listed(PAIRS, [5.1, 4.9], 21, most=1) is None


def test_sticks_of_which_there_are_none_and_kinds_not_accepted_stay_out() -> None:
    some = replace(PAIRS, sticks=(Stick(100, 10, 0), Stick(100, 10, fits=(False, True))))
    found = listed(some, [5.1, 4.9], 40)
    assert found is not None
    assert found.patterns == [Pattern(1, ((1, 2),))]


def test_a_table_that_would_be_too_large_is_not_tried(monkeypatch: pytest.MonkeyPatch) -> None:
    # lengths 0 to 100, after none, one and both of the kinds
    monkeypatch.setattr("gageline.stock.affordable._TABLE", 303)
    assert listed(PAIRS, [5.1, 4.9], 20) is not None
    monkeypatch.setattr("gageline.stock.affordable._TABLE", 302)
    assert listed(PAIRS, [5.1, 4.9], 20) is None


@pytest.mark.parametrize("drops", [False, True])
@pytest.mark.parametrize("seed", range(25))
def test_the_listing_holds_a_plan_exactly_where_there_is_one(seed: int, *, drops: bool) -> None:
    problem = random_problem(seed, drops=drops)
    best = least_cost(problem)
    assert best is not None
    demand, limits, watch = np.array(problem.demand), problem.limits(), start_watch(20.0)
    duals = Master(problem).solve(demand, limits, watch).duals
    for target in (best - 1, best, best + 3):
        found = listed(problem, [float(d) for d in duals], target, most=10_000)
        assert found is not None
        choice = choose(problem, demand, limits, found.patterns, found.kinds, target, watch, first=False)
        if target < best:
            assert choice.answer is Answer.NONE
        else:
            assert choice.answer is Answer.BEST
            assert packing(problem, choice.patterns).cost == best


def chosen(
    problem: Problem, patterns: list[Pattern], target: int, *, limits: Ints | None = None, first: bool = False
) -> tuple[Answer, list[Pattern]]:
    kinds = tuple(range(len(problem.demand)))
    most = problem.limits() if limits is None else limits
    found = choose(
        problem, np.array(problem.demand), most, patterns, kinds, target, start_watch(5.0), first=first
    )
    return found.answer, found.patterns


def test_no_patterns_make_no_plan() -> None:
    assert chosen(PAIRS, [], 100) == (Answer.NONE, [])


def test_the_target_and_the_limits_are_kept() -> None:
    assert chosen(PAIRS, [PAIR, TWO_SHORT], 20) == (Answer.BEST, [PAIR, PAIR])
    assert chosen(PAIRS, [PAIR, TWO_SHORT], 19) == (Answer.NONE, [])
    assert chosen(PAIRS, [PAIR], 20, limits=np.array([1])) == (Answer.NONE, [])


def test_the_cheapest_is_sought_unless_the_first_will_do() -> None:
    problem = replace(PAIRS, sticks=(Stick(100, 10), Stick(200, 25)))
    all_in_one = Pattern(1, ((0, 2), (1, 2)))
    assert chosen(problem, [all_in_one, PAIR], 25) == (Answer.BEST, [PAIR, PAIR])
    answer, patterns = chosen(problem, [all_in_one, PAIR], 25, first=True)
    assert answer in {Answer.BEST, Answer.FOUND}
    assert packing(problem, patterns).cost <= 25


def test_kinds_not_asked_for_need_no_cover() -> None:
    choice = choose(
        PAIRS, np.array([2, 2]), np.array([4]), [PAIR, TWO_SHORT], (1,), 10, start_watch(5.0), first=False
    )
    assert (choice.answer, choice.patterns) == (Answer.BEST, [TWO_SHORT])
