"""The bolted joints of a piece as drawn: shop bolts of its fittings, field bolts, and holes left open."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import cos, radians, sin
from typing import TypeAlias

from gageline.part import (
    Assembly,
    End,
    Face,
    Fitting,
    FittingKind,
    Hole,
    HoleGroup,
    Join,
    Point,
    Vector,
    face_point,
    normal,
)
from gageline.quality.bolted import Bolted, Joining
from gageline.quality.joint import BoltPlace
from gageline.steel import HoleKind, bolt, hole_size
from gageline.units import Length

__all__ = ["Met", "bolted_of", "left_out"]

_SAME = Length.from_inches(1) / 64  # holes closer than this are one hole through two plies
_MOSTLY = 0.7  # of a direction: it runs along an axis rather than across it
_REACH = Length.from_inches(12)  # of a square's blade; common practice, no source
_LYING = frozenset({Face.TOP, Face.BOTTOM, Face.LEG_B})


Met: TypeAlias = Mapping[tuple[str, str], str]
"""The holes of a piece that meet others in its frame, by fitting (empty for the part) and group: the bolt."""


def bolted_of(assembly: Assembly, met: Met | None = None) -> tuple[Bolted, ...]:
    """The bolted joints of a piece as drawn: every hole that mates and is for a bolt is in one of them.

    A fitting bolted to the part is shifted on it until its bolts enter; so is the whole piece on each
    support. Each fitting is judged against the part by itself, also where two share their bolts. The
    other ply of a site joint is taken to have standard holes, marked and drilled alike.

    Args:
        assembly: the piece.
        met: what its holes meet in its frame; None for a piece of no frame, whose holes are all taken
            to meet something.
    """
    shop = tuple(found for one in assembly.fittings if (found := _shop(assembly, one)) is not None)
    ends = tuple(found for end in End if (found := _field(assembly, end)) is not None)
    rest = tuple(_open(fitting, group) for fitting, group in _rest(assembly, met))
    return (*shop, *ends, *rest)


def left_out(assembly: Assembly, met: Met | None = None) -> tuple[str, ...]:
    """The holes of a piece that no odds are told of, each with the reason, in words.

    Args:
        assembly: the piece.
        met: what its holes meet in its frame; None for a piece of no frame.
    """
    taken = _taken(assembly)
    told = []
    for fitting, group in _groups(assembly):
        rods = fitting is not None and fitting.kind is FittingKind.BASE_PLATE
        if not group.mates or _key(fitting, group) in taken:
            continue
        if rods:
            why = "over anchor rods"
        elif met is not None and _key(fitting, group) not in met:
            why = "meets no hole of another piece"
        elif not _size(fitting, group, met):
            why = "no bolt size is given"
        else:
            continue
        told.append(f"{_name(fitting, group)}: {why}")
    return tuple(told)


def _groups(assembly: Assembly) -> Iterator[tuple[Fitting | None, HoleGroup]]:
    for group in assembly.main.groups:
        yield None, group
    for fitting in assembly.fittings:
        for group in fitting.part.groups:
            yield fitting, group


def _size(fitting: Fitting | None, group: HoleGroup, met: Met | None) -> str:
    """The bolt that holes are for: their own, or that of the holes they meet."""
    return group.bolt or (met or {}).get(_key(fitting, group), "")


def _key(fitting: Fitting | None, group: HoleGroup) -> tuple[str, str]:
    return fitting.name if fitting else "", group.name


def _name(fitting: Fitting | None, group: HoleGroup) -> str:
    return f"{fitting.name}, {group.name}" if fitting else group.name


@dataclass(frozen=True, slots=True)
class _Drilled:
    """A hole of a fitting where it lies in the piece.

    Args:
        place: of its middle.
        looks: which way its face looks.
        runs: which way its slot runs, along x for a round hole.
        hole: as drawn on the fitting.
        group: that it is one of.
    """

    place: Point
    looks: Vector
    runs: Vector
    hole: Hole
    group: HoleGroup

    def across(self, axis: int) -> bool:
        """Whether a slot runs along an axis of the piece."""
        return self.hole.is_slot and abs(self.runs[axis]) > _MOSTLY


def _drilled(fitting: Fitting) -> Iterator[_Drilled]:
    """The holes of a fitting in the space of the piece."""
    stock, turn = fitting.part.stock, fitting.placement.turn
    for group in fitting.part.groups:
        x, y, z = normal(group.face)
        looks = turn((float(x), float(y), float(z)))
        for hole in group.holes:
            place = fitting.placement.point(face_point(stock, group.face, hole.x, hole.y))
            angle = radians(float(hole.angle))
            yield _Drilled(place, looks, turn(_on_face(group.face, cos(angle), sin(angle))), hole, group)


def _on_face(face: Face, along: float, up: float) -> Vector:
    """A direction on a face in the space of its part."""
    if face in {Face.TOP, Face.BOTTOM}:
        return along, 0.0, up
    return (along, 0.0, -up) if face is Face.LEG_B else (along, up, 0.0)


def _play(hole: Hole, other_width: Length, other_length: Length, bolt_size: str) -> tuple[float, float]:
    """How far two holes may be apart, and how much further along their slots, in."""
    size = bolt(bolt_size).diameter
    clear = ((hole.width + other_width) / 2 - size).inches
    slot = ((hole.length - hole.width + other_length - other_width) / 2).inches
    return clear, slot


def _up_axis(face: Face) -> int:
    """Of a face of the part, the axis that its own y lies along; x is the other."""
    return 2 if face in _LYING else 1


def _mates(assembly: Assembly, fitting: Fitting) -> Iterator[tuple[Point, Hole, HoleGroup, _Drilled]]:
    """The holes of the part that a fitting's holes lie on."""
    own = list(_drilled(fitting))
    for group in assembly.main.groups:
        up = _up_axis(group.face)
        through = 3 - up
        for hole in group.holes:
            place = face_point(assembly.main.stock, group.face, hole.x, hole.y)
            for drilled in own:
                apart = max(abs(place[axis] - drilled.place[axis]) for axis in (0, up))
                if apart <= _SAME and abs(drilled.looks[through]) > _MOSTLY:
                    yield place, hole, group, drilled


