"""The lines of a plan: grid, members with their signs, columns and openings, and where no label may lie."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from math import hypot

import shapely
from shapely.geometry.base import BaseGeometry

from gageline.sheets.boxes import extent, line_height
from gageline.sheets.fonts import text_width
from gageline.sheets.placing import Label, round_about
from gageline.sheets.plan_members import BEARING, FREE, PlanBeam, PlanLevel
from gageline.sheets.plan_sides import grid_line
from gageline.sheets.plan_signs import PlanView, column_sign, end_sign, free_end, left_end, set_off
from gageline.sheets.scene import Box, Item, Line, Point, Polygon
from gageline.sheets.style import FINE, Ink, Role, Weight

__all__ = ["Picture", "picture_of"]

_ARROW = 3.2
_ROOM = 12.0  # mm: a shorter line has no room for a dot between the signs of its ends
_SOLID = 0.4  # mm kept free round the sign of a member's end


@dataclass(slots=True)
class Picture:
    """What is drawn of a plan before its labels.

    Attributes:
        items: paper mm.
        lines: the members with their ends on paper, start first.
        solids: what no label may lie on.
        strokes: lines that labels keep off where they can.
        labels: of openings.
    """

    items: list[Item] = field(default_factory=list)
    lines: list[tuple[PlanBeam, tuple[Point, Point]]] = field(default_factory=list)
    solids: list[BaseGeometry] = field(default_factory=list)
    strokes: list[BaseGeometry] = field(default_factory=list)
    labels: list[Label] = field(default_factory=list)


def picture_of(
    level: PlanLevel,
    view: PlanView,
    frame: Box,
    grid: tuple[dict[str, float], dict[str, float]],
    openings: Sequence[tuple[tuple[Point, ...], str]],
) -> Picture:
    """Draw a part of a level.

    Args:
        level: what stands there.
        view: which part, and where on the paper.
        frame: the room for it and its labels, paper mm.
        grid: the lines across x and across y.
        openings: their corners and names.
    """
    picture = Picture()
    _grid(picture, view, frame, grid)
    for corners, name in openings:
        _opening(picture, view, corners, name)
    region = view.region
    window = shapely.box(view.x(region.left), view.y(region.high), view.x(region.right), view.y(region.low))
    for beam in level.beams:
        _beam(picture, beam, view, window)
    for at in level.bearings:
        if view.region.holds(at):
            picture.items += end_sign(BEARING, view.at(at), (1.0, 0.0))
    for column in level.columns:
        if view.region.holds(column.at):
            picture.items += column_sign(column, view)
            reach = max(1.6, max(column.stock.d, column.stock.bf).inches * view.scale / 2 + 0.4)
            picture.solids.append(shapely.Point(view.at(column.at)).buffer(reach, cap_style="square"))
    return picture


def _grid(
    picture: Picture, view: PlanView, frame: Box, grid: tuple[dict[str, float], dict[str, float]]
) -> None:
    region = view.region
    lines = [
        grid_line(frame.top, frame.bottom, view.x(x), upright=True)
        for x in grid[0].values()
        if region.left <= x <= region.right
    ]
    lines += [
        grid_line(frame.left, frame.right, view.y(y), upright=False)
        for y in grid[1].values()
        if region.low <= y <= region.high
    ]
    picture.items += lines
    picture.strokes += [shapely.LineString([(ln.x1, ln.y1), (ln.x2, ln.y2)]) for ln in lines]


def _opening(picture: Picture, view: PlanView, corners: tuple[Point, ...], name: str) -> None:
    """An opening in the floor, crossed."""
    points = [view.at(corner) for corner in corners]
    middle = (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))
    if not view.region.holds(
        (sum(x for x, _ in corners) / len(corners), sum(y for _, y in corners) / len(corners))
    ):
        return
    picture.items.append(Polygon(tuple(points), Role.THIN))
    picture.strokes.append(shapely.Polygon(points).exterior)
    for one, two in zip(points[: len(points) // 2], points[len(points) // 2 :], strict=False):
        picture.items.append(Line(*one, *two, Role.THIN))
        picture.strokes.append(shapely.LineString([one, two]))
    if name:
        width = text_width(name, FINE)
        spots = round_about(middle, width, line_height(FINE), 1.0, 6)
        picture.labels.append(Label(((name, Weight.REGULAR),), spots, (middle,)))


def _beam(picture: Picture, beam: PlanBeam, view: PlanView, window: BaseGeometry) -> None:
    start, finish = view.at(beam.start), view.at(beam.finish)
    length = hypot(finish[0] - start[0], finish[1] - start[1])
    if length < 1e-6:
        return
    ux, uy = (finish[0] - start[0]) / length, (finish[1] - start[1]) / length
    offs = [min(set_off(kind), length / 3) for kind in beam.kinds]
    one = (start[0] + ux * offs[0], start[1] + uy * offs[0])
    two = (finish[0] - ux * offs[1], finish[1] - uy * offs[1])
    seen = shapely.LineString([one, two]).intersection(window)
    if seen.is_empty or seen.length < 0.5:
        return
    (x1, y1), (x2, y2) = seen.coords[0], seen.coords[-1]
    picture.items.append(Line(x1, y1, x2, y2, Role.OUTLINE))
    picture.strokes.append(seen)
    picture.lines.append((beam, ((x1, y1), (x2, y2))))
    ways = ((start, (ux, uy)), (finish, (-ux, -uy)))
    for (at, inward), kind in zip(ways, beam.kinds, strict=True):
        if not shapely.Point(at).buffer(0.1).within(window):
            continue
        signs = list(free_end(at, inward)) if kind == FREE else end_sign(kind, at, inward)
        picture.items += signs
        if signs:
            box = extent(tuple(signs))
            picture.solids.append(
                shapely.box(box.left, box.top, box.right, box.bottom).buffer(_SOLID, quad_segs=1)
            )
    picture.items += _left_end(beam, (start, finish), (ux, uy), window)
    arrow = list(_slope_arrow(beam, (x1, y1), (x2, y2), (ux, uy)))
    picture.items += arrow
    picture.solids += [shapely.Polygon(head.points) for head in arrow]


def _left_end(beam: PlanBeam, ends: tuple[Point, Point], way: Point, window: BaseGeometry) -> Iterator[Item]:
    """A dot on the line by the piece's left end, where there is room between its signs."""
    (x, y), sign = (ends[1], -1.0) if beam.turned else (ends[0], 1.0)
    dot = left_end((x, y), (way[0] * sign, way[1] * sign))
    if hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]) > _ROOM and window.contains(
        shapely.Point(dot.x, dot.y)
    ):
        yield dot


def _slope_arrow(beam: PlanBeam, start: Point, finish: Point, way: Point) -> Iterator[Polygon]:
    """A head on the line of a sloping member, pointing down."""
    if abs(beam.slope) < 1e-9:
        return
    sign = -1.0 if beam.slope > 0 else 1.0
    ux, uy = way[0] * sign, way[1] * sign
    x, y = start[0] + (finish[0] - start[0]) * 0.5, start[1] + (finish[1] - start[1]) * 0.5
    tip = (x + ux * _ARROW / 2, y + uy * _ARROW / 2)
    back = (x - ux * _ARROW / 2, y - uy * _ARROW / 2)
    yield Polygon((tip, (back[0] - uy, back[1] + ux), (back[0] + uy, back[1] - ux)), None, Ink.BLACK)
