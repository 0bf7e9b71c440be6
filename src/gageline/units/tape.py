"""Rounding to what a tape can show."""

from __future__ import annotations

from gageline.errors import ValueProblem
from gageline.units.length import Length

__all__ = ["round_down", "round_to", "round_up"]


def _step(step: Length) -> int:
    if step.ticks <= 0:
        raise ValueProblem(
            f"tape step {step.ticks} ticks is not above zero: give the tape's smallest division"
        )
    return step.ticks


def round_to(length: Length, step: Length) -> Length:
    """The nearest whole number of tape divisions; a tie goes away from zero.

    Args:
        length: the true length.
        step: the tape's smallest division, above zero.

    Raises:
        ValueProblem: when the step is not above zero.
    """
    size = _step(step)
    count = (2 * abs(length.ticks) + size) // (2 * size)
    return Length(count * size if length.ticks >= 0 else -count * size)


def round_up(length: Length, step: Length) -> Length:
    """The smallest whole number of divisions that is not less than the length.

    Raises:
        ValueProblem: when the step is not above zero.
    """
    size = _step(step)
    return Length(-(-length.ticks // size) * size)


def round_down(length: Length, step: Length) -> Length:
    """The largest whole number of divisions that is not more than the length.

    Raises:
        ValueProblem: when the step is not above zero.
    """
    size = _step(step)
    return Length(length.ticks // size * size)
