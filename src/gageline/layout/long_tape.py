"""Long readings put right: a tape and a steel of unlike temperature, and a tape that is known to be off."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.job import Stick
from gageline.units import ZERO, Length

__all__ = ["ALPHA", "REFERENCE", "LongTape", "tape_of"]

ALPHA = Fraction(65, 10_000_000)
"""Growth of steel for each °F. Source: AISC Manual, Table 17-11."""
REFERENCE = Fraction(68)
"""°F at which a drawing's lengths and a tape's divisions hold (20 °C). Common practice, no source."""


@dataclass(frozen=True, slots=True)
class LongTape:
    """How much a reading differs from the length at the reference temperature.

    Args:
        factor: reading over length; 1 where nothing is known or both are alike.
        why: what makes the difference, empty where there is none.
    """

    factor: Fraction = Fraction(1)
    why: str = ""

    def reading(self, length: Length) -> Length:
        """What the tape must be held to for a length."""
        return length * self.factor

    def length(self, reading: Length) -> Length:
        """The length that a reading stands for."""
        return reading * (1 / self.factor)


def tape_of(stick: Stick) -> LongTape:
    """The tape that a stick is measured and marked with.

    The steel is longer than at the reference by its own growth; the tape's divisions are further
    apart by theirs and by what the tape is too long.

    Raises:
        ValueProblem: when the length that the tape's error was found over is not above zero.
    """
    factor, why = Fraction(1), []
    if stick.steel_temperature is not None and stick.tape_temperature is not None:
        steel, tape = (
            1 + ALPHA * (Fraction(degrees) - REFERENCE)
            for degrees in (stick.steel_temperature, stick.tape_temperature)
        )
        factor *= steel / tape
        if steel != tape:
            why.append(f"steel at {_both(stick.steel_temperature)}, tape at {_both(stick.tape_temperature)}")
    if stick.tape_error and stick.tape_length is not None:
        if stick.tape_length <= ZERO:
            raise ValueProblem(
                f"tape length {stick.tape_length.inches:g} in is not above zero: "
                "give the length that the tape's error was found over"
            )
        factor /= 1 + stick.tape_error.ratio(stick.tape_length)
        word = "long" if stick.tape_error > ZERO else "short"
        why.append(f"tape {word} by its calibration")
    return LongTape(factor, "; ".join(why))


def _both(fahrenheit: float) -> str:
    """A temperature in both scales: `95°F (35°C)`."""
    return f"{fahrenheit:.0f}°F ({(fahrenheit - 32) * 5 / 9:.0f}°C)"
