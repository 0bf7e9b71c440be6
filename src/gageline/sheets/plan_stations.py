"""Where the members of a plan are located: on which side of it each is dimensioned, and what its ends say."""

from __future__ import annotations

from collections.abc import Sequence

from gageline.sheets.labels import Side
from gageline.sheets.notation import Scribe
from gageline.sheets.plan_members import FREE, PlanBeam
from gageline.sheets.plan_regions import Grid, Region
from gageline.sheets.plan_sides import Edge
from gageline.sheets.scene import Point
from gageline.units import Length

__all__ = ["edges_of", "is_skewed", "skewed_ends"]

_SAME = 1.0 / 32  # inches: places nearer than this are one


def _axis(beam: PlanBeam) -> int:
    """Along which axis a beam is located: 0 for one that runs up the plan, 1 for one across it."""
    (x1, y1), (x2, y2) = beam.work
    return 0 if abs(y2 - y1) > abs(x2 - x1) else 1


def is_skewed(beam: PlanBeam) -> bool:
    """Whether a beam runs askew to the grid, so that its ends lie at two stations."""
    axis = _axis(beam)
    return abs(beam.work[0][axis] - beam.work[1][axis]) > _SAME


def edges_of(region: Region, beams: Sequence[PlanBeam], grid: Grid) -> tuple[Edge, ...]:
    """What is dimensioned on each side: the beams that lie nearer to it, each at one station.

    A skewed beam has no one station: its ends say where they are (`skewed_ends`), so that no chain
    mixes the stations of two girders.

    Args:
        region: of the plan.
        beams: labelled there.
        grid: the lines.
    """
    xs = tuple((n, x) for n, x in grid[0].items() if region.left <= x <= region.right)
    ys = tuple((n, y) for n, y in grid[1].items() if region.low <= y <= region.high)
    middle = ((region.left + region.right) / 2, (region.low + region.high) / 2)
    stations: dict[Side, set[float]] = {side: set() for side in Side}
    for beam in beams:
        axis = _axis(beam)
        if not is_skewed(beam):
            stations[_side(beam.middle, axis, middle)].add(beam.work[0][axis])
        elif not grid[axis]:
            for point in beam.work:
                stations[_side(point, axis, middle)].add(point[axis])
        for point, kind in zip(beam.work, beam.kinds, strict=True):
            if kind == FREE:  # the tip of a cantilever is dimensioned along the member
                stations[_side(point, 1 - axis, middle)].add(point[1 - axis])
    return tuple(
        Edge(side, lines, tuple(_off_grid(stations[side], lines)), bubbles)
        for side, lines, bubbles in (
            (Side.ABOVE, xs, True), (Side.BELOW, xs, False), (Side.LEFT, ys, True), (Side.RIGHT, ys, False),
        )
    )  # fmt: skip


def _side(point: Point, axis: int, middle: Point) -> Side:
    """The side where a station along an axis is dimensioned: the one that the point is nearer to."""
    low = point[1 - axis] < middle[1 - axis]
    if axis == 0:
        return Side.BELOW if low else Side.ABOVE
    return Side.LEFT if low else Side.RIGHT


def _off_grid(places: set[float], lines: Sequence[tuple[str, float]]) -> list[float]:
    return sorted(at for at in places if all(abs(at - line) > _SAME for _, line in lines))


def skewed_ends(beam: PlanBeam, grid: Grid, scribe: Scribe) -> tuple[str, str]:
    """How far the work points of a skewed beam's ends lie from the nearest grid line: `8'-0" from 2`.

    Args:
        beam: the beam.
        grid: the lines.
        scribe: writes in the units of the job.

    Returns:
        For start and finish; empty where the end is on a grid line, or the beam is not skewed.
    """
    lines = grid[_axis(beam)]
    if not lines or not is_skewed(beam):
        return "", ""
    start, finish = (_from_nearest(point[_axis(beam)], lines, scribe) for point in beam.work)
    return start, finish


def _from_nearest(at: float, lines: dict[str, float], scribe: Scribe) -> str:
    name = min(lines, key=lambda one: abs(lines[one] - at))
    off = abs(at - lines[name])
    return f"{scribe.tell(Length.from_inches(off))} from {name}" if off > _SAME else ""
