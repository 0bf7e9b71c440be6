"""The bounded knapsack."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

from gageline.stock.knapsack import Knapsack, chunks, earnings, groups
from gageline.stock.problem import DropValue, Problem, Stick

PROBLEM = Problem(
    (3, 4, 7),
    (5, 2, 1),
    (Stick(20, 1), Stick(12, 1), Stick(15, 1, fits=(True, False, True))),
)


@pytest.mark.parametrize("copies", [0, 1, 2, 7, 8, 100])
def test_chunks_give_every_count(copies: int) -> None:
    sums = {
        sum(part for part, on in zip(chunks(copies), use) if on)
        for use in product((0, 1), repeat=len(chunks(copies)))
    }
    assert sums == set(range(copies + 1))


def test_fillings_equal_brute_force() -> None:
    table = Knapsack(PROBLEM, np.array(PROBLEM.demand), PROBLEM.sticks[0], 20)
    prices = np.array([2.0, 3.5, 6.0])
    best = table.fill(prices)
    assert np.array_equal(best, table.value(prices))
    for length in range(21):
        tries = [
            float(np.dot(n, prices))
            for n in product(range(6), range(3), range(2))
            if np.dot(n, PROBLEM.lengths) <= length
        ]
        counts = table.counts(length)
        assert best[length] == max(tries)
        assert sum(prices[i] * n for i, n in counts.items()) == max(tries)
        assert sum(PROBLEM.lengths[i] * n for i, n in counts.items()) <= length


def test_kinds_that_a_stick_does_not_accept_stay_out() -> None:
    assert groups(PROBLEM) == [([0, 1], 20), ([2], 15)]
    table = Knapsack(PROBLEM, np.array(PROBLEM.demand), PROBLEM.sticks[2], 15)
    table.fill(np.array([1.0, 100.0, 1.0]))
    assert 1 not in table.counts(15)


def test_earnings_start_at_the_shortest_drop_kept() -> None:
    stick = Stick(6, 10, drop=DropValue(keep=3, extra=-1, rate=(3, 2)))
    assert earnings(stick).tolist() == [0, 0, 0, 3, 4, 6, 7]
