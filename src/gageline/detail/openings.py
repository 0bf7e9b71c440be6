"""Openings in the floors of a frame, for stairs and shafts."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from shapely import LineString, Point, Polygon, get_coordinates

from gageline.detail.line import Frame, Line, Opening
from gageline.detail.shop import Shop
from gageline.part import Finding, Severity

__all__ = ["crossed"]

_DEEP = 12.0  # inches of a member's line inside an opening before it is said to cross it
_NEAR_LEVEL = 12.0  # inches from the level to the top of steel of a member that belongs to it
_CLIMBS = 30.0  # inches from the level within the opening: a stringer of the stair that it is for


def crossed(frame: Frame, shop: Shop) -> Iterator[Finding]:
    """Beams of an opening's level that run through it, but for those that climb through it as a stair's do.

    Args:
        frame: every member where it stands, and its openings.
        shop: the practice.
    """
    for opening in frame.openings:
        hole = Polygon([corner[:2] for corner in opening.corners])
        for line in frame.beams:
            inside = _inside(line, opening, hole)
            if inside > _DEEP:
                yield Finding(
                    "crosses-opening",
                    Severity.WARNING,
                    line.name,
                    f"runs through opening {opening.name} over {shop.say(inside)}",
                    "move the beam, end it at a header, or change the opening's corners",
                )


def _inside(line: Line, opening: Opening, hole: Polygon) -> float:
    low, high = sorted((line.start[2], line.finish[2]))
    if not low - _NEAR_LEVEL <= opening.elevation <= high + _NEAR_LEVEL:
        return 0.0
    flat = LineString([line.start[:2], line.finish[:2]])
    within = flat.intersection(hole.buffer(-1.0))
    if within.is_empty or any(
        _off(line, flat.project(Point(at)), opening) > _CLIMBS for at in get_coordinates(within)
    ):
        return 0.0
    return float(within.length)


def _off(line: Line, along: float, opening: Opening) -> float:
    """How far a member's line lies from an opening's level at a place along its plan, inches."""
    (x1, y1, z1), (x2, y2, z2) = line.start, line.finish
    return abs(z1 + (z2 - z1) * along / hypot(x2 - x1, y2 - y1) - opening.elevation)
