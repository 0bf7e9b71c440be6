"""Flat bars: ASTM A6 for those in inches, EN 10058 for those in millimetres, all from memory.

Wider plates are cut from sheets, whose limits hang on how they were cut: none are held.
"""

from __future__ import annotations

from fractions import Fraction

from gageline.quality.limits import Limit, Trust
from gageline.quality.mill.steps import Step, inch
from gageline.steel import Measure, Plate
from gageline.units import Length

__all__ = ["straightness", "width"]

_F = Fraction
_FOOT = Length.from_inches(12)
_INCH_SOURCE, _MM_SOURCE = "ASTM A6, flat bars", "EN 10058"
# Source: ASTM A6, widths of hot-rolled flat bars (from memory); inches.
_INCH_WIDTH = (
    Step(1, inch("1/64"), inch("1/64")), Step(2, inch("1/32"), inch("1/32")),
    Step(4, inch("1/16"), inch("1/32")), Step(6, inch("3/32"), inch("1/16")),
    Step(8, inch("1/8"), inch("3/32")),
)  # fmt: skip
# Source: EN 10058 (from memory); mm.
_MM_WIDTH = (
    Step(40, _F(3, 4), _F(3, 4)), Step(80, _F(1), _F(1)), Step(100, _F(3, 2), _F(3, 2)),
    Step(120, _F(2), _F(2)), Step(150, _F(5, 2), _F(5, 2)),
)  # fmt: skip
_HEAVY = 1000  # mm² of a section: from there on a bar is to be straighter
_LIGHT_BOW, _HEAVY_BOW = _F(4, 1000), _F(25, 10000)


def width(plate: Plate) -> Limit | None:
    """The width of a flat bar; None for wider plates."""
    inches = plate.system is Measure.US
    size = _F(plate.width.ticks, _FOOT.ticks) * 12 if inches else _F(plate.width.ticks, 6400)
    step = next((step for step in (_INCH_WIDTH if inches else _MM_WIDTH) if size <= step.up_to), None)
    if step is None:
        return None
    if inches:
        over, under = Length.from_inches(step.over), Length.from_inches(step.under)
        return Limit("a6-flat-width", over, under, "by width", _INCH_SOURCE, Trust.MEMORY)
    over, under = Length.from_mm(step.over), Length.from_mm(step.under)
    return Limit("en10058-width", over, under, "by width", _MM_SOURCE, Trust.MEMORY)


def straightness(plate: Plate, ordered: Length) -> Limit | None:
    """How far a flat bar may be bowed on edge; None for wider plates."""
    if width(plate) is None:
        return None
    if plate.system is Measure.US:
        most = Length.from_inches(inch("1/4")) * ordered.ratio(_FOOT * 5)
        return Limit("a6-flat-straight", most, most, "1/4 in each 5 ft of length", _INCH_SOURCE, Trust.MEMORY)
    heavy = plate.width.mm * plate.thickness.mm >= _HEAVY
    share = _HEAVY_BOW if heavy else _LIGHT_BOW
    rule = f"{float(share):.2%} of the length, {'from' if heavy else 'below'} 1000 mm²"
    return Limit("en10058-straight", ordered * share, ordered * share, rule, _MM_SOURCE, Trust.MEMORY)
