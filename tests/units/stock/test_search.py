"""Cases of the search whose answers are known for other reasons."""

from __future__ import annotations

from random import Random

import numpy as np
import pytest

import gageline.stock.search as searching
from gageline.stock.bounds import exact_prices
from gageline.stock.columns import Master
from gageline.stock.heuristics import best_fit, dive
from gageline.stock.mix import Knowledge, Mix, cheapest_mix
from gageline.stock.problem import Ints, Pattern, Problem, Stick, packing
from gageline.stock.program import Answer
from gageline.stock.search import search
from gageline.stock.setups import fewer_setups, merit
from gageline.stock.watch import Progress, Watch, start_watch

# pairs of 51 and 49 fill a stick of 100 exactly; best fit decreasing finds it, and so must the search
PAIRS = Problem((51, 49, 34, 33), (4, 4, 2, 4), (Stick(100, 10),))


def test_perfect_packing() -> None:
    found = search(PAIRS, start_watch(10.0))
    assert found.packing is not None
    assert (found.packing.cost, found.bound, found.proven) == (60, 60, True)


def test_patterns_hold_no_more_than_the_demand() -> None:
    # three 44s, four 33s or eleven 12s fill a stick of 132, which would give 2/3 + 3/4 + 6/11 < 2 sticks
    # (the classic case without the round-up property, Marcotte 1986, from memory); but there are only two
    # 44s, three 33s and six 12s, and no plan has two sticks
    problem = Problem((44, 33, 12), (2, 3, 6), (Stick(132, 1),))
    relaxed = Master(problem).solve(np.array(problem.demand), problem.limits(), start_watch(5.0))
    assert relaxed.value > 2.0
    found = search(problem, start_watch(10.0))
    assert found.packing is not None
    assert (found.packing.cost, found.bound, found.proven) == (3, 3, True)


def test_exact_prices_bound_the_cost() -> None:
    prices = exact_prices(PAIRS, np.array(PAIRS.demand), np.array(PAIRS.lengths) / 10.0)
    assert prices.bound(PAIRS.limits()) == 60


def test_prices_too_high_are_paid_back_by_the_slack() -> None:
    dear = exact_prices(PAIRS, np.array(PAIRS.demand), np.array([9.0, 9.0, 9.0, 9.0]))
    assert dear.bound(np.array([6])) <= 60


def test_mixes_come_in_order_of_cost() -> None:
    problem = Problem((40,), (3,), (Stick(50, 6), Stick(90, 10)))
    prices = exact_prices(problem, np.array([3]), np.array([1.0]), counts_cost=False)
    known = Knowledge().learn(prices)
    seen = []
    while True:
        mix = cheapest_mix(problem, known, 18, start_watch(5.0))
        if not isinstance(mix, Mix):
            break
        seen.append((mix.cost, mix.sticks.tolist()))
        known = known.exclude(mix.sticks)
    assert mix is Answer.NONE
    assert seen == [(16, [1, 1]), (18, [3, 0])]


def test_best_fit_keeps_limits() -> None:
    problem = Problem((40, 30), (2, 2), (Stick(70, 5, limit=1), Stick(40, 4, limit=5)))
    patterns = best_fit(problem)
    assert patterns is not None
    assert packing(problem, patterns).cost == 5 + 4 + 4
    assert best_fit(Problem((40,), (3,), (Stick(70, 5, limit=2),))) is None


def test_fewer_setups_at_the_same_cost() -> None:
    problem = Problem((60, 40, 30, 10), (2, 2, 2, 6), (Stick(100, 1),))
    scattered = packing(
        problem,
        [p for p, n in search(problem, start_watch(5.0)).packing.patterns for _ in range(n)],  # type: ignore[union-attr]  # there is a plan
    )
    better = fewer_setups(problem, scattered, (), None, start_watch(5.0))
    assert better is not None
    assert better.cost == scattered.cost
    assert merit(problem, better).setups <= merit(problem, scattered).setups


def test_time_over_keeps_the_best_plan_and_an_honest_bound() -> None:
    told: list[Progress] = []
    problem = Problem((37, 31, 29, 23), (9, 9, 9, 9), (Stick(100, 10), Stick(70, 8)))
    found = search(problem, start_watch(0.0, tell=told.append))
    full = search(problem, start_watch(20.0))
    assert found.packing is not None
    assert full.packing is not None
    assert full.proven
    assert found.bound <= full.packing.cost <= found.packing.cost
    assert told[0].stage == "best fit"


def triplets(count: int) -> Problem:
    """Three pieces a stick, each stick full; kinds 3k, 3k+1 and 3k+2 are cut from one stick."""
    random = Random(5)  # noqa: S311  # test data
    lengths: list[int] = []
    while len(lengths) < 3 * count:
        one = random.randint(380, 490)
        two = random.randint(250, (1000 - one) // 2)
        if not {one, two, 1000 - one - two} & set(lengths) and len({one, two, 1000 - one - two}) == 3:
            lengths += [one, two, 1000 - one - two]
    return Problem(tuple(lengths), (1,) * len(lengths), (Stick(1000, 1),))


def test_a_dive_that_ends_above_its_target_does_not_end_the_search(monkeypatch: pytest.MonkeyPatch) -> None:
    problem = triplets(20)
    simple = best_fit(problem)
    assert simple is not None
    full = [Pattern(0, tuple((3 * k + j, 1) for j in range(3))) for k in range(18)]
    pairs = [Pattern(0, ((k, 1), (k + 3, 1))) for k in range(54, 57)]
    assert len(simple) > len(full + pairs) > 20
    asked: list[int | None] = []

    def first_above(
        problem: Problem, master: Master, limits: Ints, target: int | None, watch: Watch, tilt: object = None
    ) -> list[Pattern] | None:
        asked.append(target)
        if len(asked) == 1:
            return full + pairs
        return dive(problem, master, limits, target, watch, tilt)  # type: ignore[arg-type]  # handed on as it came

    monkeypatch.setattr(searching, "dive", first_above)
    monkeypatch.setattr(searching, "affordable", lambda *_: None)
    found = search(problem, start_watch(20.0))
    assert found.packing is not None
    assert (found.packing.cost, found.bound, found.proven) == (20, 20, True)
    assert asked[:2] == [20, 20]
