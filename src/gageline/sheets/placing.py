"""Labels put where they touch no other label and, where it can be had, no line.

Every label brings places where it would like to stand, each with what it costs; one that finds none of them
free stands aside with a leader. Labels with the fewest free places choose first; those that are left without
one choose before all others the next time.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import islice
from math import copysign, cos, hypot, inf, radians, sin

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from gageline.sheets.boxes import line_height
from gageline.sheets.fonts import font_metrics, text_width
from gageline.sheets.scene import Box, Item, Line, Point, Polygon, Text
from gageline.sheets.style import FINE, Ink, Role, Weight

__all__ = ["Board", "Label", "Run", "Spot", "beside_line", "placed_labels", "round_about"]

Run = tuple[str, Weight]
"""A stretch of text in one weight."""

_FREE = 0.35  # mm kept free around a label
_ENDS = 0.7  # mm more from a line to where a text begins or ends: its box has no margin there
_CROSSED = 18.0  # what a line through a label costs
_ASIDE = 12.0  # what a leader costs
_LONG = 0.7  # and every mm of it: a name far from its steel is looked for in vain
_AWAY = 0.6  # mm from a line to the label along it
_RINGS = tuple(
    (radius * cos(radians(way)), radius * sin(radians(way)), _ASIDE + _LONG * radius)
    for radius in (5.0 + 3.0 * n for n in range(30))
    for way in (15.0 * n + 7.5 for n in range(24))
)  # mm across and down from what a leader points at, and what it costs
_STEP = 1.5  # mm along a line from one place to the next
_BACKWARD = 3.0  # what the second half of a label before the first costs
_UNDER = 4.0  # what a line under a leader costs
_LEADER = 0.25  # mm on both sides of a leader that no label touches
_OWN = 3.0  # mm round what a leader points at, where it may start on a sign
_SLACK = 1e-6
_TIMES = 5  # how often all labels are placed, for those left over to choose earlier
_BATCH = 96  # places aside tried at once
_FEW = 4  # labels left over that are worth placing all anew


@dataclass(frozen=True, slots=True)
class Spot:
    """A place where a label may stand.

    Attributes:
        x: middle of the label, paper mm.
        y: middle of the label, paper mm.
        rotation: degrees counter-clockwise.
        cost: how little it is liked.
    """

    x: float
    y: float
    rotation: float = 0.0
    cost: float = 0.0


@dataclass(frozen=True, slots=True)
class Label:
    """A text to be placed.

    Attributes:
        runs: what it says, on one line.
        spots: where it may stand.
        targets: what a leader may point at, the best first, paper mm.
        size: points.
        halves: the same in two shorter labels, for where the whole finds no clean place.
    """

    runs: tuple[Run, ...]
    spots: tuple[Spot, ...]
    targets: tuple[Point, ...]
    size: float = FINE
    halves: tuple[Label, Label] | None = None

    @property
    def width(self) -> float:
        """Of the whole label, mm."""
        return sum(text_width(text, self.size, weight) for text, weight in self.runs)

    @property
    def height(self) -> float:
        """Of its em box, mm."""
        return line_height(self.size)

    def box(self, spot: Spot, free: float = 0.0) -> NDArray[np.float64]:
        """Corners of the label at a spot, 4 by 2, paper mm, `free` wider on every side."""
        corners: NDArray[np.float64] = self.boxes([spot], free)[0]
        return corners

    def boxes(self, spots: Sequence[Spot], free: float = 0.0, ends: float = 0.0) -> NDArray[np.float64]:
        """Corners of the label at each of some spots, n by 4 by 2, paper mm.

        Args:
            spots: where it may stand.
            free: mm kept free on every side.
            ends: mm more before and after the text.
        """
        a, b = self.width / 2 + free + ends, self.height / 2 + free
        x, y, turn = np.array([(spot.x, spot.y, spot.rotation) for spot in spots]).T[:, :, None]
        c, s = np.cos(np.radians(turn)), np.sin(np.radians(turn))
        u, v = np.array([-a, a, a, -a]), np.array([-b, -b, b, b])
        return np.stack((x + u * c + v * s, y - u * s + v * c), axis=-1)

    def texts(self, spot: Spot) -> Iterator[Text]:
        """The label drawn at a spot."""
        c, s = cos(radians(spot.rotation)), sin(radians(spot.rotation))
        font = font_metrics(Weight.REGULAR)
        down = (font.ascent - font.descent) / 2 * self.height
        u = -self.width / 2
        for text, weight in self.runs:
            x, y = spot.x + u * c + down * s, spot.y - u * s + down * c
            yield Text(x, y, text, self.size, weight, rotation=spot.rotation)
            u += text_width(text, self.size, weight)


@dataclass(frozen=True, slots=True)
class Board:
    """What labels are placed on.

    Attributes:
        frame: that they must stay in, paper mm.
        solids: what no label may lie on.
        lines: what labels keep off where they can.
    """

    frame: Box
    solids: tuple[BaseGeometry, ...]
    lines: tuple[BaseGeometry, ...]


def beside_line(start: Point, end: Point, width: float, height: float) -> tuple[Spot, ...]:
    """Places along a line on both its sides, the middle of the upper side first.

    Args:
        start: of the line, paper mm.
        end: of the line, paper mm.
        width: of the label, mm.
        height: of the label, mm.

    Returns:
        Places read from below or from the right; none where the line is shorter than the label.
    """
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = hypot(dx, dy)
    if length < width + 1.0:
        return ()
    ux, uy = dx / length, dy / length
    if ux < -1e-9 or (abs(ux) <= 1e-9 and uy > 0):  # read from below or from the right
        ux, uy, start = -ux, -uy, end
    rotation = -float(np.degrees(np.arctan2(uy, ux)))
    off = height / 2 + _AWAY
    slide = (length - width) / 2 - 0.5
    spots = []
    steps = max(1, int(slide / _STEP))
    for share in sorted((n / steps for n in range(-steps, steps + 1)), key=abs):
        at = length / 2 + share * slide
        for side, dear in ((1.0, 0.0), (-1.0, 0.6)):
            x = start[0] + ux * at + uy * off * side
            y = start[1] + uy * at - ux * off * side
            spots.append(Spot(x, y, rotation, dear + 2.0 * abs(share)))
    return tuple(spots)


def round_about(
    at: Point, width: float, height: float, near: float = 1.0, rings: int = 3
) -> tuple[Spot, ...]:
    """Level places round a point, the nearest first.

    Args:
        at: the point, paper mm.
        width: of the label, mm.
        height: of the label, mm.
        near: mm from the point to the nearest edge of the label.
        rings: how many distances are tried.
    """
    spots = []
    for ring in range(rings):
        free = near + 1.2 * ring
        a, b = width / 2 + free, height / 2 + free
        for n, (u, v) in enumerate(
            ((a, -b), (-a, -b), (a, b), (-a, b), (a, 0.0), (-a, 0.0), (0.0, -b), (0.0, b))
        ):
            spots.append(Spot(at[0] + u, at[1] + v, 0.0, 0.2 * n + 1.5 * ring))
    return tuple(spots)


def placed_labels(labels: Sequence[Label], board: Board) -> list[Item] | None:
    """The labels, each at the best place that is left for it.

    Args:
        labels: in any order.
        board: what they are placed on.

    Returns:
        Texts, leaders, and white under texts that a line would run through; None where a label finds no
        place at all.
    """
    table = _Table(board, shapely.STRtree(board.lines), shapely.STRtree(board.solids))
    clean = [sum(cost < _ASIDE for cost, *_ in table.offer(label)) for label in labels]
    order = sorted(range(len(labels)), key=lambda n: (clean[n], n))
    for _ in range(_TIMES):
        left = list(islice((n for n in order if not table.put(labels[n])), _FEW + 1))
        if not left:
            return table.items
        if len(left) > _FEW or left[0] == order[0]:  # what chose first and found nothing never will
            return None
        order = [*left, *(n for n in order if n not in left)]
        table.clear()
    return None


_Found = tuple[float, Spot, BaseGeometry]


@dataclass(slots=True)
class _Table:
    """Labels on their way to their places.

    Attributes:
        board: what they are placed on.
        lines: of the board.
        solids: of the board.
        taken: boxes and leaders placed so far.
        items: drawn so far.
        known: offers worked out so far; what has been placed does not change them.
    """

    board: Board
    lines: shapely.STRtree
    solids: shapely.STRtree
    taken: list[BaseGeometry] = field(default_factory=list)
    items: list[Item] = field(default_factory=list)
    known: dict[tuple[Label, Point | None], list[_Found]] = field(default_factory=dict)

    def clear(self) -> None:
        """Take off what has been placed."""
        self.taken.clear()
        self.items = []

    def put(self, label: Label) -> bool:
        """Place a label; False where it finds no place."""
        found = self._first_free(self.offer(label))
        if found is not None and found[0] < _ASIDE:
            self._take(label, found)
            return True
        if label.halves and self._put_halves(label.halves):
            return True
        aside = self._aside(label, found[0] if found else inf)
        if aside is not None:
            found, leader = aside
            self.items.append(leader)
            self.taken.append(_straight(leader).buffer(_LEADER))
        if found is None:
            return False
        self._take(label, found)
        return True

    def offer(self, label: Label, target: Point | None = None) -> list[_Found]:
        """The label's own spots, or those round a target, that the board leaves free, the cheapest first."""
        if (label, target) not in self.known:
            spots = label.spots if target is None else tuple(_rings(label, target))
            self.known[label, target] = self._offers(label, spots)
        return self.known[label, target]

    def _offers(self, label: Label, every: Sequence[Spot]) -> list[_Found]:
        if not every:
            return []
        corners = label.boxes(every, _FREE)
        within = _inside(corners, self.board.frame)
        every = [spot for spot, good in zip(every, within, strict=True) if good]
        boxes = np.atleast_1d(np.asarray(shapely.polygons(corners[within]), dtype=object))
        free = np.ones(len(every), dtype=bool)
        free[self.solids.query(boxes, predicate="intersects")[0]] = False
        longer = shapely.polygons(label.boxes(every, _FREE, _ENDS)) if every else boxes
        crossed = np.bincount(self.lines.query(longer, predicate="intersects")[0], minlength=len(every))
        found = [
            (spot.cost + _CROSSED * int(many), spot, box)
            for spot, box, good, many in zip(every, boxes, free, crossed, strict=True)
            if good
        ]
        return sorted(found, key=lambda one: one[0])

    def _first_free(self, offers: Sequence[_Found]) -> _Found | None:
        """The cheapest offer that touches nothing placed before."""
        hit = _hits(shapely.STRtree(self.taken), [box for _, _, box in offers])
        return next(iter(_without(offers, hit)), None)

    def _put_halves(self, halves: tuple[Label, Label]) -> bool:
        """Place both shorter labels cleanly, the second after the first as they are read, or none."""
        tree = shapely.STRtree(self.taken)
        first, second = (
            _without(clean, _hits(tree, [box for _, _, box in clean]))
            for half in halves
            for clean in [[one for one in self.offer(half) if one[0] < _ASIDE]]
        )
        if not first or not second:
            return False
        apart = ~shapely.intersects(*np.meshgrid(_boxes(first), _boxes(second), indexing="ij"))
        price = np.where(
            apart, _costs(first)[:, None] + _costs(second) + _BACKWARD * _before(first, second), inf
        )
        one, two = np.unravel_index(int(price.argmin()), price.shape)
        if not apart[one, two]:
            return False
        self._take(halves[0], first[one])
        self._take(halves[1], second[two])
        return True

    def _aside(self, label: Label, limit: float) -> tuple[_Found, Line] | None:
        """The best place with a leader that costs less than a limit."""
        taken = shapely.STRtree(self.taken)
        best: tuple[_Found, Line] | None = None
        for target in label.targets:
            offers = self.offer(label, target)
            for first in range(0, len(offers), _BATCH):
                some = offers[first : first + _BATCH]
                if some[0][0] >= (best[0][0] if best else limit):
                    break
                for price, spot, box in self._led(label, target, some, taken):
                    if price < (best[0][0] if best else limit):
                        best = (price, spot, box), _leader(label, spot, target)
        return best

    def _led(
        self, label: Label, target: Point, offers: Sequence[_Found], taken: shapely.STRtree
    ) -> Iterator[_Found]:
        """Those of some offers whose leader to a target is free, with what lines under it cost."""
        offers = _without(offers, _hits(taken, [box for _, _, box in offers]))
        offers = _without(offers, _hits(taken, _straights(label, target, offers), _LEADER))
        # A leader may start on a sign of what it points at.
        offers = _without(offers, _hits(self.solids, _straights(label, target, offers, _OWN), _LEADER))
        crossed = self.lines.query(_straights(label, target, offers), predicate="crosses")[0]
        under = np.bincount(crossed, minlength=len(offers))
        for (cost, spot, box), many in zip(offers, under, strict=True):
            yield cost + _UNDER * int(many), spot, box

    def _take(self, label: Label, found: _Found) -> None:
        _, spot, box = found
        if len(self.lines.query(box, predicate="intersects")):
            corners = tuple((float(x), float(y)) for x, y in label.box(spot))
            self.items.append(Polygon(corners, None, Ink.WHITE))
        self.taken.append(box)
        self.items.extend(label.texts(spot))


