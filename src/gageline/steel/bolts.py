"""Structural bolts: what they measure, what room they need and how hard they are pulled."""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from fractions import Fraction
from functools import cache
from typing import Final

from gageline.errors import ValueProblem
from gageline.steel.families import Measure
from gageline.steel.names import clean
from gageline.steel.table import Line, read_csv
from gageline.units import ZERO, Length, parse_length

__all__ = ["SPEC_YEARS", "Bolt", "BoltGroup", "all_bolts", "bolt", "check_year", "pretension"]

SPEC_YEARS: Final = (2005, 2010, 2016, 2022)
"""Editions of AISC 360 whose bolt tables are kept."""

_KIP: Final = 4.4482216152605
"""kN in 1 kip."""


class BoltGroup(IntEnum):
    """Strength group of AISC 360 by tensile strength, ksi: 120 is A325 and F1852, 150 is A490 and F2280."""

    GROUP_120 = 120
    GROUP_150 = 150


@dataclass(frozen=True, slots=True, kw_only=True)
class Bolt:
    """A size of structural bolt with its nut and washer; None where the tables do not give a dimension.

    Args:
        size: as written: `3/4` or `M20`.
        system: US or EU.
        diameter: nominal diameter.
        head_width: across the flats of head and nut.
        head_height: height of the head.
        nut_height: height of the nut.
        thread: length of the thread.
        washer_diameter: outside diameter of a round washer.
        washer: what one washer adds to the length to order.
        grip_add: what grip and washers want besides, to make the least length to order.
        socket: diameter of the wrench's socket.
        stick_out: room for the shank beyond the nut while tightening (H2).
        clear_tighten: bolt centre to the nearest obstruction, to tighten (C1).
        clear_enter: the same, to enter the bolt (C2).
        clear_fillet: bolt centre to the start of a fillet, round washer (C3).
        clear_fillet_clipped: the same, clipped washer.
        pitch: of the thread.
        stress_area_mm2: tensile stress area of a metric bolt, mm2.
        edition: where the dimensions stand.

    Source: AISC Manual, LRFD 2nd ed., vol. II, Tables 8-2 and 8-4; EN 14399 from memory.
    """

    size: str
    system: Measure
    diameter: Length
    head_width: Length
    head_height: Length
    nut_height: Length
    thread: Length
    washer_diameter: Length
    washer: Length
    edition: str
    grip_add: Length | None = None
    socket: Length | None = None
    stick_out: Length | None = None
    clear_tighten: Length | None = None
    clear_enter: Length | None = None
    clear_fillet: Length | None = None
    clear_fillet_clipped: Length | None = None
    pitch: Length | None = None
    stress_area_mm2: float | None = None


def bolt(text: str) -> Bolt:
    """The bolt of a size: `3/4`, `3/4"`, `1 1/8`, `0.875`, `M20`.

    Raises:
        ValueProblem: when there is no structural bolt of the size, with those that there are.
    """
    tidy = clean(text).replace("M ", "M")
    table = all_bolts()
    if tidy in table:
        return table[tidy]
    try:
        diameter = parse_length(text)
    except ValueProblem:
        diameter = ZERO
    for entry in table.values():
        if entry.diameter == diameter:
            return entry
    raise ValueProblem(f'bolt "{text}" is not in the table: choose from {", ".join(table)}')


@cache
def all_bolts() -> dict[str, Bolt]:
    """Every bolt of the tables by its size, inch sizes first."""
    inch = [_inch_bolt(line) for line in read_csv("bolts_us.csv")]
    metric = [_metric_bolt(line) for line in read_csv("bolts_eu.csv")]
    return {entry.size: entry for entry in (*inch, *metric)}


def _inch_bolt(line: Line) -> Bolt:
    def given(column: str) -> Length | None:
        return parse_length(line[column]) if line[column] else None

    return Bolt(
        size=line["size"],
        system=Measure.US,
        diameter=parse_length(line["size"]),
        head_width=parse_length(line["head_width_in"]),
        head_height=parse_length(line["head_height_in"]),
        nut_height=parse_length(line["nut_height_in"]),
        thread=parse_length(line["thread_in"]),
        washer_diameter=parse_length(line["washer_diameter_in"]),
        washer=parse_length(line["washer_allowance_in"]),
        edition=line["edition"],
        grip_add=given("grip_add_in"),
        socket=given("socket_in"),
        stick_out=given("stick_out_in"),
        clear_tighten=given("clear_tighten_in"),
        clear_enter=given("clear_enter_in"),
        clear_fillet=given("clear_fillet_in"),
        clear_fillet_clipped=given("clear_fillet_clipped_in"),
    )


def _metric_bolt(line: Line) -> Bolt:
    def mm(column: str) -> Length:
        return Length.from_mm(Fraction(line[column]))

    return Bolt(
        size=line["size"],
        system=Measure.EU,
        diameter=mm("diameter_mm"),
        head_width=mm("head_width_mm"),
        head_height=mm("head_height_mm"),
        nut_height=mm("nut_height_mm"),
        thread=mm("thread_mm"),
        washer_diameter=mm("washer_diameter_mm"),
        washer=mm("washer_thickness_mm"),
        edition=line["edition"],
        pitch=mm("pitch_mm"),
        stress_area_mm2=float(line["stress_area_mm2"]),
    )


def check_year(year: int) -> None:
    """Refuse an edition of AISC 360 whose tables are not kept.

    Raises:
        ValueProblem: when the year is not one of `SPEC_YEARS`.
    """
    if year not in SPEC_YEARS:
        known = ", ".join(map(str, SPEC_YEARS))
        raise ValueProblem(f"AISC 360 edition {year} is not kept: choose one of {known}")


def pretension(size: Bolt, group: BoltGroup = BoltGroup.GROUP_120, year: int = 2022) -> float:
    """Least pretension of a bolt that has to be pretensioned.

    Args:
        size: the bolt.
        group: strength group.
        year: edition of AISC 360; from 2016 on group 120 is as strong in the large sizes as in the small.

    Returns:
        Tension, kip.

    Raises:
        ValueProblem: when the edition is not kept.

    Source: AISC 360-05 Table J3.1 and J3.1M; from 2016 on, sizes above 1 in, from memory.
    """
    check_year(year)
    found = [
        line
        for line in _pretensions()
        if line["size"] == size.size and int(line["group"]) == group and int(line["from_year"]) <= year
    ]
    line = max(found, key=lambda entry: int(entry["from_year"]))
    return float(line["pretension"]) / (_KIP if line["unit"] == "kN" else 1.0)


@cache
def _pretensions() -> tuple[Line, ...]:
    return tuple(read_csv("pretension.csv"))
