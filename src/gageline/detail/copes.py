"""What must be cut away at an end so that it goes to its support: copes and flange trims."""

from __future__ import annotations

import math
from dataclasses import dataclass

from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop
from gageline.detail.site import FaceKind, Site, fillet_of, largest_fillet
from gageline.detail.space import UP, along, dot
from gageline.detail.stick import Stick
from gageline.part import Cope, End, Face, Finding, FlangeTrim, Severity, Side, extent_z
from gageline.steel import Profile
from gageline.units import ZERO, Length, round_down

__all__ = ["Notches", "notches_of"]

_SOURCE = "AISC Manual Table 1-1, kdet and kdes; clearance and rounding are shop practice"
_LIMITS = "AISC Manual Part 9, coped beams (from memory)"


@dataclass(frozen=True, slots=True)
class Notches:
    """What is cut away at an end.

    Args:
        copes: through a flange and into the web.
        trims: flanges cut back beside a whole web.
        reasons: why.
        findings: what is wrong with them.
    """

    copes: tuple[Cope, ...] = ()
    trims: tuple[FlangeTrim, ...] = ()
    reasons: tuple[Reason, ...] = ()
    findings: tuple[Finding, ...] = ()

    def depth(self, edge: Face) -> Length:
        """How deep an edge is coped; zero where it is not."""
        return next((cope.depth for cope in self.copes if cope.edge is edge), ZERO)


def notches_of(site: Site, stick: Stick, setback: float, shop: Shop) -> Notches:
    """The copes and trims of an end.

    Args:
        site: where the end meets its support.
        stick: the beam cut to length.
        setback: from the face to the end of the steel, square to the face, inches.
        shop: the practice.
    """
    if site.reach <= 0.0 or setback >= site.reach + shop.frame.entering.inches:
        return Notches()
    if site.kind is FaceKind.COLUMN_WEB:
        return _between_flanges(site, stick, setback, shop)
    cuts = [_cope(site, stick, edge, setback, shop) for edge in (Face.TOP, Face.BOTTOM)]
    made = [cut for cut in cuts if cut is not None]
    copes = tuple(cope for cope, _ in made)
    return Notches(copes, (), tuple(reason for _, reason in made), tuple(_too_much(site, copes, shop)))


def _cope(site: Site, stick: Stick, edge: Face, setback: float, shop: Shop) -> tuple[Cope, Reason] | None:
    """The cope of one flange where the support's flange or its fillet is in the way."""
    top = edge is Face.TOP
    sign = 1.0 if top else -1.0
    clear = shop.frame.cope_clearance.inches
    steep = dot(site.support.ey, UP)
    least = largest_fillet(site.support.stock) / steep
    wanted = max(least, (fillet_of(site.support.stock) + clear) / steep)
    limit = site.support_top if top else site.support_bottom
    lean = dot(site.member.ey, UP)
    edge_now = _edge_elevation(site, top=top)
    ends = [edge_now + site.slope * run for run in _runs(site, stick, clear)]
    over = max(ends) - limit if top else limit - min(ends)
    if over + least <= 1e-9:
        return None
    girder = site.support.stock
    asked, gone = (over + wanted) * lean, _flange_gone(stick, shop)
    depth = shop.cope(max(asked, gone))
    length = shop.cope(_length(site, stick, (limit - sign * wanted, limit), clear))
    radius = min(shop.practice.cope_radius, depth, length)
    side = "above" if over * sign > 0 else "below"
    level = abs(site.slope) < 1e-9
    where = f"{shop.say(abs(over))} {side}" if abs(over) > 1e-6 else "level with"
    rule = (
        f"{edge} of steel is {'' if level else 'at the most '}{where} the {edge} of {girder.designation}, "
        f"whose fillet ends at {shop.say(fillet_of(girder))} (kdes) with {shop.say(clear)} clearance, at "
        f"{shop.say(largest_fillet(girder))} at the largest (kdet); "
        f"{f'the flange cut off and the radius of the corner ask for {shop.say(gone)}; ' * (gone > asked)}"
        f"its flange stands {shop.say(site.reach)} out from the web with {shop.say(clear)} clearance, "
        f"{'' if site.square and level else 'from the furthest point of the end, '}less the setback "
        f"{shop.say(setback)}; rounded up to {shop.say(shop.frame.cope_step)}"
    )
    reason = Reason(f"{edge} cope {shop.say(length)} long, {shop.say(depth)} deep", rule, _SOURCE, site.word)
    return Cope(site.end, edge, length, depth, radius), reason


def _edge_elevation(site: Site, *, top: bool) -> float:
    return site.point[2] if top else site.point[2] - site.member.upright_depth()


