"""Fillets as rolled, where the tables give only how far they may reach."""

from __future__ import annotations

import math
from dataclasses import replace

from shapely import Polygon

from gageline.steel import Family, Section
from gageline.units import ZERO, Length

__all__ = ["as_rolled"]

_REACH_ONLY = frozenset({Family.S, Family.ST, Family.M, Family.MT, Family.HP, Family.C, Family.MC, Family.L})


def as_rolled(stock: Section) -> Section:
    """A section whose fillet radius gives the printed area.

    American tables print no radius. For these series they print k for detailing, the furthest that a
    fillet may reach, and a section with that radius weighs up to 5 % too much. The area between a
    fillet and its corner grows with the square of the radius, so the printed area settles the radius;
    it is at most the one that reaches to k. Toes stay square, as no table prints their radius; where
    they are rolled round, as on angles, the radius found here is less than the rolled one for it.

    Args:
        stock: any section.

    Returns:
        The section with its radius mended; W shapes, hollow and European ones as they are.
    """
    if stock.family not in _REACH_ONLY or not stock.fillet:
        return stock
    bare, full = (Polygon(replace(stock, fillet=radius).outline()[0]).area for radius in (ZERO, stock.fillet))
    share = (stock.area - bare) / (full - bare)
    part_of_full = math.sqrt(min(max(share, 0.0), 1.0))
    return replace(stock, fillet=Length.from_inches(stock.fillet.inches * part_of_full))
