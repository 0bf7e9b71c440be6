"""EN 10034: tolerances of European I and H sections."""

from __future__ import annotations

from fractions import Fraction
from math import inf

from gageline.quality.limits import Limit, Trust
from gageline.quality.mill.steps import Step, step_of
from gageline.steel import Section
from gageline.units import ZERO, Length

__all__ = ["depth", "length", "straightness", "tilt", "web_off", "width"]

_SOURCE = "EN 10034"
_F = Fraction
# Source: EN 10034 as printed by a maker of sections (read); all mm.
_DEPTH = (Step(180, _F(3), _F(2)), Step(400, _F(4), _F(2)), Step(700, _F(5), _F(3)), Step(inf, _F(5), _F(5)))
_WIDTH = (Step(110, _F(4), _F(1)), Step(210, _F(4), _F(2)), Step(325, _F(4), _F(4)), Step(inf, _F(6), _F(5)))
_STRAIGHT = ((180, _F(30, 10000)), (360, _F(15, 10000)), (inf, _F(10, 10000)))
_WEB_OFF_THIN = ((110, _F(5, 2)), (325, _F(7, 2)))
_WEB_OFF_THICK = ((325, _F(5)), (inf, _F(8)))
_WEB_OFF_WIDE = _F(5)  # from memory: b over 325 mm with flanges under 40 mm
_MOST_TILT, _LEAST_TILT, _TILT_SHARE = _F(13, 2), _F(3, 2), _F(2, 100)


def _mm(length: Length) -> Fraction:
    return Fraction(length.ticks, 6400)


def _steps(code: str, table: tuple[Step, ...], size: Length, rule: str) -> Limit:
    step = step_of(table, _mm(size))
    return Limit(code, Length.from_mm(step.over), Length.from_mm(step.under), rule, _SOURCE, Trust.READ)


def depth(section: Section) -> Limit:
    """The depth h."""
    return _steps("en10034-depth", _DEPTH, section.d, "by h")


def width(section: Section) -> Limit:
    """The flange width b."""
    return _steps("en10034-width", _WIDTH, section.bf, "by b")


def tilt(section: Section) -> Limit:
    """Flanges out of square, k + k', both together."""
    b = _mm(section.bf)
    most = Length.from_mm(_LEAST_TILT if b <= 110 else min(b * _TILT_SHARE, _MOST_TILT))
    rule = "1.5 mm for b up to 110, else 2 % of b, at most 6.5 mm"
    return Limit("en10034-tilt", most, most, rule, _SOURCE, Trust.READ)


def web_off(section: Section) -> Limit:
    """e, the web off the middle of the flanges."""
    b, thick = _mm(section.bf), section.tf >= Length.from_mm(40)
    if thick:
        value, trust = next(most for up_to, most in _WEB_OFF_THICK if b <= up_to), Trust.READ
    elif b > 325:
        value, trust = _WEB_OFF_WIDE, Trust.MEMORY
    else:
        value, trust = next(most for up_to, most in _WEB_OFF_THIN if b <= up_to), Trust.READ
    most = Length.from_mm(value)
    return Limit("en10034-web-off", most, most, "by b and flange thickness", _SOURCE, trust)


def straightness(section: Section, ordered: Length) -> Limit:
    """How far it may be bowed in either plane, as a share of its length."""
    share = next(part for up_to, part in _STRAIGHT if _mm(section.d) <= up_to)
    most = ordered * share
    return Limit("en10034-straight", most, most, f"{float(share):.2%} of the length", _SOURCE, Trust.READ)


def length(*, at_least: bool = False) -> Limit:
    """The length: ±50 mm, or 0 to +100 mm where a least length was ordered."""
    if at_least:
        return Limit("en10034-length", Length.from_mm(100), ZERO, "least length ordered", _SOURCE, Trust.READ)
    most = Length.from_mm(50)
    return Limit("en10034-length", most, most, "usual", _SOURCE, Trust.READ)
