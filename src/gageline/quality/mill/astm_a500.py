"""ASTM A500: permissible variations of cold-formed hollow sections."""

from __future__ import annotations

from fractions import Fraction
from math import inf

from gageline.quality.limits import Limit, Trust
from gageline.quality.mill.steps import Step, inch, step_of
from gageline.steel import Profile, Section
from gageline.units import Length

__all__ = ["length", "side", "straightness"]

_SOURCE = "ASTM A500"
_FOOT = Length.from_inches(12)
# Source: ASTM A500 as quoted in the project's section data notes; the size is the larger outside side, in.
_SIDE = (
    Step(inch("2 1/2"), Fraction(20, 1000), Fraction(20, 1000)),
    Step(inch("3 1/2"), Fraction(25, 1000), Fraction(25, 1000)),
    Step(inch("5 1/2"), Fraction(30, 1000), Fraction(30, 1000)),
)
_SIDE_SHARE = Fraction(1, 100)
# Source: ASTM A500, round hollow sections and specified lengths (from memory); sizes in inches and feet.
_ROUND = ((inch("1 29/32"), Fraction(5, 1000)), (inf, Fraction(75, 10000)))
_LENGTH = (Step(22, inch("1/2"), inch("1/4")), Step(inf, inch("3/4"), inch("1/4")))


def side(section: Section, across: Length) -> Limit:
    """An outside side of a box, or the outside diameter of a tube.

    Args:
        section: the hollow section.
        across: the side as ordered.
    """
    size = Fraction(across.ticks, _FOOT.ticks) * 12
    if section.profile is Profile.TUBE:
        share = next(part for up_to, part in _ROUND if size <= up_to)
        most = across * share
        return Limit("a500-side", most, most, f"{float(share):.2%} of the diameter", _SOURCE, Trust.MEMORY)
    larger = max(section.d, section.bf)
    if larger > Length.from_inches(inch("5 1/2")):
        most = across * _SIDE_SHARE
        rule = "1 % of the side where the larger side is over 5 1/2 in"
    else:
        most = Length.from_inches(step_of(_SIDE, Fraction(larger.ticks, _FOOT.ticks) * 12).over)
        rule = "by the larger side"
    return Limit("a500-side", most, most, rule, _SOURCE, Trust.SECOND)


def straightness(ordered: Length) -> Limit:
    """How far a hollow section may be bowed either way: 1/8 in for each 5 ft."""
    most = Length.from_inches(Fraction(1, 8)) * ordered.ratio(_FOOT * 5)
    return Limit("a500-straight", most, most, "1/8 in each 5 ft of length", _SOURCE, Trust.SECOND)


def length(ordered: Length) -> Limit:
    """A hollow section cut to length by the mill."""
    step = step_of(_LENGTH, Fraction(ordered.ticks, _FOOT.ticks))
    over, under = Length.from_inches(step.over), Length.from_inches(step.under)
    return Limit("a500-length", over, under, "by length, 22 ft and over", _SOURCE, Trust.MEMORY)
