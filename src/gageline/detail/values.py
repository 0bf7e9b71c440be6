"""What a row of bolts carries, from a simple table until the connection is checked."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from gageline.errors import ValueProblem
from gageline.steel import Bolt, BoltGroup, HoleKind, bolt, hole_size, pretension
from gageline.units import Length

__all__ = ["SLIP", "BoltValue", "bolt_value", "row_value", "sizes_under", "slip_value"]

SLIP = "AISC 360-22 Equation J3-4 and Section J3.9"
_KIP = 4.4482216152605  # kN
_PULLED = {"A325": BoltGroup.GROUP_120, "F1852": BoltGroup.GROUP_120}
_PULLED |= {"A490": BoltGroup.GROUP_150, "F2280": BoltGroup.GROUP_150}
_FRICTION = {"A": 0.30, "B": 0.50}
_OF_HOLE = {HoleKind.OVS: 0.85, HoleKind.LSL: 0.70}  # slots lie across the reaction


@dataclass(frozen=True, slots=True)
class BoltValue:
    """What one bolt carries.

    Args:
        shear: in one shear plane, kip or kN as the table's unit says.
        bearing: in a ply one inch thick, kip; None where the table gives none.
        unit: kip or kN.
        source: the standard or example.
    """

    shear: float
    bearing: float | None
    unit: str
    source: str


@cache
def _table() -> dict[str, BoltValue]:
    text = (files("gageline.detail") / "data" / "bolt_values.csv").read_text(encoding="utf-8")
    return {
        bolt(line["size"]).size: BoltValue(
            float(line["shear"]),
            float(line["bearing_per_length"]) if line["bearing_per_length"] else None,
            line["unit"].partition(" ")[0],
            line["source"],
        )
        for line in csv.DictReader(text.splitlines())
    }


def bolt_value(size: Bolt) -> BoltValue:
    """What one bolt of a size carries.

    Raises:
        ValueProblem: when the table does not have the size.
    """
    if size.size not in _table():
        raise ValueProblem(f'bolt "{size.size}" has no value in the table: use one of {", ".join(_table())}')
    return _table()[size.size]


def sizes_under(size: Bolt) -> tuple[Bolt, ...]:
    """The smaller bolts of the table, of the same system, the largest first."""
    known = (bolt(name) for name in _table())
    under = [one for one in known if one.system is size.system and one.diameter < size.diameter]
    return tuple(sorted(under, key=lambda one: one.diameter, reverse=True))


def slip_value(size: Bolt, grade: str, hole: HoleKind) -> float | None:
    """What one slip-critical bolt holds in one plane before it slips, kip or kN as its table's unit says.

    Args:
        size: the bolt.
        grade: of the bolts, like `A325-SC` or `A490-X-SC-B`; class A where none is given.
        hole: kind of hole.

    Returns:
        The value; None where bolts bear, and of a grade without a pretension.

    Source: AISC 360-22 Equation J3-4, one plane, no fillers, with the factors of Section J3.9.
    """
    name, *marks = grade.upper().replace(" ", "").split("-")
    if "SC" not in marks or name not in _PULLED:
        return None
    friction = _FRICTION["B" if marks[-1] == "B" else "A"]
    value = _OF_HOLE.get(hole, 1.0) * friction * 1.13 * pretension(size, _PULLED[name])
    return value * _KIP if bolt_value(size).unit == "kN" else value


def row_value(size: Bolt, planes: int, web: Length, pitch: Length) -> float:
    """What one row of bolts through the beam's web carries, kip or kN as the table's unit says.

    Args:
        size: the bolt.
        planes: shear planes of the row.
        web: thickness of the web.
        pitch: between rows; where it is small, what tears out between them counts (AISC 360-22 J3.11a).
    """
    value = bolt_value(size)
    shear = value.shear * planes
    if value.bearing is None:
        return shear
    clear = (pitch - hole_size(size, HoleKind.STD).width).inches
    tearing = min(1.0, 1.2 * clear / (2.4 * size.diameter.inches))
    return min(shear, value.bearing * tearing * web.inches)
