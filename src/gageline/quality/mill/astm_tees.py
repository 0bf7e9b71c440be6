"""ASTM A6: tees that the mill split from W, M and S shapes, from memory."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from gageline.quality.limits import Limit, Trust
from gageline.quality.mill.astm_a6 import flange_width, nominal_depth
from gageline.quality.mill.steps import inch
from gageline.steel import Family, Section
from gageline.units import Length

__all__ = ["depth", "out_of_square", "straightness", "width"]

_SOURCE = "ASTM A6, split tees"
_FOOT = Length.from_inches(12)
# Source: ASTM A6, split tees and angles (from memory): nominal depth below the first, in inches.
_DEPTH = ((6, inch("1/8")), (16, inch("3/16")), (20, inch("1/4")), (24, inch("5/16")))
_DEEPEST = inch("3/8")


def depth(section: Section) -> Limit:
    """The depth of a tee, the variation of the shape it was split from included."""
    nominal = nominal_depth(section)
    most = Length.from_inches(next((most for below, most in _DEPTH if nominal < below), _DEEPEST))
    return Limit("a6-tee-depth", most, most, "by nominal depth", _SOURCE, Trust.MEMORY)


def straightness(ordered: Length) -> Limit:
    """How far a tee may be bowed either way: 1/8 in for each 5 ft."""
    most = Length.from_inches(Fraction(1, 8)) * ordered.ratio(_FOOT * 5)
    return Limit("a6-tee-straight", most, most, "1/8 in each 5 ft of length", _SOURCE, Trust.MEMORY)


def width(section: Section) -> Limit | None:
    """The width of the flange of a WT, which is that of a W shape; None for MT and ST."""
    return flange_width(replace(section, family=Family.W)) if section.family is Family.WT else None


def out_of_square(section: Section) -> Limit:
    """The ends out of square, over the depth or the width of the flange, the greater."""
    most = max(section.d, section.bf) / 64
    return Limit("a6-square", most, None, "1/64 in each inch of depth or width", _SOURCE, Trust.MEMORY)
