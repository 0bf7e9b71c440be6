"""Patterns of bolts and places of fittings, read off the geometry of record."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from gageline.errors import ValueProblem
from gageline.part import Fitting, HoleGroup, Part, Point, Vector, corners, extent_y, face_point
from gageline.part import Hole as Drilled
from gageline.steel import HoleKind, bolt, hole_size
from gageline.strength.aisc360.j3_bolts import Hole
from gageline.strength.connection import Bolted, Holes
from gageline.strength.steels import BoltSteel
from gageline.units import ZERO, Length

__all__ = ["Grid", "bolted", "dot", "grid_of", "holes_of", "places_of", "reach"]

_KINDS = {
    HoleKind.STD: (Hole.STANDARD, Hole.STANDARD),
    HoleKind.OVS: (Hole.OVERSIZED, Hole.OVERSIZED),
    HoleKind.SSL: (Hole.SHORT_PARALLEL, Hole.SHORT_PERPENDICULAR),
    HoleKind.LSL: (Hole.LONG_PARALLEL, Hole.LONG_PERPENDICULAR),
}


def dot(one: Vector, other: Vector) -> float:
    """The scalar product of two directions."""
    return sum(a * b for a, b in zip(one, other, strict=True))


def reach(fitting: Fitting, way: Vector) -> tuple[float, float]:
    """Between which distances along a direction a fitting lies, in the space it is placed in, in.

    Args:
        fitting: the fitting.
        way: unit vector.
    """
    found = [dot(_inches(corner), way) for corner in corners(fitting)]
    return min(found), max(found)


def places_of(fitting: Fitting, group: HoleGroup) -> tuple[Point, ...]:
    """Where the holes of a fitting's group are, in the space that the fitting is placed in."""
    stock = fitting.part.stock
    return tuple(
        fitting.placement.point(face_point(stock, group.face, hole.x, hole.y)) for hole in group.holes
    )


def _inches(point: Point) -> Vector:
    x, y, z = point
    return x.inches, y.inches, z.inches


@dataclass(frozen=True, slots=True)
class Grid:
    """Holes in rows and columns.

    Args:
        rows: from the upper end of the part down to each row.
        columns: from the edge that the joint is measured from to each column.
        beyond: from the last row down to the lower end.
        upright: whether the part's own x is the upright way.
    """

    rows: tuple[Length, ...]
    columns: tuple[Length, ...]
    beyond: Length
    upright: bool


def grid_of(part: Part, group: HoleGroup, *, upright: bool, down: bool) -> Grid:
    """The rows and columns of a group of holes.

    Args:
        part: the fitting's part.
        group: its holes.
        upright: whether the part's x is the upright way, else its y.
        down: whether that axis runs down.

    Raises:
        ValueProblem: holes that stand in no full grid.
    """
    low, high = (ZERO, part.length) if upright else extent_y(part.stock)
    own = [(hole.x, hole.y) if upright else (hole.y, hole.x) for hole in group.holes]
    rows = sorted({(place - low if down else high - place) for place, _ in own})
    columns = sorted({across for _, across in own})
    if len(rows) * len(columns) != len(own):
        raise ValueProblem(
            f'the {len(own)} holes of "{group.name}" stand in {len(rows)} rows and {len(columns)} columns '
            "that are not all filled: staggered bolts are not covered, give them a full grid"
        )
    return Grid(tuple(rows), tuple(columns), high - low - rows[-1], upright)


def bolted(
    group: HoleGroup, grid: Grid, steel: BoltSteel, gage: float, side: float, mate: Holes | None
) -> Bolted:
    """A joint with bolts.

    Args:
        group: the fitting's holes.
        grid: their rows and columns.
        steel: of the bolts.
        gage: from the fitting's own line to the nearest column, in.
        side: from the farthest column to the edge of the fitting, in.
        mate: holes in the part that it is bolted to; standard ones where they are not known.

    Raises:
        ValueProblem: holes for no bolt of a table, or columns at uneven distances.
    """
    if not group.bolt or group.kind is None:
        raise ValueProblem(f'the holes "{group.name}" are for no bolt of a table: give bolt and hole')
    size = bolt(group.bolt)
    steps = [(b - a).inches for a, b in pairwise(grid.rows)]
    between = {b - a for a, b in pairwise(grid.columns)}
    if len(between) > 1:
        raise ValueProblem("columns of bolts at uneven distances are not covered: give them one distance")
    standard = hole_size(size, HoleKind.STD).width.inches
    return Bolted(
        size.size,
        size.diameter.inches,
        steel.group,
        steel.threads,
        len(grid.rows),
        min(steps, default=1.0),
        gage,
        grid.rows[0].inches,
        grid.beyond.inches,
        side,
        holes_of(group.holes[0], group.kind, upright=grid.upright),
        mate or Holes(Hole.STANDARD, standard, standard),
        len(grid.columns),
        between.pop().inches if between else 0.0,
        _uneven(steps),
        steel.surface,
    )


def _uneven(steps: Sequence[float]) -> tuple[float, ...]:
    return tuple(steps) if len(set(steps)) > 1 else ()


def holes_of(hole: Drilled, kind: HoleKind, *, upright: bool) -> Holes:
    """Holes by their size along and across the reaction.

    Args:
        hole: one of them.
        kind: of hole.
        upright: whether the part's x runs along the reaction.
    """
    along_x = abs(hole.angle) < 45
    if hole.is_slot and hole.angle % 90:
        raise ValueProblem(
            f"a slot at {float(hole.angle):g} degrees to its part is not covered: turn it along or across"
        )
    length, width = hole.length.inches, hole.width.inches
    lengthwise = along_x == upright
    along, across = (length, width) if lengthwise else (width, length)
    return Holes(_KINDS[kind][0 if lengthwise else 1], along, across)
