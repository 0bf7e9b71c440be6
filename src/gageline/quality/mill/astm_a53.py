"""ASTM A53: the diameter of pipe, from memory; for its length and bow no number is held."""

from __future__ import annotations

from fractions import Fraction

from gageline.quality.limits import Limit, Trust
from gageline.steel import Section
from gageline.units import Length

__all__ = ["diameter"]

# Source: ASTM A53 (from memory): NPS 1 1/2 is 1.900 in over all, and NPS 2 is 2.375.
_SMALL = Length.from_inches(Fraction(19, 10))
_SMALL_LIMIT = Length.from_inches(Fraction(1, 64))
_SHARE = Fraction(1, 100)


def diameter(section: Section) -> Limit:
    """The outside diameter: 1/64 in to NPS 1 1/2, 1 % above."""
    small = section.d <= _SMALL
    most = _SMALL_LIMIT if small else section.d * _SHARE
    rule = "1/64 to NPS 1 1/2" if small else "1 % of the diameter"
    return Limit("a53-diameter", most, most, rule, "ASTM A53", Trust.MEMORY)
