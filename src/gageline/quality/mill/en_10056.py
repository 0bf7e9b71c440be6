"""EN 10056-2: tolerances of European angles, all from memory."""

from __future__ import annotations

from fractions import Fraction
from math import inf

from gageline.quality.limits import Limit, Trust
from gageline.quality.mill.steps import Step, step_of
from gageline.steel import Section
from gageline.units import Length

__all__ = ["leg", "length", "straightness", "tilt"]

_SOURCE = "EN 10056-2"
_F = Fraction
# Source: EN 10056-2 (from memory); all mm, by the leg or the longer leg.
_LEG = (
    Step(50, _F(1), _F(1)), Step(100, _F(2), _F(2)), Step(150, _F(3), _F(3)), Step(200, _F(4), _F(4)),
    Step(inf, _F(6), _F(4)),
)  # fmt: skip
_TILT = ((100, _F(1)), (150, _F(3, 2)), (200, _F(2)), (inf, _F(3)))
_STRAIGHT = ((150, _F(4, 1000)), (200, _F(2, 1000)), (inf, _F(1, 1000)))


def _mm(length: Length) -> Fraction:
    return Fraction(length.ticks, 6400)


def leg(across: Length) -> Limit:
    """The length of a leg."""
    step = step_of(_LEG, _mm(across))
    over, under = Length.from_mm(step.over), Length.from_mm(step.under)
    return Limit("en10056-leg", over, under, "by the leg", _SOURCE, Trust.MEMORY)


def tilt(section: Section) -> Limit:
    """k, the legs out of square."""
    most = Length.from_mm(next(most for up_to, most in _TILT if _mm(section.d) <= up_to))
    return Limit("en10056-tilt", most, most, "by the longer leg", _SOURCE, Trust.MEMORY)


def straightness(section: Section, ordered: Length) -> Limit:
    """How far it may be bowed, as a share of its length."""
    share = next(part for up_to, part in _STRAIGHT if _mm(section.d) <= up_to)
    most = ordered * share
    return Limit("en10056-straight", most, most, f"{float(share):.1%} of the length", _SOURCE, Trust.MEMORY)


def length() -> Limit:
    """The length: ±50 mm."""
    most = Length.from_mm(50)
    return Limit("en10056-length", most, most, "usual", _SOURCE, Trust.MEMORY)
