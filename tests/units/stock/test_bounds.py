"""Bounds from whole-number prices: never above the cost of a plan, whatever the prices."""

from __future__ import annotations

from itertools import product
from random import Random

import numpy as np
import pytest

from cutting import all_patterns, least_cost, random_problem
from gageline.stock.bounds import Prices, exact_prices, unlimited_prices
from gageline.stock.problem import DropValue, Problem, Stick

SEEDS = range(25)


def duals_of(seed: int, problem: Problem) -> np.ndarray:
    random = Random(seed)  # noqa: S311  # test data
    return np.array([random.uniform(0.0, 40.0) for _ in problem.lengths])


def test_the_bound_is_rounded_up_to_a_whole_cost() -> None:
    prices = Prices(np.array([9]), np.array([-2, 5]), 4, 9, counts_cost=True)
    assert prices.bound(np.array([0, 0])) == 3  # 9/4
    # two sticks that earn 2 too much take 4 off; slack above zero is never counted
    assert prices.scaled_bound(np.array([2, 7])) == 5
    assert prices.bound(np.array([2, 7])) == 2  # 5/4
    assert prices.bound(np.array([6, 0])) == 0  # -3/4


def test_prices_and_slack_of_a_case_by_hand() -> None:
    # a stick of 10 takes two 4s or one 7; at prices 3 and 4 it earns 6 at most and costs 9
    problem = Problem((7, 4), (1, 2), (Stick(10, 9), Stick(8, 5)))
    prices = exact_prices(problem, np.array([1, 2]), np.array([4.0, 3.0]))
    assert (prices.pieces / prices.scale).tolist() == [4.0, 3.0]
    assert (prices.slack / prices.scale).tolist() == [3.0, -1.0]
    assert prices.of_demand == 10 * prices.scale


def test_what_a_drop_earns_is_in_the_slack() -> None:
    # a 4 leaves 6, which earn 3; two 4s leave 2, too short to keep: 9 - 3 - 3 and 9 - 6 are both 3, but
    # the stick left whole earns 5 of its 9
    problem = Problem((4,), (2,), (Stick(10, 9, drop=DropValue(keep=3, extra=0, rate=(1, 2))),))
    prices = exact_prices(problem, np.array([2]), np.array([3.0]))
    assert prices.slack[0] == 3 * prices.scale
    prices = exact_prices(problem, np.array([2]), np.array([1.0]))
    assert prices.slack[0] == 4 * prices.scale


@pytest.mark.parametrize("drops", [False, True])
@pytest.mark.parametrize("seed", SEEDS)
def test_no_prices_bound_above_the_optimum(seed: int, *, drops: bool) -> None:
    problem = random_problem(seed, drops=drops)
    best = least_cost(problem)
    assert best is not None
    for make in (exact_prices, unlimited_prices):
        prices = make(problem, np.array(problem.demand), duals_of(seed, problem))
        assert prices.bound(problem.limits()) <= best


@pytest.mark.parametrize("seed", SEEDS)
def test_slack_is_the_least_over_all_patterns(seed: int) -> None:
    problem = random_problem(seed)
    prices = exact_prices(problem, np.array(problem.demand), duals_of(seed, problem))
    for s, stick in enumerate(problem.sticks):
        earned = [
            sum(int(prices.pieces[i]) * n for i, n in p.counts) for p in all_patterns(problem) if p.stick == s
        ]
        assert prices.slack[s] == stick.cost * prices.scale - max(earned, default=0)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_mix_refuted_without_cost_holds_no_plan(seed: int) -> None:
    problem = random_problem(seed)
    demand = np.array(problem.demand)
    # the price of a piece is its length: mixes that are too short in all are refuted, and no others wrongly
    prices = exact_prices(problem, demand, np.array(problem.lengths, dtype=float), counts_cost=False)
    refuted = 0
    for mix in product(range(3), repeat=3):
        sticks = tuple(Stick(s.length, s.cost, n, s.fits) for s, n in zip(problem.sticks, mix, strict=True))
        if prices.of_demand + int(prices.slack @ np.array(mix)) > 0:
            refuted += 1
            assert least_cost(Problem(problem.lengths, problem.demand, sticks)) is None
    assert refuted > 0


def test_prices_are_lowered_until_no_stick_pays_back() -> None:
    # one 60 a stick of 100: three sticks, 30; at 12 a piece every further stick would take 2 off
    problem = Problem((60,), (3,), (Stick(100, 10),))
    demand, many = np.array([3]), np.array([1000])
    assert exact_prices(problem, demand, np.array([12.0])).bound(many) == 36 - 2000
    assert unlimited_prices(problem, demand, np.array([12.0])).bound(many) == 30


def test_prices_that_already_hold_are_left_alone() -> None:
    problem = Problem((60,), (3,), (Stick(100, 10), Stick(60, 1, 1)))
    demand, duals = np.array([3]), np.array([9.0])
    # the limited stick may pay back: 9 - 1 for the one there is
    prices = unlimited_prices(problem, demand, duals)
    assert prices.pieces[0] == 9 * prices.scale
    assert prices.bound(np.array([3, 1])) == 27 - 8