def _boxes(offers: Sequence[_Found]) -> NDArray[np.object_]:
    return np.array([box for _, _, box in offers], dtype=object)


def _costs(offers: Sequence[_Found]) -> NDArray[np.float64]:
    return np.array([cost for cost, _, _ in offers])


def _before(first: Sequence[_Found], second: Sequence[_Found]) -> NDArray[np.bool_]:
    """Where the second of two labels would be read before the first, of each with each."""
    turn = radians(first[0][1].rotation)
    one, two = (
        np.array([spot.x * cos(turn) - spot.y * sin(turn) for _, spot, _ in offers])
        for offers in (first, second)
    )
    return np.asarray(two[None, :] < one[:, None] - _SLACK)


def _inside(corners: NDArray[np.float64], frame: Box) -> NDArray[np.bool_]:
    """Which of the boxes lie inside a frame."""
    x, y = corners[:, :, 0], corners[:, :, 1]
    across = (x >= frame.left - _SLACK) & (x <= frame.right + _SLACK)
    up = (y >= frame.top - _SLACK) & (y <= frame.bottom + _SLACK)
    return np.asarray((across & up).all(1))


def _rings(label: Label, target: Point) -> Iterator[Spot]:
    """Level places further and further away."""
    x, y = target
    half = label.width / 2
    for u, v, cost in _RINGS:
        yield Spot(x + u + copysign(half, u), y + v, 0.0, cost)


