"""The fewest sets that cover everything: small exact set cover."""

from __future__ import annotations

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_array

from gageline.errors import ValueProblem

__all__ = ["fewest"]


def fewest(sets: tuple[frozenset[int], ...], count: int) -> tuple[int, ...]:
    """A smallest choice of sets that together hold 0, 1, ..., count - 1.

    Taking the largest set again and again is kept when it meets the bound that no choice can beat:
    each set holds so many at most, so at least count / that many are needed. Otherwise HiGHS decides.

    Args:
        sets: what each one holds.
        count: how many there are to be covered.

    Returns:
        Numbers of the chosen sets, ascending.

    Raises:
        ValueProblem: when something is in none of the sets.
    """
    missing = set(range(count)).difference(*sets)
    if missing:
        raise ValueProblem(f"hole {min(missing)} is reached by no placement: give one that reaches it")
    if not count:
        return ()
    greedy = _largest_first(sets, count)
    bound = -(-count // max(map(len, sets)))
    return greedy if len(greedy) == bound else _exact(sets, count)


def _largest_first(sets: tuple[frozenset[int], ...], count: int) -> tuple[int, ...]:
    left, chosen = set(range(count)), []
    while left:
        best = max(range(len(sets)), key=lambda number: (len(sets[number] & left), -number))
        chosen.append(best)
        left -= sets[best]
    return tuple(sorted(chosen))


def _exact(sets: tuple[frozenset[int], ...], count: int) -> tuple[int, ...]:
    members = [(item, number) for number, held in enumerate(sets) for item in held]
    rows, columns = zip(*members, strict=True)
    holds = csr_array((np.ones(len(members)), (rows, columns)), shape=(count, len(sets)))
    answer = milp(
        np.ones(len(sets)),
        integrality=np.ones(len(sets), dtype=np.int64),
        bounds=Bounds(0, 1),
        constraints=LinearConstraint(holds, lb=1),
    )
    if answer.x is None:
        raise ValueProblem(f"{count} holes have no plan of placements: {answer.message}")
    return tuple(int(number) for number in np.flatnonzero(answer.x > 0.5))
