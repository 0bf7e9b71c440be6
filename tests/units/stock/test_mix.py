"""Which mix of sticks comes next: compared with trying every mix there is."""

from __future__ import annotations

from itertools import product
from random import Random

import numpy as np
import pytest

from cutting import least_cost as by_trying
from cutting import random_problem
from gageline.stock.bounds import Prices, exact_prices
from gageline.stock.mix import Knowledge, Mix, cheapest_mix, least_cost
from gageline.stock.problem import DropValue, Problem, Stick
from gageline.stock.program import Answer
from gageline.stock.watch import start_watch

# three 40s: one on a 50, two on a 90
PROBLEM = Problem((40,), (3,), (Stick(50, 6), Stick(90, 10)))


def priced(problem: Problem, duals: list[float], *, counts_cost: bool = True) -> Prices:
    return exact_prices(problem, np.array(problem.demand), np.array(duals), counts_cost=counts_cost)


def ask(problem: Problem, known: Knowledge, target: int) -> Mix | Answer:
    return cheapest_mix(problem, known, target, start_watch(20.0))


def test_learning_and_excluding_leave_what_was_known() -> None:
    nothing = Knowledge()
    prices = priced(PROBLEM, [5.0])
    more = nothing.learn(prices).exclude(np.array([1, 0]))
    assert nothing == Knowledge((), ())
    assert more.prices == (prices,)
    assert more.refuted == ((1, 0),)


def test_an_exclusion_takes_smaller_mixes_along_and_leaves_others() -> None:
    # without prices every mix will do, and no stick at all is the cheapest
    found = ask(PROBLEM, Knowledge(), 40)
    assert isinstance(found, Mix)
    assert found.cost == 0
    found = ask(PROBLEM, Knowledge().exclude(np.array([2, 1])), 40)
    assert isinstance(found, Mix)
    # not 6, 10, 12, 16 or 22, which lie inside two short and one long: three short, or else two long
    assert (found.cost, found.sticks.tolist()) == (18, [3, 0])
    found = ask(PROBLEM, Knowledge().exclude(np.array([2, 1])).exclude(np.array([3, 0])), 40)
    assert isinstance(found, Mix)
    assert (found.cost, found.sticks.tolist()) == (20, [0, 2])


def test_nothing_within_the_target_is_none() -> None:
    # a 40 is worth 5: three of them 15, and no mix of 6 and 10 costs 15
    known = Knowledge().learn(priced(PROBLEM, [5.0]))
    assert ask(PROBLEM, known, 14) is Answer.NONE
    assert ask(PROBLEM, known, 15) is Answer.NONE
    found = ask(PROBLEM, known, 16)
    assert isinstance(found, Mix)
    assert (found.cost, found.sticks.tolist()) == (16, [1, 1])


def test_when_all_mixes_are_excluded_none_is_left() -> None:
    assert ask(PROBLEM, Knowledge().exclude(np.array([3, 3])), 1000) is Answer.NONE


def test_of_equal_cost_the_longest_comes_first() -> None:
    problem = Problem((40,), (2,), (Stick(50, 10, 2), Stick(90, 10, 2), Stick(60, 10, 2)))
    found = ask(problem, Knowledge().exclude(np.array([0, 0, 0])), 10)
    assert isinstance(found, Mix)
    assert (found.cost, found.sticks.tolist()) == (10, [0, 1, 0])


def test_what_drops_may_earn_lowers_the_cost() -> None:
    # one 4 of a 10 that costs 9: the 6 left earn 3. At 6 a piece the prices say just that
    problem = Problem((4,), (1,), (Stick(10, 9, drop=DropValue(keep=3, extra=0, rate=(1, 2))),))
    known = Knowledge().learn(priced(problem, [6.0])).exclude(np.array([0]))
    found = ask(problem, known, 9)
    assert isinstance(found, Mix)
    assert (found.cost, found.sticks.tolist()) == (6, [1])
    assert by_trying(problem) == 6


