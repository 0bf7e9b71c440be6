"""Forces and loads as they are typed: `60 kip`, `267 kN`, `1.2 kip/ft`, `17.5 kN/m`, `85 psf`, `4 kPa`."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated

from pydantic import PlainSerializer, PlainValidator, WithJsonSchema

from gageline.errors import ValueProblem
from gageline.job.wording import shown
from gageline.units import Length

__all__ = ["AreaLoad", "AreaLoadText", "Force", "ForceText", "LineLoad", "LineLoadText", "read_force"]

_KIP = Fraction("4.4482216152605")
_FOOT = Fraction("0.3048")
_FORCES = {"kip": Fraction(1), "kips": Fraction(1), "lb": Fraction(1, 1000), "kN": 1 / _KIP}
_LINE_LOADS = {
    "kip/ft": Fraction(1, 12),
    "klf": Fraction(1, 12),
    "plf": Fraction(1, 12000),
    "lb/ft": Fraction(1, 12000),
    "kN/m": _FOOT / _KIP / 12,
}
_FOOT_WIDE, _METRE_WIDE = Length.from_inches(12), Length.from_mm(1000)
_AREA_LOADS = {
    "psf": ("plf", _FOOT_WIDE),
    "lb/ft2": ("plf", _FOOT_WIDE),
    "ksf": ("kip/ft", _FOOT_WIDE),
    "kPa": ("kN/m", _METRE_WIDE),
    "kN/m2": ("kN/m", _METRE_WIDE),
}  # the line load that each makes over a width of one
_TYPED = re.compile(r"(\d{1,9}(?:\.\d{1,6})?)\s*([A-Za-z]+(?:/[A-Za-z]+2?)?)")
_MOST = 100_000


@dataclass(frozen=True, slots=True)
class Force:
    """A force with the unit it was typed in.

    Args:
        number: as typed.
        unit: as typed.
    """

    number: Fraction
    unit: str

    @property
    def kips(self) -> float:
        """The force in kips."""
        return float(self.number * _FORCES[self.unit])

    @property
    def kilonewtons(self) -> float:
        """The force in kilonewtons."""
        return float(self.number * _FORCES[self.unit] * _KIP)

    @property
    def text(self) -> str:
        """As typed."""
        return f"{float(self.number):.6f}".rstrip("0").rstrip(".") + f" {self.unit}"


@dataclass(frozen=True, slots=True)
class LineLoad:
    """A load along a member with the unit it was typed in.

    Args:
        number: as typed.
        unit: as typed.
    """

    number: Fraction
    unit: str

    @property
    def kips_per_inch(self) -> float:
        """The load in kips per inch."""
        return float(self.number * _LINE_LOADS[self.unit])

    @property
    def text(self) -> str:
        """As typed."""
        return f"{float(self.number):.6f}".rstrip("0").rstrip(".") + f" {self.unit}"


@dataclass(frozen=True, slots=True)
class AreaLoad:
    """A load on a floor or a roof with the unit it was typed in.

    Args:
        number: as typed.
        unit: as typed.
    """

    number: Fraction
    unit: str

    @property
    def text(self) -> str:
        """As typed."""
        return f"{float(self.number):.6f}".rstrip("0").rstrip(".") + f" {self.unit}"

    def over(self, width: Length) -> LineLoad:
        """The load along a beam that carries so wide a strip."""
        unit, one = _AREA_LOADS[self.unit]
        return LineLoad(self.number * width.ratio(one), unit)


def _read(units: Iterable[str], what: str, value: object) -> tuple[Fraction, str]:
    example = next(iter(units))
    if not isinstance(value, str) or not (found := _TYPED.fullmatch(value.strip())):
        raise ValueProblem(f'{shown(value)} is no {what}: write a number and its unit, "12.5 {example}"')
    number, unit = Fraction(found[1]), found[2]
    if unit not in units:
        raise ValueProblem(f"{shown(value)} has a unit that is no {what}: use {', '.join(units)}")
    if not 0 < number <= _MOST:
        raise ValueProblem(f"{shown(value)} must be above 0 and at most {_MOST} {unit}: check the number")
    return number, unit


def read_force(value: object) -> Force:
    """A force as it is typed.

    Raises:
        ValueProblem: when it is none.
    """
    return value if isinstance(value, Force) else Force(*_read(_FORCES, "force", value))


def _line_load(value: object) -> LineLoad:
    return (
        value if isinstance(value, LineLoad) else LineLoad(*_read(_LINE_LOADS, "load along a member", value))
    )


def _area_load(value: object) -> AreaLoad:
    return value if isinstance(value, AreaLoad) else AreaLoad(*_read(_AREA_LOADS, "load on an area", value))


def _text(value: Force | LineLoad | AreaLoad) -> str:
    return value.text


def _schema(units: Iterable[str], what: str) -> WithJsonSchema:
    names = "|".join(units)
    return WithJsonSchema(
        {"type": "string", "pattern": rf"^\d+(\.\d+)?\s*({names})$", "description": f"a {what} with its unit"}
    )


_WRITE = PlainSerializer(_text)
ForceText = Annotated[Force, PlainValidator(read_force), _WRITE, _schema(_FORCES, "force")]
LineLoadText = Annotated[
    LineLoad, PlainValidator(_line_load), _WRITE, _schema(_LINE_LOADS, "load along a member")
]
AreaLoadText = Annotated[
    AreaLoad, PlainValidator(_area_load), _WRITE, _schema(_AREA_LOADS, "load on an area")
]
