"""Grades of steel with their strengths, which fall with the thickness."""

from __future__ import annotations

import difflib
import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Final

from gageline.errors import ValueProblem
from gageline.steel.families import Family, Measure
from gageline.steel.lookup import Stock
from gageline.steel.plate import Plate
from gageline.steel.table import read_csv
from gageline.units import Length, inches_text, millimetres

__all__ = ["KSI", "Grade", "ThicknessRange", "all_grades", "grade", "usual_grade"]

KSI: Final = 6.894757293168361
"""MPa in 1 ksi."""


@dataclass(frozen=True, slots=True)
class ThicknessRange:
    """The strength of a grade in one range of thickness.

    Args:
        over: the range begins above this thickness.
        to: and ends with this one; None for no end.
        Fy: yield stress, ksi.
        Fu: tensile strength, ksi.
    """

    over: Length
    to: Length | None
    Fy: float
    Fu: float


@dataclass(frozen=True, slots=True)
class Grade:
    """A grade of steel.

    Args:
        name: as written on a drawing: `A992`, `A572-50`, `A500-C`, `S275`.
        system: US or EU.
        ranges: strengths by thickness, thinnest first.
        source: where the strengths stand.
    """

    name: str
    system: Measure
    ranges: tuple[ThicknessRange, ...]
    source: str

    @property
    def Fy(self) -> float:
        """Yield stress of ordinary thickness, ksi (European grades: from 3 to 16 mm)."""
        return self._ordinary.Fy

    @property
    def Fu(self) -> float:
        """Tensile strength of ordinary thickness, ksi (European grades: from 3 to 16 mm)."""
        return self._ordinary.Fu

    @property
    def _ordinary(self) -> ThicknessRange:
        return self.ranges[0 if self.system is Measure.US else 1]

    def strength(self, thickness: Length) -> tuple[float, float]:
        """Yield stress and tensile strength at a thickness.

        Args:
            thickness: of the material at hand (of a shape, its flange).

        Returns:
            (Fy, Fu), ksi.

        Raises:
            ValueProblem: when the thickness is not above zero or the grade is not made so thick.
        """
        if thickness.ticks <= 0:
            raise ValueProblem(
                f"thickness {self._text(thickness)} of {self.name} is not above zero: give a thickness"
            )
        for entry in self.ranges:
            if entry.to is None or thickness <= entry.to:
                return entry.Fy, entry.Fu
        raise ValueProblem(
            f"thickness {self._text(thickness)} of {self.name} is more than the "
            f"{self._text(self.ranges[-1].to or thickness)} it is made to: choose another grade"
        )

    def _text(self, thickness: Length) -> str:
        return inches_text(thickness, 64) if self.system is Measure.US else f"{millimetres(thickness)} mm"


def grade(name: str) -> Grade:
    """The grade that a text names: `A992`, `ASTM A572 Gr. 50`, `a500 grade C`, `S275JR`.

    Raises:
        ValueProblem: when the grade is not in the table, with those that are nearest.
    """
    table = {_key(known): entry for known, entry in all_grades().items()}
    key = _key(name)
    if key in table:
        return table[key]
    near = [table[other].name for other in difflib.get_close_matches(key, table, n=3)]
    hint = f"did you mean {' or '.join(near)}?" if near else f"choose from {', '.join(all_grades())}"
    raise ValueProblem(f'grade "{name}" is not in the table: {hint}')


@cache
def all_grades() -> dict[str, Grade]:
    """Every grade of the table by its name."""
    grades: dict[str, Grade] = {}
    for line in read_csv("grades.csv"):
        metric = line["unit"] == "MPa"
        make = Length.from_mm if metric else Length.from_inches
        scale = KSI if metric else 1.0
        entry = ThicknessRange(
            over=make(Fraction(line["over"])),
            to=make(Fraction(line["to"])) if line["to"] else None,
            Fy=float(line["fy"]) / scale,
            Fu=float(line["fu"]) / scale,
        )
        name = line["grade"]
        before = grades[name].ranges if name in grades else ()
        grades[name] = Grade(name, Measure(line["system"]), (*before, entry), line["source"])
    return grades


def usual_grade(stock: Stock) -> Grade:
    """The grade that a shape is usually bought in, to be confirmed with the job's specification.

    Source: AISC Manual, 16th ed., Tables 2-4 and 2-5, from memory; Design Examples v16 take Fy 50 ksi for
    channels (G.2) and angles (G.3). European sections: S275, common practice, no source.
    """
    if stock.system is Measure.EU:
        return grade("S275")
    if isinstance(stock, Plate):
        return grade("A572-50")
    usual = {
        Family.W: "A992",
        Family.WT: "A992",
        Family.HSS: "A500-C",
        Family.HSS_ROUND: "A500-C",
        Family.PIPE: "A53-B",
    }
    return grade(usual.get(stock.family, "A572-50"))


def _key(name: str) -> str:
    """A grade's name without the words and signs that people put between its letters and digits."""
    plain = re.sub(r"ASTM|GRADE|GR|[^A-Z0-9]", "", name.upper())
    return re.sub(r"^(S\d{3})(JR|J0|J2|K2)$", r"\1", plain)
