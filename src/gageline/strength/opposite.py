"""Welds that stand opposite each other on the two faces of one web, whichever piece they belong to."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from gageline.part import Face, Fitting, FittingKind, HoleGroup, Join
from gageline.strength.reading import reach

__all__ = ["Footprint", "face_on_web", "footprint", "holes_to_support", "stands_opposite", "welded_on"]

_ACROSS = {Face.NEAR: Face.FAR, Face.FAR: Face.NEAR}
_CONNECTING = frozenset({FittingKind.PLATE, FittingKind.ANGLE})
_ALONG, _UP = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)
Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Footprint:
    """Where something is welded to a support, in the space of the support.

    Args:
        face: of the support.
        along: from where to where along the support, in.
        up: from where to where across it, in.
    """

    face: Face
    along: Range
    up: Range


def footprint(fitting: Fitting, face: Face) -> Footprint:
    """What of a face a fitting covers.

    Args:
        fitting: placed in the space of the support.
        face: of the support.
    """
    return Footprint(face, reach(fitting, _ALONG), reach(fitting, _UP))


def stands_opposite(one: Footprint, others: Iterable[Footprint]) -> bool:
    """Whether any of the others covers the same steel from the other face of a web."""
    return any(
        _ACROSS.get(one.face) is other.face and _meet(one.along, other.along) and _meet(one.up, other.up)
        for other in others
    )


def _meet(one: Range, other: Range) -> bool:
    return min(one[1], other[1]) > max(one[0], other[0])


def welded_on(fittings: Iterable[Fitting]) -> list[Footprint]:
    """Where the plates and angles that a piece has for others are welded to its own faces.

    Args:
        fittings: of the piece, in its own space.
    """
    return [
        footprint(one, one.on)
        for one in fittings
        if one.on is not None and one.end is None and one.kind in _CONNECTING and one.join is Join.WELDED
    ]


def face_on_web(fitting: Fitting) -> Face:
    """The leg of an angle that lies against the web: the one whose face looks across the beam."""
    across = abs(fitting.placement.ez[2])
    return Face.LEG_A if across > 0.5 else Face.LEG_B


def holes_to_support(fitting: Fitting) -> HoleGroup | None:
    """The holes of an angle's outstanding leg; None where it is welded.

    Args:
        fitting: an angle in the space of the beam.
    """
    web = face_on_web(fitting)
    return next((group for group in fitting.part.groups if group.face is not web), None)
