"""Quick plans: best-fit decreasing, and a dive through the linear program."""

from __future__ import annotations

from bisect import bisect_left, insort

import numpy as np

from gageline.stock.affordable import affordable, choose
from gageline.stock.bounds import exact_prices
from gageline.stock.columns import Master
from gageline.stock.knapsack import Table, as_pattern
from gageline.stock.problem import Ints, Pattern, Problem, Stick
from gageline.stock.program import Answer
from gageline.stock.watch import Watch

_FINISH_PIECES = 60  # so few pieces left are tried exactly
_FINISH_PATTERNS = 4000
_FINISH_SECONDS = 2.0


def best_fit(problem: Problem) -> list[Pattern] | None:
    """Longest piece first, each in the fullest open stick that takes it.

    A new stick is the one that costs least for its length. In the end each stick is changed for the
    cheapest that holds its pieces.

    Args:
        problem: the question.

    Returns:
        One pattern a stick, or None where the limits left a piece over.
    """
    left = problem.limits()
    filled: list[tuple[int, int, dict[int, int]]] = []
    rooms: list[tuple[int, int]] = []
    rate = sorted(range(len(problem.sticks)), key=lambda s: _rate(problem, s))
    order = sorted(range(len(problem.lengths)), key=lambda i: (-problem.lengths[i], i))
    for i in (kind for kind in order for _ in range(problem.demand[kind])):
        length = problem.lengths[i]
        at = bisect_left(rooms, (length, 0))
        while at < len(rooms) and not _accepts(problem, filled[rooms[at][1]][0], i):
            at += 1
        if at < len(rooms):
            room, number = rooms.pop(at)
        else:
            s = next((s for s in rate if left[s] > 0 and _takes(problem, s, i)), None)
            if s is None:
                return None
            left[s] -= 1
            filled.append((s, 0, {}))
            room, number = problem.sticks[s].length, len(filled) - 1
        counts = filled[number][2]
        counts[i] = counts.get(i, 0) + 1
        insort(rooms, (room - length, number))
    return _exchange(problem, [as_pattern(s, counts) for s, _, counts in filled], left)


def _rate(problem: Problem, s: int) -> tuple[float, int]:
    stick = problem.sticks[s]
    return stick.cost / stick.length, -stick.length


def _accepts(problem: Problem, s: int, kind: int) -> bool:
    fits = problem.sticks[s].fits
    return not fits or fits[kind]


def _takes(problem: Problem, s: int, kind: int) -> bool:
    return problem.lengths[kind] <= problem.sticks[s].length and _accepts(problem, s, kind)


def _exchange(problem: Problem, patterns: list[Pattern], left: Ints) -> list[Pattern]:
    """Change each stick for the cheapest one free that holds its pieces, the emptiest stick first."""
    changed = list(patterns)
    for at in sorted(range(len(changed)), key=lambda k: problem.fill(changed[k])):
        pattern = changed[at]
        fill = problem.fill(pattern)
        for s, stick in enumerate(problem.sticks):
            other = Pattern(s, pattern.counts)
            holds = fill <= stick.length and all(_accepts(problem, s, i) for i, _ in pattern.counts)
            if left[s] > 0 and holds and problem.cost(other) < problem.cost(changed[at]):
                left[changed[at].stick] += 1
                left[s] -= 1
                changed[at] = other
    return changed


def dive(
    problem: Problem,
    master: Master,
    limits: Ints,
    target: int | None,
    watch: Watch,
    tilt: Table | None = None,
) -> list[Pattern] | None:
    """Solve the linear program, settle its whole part or its fullest pattern, and go on with the rest.

    Args:
        problem: the question.
        master: the linear program; patterns found on the way stay in it.
        limits: the most of each stick.
        target: give up once the plan is bound to cost more; None for any cost.
        watch: when to stop.
        tilt: small amounts added to the demand in the linear program, which lead another way down.

    Returns:
        One pattern a stick, or None. The last fractions rounded up may bring the plan above the target.
    """
    demand = np.array(problem.demand, dtype=np.int64)
    left = limits.copy()
    settled: list[Pattern] = []
    spent, finish_at = 0, _FINISH_PIECES
    margin = 1e-6 if tilt is None else 1e-6 + float(np.abs(tilt).sum()) * max(s.cost for s in problem.sticks)
    while demand.any():
        if watch.over():
            return None
        relaxed = master.solve(demand, left, watch, tilt=tilt)
        if relaxed.short > 1e-6 or (target is not None and spent + relaxed.value > target + margin):
            return None
        pieces = int(demand.sum())
        if target is not None and pieces <= finish_at:
            finish_at = pieces // 2
            ending = _finish(problem, demand, left, relaxed.duals, target - spent, watch)
            if ending is not None:
                return settled + ending
        picked = settle(problem, master.patterns, relaxed.uses, demand, left)
        settled += picked
        spent += sum(problem.cost(p) for p in picked)
    return settled


