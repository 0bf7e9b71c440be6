"""A full-size drawing cut into pages that overlap, each with match lines and registration crosses."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil

from shapely import LineString, box
from shapely.geometry.base import BaseGeometry

from gageline.sheets.boxes import text_box
from gageline.sheets.scene import Anchor, Item, Level, Line, Point, Polyline, Text
from gageline.sheets.style import BODY, Role
from gageline.sheets.template_notes import clear_texts

__all__ = ["LEEWAY", "OVERLAP", "Tile", "tiles"]

OVERLAP = 30.0
"""mm that two neighbouring pages both show, so that a usual hole with its cross is whole on one of them."""
LEEWAY = 20.0
"""mm kept free to the left of and above a drawing that one page holds, where the page has so much."""
_REGISTER = 3.0
_MOVED = 30  # mm that a match line is moved at most to go through no hole


@dataclass(frozen=True, slots=True)
class Tile:
    """The part of a drawing that one page shows.

    Args:
        left: of what it shows, mm in the drawing.
        top: the same.
        width: of what it shows, mm.
        height: the same.
        row: counted from 1 at the top.
        column: counted from 1 at the left.
        rows: how many rows of pages there are.
        columns: how many columns.
        paper: where its upper left corner lies on the page, mm.
    """

    left: float
    top: float
    width: float
    height: float
    row: int
    column: int
    rows: int
    columns: int
    paper: Point

    @property
    def name(self) -> str:
        """Which page of how many, by row and column; empty where there is one page only."""
        if self.rows * self.columns == 1:
            return ""
        return f"row {self.row} of {self.rows}, column {self.column} of {self.columns}"

    def at(self, point: Point) -> Point:
        """Where a point of the drawing lies on the page, mm."""
        return point[0] - self.left + self.paper[0], point[1] - self.top + self.paper[1]

    def shows(self, point: Point, reach: float = 0.0) -> bool:
        """Whether a point is on this page with so much around it."""
        x, y = point[0] - self.left, point[1] - self.top
        return (
            reach - 1e-9 <= x <= self.width - reach + 1e-9 and reach - 1e-9 <= y <= self.height - reach + 1e-9
        )

    def line(self, points: Iterable[Point], role: Role) -> Iterator[Item]:
        """What this page shows of a line."""
        window = box(self.left, self.top, self.left + self.width, self.top + self.height)
        for run in _runs(LineString(list(points)).intersection(window)):
            yield Polyline(tuple(self.at(point) for point in run), role)

    def match_lines(self, taken: Sequence[BaseGeometry]) -> Iterator[Item]:
        """The lines along which this page meets its neighbours, each with two crosses to register by.

        Args:
            taken: what the words beside them must not touch, mm in the drawing.
        """
        words = []
        for (x, y), side, text in self._seams():
            a, b = (self._on(x, y, share) for share in (0.0, 1.0))
            yield from self.line([a, b], Role.NEIGHBOUR)
            for share in (0.25, 0.75):
                yield from self._cross(self._on(x, y, share))
            level = Level.TOP if side > 0 else Level.BOTTOM
            turn, off = (90.0, (side, 0.0)) if y is None else (0.0, (0.0, side))
            spots = [self._on(x, y, share) for share in (0.5, 0.4, 0.6, 0.1, 0.9)]
            words.append(
                [
                    Text(u + off[0], v + off[1], text, BODY, anchor=Anchor.CENTRE, level=level, rotation=turn)
                    for u, v in spots
                ]
            )
        yield from (self.text(one) for one in clear_texts(words, taken))

    def _seams(self) -> Iterator[tuple[tuple[float | None, float | None], float, str]]:
        """Of each match line its x or its y, on which side its words stand, and what they say."""
        half = OVERLAP / 2
        right, bottom = self.left + self.width, self.top + self.height
        if self.column > 1:
            yield (self.left + half, None), 1.2, f"joins column {self.column - 1} here"
        if self.column < self.columns:
            yield (right - half, None), -1.2, f"joins column {self.column + 1} here"
        if self.row > 1:
            yield (None, self.top + half), 1.2, f"joins row {self.row - 1} here"
        if self.row < self.rows:
            yield (None, bottom - half), -1.2, f"joins row {self.row + 1} here"

    def seams(self) -> list[LineString]:
        """The match lines, mm in the drawing."""
        return [LineString([self._on(x, y, 0.0), self._on(x, y, 1.0)]) for (x, y), _, _ in self._seams()]

    def text(self, text: Text) -> Text:
        """A text of the drawing where it lies on the page."""
        x, y = self.at((text.x, text.y))
        return replace(text, x=x, y=y)

    def holds(self, text: Text) -> bool:
        """Whether a text of the drawing lies wholly on this page."""
        return all(self.shows(corner) for corner in text_box(text))

    def _on(self, x: float | None, y: float | None, share: float) -> Point:
        """A point along an upright line at x, or along a level one at y."""
        if x is not None:
            return x, self.top + self.height * share
        return self.left + self.width * share, y or 0.0

    def _cross(self, point: Point) -> Iterator[Item]:
        x, y = self.at(point)
        yield Line(x - _REGISTER, y, x + _REGISTER, y, Role.FRAME)
        yield Line(x, y - _REGISTER, x, y + _REGISTER, Role.FRAME)


def _runs(geometry: BaseGeometry) -> Iterator[list[Point]]:
    for piece in getattr(geometry, "geoms", [geometry]):
        if isinstance(piece, LineString) and not piece.is_empty:
            yield [(x, y) for x, y in piece.coords]


def tiles(size: Point, window: Point, corner: Point, holes: Sequence[tuple[Point, float]] = ()) -> list[Tile]:
    """The pages of a drawing, row by row; one that a page holds whole stands high and to the left.

    Args:
        size: width and height of the drawing, mm.
        window: width and height free on a page, mm, more than the overlap.
        corner: upper left corner of that window on the page, mm.
        holes: middles, and how far each reaches, mm, that match lines keep off where they can.
    """
    columns, rows = (
        _spans(size[axis], window[axis], [(middle[axis], reach) for middle, reach in holes])
        for axis in (0, 1)
    )
    found = []
    for row, (top, height, y) in enumerate(rows, 1):
        for column, (left, width, x) in enumerate(columns, 1):
            paper = corner[0] + x, corner[1] + y
            found.append(Tile(left, top, width, height, row, column, len(rows), len(columns), paper))
    return found


def _spans(
    full: float, free: float, holes: Sequence[tuple[float, float]]
) -> list[tuple[float, float, float]]:
    """Start and size of what each page shows, and its offset in the window."""
    if full <= free:
        return [(0.0, full, min(free - full, LEEWAY))]
    count = ceil((full - OVERLAP) / (free - OVERLAP))
    step = (full - OVERLAP) / count  # pages of nearly one size, so that none is a sliver
    starts = [0.0]
    for number in range(1, count):
        least = full - OVERLAP - (count - number) * (free - OVERLAP)
        starts.append(_start(number * step, (least, starts[-1] + free - OVERLAP), holes))
    ends = [*(start + OVERLAP for start in starts[1:]), full]
    return [(start, end - start, (free - end + start) / 2) for start, end in zip(starts, ends, strict=True)]


def _start(usual: float, limits: tuple[float, float], holes: Sequence[tuple[float, float]]) -> float:
    """Where a page starts: as near to the usual place as its match line goes through no hole."""
    for off in sorted(range(-_MOVED, _MOVED + 1), key=abs):
        seam = usual + off + OVERLAP / 2
        within = limits[0] <= usual + off <= limits[1]
        if within and all(abs(seam - middle) > reach for middle, reach in holes):
            return usual + off
    return usual
