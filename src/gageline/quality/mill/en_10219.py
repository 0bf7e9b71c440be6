"""EN 10219-2: tolerances of cold-formed hollow sections."""

from __future__ import annotations

from fractions import Fraction

from gageline.quality.limits import Limit, Trust
from gageline.steel import Profile, Section
from gageline.units import ZERO, Length

__all__ = ["length", "side", "straightness"]

_SOURCE = "EN 10219-2"
_F = Fraction
# Source: EN 10219-2 as printed by two makers of sections (read); all mm.
_SMALL, _MIDDLE = (100, _F(10, 1000)), (200, _F(8, 1000))
_LARGE = _F(6, 1000)
_LEAST = _F(1, 2)
_ROUND, _MOST_ROUND = _F(10, 1000), 10
_BOX_BOW, _TUBE_BOW = _F(15, 10000), _F(20, 10000)


def side(section: Section, across: Length) -> Limit:
    """An outside side of a box, or the outside diameter of a tube.

    Args:
        section: the hollow section.
        across: the side as ordered.
    """
    size = Fraction(across.ticks, 6400)
    if section.profile is Profile.TUBE:
        value = min(max(size * _ROUND, _LEAST), Fraction(_MOST_ROUND))
        rule = "1 %, 0.5 mm at the least and 10 mm at the most"
    elif size < _SMALL[0]:
        value, rule = max(size * _SMALL[1], _LEAST), "under 100: 1 %, 0.5 mm at the least"
    elif size <= _MIDDLE[0]:
        value, rule = size * _MIDDLE[1], "100 to 200: 0.8 %"
    else:
        value, rule = size * _LARGE, "over 200: 0.6 %"
    most = Length.from_mm(value)
    return Limit("en10219-side", most, most, rule, _SOURCE, Trust.READ)


def straightness(section: Section, ordered: Length) -> Limit:
    """How far it may be bowed over its whole length."""
    share = _TUBE_BOW if section.profile is Profile.TUBE else _BOX_BOW
    most = ordered * share
    return Limit("en10219-straight", most, most, f"{float(share):.2%} of the length", _SOURCE, Trust.READ)


def length() -> Limit:
    """The length: 0 to +50 mm."""
    return Limit("en10219-length", Length.from_mm(50), ZERO, "mill length", _SOURCE, Trust.READ)
