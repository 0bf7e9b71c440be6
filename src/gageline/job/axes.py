"""Which way a fitting stands on its main part."""

from __future__ import annotations

from gageline.part import End, Face, Placement, Point, Vector, normal
from gageline.units import Length

__all__ = ["hung", "into", "minus", "standing"]


def minus(vector: Vector) -> Vector:
    """The opposite direction."""
    return (-vector[0], -vector[1], -vector[2])


def _cross(a: Vector, b: Vector) -> Vector:
    """The direction square to two directions, by the right hand."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def into(end: End) -> Vector:
    """From an end into the part."""
    return (1, 0, 0) if end is End.LEFT else (-1, 0, 0)


def hung(ey: Vector, ez: Vector, corner: Point, length: Length) -> tuple[Placement, bool]:
    """The placing of a fitting that stands upright, known by its y and z axes.

    Args:
        ey: where the fitting's y points.
        ez: where its z points.
        corner: its origin line, at the fitting's upper end.
        length: of the fitting, along the line down.

    Returns:
        The placing, and whether the fitting's x runs down (its left end is up).
    """
    ex = _cross(ey, ez)
    if ex[1] < 0:
        return Placement(corner, ex, ey), True
    x, y, z = corner
    return Placement((x, y - length, z), ex, ey), False


def standing(face: Face, along: Vector, foot: Point, thickness: Length) -> Placement:
    """The placing of a plate that stands on a face, its y pointing away from it.

    Args:
        face: of the main part.
        along: where the plate's length runs.
        foot: the plate's left end at the foot, in the middle of its thickness.
        thickness: of the plate.
    """
    out = normal(face)
    ey: Vector = (float(out[0]), float(out[1]), float(out[2]))
    half, ez = thickness / 2, _cross(along, ey)
    x, y, z = foot
    origin = (x + half * round(ez[0]), y + half * round(ez[1]), z + half * round(ez[2]))
    return Placement(origin, along, ey)
