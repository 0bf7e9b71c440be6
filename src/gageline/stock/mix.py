"""How many sticks of each length: a small integer program that learns from the cutting patterns.

Its rows are the exact prices found by column generation: sticks y cost at least what the prices of the
demand say, less what the best pattern of each stick can earn. Mixes shown not to hold the pieces are
excluded.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from gageline.stock.bounds import Prices
from gageline.stock.knapsack import Table, chunks
from gageline.stock.problem import Ints, Problem
from gageline.stock.program import INFINITE, Answer, add_columns, add_rows, new_model, whole
from gageline.stock.watch import Watch

_TABLE = 4_000_000  # different costs
_LONGEST_SECONDS = 1.0  # for the longest of the mixes of one cost, which is only a preference


@dataclass(frozen=True, slots=True)
class Mix:
    """A number of sticks of each kind, and the least that any plan not yet excluded costs."""

    sticks: Ints
    cost: int


@dataclass(frozen=True, slots=True)
class Knowledge:
    """What is known about mixes.

    Args:
        prices: exact prices; each gives a row.
        refuted: mixes (and all smaller ones) that cannot do it or are not wanted again.
    """

    prices: tuple[Prices, ...] = ()
    refuted: tuple[tuple[int, ...], ...] = ()

    def learn(self, prices: Prices) -> Knowledge:
        """With one more row."""
        return replace(self, prices=(*self.prices, prices))

    def exclude(self, sticks: Ints) -> Knowledge:
        """Without that mix and those inside it."""
        return replace(self, refuted=(*self.refuted, tuple(int(n) for n in sticks)))


def least_cost(problem: Problem, prices: Prices, target: int) -> int:
    """The least that sticks earning the prices of the demand cost, by dynamic programming over all costs.

    Args:
        problem: the question; its drops must earn nothing.
        prices: exact prices that count cost.
        target: costs above are not looked at.

    Returns:
        A cost that no plan stays below; zero where the table would be too long.
    """
    step = problem.step()
    size = target // step + 1
    if size > _TABLE:
        return 0
    earned = np.zeros(size, dtype=np.int64)
    for stick, slack, limit in zip(problem.sticks, prices.slack, problem.limits(), strict=True):
        gain, cost = stick.cost * prices.scale - int(slack), stick.cost // step
        for part in chunks(min(int(limit), target // max(1, stick.cost))):
            width = cost * part
            more = min(gain * part, prices.of_demand)
            earned[width:] = np.maximum(earned[width:], earned[: size - width] + more)
        np.minimum(earned, prices.of_demand, out=earned)
    enough = np.nonzero(earned >= prices.of_demand)[0]
    return int(enough[0]) * step if len(enough) else target + step


def cheapest_mix(
    problem: Problem, known: Knowledge, target: int, watch: Watch, floor: int = 0
) -> Mix | Answer:
    """The cheapest mix that nothing known speaks against, of those the longest in all.

    Args:
        problem: the question.
        known: rows and exclusions.
        target: the most it may cost.
        watch: when to stop.
        floor: the least it may cost.

    Returns:
        The mix, or NONE where no plan within the target is left, or UNKNOWN where time ran out.
    """
    sticks = problem.sticks
    costs = np.array([s.cost / problem.step() for s in sticks] + [-1.0])
    found: Ints | None = None
    cost = target
    answer = _solve(problem, known, costs, (floor, target), watch)
    while True:
        if answer is Answer.UNKNOWN:
            return Answer.UNKNOWN
        if not isinstance(answer, Answer):
            found = answer
            cost = sum(s.cost * int(n) for s, n in zip(sticks, found, strict=False)) - int(found[-1])
        # a proof must not hang on one run of floating-point arithmetic: ask again for anything cheaper
        most = target if found is None else cost - problem.step()
        if most < floor:
            break
        answer = _solve(problem, known, costs, (floor, most), watch, presolve=False)
        if answer is Answer.NONE:
            break
    if found is None:
        return Answer.NONE
    lengths = np.array([-s.length / sticks[0].length for s in sticks] + [0.0])
    longest = _solve(problem, known, lengths, (floor, cost), watch.within(_LONGEST_SECONDS))
    best = found if isinstance(longest, Answer) else longest
    return Mix(best[: len(sticks)], cost)


def _solve(
    problem: Problem,
    known: Knowledge,
    objective: Table,
    cost: tuple[int, int],
    watch: Watch,
    *,
    presolve: bool = True,
) -> Ints | Answer:
    """Least objective of the mixes whose cost lies between two; the last column is what drops earn."""
    sticks = problem.sticks
    limits = problem.limits()
    count = len(sticks)
    step = problem.step()
    rows = [([-s.cost / step for s in sticks] + [1.0], -cost[1] / step)]
    rows += [_row(problem, prices) for prices in known.prices]
    model = new_model()
    switches = [[s for s in range(count) if mix[s] < limits[s]] for mix in known.refuted]
    lower = [low for _, low in rows]
    for free in switches:
        lower += [0.0] * len(free) + [1.0]
    upper = np.full(len(lower), INFINITE)
    upper[0] = -cost[0] / step
    add_rows(model, np.array(lower), upper)
    entries: list[tuple[list[int], list[float]]] = [
        (list(range(len(rows))), [row[c] for row, _ in rows]) for c in range(count + 1)
    ]
    at = len(rows)
    extra: list[tuple[list[int], list[float]]] = []
    for mix, free in zip(known.refuted, switches, strict=True):
        for k, s in enumerate(free):
            entries[s][0].append(at + k)
            entries[s][1].append(1.0)
            extra.append(([at + k, at + len(free)], [-float(mix[s] + 1), 1.0]))
        at += len(free) + 1
    earned = INFINITE if problem.has_drops else 0.0
    most = np.concatenate([limits.astype(float), [earned], np.ones(len(extra))])
    add_columns(model, np.concatenate([objective, np.zeros(len(extra))]), most, entries + extra)
    if not presolve:
        model.setOptionValue("presolve", "off")
    outcome = whole(model, watch, first=False)
    if outcome.answer is Answer.BEST and outcome.values is not None:
        return outcome.values[: count + 1]
    return Answer.NONE if outcome.answer is Answer.NONE else Answer.UNKNOWN


def _row(problem: Problem, prices: Prices) -> tuple[list[float], float]:
    """What exact prices say of a mix, in steps of cost, or in the size of its largest entry."""
    on = prices.scale if prices.counts_cost else 0
    entries = [s.cost * on - int(r) for s, r in zip(problem.sticks, prices.slack, strict=True)] + [-on]
    unit = on * problem.step() or max(abs(v) for v in entries) or 1
    return [v / unit for v in entries], prices.of_demand / unit
