"""Eccentrically loaded groups of bolts: the instantaneous-centre method, and the elastic method beside it.

Every function takes many groups at once. Places are in inches in any axes, x to the right and y up. A load is
a *wrench*: its two forces and its moment about the origin, counter-clockwise positive; `wrench` makes one
from an angle and a point. The results say by how much that wrench can be multiplied.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gageline.errors import ValueProblem
from gageline.strength.balance import Balance, Pattern, Resultant, Rows, balance, resultant, settled
from gageline.strength.guard import numbers_of

__all__ = ["BoltGroups", "eccentric_bolts", "elastic_bolts", "share_of_full_strength", "wrench"]

Array = NDArray[np.float64]

_MOST_MOVEMENT = 0.34
_BLOCK = 2048
_SAME_PLACE = 1e-9
_TINY = 1e-300


@dataclass(frozen=True, slots=True)
class BoltGroups:
    """What eccentric bolt groups carry, in strengths of one bolt.

    Args:
        coefficient: By how much the wrench can be multiplied, in strengths of one bolt: the coefficient C of
            the Manual for a unit force, C' in inches for a unit moment. Shape (groups,).
        centre: Instantaneous centre in the axes of the input, infinite or very far without a turn.
            Shape (groups, 2).
        forces: Share of the load of each bolt when the group gives way, in strengths of one bolt. Shape
            (groups, bolts, 2).
    """

    coefficient: Array
    centre: Array
    forces: Array


def wrench(angle: ArrayLike, x: ArrayLike, y: ArrayLike = 0.0) -> Array:
    """Write a unit force as a wrench.

    Args:
        angle: Angle of the force from straight down toward +x, degrees; any shape.
        x: A point on the line of the force, in.
        y: The same point, in.

    Returns:
        Force along x and y and moment about the origin, shape (..., 3).

    Raises:
        ValueProblem: A value that is not a finite number.
    """
    turn, x, y = np.broadcast_arrays(
        *(numbers_of(part, "the angle and the point of a load") for part in (angle, x, y))
    )
    turn = np.radians(turn)
    force_x, force_y = np.sin(turn), -np.cos(turn)
    return np.stack([force_x, force_y, x * force_y - y * force_x], axis=-1)


def share_of_full_strength(movement: ArrayLike) -> Array:
    """Give the share of its full strength that a bolt exerts at a movement.

    Args:
        movement: Movement of the bolt, in, at most 0.34.

    Returns:
        R/R_ult; 0.98 at 0.34 in, where the bolt breaks.

    Source: Crawford and Kulak 1971, Manual Part 7, Equation 7-1 (from memory).
    """
    return np.asarray((1.0 - np.exp(-10.0 * np.asarray(movement, dtype=float))) ** 0.55)


@dataclass(frozen=True, slots=True)
class _Layout:
    """Groups in axes through their centres, lengths in polar radii; arrays run (points, groups)."""

    x: Array
    y: Array
    centre: Array
    radius: Array
    target: Array
    size: Array


def _layout(points: ArrayLike, load: ArrayLike) -> _Layout:
    places = numbers_of(points, "places of bolts")
    loads = np.atleast_2d(numbers_of(load, "loads on bolts"))
    if places.ndim not in {2, 3} or places.shape[-1] != 2 or loads.ndim != 2 or loads.shape[-1] != 3:
        raise ValueProblem(
            f"bolts of shape {places.shape} and loads of shape {loads.shape} do not fit: "
            "give (groups, bolts, 2) and (groups, 3)"
        )
    places = places if places.ndim == 3 else places[None]
    groups = max(len(places), len(loads))
    if {len(places), len(loads)} - {1, groups}:
        raise ValueProblem(
            f"{len(places)} groups and {len(loads)} loads do not fit: give one load for each group"
        )
    if places.shape[1] == 0:
        raise ValueProblem("the group has 0 bolts, at least 2 are needed: give the place of each bolt")
    places = np.broadcast_to(places, (groups, *places.shape[1:]))
    loads = np.broadcast_to(loads, (groups, 3))
    centre = places.mean(axis=1)
    x, y = np.ascontiguousarray((places - centre[:, None]).transpose(2, 1, 0))
    radius = np.sqrt(np.mean(x * x + y * y, axis=0))
    turn = loads[:, 2] - centre[:, 0] * loads[:, 1] + centre[:, 1] * loads[:, 0]
    together = radius < _SAME_PLACE
    if (together & (np.abs(turn) > _SAME_PLACE * np.hypot(loads[:, 0], loads[:, 1]))).any():
        raise ValueProblem(
            "all bolts of a group are in one place and the load passes beside it: spread the bolts"
        )
    turn, radius = np.where(together, 0.0, turn), np.where(together, 1.0, radius)
    target = np.stack([loads[:, 0], loads[:, 1], turn / radius])
    size = np.sqrt(np.sum(target * target, axis=0))
    if (size == 0).any():
        raise ValueProblem("a load is zero, its direction is needed: leave the group out or give its load")
    return _Layout(x / radius, y / radius, centre, radius, target / size, size)


def _centre_of(layout: _Layout, q: Array) -> Array:
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        offset = np.where(q[2] == 0, np.inf, np.stack([-q[1], q[0]]) / q[2])
        return layout.centre + (offset * layout.radius).T


def _bolt_resultant(x: Array, y: Array, q: Array) -> Resultant:
    bolts = Pattern.of(x, y, q)
    first = np.argmax(bolts.move, axis=0)[None]
    reach = np.take_along_axis(bolts.move, first, axis=0)
    movement = _MOST_MOVEMENT / reach * bolts.move
    decay = np.exp(-10.0 * movement)
    rise = np.maximum(1.0 - decay, _TINY)
    force = rise**0.55
    growth = 5.5 * movement * decay * force / rise
    farthest = Pattern(*(np.take_along_axis(part, first, axis=0) for part in bolts))
    return resultant(bolts, force, growth, None, -np.concatenate(farthest.along()) / reach)


def _at_break(x: Array, y: Array, target: Array) -> Balance:
    def law(motion: Array, rows: Rows) -> Resultant:
        if len(rows) == x.shape[1]:  # all of them: spares the copy
            return _bolt_resultant(x, y, motion)
        return _bolt_resultant(x[:, rows], y[:, rows], motion)

    return settled(balance(law, target))


def eccentric_bolts(points: ArrayLike, load: ArrayLike) -> BoltGroups:
    """Strength of eccentric bolt groups by the instantaneous-centre method.

    The bolt that moves most breaks at 0.34 in; every other bolt moves, and resists, in proportion to its
    distance from the centre by the curve of `share_of_full_strength`. That curve reaches 0.9815 of the full
    strength, so that the coefficient of a concentric load is 0.9815 times the number of bolts.

    Args:
        points: Places of the bolts, shape (bolts, 2) or (groups, bolts, 2), in.
        load: Wrenches, shape (3,) or (groups, 3).

    Returns:
        Coefficients, centres and the forces of the bolts.

    Raises:
        ValueProblem: No bolts, all bolts in one place beside the load, no load, or shapes that do not fit.

    Source: Manual Part 7; Crawford and Kulak, Journal of the Structural Division, ASCE 97 (ST3), 1971.
    """
    layout = _layout(points, load)
    groups = layout.x.shape[1]
    coefficient, q = np.empty(groups), np.empty((3, groups))
    for start in range(0, groups, _BLOCK):
        block = slice(start, start + _BLOCK)
        found = _at_break(layout.x[:, block], layout.y[:, block], layout.target[:, block])
        q[:, block], coefficient[block] = found.q, found.size / layout.size[block]
    bolts = Pattern.of(layout.x, layout.y, q)
    force = share_of_full_strength(_MOST_MOVEMENT * bolts.move / bolts.move.max(axis=0))
    forces = np.stack([force * bolts.e_x, force * bolts.e_y], axis=-1).transpose(1, 0, 2)
    return BoltGroups(coefficient, _centre_of(layout, q), forces)


def elastic_bolts(points: ArrayLike, load: ArrayLike) -> BoltGroups:
    """Strength of eccentric bolt groups by the elastic method: forces in proportion to the movement.

    Args:
        points: Places of the bolts, shape (bolts, 2) or (groups, bolts, 2), in.
        load: Wrenches, shape (3,) or (groups, 3).

    Returns:
        Coefficients, centres and the forces of the bolts, the most loaded bolt at its full strength.

    Raises:
        ValueProblem: No bolts, all bolts in one place beside the load, no load, or shapes that do not fit.

    Source: Manual Part 7, elastic method.
    """
    layout = _layout(points, load)
    q = layout.target
    bolts = Pattern.of(layout.x, layout.y, q)
    most = bolts.move.max(axis=0)
    share = bolts.move / most
    forces = np.stack([share * bolts.e_x, share * bolts.e_y], axis=-1).transpose(1, 0, 2)
    return BoltGroups(layout.x.shape[0] / most / layout.size, _centre_of(layout, q), forces)
