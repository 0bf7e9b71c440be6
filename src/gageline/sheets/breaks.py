"""Broken views: long pieces on short paper, with stretches where nothing happens cut out.

The picture gives up scale along the cut stretches only; every dimension on it stays a true running one.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from gageline.errors import ValueProblem
from gageline.sheets.scene import Item, Point, Polyline
from gageline.sheets.style import Role

__all__ = ["BrokenScale", "break_marks", "broken_scale"]

GAP = 2.4
"""mm of paper between the two edges of a break."""
STUB = 7.0
"""mm of paper drawn at each side of a break before it."""


@dataclass(frozen=True, slots=True)
class BrokenScale:
    """How far along the piece each place lies on the paper: straight runs, always rising.

    Attributes:
        true: corners of the map along the piece, its own unit, rising.
        paper: the same corners on the paper, mm, rising.
        scale: mm of paper for one unit of the piece where nothing is cut out.
        gaps: each break's two edges on the paper, mm.
    """

    true: tuple[float, ...]
    paper: tuple[float, ...]
    scale: float
    gaps: tuple[tuple[float, float], ...]

    def at(self, x: float) -> float:
        """Paper x in mm of the place x along the piece; beyond the ends at the plain scale."""
        if x <= self.true[0]:
            return self.paper[0] + (x - self.true[0]) * self.scale
        if x >= self.true[-1]:
            return self.paper[-1] + (x - self.true[-1]) * self.scale
        i = bisect_right(self.true, x) - 1
        part = (x - self.true[i]) / (self.true[i + 1] - self.true[i])
        return self.paper[i] + part * (self.paper[i + 1] - self.paper[i])

    def pieces(self, start: float, end: float) -> list[tuple[float, float]]:
        """What can be seen of a line along the piece from `start` to `end`, as runs of paper x in mm."""
        left, right = self.at(min(start, end)), self.at(max(start, end))
        runs = []
        for gap_left, gap_right in self.gaps:
            if left < gap_left:
                runs.append((left, min(gap_left, right)))
            left = max(left, gap_right)
        if left < right:
            runs.append((left, right))
        return [run for run in runs if run[0] < run[1]]


def broken_scale(
    features: Sequence[float],
    left: float,
    width: float,
    *,
    wanted: float,
    largest: float | None = None,
) -> BrokenScale:
    """Choose the scale and the breaks of a long view.

    The whole is drawn if that is at least at the wanted scale; otherwise the longest stretches without a
    feature are cut, one after another, until the wanted scale is reached or cutting does not help any more.

    Args:
        features: places along the piece that must be seen, its two ends among them, its own unit (mm or in).
        left: where the first of them lies on the paper, mm.
        width: paper for the whole view, mm.
        wanted: mm of paper for one unit of the piece that the view should have at least.
        largest: mm of paper for one unit of the piece never to exceed; the wanted scale if None.

    Returns:
        The map; it fills the width unless the largest scale is reached without a break.

    Raises:
        ValueProblem: a width of zero or less, or fewer than two different places.
    """
    places = sorted(set(features))
    if len(places) < 2 or width <= 0 or wanted <= 0:
        raise ValueProblem(
            f"a view of {len(places)} places on {width:.1f} mm of paper at {wanted:g} mm a unit cannot be "
            f"drawn: give at least the two ends of the piece, a width and a scale above 0"
        )
    spans = sorted(((b - a, i) for i, (a, b) in enumerate(pairwise(places))), reverse=True)
    most = max(wanted, largest or wanted)
    scale, cut = _choose(spans, width, wanted)
    scale = min(scale, most)
    if not cut:
        return BrokenScale(
            (places[0], places[-1]), (left, left + (places[-1] - places[0]) * scale), scale, ()
        )
    return _broken(places, cut, left, width, scale)


def _choose(spans: list[tuple[float, int]], width: float, wanted: float) -> tuple[float, frozenset[int]]:
    """The scale, and which spans are cut: as few as reach the wanted scale."""
    rest = sum(length for length, _ in spans)
    best, best_cut = width / rest, frozenset[int]()
    cut: set[int] = set()
    for length, i in spans:
        if best >= wanted:
            break
        cut.add(i)
        rest -= length
        free = width - len(cut) * (2 * STUB + GAP)
        if free <= 0:
            break
        scale = free / rest if rest > 0 else wanted
        # A break that takes more paper than the stretch itself would is no help.
        if scale > best and length * min(scale, wanted) > 2 * STUB + GAP:
            best, best_cut = scale, frozenset(cut)
    return best, best_cut


def _broken(places: list[float], cut: frozenset[int], left: float, width: float, scale: float) -> BrokenScale:
    spans = list(enumerate(pairwise(places)))
    least = 2 * STUB + GAP
    whole = sum(b - a for i, (a, b) in spans if i not in cut) * scale
    # Paper left over is shared by how much each break hides, so none shows more than there is.
    hides = {i: (b - a) * scale - least for i, (a, b) in spans if i in cut}
    share = (width - whole - len(cut) * least) / sum(hides.values())
    true, paper, gaps = [places[0]], [left], []
    for i, (a, b) in spans:
        at = paper[-1]
        if i in cut:
            stub = STUB + share * hides[i] / 2
            true += [a + stub / scale, b - stub / scale, b]
            paper += [at + stub, at + stub + GAP, at + 2 * stub + GAP]
            gaps.append((at + stub, at + stub + GAP))
        else:
            true.append(b)
            paper.append(at + (b - a) * scale)
    return BrokenScale(tuple(true), tuple(paper), scale, tuple(gaps))


def break_marks(scale: BrokenScale, top: float, bottom: float) -> list[Item]:
    """The two zigzag edges of every break, across a strip of the view.

    Args:
        scale: the map of the view.
        top: upper edge of the strip, paper mm.
        bottom: lower edge of the strip, paper mm.

    Returns:
        The items; the lines along the piece must stop at the gaps (`BrokenScale.pieces`).
    """
    return [Polyline(_zigzag(x, top, bottom), Role.BREAK) for gap in scale.gaps for x in gap]


def _zigzag(x: float, top: float, bottom: float) -> tuple[Point, ...]:
    middle, half = (top + bottom) / 2, min(1.6, (bottom - top) / 6)
    return (
        (x, top - 1.2),
        (x, middle - half),
        (x - 0.9, middle - half / 3),
        (x + 0.9, middle + half / 3),
        (x, middle + half),
        (x, bottom + 1.2),
    )
