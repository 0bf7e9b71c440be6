"""Members of a detailed frame as what is checked: each with its supports, its reactions and its loads."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeVar

from gageline.detail import Detailed, FaceKind, Joint, Placed, Site
from gageline.errors import ValueProblem
from gageline.job import PieceLoads, SpanEntry
from gageline.part import Assembly, End, Fitting, FittingKind, Placement, Vector
from gageline.strength.check import Method
from gageline.strength.connection import Support, SupportFace
from gageline.strength.demands import Demand, handed_demand, suggested
from gageline.strength.drawn import Carried
from gageline.strength.handed import Handed
from gageline.strength.loads import Load
from gageline.strength.opposite import (
    Footprint,
    footprint,
    holes_to_support,
    stands_opposite,
    welded_on,
)
from gageline.strength.reading import dot
from gageline.strength.steels import support_of
from gageline.units import Length

__all__ = ["Span", "Subject", "subjects_of_frame"]

_FACES = {
    FaceKind.GIRDER_WEB: SupportFace.GIRDER_WEB,
    FaceKind.COLUMN_FLANGE: SupportFace.COLUMN_FLANGE,
    FaceKind.COLUMN_WEB: SupportFace.COLUMN_WEB,
    FaceKind.WALL: SupportFace.WALL,
}
Key = tuple[str, End]
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Span:
    """A beam between two supports at its ends.

    Args:
        length: between them, in.
        loads: on it, without factors.
        entry: how it is braced, and how far it may bend.
    """

    length: float
    loads: tuple[Load, ...]
    entry: SpanEntry


@dataclass(frozen=True, slots=True)
class Subject:
    """A piece whose connections are checked.

    Args:
        piece: its mark.
        quantity: how many are alike in everything, supports too.
        assembly: the piece.
        given: what it carries, as its tables say.
        supports: of its ends, where they are known.
        carried: what its supports have for its ends.
        known: its plates by name that are checked with the beams they carry.
        demands: of its ends, where a frame says them.
        span: it as a simple beam, where its loads are known.
        joints: the connections of its ends, where a frame says them.
    """

    piece: str
    quantity: int
    assembly: Assembly
    given: PieceLoads
    supports: Mapping[End, Support]
    carried: Mapping[End, Carried] = field(default_factory=dict)
    known: frozenset[str] = frozenset()
    demands: Mapping[End, Demand] = field(default_factory=dict)
    span: Span | None = None
    joints: Mapping[End, Joint] = field(default_factory=dict)


def subjects_of_frame(detailed: Detailed, handed: Handed, method: Method) -> Iterator[Subject]:
    """Every member of a frame with what carries its ends and what it carries.

    Args:
        detailed: the frame.
        handed: its loads, handed down.
        method: design method.

    Returns:
        One subject for each member, under the member's own name.
    """
    sites = {(site.member.name, site.end): site for site in detailed.supports.sites}
    placed = {one.member: one for one in detailed.placed}
    demands = {
        key: demand
        for key in sites
        if key[0] in placed and (demand := _demand(handed, key, placed[key[0]].assembly, method))
    }
    supports = {key: support for key, site in sites.items() if (support := _support(site))}
    for shared in detailed.shared:
        for key, other in ((shared.one, shared.two), (shared.two, shared.one)):
            ladder = detailed.joints[other].ladder if other in detailed.joints else None
            if key in supports and ladder is not None and other in demands:
                opposite, rows = demands[other].V, ladder.rows
                supports[key] = replace(supports[key], opposite=opposite, opposite_rows=rows)
    for key, both in _both_faces(detailed):
        if key in supports:
            supports[key] = replace(supports[key], both_faces=both)
    carried, known = _served(detailed)
    spans = {one.member: one.span for one in detailed.loads}
    for one in detailed.placed:
        yield Subject(
            one.mark,
            1,
            one.assembly,
            PieceLoads(one.member),
            _by_end(supports, one.member),
            _by_end(carried, one.member),
            frozenset(known.get(one.assembly.mark, ())),
            _by_end(demands, one.member),
            _span(handed, one.member, spans.get(one.member, SpanEntry())),
            _by_end(detailed.joints, one.member),
        )


def _by_end(found: Mapping[Key, T], member: str) -> dict[End, T]:
    return {end: found[member, end] for end in End if (member, end) in found}


def _demand(handed: Handed, key: Key, assembly: Assembly, method: Method) -> Demand | None:
    """What an end must carry; None where nothing comes down and none is suggested for such a section."""
    amounts = handed.at(*key)
    if amounts is not None:
        return handed_demand(amounts, method)
    try:
        return suggested(assembly, method)
    except ValueProblem:  # said by the check of the connection, which asks again
        return None


def _span(handed: Handed, member: str, entry: SpanEntry) -> Span | None:
    rests, loads = handed.rests.get(member, ()), handed.loads.get(member)
    if not loads or [rest.end for rest in rests] != [End.LEFT, End.RIGHT]:
        return None
    return Span(rests[1].at - rests[0].at, loads, entry)


def _served(detailed: Detailed) -> tuple[dict[Key, Carried], dict[str, set[str]]]:
    """What supports have for the ends of beams, seen from the beams, and those fittings by their pieces."""
    pieces = {one.assembly.mark: one for one in detailed.placed}
    beams = {one.member: one for one in detailed.placed}
    names: dict[tuple[Key, str], set[str]] = defaultdict(set)
    known: dict[str, set[str]] = defaultdict(set)
    for one in detailed.served:
        names[(one.member, one.end), one.piece].add(one.fitting)
        known[one.piece].add(one.fitting)
    carried = {
        key: _carried(pieces[piece], beams[key[0]], fittings) for (key, piece), fittings in names.items()
    }
    return carried, known


def _both_faces(detailed: Detailed) -> Iterator[tuple[Key, bool]]:
    """Of each end, whether another is welded to the other face of the same steel of its support."""
    pieces = {one.member: one for one in detailed.placed}
    own: dict[Key, list[Footprint]] = {}
    on: dict[str, list[Footprint]] = {one.member: welded_on(one.assembly.fittings) for one in detailed.placed}
    names: dict[Key, set[str]] = defaultdict(set)
    for served in detailed.served:
        names[served.member, served.end].add(served.fitting)
    for site in detailed.supports.sites:
        key, support = (site.member.name, site.end), pieces.get(site.support.name)
        beam = pieces.get(site.member.name)
        if support is None or beam is None:
            continue
        theirs = [one for one in support.assembly.fittings if one.name in names[key]]
        field_welded = [
            footprint(_in_space_of(one, beam, support), site.face)
            for one in beam.assembly.fittings
            if one.end is site.end and one.kind is FittingKind.ANGLE and holes_to_support(one) is None
        ]
        own[key] = [*welded_on(theirs), *field_welded]
        on[site.support.name].extend(field_welded)
    for site in detailed.supports.sites:
        key = site.member.name, site.end
        yield key, any(stands_opposite(one, on.get(site.support.name, ())) for one in own.get(key, ()))


def _in_space_of(fitting: Fitting, owner: Placed, other: Placed) -> Fitting:
    """A fitting of one piece as another piece sees it."""
    return replace(fitting, placement=_seen(fitting.placement.then(owner.placement), other.placement))


def _carried(support: Placed, beam: Placed, names: set[str]) -> Carried:
    fittings = tuple(
        _in_space_of(fitting, support, beam) for fitting in support.assembly.fittings if fitting.name in names
    )
    return Carried(fittings, support.assembly.welds)


def _seen(placement: Placement, space: Placement) -> Placement:
    """A placing in space as seen from a part that stands in it."""
    axes = (space.ex, space.ey, space.ez)

    def turned(way: Vector) -> Vector:
        x, y, z = (dot(way, axis) for axis in axes)
        return x, y, z

    a, b, c = ((here - there).inches for here, there in zip(placement.origin, space.origin, strict=True))
    x, y, z = (Length.from_inches(dot((a, b, c), axis)) for axis in axes)
    return Placement((x, y, z), turned(placement.ex), turned(placement.ey))


def _support(site: Site) -> Support | None:
    """The face that an end stands on; None on top of a column."""
    face = _FACES.get(site.kind)
    return support_of(site.support.stock, face, site.support.entry.grade) if face else None
