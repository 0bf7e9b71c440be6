"""A single plate: how far off the face its bolts are, and its weld."""

from __future__ import annotations

import math
from fractions import Fraction

from gageline.detail.choice import Choice
from gageline.detail.shop import Shop, up_to
from gageline.detail.wrench import bolt_end, wrench_of
from gageline.steel import Bolt
from gageline.units import Length, round_down

__all__ = ["bolt_edge", "off_the_face", "plate_thickness", "plate_weld", "stiff_from"]


def plate_thickness(choice: Choice, shop: Shop) -> Length:
    """Thickness of a single plate: as given, or as the shop uses it."""
    return choice.site.joint.thickness or shop.frame.plate


def stiff_from(size: Bolt) -> Length:
    """Thickness that a plate or the web beside it keeps to, so that it yields before the bolts break.

    Source: AISC Manual Part 10, Table 10-9 (from memory).
    """
    return size.diameter / 2 + Length.from_inches(1) / 16


def plate_weld(thickness: Length, shop: Shop, skew: float = 0.0) -> Length:
    """Five eighths of the plate, up to the next 1/16 in or 1 mm; more where a skew takes from the throat.

    Args:
        thickness: of the plate.
        shop: the practice.
        skew: of the plate to its face, degrees.

    Source: AISC Design Examples v16, II.A-17A; at a skew the throat is the leg by the cosine of half of it
        (geometry).
    """
    least = thickness * Fraction(5, 8)
    return up_to(least.inches / math.cos(math.radians(skew) / 2), shop.pick(1 / 16, 1))


def bolt_edge(choice: Choice, shop: Shop) -> Length:
    """From the bolts of a plate to its edge, and to the end of the steel beside it at the least.

    Source: two diameters are AISC Manual Part 10, single-plate connections (from memory).
    """
    return max(shop.frame.edge, choice.size.diameter * 2)


def off_the_face(choice: Choice, web: Length, end: float, shop: Shop) -> tuple[Length, str]:
    """How far along the beam from the face a plate's bolts are, and why.

    Args:
        choice: the connection.
        web: thickness of what the plate is bolted to: the beam's web, or its tongue.
        end: along the beam from the face to the end of that, inches.
        shop: the practice.

    Source: AISC 360-22 J3.6, at most 12 thicknesses of the web from its end.
    """
    step, usual = shop.pick(0.25, 5), shop.frame.plate_gage
    edge = end + bolt_edge(choice, shop).inches
    wrench = _beside_the_skew(choice, web, plate_thickness(choice, shop))
    wanted = up_to(max(edge, wrench), step)
    most = round_down(Length.from_inches(end) + web * 12, step)
    gage = max(wanted, min(usual, most))
    rule = (
        f"setback {shop.say(end)} along the beam and {shop.say(edge - end)} to the bolts make "
        f"{shop.say(edge)}"
    )
    if wrench > edge:
        rule += f", the wrench beside the skewed face wants {shop.say(wrench)}"
    rule += f"; rounded up to {shop.say(step)}, at least {shop.say(usual)}"
    if gage < usual:
        rule += f", less as 12 thicknesses of the web go only to {shop.say(most)}"
    return gage, rule


def _beside_the_skew(choice: Choice, web: Length, thick: Length) -> float:
    """How far along a skewed beam its bolts must be off the face to be tightened, inches.

    Source: AISC Manual, LRFD 2nd ed., Table 8-4, C1, from the end of the bolt nearest to the face.
    """
    size, wrench = choice.size, wrench_of(choice.size)
    if choice.site.square or wrench is None:
        return 0.0
    skew = math.radians(abs(choice.site.skew))
    out = (web / 2 + thick).inches + bolt_end(size)
    return (wrench.tighten.inches + out * math.sin(skew)) / math.cos(skew)
