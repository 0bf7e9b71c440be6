"""Among plans of one cost: fewer set-ups, then fewer stick lengths, then larger drops in fewer sticks."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from gageline.stock.knapsack import Knapsack, as_pattern, groups
from gageline.stock.problem import Packing, Pattern, Problem, Stick, packing
from gageline.stock.program import INFINITE, Answer, add_columns, add_rows, new_model, whole
from gageline.stock.search import search
from gageline.stock.watch import Watch

_MOST = 400  # patterns looked at
_EVERY = 1200  # patterns, where all that there are shall be looked at
_NODES = 300  # of the integer program; unlike a time it gives the same plan on every machine


def least_setups(problem: Problem, watch: Watch) -> int:
    """A number of set-ups that no plan has fewer than.

    Every length must be cut in some set-up, and a set-up holds no more lengths than fit in a stick: so many
    set-ups as sticks for one piece of each length.

    Args:
        problem: the question, each length once and at its least.
        watch: when to stop.
    """
    longest = max(stick.length for stick in problem.sticks)
    once = replace(problem, demand=(1,) * len(problem.lengths), sticks=(Stick(longest, 1),))
    return search(once, watch).bound


def setups_refuted(problem: Problem, most: int, watch: Watch) -> bool:
    """Whether it is certain that no plan has so few set-ups, every pattern that there is being looked at.

    Args:
        problem: the question, each length of piece and stick once.
        most: the most set-ups.
        watch: when to stop; with too many patterns or too little time nothing is certain.
    """
    pool = _every(problem)
    return pool is not None and _choose(problem, None, pool, most, watch) is Answer.NONE


def _every(problem: Problem) -> list[Pattern] | None:
    """Every pattern of no more pieces than are wanted, or None where they are too many."""
    found: list[Pattern] = []
    for s, stick in enumerate(problem.sticks):
        begun: list[tuple[int, tuple[tuple[int, int], ...]]] = [(stick.length, ())]
        for i, length in enumerate(problem.lengths):
            most = problem.demand[i] if not stick.fits or stick.fits[i] else 0
            begun += [
                (room - n * length, (*counts, (i, n)))
                for room, counts in begun
                for n in range(1, min(most, room // length) + 1)
            ]
            if len(begun) > _EVERY:
                return None
        found += [Pattern(s, counts) for _, counts in begun if counts]
    return found if len(found) <= _EVERY else None


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
        most: the most set-ups wanted; the cost may rise for it, as little as the patterns looked at allow.
        watch: when to stop.

    Returns:
        The best plan found; None where no plan with so few set-ups was found.
    """
    pool = _pool(problem, plan, (*patterns, *_repeatable(problem)))
    if most is not None and len(plan.patterns) > most:
        found = _choose(problem, None, _every(problem) or pool, most, watch)
        if isinstance(found, Answer):
            return None
        plan = found
    better = _choose(problem, plan, _pool(problem, plan, tuple(pool)), None, watch)
    if isinstance(better, Answer):
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
    problem: Problem, plan: Packing | None, pool: list[Pattern], most: int | None, watch: Watch
) -> Packing | Answer:
    """Whole numbers of patterns that meet the demand exactly; a switch for each pattern and stick length.

    With a plan to better, the fewest set-ups of no greater cost; else the least cost of at most so many.
    """
    model = new_model()
    kinds, sticks, count = len(problem.demand), len(problem.sticks), len(pool)
    step = problem.step()
    demand = np.array(problem.demand, dtype=float)
    limits = problem.limits().astype(float)
    top = [float(min(_often(problem, p), int(limits[p.stick]))) for p in pool]
    cost_limit = INFINITE if plan is None else plan.cost / step
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
    if plan is not None:
        spread = 1.0 / (4.0 * max(1, problem.pieces))
        uses = np.array([-spread * _square(problem, p) / (sticks + 1) for p in pool])
        objective = np.concatenate([uses, np.ones(count), np.full(sticks, 1.0 / (sticks + 1))])
    else:
        uses = np.array([problem.cost(p) / step for p in pool])
        objective = np.concatenate([uses, np.zeros(count + sticks)])
    add_columns(model, objective, np.concatenate([top, np.ones(count + sticks)]), columns)
    if plan is not None:
        own = dict(plan.patterns)
        start = [float(own.get(p, 0)) for p in pool]
        start += [float(p in own) for p in pool]
        start += [float(any(p.stick == s for p in own)) for s in range(sticks)]
        model.setSolution(len(start), np.arange(len(start), dtype=np.int32), np.array(start))
    model.setOptionValue("mip_max_nodes", _NODES)
    outcome = whole(model, watch, first=False)
    if outcome.values is None:
        return outcome.answer
    return packing(problem, [p for p, n in zip(pool, outcome.values[:count], strict=True) for _ in range(n)])
