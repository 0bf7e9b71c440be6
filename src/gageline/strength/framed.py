"""Members of a detailed frame as what is checked: each with its own supports, and beams that share bolts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from gageline.detail import Detailed, FaceKind, Placed, Site
from gageline.job import EndEntry, Force, FrameEndEntry, PieceLoads
from gageline.part import Assembly, End, Placement, Vector
from gageline.strength.check import Method
from gageline.strength.connection import Support, SupportFace
from gageline.strength.demands import reaction_at
from gageline.strength.drawn import Carried
from gageline.strength.reading import dot
from gageline.strength.steels import support_of
from gageline.units import Length, System

__all__ = ["Subject", "subjects_of_frame"]

_FACES = {
    FaceKind.GIRDER_WEB: SupportFace.GIRDER_WEB,
    FaceKind.COLUMN_FLANGE: SupportFace.COLUMN_FLANGE,
    FaceKind.COLUMN_WEB: SupportFace.COLUMN_WEB,
    FaceKind.WALL: SupportFace.WALL,
}
Key = tuple[str, End]


@dataclass(frozen=True, slots=True)
class Subject:
    """A piece whose connections are checked.

    Args:
        piece: its mark.
        quantity: how many are alike in everything, supports too.
        assembly: the piece.
        given: what it carries.
        supports: of its ends, where they are known.
        carried: what its supports have for its ends.
        known: its plates by name that are checked with the beams they carry.
    """

    piece: str
    quantity: int
    assembly: Assembly
    given: PieceLoads
    supports: Mapping[End, Support]
    carried: Mapping[End, Carried] = field(default_factory=dict)
    known: frozenset[str] = frozenset()


def subjects_of_frame(detailed: Detailed, system: System, method: Method) -> tuple[Subject, ...]:
    """Every member of a frame with what carries its ends.

    Args:
        detailed: the frame.
        system: units of the job; reactions are in kips or kilonewtons by it.
        method: design method.

    Returns:
        One subject for each member, under the member's own name.
    """
    sites = {(site.member.name, site.end): site for site in detailed.supports.sites}
    given = {one.member: _given(one.member, sites, system) for one in detailed.placed}
    assemblies = {one.member: one.assembly for one in detailed.placed}
    supports = {key: support for key, site in sites.items() if (support := _support(site))}
    for shared in detailed.shared:
        for key, other in ((shared.one, shared.two), (shared.two, shared.one)):
            ladder = detailed.joints[other].ladder if other in detailed.joints else None
            if key in supports and ladder is not None and other[0] in assemblies:
                opposite = reaction_at(assemblies[other[0]], other[1], given[other[0]], method).V
                rows = ladder.rows
                supports[key] = replace(supports[key], opposite=opposite, opposite_rows=rows)
    return tuple(
        Subject(
            one.mark,
            1,
            one.assembly,
            given[one.member],
            {end: supports[one.member, end] for end in End if (one.member, end) in supports},
            {end: found for end in End if (found := _carried(detailed, one, end))},
            frozenset(served.fitting for served in detailed.served if served.piece == one.assembly.mark),
        )
        for one in detailed.placed
    )


def _carried(detailed: Detailed, beam: Placed, end: End) -> Carried | None:
    """What the support of an end has for it, seen from the beam."""
    served = [one for one in detailed.served if one.member == beam.member and one.end is end]
    if not served:
        return None
    support = next(one for one in detailed.placed if one.assembly.mark == served[0].piece)
    names = {one.fitting for one in served}
    fittings = tuple(
        replace(fitting, placement=_seen(fitting.placement.then(support.placement), beam.placement))
        for fitting in support.assembly.fittings
        if fitting.name in names
    )
    return Carried(fittings, support.assembly.welds)


def _seen(placement: Placement, space: Placement) -> Placement:
    """A placing in space as seen from a part that stands in it."""

    def turned(way: Vector) -> Vector:
        x, y, z = (dot(way, axis) for axis in (space.ex, space.ey, space.ez))
        return x, y, z

    away = [(a - b).inches for a, b in zip(placement.origin, space.origin, strict=True)]
    x, y, z = (
        Length.from_inches(dot((away[0], away[1], away[2]), axis)) for axis in (space.ex, space.ey, space.ez)
    )
    return Placement((x, y, z), turned(placement.ex), turned(placement.ey))


def _given(member: str, sites: Mapping[Key, Site], system: System) -> PieceLoads:
    """The reactions that the frame's tables give."""

    def entry(end: End) -> EndEntry:
        site = sites.get((member, end))
        return _entry(site.joint, system) if site else EndEntry()

    return PieceLoads(member, entry(End.LEFT), entry(End.RIGHT))


def _entry(joint: FrameEndEntry, system: System) -> EndEntry:
    if not joint.reaction:
        return EndEntry()
    unit = "kip" if system is System.FT_IN else "kN"
    return EndEntry(reaction=Force(Fraction(str(joint.reaction)), unit))


def _support(site: Site) -> Support | None:
    """The face that an end stands on; None on top of a column."""
    face = _FACES.get(site.kind)
    if face is None:
        return None
    return support_of(site.support.stock, face, site.support.entry.grade)
