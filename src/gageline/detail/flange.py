"""Where bolts go in the flange of a beam, to both sides of its web."""

from __future__ import annotations

from gageline.detail.shop import Shop, up_to
from gageline.detail.wrench import wrench_of
from gageline.steel import Bolt, Section, minimum_edge_distance
from gageline.units import ZERO, Length, round_down

__all__ = ["flange_gage"]


def flange_gage(stock: Section, size: Bolt, shop: Shop) -> tuple[Length, bool]:
    """How far apart the bolts in a flange are, and whether they are so far for the wrench alone.

    That is the workable gage, or half of the flange where the tables give none; more where a wrench would
    not pass beside the web or a washer not lie flat beside the fillet, as far as the flange's edge allows.

    Args:
        stock: the beam, an I-section.
        size: of the bolts.
        shop: the practice.

    Source: AISC Manual Table 1-1, workable gage; LRFD 2nd ed., Table 8-4; AISC 360-22 Table J3.4.
    """
    step = shop.pick(0.25, 5)
    usual = stock.gage or up_to(stock.bf.inches / 2, step)
    wrench = wrench_of(size)
    if wrench is None:
        return usual, False
    beside = stock.tw / 2 + wrench.tighten
    flat = stock.k1 + wrench.fillet if stock.k1 is not None else ZERO
    wanted = up_to((max(beside, flat) * 2).inches, step)
    most = round_down(stock.bf - minimum_edge_distance(size) * 2, step)
    gage = max(usual, min(wanted, most))
    return gage, gage > usual
