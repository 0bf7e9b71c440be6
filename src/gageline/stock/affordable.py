"""Every pattern that a better plan could still use, and the integer program over them.

When the bound is close to the cost aimed at, few patterns are cheap enough at the given prices; a plan of
that cost can use no other. If they can all be listed, a small integer program decides the question.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from gageline.stock.bounds import Prices
from gageline.stock.knapsack import Table, chunks, earnings
from gageline.stock.problem import Ints, Pattern, Problem
from gageline.stock.program import INFINITE, Answer, add_columns, add_rows, new_model, whole
from gageline.stock.watch import Watch

_TABLE = 40_000_000  # entries of the table of best endings; beyond this the listing is not tried


@dataclass(frozen=True, slots=True)
class Listing:
    """All patterns cheap enough, of the piece kinds looked at.

    Args:
        patterns: the patterns, those that could hold a further piece left out where drops earn nothing.
        kinds: the piece kinds looked at.
    """

    patterns: list[Pattern]
    kinds: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class _States:
    """Partial patterns: room left, price earned, and how each came about."""

    room: Ints
    earned: Ints
    steps: list[tuple[Ints, Ints]]


def affordable(
    problem: Problem,
    demand: Ints,
    limits: Ints,
    prices: Prices,
    target: int,
    most: int,
    kinds: tuple[int, ...],
) -> Listing | None:
    """List every pattern that a plan of at most the target cost can use.

    Args:
        problem: the question.
        demand: pieces of each kind.
        limits: the most of each stick.
        prices: exact prices that count cost.
        target: the cost aimed at.
        most: give up beyond so many.
        kinds: piece kinds to look at, in the order they are decided.

    Returns:
        The listing, or None where it would be too long.
    """
    gap = target * prices.scale - prices.scaled_bound(limits)
    longest = max(s.length for s in problem.sticks)
    if (len(kinds) + 1) * (longest + 1) > _TABLE:
        return None
    patterns: list[Pattern] = []
    tables: dict[tuple[bool, ...], Table] = {}
    for s, stick in enumerate(problem.sticks):
        if limits[s] == 0:
            continue
        if stick.fits not in tables:
            tables[stick.fits] = _endings(problem, demand, prices, longest, kinds, stick.fits)
        needed = stick.cost * prices.scale - min(0, int(prices.slack[s])) - gap
        found = _of_stick(problem, demand, prices, s, kinds, tables[stick.fits], needed, most - len(patterns))
        if found is None:
            return None
        patterns += found
    return Listing(patterns, kinds)


def _copies(problem: Problem, demand: Ints, kind: int, length: int, fits: tuple[bool, ...]) -> int:
    if fits and not fits[kind]:
        return 0
    return min(int(demand[kind]), length // problem.lengths[kind])


def _endings(
    problem: Problem,
    demand: Ints,
    prices: Prices,
    longest: int,
    kinds: tuple[int, ...],
    fits: tuple[bool, ...],
) -> Table:
    """Best price of the kinds from each place of the order on, within each length."""
    table = np.zeros((len(kinds) + 1, longest + 1), dtype=np.int64)
    for place in range(len(kinds) - 1, -1, -1):
        kind = kinds[place]
        best = table[place]
        best[:] = table[place + 1]
        for part in chunks(_copies(problem, demand, kind, longest, fits)):
            width = problem.lengths[kind] * part
            np.maximum(best[width:], best[:-width] + prices.pieces[kind] * part, out=best[width:])
    return table


def _of_stick(
    problem: Problem,
    demand: Ints,
    prices: Prices,
    s: int,
    kinds: tuple[int, ...],
    endings: Table,
    needed: int,
    most: int,
) -> list[Pattern] | None:
    """Patterns of one kind of stick that earn what is needed, or None where there are too many."""
    stick = problem.sticks[s]
    earned = earnings(stick) * prices.scale
    states = _States(np.array([stick.length]), np.array([0], dtype=np.int64), [])
    for place, kind in enumerate(kinds):
        length, price = problem.lengths[kind], int(prices.pieces[kind])
        parts = []
        for n in range(_copies(problem, demand, kind, stick.length, stick.fits) + 1):
            room, value = states.room - n * length, states.earned + n * price
            safe = np.maximum(room, 0)
            ok = np.nonzero((room >= 0) & (value + endings[place + 1][safe] + earned[safe] >= needed))[0]
            parts.append((ok, np.full(len(ok), n), room[ok], value[ok]))
        parents, counts, rooms, values = (np.concatenate(column) for column in zip(*parts, strict=True))
        states = _States(rooms, values, [*states.steps, (parents, counts)])
        if len(rooms) > 4 * most:
            return None
    rows = _trace(states, len(kinds))
    keep = rows.any(axis=1)
    if not problem.has_drops:
        for place, kind in enumerate(kinds):
            wants = np.array(demand[kind] if not stick.fits or stick.fits[kind] else 0)
            keep &= ~((rows[:, place] < wants) & (states.room >= problem.lengths[kind]))
    rows = rows[keep]
    if len(rows) > most:
        return None
    return [Pattern(s, tuple(sorted((kinds[j], int(row[j])) for j in np.nonzero(row)[0]))) for row in rows]


def _trace(states: _States, places: int) -> Ints:
    """Counts of each kind in each complete pattern, followed back from the last decision."""
    rows = np.zeros((len(states.room), places), dtype=np.int64)
    at = np.arange(len(states.room))
    for place in range(places - 1, -1, -1):
        parents, counts = states.steps[place]
        rows[:, place] = counts[at]
        at = parents[at]
    return rows


@dataclass(frozen=True, slots=True)
class Choice:
    """What the integer program over given patterns said: the answer and one pattern a stick."""

    answer: Answer
    patterns: list[Pattern]


def choose(
    problem: Problem,
    demand: Ints,
    limits: Ints,
    patterns: list[Pattern],
    kinds: tuple[int, ...],
    target: int,
    watch: Watch,
    *,
    first: bool,
) -> Choice:
    """Cover the demand with given patterns at no more than the target cost.

    Args:
        problem: the question.
        demand: pieces of each kind.
        limits: the most of each stick.
        patterns: what may be used.
        kinds: piece kinds to cover.
        target: the most the plan may cost.
        watch: when to stop.
        first: whether any plan within the target will do; else the cheapest is sought.

    Returns:
        The choice.
    """
    if not patterns:
        return Choice(Answer.NONE, [])
    row_of = {kind: row for row, kind in enumerate(kinds)}
    model = new_model()
    sticks = len(problem.sticks)
    lower = np.concatenate([demand[list(kinds)].astype(float), np.full(sticks + 1, -INFINITE)])
    upper = np.concatenate([np.full(len(kinds), INFINITE), limits.astype(float), [target / problem.step()]])
    add_rows(model, lower, upper)
    costs = [problem.cost(p) for p in patterns]
    entries, most = [], []
    for pattern, cost in zip(patterns, costs, strict=True):
        held = [(row_of[i], n) for i, n in pattern.counts if i in row_of]
        rows = [row for row, _ in held] + [len(kinds) + pattern.stick, len(kinds) + sticks]
        entries.append((rows, [float(n) for _, n in held] + [1.0, cost / problem.step()]))
        useful = max((-(-int(demand[i]) // n) for i, n in pattern.counts if i in row_of), default=0)
        most.append(float(min(useful, int(limits[pattern.stick]))))
    objective = np.zeros(len(patterns)) if first else np.array(costs) / problem.step()
    add_columns(model, objective, np.array(most), entries)
    outcome = whole(model, watch, first=first)
    if outcome.values is None:
        return Choice(outcome.answer, [])
    return Choice(
        outcome.answer, [p for p, n in zip(patterns, outcome.values, strict=True) for _ in range(n)]
    )
