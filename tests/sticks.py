"""Sticks as measured and the piece wanted from them, for tests; all of them invented."""

from __future__ import annotations

from gageline.job import EndReadings, Stick
from gageline.part import Assembly
from gageline.units import Length, parse_length
from jobs import piece_of

__all__ = ["ANGLES", "corners", "example_piece", "example_stick"]

ANGLES = """
[[piece.angles]]
end = "both"
stock = "L4x3-1/2x5/16"
rows = 3
projection = "1/2"
"""


def corners(*offsets: str | None, depth: str | None = None) -> EndReadings:
    """An end by the offsets of its corners: top near, top far, bottom near, bottom far."""
    tn, tf, bn, bf = (None if one is None else parse_length(one) for one in offsets)
    return EndReadings((tn, tf, bn, bf), depth=None if depth is None else parse_length(depth))


def example_piece(lines: str = ANGLES, stock: str = "W16x26") -> Assembly:
    """A beam with an angle on each side of its web at both ends, 18'-7 1/4 long."""
    return piece_of(lines, stock=stock, length='"18\'-7 1/4"')


def example_stick(length: str = "18'-6 7/8") -> Stick:
    """3/8 short, 1/4 out of square at the left end (bottom edge long), 1/8 deep, cambered 1/2 up."""
    half: Length = parse_length("1/2")
    return Stick(
        "B1",
        "7K2214",
        parse_length(length),
        left=corners("-1/4", "-1/4", "0", "0", depth="15.825in"),
        right=corners("0", "0", "0", "0", depth="15.825in"),
        camber=half,
    )