def test_no_time_is_not_none() -> None:
    # each row wants a different split of the sticks, so that the least cost has to be searched for
    random = Random(1)  # noqa: S311  # test data
    sticks = tuple(Stick(random.randint(900, 1100), random.randint(900, 1100)) for _ in range(8))
    problem = Problem((301, 287, 263, 191), (9, 9, 9, 9), sticks)
    known = Knowledge()
    for _ in range(4):
        known = known.learn(priced(problem, [random.uniform(100.0, 300.0) for _ in range(4)]))
    assert cheapest_mix(problem, known, 20_000, start_watch(0.0)) is Answer.UNKNOWN
    assert isinstance(ask(problem, known, 20_000), Mix)


@pytest.mark.parametrize("counts_cost", [False, True])
@pytest.mark.parametrize("seed", range(20))
def test_the_cheapest_of_all_mixes_that_nothing_speaks_against(seed: int, *, counts_cost: bool) -> None:
    problem = random_problem(seed)
    unit = 1.0 if not counts_cost else max(s.cost / s.length for s in problem.sticks)
    prices = priced(problem, [unit * n for n in problem.lengths], counts_cost=counts_cost)
    refuted = (1, 1, 1)
    known = Knowledge().learn(prices).exclude(np.array(refuted))
    limits = problem.limits()
    costs = np.array([s.cost for s in problem.sticks])
    target = int(costs.max()) * 4

    def possible(mix: tuple[int, ...]) -> bool:
        inside = all(n <= r for n, r in zip(mix, refuted, strict=True))
        enough = prices.of_demand + int(prices.slack @ np.array(mix))
        # with cost: the demand's price may not exceed what the mix costs; without: what it can hold
        paid = int(costs @ np.array(mix)) * prices.scale if counts_cost else 0
        return not inside and enough <= paid

    mixes = [m for m in product(*(range(int(n) + 1) for n in limits)) if possible(m)]
    found = ask(problem, known, target)
    best = min((int(costs @ np.array(m)) for m in mixes), default=target + 1)
    if best > target:
        assert found is Answer.NONE
        return
    assert isinstance(found, Mix)
    assert found.cost == best == int(costs @ found.sticks)
    lengths = np.array([s.length for s in problem.sticks])
    assert lengths @ found.sticks == max(lengths @ np.array(m) for m in mixes if costs @ np.array(m) == best)


def by_mixes(problem: Problem, prices: Prices, target: int) -> int:
    """Least cost of sticks that earn what the prices ask, by trying every mix; above the target one more."""
    costs = [target + problem.step()]
    for mix in product(*(range(int(n) + 1) for n in problem.limits())):
        cost = sum(n * s.cost for n, s in zip(mix, problem.sticks, strict=True))
        earned = sum(
            n * (s.cost * prices.scale - int(r))
            for n, s, r in zip(mix, problem.sticks, prices.slack, strict=True)
        )
        if earned >= prices.of_demand and cost <= target:
            costs.append(cost)
    return min(costs)


@pytest.mark.parametrize("seed", range(20))
def test_the_least_cost_is_that_of_the_best_mix_and_no_plan_costs_less(seed: int) -> None:
    problem = random_problem(seed)
    best = by_trying(problem)
    assert best is not None
    prices = priced(problem, [3.0 * n for n in problem.lengths])
    for target in (best + 40, best, best // 2):
        found = least_cost(problem, prices, target)
        assert found == by_mixes(problem, prices, target)
        assert found <= max(best, target + problem.step())


def test_costs_too_many_for_a_table_give_no_bound() -> None:
    dear = Problem((40,), (3,), (Stick(50, 60_000_001), Stick(90, 100_000_000)))
    assert least_cost(dear, priced(dear, [5e7]), 200_000_000) == 0


def test_a_floor_leaves_the_cheaper_mixes_out() -> None:
    found = cheapest_mix(PROBLEM, Knowledge(), 40, start_watch(20.0), 17)
    assert isinstance(found, Mix)
    assert found.cost == 18
