"""The holes of a connection, and where those come to lie that take field bolts."""

from __future__ import annotations

from gageline.detail.carrier import Carrier
from gageline.detail.joint import Joint
from gageline.detail.shop import Shop
from gageline.detail.space import Vec, vec_of
from gageline.job import HoleMaker, HoleSize
from gageline.part import Fitting, face_point
from gageline.steel import HoleKind

__all__ = ["field_points", "maker_of"]

_FIELD_GROUPS = frozenset({"outstanding leg", "bolt holes"})


def maker_of(joint: Joint, shop: Shop, kind: HoleKind | None = None) -> HoleMaker:
    """The holes of a connection."""
    size = HoleSize.model_construct(bolt=joint.choice.size.size)
    return HoleMaker.of(size, shop.practice, kind)


def field_points(
    carrier: Carrier, fitting: Fitting, groups: frozenset[str] = _FIELD_GROUPS
) -> tuple[Vec, ...]:
    """Where in space holes of a fitting are, inches.

    Args:
        carrier: the piece that the fitting belongs to.
        fitting: of that piece.
        groups: names of its groups of holes; those that take field bolts when left out.
    """
    stands = fitting.placement.then(carrier.placement)
    part = fitting.part
    return tuple(
        vec_of(stands.point(face_point(part.stock, group.face, hole.x, hole.y)))
        for group in part.groups
        if group.name in groups
        for hole in group.holes
    )
