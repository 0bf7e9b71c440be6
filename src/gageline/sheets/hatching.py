"""Hatching as real lines, so that every file format shows the same one."""

from __future__ import annotations

from itertools import pairwise
from math import ceil, cos, radians, sin

from gageline.errors import ValueProblem
from gageline.sheets.scene import Point, Polygon
from gageline.sheets.style import Hatch

__all__ = ["hatch_lines"]


def hatch_lines(polygon: Polygon, hatch: Hatch) -> list[tuple[Point, Point]]:
    """The hatching of a shape, its openings left free.

    Lines lie on one grid over the whole paper, so that neighbouring shapes hatch through.

    Args:
        polygon: the shape, mm.
        hatch: its pattern.

    Returns:
        The lines as pairs of points in paper mm.

    Raises:
        ValueProblem: a spacing of zero or less.
    """
    if hatch.spacing <= 0:
        raise ValueProblem(f"hatch spacing {hatch.spacing} mm is not above 0: give at least 0.5 mm")
    angles = (hatch.angle, hatch.angle + 90) if hatch.crossed else (hatch.angle,)
    rings = (polygon.points, *polygon.openings)
    return [line for angle in angles for line in _one_set(rings, angle, hatch.spacing)]


def _one_set(rings: tuple[tuple[Point, ...], ...], angle: float, spacing: float) -> list[tuple[Point, Point]]:
    c, s = cos(radians(angle)), sin(radians(angle))
    # u runs along the lines, v across them; the paper's y points down.
    turned = [[(x * c - y * s, x * s + y * c) for x, y in ring] for ring in rings]
    crossings: dict[int, list[float]] = {}
    for ring in turned:
        for (u1, v1), (u2, v2) in pairwise([*ring, ring[0]]):
            low, high = min(v1, v2), max(v1, v2)
            # Half-open, so that a line through a corner meets it once or twice, never an odd number.
            for k in range(ceil(low / spacing), ceil(high / spacing)):
                u = u1 + (k * spacing - v1) * (u2 - u1) / (v2 - v1)
                crossings.setdefault(k, []).append(u)
    lines = []
    for k, us in sorted(crossings.items()):
        us.sort()
        v = k * spacing
        for ua, ub in zip(us[::2], us[1::2], strict=True):
            lines.append(((ua * c + v * s, v * c - ua * s), (ub * c + v * s, v * c - ub * s)))
    return lines
