"""Bounds that hold exactly: piece prices in whole numbers, checked by exact dynamic programming."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from gageline.stock.knapsack import Knapsack, Table, earnings, groups
from gageline.stock.problem import Ints, Problem

_BITS = 51  # every sum stays below 2^52, where a float holds whole numbers exactly


@dataclass(frozen=True, slots=True)
class Prices:
    """Piece prices, and for each kind of stick the least that a pattern costs beyond the prices it earns.

    A plan with y sticks of each kind costs at least (of_demand + slack·y)/scale. Where cost is not
    counted, no plan with y sticks exists at all when that figure is above zero.

    Args:
        pieces: price of one piece of each kind, whole numbers.
        slack: least value of cost·scale − prices of the pieces, over all patterns of a kind of stick.
        scale: how many price units make one unit of cost.
        of_demand: the price of all the demand.
        counts_cost: whether the cost of sticks is in the slack.
    """

    pieces: Ints
    slack: Ints
    scale: int
    of_demand: int
    counts_cost: bool

    def scaled_bound(self, limits: Ints) -> int:
        """Scale times the least cost of any plan that uses at most so many of each stick."""
        return self.of_demand + sum(min(0, int(r)) * int(u) for r, u in zip(self.slack, limits, strict=True))

    def bound(self, limits: Ints) -> int:
        """The least cost of any plan within the limits, rounded up to a whole number."""
        return -(-self.scaled_bound(limits) // self.scale)


def exact_prices(problem: Problem, demand: Ints, duals: Table, *, counts_cost: bool = True) -> Prices:
    """Round the prices of a linear program to whole numbers and find what they prove.

    Args:
        problem: the question.
        demand: pieces still wanted of each kind.
        duals: price of each kind in units of cost, at least zero.
        counts_cost: whether to count the cost of sticks, or only whether the pieces can be placed.

    Returns:
        The prices with their exact slack.
    """
    dearest = max(s.cost for s in problem.sticks) if counts_cost else 0
    most = max(float(np.dot(duals, demand)), float(dearest), 1.0)
    scale = 1 << max(0, _BITS - int(np.ceil(np.log2(most))) - 1)
    pieces = np.floor(np.maximum(duals, 0.0) * scale).astype(np.int64)
    slack = _slack(problem, demand, pieces, scale if counts_cost else 0)
    return Prices(pieces, slack, scale, int(np.dot(pieces.astype(object), demand)), counts_cost)


def unlimited_prices(problem: Problem, demand: Ints, duals: Table) -> Prices:
    """Prices lowered until no stick of unlimited number costs less than the pieces on it.

    Args:
        problem: the question.
        demand: pieces still wanted of each kind.
        duals: price of each kind in units of cost, at least zero.

    Returns:
        The prices; the bound of a linear program survives the rounding best this way.
    """
    prices = exact_prices(problem, demand, duals)
    excess = [
        -int(r) / (s.cost * prices.scale - int(r))
        for r, s in zip(prices.slack, problem.sticks, strict=True)
        if r < 0 and s.limit is None
    ]
    if not excess or problem.has_drops:
        return prices
    return exact_prices(problem, demand, duals * (1.0 - max(excess) * (1.0 + 1e-9)))


def _slack(problem: Problem, demand: Ints, pieces: Ints, scale: int) -> Ints:
    """Least of cost·scale − prices over the patterns of each kind of stick."""
    slack = np.zeros(len(problem.sticks), dtype=np.int64)
    for members, capacity in groups(problem):
        best = Knapsack(problem, demand, problem.sticks[members[0]], capacity).value(pieces)
        for s in members:
            stick = problem.sticks[s]
            earned = earnings(stick)[::-1] * scale
            slack[s] = stick.cost * scale - int(np.max(best[: stick.length + 1] + earned))
    return slack
