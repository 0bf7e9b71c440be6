"""Points and directions of the frame in space, in inches: x and y in the plan, z up.

Directions are worked in floats; a placement that a piece is recorded with is rounded once, to the
exactness of `Length`.
"""

from __future__ import annotations

import math

from gageline.part import Placement, Point, Vector
from gageline.units import Length

__all__ = [
    "UP",
    "Vec",
    "along",
    "cross",
    "dot",
    "inverse",
    "line_crossing",
    "minus",
    "placement_of",
    "point_of",
    "relative",
    "sideways",
    "turned",
    "unit",
    "vec_of",
]

Vec = tuple[float, float, float]
UP: Vec = (0.0, 0.0, 1.0)
_FINE = 13  # decimals of a direction that are kept: what is left of 90 degree turns vanishes


def dot(a: Vec, b: Vec) -> float:
    """The inner product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vec, b: Vec) -> Vec:
    """The direction square to two directions, by the right hand."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def minus(a: Vec, b: Vec) -> Vec:
    """From point b to point a."""
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def along(point: Vec, direction: Vec, distance: float) -> Vec:
    """A point some way from another."""
    return (
        point[0] + direction[0] * distance,
        point[1] + direction[1] * distance,
        point[2] + direction[2] * distance,
    )


def unit(a: Vec) -> Vec:
    """The direction of length one, clean of what rounding leaves of zeros and ones."""
    size = math.sqrt(dot(a, a))
    return (_clean(a[0] / size), _clean(a[1] / size), _clean(a[2] / size))


def _clean(value: float) -> float:
    whole = round(value)
    return float(whole) if abs(value - whole) < 10**-_FINE else value


def sideways(direction: Vec) -> Vec:
    """A quarter turn to the left in the plan."""
    return (-direction[1], direction[0], 0.0)


def turned(degrees: float) -> Vec:
    """The direction in the plan at an angle from x, counter-clockwise."""
    angle = math.radians(degrees)
    return unit((math.cos(angle), math.sin(angle), 0.0))


def vec_of(point: Point) -> Vec:
    """A point of record in inches."""
    x, y, z = point
    return (x.inches, y.inches, z.inches)


def point_of(vec: Vec) -> Point:
    """The nearest point of record."""
    return (Length.from_inches(vec[0]), Length.from_inches(vec[1]), Length.from_inches(vec[2]))


def placement_of(origin: Vec, ex: Vector, ey: Vector) -> Placement:
    """A placing from a point in inches and two directions."""
    return Placement(point_of(origin), unit(ex), unit(ey))


def inverse(placement: Placement, vec: Vec) -> Vec:
    """A point of space in the space of what is placed there, in inches."""
    away = minus(vec, vec_of(placement.origin))
    return (dot(away, placement.ex), dot(away, placement.ey), dot(away, placement.ez))


def relative(inner: Placement, outer: Placement) -> Placement:
    """A placing in space as it is seen from another placing."""

    def seen(direction: Vector) -> Vec:
        return unit((dot(direction, outer.ex), dot(direction, outer.ey), dot(direction, outer.ez)))

    return Placement(point_of(inverse(outer, vec_of(inner.origin))), seen(inner.ex), seen(inner.ey))


def line_crossing(point: Vec, direction: Vec, on: Vec, normal: Vec) -> float | None:
    """How far along a line it meets a plane; None where it runs along it.

    Args:
        point: of the line.
        direction: of the line; the answer is in multiples of it.
        on: a point of the plane.
        normal: of the plane.
    """
    lean = dot(direction, normal)
    return None if abs(lean) < 1e-9 else dot(minus(on, point), normal) / lean
