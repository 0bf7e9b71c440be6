"""Finds how an eccentrically loaded group turns: the motion whose resisting forces balance the load.

The connected part moves as a rigid body by (a, b, ω): two shifts and a turn. Only the ratios of the three
matter, because the fastener that breaks first sets the size of the motion, so they are kept as a vector of
length one. A vanishing turn (a concentric load) and vanishing shifts (a pure moment) are then points like
any other, where an instantaneous centre would lie at infinity or on a fastener.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from gageline.errors import GagelineError

__all__ = ["Balance", "Law", "Pattern", "Resultant", "balance", "resultant", "settled"]

Array = NDArray[np.float64]
Rows = NDArray[np.intp]

_NEAR = 1e-8  # Newton's last step squares what is left
_STILL = 1e-12
_MOST_TURNS = 250
_PINNED = 1e-5  # a fastener that stands still takes less than this of its strength within the last step
_NUDGE = 1e-3
_SECANT_TURNS = 1
_SHORTEST = 1e-3
_TINY = 1e-300


class Resultant(NamedTuple):
    """What the fasteners of each group do against one motion of it.

    Args:
        W: Resisting force along x and y and moment, shape (3, groups).
        secant: Matrix K with W = K q, shape (3, 3, groups).
        tangent: Derivative of W with respect to the motion q, shape (3, 3, groups).
    """

    W: Array
    secant: Array
    tangent: Array


Law = Callable[[Array, Rows], Resultant]
"""Gives the resultants of the chosen groups for their motions, shape (3, chosen)."""


class Balance(NamedTuple):
    """The motion at which each group gives way, and the load it then carries.

    Args:
        q: Motion of length one, shape (3, groups).
        size: Resisting resultant along the load of length one, shape (groups,); not a number where no
            balance was found.
    """

    q: Array
    size: Array


def settled(found: Balance) -> Balance:
    """Pass on balances that were all found.

    Args:
        found: Balances.

    Returns:
        The same.

    Raises:
        GagelineError: Some group has none.
    """
    open_ends = np.flatnonzero(np.isnan(found.size))
    if open_ends.size:
        raise GagelineError(
            f"no balance found for {open_ends.size} of {found.size.size} groups: check their layout and load"
        )
    return found


class Pattern(NamedTuple):
    """Fasteners, or points along welds, in one motion of their group; every array has shape (points, groups).

    Args:
        x: Place, from the group's centre.
        y: Place, from the group's centre.
        move: Size of the movement at the point.
        e_x: Direction of the movement.
        e_y: Direction of the movement.
    """

    x: Array
    y: Array
    move: Array
    e_x: Array
    e_y: Array

    @classmethod
    def of(cls, x: Array, y: Array, q: Array) -> Pattern:
        """Move points with their group.

        Args:
            x: Place, shape (points, groups).
            y: Place, shape (points, groups).
            q: Motion, shape (3, groups).

        Returns:
            The points with their movements.
        """
        d_x, d_y = q[0] - q[2] * y, q[1] + q[2] * x
        move = np.maximum(np.sqrt(d_x * d_x + d_y * d_y), _TINY)
        return cls(x, y, move, d_x / move, d_y / move)

    def along(self) -> tuple[Array, Array, Array]:
        """Give the resultant of a unit force at each point along its movement: two forces and a moment."""
        return self.e_x, self.e_y, self.x * self.e_y - self.y * self.e_x

    def across(self) -> tuple[Array, Array, Array]:
        """Give the same for a unit force across the movement, a quarter turn counter-clockwise from it."""
        return -self.e_y, self.e_x, self.x * self.e_x + self.y * self.e_y


def resultant(points: Pattern, R: Array, G: Array, H: Array | None, g: Array) -> Resultant:
    """Add up the forces of all points of each group, with their derivatives.

    Args:
        points: The points in motion.
        R: Force of each point, shape (points, groups).
        G: Derivative of the force with respect to the logarithm of the movement.
        H: Derivative of the force with respect to the direction of the movement, per radian
            counter-clockwise; None where the direction does not matter.
        g: Derivative of the logarithm of the motion's size, which the critical point sets, with respect
            to the motion, shape (3, groups).

    Returns:
        The resultant.
    """
    t, n = points.along(), points.across()
    stiff, slope = R / points.move, (G - R) / points.move
    W = np.stack([_sum(R, t_i) for t_i in t])
    growth = np.stack([_sum(G, t_i) for t_i in t])
    secant = np.zeros((3, 3, W.shape[1]))
    stiff_x, stiff_y = stiff * points.x, stiff * points.y
    secant[0, 0] = secant[1, 1] = np.sum(stiff, axis=0)
    secant[0, 2] = secant[2, 0] = -np.sum(stiff_y, axis=0)
    secant[1, 2] = secant[2, 1] = np.sum(stiff_x, axis=0)
    secant[2, 2] = _sum(stiff_x, points.x) + _sum(stiff_y, points.y)
    tangent = secant + growth[:, None] * g[None]
    for i in range(3):
        weighted = slope * t[i]
        for j in range(i, 3):
            part = _sum(weighted, t[j])
            tangent[i, j] += part
            if i != j:
                tangent[j, i] += part
    if H is not None:
        turn = H / points.move
        for i in range(3):
            weighted = turn * t[i]
            for j in range(3):
                tangent[i, j] += _sum(weighted, n[j])
    return Resultant(W, secant, tangent)


def _sum(one: Array, other: Array) -> Array:
    """Add up the products of two quantities over the points of each group."""
    total: Array = np.einsum("pg,pg->g", one, other)
    return total


def _cross(a: Array, b: Array) -> Array:
    return np.stack([a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]])


def _solve(A: Array, b: Array) -> Array:
    """Solve three equations in three unknowns for each group, by the rule of determinants."""
    c_0, c_1, c_2 = (A[:, i] for i in range(3))
    c_12 = _cross(c_1, c_2)
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        det = _sum(c_0, c_12)
        return np.stack([_sum(b, c_12), _sum(b, _cross(c_2, c_0)), _sum(b, _cross(c_0, c_1))]) / det


def _unit(q: Array) -> Array:
    unit: Array = q / np.sqrt(np.sum(q * q, axis=0))
    return unit


def _newton(tangent: Array, w: Array, trial: Array, off: Array) -> tuple[Array, Array, Array]:
    """Newton's step square to the motion, shortened to half of it, what it adds along, and its full length.

    Where there is none, the step is zero and its length not a number.
    """
    step = _solve(tangent - w[:, None] * trial[None], -off)
    more = _sum(step, trial)
    step -= more * trial
    length: Array = np.sqrt(_sum(step, step))
    usable = np.isfinite(length)
    step[:, ~usable], more = 0.0, np.where(usable, more, 0.0)
    return step / np.maximum(1.0, 2.0 * np.where(usable, length, 0.0)), more, length


def balance(law: Law, target: Array, start: Array | None = None) -> Balance:
    """Find the motion of each group whose resisting forces have their resultant along the load.

    A step with the secant stiffness comes close from the elastic motion; Newton's method then finishes.
    A step that does not bring the resultant nearer to the load is shortened, and if that does not help a
    secant step is taken from the best motion so far. A fastener that stands still is so stiff that no step
    leaves it; where the forces do not balance there, the group is nudged the way that they ask for.

    Args:
        law: Resultants of the groups.
        target: Loads of length one, shape (3, groups).
        start: Motions known to be near, shape (3, groups); left out, the elastic ones.

    Returns:
        Motions and loads carried; a load that is not a number where the search did not end.
    """
    count = target.shape[1]
    rows: Rows = np.arange(count)
    w, base = target, target if start is None else start
    for _ in range(_SECANT_TURNS if start is None else 0):
        nearer = _unit(_solve(law(base, rows).secant, w))
        base = np.where(np.isfinite(nearer).all(axis=0), nearer, base)
    done_q, size = np.array(base), np.full(count, np.nan)
    base, newton = np.array(base), np.zeros_like(target)
    reach, best = np.ones(count), np.full(count, np.inf)
    for _ in range(_MOST_TURNS):
        trial = _unit(base + reach * newton)
        stuck = reach < _SHORTEST
        if stuck.any():
            trial[:, stuck] = _unit(_solve(law(base[:, stuck], rows[stuck]).secant, w[:, stuck]))
        found = law(trial, rows)
        along = _sum(found.W, w)
        off = found.W - along * w
        miss = np.sqrt(_sum(off, off)) / np.maximum(along, _TINY)
        better = (miss < best) | stuck
        step, more, length = _newton(found.tangent, w, trial, off)
        usable = np.isfinite(length)
        pinned = (miss > _PINNED) & ~(length > _STILL)
        step[:, pinned] = -_NUDGE * _unit(off[:, pinned])
        usable |= pinned
        base, newton = np.where(better, trial, base), np.where(better, step, newton)
        best = np.where(better, miss, best)
        reach = np.where(better, np.where(usable, 1.0, 0.0), reach / 4)
        still = np.where(usable, _STILL, _NEAR)
        last = length <= np.where(miss <= _NEAR, _NEAR, _STILL)
        ended = better & (along > 0) & ((usable & ~pinned & last) | (miss <= still))
        if ended.any():
            done_q[:, rows[ended]] = _unit(trial + step)[:, ended]
            size[rows[ended]] = (along + more)[ended]
            keep = ~ended
            if not keep.any():
                break
            rows, base, w, newton = rows[keep], base[:, keep], w[:, keep], newton[:, keep]
            reach, best = reach[keep], best[keep]
    return Balance(done_q, size)
