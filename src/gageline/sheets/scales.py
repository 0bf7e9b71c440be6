"""The scales that drawings are made at."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.units import System

__all__ = ["Scale", "plan_scales", "scales"]

_FEET = (
    (1, "full size"),
    (2, '6" = 1\'-0"'),
    (4, '3" = 1\'-0"'),
    (8, '1 1/2" = 1\'-0"'),
    (12, '1" = 1\'-0"'),
    (16, '3/4" = 1\'-0"'),
    (24, '1/2" = 1\'-0"'),
    (32, '3/8" = 1\'-0"'),
    (48, '1/4" = 1\'-0"'),
    (64, '3/16" = 1\'-0"'),
    (96, '1/8" = 1\'-0"'),
)
_METRIC = (1, 2, 5, 10, 15, 20, 25, 30, 50, 75, 100)


@dataclass(frozen=True, slots=True)
class Scale:
    """A scale of a drawing.

    Attributes:
        one_to: how much smaller the drawing is.
        name: as it is printed.
    """

    one_to: int
    name: str

    @property
    def paper(self) -> float:
        """Paper for one inch of steel, mm."""
        return 25.4 / self.one_to


def scales(system: System, largest: int = 1) -> tuple[Scale, ...]:
    """The usual scales from the largest down.

    Args:
        system: feet and inches (architect's and engineer's scales of the trade), or millimetres (ISO 5455
            with 1:15, 1:25, 1:30 and 1:75 beside them).
        largest: no scale larger than one to this.

    Source: ISO 5455; the American scales are common practice, no source.
    """
    if system is System.FT_IN:
        every = [Scale(one_to, f"{name} (1:{one_to})") for one_to, name in _FEET]
    else:
        every = [Scale(one_to, f"1:{one_to}") for one_to in _METRIC]
    return tuple(scale for scale in every if scale.one_to >= largest)


_PLAN_FEET = (
    (24, '1/2" = 1\'-0"'),
    (32, '3/8" = 1\'-0"'),
    (48, '1/4" = 1\'-0"'),
    (64, '3/16" = 1\'-0"'),
    (96, '1/8" = 1\'-0"'),
    (128, '3/32" = 1\'-0"'),
    (192, '1/16" = 1\'-0"'),
    (240, '1" = 20\'-0"'),
    (360, '1" = 30\'-0"'),
    (480, '1" = 40\'-0"'),
    (720, '1" = 60\'-0"'),
)
_PLAN_METRIC = (20, 25, 30, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750)


def plan_scales(system: System) -> tuple[Scale, ...]:
    """The usual scales of plans and elevations of a frame, from the largest down.

    Args:
        system: feet and inches, or millimetres.

    Source: ISO 5455 with steps between; the American scales are common practice, no source.
    """
    if system is System.FT_IN:
        return tuple(Scale(one_to, f"{name} (1:{one_to})") for one_to, name in _PLAN_FEET)
    return tuple(Scale(one_to, f"1:{one_to}") for one_to in _PLAN_METRIC)
