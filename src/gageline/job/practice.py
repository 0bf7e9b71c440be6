"""Shop practice: the defaults a shop works by, printed on every sheet that used them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from gageline.steel import HoleKind
from gageline.units import Length, System

__all__ = ["Practice", "default_practice"]

_INCH = Length.from_inches(1)


@dataclass(frozen=True, slots=True)
class Practice:
    """What the shop does where the drawing says nothing.

    All values are common practice without a source; each can be set in `[practice]`.

    Args:
        tape: the smallest division of the tape that marks are read in.
        bolt: bolt size for holes where none is given.
        bolt_grade: bolt group and thread condition as text.
        hole: kind of hole where none is given.
        cope_radius: of the re-entrant corner of a cope.
        drop: from the top of steel down to the first row of holes.
        pitch: between rows of holes.
        end_distance: from the end of an angle or plate to its first hole.
        projection: of connection angles past the end of the steel.
        weld: leg of a fillet weld where none is given.
        template_rows: distances of the rows of the adjustable hole template from its stop.
        template_gages: how many gage lines can be set on the template to carry across.
        opening_radius: of the corners of a rectangular opening.
        finish: of pieces where none is given.
        tolerance_class: of EN 1090-2, which finished pieces of metric jobs are held to.
        tolerances: limits of the shop's own, by the code of the rule.
    """

    tape: Length = _INCH / 16
    bolt: str = "3/4"
    bolt_grade: str = "A325-N"
    hole: HoleKind = HoleKind.STD
    cope_radius: Length = _INCH / 2
    drop: Length = _INCH * 3
    pitch: Length = _INCH * 3
    end_distance: Length = _INCH * 5 / 4
    projection: Length = _INCH / 2
    weld: Length = _INCH / 4
    template_rows: tuple[Length, ...] = tuple(_INCH * 3 * count for count in range(5))
    template_gages: int = 2
    opening_radius: Length = _INCH / 2
    finish: str = "none"
    tolerance_class: int = 1
    tolerances: Mapping[str, Length] = field(default_factory=dict)


def default_practice(system: System) -> Practice:
    """The practice of a shop that works in feet and inches, or of one that works in millimetres."""
    if system is System.FT_IN:
        return Practice()
    mm = Length.from_mm
    return Practice(
        tape=mm(1),
        bolt="M20",
        bolt_grade="8.8",
        cope_radius=mm(12),
        drop=mm(75),
        pitch=mm(70),
        end_distance=mm(40),
        projection=mm(10),
        weld=mm(6),
        template_rows=tuple(mm(70 * count) for count in range(5)),
        opening_radius=mm(12),
    )
