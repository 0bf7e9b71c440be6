"""Small cutting questions and their answers by trying everything, for tests of the planner."""

from __future__ import annotations

from functools import cache
from itertools import product
from random import Random

from gageline.stock.problem import DropValue, Pattern, Problem, Stick

__all__ = ["all_patterns", "least_cost", "random_problem"]


def _goes_in(problem: Problem, s: int, take: tuple[int, ...]) -> bool:
    """Whether these counts of the kinds go into one stick of kind s."""
    stick = problem.sticks[s]
    filled = sum(n * length for n, length in zip(take, problem.lengths, strict=True))
    return filled <= stick.length and all(
        n == 0 or not stick.fits or stick.fits[i] for i, n in enumerate(take)
    )


def all_patterns(problem: Problem) -> list[Pattern]:
    """Every way of cutting one stick, of no more pieces than are wanted."""
    return [
        Pattern(s, tuple((i, n) for i, n in enumerate(take) if n))
        for s in range(len(problem.sticks))
        for take in product(*(range(n + 1) for n in problem.demand))
        if any(take) and _goes_in(problem, s, take)
    ]


def least_cost(problem: Problem) -> int | None:
    """Least cost by trying every way to cut one stick after another; None where nothing does."""

    @cache
    def least(wanted: tuple[int, ...], left: tuple[int, ...]) -> int | None:
        if not any(wanted):
            return 0
        best = None
        for s, stick in enumerate(problem.sticks):
            if left[s] == 0:
                continue
            fewer = tuple(n - (k == s) for k, n in enumerate(left))
            for take in product(*(range(n + 1) for n in wanted)):
                if not any(take) or not _goes_in(problem, s, take):
                    continue
                room = stick.length - sum(n * length for n, length in zip(take, problem.lengths, strict=True))
                earned = 0
                if stick.drop is not None and room >= stick.drop.keep:
                    rate, per = stick.drop.rate
                    earned = max(0, (room + stick.drop.extra) * rate // per)
                rest = least(tuple(n - t for n, t in zip(wanted, take, strict=True)), fewer)
                if rest is not None and (best is None or rest + stick.cost - earned < best):
                    best = rest + stick.cost - earned
        return best

    total = sum(problem.demand)
    return least(
        problem.demand, tuple(total if s.limit is None else min(total, s.limit) for s in problem.sticks)
    )


def random_problem(seed: int, *, drops: bool = False) -> Problem:
    """Three piece kinds and three sticks, the first without limit for all kinds; the same for one seed."""
    random = Random(seed)  # noqa: S311  # test data
    lengths = tuple(random.sample(range(3, 15), 3))
    demand = tuple(random.randint(1, 2) for _ in lengths)
    sticks = []
    for s in range(3):
        length, cost = random.randint(14, 24), random.randint(10, 60)
        fits = () if s == 0 else tuple(random.random() < 0.8 for _ in lengths)
        limit = None if s == 0 else random.randint(0, 2)
        drop = DropValue(random.randint(1, 8), 0, (random.randint(0, 90) * cost, 100 * length))
        sticks.append(Stick(length, cost, limit, fits, drop if drops else None))
    return Problem(lengths, demand, tuple(sticks))
