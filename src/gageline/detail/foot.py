"""Where the foot of a single plate stands on its face: on which side of the web, and if it all does."""

from __future__ import annotations

import math
from dataclasses import dataclass

from gageline.detail.plating import plate_weld
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop
from gageline.detail.site import FaceKind, Site, largest_fillet
from gageline.detail.space import UP, cross, dot, minus
from gageline.part import Finding, Severity, Side
from gageline.units import ZERO, Length

__all__ = ["OFF_THE_FACE", "Foot", "back_of", "foot_of"]

OFF_THE_FACE = "plate-off-the-face"  # no connection is built that would stand beside its support


@dataclass(frozen=True, slots=True)
class Foot:
    """The side of the web that a plate lies on.

    Args:
        side: of the web, or of the tongue.
        reasons: why it is not the usual one.
        findings: where neither side will do.
    """

    side: Side
    reasons: tuple[Reason, ...] = ()
    findings: tuple[Finding, ...] = ()


def back_of(site: Site, web: Length, thick: Length, side: Side) -> float:
    """How far the right-hand face of a plate is to the right of the web's middle, looking into the span.

    Args:
        site: where the end meets its support.
        web: thickness of what the plate lies on.
        thick: of the plate.
        side: of the web that it lies on.
    """
    toward = dot(site.member.ez, cross(site.inward, UP)) * (1.0 if side is Side.NEAR else -1.0)
    return web.inches / 2 + thick.inches if toward > 0 else -web.inches / 2


def foot_of(site: Site, web: Length, thick: Length, shop: Shop) -> Foot:
    """The side of the web on which a plate's foot and weld stand on the flat of a column's face.

    That is the near side, or the other where only there they do.

    Args:
        site: where the end meets its support.
        web: thickness of what the plate lies on.
        thick: of the plate.
        shop: the practice.
    """
    given, flat = site.joint.side, _flat(site)
    sides = (Side(given),) if given else (Side.NEAR, Side.FAR)
    weld = plate_weld(thick, shop, site.skew).inches
    reach = {side: _reach(site, web, thick, side) + weld for side in sides}
    good = next((side for side in sides if reach[side] <= flat + 1e-6), None)
    name, what = site.support.name, f"the foot of its plate and the weld {shop.say(weld)}"
    if good is None:
        least, room = shop.apart(min(reach.values()), max(flat, 0.0))
        remedy = "turn the column, use a wider one or a thinner plate, bring the beam nearer to its middle"
        found = Finding(
            OFF_THE_FACE,
            Severity.ERROR,
            f"{site.member.name} {site.word}",
            f"{what} reach {least} from the middle of {name}, the flat of its face {room}: no connection is "
            "detailed",
            f"{remedy}, or leave side out" if given else f"{remedy}, or skew it less",
            PRACTICE,
        )
        return Foot(sides[0], findings=(found,))
    if good is sides[0]:
        return Foot(good)
    usual, room = shop.apart(reach[sides[0]], flat)
    why = Reason(
        f"plate on the {good} side",
        f"on the {sides[0]} side {what} would reach {usual} from the middle of {name}, past the flat of its "
        f"face, {room}",
        PRACTICE,
        site.word,
    )
    return Foot(good, (why,))


def _reach(site: Site, web: Length, thick: Length, side: Side) -> float:
    """How far from the middle of the support the farther toe of a plate's foot is along the face, inches."""
    right, back = cross(site.inward, UP), back_of(site, web, thick, side)
    lean = dot(site.normal, right) / dot(site.normal, site.inward)
    middle = dot(minus(site.point, site.support.start), site.aside)
    offs = (back, back - thick.inches)
    toes = [off * (dot(site.aside, right) - lean * dot(site.aside, site.inward)) for off in offs]
    return max(abs(middle + toe) for toe in toes)


def _flat(site: Site) -> float:
    """How far the flat of a column's face runs from its middle, inches; endless along a girder."""
    stock = site.support.stock
    if not site.support.is_column:
        return math.inf
    half = site.across.inches / 2
    if site.kind is FaceKind.COLUMN_WEB:
        return half - largest_fillet(stock)
    return half - (stock.corner or ZERO).inches if site.kind is FaceKind.WALL else half
