"""Tables of limits that change in steps of size."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from gageline.units import Length, parse_length

__all__ = ["Step", "each_further", "inch", "step_of"]


class Step(NamedTuple):
    """One line of a table: up to and with a size, so much over and so much under.

    Attributes:
        up_to: the largest size of the line, itself included; infinity for the last line.
        over: in the table's unit.
        under: in the table's unit.
    """

    up_to: float | Fraction
    over: Fraction
    under: Fraction


def step_of(table: Sequence[Step], size: Fraction) -> Step:
    """The line of a table that a size falls in; a size on a boundary belongs to the smaller line."""
    return next(step for step in table if size <= step.up_to)


def inch(text: str) -> Fraction:
    """A fraction of an inch as a standard prints it."""
    return Fraction(parse_length(text).ticks, parse_length("1").ticks)


def each_further(length: Length, start: Length, stretch: Length) -> int:
    """How many further stretches, or fractions of one, a length runs past a start; none up to it."""
    past = length - start
    return max(0, -(-past.ticks // stretch.ticks))