def settle(problem: Problem, patterns: list[Pattern], uses: Table, demand: Ints, left: Ints) -> list[Pattern]:
    """Take the whole part of a solution, or its largest fraction, as far as demand and sticks go.

    Args:
        problem: the question.
        patterns: those of the linear program.
        uses: how often the solution uses each.
        demand: pieces still wanted of each kind; lowered in place.
        left: sticks still there of each kind; lowered in place.

    Returns:
        One pattern a stick taken.
    """
    order = sorted(
        np.nonzero(uses > 1e-6)[0],
        key=lambda p: (-round(float(uses[p]) % 1.0, 6), -problem.fill(patterns[p])),
    )
    picked: list[Pattern] = []
    whole_part = [(p, int(uses[p] + 1e-6)) for p in order if uses[p] >= 1.0 - 1e-6]
    for p, times in whole_part or [(order[0], 1)]:
        for _ in range(times):
            fits = all(n <= demand[i] for i, n in patterns[p].counts)
            if fits and left[patterns[p].stick] > 0:
                _take(patterns[p], demand, left)
                picked.append(patterns[p])
    return picked


def _take(pattern: Pattern, demand: Ints, left: Ints) -> None:
    left[pattern.stick] -= 1
    for i, n in pattern.counts:
        demand[i] -= n


def _finish(
    problem: Problem, demand: Ints, left: Ints, duals: Table, target: int, watch: Watch
) -> list[Pattern] | None:
    """Place the last pieces exactly, where the patterns that can do it are few."""
    prices = exact_prices(problem, demand, duals)
    kinds = tuple(int(i) for i in np.nonzero(demand)[0])
    listing = affordable(problem, demand, left, prices, target, _FINISH_PATTERNS, kinds)
    if listing is None:
        return None
    soon = watch.within(_FINISH_SECONDS)
    choice = choose(problem, demand, left, listing.patterns, kinds, target, soon, first=True)
    return choice.patterns if choice.answer in {Answer.BEST, Answer.FOUND} else None


def fill_rooms(problem: Problem, settled: list[Pattern], watch: Watch) -> list[Pattern] | None:
    """Place the pieces that are still wanted in the rooms left over in settled patterns.

    Args:
        problem: the question.
        settled: one pattern a stick; together they hold no piece beyond the demand.
        watch: when to stop.

    Returns:
        The patterns with the pieces added, or None.
    """
    demand = np.array(problem.demand, dtype=np.int64)
    for pattern in settled:
        for i, n in pattern.counts:
            demand[i] -= n
    kinds = [int(i) for i in np.nonzero(demand)[0]]
    if not kinds:
        return settled
    rooms: dict[tuple[int, tuple[bool, ...]], list[Pattern]] = {}
    full: list[Pattern] = []
    for pattern in settled:
        stick = problem.sticks[pattern.stick]
        fits = tuple(stick.fits[i] for i in kinds) if stick.fits else ()
        room = stick.length - problem.fill(pattern)
        (rooms.setdefault((room, fits), []) if room > 0 else full).append(pattern)
    if not rooms:
        return None
    sticks = tuple(Stick(room, 1, len(of), fits) for (room, fits), of in rooms.items())
    rest = Problem(tuple(problem.lengths[i] for i in kinds), tuple(int(demand[i]) for i in kinds), sticks)
    found = best_fit(rest) or dive(rest, Master(rest), rest.limits(), None, watch)
    if found is None:
        return None
    waiting = [list(of) for of in rooms.values()]
    filled = full
    for extra in found:
        base = waiting[extra.stick].pop()
        counts = dict(base.counts)
        for k, n in extra.counts:
            counts[kinds[k]] = counts.get(kinds[k], 0) + n
        filled.append(as_pattern(base.stick, counts))
    return filled + [pattern for of in waiting for pattern in of]
