"""Rounded toes of American shapes, whose radius the tables leave out but whose area they give."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from gageline.steel import Family, Profile, Section

__all__ = ["flat_area", "round_toes"]

Points = NDArray[np.float64]

_ROLLED = frozenset({Family.S, Family.ST, Family.M, Family.MT, Family.C, Family.MC, Family.L})
_STEPS = 6  # chords to a toe
_NEAR = 1e-9  # inches: vertices of an outline are computed, not measured


def flat_area(loop: Points) -> float:
    """The area inside a closed line, in the square of its unit; negative when it runs clockwise."""
    after = np.roll(loop, -1, axis=0)
    return float((loop[:, 0] * after[:, 1] - after[:, 0] * loop[:, 1]).sum() / 2)


def round_toes(stock: Section, loop: Points) -> Points:
    """The outline of a section with the inner edges of its flanges or legs rounded.

    Standard beams, channels and angles are rolled with round toes. Where the tables print no radius,
    it is the one that takes the outline's area down to the printed area, at most what fits the toe.
    W and HP shapes have square toes and stay as they are.

    Args:
        stock: the section.
        loop: its outline, points (z, y) in inches, shape (n, 2).

    Returns:
        The outline, with arcs in place of the toes.
    """
    if stock.toe or stock.family not in _ROLLED:
        return loop
    toes = [index for index, point in enumerate(loop) if _is_toe(stock.profile, loop, point)]
    halves = {index: _half_angle(loop, index) for index in toes}
    per_radius = sum(1 / math.tan(half) - (math.pi / 2 - half) for half in halves.values())
    excess = abs(flat_area(loop)) - stock.area
    if excess <= 0:
        return loop
    fits = min(_shortest_side(loop, index) * math.tan(half) for index, half in halves.items())
    radius = min(math.sqrt(excess / per_radius), fits)
    return np.vstack([_arc(loop, i, radius) if i in halves else loop[i : i + 1] for i in range(len(loop))])


def _is_toe(profile: Profile, loop: Points, point: Points) -> bool:
    """Whether a vertex is the inner edge of a flange or leg: on the outside, but not at its corner."""
    low, high = loop.min(axis=0), loop.max(axis=0)
    on_side = [min(abs(point[axis] - low[axis]), abs(point[axis] - high[axis])) < _NEAR for axis in (0, 1)]
    if all(on_side):
        return False
    if profile is Profile.ANGLE:
        return any(on_side) and point.min() > _NEAR
    back_of_channel = profile is Profile.CHANNEL and abs(point[0]) < _NEAR
    return on_side[0] and not back_of_channel


def _sides(loop: Points, index: int) -> tuple[Points, Points]:
    """From a vertex to its neighbours."""
    return loop[index - 1] - loop[index], loop[(index + 1) % len(loop)] - loop[index]


def _half_angle(loop: Points, index: int) -> float:
    """Half of the angle between the sides at a vertex."""
    one, two = _sides(loop, index)
    return math.acos(float(one @ two / np.linalg.norm(one) / np.linalg.norm(two))) / 2


def _shortest_side(loop: Points, index: int) -> float:
    return float(min(np.linalg.norm(side) for side in _sides(loop, index)))


def _arc(loop: Points, index: int, radius: float) -> Points:
    """Points of the arc that is tangent to both sides of a vertex, shape (steps + 1, 2)."""
    half = _half_angle(loop, index)
    one, two = (side / np.linalg.norm(side) for side in _sides(loop, index))
    middle = (one + two) / np.linalg.norm(one + two)
    centre = loop[index] + middle * radius / math.sin(half)
    start, end = (loop[index] + side * radius / math.tan(half) - centre for side in (one, two))
    swing = math.pi - 2 * half
    # between the two tangent points, by the ratio of sines along the arc
    turns = np.arange(_STEPS + 1)[:, None] * swing / _STEPS
    along: Points = (np.sin(swing - turns) * start + np.sin(turns) * end) / math.sin(swing)
    points: Points = centre + along
    return points
