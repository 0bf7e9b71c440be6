"""Which standard these clauses are from, and the factors that many of them share."""

from __future__ import annotations

from gageline.strength.check import Clause, Factors

__all__ = [
    "FLEXURE",
    "MANUAL",
    "RUPTURE",
    "SHEAR_YIELDING",
    "SPECIFICATION",
    "YIELDING",
    "E",
    "manual",
    "spec",
]

SPECIFICATION = "ANSI/AISC 360-22, Specification for Structural Steel Buildings"
MANUAL = "AISC Steel Construction Manual, 16th edition"

E = 29_000.0
"""Modulus of elasticity of steel, ksi."""

YIELDING = Factors(0.90, 1.67)
FLEXURE = Factors(0.90, 1.67)
SHEAR_YIELDING = Factors(1.00, 1.50)
RUPTURE = Factors(0.75, 2.00)


def spec(number: str, title: str) -> Clause:
    """Name a clause or table of the Specification.

    Args:
        number: As printed there.
        title: The limit state or rule in a few words.

    Returns:
        The clause.
    """
    return Clause(number, title, SPECIFICATION)


def manual(number: str, title: str) -> Clause:
    """Name a part, table or equation of the Manual.

    Args:
        number: As printed there.
        title: The limit state or rule in a few words.

    Returns:
        The clause.
    """
    return Clause(number, title, MANUAL)
