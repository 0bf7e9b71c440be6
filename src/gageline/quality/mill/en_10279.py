"""EN 10279: tolerances of European channels, all from memory."""

from __future__ import annotations

from fractions import Fraction
from math import inf

from gageline.quality.limits import Limit, Trust
from gageline.quality.mill.steps import Step, step_of
from gageline.steel import Section
from gageline.units import Length

__all__ = ["depth", "length", "straightness", "tilt", "width"]

_SOURCE = "EN 10279"
_F = Fraction
# Source: EN 10279, table 1 (from memory); all mm.
_DEPTH = (
    Step(65, _F(3, 2), _F(3, 2)), Step(200, _F(2), _F(2)), Step(400, _F(3), _F(3)), Step(inf, _F(4), _F(4)),
)  # fmt: skip
_WIDTH = (
    Step(50, _F(3, 2), _F(3, 2)), Step(100, _F(2), _F(2)), Step(125, _F(5, 2), _F(5, 2)),
    Step(inf, _F(3), _F(3)),
)  # fmt: skip
_TILT_UP_TO, _TILT, _TILT_SHARE = 100, _F(2), _F(25, 1000)
# Bow in the plane of the web and in that of the flanges, as shares of the length, by h.
_BOW = ((150, _F(3, 1000), _F(5, 1000)), (300, _F(2, 1000), _F(3, 1000)), (inf, _F(15, 10000), _F(2, 1000)))


def _mm(length: Length) -> Fraction:
    return Fraction(length.ticks, 6400)


def _steps(code: str, table: tuple[Step, ...], size: Length, rule: str) -> Limit:
    step = step_of(table, _mm(size))
    return Limit(code, Length.from_mm(step.over), Length.from_mm(step.under), rule, _SOURCE, Trust.MEMORY)


def depth(section: Section) -> Limit:
    """The depth h."""
    return _steps("en10279-depth", _DEPTH, section.d, "by h")


def width(section: Section) -> Limit:
    """The flange width b."""
    return _steps("en10279-width", _WIDTH, section.bf, "by b")


def tilt(section: Section) -> Limit:
    """Flanges out of square, k + k', both together."""
    b = _mm(section.bf)
    most = Length.from_mm(_TILT if b <= _TILT_UP_TO else b * _TILT_SHARE)
    rule = "2 mm for b up to 100, else 2.5 % of b"
    return Limit("en10279-tilt", most, most, rule, _SOURCE, Trust.MEMORY)


def straightness(section: Section, ordered: Length, *, sideways: bool) -> Limit:
    """How far it may be bowed, as a share of its length.

    Args:
        section: the channel.
        ordered: its length.
        sideways: in the plane of the flanges; else in that of the web.
    """
    in_web, in_flanges = next(shares for up_to, *shares in _BOW if _mm(section.d) <= up_to)
    share = in_flanges if sideways else in_web
    most = ordered * share
    return Limit("en10279-straight", most, most, f"{float(share):.2%} of the length", _SOURCE, Trust.MEMORY)


def length() -> Limit:
    """The length: ±50 mm."""
    most = Length.from_mm(50)
    return Limit("en10279-length", most, most, "usual", _SOURCE, Trust.MEMORY)
