"""The tongue of a hollow beam: its closed end, and the plate there that does what a web does elsewhere."""

from __future__ import annotations

import math
from dataclasses import dataclass

from gageline.detail.choice import Choice
from gageline.detail.plating import (
    bolt_edge,
    off_the_face,
    plate_thickness,
    plate_weld,
    stiff_from,
)
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop, up_to
from gageline.detail.site import Site
from gageline.detail.space import along
from gageline.detail.stick import EndPlane
from gageline.part import Finding, Severity
from gageline.units import Length, round_down

__all__ = ["Tongue", "end_plane", "room_of", "tongue_of", "tongue_reasons", "too_short"]


@dataclass(frozen=True, slots=True)
class Tongue:
    """An end cap, square to the beam in the plan and plumb, and the tongue upright on its middle.

    Args:
        thickness: of the tongue.
        gage: along the beam from the face to the bolts.
        to_cap: from the bolts to the outside of the cap.
        tip: along the beam from the face to the end of the tongue, inches.
        cap: thickness of the cap.
        wide: of the cap, across the beam.
        high: of the cap, plumb.
        weld: leg of the tongue's fillets on the cap.
        rule: why the bolts are so far off the face.
    """

    thickness: Length
    gage: Length
    to_cap: Length
    tip: float
    cap: Length
    wide: Length
    high: Length
    weld: Length
    rule: str

    @property
    def width(self) -> Length:
        """Of the tongue, from its end to the cap."""
        return self.reach - Length.from_inches(self.tip)

    @property
    def reach(self) -> Length:
        """Along the beam from the face to the outside of the cap."""
        return self.gage + self.to_cap

    def top(self, site: Site) -> float:
        """Elevation of the upper edge of the cap, which is centred on the beam's end, inches."""
        over = (site.member.upright_depth() - self.high.inches) / 2
        return site.point[2] + site.slope * self.steel.inches - over

    @property
    def steel(self) -> Length:
        """Along the beam from the face to the end of the hollow section."""
        return self.reach + self.cap


def tongue_of(choice: Choice, shop: Shop) -> Tongue:
    """The closed end of a hollow beam, all but how long its tongue is, which the rows of bolts say.

    Args:
        choice: the connection, a plate.
        shop: the practice.
    """
    site, thick = choice.site, _thickness(choice, shop)
    skew = math.radians(abs(site.skew))
    tip = (choice.setback.inches + thick.inches / 2 * math.sin(skew)) / math.cos(skew)
    gage, rule = off_the_face(choice, thick, tip, shop)
    weld = plate_weld(thick, shop)
    wide = up_to((site.member.stock.bf + _shelf(shop) * 2).inches, shop.pick(0.25, 5))
    beside = _beside(choice, weld, shop).inches
    corner = (_clear(choice, shop) + wide.inches / 2 * math.sin(skew)) / math.cos(skew)
    return Tongue(
        thick,
        gage,
        up_to(max(beside, corner - gage.inches), shop.pick(0.125, 1)),
        tip,
        shop.frame.end_plate,
        wide,
        round_down(Length.from_inches(site.member.upright_depth() + 1e-6), shop.pick(0.125, 1)),
        weld,
        rule,
    )


def _thickness(choice: Choice, shop: Shop) -> Length:
    """As thick as the plate, but no thicker than half a bolt and 1/16, so that it yields before the bolts go.

    Source: AISC Manual Part 10, Table 10-9 (from memory).
    """
    most = round_down(stiff_from(choice.size), shop.pick(0.125, 2))
    return min(plate_thickness(choice, shop), most)


def room_of(choice: Choice, tongue: Tongue) -> tuple[float, float]:
    """Elevations between which a tongue has room on its cap, a leg of its weld left at each end, inches.

    Args:
        choice: the connection.
        tongue: of its beam.
    """
    site, weld = choice.site, tongue.weld.inches
    top = tongue.top(site)
    low, high = site.flat
    return max(low, top - tongue.high.inches + weld), min(high, top - weld)


def _beside(choice: Choice, weld: Length, shop: Shop) -> Length:
    """From the bolts to the cap at the least: the edge of the plate, the tongue's weld, and room to enter."""
    return bolt_edge(choice, shop) + weld + shop.frame.entering


def _shelf(shop: Shop) -> Length:
    """What the cap stands out beside each wall for the fillet that joins it: its leg and a little more."""
    return shop.practice.weld + shop.pick(0.125, 3)


