"""ASTM A6: permissible variations of rolled W, HP, M, S, C, MC and L shapes."""

from __future__ import annotations

import re
from fractions import Fraction
from math import inf

from gageline.errors import ValueProblem
from gageline.quality.limits import Limit, Trust
from gageline.quality.mill.steps import Step, each_further, inch, step_of
from gageline.steel import Family, Section
from gageline.units import ZERO, Length

__all__ = [
    "camber", "depth", "depth_anywhere", "flange_tilt", "flange_width", "length", "nominal_depth",
    "out_of_square", "sweep", "web_off",
]  # fmt: skip

WIDE = frozenset({Family.W, Family.HP})
STANDARD = frozenset({Family.S, Family.M, Family.C, Family.MC})
_FOOT = Length.from_inches(12)
_WIDE_SOURCE = "ASTM A6, AISC Manual 14th ed. Table 1-22"
_STANDARD_SOURCE = "ASTM A6, S, M, C and MC shapes"
_ANGLE_SOURCE = "ASTM A6-16, angles"

# Source: AISC Manual 14th ed. p 1-119 (read).
_WIDTH_OVER, _WIDTH_UNDER, _DEPTH = inch("1/4"), inch("3/16"), inch("1/8")
_TILT = (Step(12, inch("1/4"), inch("1/4")), Step(inf, inch("5/16"), inch("5/16")))
_HEAVY = 426  # lb/ft: above it the web may be further off

# Source: ASTM A6, standard shapes and channels (from memory); sizes are nominal depths in inches.
_STANDARD_DEPTH = (
    # the second line is for shapes under 3 in, which themselves stand in the third
    Step(inch("1 1/2"), inch("1/32"), inch("1/32")), Step(Fraction(299, 100), inch("1/16"), inch("1/16")),
    Step(7, inch("3/32"), inch("1/16")), Step(14, inch("1/8"), inch("3/32")),
    Step(inf, inch("3/16"), inch("1/8")),
)  # fmt: skip
_S_WIDTH = (
    Step(7, inch("1/8"), inch("1/8")), Step(14, inch("5/32"), inch("5/32")),
    Step(inf, inch("3/16"), inch("3/16")),
)  # fmt: skip
_C_WIDTH = (
    Step(7, inch("1/8"), inch("1/8")), Step(14, inch("1/8"), inch("5/32")),
    Step(inf, inch("1/8"), inch("3/16")),
)  # fmt: skip
# Source: ASTM A6, length of S, M, C, MC and L shapes (from memory): nothing may be short. Feet up to the
# first of each line; 10 and 20 ft themselves belong to the next line, 30, 40 and 65 ft to their own.
_LENGTH_SMALL = (
    (10, inch("5/8")),
    (20, inch("1")),
    (30, inch("1 1/2")),
    (40, inch("2")),
    (65, inch("2 1/2")),
)
_LENGTH_LARGE = (
    (10, inch("1")), (20, inch("1 1/2")), (30, inch("1 3/4")), (40, inch("2 1/4")), (65, inch("2 3/4")),
)  # fmt: skip

# Source: ASTM A6-16 as quoted in the project's section data notes; sizes are legs in inches.
_LEG = (
    Step(1, inch("1/32"), inch("1/32")), Step(2, inch("3/64"), inch("3/64")),
    Step(inch("2 1/2"), inch("1/16"), inch("1/16")), Step(4, inch("1/8"), inch("3/32")),
    Step(6, inch("1/8"), inch("1/8")), Step(8, inch("3/16"), inch("1/8")), Step(10, inch("1/4"), inch("1/4")),
    Step(inf, inch("1/4"), inch("3/8")),
)  # fmt: skip


def nominal_depth(section: Section) -> Fraction:
    """The depth in a shape's name, in inches: 16 of W16X26.

    Raises:
        ValueProblem: when the name has none.
    """
    found = re.match(r"[A-Z]+(\d+(?:\.\d+)?)X", section.designation)
    if not found:
        raise ValueProblem(f"{section.designation} has no nominal depth in its name: use an ASTM A6 shape")
    return Fraction(found[1])


