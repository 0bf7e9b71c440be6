"""What the laws of the reasons work their numbers with: sections of the tables, and rounding to steps."""

from __future__ import annotations

import math

from gageline.steel import Section, find

__all__ = ["down", "mm", "section", "up"]

_HAIR = 1e-6  # inches: a value that is a step but for this is that step


def mm(value: float) -> float:
    """Millimetres in inches."""
    return value / 25.4


def section(name: str) -> Section:
    """A section of the tables."""
    found = find(name)
    assert isinstance(found, Section)
    return found


def up(value: float, step: float) -> float:
    """A value rounded up to a step."""
    return math.ceil((value - _HAIR) / step) * step


def down(value: float, step: float) -> float:
    """A value rounded down to a step."""
    return math.floor((value + _HAIR) / step) * step
