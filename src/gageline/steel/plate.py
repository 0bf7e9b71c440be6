"""Plates and flat bars, known by thickness and width."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from gageline.errors import ValueProblem
from gageline.steel.families import Measure, Profile
from gageline.steel.outline import Loop, box_outline
from gageline.units import Length, inches_text, millimetres

__all__ = ["DENSITY", "Plate", "foot_weight"]

DENSITY: Final = 490 / 1728
"""Weight of steel, lb/in3: 490 lb/ft3 (AISC Manual, Table 17-12), which is 7849 kg/m3."""

_SIXTY_FOURTH = Length.from_inches(1 / 64)


def foot_weight(area: float) -> float:
    """Weight of a bar of steel.

    Args:
        area: cross section, in2.

    Returns:
        Weight, lb/ft (3.4028 times the area).
    """
    return area * 12 * DENSITY


@dataclass(frozen=True, slots=True)
class Plate:
    """A plate or flat bar, cut to any length; the name is `PL1/2X8`, or `PL 12x200` in millimetres.

    Args:
        thickness: the smaller side.
        width: the larger side.
        system: whether it is named in inches or in millimetres.

    Raises:
        ValueProblem: when a side is not above zero or the thickness is above the width.
    """

    thickness: Length
    width: Length
    system: Measure = Measure.US

    def __post_init__(self) -> None:
        if self.thickness.ticks <= 0:
            raise ValueProblem(
                f"plate thickness {self._text(self.thickness)} is not above zero: give a thickness"
            )
        if self.thickness > self.width:
            raise ValueProblem(
                f"plate thickness {self._text(self.thickness)} is more than the width "
                f"{self._text(self.width)}: write the thickness first, then the width"
            )

    def _text(self, length: Length) -> str:
        if self.system is Measure.EU:
            return millimetres(length, 2)
        if length.ticks % _SIXTY_FOURTH.ticks:
            return f"{length.inches:.5g}"
        return inches_text(length, 64).removesuffix('"').replace(" ", "-")

    @property
    def designation(self) -> str:
        """The name as printed: thickness by width."""
        if self.system is Measure.EU:
            return f"PL {self._text(self.thickness)}x{self._text(self.width)}"
        return f"PL{self._text(self.thickness)}X{self._text(self.width)}"

    @property
    def profile(self) -> Profile:
        """The shape: a plate."""
        return Profile.PLATE

    @property
    def area(self) -> float:
        """Cross section, in2."""
        return self.thickness.inches * self.width.inches

    @property
    def weight(self) -> float:
        """Weight, lb/ft, from 490 lb/ft3."""
        return foot_weight(self.area)

    def outline(self) -> tuple[Loop, ...]:
        """The cross section centred on the origin, width upright: one closed line of (z, y), in."""
        return (box_outline(self.width.inches, self.thickness.inches, 0.0),)
