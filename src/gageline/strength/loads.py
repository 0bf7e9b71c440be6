"""Loads on a simple beam: the basic combinations, reactions and moments.

Forces are in kips and lengths in inches. This is statics of a single span on two supports; it is no analysis
of a frame.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from gageline.errors import ValueProblem
from gageline.strength.check import Method
from gageline.strength.guard import not_negative, positive

__all__ = [
    "COMBINATIONS",
    "Case",
    "Combination",
    "Load",
    "Pair",
    "combinations",
    "combined",
    "least",
    "moment_along",
    "reactions",
    "shear_along",
    "worst",
]

Array = NDArray[np.float64]


class Case(StrEnum):
    """Kinds of load; a given one has its factors in it already and is in every combination."""

    DEAD = "dead"
    LIVE = "live"
    ROOF = "roof"
    GIVEN = "given"


@dataclass(frozen=True, slots=True)
class Load:
    """One load on a beam, without factors.

    Args:
        case: what kind of load it is.
        amount: of a point load in kips; of a load along the beam in kips per inch.
        start: left end to where it begins, or to the point, in.
        end: left end to where it ends, in; None for a point load.
    """

    case: Case
    amount: float
    start: float = 0.0
    end: float | None = None

    def __post_init__(self) -> None:
        positive(amount=self.amount)
        not_negative(start=self.start)
        if self.end is not None and self.end <= self.start:
            raise ValueProblem(
                f"a load ends at {self.end:g} in, where it begins, at {self.start:g} in: end it farther on"
            )

    @property
    def total(self) -> float:
        """Its resultant, kips."""
        return self.amount if self.end is None else self.amount * (self.end - self.start)

    @property
    def middle(self) -> float:
        """Left end to its resultant, in."""
        return self.start if self.end is None else (self.start + self.end) / 2


@dataclass(frozen=True, slots=True)
class Combination:
    """One basic combination of ASCE 7.

    Args:
        name: as written there.
        dead: factor on dead load.
        live: factor on live load.
        roof: factor on roof live load.
    """

    name: str
    dead: float
    live: float
    roof: float

    def factor(self, case: Case) -> float:
        """The factor on a kind of load."""
        own = {Case.DEAD: self.dead, Case.LIVE: self.live, Case.ROOF: self.roof, Case.GIVEN: 1.0}
        return own[case]


COMBINATIONS = {
    Method.LRFD: (
        Combination("1.4D", 1.4, 0.0, 0.0),
        Combination("1.2D + 1.6L + 0.5Lr", 1.2, 1.6, 0.5),
        Combination("1.2D + 1.6Lr + L", 1.2, 1.0, 1.6),
    ),
    Method.ASD: (
        Combination("D", 1.0, 0.0, 0.0),
        Combination("D + L", 1.0, 1.0, 0.0),
        Combination("D + Lr", 1.0, 0.0, 1.0),
        Combination("D + 0.75L + 0.75Lr", 1.0, 0.75, 0.75),
    ),
}
"""The basic combinations without wind, snow, rain and earthquake.

Source: ASCE 7-22, Sections 2.3.1 and 2.4.1, from memory; 1.2D + 1.6L and D + L read in the Design Examples.
"""


@dataclass(frozen=True, slots=True)
class Pair:
    """Values at the two ends of a beam.

    Args:
        left: at the left end.
        right: at the right end.
    """

    left: float
    right: float


def combinations(method: Method) -> tuple[Combination, ...]:
    """The combinations of a design method."""
    return COMBINATIONS[method]


def _check(loads: Iterable[Load], length: float) -> None:
    positive(length=length)
    for load in loads:
        far = load.start if load.end is None else load.end
        if far > length * (1 + 1e-9):
            raise ValueProblem(
                f"a {load.case} load reaches {far:g} in along a beam of {length:g} in: keep it on the beam"
            )


def reactions(loads: Sequence[Load], length: float, combination: Combination) -> Pair:
    """End reactions of a simple beam under one combination.

    Args:
        loads: on it.
        length: between its supports, in.
        combination: the factors.

    Returns:
        Reactions, kips.

    Source: statics.
    """
    _check(loads, length)
    total = sum(combination.factor(load.case) * load.total for load in loads)
    right = sum(combination.factor(load.case) * load.total * load.middle / length for load in loads)
    return Pair(total - right, right)


def worst(loads: Sequence[Load], length: float, method: Method) -> tuple[Pair, Pair]:
    """The largest reaction of each end over all combinations.

    Args:
        loads: on the beam.
        length: between its supports, in.
        method: design method.

    Returns:
        Largest reactions, and the places of their combinations in `combinations(method)`.
    """
    found = [reactions(loads, length, combination) for combination in combinations(method)]
    left = max(range(len(found)), key=lambda index: found[index].left)
    right = max(range(len(found)), key=lambda index: found[index].right)
    return Pair(found[left].left, found[right].right), Pair(left, right)


def shear_along(loads: Sequence[Load], length: float, combination: Combination, x: Array) -> Array:
    """Shear along a simple beam, upward on the left positive.

    Args:
        loads: on it.
        length: between its supports, in.
        combination: the factors.
        x: places from the left end, in, shape (n,).

    Returns:
        Shear just right of each place, kips, shape (n,).
    """
    shear = np.full_like(x, reactions(loads, length, combination).left)
    for load in loads:
        factor = combination.factor(load.case)
        if load.end is None:
            shear -= factor * load.amount * (x >= load.start)
        else:
            shear -= factor * load.amount * np.clip(x - load.start, 0.0, load.end - load.start)
    return shear


def moment_along(loads: Sequence[Load], length: float, combination: Combination, x: Array) -> Array:
    """Bending moment along a simple beam, sagging positive.

    Args:
        loads: on it.
        length: between its supports, in.
        combination: the factors.
        x: places from the left end, in, shape (n,).

    Returns:
        Moments, kip-in, shape (n,).
    """
    moment = reactions(loads, length, combination).left * x
    for load in loads:
        factor = combination.factor(load.case)
        if load.end is None:
            moment -= factor * load.amount * np.maximum(x - load.start, 0.0)
        else:
            covered = np.clip(x - load.start, 0.0, load.end - load.start)
            moment -= factor * load.amount * covered * (x - load.start - covered / 2)
    return moment


def combined(amounts: Mapping[Case, float], method: Method) -> tuple[float, str]:
    """The largest of a force's combinations.

    Args:
        amounts: the force by kind of load, kips.
        method: design method.

    Returns:
        Its largest value, kips, and the name of that combination.
    """
    if set(amounts) <= {Case.GIVEN}:
        return sum(amounts.values()), "as given"
    found = [
        (sum(one.factor(case) * amount for case, amount in amounts.items()), one.name)
        for one in combinations(method)
    ]
    return max(found, key=lambda pair: pair[0])


def least(amounts: Mapping[Case, float], method: Method) -> float:
    """The least of a force's combinations, kips; below zero it lifts."""
    return min(
        sum(one.factor(case) * amount for case, amount in amounts.items()) for one in combinations(method)
    )
