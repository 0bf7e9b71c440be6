"""Seats: an angle under the beam on a column, and a clip that holds its top flange."""

from __future__ import annotations

from gageline.detail.carrier import Carrier
from gageline.detail.joint import Joint, gage_of
from gageline.detail.points import field_points, maker_of
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop
from gageline.detail.space import UP, along, placement_of
from gageline.job import grade_of, stock_named
from gageline.part import BoltSet, Face, Finding, Fitting, FittingKind, HoleGroup, Join, Part, Severity, Weld
from gageline.steel import Section
from gageline.units import Length

__all__ = ["build_seat"]

_CLIP = "flange leg"
_DOWN = (0.0, 0.0, -1.0)


def build_seat(joint: Joint, own: Carrier, other: Carrier, shop: Shop) -> None:
    """A seat angle welded to the column, and a top clip bolted to the beam.

    Args:
        joint: the connection; its spread is the gage of the beam's flange.
        own: the beam.
        other: the column.
        shop: the practice.
    """
    site, angle, spread = joint.site, joint.angle, joint.spread
    if angle is None or spread is None:
        return
    length = joint.length
    part = _clip(joint, angle, (length, spread), "outstanding leg", shop)
    low = site.point[2] - site.member.upright_depth()
    placement = placement_of(site.on_face(-length.inches / 2, low), site.aside, _DOWN)
    name = other.free_fitting(f"{site.face} seat")
    seat = Fitting(name, FittingKind.ANGLE, part, other.seen(placement), site.face, None, Join.WELDED)
    other.fittings.append(seat)
    other.welds.append(Weld(name, shop.practice.weld, angle.d, 2, "both ends of the upright leg"))
    points = field_points(other, seat)
    own.drill(f"{site.end} end, for the seat", Face.BOTTOM, points, maker_of(joint, shop), shop.division)
    _top_clip(joint, own, spread, shop)


def _clip(joint: Joint, angle: Section, size: tuple[Length, Length], name: str, shop: Shop) -> Part:
    """An angle lying across, two holes in the leg on the beam's flange."""
    length, spread = size
    maker = maker_of(joint, shop)
    half = (length - spread) / 2
    holes = maker.grid((half, half + spread), (gage_of(angle.bf, shop),))
    group = HoleGroup(name, Face.LEG_B, holes, maker.bolt, maker.kind)
    return Part("", angle, grade_of(angle, None), length, groups=(group,))


def _top_clip(joint: Joint, own: Carrier, spread: Length, shop: Shop) -> None:
    """The clip over the beam's top flange, where the column runs up behind it."""
    site = joint.site
    angle = stock_named(shop.frame.clip_angle, shop.system)
    if not isinstance(angle, Section):
        return
    if site.support_top < site.point[2] + angle.d.inches:
        own.findings.append(
            Finding(
                "no-room-for-clip",
                Severity.WARNING,
                f"{site.member.name} {site.word}",
                f"column {site.support.name} ends {shop.say(max(0.0, site.support_top - site.point[2]))} "
                f"over the top of steel, a top clip wants {shop.say(angle.d)}: none is detailed",
                "let the column run up, hold the web with a side clip, or use another connection",
            )
        )
        return
    length = spread + shop.practice.end_distance * 2
    part = _clip(joint, angle, (length, spread), _CLIP, shop)
    corner = along(site.on_face(length.inches / 2, site.point[2]), site.normal, joint.choice.play.inches)
    placement = placement_of(corner, (-site.aside[0], -site.aside[1], 0.0), UP)
    name = f"{site.end} top clip"
    fitting = Fitting(name, FittingKind.ANGLE, part, own.seen(placement), Face.TOP, site.end, Join.BOLTED)
    own.fittings.append(fitting)
    points = field_points(own, fitting, frozenset({_CLIP}))
    own.drill(f"{site.end} end, for the clip", Face.TOP, points, maker_of(joint, shop), shop.division)
    grip = angle.tw + site.member.stock.tf
    own.bolts.append(BoltSet((name,), joint.choice.size.size, 2, grip, field=False))
    own.reasons.append(
        Reason(
            f"top clip {angle.designation}",
            "it keeps the beam upright on its seat; its upright leg is welded to the column along the toe "
            "at the site",
            PRACTICE,
            site.word,
        )
    )
