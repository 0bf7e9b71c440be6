"""Holes for bolts: their sizes, edge distances, pitches and gages."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from functools import cache

from gageline.errors import ValueProblem
from gageline.steel.bolts import Bolt, check_year
from gageline.steel.table import Line, read_csv
from gageline.units import Length, inches_text, parse_length

__all__ = [
    "HoleKind",
    "HoleSize",
    "LegGage",
    "hole_size",
    "leg_gage",
    "minimum_edge_distance",
    "minimum_spacing",
]


class HoleKind(StrEnum):
    """Kinds of bolt holes: standard, oversized, short-slotted and long-slotted."""

    STD = "STD"
    OVS = "OVS"
    SSL = "SSL"
    LSL = "LSL"


@dataclass(frozen=True, slots=True)
class HoleSize:
    """The size of a hole.

    Args:
        width: diameter, or width of a slot.
        length: overall length of a slot; the diameter again of a round hole.
    """

    width: Length
    length: Length


@cache
def hole_size(bolt: Bolt, kind: HoleKind = HoleKind.STD, year: int = 2022) -> HoleSize:
    """The nominal hole for a bolt.

    Args:
        bolt: the bolt.
        kind: standard, oversized, short-slotted or long-slotted.
        year: edition of AISC 360. Up to 2010 a standard hole was 1/16 in larger than any bolt; from 2016
            on it is 1/8 in larger for bolts of 1 in and more.

    Returns:
        Width and length of the hole.

    Raises:
        ValueProblem: when the edition is not kept.

    Source: AISC 360 Table J3.3 and J3.3M; RCSC 2020 Table 3.1.
    """
    check_year(year)
    found = [
        line for line in _table("holes.csv") if line["size"] == bolt.size and int(line["from_year"]) <= year
    ]
    line = max(found, key=lambda entry: int(entry["from_year"]))
    columns = {
        HoleKind.STD: ("std", "std"),
        HoleKind.OVS: ("ovs", "ovs"),
        HoleKind.SSL: ("short_width", "short_length"),
        HoleKind.LSL: ("long_width", "long_length"),
    }
    width, length = (_length(line[column], line["unit"]) for column in columns[kind])
    return HoleSize(width, length)


@cache
def minimum_edge_distance(bolt: Bolt, kind: HoleKind = HoleKind.STD, *, slot_to_edge: bool = False) -> Length:
    """Least distance from the centre of a hole to an edge.

    Args:
        bolt: the bolt.
        kind: kind of hole.
        slot_to_edge: whether a slot runs towards the edge; a slot along the edge adds nothing.

    Source: AISC 360-16 Table J3.4 and J3.4M; the additions of Table J3.5 from memory.
    """
    line = next(line for line in _table("edges.csv") if line["size"] == bolt.size)
    least = _length(line["edge"], line["unit"])
    if kind is HoleKind.OVS:
        return least + _length(line["over_add"], line["unit"])
    if kind is HoleKind.SSL and slot_to_edge:
        return least + _length(line["short_add"], line["unit"])
    if kind is HoleKind.LSL and slot_to_edge:
        return least + bolt.diameter * Fraction(3, 4)
    return least


def minimum_spacing(bolt: Bolt) -> Length:
    """Least distance between centres of holes: 2 2/3 diameters.

    Source: AISC 360, J3.3 (J3.4 in the 2022 edition, which also asks for a clear distance of one diameter).
    """
    return bolt.diameter * Fraction(8, 3)


@dataclass(frozen=True, slots=True)
class LegGage:
    """The usual gages of an angle's leg, from the heel.

    Args:
        gage: of a single line of holes.
        first: heel to the first of two lines; None where the leg is too narrow for two.
        second: from the first line to the second.
    """

    gage: Length
    first: Length | None
    second: Length | None


@cache
def leg_gage(leg: Length) -> LegGage:
    """The usual gages of an angle's leg.

    Args:
        leg: width of the leg.

    Raises:
        ValueProblem: when the leg is narrower than the narrowest of the table or between its widths.

    Source: AISC Manual, Table 1-7A; the 3 and 4 in legs read in Design Examples v16, the others from memory.
    """
    for line in _table("angle_gages.csv"):
        if parse_length(line["leg_in"]) == leg:
            first, second = (
                parse_length(line[key]) if line[key] else None for key in ("first_in", "second_in")
            )
            return LegGage(parse_length(line["gage_in"]), first, second)
    known = ", ".join(line["leg_in"] for line in _table("angle_gages.csv"))
    raise ValueProblem(
        f"leg {inches_text(leg, 64)} has no usual gage: give the gage, or use a leg of {known} in"
    )


def _length(text: str, unit: str) -> Length:
    return Length.from_mm(Fraction(text)) if unit == "mm" else parse_length(text)


@cache
def _table(name: str) -> tuple[Line, ...]:
    return tuple(read_csv(name))
