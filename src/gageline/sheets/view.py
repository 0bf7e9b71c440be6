"""One part seen flat: how its length lies on the paper, broken where nothing happens."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from gageline.layout import Mark, PartLayout
from gageline.part import Face, face_range
from gageline.sheets.breaks import BrokenScale, broken_scale
from gageline.sheets.scene import Point
from gageline.units import ZERO

__all__ = ["DOWNWARD", "View", "view_of"]

DOWNWARD = frozenset({Face.TOP, Face.FAR, Face.LEG_B})
"""Faces whose own y grows down the paper when the stick is laid open; that of the others grows up."""
_LARGEST = 0.34
"""Paper mm for 1 mm of steel at the most: small pieces need not fill the sheet."""
_SMALL = 70.0
"""Paper mm that a small piece should be long."""
_SHORTEST = 70.0
"""Paper mm that any piece is long at least."""
_TALLEST = 56.0
"""Paper mm that one face may be high."""
_UNBROKEN = 0.7
"""A view that would be at least this part of the wanted scale is drawn whole rather than broken."""


@dataclass(frozen=True, slots=True)
class View:
    """A part laid along the paper.

    Args:
        laid: the part with its marks and steps.
        scale: places along the part (mm) to places on the paper (mm).
        across: paper mm for 1 mm across the faces.
    """

    laid: PartLayout
    scale: BrokenScale
    across: float

    @property
    def left(self) -> float:
        """Where the left end lies on the paper, mm."""
        return self.scale.paper[0]

    @property
    def right(self) -> float:
        """Where the right end lies on the paper, mm."""
        return self.scale.paper[-1]

    def height(self, face: Face) -> float:
        """Paper height of a face, mm."""
        low, high = face_range(self.laid.part.stock, face)
        return (high - low).mm * self.across

    def down(self, face: Face, y: float, height: float) -> float:
        """From the upper edge of a face's strip of a height down to the face's own y (mm), paper mm."""
        low, high = (limit.mm for limit in face_range(self.laid.part.stock, face))
        share = (y - low if face in DOWNWARD else high - y) / (high - low)
        return share * height

    def seen(self) -> list[tuple[float, float]]:
        """The stretches along the part (mm) that are not cut out by breaks."""
        edges = [self.scale.true[0]]
        for gap_left, _ in self.scale.gaps:
            index = self.scale.paper.index(gap_left)
            edges += [self.scale.true[index], self.scale.true[index + 1]]
        edges.append(self.scale.true[-1])
        return list(zip(edges[::2], edges[1::2], strict=True))

    def trace(self, face: Face, points: Iterable[Point], height: float) -> Iterator[tuple[Point, ...]]:
        """What can be seen of a line on a face, as lines on the paper.

        Args:
            face: the face.
            points: x along the part and the face's own y, mm.
            height: of the strip, paper mm; its upper edge is paper y 0.
        """
        run: list[Point] = []
        zero = self.down(face, 0.0, height)
        slope = self.down(face, 1.0, height) - zero
        for start, stop in pairwise(points):
            for a, b in self._visible(start, stop):
                first, last = ((self.scale.at(x), zero + slope * y) for x, y in (a, b))
                if run and run[-1] != first:
                    yield tuple(run)
                    run = []
                run += [last] if run else [first, last]
        if run:
            yield tuple(run)

    def _visible(self, start: Point, stop: Point) -> Iterator[tuple[Point, Point]]:
        """The parts of a straight line that no break hides, in its own direction."""
        if not self.scale.gaps or start[0] == stop[0]:
            yield start, stop
            return
        runs = self.seen() if start[0] < stop[0] else [(b, a) for a, b in reversed(self.seen())]
        length = stop[0] - start[0]
        for a, b in runs:
            low = max(0.0, (a - start[0]) / length)
            high = min(1.0, (b - start[0]) / length)
            if low < high:
                yield _between(start, stop, low), _between(start, stop, high)


def _between(start: Point, stop: Point, share: float) -> Point:
    # The ends come back as they are, so that neighbouring lines still meet exactly.
    if share in {0.0, 1.0}:
        return stop if share else start
    return start[0] + (stop[0] - start[0]) * share, start[1] + (stop[1] - start[1]) * share


def view_of(
    laid: PartLayout,
    busy: tuple[Face, ...],
    limits: tuple[float, float],
    budget: float,
    *,
    whole: bool = False,
) -> View:
    """Choose how large a part is drawn and where it is broken.

    Args:
        laid: the part with its marks.
        busy: the faces that are drawn at full height.
        limits: paper x that the part may lie between, mm.
        budget: paper height for those faces together, mm.
        whole: from end to end at one scale, not broken.
    """
    part = laid.part
    ranges = [face_range(part.stock, face) for face in busy]
    heights = [(high - low).mm for low, high in ranges]
    length = part.length.mm
    width = limits[1] - limits[0]
    across = min(max(_LARGEST, _SMALL / length), budget / sum(heights), _TALLEST / max(heights))
    # A short deep piece is drawn longer than it is, so that its readings have room side by side.
    along, fills = max(across, _SHORTEST / length), width / length
    if whole or fills >= _UNBROKEN * along:
        if whole or along == across:
            across = min(across, fills)
        along, places = min(along, fills), [0.0, length]
    else:
        places = sorted({0.0, length, *_features(laid.marks, length)})
    return View(laid, broken_scale(places, limits[0], width, wanted=along), across)


def _features(marks: tuple[Mark, ...], length: float) -> Iterator[float]:
    """Places along the part that must be seen: marks, and the steel right and left of holes and centres."""
    for mark in marks:
        reach = (mark.size or ZERO).mm
        for spot in mark.spots:
            x = spot.at[0].mm
            yield min(max(x - reach, 0.0), length)
            yield min(max(x + reach, 0.0), length)
