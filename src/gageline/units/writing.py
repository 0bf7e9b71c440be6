"""Lengths written the way a drawing and a tape show them."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.units.length import TICKS_PER_INCH, TICKS_PER_MM, Length
from gageline.units.tape import round_to

__all__ = [
    "System",
    "counted",
    "exact_text",
    "feet_inches",
    "inches_text",
    "is_metric",
    "millimetres",
    "write_length",
]

FINEST = 64  # the finest fraction of an inch that a drawing shows
_EXACT_FINEST = 256


class System(StrEnum):
    """How a job writes its lengths: feet, inches and fractions, or millimetres."""

    FT_IN = "ft-in"
    MM = "mm"


def _check_denominator(denominator: int) -> None:
    if denominator < 1 or denominator > FINEST or denominator & (denominator - 1):
        raise ValueProblem(
            f"denominator {denominator} of an inch fraction is not one of 1, 2, 4, 8, 16, 32, 64: choose one"
        )


def _inch_words(inches: Fraction, *, zero: bool = False) -> str:
    """Inches and a fraction; `zero` shows the inches of a bare fraction, as after feet: `0 3/8`."""
    whole, rest = divmod(inches, 1)
    if not rest:
        return str(whole)
    fraction = f"{rest.numerator}/{rest.denominator}"
    return f"{whole} {fraction}" if whole or zero else fraction


def _feet_words(inches: Fraction) -> str:
    feet, rest = divmod(inches, 12)
    return f"{feet}'-{_inch_words(rest, zero=True)}\"" if feet else f'{_inch_words(rest)}"'


def feet_inches(length: Length, denominator: int = 16) -> str:
    """A length in feet, inches and fractions: `18'-7 1/4"`, `5'-0"`, `7/8"`.

    Feet are written from 12 in on, with zero inches shown: `11'-0 3/8"`. The value is rounded to the
    fraction, ties away from zero.

    Args:
        length: what to write.
        denominator: the fraction to round to: 1, 2, 4, 8, 16, 32 or 64 to the inch.

    Raises:
        ValueProblem: when the denominator is another number.
    """
    _check_denominator(denominator)
    rounded = abs(round_to(length, Length(TICKS_PER_INCH // denominator)))
    sign = "-" if length.ticks < 0 and rounded else ""
    return sign + _feet_words(Fraction(rounded.ticks, TICKS_PER_INCH))


def inches_text(length: Length, denominator: int = 16) -> str:
    """A length in inches and fractions however long it is: `223 1/4"`.

    Raises:
        ValueProblem: when the denominator is not a power of two up to 64.
    """
    _check_denominator(denominator)
    rounded = abs(round_to(length, Length(TICKS_PER_INCH // denominator)))
    sign = "-" if length.ticks < 0 and rounded else ""
    return f'{sign}{_inch_words(Fraction(rounded.ticks, TICKS_PER_INCH))}"'


def _decimal(value: Fraction) -> str:
    """A fraction whose denominator has only twos and fives, as a decimal without end zeros."""
    places = 0
    while value * 10**places % 1:
        places += 1
    digits = str(int(value * 10**places)).rjust(places + 1, "0")
    return f"{digits[:-places]}.{digits[-places:]}" if places else digits


def millimetres(length: Length, places: int = 1) -> str:
    """A length in millimetres with at most `places` decimals and no end zeros: `5670`, `12.5`.

    Ties are rounded away from zero.
    """
    step = Length(TICKS_PER_MM // 10**places) if places <= 2 else Length(1)
    rounded = round_to(length, step)
    text = f"{abs(rounded.ticks) / TICKS_PER_MM:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return f"-{text}" if rounded.ticks < 0 else text


def is_metric(length: Length) -> bool:
    """Whether a length was given in millimetres: whole or half ones, and no 64ths of an inch.

    Tenths come about by chance where a length follows from a slope or a skew.
    """
    return length.ticks % (TICKS_PER_INCH // FINEST) != 0 and length.ticks % (TICKS_PER_MM // 2) == 0


def write_length(length: Length, system: System, denominator: int = 16) -> str:
    """A length in the job's own units, rounded for reading.

    Args:
        length: what to write.
        system: feet and inches, or millimetres (to 0.1 mm).
        denominator: the fraction of an inch to round to in feet and inches.
    """
    return feet_inches(length, denominator) if system is System.FT_IN else millimetres(length)


def exact_text(length: Length, system: System = System.FT_IN) -> str:
    """A length written without rounding, so that reading it gives the same length back.

    Feet and inches where the length is a whole number of 1/256 in and the system asks for it,
    otherwise millimetres with as many decimals as it takes, with the unit.
    """
    inches = Fraction(abs(length.ticks), TICKS_PER_INCH)
    sign = "-" if length.ticks < 0 else ""
    if system is System.FT_IN and _EXACT_FINEST % inches.denominator == 0:
        return sign + _feet_words(inches)
    return f"{sign}{_decimal(Fraction(abs(length.ticks), TICKS_PER_MM))} mm"


def counted(count: int, word: str) -> str:
    """A number of things in words: `1 piece`, `2 pieces`.

    Args:
        count: how many.
        word: for one of them; with an s for several.
    """
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
