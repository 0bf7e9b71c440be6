"""Eccentrically loaded groups of fillet welds: the instantaneous-centre method, and the elastic method.

A group is a set of straight weld lines of one leg, each from one point to another, in inches in any axes.
Loads are wrenches as in `groups`. Forces are measured against the strength of the weld loaded along
its own line, so that a result is an *effective length*: the length of weld loaded through its centre and
along its line that would carry as much.

The strength and the stretch of a weld vary from point to point along a line. The forces are integrated by
Gauss's rule on either side of the point of the line where the movement runs along it, with the nodes drawn
towards that point, where the force changes fastest. The point that breaks first is not looked for among the
nodes: along one line the movement grows, and the stretch the weld can take falls, with the distance from that
same point, so the weld always breaks first at an end of a line, and the ends are compared exactly.

Where the load crosses all lines at much the same angle the resistance falls off before the first break. The
strength is the largest load on the way, so that a concentric load gives the closed form of Section J2.4.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gageline.errors import ValueProblem
from gageline.strength.balance import Balance, Pattern, Resultant, Rows, balance, resultant, settled
from gageline.strength.guard import numbers_of

__all__ = ["WeldGroups", "eccentric_welds", "elastic_welds", "manual_coefficient"]

Array = NDArray[np.float64]

_NODES = 40
_BLOCK = 256
_NARROWEST, _WIDEST = 1e-3, 4.0
_EARLIEST, _LITTLE_LESS, _GOLDEN, _CUTS = 0.5, 0.999, (math.sqrt(5) - 1) / 2, 20
_NO_LENGTH = 1e-9
_TINY = 1e-300
_DEGREE = 180.0 / math.pi
_SIXTEENTH_E70 = 0.60 * 70.0 * math.sqrt(2) / 2 / 16


@dataclass(frozen=True, slots=True)
class WeldGroups:
    """What eccentric weld groups carry.

    Args:
        length: By how much the wrench can be multiplied, in strengths of one inch of weld loaded along its
            line: an effective length in inches for a unit force, in square inches for a unit moment.
            Shape (groups,).
        centre: Instantaneous centre in the axes of the input, infinite or very far without a turn.
            Shape (groups, 2).
    """

    length: Array
    centre: Array


def manual_coefficient(length: ArrayLike, line: ArrayLike) -> Array:
    """Write an effective length as the coefficient C of the Manual's weld tables.

    Args:
        length: Effective length, in.
        line: Length l of the table, in.

    Returns:
        C in kips per inch and sixteenth of leg, nominal strength, for E70: P_n = C C_1 D l.

    Source: Manual Part 8, definition of C in Tables 8-4 to 8-11.
    """
    return np.asarray(_SIXTEENTH_E70 * np.asarray(length, dtype=float) / np.asarray(line, dtype=float))


@dataclass(frozen=True, slots=True)
class _Lines:
    """Weld lines in axes through their centres, lengths in polar radii; arrays run (lines, groups)."""

    x: Array
    y: Array
    u_x: Array
    u_y: Array
    length: Array
    centre: Array
    radius: Array
    target: Array
    size: Array

    def ends(self) -> tuple[Array, Array]:
        """Give the places of both ends of all lines, shape (2 lines, groups)."""
        x_2, y_2 = self.x + self.length * self.u_x, self.y + self.length * self.u_y
        return np.concatenate([self.x, x_2]), np.concatenate([self.y, y_2])


def _read(lines: ArrayLike, load: ArrayLike) -> tuple[Array, Array]:
    ends = numbers_of(lines, "ends of weld lines")
    loads = np.atleast_2d(numbers_of(load, "loads on welds"))
    if ends.ndim not in {3, 4} or ends.shape[-2:] != (2, 2) or loads.ndim != 2 or loads.shape[-1] != 3:
        raise ValueProblem(
            f"weld lines of shape {ends.shape} and loads of shape {loads.shape} do not fit: "
            "give (groups, lines, 2 ends, 2) and (groups, 3)"
        )
    ends = ends if ends.ndim == 4 else ends[None]
    groups = max(len(ends), len(loads))
    if {len(ends), len(loads)} - {1, groups}:
        raise ValueProblem(
            f"{len(ends)} groups and {len(loads)} loads do not fit: give one load for each group"
        )
    if ends.shape[1] == 0:
        raise ValueProblem("the group has 0 weld lines, at least 1 is needed: give the ends of each line")
    return np.broadcast_to(ends, (groups, *ends.shape[1:])), np.broadcast_to(loads, (groups, 3))


def _layout(lines: ArrayLike, load: ArrayLike) -> _Lines:
    ends, loads = _read(lines, load)
    start, run = ends[:, :, 0], ends[:, :, 1] - ends[:, :, 0]
    length = np.hypot(run[..., 0], run[..., 1])
    if (length < _NO_LENGTH).any():
        raise ValueProblem(
            "a weld line has length 0, its two ends must differ: give both ends or leave it out"
        )
    total = length.sum(axis=1)
    middle = start + run / 2
    centre = np.sum(middle * length[..., None], axis=1) / total[:, None]
    off = middle - centre[:, None]
    polar = np.sum(length * (off[..., 0] ** 2 + off[..., 1] ** 2 + length**2 / 12), axis=1)
    radius = np.sqrt(polar / total)
    turn = loads[:, 2] - centre[:, 0] * loads[:, 1] + centre[:, 1] * loads[:, 0]
    target = np.stack([loads[:, 0], loads[:, 1], turn / radius])
    size = np.sqrt(np.sum(target * target, axis=0))
    if (size == 0).any():
        raise ValueProblem("a load is zero, its direction is needed: leave the group out or give its load")
    unit = run / length[..., None]
    x, y = np.ascontiguousarray(((start - centre[:, None]) / radius[:, None, None]).transpose(2, 1, 0))
    u_x, u_y = np.ascontiguousarray(unit.transpose(2, 1, 0))
    return _Lines(x, y, u_x, u_y, (length / radius[:, None]).T, centre, radius, target / size, size)


@cache
def _nodes() -> tuple[Array, Array]:
    place, weight = np.polynomial.legendre.leggauss(_NODES)
    place, weight = (place + 1) / 2, weight / 2
    return place**2, 2 * place * weight


def _weld_resultant(lines: _Lines, rows: Rows, q: Array, part: Array) -> Resultant:
    x, y, u_x, u_y, full = (each[:, rows] for each in (lines.x, lines.y, lines.u_x, lines.u_y, lines.length))
    d_x, d_y = q[0] - q[2] * y, q[1] + q[2] * x
    lengthwise, sidewise = d_x * u_x + d_y * u_y, d_y * u_x - d_x * u_y
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        foot = np.nan_to_num(np.clip(-sidewise / q[2], 0.0, full))
        near = np.clip(
            np.nan_to_num(np.abs(lengthwise / q[2]), nan=np.inf), _NARROWEST * full, _WIDEST * full
        )
    place, weight = (each[:, None, None] for each in _nodes())
    pieces = []
    for span, sense in ((foot, -1.0), (full - foot, 1.0)):
        stretch = np.arcsinh(span / near)
        along = near * np.sinh(stretch * place)
        s = foot + sense * along
        pieces.append((s, weight * stretch * np.sqrt(near**2 + along**2)))
    s, share = (np.concatenate([first, second]) for first, second in zip(*pieces, strict=True))
    flat = (-1, len(rows))
    points = Pattern.of((x + s * u_x).reshape(flat), (y + s * u_y).reshape(flat), q)
    axis = tuple(np.broadcast_to(each, s.shape).reshape(flat) for each in (u_x, u_y))
    reach, g = _breaking(lines, rows, q)
    force, growth, turning = _weld_force(points, axis, part * reach)
    share = share.reshape(flat)
    return resultant(points, share * force, share * growth, share * turning, g)


def _angle(points: Pattern, axis: tuple[Array, ...]) -> tuple[Array, Array]:
    """Angle between movement and weld, degrees from 0 to 90, and the sense in which turning opens it."""
    cosine = points.e_x * axis[0] + points.e_y * axis[1]
    sine = points.e_y * axis[0] - points.e_x * axis[1]
    return np.arctan2(np.abs(sine), np.abs(cosine)) * _DEGREE, np.sign(sine * cosine)


def _breaking(lines: _Lines, rows: Rows, q: Array) -> tuple[Array, Array]:
    """Size of the motion at which the first end of a line breaks, and the derivative of its logarithm."""
    x, y = lines.ends()
    axis = tuple(np.concatenate([part, part])[:, rows] for part in (lines.u_x, lines.u_y))
    ends = Pattern.of(x[:, rows], y[:, rows], q)
    angle, sense = _angle(ends, axis)
    bent = 1.087 * (angle + 6.0) ** -0.65
    most = np.minimum(bent, 0.17)
    first = np.argmin(most / ends.move, axis=0)[None]
    move, reach, slope = (
        np.take_along_axis(part, first, axis=0)
        for part in (ends.move, most / ends.move, np.where(bent < 0.17, -0.65 * sense / (angle + 6.0), 0.0))
    )
    t = np.stack([np.take_along_axis(part, first, axis=0)[0] for part in ends.along()])
    n = np.stack([np.take_along_axis(part, first, axis=0)[0] for part in ends.across()])
    return reach[0], (slope * _DEGREE * n - t) / move


def _weld_force(points: Pattern, axis: tuple[Array, ...], reach: Array) -> tuple[Array, Array, Array]:
    """Force per length of weld, its derivative by the logarithm of the movement and by the direction."""
    angle, sense = _angle(points, axis)
    sine = np.sin(angle / _DEGREE)
    directional = 1.0 + 0.5 * sine**1.5
    p = np.maximum(reach * points.move / (0.209 * (angle + 2.0) ** -0.32), _TINY)
    force = directional * (p * (1.9 - 0.9 * p)) ** 0.3
    growth = 0.3 * force * (1.9 - 1.8 * p) / (1.9 - 0.9 * p)
    steeper = 0.75 * np.sqrt(sine) * np.cos(angle / _DEGREE) / directional
    turning = sense * (force * steeper + growth * 0.32 * _DEGREE / (angle + 2.0))
    return force, growth, turning


def _centre_of(lines: _Lines, q: Array) -> Array:
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        offset = np.where(q[2] == 0, np.inf, np.stack([-q[1], q[0]]) / q[2])
        return lines.centre + (offset * lines.radius).T


def eccentric_welds(lines: ArrayLike, load: ArrayLike) -> WeldGroups:
    """Strength of eccentric fillet weld groups by the instantaneous-centre method.

    Args:
        lines: Both ends of each line, shape (lines, 2, 2) or (groups, lines, 2, 2), in.
        load: Wrenches, shape (3,) or (groups, 3).

    Returns:
        Effective lengths and centres. The leg does not matter as long as all lines have the same.

    Raises:
        ValueProblem: No lines, a line without length, no load, or shapes that do not fit.

    Source: Manual Part 8 and Equations J2-5 to J2-9 of ANSI/AISC 360-10 (load and deformation of a weld
        element, from memory); checked against the published coefficients of Tables 8-4 and 8-8.
    """
    layout = _layout(lines, load)
    groups = layout.x.shape[1]
    length, q = np.empty(groups), np.empty((3, groups))
    for start in range(0, groups, _BLOCK):
        rows = np.arange(start, min(start + _BLOCK, groups))
        found = settled(_largest(layout, rows))
        q[:, rows] = found.q
        length[rows] = found.size * layout.radius[rows] / layout.size[rows]
    return WeldGroups(length, _centre_of(layout, q))


def _at(lines: _Lines, rows: Rows, part: Array, start: Array | None = None) -> Balance:
    """Balance the groups at a part of the motion at which their first line breaks."""

    def law(motion: Array, some: Rows) -> Resultant:
        return _weld_resultant(lines, rows[some], motion, part[some])

    return balance(law, lines.target[:, rows], start)


def _largest(lines: _Lines, rows: Rows) -> Balance:
    """Balance the groups where they carry most, at their first break or before it, by golden section."""
    last = np.ones(len(rows))
    broken = _at(lines, rows, last)
    before = _at(lines, rows, _LITTLE_LESS * last, broken.q)
    early = ~(before.size <= broken.size)  # past its largest load, or too far past it for a balance
    if not early.any():
        return broken
    some, low, high = rows[early], _EARLIEST * last[early], last[early]
    inner, outer = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
    at_inner = _at(lines, some, inner, broken.q[:, early])
    at_outer = _at(lines, some, outer, at_inner.q)
    for _ in range(_CUTS):
        rising = at_inner.size < at_outer.size
        low, high = np.where(rising, inner, low), np.where(rising, high, outer)
        new = np.where(rising, low + _GOLDEN * (high - low), high - _GOLDEN * (high - low))
        at_new = _at(lines, some, new, np.where(rising, at_outer.q, at_inner.q))
        inner, outer = np.where(rising, outer, new), np.where(rising, new, inner)
        at_inner, at_outer = _choose(rising, at_outer, at_new), _choose(rising, at_new, at_inner)
    peak = _choose(at_inner.size < at_outer.size, at_outer, at_inner)
    broken.q[:, early], broken.size[early] = peak.q, peak.size
    return broken


def _choose(first: NDArray[np.bool_], one: Balance, other: Balance) -> Balance:
    return Balance(np.where(first, one.q, other.q), np.where(first, one.size, other.size))


def elastic_welds(lines: ArrayLike, load: ArrayLike) -> WeldGroups:
    """Strength of eccentric weld groups by the elastic method, the same strength in all directions.

    Args:
        lines: Both ends of each line, shape (lines, 2, 2) or (groups, lines, 2, 2), in.
        load: Wrenches, shape (3,) or (groups, 3).

    Returns:
        Effective lengths and centres, the most loaded end at the strength of a weld along its line.

    Raises:
        ValueProblem: No lines, a line without length, no load, or shapes that do not fit.

    Source: Manual Part 8, elastic method.
    """
    layout = _layout(lines, load)
    most = Pattern.of(*layout.ends(), layout.target).move.max(axis=0)
    total = layout.length.sum(axis=0) * layout.radius
    return WeldGroups(total / most / layout.size, _centre_of(layout, layout.target))