def _shop(assembly: Assembly, fitting: Fitting) -> Bolted | None:
    """A fitting bolted to the part, hole by hole with the holes of the part that it lies on."""
    if fitting.join is not Join.BOLTED or fitting.on is None:
        return None
    bolts = []
    for place, hole, group, drilled in _mates(assembly, fitting):
        if group.bolt:
            clear, slot = _play(drilled.hole, hole.width, hole.length, group.bolt)
            level = drilled.across(0) or not drilled.hole.is_slot
            upright = not level or (hole.is_slot and hole.angle != 0)
            up = place[_up_axis(group.face)]
            bolts.append(BoltPlace(place[0].inches, up.inches, clear, 0.0 if upright else slot))
    if not bolts:
        return None
    where = "flange" if fitting.on in _LYING else "web"
    return Bolted(f"{fitting.name} to the {where}", Joining.SHOP, tuple(bolts), tuple(bolts))


def _to_support(fitting: Fitting) -> Iterator[_Drilled]:
    """The holes of a fitting by which it goes to a support at its end."""
    if fitting.end is not None:
        yield from (one for one in _drilled(fitting) if one.group.bolt and abs(one.looks[0]) > _MOSTLY)


def _field(assembly: Assembly, end: End) -> Bolted | None:
    """The fittings of one end to their support: across is along z, up is y."""
    found: dict[bool, list[BoltPlace]] = {False: [], True: []}
    set_across: list[bool] = []
    for fitting in (one for one in assembly.fittings if one.end is end):
        here = list(_to_support(fitting))
        for drilled in here:
            for slotted, bolts in found.items():
                other = hole_size(bolt(drilled.group.bolt), HoleKind.SSL if slotted else HoleKind.STD)
                clear, slot = _play(drilled.hole, other.width, other.length, drilled.group.bolt)
                # A slot that runs up is taken as round, on the safe side.
                level = drilled.across(2) or not drilled.hole.is_slot
                own = 0.0 if level else ((drilled.hole.length - drilled.hole.width) / 2).inches
                z, y = drilled.place[2].inches, drilled.place[1].inches
                bolts.append(BoltPlace(z, y, clear, slot - own, len(set_across)))
        if here:
            set_across.append(fitting.on is None or fitting.join is not Join.BOLTED)
    if not set_across:
        return None
    round_, slots = (tuple(bolts) for bolts in found.values())
    return Bolted(f"{end} end to its support", Joining.SUPPORT, round_, slots, tuple(set_across))


def _rest(assembly: Assembly, met: Met | None) -> Iterator[tuple[Fitting | None, HoleGroup]]:
    """The groups that mate with something that is not in this piece, and not at a support of an end."""
    taken = _taken(assembly)
    for fitting, group in _groups(assembly):
        key, size = _key(fitting, group), _size(fitting, group, met)
        if group.mates and size and key not in taken and (met is None or key in met):
            yield fitting, replace(group, bolt=size)


def _taken(assembly: Assembly) -> set[tuple[str, str]]:
    """The groups that a shop joint or a joint with a support has."""
    taken: set[tuple[str, str]] = set()
    for fitting in assembly.fittings:
        for _, _, group, drilled in _mates(assembly, fitting):
            taken |= {_key(None, group), _key(fitting, drilled.group)}
        taken.update(_key(fitting, drilled.group) for drilled in _to_support(fitting))
    return taken


def _open(fitting: Fitting | None, group: HoleGroup) -> Bolted:
    """A group on what is bolted to it at the site, in its face's own coordinates."""
    other = hole_size(bolt(group.bolt), HoleKind.STD)
    # across is the way that slots run: turned where all of them run up the face
    turned = all(hole.is_slot and abs(hole.angle) == 90 for hole in group.holes)
    lots = _lots(group)
    bolts = []
    for hole in group.holes:
        clear, slot = _play(hole, other.width, other.length, group.bolt)
        x, y = (hole.y, hole.x) if turned else (hole.x, hole.y)
        along = turned or hole.angle == 0
        bolts.append(BoltPlace(x.inches, y.inches, clear, slot if along else 0.0, lots[hole.x]))
    way = Joining.FITTING if fitting else Joining.PART
    return Bolted(_name(fitting, group), way, tuple(bolts), tuple(bolts))


def _lots(group: HoleGroup) -> dict[Length, int]:
    """The lot of every line of a group: what one square reaches is struck together, the rest taped anew."""
    lots: dict[Length, int] = {}
    first = group.holes[0].x
    for x in sorted({hole.x for hole in group.holes}):
        if not lots or x - first > _REACH:
            first = x
            lots[x] = 1 + max(lots.values(), default=-1)
        else:
            lots[x] = max(lots.values())
    return lots
