"""Among plans of one cost: fewer set-ups, then fewer stick lengths, then larger drops in fewer sticks."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from gageline.stock.knapsack import Knapsack, as_pattern, groups
from gageline.stock.problem import Packing, Pattern, Problem, packing
from gageline.stock.program import INFINITE, add_columns, add_rows, new_model, whole
from gageline.stock.watch import Watch

_MOST = 400  # patterns looked at
_NODES = 300  # of the integer program; unlike a time it gives the same plan on every machine


@dataclass(frozen=True, slots=True)
class Merit:
    """How a packing does beside its cost; the smaller the better, in this order."""

    setups: int
    lengths: int
    scattered: float


def merit(problem: Problem, plan: Packing) -> Merit:
    """Count set-ups and stick lengths; left-over is less scattered the larger its squares.

    Args:
        problem: the question.
        plan: a packing.

    Returns:
        The merit.
    """
    kinds = {p.stick for p, _ in plan.patterns}
    return Merit(len(plan.patterns), len(kinds), -sum(_square(problem, p) * n for p, n in plan.patterns))


def _square(problem: Problem, pattern: Pattern) -> float:
    longest = max(s.length for s in problem.sticks)
    left = problem.sticks[pattern.stick].length - problem.fill(pattern)
    return (left / longest) ** 2


def fewer_setups(
    problem: Problem, plan: Packing, patterns: tuple[Pattern, ...], most: int | None, watch: Watch
) -> Packing | None:
    """Look for a better plan of no greater cost among given patterns.

    Args:
        problem: the question.
        plan: the plan to better.
        patterns: what may be used besides the plan's own patterns.
        most: the most set-ups wanted; the cost may rise for it, as little as these patterns allow.
        watch: when to stop.

    Returns:
        The best plan found; None where no plan with so few set-ups was found.
    """
    pool = _pool(problem, plan, (*patterns, *_repeatable(problem)))
    if most is not None and len(plan.patterns) > most:
        found = _choose(problem, plan, pool, most, watch)
        if found is None:
            return None
        plan, most = found, None
    better = _choose(problem, plan, _pool(problem, plan, tuple(pool)), None, watch)
    if better is None:
        return plan
    ahead, behind = merit(problem, better), merit(problem, plan)
    as_good = (ahead.setups, ahead.lengths, ahead.scattered) <= (
        behind.setups,
        behind.lengths,
        behind.scattered,
    )
    return better if better.cost < plan.cost or (better.cost == plan.cost and as_good) else plan


def _pool(problem: Problem, plan: Packing, patterns: tuple[Pattern, ...]) -> list[Pattern]:
    """The plan's own patterns and the fullest others that fit into the demand."""
    own = [p for p, _ in plan.patterns]
    fit = [p for p in patterns if all(n <= problem.demand[i] for i, n in p.counts)]
    worth = sorted(
        fit, key=lambda p: (-_often(problem, p), -problem.fill(p) / problem.sticks[p.stick].length, p.counts)
    )
    return list(dict.fromkeys(own + worth))[:_MOST]


def _repeatable(problem: Problem) -> list[Pattern]:
    """The fullest patterns that could be cut once, twice, ... from each stick."""
    lengths = np.array(problem.lengths, dtype=float)
    found = []
    for times in sorted(set(problem.demand)):
        share = np.array(problem.demand, dtype=np.int64) // times
        for members, capacity in groups(problem):
            table = Knapsack(problem, share, problem.sticks[members[0]], capacity)
            table.fill(lengths)
            counts = [(s, table.counts(problem.sticks[s].length)) for s in members]
            found += [as_pattern(s, count) for s, count in counts if count]
    return found


def _often(problem: Problem, pattern: Pattern) -> int:
    """How many times the demand allows a pattern."""
    return min(problem.demand[i] // n for i, n in pattern.counts)


def _choose(
    problem: Problem, plan: Packing, pool: list[Pattern], most: int | None, watch: Watch
) -> Packing | None:
    """Whole numbers of patterns that meet the demand exactly; a switch for each pattern and stick length."""
    model = new_model()
    kinds, sticks, count = len(problem.demand), len(problem.sticks), len(pool)
    step = problem.step()
    demand = np.array(problem.demand, dtype=float)
    limits = problem.limits().astype(float)
    top = [float(min(_often(problem, p), int(limits[p.stick]))) for p in pool]
    cost_limit = INFINITE if most is not None else plan.cost / step
    # rows: demand, stick limits, cost, number of set-ups, pattern switches, stick switches
    lower = np.concatenate([demand, np.full(sticks + 2 + count + sticks, -INFINITE)])
    upper = np.concatenate(
        [demand, limits, [cost_limit, INFINITE if most is None else float(most)], np.zeros(count + sticks)]
    )
    add_rows(model, lower, upper)
    base = kinds + sticks
    columns = []
    for j, pattern in enumerate(pool):
        rows = [i for i, _ in pattern.counts] + [kinds + pattern.stick, base, base + 2 + j]
        columns.append(
            (rows, [float(n) for _, n in pattern.counts] + [1.0, problem.cost(pattern) / step, 1.0])
        )
    for j, pattern in enumerate(pool):
        columns.append(([base + 1, base + 2 + j, base + 2 + count + pattern.stick], [1.0, -top[j], 1.0]))
    columns += [([base + 2 + count + s], [-float(count)]) for s in range(sticks)]
    if most is None:
        spread = 1.0 / (4.0 * max(1, problem.pieces))
        uses = np.array([-spread * _square(problem, p) / (sticks + 1) for p in pool])
        objective = np.concatenate([uses, np.ones(count), np.full(sticks, 1.0 / (sticks + 1))])
    else:
        uses = np.array([problem.cost(p) / step for p in pool])
        objective = np.concatenate([uses, np.zeros(count + sticks)])
    add_columns(model, objective, np.concatenate([top, np.ones(count + sticks)]), columns)
    own = dict(plan.patterns)
    if most is None:
        start = [float(own.get(p, 0)) for p in pool]
        start += [float(p in own) for p in pool]
        start += [float(any(p.stick == s for p in own)) for s in range(sticks)]
        model.setSolution(len(start), np.arange(len(start), dtype=np.int32), np.array(start))
    model.setOptionValue("mip_max_nodes", _NODES)
    outcome = whole(model, watch, first=False)
    if outcome.values is None:
        return None
    return packing(problem, [p for p, n in zip(pool, outcome.values[:count], strict=True) for _ in range(n)])
