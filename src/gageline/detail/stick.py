"""The stick of a beam: where its ends are cut, how long it is, and where it lies in space."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gageline.detail.line import Line
from gageline.detail.site import web_offset
from gageline.detail.space import Vec, dot, inverse, minus, relative, vec_of
from gageline.job import grade_of
from gageline.part import End, EndCut, Part, Placement, extent_y, extent_z
from gageline.units import SQUARE, ZERO, Length, Slope

__all__ = ["EndPlane", "Stick", "stick_of"]

_FINEST = 10**9


@dataclass(frozen=True, slots=True)
class EndPlane:
    """The plane that an end is cut by.

    Args:
        on: a point of it, inches.
        normal: level or along the member, toward the span.
        why: it is there, in words.
    """

    on: Vec
    normal: Vec
    why: str = ""


@dataclass(frozen=True, slots=True)
class Stick:
    """A beam cut to length, before anything is cut into it.

    Args:
        line: the member.
        part: its geometry of record, so far without copes and holes.
        placement: where it lies in space.
    """

    line: Line
    part: Part
    placement: Placement

    def local(self, point: Vec) -> Vec:
        """A point of space in the part's space, inches."""
        return inverse(self.placement, point)

    def end_x(self, end: End, y: float) -> float:
        """Where an end is cut at the middle of the web, inches."""
        z = Length.from_inches(web_offset(self.line.stock))
        return self.part.end_x(end, Length.from_inches(y), z).inches

    def inside(self, end: End) -> float:
        """How far inside its work point along the piece the furthest point of an end is, inches."""
        start = self.line.local(vec_of(self.placement.origin))[0]
        return start if end is End.LEFT else self.line.run - start - self.part.length.inches

    def web_end(self, end: End) -> Vec:
        """The upper corner of the web's middle at an end, in the part's space, inches."""
        return (self.end_x(end, self.line.depth), self.line.depth, web_offset(self.line.stock))

    def seen(self, placement: Placement) -> Placement:
        """A placing in space as seen from the part."""
        return relative(placement, self.placement)


def stick_of(line: Line, left: EndPlane, right: EndPlane) -> Stick:
    """The stick between two planes.

    Args:
        line: the member.
        left: the plane at its start.
        right: the plane at its end.
    """
    lows, _ = _reaches(line, left)
    _, highs = _reaches(line, right)
    start, stop = Length.from_inches(lows), Length.from_inches(highs)
    placement = line.space
    origin = placement.point((start, ZERO, ZERO))
    part = Part(
        line.name,
        line.stock,
        grade_of(line.stock, line.entry.grade),
        stop - start,
        _cut(line, left, 1),
        _cut(line, right, -1),
    )
    return Stick(line, part, Placement(origin, placement.ex, placement.ey))


def _reaches(line: Line, plane: EndPlane) -> tuple[float, float]:
    """Where a plane cuts the section's corners along the member: the first and the last of them."""
    space = line.space
    ex, ey, ez = (dot(plane.normal, axis) for axis in (space.ex, space.ey, space.ez))
    away = dot(plane.normal, minus(plane.on, vec_of(space.origin)))
    xs = [
        (away - y.inches * ey - z.inches * ez) / ex
        for y in extent_y(line.stock)
        for z in extent_z(line.stock)
    ]
    return min(xs), max(xs)


def _cut(line: Line, plane: EndPlane, turn: int) -> EndCut:
    space = line.space
    ex, ey, ez = (dot(plane.normal, axis) for axis in (space.ex, space.ey, space.ez))
    return EndCut(_slope(turn * ey / ex), _slope(turn * ez / ex))


def _slope(ratio: float) -> Slope:
    return Slope(Fraction(ratio).limit_denominator(_FINEST)) if abs(ratio) > 1e-12 else SQUARE
