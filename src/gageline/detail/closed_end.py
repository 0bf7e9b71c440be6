"""The closed end of a hollow beam built: its end cap, and the tongue on it with its holes."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from gageline.detail.carrier import Carrier
from gageline.detail.joint import Joint
from gageline.detail.points import maker_of
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.rows import Ladder
from gageline.detail.shop import Shop
from gageline.detail.site import Site, largest_fillet
from gageline.detail.space import UP, Vec, along, cross, placement_of
from gageline.detail.tongue import Tongue
from gageline.job import grade_of, plate_stock, rows_down
from gageline.part import (
    Face,
    Finding,
    Fitting,
    FittingKind,
    HoleGroup,
    Join,
    Part,
    Placement,
    Severity,
    Weld,
)
from gageline.units import Length

__all__ = ["close_end"]

_DOWN: Vec = (0.0, 0.0, -1.0)
_TONGUE_WELD = "AISC Design Examples v16, II.A-17A, for the plate"


def close_end(joint: Joint, tongue: Tongue, ladder: Ladder, own: Carrier, shop: Shop) -> None:
    """Add the end cap and its tongue to a hollow beam.

    Args:
        joint: the connection.
        tongue: of its beam.
        ladder: its rows.
        own: the beam.
        shop: the practice.
    """
    site = joint.site
    cap = Fitting(
        f"{site.end} end cap",
        FittingKind.END_CAP,
        _cap_part(tongue, shop),
        own.seen(_cap_place(joint, tongue)),
        None,
        site.end,
        Join.WELDED,
    )
    plate = Fitting(
        f"{site.end} tongue",
        FittingKind.TONGUE,
        _tongue_part(joint, tongue, ladder, shop),
        own.seen(_tongue_place(joint, tongue, ladder)),
        None,
        site.end,
        Join.WELDED,
    )
    if "galv" in (site.member.entry.finish or shop.practice.finish).casefold():
        own.findings.append(_in_the_bath(site.member.name))
    run = Length.from_inches(tongue.high.inches - 2 * largest_fillet(site.member.stock))
    own.fittings.extend((cap, plate))
    own.welds.append(Weld(cap.name, shop.practice.weld, run, 2, "outside of both walls"))
    both = "both sides of the tongue, to the end cap"
    own.welds.append(Weld(plate.name, tongue.weld, ladder.length, 2, both, both_sides=True))
    own.reasons.extend(_weld_reasons(site, tongue, run, shop))


def _weld_reasons(site: Site, tongue: Tongue, run: Length, shop: Shop) -> tuple[Reason, Reason]:
    """Why the welds of a cap, each run so long, and of its tongue are as they are."""
    return (
        Reason(
            f"end cap welded with {shop.say(shop.practice.weld)} fillets",
            f"that is the shop's practice; {shop.say(run)} of each run, the height of the cap less the "
            f"rounded corners of {site.member.stock.designation}",
            PRACTICE,
            site.word,
        ),
        Reason(
            f"tongue welded with {shop.say(tongue.weld)} fillets",
            f"five eighths of the tongue, {shop.say(tongue.thickness)}, rounded up, as for the plate",
            _TONGUE_WELD,
            site.word,
        ),
    )


def _in_the_bath(name: str) -> Finding:
    """What closed steel does in a bath of zinc."""
    return Finding(
        "closed-and-galvanized",
        Severity.WARNING,
        name,
        "its hollow section is closed by an end cap and is to be galvanized: steam or acid shut in it bursts "
        "it in the bath, and can kill; no holes to vent and drain it are detailed",
        "agree on vent and drain holes with the galvanizer and enter them, or paint it",
        "ASTM A385 (from memory)",
    )


def _cap_part(tongue: Tongue, shop: Shop) -> Part:
    """The cap with its length plumb."""
    stock = plate_stock(tongue.cap, tongue.wide, shop.system)
    return Part("", stock, grade_of(stock, None), tongue.high)


def _cap_place(joint: Joint, tongue: Tongue) -> Placement:
    """Centred on the end of the section: x runs down, z toward the support."""
    site = joint.site
    right = cross(site.inward, UP)
    x, y, _ = along(along(site.point, site.inward, tongue.reach.inches), right, -tongue.wide.inches / 2)
    return placement_of((x, y, tongue.top(site)), _DOWN, right)


def _tongue_part(joint: Joint, tongue: Tongue, ladder: Ladder, shop: Shop) -> Part:
    """The tongue with its length plumb: x runs down, y out from the cap.

    At a skew its width out from the cap is no size of a plate: there it lies with its length out, y up.
    """
    maker, rows = maker_of(joint, shop), rows_down(ladder.edge, ladder.rows, ladder.pitch)
    if joint.site.square:
        stock, length = plate_stock(tongue.thickness, tongue.width, shop.system), ladder.length
        # slots lie across the reaction
        holes = replace(maker, angle=Fraction(90)).grid(rows, (tongue.to_cap,))
    else:
        stock, length = plate_stock(tongue.thickness, ladder.length, shop.system), tongue.width
        holes = maker.grid((tongue.to_cap,), tuple(ladder.length - row for row in rows))
    group = HoleGroup("bolt holes", Face.FACE, holes, maker.bolt, maker.kind)
    return Part("", stock, grade_of(stock, None), length, groups=(group,))


def _tongue_place(joint: Joint, tongue: Tongue, ladder: Ladder) -> Placement:
    """Upright in the middle plane of the beam, on the outside of its cap."""
    site = joint.site
    right, (in_x, in_y, _) = cross(site.inward, UP), site.inward
    root = along(site.point, site.inward, tongue.reach.inches)
    x, y, _ = along(root, right, -tongue.thickness.inches / 2)
    top, out = ladder.first + ladder.edge.inches, (-in_x, -in_y, 0.0)
    if site.square:
        return placement_of((x, y, top), _DOWN, out)
    return placement_of((x, y, top - ladder.length.inches), out, UP)
