"""What detailing works by: the shop's practice, the clearances of detailing, the job's units."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.job import FramePractice, Practice, say, say_finely
from gageline.steel import Bolt, bolt
from gageline.units import Length, System, round_up

__all__ = ["Shop"]


@dataclass(frozen=True, slots=True)
class Shop:
    """The practice that detailing works by.

    Args:
        practice: the shop's defaults for pieces.
        frame: its clearances and roundings of detailing.
        system: the units that messages are written in.
    """

    practice: Practice
    frame: FramePractice
    system: System

    def say(self, length: Length | float) -> str:
        """A length, or inches, in the job's units."""
        return say(length if isinstance(length, Length) else Length.from_inches(length), self.system)

    def apart(self, less: Length | float, more: Length | float) -> tuple[str, str]:
        """Two lengths that differ, or inches, as decimals where their usual texts are one."""
        one, two = (each if isinstance(each, Length) else Length.from_inches(each) for each in (less, more))
        if self.say(one) != self.say(two):
            return self.say(one), self.say(two)
        return say_finely(one, self.system), say_finely(two, self.system)

    def exact(self, length: Length) -> str:
        """A length as a decimal, for what the tables give so: `0.355 in`."""
        return f"{length.inches:.4g} in" if self.system is System.FT_IN else self.say(length)

    def pick(self, inches: float, mm: float) -> Length:
        """A dimension of the trade: so many inches, or its counterpart where the job is in millimetres."""
        return Length.from_inches(inches) if self.system is System.FT_IN else Length.from_mm(mm)

    @property
    def division(self) -> Length:
        """The finest division of the job's tape, that spacings are told in."""
        return self.pick(1 / 64, 0.1)

    def cope(self, inches: float) -> Length:
        """A length or depth of a cope rounded up to the shop's step."""
        return up_to(inches, self.frame.cope_step)

    def bolt(self, given: str | None) -> Bolt:
        """The bolt given, or that of the practice."""
        return bolt(given or self.practice.bolt)


def up_to(inches: float, step: Length) -> Length:
    """Inches rounded up to a step, forgiving a millionth of an inch above one."""
    return round_up(Length.from_inches(inches - 1e-6), step)
