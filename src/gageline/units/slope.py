"""Bevels: how far a line leans, as a rise in 12, a ratio or an angle."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.units.length import TICKS_PER_INCH, Length
from gageline.units.reading import parse_length
from gageline.units.tape import round_to
from gageline.units.writing import System, inches_text

__all__ = ["SQUARE", "Slope", "parse_slope"]

_DEGREES = re.compile(r"(?P<value>\d+(?:\.\d+)?)\s*(?:°|deg(?:rees?)?)", re.IGNORECASE)
_RISE = re.compile(r"(?P<rise>.+?)\s*(?:in|:|/)\s*(?P<run>\d+(?:\.\d+)?)\"?", re.IGNORECASE)
_FINEST = 10**9  # an angle's tangent is kept to this denominator: 1e-9 in in an inch
_STEEPEST = 80.0


@dataclass(frozen=True, slots=True, order=True)
class Slope:
    """How far a line leans from square, as an exact ratio of offset to depth.

    Args:
        ratio: offset over depth (3 in 12 is 1/4); positive or negative, see where it is used.
    """

    ratio: Fraction

    @staticmethod
    def from_degrees(degrees: float) -> Slope:
        """The slope of an angle from square.

        Raises:
            ValueProblem: when the angle is more than 80 degrees either way.
        """
        if not -_STEEPEST <= degrees <= _STEEPEST:
            raise ValueProblem(
                f"angle {degrees:g}° from square is over {_STEEPEST:g}°: measure it from the square line"
            )
        return Slope(Fraction(math.tan(math.radians(degrees))).limit_denominator(_FINEST))

    @property
    def degrees(self) -> float:
        """The angle from square, in degrees."""
        return math.degrees(math.atan(self.ratio))

    @property
    def rise_in_12(self) -> Length:
        """The offset in a depth of 12 in."""
        return Length.from_inches(self.ratio * 12)

    def over(self, depth: Length) -> Length:
        """The offset over a depth, to the nearest tick."""
        return depth * self.ratio

    def __neg__(self) -> Slope:
        return Slope(-self.ratio)

    def __bool__(self) -> bool:
        return self.ratio != 0

    def text(self, system: System) -> str:
        """The bevel as a job writes it, without its sign: in 12, or in degrees where it is in millimetres."""
        return f"{abs(self.degrees):.1f}°" if system is System.MM else self.bevel_text()

    def bevel_text(self) -> str:
        """The bevel as the trade writes it, the larger side 12, to 1/16 in: `3 7/16 in 12`, `12 in 5`."""
        ratio = abs(self.ratio)
        sixteenth = Length(TICKS_PER_INCH // 16)
        if ratio <= 1:
            return f"{inches_text(round_to(Length.from_inches(ratio * 12), sixteenth))[:-1]} in 12"
        return f"12 in {inches_text(round_to(Length.from_inches(12 / ratio), sixteenth))[:-1]}"


SQUARE = Slope(Fraction(0))


def parse_slope(text: str) -> Slope:
    """A bevel as typed: `3 in 12`, `3:12`, `3 7/16 in 12`, `12 in 5` or `16.5°`.

    Raises:
        ValueProblem: when the text is not a bevel or is steeper than 80° from square.
    """
    clean = text.strip()
    if angle := _DEGREES.fullmatch(clean):
        return Slope.from_degrees(float(angle["value"]))
    if found := _RISE.fullmatch(clean):
        try:
            rise = parse_length(found["rise"])
        except ValueProblem:
            rise = None
        run = Fraction(found["run"])
        if rise is not None and run > 0 and rise.ticks >= 0:
            slope = Slope(Fraction(rise.ticks, TICKS_PER_INCH) / run)
            Slope.from_degrees(slope.degrees)  # the same limit for both ways of writing
            return slope
    raise ValueProblem(f'"{text}" is not a bevel: write it like 3 in 12, 3 7/16 in 12, 1:20 or 16.5°')
