"""What the place of an end in its frame leaves to change: how far its rows may reach, its beam be lowered."""

from __future__ import annotations

from gageline.detail import FaceKind, Joint
from gageline.part import Face
from gageline.strength.connection import Leeway
from gageline.units import Length

__all__ = ["leeway_of"]


def leeway_of(joint: Joint, drop: Length, step: Length) -> Leeway:
    """What may be changed at an end of a frame.

    Args:
        joint: the connection of the end.
        drop: from the top of steel to the first row where nothing is in its way.
        step: that the shop rounds the depth of a cope up to.
    """
    ladder, site = joint.ladder, joint.site
    usual = site.point[2] - (site.joint.drop or drop).inches
    reach = 0.0
    if ladder is not None:
        low, high = ladder.room
        top = ladder.first_in_web + ladder.edge.inches
        reach = (top if site.joint.drop is not None else high) - low  # rows come up where nothing is given
    radius = max((cope.radius.inches for cope in joint.notches.copes), default=0.0)
    rise = max(0.0, usual - ladder.first) if ladder else 0.0
    return Leeway(reach, _lower(joint), rise, step.inches, radius)


def _lower(joint: Joint) -> float:
    """How far the beam may come down before it meets the support's bottom flange, inches."""
    site, ladder = joint.site, joint.ladder
    if site.kind is not FaceKind.GIRDER_WEB or site.slope or joint.notches.depth(Face.BOTTOM).ticks:
        return 0.0
    low, _ = site.flat
    lowest = site.point[2] - site.member.upright_depth()
    if ladder is not None:
        lowest = min(lowest, ladder.elevations[-1] - ladder.edge.inches)
    return max(0.0, lowest - low)
