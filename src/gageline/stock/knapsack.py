"""The most valuable filling of a stick: bounded knapsack by dynamic programming over all lengths at once."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from gageline.stock.problem import Ints, Pattern, Problem, Stick

Table = NDArray[Any]


def chunks(copies: int) -> list[int]:
    """Split a number of copies in 1, 2, 4, ... and a rest, whose sums give every count."""
    parts, size = [], 1
    while copies > 0:
        part = min(size, copies)
        parts.append(part)
        copies -= part
        size *= 2
    return parts


class Knapsack:
    """Best filling of every length up to the longest stick, for the piece kinds one group of sticks accepts.

    Args:
        problem: the question.
        demand: how many of each kind may be used (the residual demand).
        stick: a stick of the group; all of the group accept the same kinds.
        capacity: the longest stick of the group.
    """

    def __init__(self, problem: Problem, demand: Ints, stick: Stick, capacity: int) -> None:
        self.capacity = capacity
        self.chunks: list[tuple[int, int, int]] = []
        for i, (length, wanted) in enumerate(zip(problem.lengths, demand, strict=True)):
            if stick.fits and not stick.fits[i]:
                continue
            copies = min(int(wanted), capacity // length)
            self.chunks += [(i, part, part * length) for part in chunks(copies)]
        self.taken: NDArray[np.bool_] = np.zeros((len(self.chunks), capacity + 1), dtype=np.bool_)

    def value(self, prices: Table) -> Table:
        """Value of the best filling within each length.

        Args:
            prices: value of one piece of each kind; whole numbers stay exact below 2^53.

        Returns:
            An array over lengths 0 to the capacity, never falling.
        """
        best = np.zeros(self.capacity + 1, dtype=prices.dtype)
        for i, part, width in self.chunks:
            if prices[i] > 0:
                np.maximum(best[width:], best[:-width] + prices[i] * part, out=best[width:])
        return best

    def fill(self, prices: Table) -> Table:
        """Like `value`, and remembers the fillings for `pattern`."""
        best = np.zeros(self.capacity + 1)
        richer = np.empty(self.capacity + 1)
        for j, (i, part, width) in enumerate(self.chunks):
            if prices[i] <= 0:
                self.taken[j] = False
                continue
            with_part = np.add(best[:-width], prices[i] * part, out=richer[width:])
            np.greater(with_part, best[width:], out=self.taken[j, width:])
            np.maximum(best[width:], with_part, out=best[width:])
        return best

    def counts(self, length: int) -> dict[int, int]:
        """The filling behind the last `fill` within a length: count of each kind."""
        found: dict[int, int] = {}
        for j in range(len(self.chunks) - 1, -1, -1):
            if self.taken[j, length]:
                i, part, width = self.chunks[j]
                found[i] = found.get(i, 0) + part
                length -= width
        return found


def groups(problem: Problem) -> list[tuple[list[int], int]]:
    """Sticks that accept the same piece kinds, with the longest of each group."""
    found: dict[tuple[bool, ...], list[int]] = {}
    for s, stick in enumerate(problem.sticks):
        found.setdefault(stick.fits, []).append(s)
    return [(members, max(problem.sticks[s].length for s in members)) for members in found.values()]


def earnings(stick: Stick) -> Table:
    """What a stick's left-over earns, for each left-over length 0 to the stick's."""
    left = np.arange(stick.length + 1, dtype=np.int64)
    if stick.drop is None:
        return np.zeros_like(left)
    value = np.maximum(0, (left + stick.drop.extra) * stick.drop.rate[0] // stick.drop.rate[1])
    value[: stick.drop.keep] = 0
    return value


def as_pattern(stick: int, counts: dict[int, int]) -> Pattern:
    """A pattern from the counts of each kind."""
    return Pattern(stick, tuple(sorted(counts.items())))
