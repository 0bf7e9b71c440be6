"""The exact length that every dimension in Gageline is kept in."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from gageline.errors import ValueProblem

__all__ = ["TICKS_PER_INCH", "TICKS_PER_MM", "ZERO", "Length"]

TICKS_PER_MM = 6400
TICKS_PER_INCH = 162560  # 25.4 mm exactly, so that 1/256 in and 1/100 mm are both whole ticks

Number = int | float | Fraction | Decimal


def _ticks(value: Number, per_unit: int, unit: str) -> int:
    """The nearest whole tick; a half goes to the even one so that no side is favoured."""
    try:
        return round(Fraction(value) * per_unit)
    except (ValueError, OverflowError) as wrong:
        raise ValueProblem(f"length {value} {unit} is not a number: give a finite length") from wrong


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """A length as a whole number of ticks of 1/6400 mm, so that sums never drift.

    Args:
        ticks: the length in 1/6400 mm (1 in = 162560 ticks).
    """

    ticks: int

    @staticmethod
    def from_inches(value: Number) -> Length:
        """The length of `value` inches, to the nearest tick (1/6400 mm).

        Raises:
            ValueProblem: when the value is not finite.
        """
        return Length(_ticks(value, TICKS_PER_INCH, "in"))

    @staticmethod
    def from_mm(value: Number) -> Length:
        """The length of `value` millimetres, to the nearest tick (1/6400 mm).

        Raises:
            ValueProblem: when the value is not finite.
        """
        return Length(_ticks(value, TICKS_PER_MM, "mm"))

    @property
    def inches(self) -> float:
        """The length in inches, for clause functions and drawing."""
        return self.ticks / TICKS_PER_INCH

    @property
    def mm(self) -> float:
        """The length in millimetres, for clause functions and drawing."""
        return self.ticks / TICKS_PER_MM

    def __add__(self, other: Length) -> Length:
        if not isinstance(other, Length):
            return NotImplemented
        return Length(self.ticks + other.ticks)

    def __sub__(self, other: Length) -> Length:
        if not isinstance(other, Length):
            return NotImplemented
        return Length(self.ticks - other.ticks)

    def __neg__(self) -> Length:
        return Length(-self.ticks)

    def __abs__(self) -> Length:
        return Length(abs(self.ticks))

    def __bool__(self) -> bool:
        return self.ticks != 0

    def __mul__(self, factor: int | Fraction) -> Length:
        """A multiple; of a fraction, the nearest tick (at most 1/12800 mm away)."""
        if isinstance(factor, int):
            return Length(self.ticks * factor)
        if isinstance(factor, Fraction):
            return Length(round(self.ticks * factor))
        return NotImplemented

    __rmul__ = __mul__

    def __truediv__(self, divisor: int) -> Length:
        """One of `divisor` equal parts, to the nearest tick; `parts` when they must sum exactly."""
        if not isinstance(divisor, int):
            return NotImplemented
        return Length(round(Fraction(self.ticks, divisor)))

    def ratio(self, other: Length) -> Fraction:
        """This length over another, exactly.

        Raises:
            ValueProblem: when the other length is zero.
        """
        if not other.ticks:
            raise ValueProblem("length 0 cannot divide a length: give a length other than zero")
        return Fraction(self.ticks, other.ticks)

    def parts(self, count: int) -> tuple[Length, ...]:
        """The length in `count` equal parts (halves, thirds, ...) whose sum is the length exactly.

        The parts differ by one tick (1/6400 mm) at the most.

        Raises:
            ValueProblem: when the count is less than one.
        """
        if count < 1:
            raise ValueProblem(f"parts {count} of a length: give 1 or more")
        edges = [self.ticks * i // count for i in range(count + 1)]
        return tuple(Length(after - before) for before, after in pairwise(edges))


ZERO = Length(0)
