"""One face of a part as a strip: outline, what is cut away, hidden edges and every mark to strike."""

from __future__ import annotations

import math
from collections.abc import Iterator

from shapely import LineString, box
from shapely import Polygon as Shape
from shapely.geometry.base import BaseGeometry

from gageline.layout import Mark, MarkKind
from gageline.part import End, Face, Hole, HoleGroup, Part, face_outline, face_range
from gageline.sheets.breaks import break_marks
from gageline.sheets.scene import Circle, Item, Line, Point, Polygon, Polyline
from gageline.sheets.style import Hatch, Role
from gageline.sheets.view import View
from gageline.steel import Plate, Profile
from gageline.units import Length

__all__ = ["is_square_end", "strip_items"]

_MM = 25.4
_WASTE = Hatch(spacing=1.4)
_SMALLEST = 0.8
_CROSS = 1.3
_OPPOSITE = {Face.TOP: Face.BOTTOM, Face.BOTTOM: Face.TOP, Face.NEAR: Face.FAR, Face.FAR: Face.NEAR}
_FLAT = frozenset({Face.TOP, Face.BOTTOM})


def strip_items(view: View, face: Face, height: float, *, slim: bool) -> list[Item]:
    """A face drawn with its upper edge at paper y 0.

    Args:
        view: the part on the paper.
        face: which face.
        height: of the strip, mm.
        slim: leave out what only a full strip has room for.
    """
    part = view.laid.part
    steel = face_outline(part, face)
    items: list[Item] = [*_waste(view, face, height, steel)]
    if not slim:
        items += _edges(view, face, height, steel)
    items += _outline(view, face, height, steel)
    items += _marks(view, face, height)
    items += break_marks(view.scale, 0.0, height)
    return items


def _shapes(geometry: BaseGeometry) -> list[Shape]:
    found = getattr(geometry, "geoms", [geometry])
    return [shape for shape in found if isinstance(shape, Shape) and not shape.is_empty]


def _millimetres(points: object) -> list[Point]:
    return [(x * _MM, y * _MM) for x, y in points]  # type: ignore[attr-defined] # shapely has no types


def _outline(view: View, face: Face, height: float, steel: BaseGeometry) -> Iterator[Item]:
    for shape in _shapes(steel):
        for ring in (shape.exterior, *shape.interiors):
            for run in view.trace(face, _millimetres(ring.coords), height):
                yield Polyline(run, Role.OUTLINE)


def _waste(view: View, face: Face, height: float, steel: BaseGeometry) -> Iterator[Item]:
    """What is cut away, hatched."""
    part = view.laid.part
    low, high = (limit.inches for limit in face_range(part.stock, face))
    blank = box(0.0, low, part.length.inches, high)
    gone = blank.difference(steel)
    if gone.is_empty:
        return
    for start, stop in view.seen():
        for shape in _shapes(gone.intersection(box(start / _MM, low, stop / _MM, high))):
            rings = [
                tuple((view.scale.at(x), view.down(face, y, height)) for x, y in _millimetres(ring.coords))
                for ring in (shape.exterior, *shape.interiors)
            ]
            yield Polygon(rings[0], None, None, _WASTE, tuple(rings[1:]))


def _edges(view: View, face: Face, height: float, steel: BaseGeometry) -> Iterator[Item]:
    """Lines along the part where another wall meets the face: full where it is seen, dashed where hidden."""
    length = view.laid.part.length.inches
    for level, role in _levels(view.laid.part, face):
        y = level.inches
        line = LineString([(0.0, y), (length, y)]).intersection(steel)
        for piece in getattr(line, "geoms", [line]):
            if isinstance(piece, LineString) and not piece.is_empty:
                for run in view.trace(face, _millimetres(piece.coords), height):
                    yield Polyline(run, role)


def _levels(part: Part, face: Face) -> list[tuple[Length, Role]]:
    stock, profile = part.stock, part.profile
    if isinstance(stock, Plate) or profile is Profile.TUBE:
        return []
    low, high = face_range(stock, face)
    if profile is Profile.ANGLE:
        return [(low + (stock.tf if face is Face.LEG_A else stock.tw), Role.HIDDEN)]
    if profile is Profile.BOX:
        return [(low + stock.tw, Role.HIDDEN), (high - stock.tw, Role.HIDDEN)]
    if face in _FLAT:
        sides = [-stock.tw] if profile is Profile.CHANNEL else [-stock.tw / 2, stock.tw / 2]
        return [(side, Role.HIDDEN) for side in sides]
    role = Role.HIDDEN if profile is Profile.CHANNEL and face is Face.NEAR else Role.THIN
    levels = [high - stock.tf] if profile is Profile.TEE else [high - stock.tf, low + stock.tf]
    return [(level, role) for level in levels]


def _marks(view: View, face: Face, height: float) -> Iterator[Item]:
    for group, on in _groups(view.laid.part):
        if on is face:
            for hole in group.holes:
                yield from _hole(view, face, height, hole)
    for mark in view.laid.on(face):
        if mark.to is not None and not is_square_end(view.laid.part, mark):
            ends = [(spot.at[0].mm, spot.at[1].mm) for spot in mark.spots]
            for run in view.trace(face, ends, height):
                yield Polyline(run, Role.MARK)
        elif mark.kind is MarkKind.RADIUS_CENTRE:
            x, y = view.scale.at(mark.spot.at[0].mm), view.down(face, mark.spot.at[1].mm, height)
            yield Line(x - _CROSS, y, x + _CROSS, y, Role.THIN)
            yield Line(x, y - _CROSS, x, y + _CROSS, Role.THIN)


def is_square_end(part: Part, mark: Mark) -> bool:
    """Whether a mark is the line of an end that is cut square, which the outline shows already."""
    return mark.kind is MarkKind.CUT_LINE and any(
        part.cut(end).square and mark.for_ == f"{end} end" for end in End
    )


def _groups(part: Part) -> Iterator[tuple[HoleGroup, Face]]:
    for group in part.groups:
        yield group, group.face
        if group.through:
            yield group, _OPPOSITE[group.face]


def _hole(view: View, face: Face, height: float, hole: Hole) -> Iterator[Item]:
    """A hole at the drawing's scale, never smaller than can be seen."""
    x, y = hole.x.mm, hole.y.mm
    radius = max(_SMALLEST, hole.width.mm / 2 * view.across)
    half = (hole.length - hole.width).mm / 2 * view.across
    centre = view.scale.at(x), view.down(face, y, height)
    if not hole.is_slot:
        yield Circle(*centre, radius, Role.OUTLINE)
        return
    turn = math.radians(float(hole.angle))
    dx, dy = half * math.cos(turn), half * math.sin(turn)
    if view.down(face, y + 1, height) < centre[1]:
        dy = -dy
    yield Polygon(_slot(centre, (dx, dy), radius), Role.OUTLINE)


def _slot(centre: Point, half: Point, radius: float) -> tuple[Point, ...]:
    start = math.degrees(math.atan2(half[1], half[0])) - 90
    points = []
    for turned, sign in ((0, 1), (180, -1)):
        for step in range(13):
            a = math.radians(start + turned + step * 15)
            x, y = centre[0] + sign * half[0], centre[1] + sign * half[1]
            points.append((x + radius * math.cos(a), y + radius * math.sin(a)))
    return tuple(points)
