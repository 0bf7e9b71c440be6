"""A view set on paper: its scale, its breaks, its lines and its holes."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

import shapely
from shapely.geometry.base import BaseGeometry

from gageline.sheets.breaks import BrokenScale, break_marks
from gageline.sheets.scene import Circle, Item, Line, Point, Polygon, Polyline
from gageline.sheets.sight import Picture, Sighted
from gageline.sheets.style import Role

__all__ = ["Lining", "bore_outline", "plain_scale"]

_DASHED = 4.0
"""mm: a hidden hole smaller than this on paper is shown by its cross alone, dashes would not read."""
_PAST = 1.0
"""mm that the cross of a hole stands out past its edge."""


def plain_scale(start: float, end: float, left: float, scale: float) -> BrokenScale:
    """A scale without breaks.

    Args:
        start: the lowest u of the view, in.
        end: the highest, in.
        left: where the lowest lies on the paper, mm.
        scale: mm of paper for one inch.
    """
    return BrokenScale((start, end), (left, left + (end - start) * scale), scale, ())


@dataclass(frozen=True, slots=True)
class Lining:
    """A view on paper, its highest edge at y = 0.

    Attributes:
        picture: what is seen.
        along: the map of u to paper x.
    """

    picture: Picture
    along: BrokenScale

    @property
    def scale(self) -> float:
        """Paper for one inch, mm."""
        return self.along.scale

    @property
    def height(self) -> float:
        """Of the steel on paper, mm."""
        return (self.picture.bounds[3] - self.picture.bounds[1]) * self.scale

    @property
    def ends(self) -> tuple[float, float]:
        """Paper x of the left and the right edge of what is drawn, mm."""
        return self.along.at(self.picture.bounds[0]), self.along.at(self.picture.bounds[2])

    def x(self, u: float) -> float:
        """Paper x of a place along the view, mm."""
        return self.along.at(u)

    def y(self, v: float) -> float:
        """Paper y of a height of the view, mm."""
        return (self.picture.bounds[3] - v) * self.scale

    def at(self, u: float, v: float) -> Point:
        """The paper point of a place of the view, mm."""
        return self.x(u), self.y(v)

    def items(self) -> list[Item]:
        """All lines of the view."""
        drawn: list[Item] = list(self._lines(self.picture.hidden, Role.HIDDEN))
        drawn += self._lines(self.picture.visible, Role.OUTLINE)
        for sighted in self.picture.bores:
            drawn += self._bore(sighted)
        for axis in self.picture.axes:
            drawn += self._axis(axis)
        return drawn + break_marks(self.along, 0.0, self.height)

    def _lines(self, shape: BaseGeometry, role: Role) -> Iterator[Item]:
        for line in shapely.get_parts(self._seen(shape)):
            points = tuple(self.at(u, v) for u, v in line.coords)
            if len(points) == 2:
                yield Line(*points[0], *points[1], role)
            elif len(points) > 2:
                yield Polyline(points, role)

    def _seen(self, shape: BaseGeometry) -> BaseGeometry:
        """The lines without what the breaks take out."""
        paper, true = self.along.paper, self.along.true
        for left, right in self.along.gaps:
            start, end = true[paper.index(left)], true[paper.index(right)]
            shape = shape.difference(shapely.box(start, -1e5, end, 1e5))
        return shape

    def _bore(self, sighted: Sighted) -> Iterator[Item]:
        bore = sighted.bore
        x, y = self.at(*bore.at)
        role = Role.HIDDEN if sighted.hidden else Role.FRAME
        outline = bore_outline((x, y), bore.width * self.scale, bore.length * self.scale, bore.along)
        if not sighted.hidden or bore.width * self.scale > _DASHED:
            yield replace(outline, role=role) if isinstance(outline, Polygon) else Circle(x, y, outline, role)
        reach = bore.length * self.scale / 2 + _PAST
        short = bore.width * self.scale / 2 + _PAST
        c, s = bore.along
        yield Line(x - c * reach, y + s * reach, x + c * reach, y - s * reach, Role.DIMENSION)
        yield Line(x - s * short, y - c * short, x + s * short, y + c * short, Role.DIMENSION)

    def _axis(self, axis: tuple[Point, Point]) -> Iterator[Item]:
        (u1, v1), (u2, v2) = axis
        (x1, y1), (x2, y2) = self.at(u1, v1), self.at(u2, v2)
        away = math.hypot(x2 - x1, y2 - y1) or 1.0
        dx, dy = (x2 - x1) / away * _PAST, (y2 - y1) / away * _PAST
        yield Line(x1 - dx, y1 - dy, x2 + dx, y2 + dy, Role.DIMENSION)


def bore_outline(at: Point, width: float, length: float, along: tuple[float, float]) -> Polygon | float:
    """The outline of a slot, or the radius of a round hole.

    Args:
        at: its middle, paper mm.
        width: mm of paper.
        length: mm of paper.
        along: unit vector of its long axis, up positive.
    """
    if length - width < 1e-6:
        return width / 2
    half = (length - width) / 2
    dx, dy = along[0] * half, -along[1] * half
    line = shapely.LineString([(at[0] - dx, at[1] - dy), (at[0] + dx, at[1] + dy)])
    ring = line.buffer(width / 2, quad_segs=6).exterior.coords[:-1]
    return Polygon(tuple((x, y) for x, y, *_ in ring), Role.FRAME)
