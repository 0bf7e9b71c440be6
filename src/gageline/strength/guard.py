"""Refuses numbers that no clause can work with, before any of them is used."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem

__all__ = ["fraction", "gradient", "not_negative", "positive"]


_MOST_GRADIENT = 5.0


def positive(**values: float) -> None:
    """Refuse any value that is not a finite number above zero.

    Args:
        values: Values by the symbol the standard gives them.

    Raises:
        ValueProblem: Names the first such value, its limit and what to do.
    """
    for name, value in values.items():
        if not (value > 0 and math.isfinite(value)):
            raise ValueProblem(f"{name} = {value:g} must be more than 0: give its true size or count")


def not_negative(**values: float) -> None:
    """Refuse any value that is not a finite number of zero or more.

    Args:
        values: Values by the symbol the standard gives them.

    Raises:
        ValueProblem: Names the first such value, its limit and what to do.
    """
    for name, value in values.items():
        if not (value >= 0 and math.isfinite(value)):
            raise ValueProblem(f"{name} = {value:g} must be 0 or more: give its size without a sign")


def gradient(C_b: float) -> None:
    """Refuse a modification factor for the moment gradient that no moment has.

    Args:
        C_b: the factor.

    Raises:
        ValueProblem: less than 1, what an even moment has, or more than 5, the most of Equation F1-1.
    """
    if not 1 <= C_b <= _MOST_GRADIENT:
        raise ValueProblem(
            f"C_b = {C_b:g} must lie between 1 and {_MOST_GRADIENT:g}: find it by Equation F1-1, or take 1"
        )


def fraction(**values: float) -> None:
    """Refuse any value that is not between zero and one.

    Args:
        values: Values by the symbol the standard gives them.

    Raises:
        ValueProblem: Names the first such value, its limits and what to do.
    """
    for name, value in values.items():
        if not 0 <= value <= 1:
            raise ValueProblem(
                f"{name} = {value:g} must lie between 0 and 1: check the two parts it compares"
            )
