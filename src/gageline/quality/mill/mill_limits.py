"""The limits that hold for one stick, by the standard that its section is rolled or formed to."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.quality.limits import Limit
from gageline.quality.mill import (
    astm_a6,
    astm_a53,
    astm_a500,
    astm_tees,
    en_10034,
    en_10056,
    en_10219,
    en_10279,
    flats,
)
from gageline.steel import Family, Measure, Plate, Profile, Section, Stock
from gageline.units import Length

__all__ = ["MillLimits", "mill_limits"]

_EUROPEAN_I = frozenset({Family.IPE, Family.HEA, Family.HEB, Family.HEM})
_TEES = frozenset({Family.WT, Family.MT, Family.ST})


@dataclass(frozen=True, slots=True)
class MillLimits:
    """The limits that hold for one stick; None where none is held.

    Args:
        length: of the stick.
        square: of its ends.
        depth: at the middle of the web, of the longer leg, of a side or a diameter.
        depth_max: at any place of the section.
        width: of a flange, of the shorter leg or of the other side.
        tilt: of both flanges together, or of an angle's legs.
        web_off: of the web off the middle of the flanges.
        camber: in the plane of the web.
        sweep: in the plane of the flanges.
    """

    length: Limit | None = None
    square: Limit | None = None
    depth: Limit | None = None
    depth_max: Limit | None = None
    width: Limit | None = None
    tilt: Limit | None = None
    web_off: Limit | None = None
    camber: Limit | None = None
    sweep: Limit | None = None


def mill_limits(stock: Stock, ordered: Length, *, as_column: bool = False) -> MillLimits:
    """The limits on a stick of a section or plate.

    Args:
        stock: the section or plate.
        ordered: the length it was ordered at.
        as_column: ordered as a column.
    """
    if isinstance(stock, Plate):
        return MillLimits(depth=flats.width(stock), camber=flats.straightness(stock, ordered))
    if stock.system is Measure.US:
        return _american(stock, ordered, as_column=as_column)
    return _european(stock, ordered)


def _american(section: Section, ordered: Length, *, as_column: bool) -> MillLimits:
    if section.family is Family.PIPE:
        return MillLimits(depth=astm_a53.diameter(section), width=astm_a53.diameter(section))
    if section.profile in {Profile.BOX, Profile.TUBE}:
        bow = astm_a500.straightness(ordered)
        sides = astm_a500.side(section, section.d), astm_a500.side(section, section.bf)
        return MillLimits(astm_a500.length(ordered), depth=sides[0], width=sides[1], camber=bow, sweep=bow)
    if section.family in _TEES:
        bow = astm_tees.straightness(ordered)
        return MillLimits(
            square=astm_tees.out_of_square(section), depth=astm_tees.depth(section),
            width=astm_tees.width(section), camber=bow, sweep=bow,
        )  # fmt: skip
    return MillLimits(
        astm_a6.length(section, ordered, as_column=as_column),
        astm_a6.out_of_square(section),
        astm_a6.depth(section),
        astm_a6.depth_anywhere(section),
        astm_a6.flange_width(section),
        astm_a6.flange_tilt(section),
        astm_a6.web_off(section),
        astm_a6.camber(section, ordered, as_column=as_column),
        astm_a6.sweep(section, ordered, as_column=as_column),
    )


def _european(section: Section, ordered: Length) -> MillLimits:
    if section.family in _EUROPEAN_I:
        bow = en_10034.straightness(section, ordered)
        return MillLimits(
            en_10034.length(), depth=en_10034.depth(section), width=en_10034.width(section),
            tilt=en_10034.tilt(section), web_off=en_10034.web_off(section), camber=bow, sweep=bow,
        )  # fmt: skip
    if section.family is Family.L_EU:
        bow = en_10056.straightness(section, ordered)
        return MillLimits(
            en_10056.length(), depth=en_10056.leg(section.d), width=en_10056.leg(section.bf),
            tilt=en_10056.tilt(section), camber=bow, sweep=bow,
        )  # fmt: skip
    if section.profile is Profile.CHANNEL:
        return MillLimits(
            en_10279.length(), depth=en_10279.depth(section), width=en_10279.width(section),
            tilt=en_10279.tilt(section), camber=en_10279.straightness(section, ordered, sideways=False),
            sweep=en_10279.straightness(section, ordered, sideways=True),
        )  # fmt: skip
    bow = en_10219.straightness(section, ordered)
    sides = en_10219.side(section, section.d), en_10219.side(section, section.bf)
    return MillLimits(en_10219.length(), depth=sides[0], width=sides[1], camber=bow, sweep=bow)