def _flange_gone(stick: Stick, shop: Shop) -> float:
    """The least depth of a cope: the flange and the radius of the corner, inches."""
    return (stick.line.stock.tf + shop.practice.cope_radius).inches


def _runs(site: Site, stick: Stick, clear: float) -> tuple[float, float]:
    """Where along the beam the support's flange is in the way, from the face, in the plan, inches.

    On a skewed beam one edge of its flange comes nearer to the support than its web, the other stays
    under the support's flange longer.
    """
    skew = math.radians(abs(site.skew))
    half = max(abs(side.inches) for side in extent_z(stick.line.stock))
    return -half * math.tan(skew), (site.reach + clear) / math.cos(skew) + half * math.tan(skew)


def _length(site: Site, stick: Stick, levels: tuple[float, ...], clear: float) -> float:
    """From the furthest point of the end to where the support's flange is cleared, inches."""
    reach = along(site.point, site.normal, site.reach + clear)
    found = []
    for limit in extent_z(stick.line.stock):
        aside = dot(site.aside, stick.line.ez)
        for elevation in levels:
            # the point of the clearance line that lies on this edge of the beam's flange
            spot = (reach[0], reach[1], elevation)
            off = limit.inches - stick.local(spot)[2]
            spot = along(spot, site.aside, off / aside)
            found.append(stick.local(spot)[0])
    return max(found) if site.end is End.LEFT else stick.part.length.inches - min(found)


def _too_much(site: Site, copes: tuple[Cope, ...], shop: Shop) -> list[Finding]:
    found: list[Finding] = []
    depth = site.member.stock.d
    subject = f"{site.member.name} {site.word}"
    for cope in copes:
        if cope.depth * 2 > depth:
            found.append(
                Finding(
                    "cope-beyond-method",
                    Severity.ERROR,
                    subject,
                    f"the {cope.edge} cope {shop.say(cope.depth)} deep is more than half of "
                    f"{shop.say(depth)}, the limit of the method for coped beams",
                    "lower or raise the beam, use a deeper support or an extended plate, "
                    "or reinforce the web and enter it as drawn",
                    _LIMITS,
                )
            )
        elif cope.length.ticks > depth.ticks * 2:
            found.append(
                Finding(
                    "cope-beyond-method",
                    Severity.WARNING,
                    subject,
                    f"the {cope.edge} cope {shop.say(cope.length)} long is more than twice the depth, "
                    f"{shop.say(depth)}",
                    "use an extended plate, or have the web checked",
                    _LIMITS,
                )
            )
    if len(copes) == 2 and sum(cope.depth.ticks for cope in copes) * 2 > depth.ticks:
        left = depth - copes[0].depth - copes[1].depth
        found.append(
            Finding(
                "support-shallower",
                Severity.ERROR,
                subject,
                f"both flanges are coped and {shop.say(left)} of {shop.say(depth)} is left: "
                f"{site.support.name} {site.support.stock.designation} is too shallow for this beam",
                "use a deeper support, a shallower beam, or an extended plate",
                PRACTICE,
            )
        )
    return found


def _between_flanges(site: Site, stick: Stick, setback: float, shop: Shop) -> Notches:
    """Flanges trimmed so that the beam enters between the flanges of a column."""
    column, beam = site.support.stock, site.member.stock
    clear = (column.d - column.tf * 2).inches - 2 * shop.frame.entering.inches
    skew = math.radians(abs(site.skew))
    off = site.off_centre + site.reach * math.tan(skew)  # of the web's middle where it passes the flanges
    half = (clear / 2 - off) * math.cos(skew)
    wide = beam.bf - beam.tw / 2 if beam.profile is Profile.CHANNEL else beam.bf / 2
    if wide.inches <= half or beam.profile is Profile.BOX:
        return Notches()
    keep = round_down(Length.from_inches(max(0.0, half - beam.tw.inches / 2)), shop.pick(0.125, 2))
    length = shop.cope(_length(site, stick, (site.point[2],), shop.frame.cope_clearance.inches))
    sides = (Side.FAR,) if beam.profile is Profile.CHANNEL else tuple(Side)
    trims = tuple(
        FlangeTrim(site.end, edge, side, length, keep) for edge in (Face.TOP, Face.BOTTOM) for side in sides
    )
    reason = Reason(
        f"flanges trimmed to {shop.say(keep)} from the web over {shop.say(length)}",
        f"the beam's flange is {shop.say(beam.bf)} wide and enters between the flanges of "
        f"{column.designation}, {shop.say(column.d - column.tf * 2)} apart, with "
        f"{shop.say(shop.frame.entering)} clearance at each side, the beam's middle "
        f"{shop.say(off)} off theirs; {shop.say(setback)} setback",
        PRACTICE,
        site.word,
    )
    return Notches((), trims, (reason,), ())