def _limit(code: str, step: Step, rule: str, source: str, trust: Trust) -> Limit:
    return Limit(code, Length.from_inches(step.over), Length.from_inches(step.under), rule, source, trust)


def depth(section: Section) -> Limit | None:
    """A, the depth at the middle of the web, or an angle's longer leg."""
    if section.family in WIDE:
        return _limit("a6-depth", Step(inf, _DEPTH, _DEPTH), "1/8 over or under", _WIDE_SOURCE, Trust.READ)
    if section.family in STANDARD:
        step = step_of(_STANDARD_DEPTH, nominal_depth(section))
        return _limit("a6-depth", step, "by nominal depth", _STANDARD_SOURCE, Trust.MEMORY)
    if section.family is Family.L:
        return _leg(section.d)
    return None


def _leg(leg: Length) -> Limit:
    step = step_of(_LEG, Fraction(leg.ticks, _FOOT.ticks) * 12)
    return _limit("a6-leg", step, "by length of leg", _ANGLE_SOURCE, Trust.SECOND)


def depth_anywhere(section: Section) -> Limit | None:
    """C, the depth at any place of the section over the theoretical one: W and HP only."""
    if section.family not in WIDE:
        return None
    return Limit(
        "a6-depth-max", Length.from_inches(inch("1/4")), None, "1/4 over at most", _WIDE_SOURCE, Trust.READ
    )


def flange_width(section: Section) -> Limit | None:
    """B, the width of a flange, or an angle's shorter leg."""
    if section.family in WIDE:
        step = Step(inf, _WIDTH_OVER, _WIDTH_UNDER)
        return _limit("a6-width", step, "1/4 over, 3/16 under", _WIDE_SOURCE, Trust.READ)
    if section.family in STANDARD:
        table = _S_WIDTH if section.family in {Family.S, Family.M} else _C_WIDTH
        step = step_of(table, nominal_depth(section))
        return _limit("a6-width", step, "by nominal depth", _STANDARD_SOURCE, Trust.MEMORY)
    return _leg(section.bf) if section.family is Family.L else None


def flange_tilt(section: Section) -> Limit | None:
    """T + T', the flanges out of square together; of an angle, its legs out of square."""
    if section.family in WIDE:
        step = step_of(_TILT, nominal_depth(section))
        return _limit("a6-tilt", step, "T + T' by nominal depth", _WIDE_SOURCE, Trust.READ)
    if section.family in STANDARD:
        most = section.bf / 32
        return Limit("a6-tilt", most, most, "1/32 in each inch of flange", _STANDARD_SOURCE, Trust.MEMORY)
    if section.family is Family.L:
        most = section.d * Fraction(3, 128)
        return Limit("a6-tilt", most, most, "3/128 in each inch of leg", _ANGLE_SOURCE, Trust.SECOND)
    return None


def web_off(section: Section) -> Limit | None:
    """E, the web off the middle of the flanges."""
    if section.family in WIDE:
        heavy = section.weight > _HEAVY
        most = Length.from_inches(inch("5/16") if heavy else inch("3/16"))
        rule = "5/16 over 426 lb/ft" if heavy else "3/16 up to 426 lb/ft"
        return Limit("a6-web-off", most, most, rule, _WIDE_SOURCE, Trust.READ)
    if section.family in {Family.S, Family.M}:
        most = Length.from_inches(inch("3/16"))
        return Limit("a6-web-off", most, most, "3/16", _STANDARD_SOURCE, Trust.MEMORY)
    return None


