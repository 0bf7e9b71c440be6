"""Plates across an end: end plates, base plates and cap plates."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.job.axes import hung, into, minus
from gageline.job.cutting import HoleMaker, ends
from gageline.job.fittings import EndPlateEntry
from gageline.job.joining import Joined, field_bolts, grade_of, plate_stock, rows_down
from gageline.job.practice import Practice
from gageline.part import (
    BoltSet,
    End,
    Face,
    Fitting,
    FittingKind,
    HoleGroup,
    Join,
    Part,
    Vector,
    Weld,
    extent_y,
    extent_z,
    in_order,
    reflect_x,
)
from gageline.steel import Profile, Section
from gageline.units import ZERO, Length, System

__all__ = ["join_end_plates"]

_OF_HOLES = frozenset(
    {"bolt", "columns", "diameter", "end_distance", "gage", "hole", "pitch", "slot", "turn"}
)


def join_end_plates(
    kind: FittingKind, entry: EndPlateEntry, main: Part, practice: Practice, system: System
) -> Joined:
    """An end plate, base plate or cap plate across one end or both.

    Raises:
        ValueProblem: when the end is not cut square, or the holes do not fit on the plate.
    """
    fittings: list[Fitting] = []
    welds: list[Weld] = []
    bolts: list[BoltSet] = []
    for end in ends(entry.end):
        if not main.cut(end).square:
            raise ValueProblem(f"the {end} end is not cut square: a plate across it needs a square end")
        part, maker = _end_plate(entry, practice, system)
        low, high = extent_y(main.stock)
        far, near = extent_z(main.stock)
        top = high - entry.drop if entry.drop is not None else low + (high - low + entry.length) / 2
        side = (
            far + (near - far - entry.width) / 2
            if end is End.RIGHT
            else near - (near - far - entry.width) / 2
        )
        x = -entry.thickness if end is End.LEFT else main.length + entry.thickness
        ez = minus(into(end))
        ey: Vector = (0, 0, -1) if end is End.LEFT else (0, 0, 1)
        placement, down = hung(ey, ez, (x, top, side), entry.length)
        name = f"{end} {kind}"
        fittings.append(
            Fitting(name, kind, part if down else reflect_x(part), placement, None, end, Join.WELDED)
        )
        size = entry.weld or practice.weld
        welds.append(Weld(name, size, _round(main), 1, "all around the section", all_around=True))
        bolts.extend(field_bolts((name,), maker.bolt, entry.rows * entry.columns))
    return Joined(tuple(fittings), tuple(welds), tuple(bolts))


def _end_plate(entry: EndPlateEntry, practice: Practice, system: System) -> tuple[Part, HoleMaker]:
    maker = HoleMaker.of(entry, practice)
    unused = sorted(entry.model_fields_set & _OF_HOLES)
    if unused and not entry.rows:
        raise ValueProblem(f"{unused[0]} is given but no rows of holes: give rows, or leave it out")
    stock = plate_stock(entry.thickness, entry.width, system)
    groups: tuple[HoleGroup, ...] = ()
    if entry.rows:
        pitch = entry.pitch or practice.pitch
        span = pitch * (entry.rows - 1)
        first = (entry.length - span) / 2 if entry.end_distance is None else entry.end_distance
        if entry.columns > 1 and entry.gage is None:
            raise ValueProblem(f"gage is missing for {entry.columns} columns of holes: give it")
        gage = entry.gage or ZERO
        start = entry.width / 2 - gage * (entry.columns - 1) / 2
        ys = tuple(start + gage * number for number in range(entry.columns))
        holes = in_order(maker.grid(rows_down(first, entry.rows, pitch), ys))
        groups = (HoleGroup("bolt holes", Face.FACE, holes, maker.bolt, maker.kind),)
    return Part(entry.mark or "", stock, grade_of(stock, entry.grade), entry.length, groups=groups), maker


def _round(main: Part) -> Length:
    """The length of a weld all around the section, from the tables where they have it."""
    section = main.stock
    low, high = extent_y(section)
    far, near = extent_z(section)
    if section.profile is Profile.TUBE:
        return Length.from_inches((high - low).inches * math.pi)
    if isinstance(section, Section) and section.PB is not None:
        return Length.from_inches(section.PB)
    return (high - low + near - far) * 2