def _clear(choice: Choice, shop: Shop) -> float:
    """How far off the face the corners of the cap stay, square to it: past flanges there; inches."""
    return max(choice.setback.inches, choice.site.reach + shop.frame.entering.inches)


def tongue_reasons(choice: Choice, tongue: Tongue, shop: Shop) -> tuple[Reason, ...]:
    """Why a closed end is as it is.

    Args:
        choice: the connection.
        tongue: of its beam.
        shop: the practice.
    """
    say, site, stock = shop.say, choice.site, choice.site.member.stock
    beside, step = _beside(choice, tongue.weld, shop), shop.pick(0.125, 1)
    cap = (
        f"past the bolts come {say(bolt_edge(choice, shop))} of the plate, the {say(tongue.weld)} fillet of "
        f"the tongue and {say(shop.frame.entering)} to enter, {say(beside)}"
    )
    if tongue.to_cap.inches > up_to(beside.inches, step).inches + 1e-9:
        cap += (
            f"; its corners, {say(tongue.wide / 2)} to each side, stay {say(_clear(choice, shop))} off the "
            "face, square to it"
        )
    return (
        Reason(
            f"tongue {say(tongue.thickness)} thick, {say(tongue.width)} wide",
            f"{stock.designation} has no web: the tongue stands upright in the middle of its end cap and "
            f"runs from {say(tongue.tip)} to {say(tongue.reach)} off the face along the beam; it is as thick "
            f"as the plate, at most half a bolt and 1/16, {say(stiff_from(choice.size))}",
            PRACTICE,
            site.word,
        ),
        Reason(
            f"end cap {say(tongue.to_cap)} past the bolts, {say(tongue.reach)} off the face",
            f"{cap}; rounded up to {say(step)}",
            PRACTICE,
            site.word,
        ),
        Reason(
            f"end cap {say(tongue.cap)} thick, {say(tongue.wide)} wide, {say(tongue.high)} high",
            f"as thick as the shop's end plates; {stock.designation} is {say(stock.bf)} wide, with "
            f"{say(_shelf(shop))} beside each wall for its fillet, rounded up to "
            f"{say(shop.pick(0.25, 5))}; no higher than the beam's end, {say(site.member.upright_depth())} "
            "plumb, so that nothing stands over the top of steel",
            PRACTICE,
            site.word,
        ),
    )


def too_short(choice: Choice, tongue: Tongue, room: tuple[float, float], shop: Shop) -> Finding | None:
    """A finding where a tongue has no room for two rows of bolts; None where it has.

    Args:
        choice: the connection.
        tongue: of its beam.
        room: elevations that the tongue must stay between, inches.
        shop: the practice.
    """
    site, has = choice.site, max(room[1] - room[0], 0.0)
    want = choice.pitch + shop.practice.end_distance * 2
    if has >= want.inches - 1e-6:
        return None
    least = want + tongue.weld * 2
    instead = "lower or raise the beam, use a deeper support"
    if tongue.high < least:
        instead = f"use a hollow beam {shop.say(up_to(least.inches, shop.pick(1, 25)))} deep"
    short, wants = shop.apart(has, want)
    return Finding(
        "tongue-too-short",
        Severity.ERROR,
        f"{site.member.name} {site.word}",
        f"a tongue at the closed end of {site.member.stock.designation} has room for {short} at "
        f"{site.support.name}, two rows of {choice.size.size} bolts want {wants}: no connection is detailed",
        f"{instead}, or a W beam, let it bear on top, or enter the end as drawn",
        PRACTICE,
    )


def end_plane(choice: Choice, off: str, shop: Shop) -> EndPlane:
    """Where the steel of a beam is cut for a connection: parallel to the face, or square at a closed end.

    Args:
        choice: the connection.
        off: how far the face is off the work point, in words.
        shop: the practice.
    """
    site = choice.site
    if choice.tongued:
        steel = tongue_of(choice, shop).steel
        why = (
            f"the {site.word}'s face is {off} from its work point and the closed end {shop.say(steel)} off it"
        )
        return EndPlane(along(site.point, site.inward, steel.inches), site.inward, why)
    why = f"the {site.word}'s face is {off} from its work point and the setback {shop.say(choice.setback)}"
    return EndPlane(along(site.point, site.normal, choice.setback.inches), site.normal, why)
