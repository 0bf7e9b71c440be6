"""What the tables of fittings have in common when they are built."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.part import (
    BoltSet,
    Face,
    Fitting,
    HoleGroup,
    Side,
    Weld,
)
from gageline.steel import Measure, Plate, Section, grade, usual_grade
from gageline.units import Length, System

__all__ = ["Joined", "field_bolts", "grade_of", "plate_stock", "rows_down", "web_face"]


@dataclass(frozen=True, slots=True)
class Joined:
    """What one table adds to a piece: fittings, how they are joined, and holes in the main part."""

    fittings: tuple[Fitting, ...]
    welds: tuple[Weld, ...] = ()
    bolts: tuple[BoltSet, ...] = ()
    groups: tuple[HoleGroup, ...] = ()


def plate_stock(thickness: Length, width: Length, system: System) -> Plate:
    """The plate of a fitting, named in the job's own units."""
    return Plate(thickness, width, Measure.US if system is System.FT_IN else Measure.EU)


def grade_of(stock: Section | Plate, name: str | None) -> str:
    """The grade given, or the usual one of that material."""
    return grade(name).name if name else usual_grade(stock).name


def field_bolts(names: tuple[str, ...], bolt: str, count: int) -> tuple[BoltSet, ...]:
    """The bolts put in at the site; none for plain holes and where there are no holes."""
    return (BoltSet(names, bolt, count, None, field=True),) if bolt and count else ()


def rows_down(first: Length, count: int, pitch: Length) -> tuple[Length, ...]:
    """Running distances of rows from the upper end."""
    return tuple(first + pitch * number for number in range(count))


def web_face(side: Side) -> Face:
    """The face of the web on one side."""
    return Face.NEAR if side is Side.NEAR else Face.FAR
