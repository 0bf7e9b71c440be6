"""One section's cutting question in whole numbers: pieces, sticks, and what a drop earns back."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from functools import reduce
from math import gcd

import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class DropValue:
    """What the left-over end of a stick earns back when it is long enough to keep.

    Args:
        keep: the least left-over length that earns anything, in units of length.
        extra: length of the drop beyond the left-over (what the saw could not use), less the last kerf.
        rate: (cost, length): so many units of cost for so many units of length, rounded down.
    """

    keep: int
    extra: int
    rate: tuple[int, int]

    def of(self, left_over: int) -> int:
        """Value of a left-over length, in units of cost."""
        if left_over < self.keep:
            return 0
        return max(0, (left_over + self.extra) * self.rate[0] // self.rate[1])


@dataclass(frozen=True, slots=True)
class Stick:
    """One kind of stick to cut from.

    Args:
        length: what pieces may fill, kerf already added, in units of length.
        cost: what using one stick costs, in units of cost.
        limit: how many there are, or None where any number can be had.
        fits: for each piece kind whether it may be cut from this stick; empty means every kind may.
        drop: what its left-over earns back, or None.
    """

    length: int
    cost: int
    limit: int | None = None
    fits: tuple[bool, ...] = ()
    drop: DropValue | None = None


@dataclass(frozen=True, slots=True)
class Pattern:
    """One way of cutting one stick: (piece kind, count) pairs in order of kind."""

    stick: int
    counts: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Problem:
    """Pieces to cut and sticks to cut them from; all whole numbers.

    The cost of a plan is the sum over the sticks it uses of `cost` less the drop's value.

    Args:
        lengths: length of each piece kind with its kerf.
        demand: how many of each piece kind.
        sticks: the kinds of stick.
    """

    lengths: tuple[int, ...]
    demand: tuple[int, ...]
    sticks: tuple[Stick, ...]

    @property
    def has_drops(self) -> bool:
        """Whether any left-over earns something back."""
        return any(s.drop is not None for s in self.sticks)

    @property
    def pieces(self) -> int:
        """Number of pieces to cut."""
        return sum(self.demand)

    def limits(self) -> Ints:
        """The most of each kind of stick that a plan can use."""
        return np.array([self.pieces if s.limit is None else min(s.limit, self.pieces) for s in self.sticks])

    def step(self) -> int:
        """Largest number that divides the cost of every plan."""
        if self.has_drops:
            return 1
        return max(1, reduce(gcd, (s.cost for s in self.sticks), 0))

    def fill(self, pattern: Pattern) -> int:
        """Length that a pattern takes of its stick."""
        return sum(self.lengths[i] * n for i, n in pattern.counts)

    def cost(self, pattern: Pattern) -> int:
        """Cost of one stick cut to a pattern: the stick less what its left-over earns."""
        stick = self.sticks[pattern.stick]
        earned = stick.drop.of(stick.length - self.fill(pattern)) if stick.drop else 0
        return stick.cost - earned


@dataclass(frozen=True, slots=True)
class Packing:
    """A complete set of patterns with the number of sticks cut to each."""

    patterns: tuple[tuple[Pattern, int], ...]
    cost: int


def packing(problem: Problem, patterns: list[Pattern]) -> Packing:
    """Count equal patterns, drop pieces beyond the demand, and add up the cost.

    Args:
        problem: the question.
        patterns: one pattern a stick; together they hold at least the demand.

    Returns:
        The packing with exactly the demand.

    Raises:
        ArithmeticError: the patterns do not hold the demand (an error of the program).
    """
    kept = without_spares(problem, patterns)
    held = [0] * len(problem.demand)
    for pattern in kept:
        for i, n in pattern.counts:
            held[i] += n
    if tuple(held) != problem.demand:
        raise ArithmeticError(f"patterns hold {held}, wanted {problem.demand}")
    tally = Counter(kept)
    ordered = sorted(tally.items(), key=lambda item: (item[0].stick, item[0].counts))
    return Packing(tuple(ordered), sum(problem.cost(p) * n for p, n in ordered))


def without_spares(problem: Problem, patterns: list[Pattern]) -> list[Pattern]:
    """The patterns without the pieces beyond the demand; sticks left empty fall away."""
    wanted = list(problem.demand)
    kept = []
    for pattern in patterns:
        counts = []
        for i, n in pattern.counts:
            used = min(n, wanted[i])
            wanted[i] -= used
            if used:
                counts.append((i, used))
        if counts:
            kept.append(Pattern(pattern.stick, tuple(counts)))
    return kept
