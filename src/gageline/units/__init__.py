"""Lengths, bevels and the tape: what every other room measures with."""

from gageline.units.length import ZERO, Length
from gageline.units.reading import Unit, parse_length
from gageline.units.slope import SQUARE, Slope, parse_slope
from gageline.units.tape import round_down, round_to, round_up
from gageline.units.writing import (
    System,
    counted,
    exact_text,
    feet_inches,
    inches_text,
    is_metric,
    millimetres,
    write_length,
)

__all__ = [
    "SQUARE",
    "ZERO",
    "Length",
    "Slope",
    "System",
    "Unit",
    "counted",
    "exact_text",
    "feet_inches",
    "inches_text",
    "is_metric",
    "millimetres",
    "parse_length",
    "parse_slope",
    "round_down",
    "round_to",
    "round_up",
    "write_length",
]
