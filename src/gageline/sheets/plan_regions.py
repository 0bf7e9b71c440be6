"""Plans that are too full for one sheet, cut into parts along match lines."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import shapely

from gageline.sheets.labels import Side
from gageline.sheets.plan_members import PlanBeam
from gageline.sheets.scene import Point

__all__ = ["MOST", "Region", "halves", "inside", "neighbours", "regions_of"]

MOST = 60
"""Members on one sheet at the most."""
_EPS = 1e-6
_WIDE = 1.5  # a sheet's room is this much wider than high: parts should be so too
_EVEN = 20.0
_LONGWAYS = 25.0


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


def regions_of(whole: Region, beams: tuple[PlanBeam, ...], most: int = MOST) -> list[Region]:
    """The parts of a plan, each with no more members than a sheet can hold.

    Args:
        whole: of the plan.
        beams: of the level.
        most: members in a part.
    """
    if len(inside(whole, beams)) <= most:
        return [whole]
    two = halves(whole, beams)
    if two is None:
        return [whole]
    return [part for half in two for part in regions_of(half, beams, most)]


def halves(region: Region, beams: tuple[PlanBeam, ...]) -> tuple[Region, Region] | None:
    """A part cut in two where few members are cut and both hold about as many; None if it cannot be.

    A match line lies half way between the lines of members, never on one.
    """
    own = inside(region, beams)
    best: tuple[float, int, float] | None = None
    spans = ((region.right - region.left) / _WIDE, region.high - region.low)
    longest = max(region.right - region.left, region.high - region.low)
    for axis in (0, 1):
        low, high = ((region.left, region.right), (region.low, region.high))[axis]
        stations = sorted({round(p[axis], 3) for beam in own for p in beam.work} | {low, high})
        for a, b in pairwise(stations):
            at = (a + b) / 2
            if b - a < 1.0 or not low < at < high:
                continue
            first = sum(beam.middle[axis] < at for beam in own)
            if not 0 < first < len(own):
                continue
            cut = sum(min(p[axis] for p in beam.work) < at < max(p[axis] for p in beam.work) for beam in own)
            narrow = min(at - low, high - at) / longest
            across = spans[axis] < max(spans)
            cost = abs(2 * first - len(own)) + cut - _EVEN * narrow + (_LONGWAYS if across else 0.0)
            if best is None or cost < best[0] - _EPS:
                best = (cost, axis, at)
    if best is None:
        return None
    _, axis, at = best
    if axis == 0:
        return (
            Region(region.left, region.low, at, region.high),
            Region(at, region.low, region.right, region.high),
        )
    return Region(region.left, at, region.right, region.high), Region(
        region.left, region.low, region.right, at
    )


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
