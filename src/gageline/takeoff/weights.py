"""Weights as a job writes them: pounds in a job of feet and inches, kilograms in one of millimetres."""

from __future__ import annotations

from gageline.units import System

__all__ = ["weight_number", "weight_text", "weight_unit"]

_KG = 0.45359237  # kg in one lb, exactly, by international agreement of 1959


def weight_unit(system: System) -> str:
    """The unit that weights are written in: lb or kg."""
    return "lb" if system is System.FT_IN else "kg"


def weight_number(pounds: float, system: System) -> float:
    """A weight in the unit that the job writes.

    Args:
        pounds: the weight, lb.
        system: the units of the job.

    Returns:
        lb or kg, as `weight_unit` says.
    """
    return pounds if system is System.FT_IN else pounds * _KG


def weight_text(pounds: float, system: System, places: int = 1) -> str:
    """A weight as the job writes it, without its unit.

    Args:
        pounds: the weight, lb.
        system: the units of the job.
        places: decimals.
    """
    return f"{weight_number(pounds, system):,.{places}f}"