def length(
    section: Section, ordered: Length, *, as_column: bool = False, bearing_pile: bool = False
) -> Limit | None:
    """The length of a stick cut by the mill.

    Args:
        section: the shape.
        ordered: the length it was ordered at.
        as_column: ordered as a column.
        bearing_pile: ordered as a bearing pile.
    """
    if section.family in WIDE:
        if bearing_pile:
            return Limit(
                "a6-length",
                Length.from_inches(5),
                ZERO,
                "bearing piles: 5 over, nothing under",
                _WIDE_SOURCE,
                Trust.READ,
            )
        small = nominal_depth(section) <= 24 and not as_column
        base = Length.from_inches(inch("3/8") if small else inch("1/2"))
        more = each_further(ordered, _FOOT * 30, _FOOT * 5)
        sixteenths = Length.from_inches(inch("1/16")) * more
        what = "beams to 24 in nominal depth: 3/8" if small else "deeper beams and all columns: 1/2"
        rule = f"{what}, and 1/16 over for each further 5 ft past 30 ft"
        return Limit("a6-length", base + sixteenths, base, rule, _WIDE_SOURCE, Trust.READ)
    if section.family in STANDARD or section.family is Family.L:
        return _standard_length(section, Fraction(ordered.ticks, _FOOT.ticks))
    return None


def _standard_length(section: Section, feet: Fraction) -> Limit | None:
    """The length of S, M, C, MC and L shapes; none is published over 65 ft."""
    small = max(section.d, section.bf) < Length.from_inches(3)
    for up_to, over in _LENGTH_SMALL if small else _LENGTH_LARGE:
        if feet < up_to or (feet == up_to and up_to >= 30):
            rule = f"{'under 3 in' if small else '3 in and over'}, by length"
            return Limit("a6-length", Length.from_inches(over), ZERO, rule, _STANDARD_SOURCE, Trust.MEMORY)
    return None


def out_of_square(section: Section) -> Limit | None:
    """The ends of a stick out of square, over its depth or the width of its flange, the greater."""
    if section.family in WIDE:
        source, trust = _WIDE_SOURCE, Trust.READ
    elif section.family in STANDARD or section.family is Family.L:
        source, trust = _STANDARD_SOURCE, Trust.MEMORY
    else:
        return None
    return Limit(
        "a6-square",
        max(section.d, section.bf) / 64,
        None,
        "1/64 in each inch of depth or width",
        source,
        trust,
    )


def camber(section: Section, ordered: Length, *, as_column: bool = False) -> Limit | None:
    """Camber of a straight stick, in the plane of the web; of an angle, of either leg."""
    if section.family in WIDE:
        return _wide_bow("a6-camber", ordered, stretch=10, as_column=as_column)
    if section.family in STANDARD or section.family is Family.L:
        most = _eighth_each(ordered, 5)
        return Limit("a6-camber", most, most, "1/8 in each 5 ft of length", _STANDARD_SOURCE, Trust.MEMORY)
    return None


def sweep(section: Section, ordered: Length, *, as_column: bool = False) -> Limit | None:
    """Sweep of a straight stick, in the plane of the flanges: none is published for S, M, C and MC shapes."""
    if section.family in WIDE:
        narrow = section.bf < Length.from_inches(6)
        return _wide_bow("a6-sweep", ordered, stretch=5 if narrow else 10, as_column=as_column)
    return camber(section, ordered) if section.family is Family.L else None


def _eighth_each(ordered: Length, feet: int) -> Length:
    """1/8 in for each so many feet, in proportion."""
    return Length.from_inches(Fraction(1, 8)) * ordered.ratio(_FOOT * feet)


def _wide_bow(code: str, ordered: Length, *, stretch: int, as_column: bool) -> Limit:
    if not as_column:
        most = _eighth_each(ordered, stretch)
        rule = f"1/8 in each {stretch} ft of length"
    elif ordered <= _FOOT * 45:
        most = min(_eighth_each(ordered, 10), Length.from_inches(inch("3/8")))
        rule = "columns to 45 ft: 1/8 in each 10 ft, 3/8 at most"
    else:
        most = Length.from_inches(inch("3/8")) + _eighth_each(ordered - _FOOT * 45, 10)
        rule = "columns over 45 ft: 3/8, and 1/8 in each 10 ft past 45 ft"
    return Limit(code, most, most, rule, _WIDE_SOURCE, Trust.READ)
