"""Plans that are too full for one sheet, cut into parts along match lines."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import shapely

from gageline.sheets.labels import Side
from gageline.sheets.plan_members import PlanBeam
from gageline.sheets.scene import Point

__all__ = ["MOST", "Grid", "Region", "halves", "inside", "line_at", "neighbours", "regions_of", "seen"]

Grid = tuple[dict[str, float], dict[str, float]]
"""Grid lines across x and across y: name -> inches."""

MOST = 60
"""Members on one sheet at the most."""
_EPS = 1e-6
_WIDE = 1.5  # a sheet's room is this much wider than high: parts should be so too
_EVEN = 20.0
_LONGWAYS = 25.0
_HAIR = 1.0  # inches that a match line lies past its grid line, so that what is on the line is on one side
_SAME = 1.0 / 32  # inches: places nearer than this are one
_FAIR = 0.25  # of the members must lie on either side of a grid line for the plan to be cut there


@dataclass(frozen=True, slots=True)
class Region:
    """A part of a plan, inches, x to the right and y up.

    Attributes:
        left: its edge at the left.
        low: its lower edge.
        right: its edge at the right.
        high: its upper edge.
    """

    left: float
    low: float
    right: float
    high: float

    def holds(self, point: Point) -> bool:
        """Whether a point belongs to this part and to no other."""
        return self.left <= point[0] < self.right and self.low <= point[1] < self.high


def inside(region: Region, beams: tuple[PlanBeam, ...]) -> tuple[PlanBeam, ...]:
    """The beams that are labelled in a part: those whose middle lies there."""
    return tuple(beam for beam in beams if region.holds(beam.middle))


def seen(region: Region, beams: tuple[PlanBeam, ...], grid: Grid, over: float) -> Region:
    """What the sheet of a part shows: at a side cut at a grid line that line too, with its members.

    So a bay is whole on the sheet at either side of the line.

    Args:
        region: the part.
        beams: of the level.
        grid: the lines across x and across y.
        over: how far past the line is shown at the most, inches; less where members run near it.
    """
    left, right = (_past(at, 0, way, beams, grid, over) for at, way in ((region.left, -1), (region.right, 1)))
    low, high = (_past(at, 1, way, beams, grid, over) for at, way in ((region.low, -1), (region.high, 1)))
    return Region(left, low, right, high)


def _past(edge: float, axis: int, way: int, beams: tuple[PlanBeam, ...], grid: Grid, over: float) -> float:
    name = line_at(edge, grid[axis])
    if name is None:
        return edge
    line = grid[axis][name]
    beyond = ((p[axis] - line) * way for beam in beams for p in beam.work)
    room = min((off for off in beyond if off > _SAME), default=over * 2)
    return line + way * min(over, room / 2)


def line_at(edge: float, lines: dict[str, float]) -> str | None:
    """The grid line that a side of a part was cut at; None for one that runs between two.

    Args:
        edge: place of the side, inches.
        lines: the grid lines across it.
    """
    near = {name: edge - at for name, at in lines.items() if 0 < edge - at <= _HAIR}
    return min(near, key=near.__getitem__) if near else None


def regions_of(whole: Region, beams: tuple[PlanBeam, ...], grid: Grid, most: int = MOST) -> list[Region]:
    """The parts of a plan, each with no more members than a sheet can hold.

    Args:
        whole: of the plan.
        beams: of the level.
        grid: the lines across x and across y.
        most: members on a sheet.
    """
    if len(inside(seen(whole, beams, grid, _HAIR), beams)) <= most:
        return [whole]
    two = halves(whole, beams, grid)
    if two is None:
        return [whole]
    return [part for half in two for part in regions_of(half, beams, grid, most)]


@dataclass(frozen=True, slots=True)
class _Cut:
    """A match line that a part could be cut along.

    Args:
        axis: 0 for a line upright on the sheet, at a place along x; 1 for a level one, along y.
        at: its place, inches.
        cost: the less, the better it is.
        share: of the part's members, those on the side that has fewer.
    """

    axis: int
    at: float
    cost: float
    share: float


def halves(region: Region, beams: tuple[PlanBeam, ...], grid: Grid) -> tuple[Region, Region] | None:
    """A part cut in two where few members are cut and both hold about as many; None if it cannot be.

    It is cut beside a grid line, so that bays stay whole, if one leaves a fair share of the members on either
    side; else half way between the lines of members, never on one.

    Args:
        region: the part.
        beams: of the level.
        grid: the lines across x and across y.
    """
    own = inside(region, beams)
    at_lines, between = [], []
    for axis in (0, 1):
        low, high = ((region.left, region.right), (region.low, region.high))[axis]
        stations = sorted({round(p[axis], 3) for beam in own for p in beam.work} | {low, high})
        for line in sorted(grid[axis].values()):
            after = next((at for at in stations if at > line + _SAME), line)
            at_lines += _cut(region, own, axis, line + min(_HAIR, (after - line) / 2))
        for a, b in pairwise(stations):
            if b - a >= 1.0:
                between += _cut(region, own, axis, (a + b) / 2)
    fair = [cut for cut in at_lines if cut.share >= _FAIR]
    best = min(fair or between or at_lines, key=lambda cut: round(cut.cost, 6), default=None)
    if best is None:
        return None
    if best.axis == 0:
        return (
            Region(region.left, region.low, best.at, region.high),
            Region(best.at, region.low, region.right, region.high),
        )
    return Region(region.left, best.at, region.right, region.high), Region(
        region.left, region.low, region.right, best.at
    )


def _cut(region: Region, own: tuple[PlanBeam, ...], axis: int, at: float) -> list[_Cut]:
    """A cut with what it costs; none where it leaves one side empty."""
    low, high = ((region.left, region.right), (region.low, region.high))[axis]
    first = sum(beam.middle[axis] < at for beam in own)
    if not low < at < high or not 0 < first < len(own):
        return []
    spans = ((region.right - region.left) / _WIDE, region.high - region.low)
    narrow = min(at - low, high - at) / max(region.right - region.left, region.high - region.low)
    cut = sum(min(p[axis] for p in beam.work) < at < max(p[axis] for p in beam.work) for beam in own)
    across = spans[axis] < max(spans)
    cost = abs(2 * first - len(own)) + cut - _EVEN * narrow + (_LONGWAYS if across else 0.0)
    return [_Cut(axis, at, cost, min(first, len(own) - first) / len(own))]


def neighbours(number: int, regions: list[Region]) -> dict[Side, list[int]]:
    """The parts that lie against each side of a part, by their place in the list.

    Args:
        number: of the part.
        regions: all of them.
    """
    own = regions[number]
    sides = {
        Side.LEFT: [(own.left, own.low), (own.left, own.high)],
        Side.RIGHT: [(own.right, own.low), (own.right, own.high)],
        Side.BELOW: [(own.left, own.low), (own.right, own.low)],
        Side.ABOVE: [(own.left, own.high), (own.right, own.high)],
    }
    found: dict[Side, list[int]] = {}
    for side, ends in sides.items():
        edge = shapely.LineString(ends)
        for n, other in enumerate(regions):
            lap = shapely.box(other.left, other.low, other.right, other.high).intersection(edge)
            if n != number and lap.length > _EPS:
                found.setdefault(side, []).append(n)
    return found