def _leader(label: Label, spot: Spot, target: Point) -> Line:
    """From what it points at to the near end of the label's middle line."""
    return Line(*target, *_near_end(label.width, spot, target), Role.DIMENSION)


def _near_end(width: float, spot: Spot, target: Point) -> Point:
    return spot.x - copysign(width / 2 + 0.4, spot.x - target[0]), spot.y


def _straights(
    label: Label, target: Point, offers: Sequence[_Found], own: float = 0.0
) -> NDArray[np.object_]:
    """The leaders to a label's places, without so many mm round what they point at."""
    width = label.width
    ends = np.array([_near_end(width, spot, target) for _, spot, _ in offers]).reshape(-1, 2)
    way = ends - target
    starts = target + way * np.minimum(1.0, own / np.hypot(*way.T))[:, None]
    return np.asarray(shapely.linestrings(np.stack((starts, ends), axis=1)), dtype=object)


def _hits(
    tree: shapely.STRtree, shapes: Sequence[BaseGeometry] | NDArray[np.object_], far: float = 0.0
) -> NDArray[np.bool_]:
    """Which shapes come as near as that to one of a tree's, mm."""
    found = np.zeros(len(shapes), dtype=bool)
    found[tree.query(np.array(shapes, dtype=object), predicate="dwithin", distance=far)[0]] = True
    return found


def _without(offers: Sequence[_Found], hit: NDArray[np.bool_]) -> list[_Found]:
    return [one for one, bad in zip(offers, hit, strict=True) if not bad]


def _straight(line: Line) -> BaseGeometry:
    return shapely.LineString([(line.x1, line.y1), (line.x2, line.y2)])
