"""The main part of a piece, built from the tables that say what is cut into it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, partial
from itertools import product
from typing import TypeVar

from gageline.errors import ValueProblem
from gageline.job.collecting import Collector
from gageline.job.document import PieceEntry
from gageline.job.features import (
    ClipEntry,
    CopeEntry,
    EndEntry,
    HolesEntry,
    HoleSize,
    OpeningEntry,
    TrimEntry,
)
from gageline.job.locating import START_WORDS, columns, face_named, middle, places, rows
from gageline.job.practice import Practice
from gageline.job.problems import Path
from gageline.job.wording import say
from gageline.part import (
    Clip,
    Cope,
    End,
    EndCut,
    Face,
    FlangeTrim,
    Hole,
    HoleGroup,
    Opening,
    Part,
    Side,
    face_range,
    faces_of,
    in_order,
)
from gageline.steel import HoleKind, Profile, Section, Stock, bolt, hole_size
from gageline.steel import HoleSize as BoltHole
from gageline.units import ZERO, Length, System

__all__ = ["HoleMaker", "ends", "flanged_sides", "main_part", "sides"]

Table = TypeVar("Table")
Feature = TypeVar("Feature")
_LYING = frozenset({Face.TOP, Face.BOTTOM})
_WEBBED = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.TEE})
_HOLLOW = frozenset({Profile.BOX, Profile.TUBE})
_GAGED = frozenset({Profile.I_SHAPE, Profile.TEE})
_MOST_HOLES = 1000  # in one group


def ends(word: str) -> tuple[End, ...]:
    """The ends that left, right or both mean."""
    return tuple(End) if word == "both" else (End(word),)


def sides(word: str) -> tuple[Side, ...]:
    """The sides that near, far or both mean."""
    return tuple(Side) if word == "both" else (Side(word),)


def flanged_sides(word: str, stock: Stock) -> tuple[Side, ...]:
    """The sides of a web that near, far or both mean where flanges count; a channel has but the far one.

    Raises:
        ValueProblem: when the side asked for has no flanges.
    """
    if stock.profile is not Profile.CHANNEL:
        return sides(word)
    if word == "near":
        raise ValueProblem(f"{stock.designation} has its flanges on the far side: give far")
    return (Side.FAR,)


def _edges(word: str) -> tuple[Face, ...]:
    return (Face.TOP, Face.BOTTOM) if word == "both" else (Face(word),)


@cache  # a job asks for the same few holes over and over
def _hole_for(bolt_text: str, kind: HoleKind) -> tuple[str, BoltHole]:
    size = bolt(bolt_text)
    return size.size, hole_size(size, kind)


@dataclass(frozen=True, slots=True)
class HoleMaker:
    """Makes holes of one size: for a bolt by the table, or of a plain diameter.

    Args:
        width: diameter, or width of a slot.
        length: overall length.
        angle: of a slot's long axis, degrees.
        bolt: size of the bolt, empty for none.
        kind: of hole, None for a plain diameter.
    """

    width: Length
    length: Length
    angle: Fraction
    bolt: str
    kind: HoleKind | None

    @staticmethod
    def of(entry: HoleSize, practice: Practice, kind: HoleKind | None = None) -> HoleMaker:
        """The holes that a table asks for.

        Args:
            entry: the table.
            practice: for the bolt and the kind of hole where the table gives none.
            kind: this kind of hole instead of the table's.

        Raises:
            ValueProblem: for an unknown bolt, or when a diameter and a table's hole are both given.
        """
        if entry.diameter is not None:
            if entry.bolt is not None or entry.hole is not None:
                raise ValueProblem("diameter and a bolt's hole are both given: leave out one")
            length = entry.slot or entry.diameter
            if length < entry.diameter:
                raise ValueProblem("slot is shorter than diameter: give its overall length")
            return HoleMaker(entry.diameter, length, entry.turn, "", None)
        if entry.slot is not None:
            raise ValueProblem(
                "slot is given without diameter: give diameter, or hole = SSL or LSL for a bolt"
            )
        kind = kind or entry.hole or practice.hole
        size, hole = _hole_for(entry.bolt or practice.bolt, kind)
        return HoleMaker(hole.width, hole.length, entry.turn, size, kind)

    def at(self, x: Length, y: Length) -> Hole:
        """One hole."""
        return Hole(x, y, self.width, self.length, self.angle)

    def grid(self, xs: tuple[Length, ...], ys: tuple[Length, ...]) -> tuple[Hole, ...]:
        """A hole at each crossing."""
        return in_order(tuple(self.at(x, y) for x, y in product(xs, ys)))


def main_part(
    entry: PieceEntry,
    stock: Stock,
    grade: str,
    length: Length,
    practice: Practice,
    notes: tuple[Collector, Path],
    system: System,
) -> Part:
    """The main part of a piece, without the holes that its fittings ask for.

    Args:
        entry: the piece's table.
        stock: its section or plate.
        grade: its steel grade.
        length: overall.
        practice: for what the drawing leaves out.
        notes: where problems are noted, and the piece's path in the document.
        system: the units that messages are written in.
    """
    return Part(
        entry.mark,
        stock,
        grade,
        length,
        _end_cut(entry.left),
        _end_cut(entry.right),
        copes=_made("copes", entry.copes, lambda cope: _copes(cope, stock, practice, system), notes),
        trims=_made("trims", entry.trims, lambda trim: _trims(trim, stock), notes),
        clips=_made("clips", entry.clips, lambda clip: _clips(clip, stock), notes),
        groups=_groups(entry, stock, length, practice, notes),
        openings=_made(
            "openings", entry.openings, lambda opening: [_opening(opening, stock, length, practice)], notes
        ),
    )


def _made(
    name: str,
    entries: tuple[Table, ...],
    make: Callable[[Table], list[Feature]],
    notes: tuple[Collector, Path],
) -> tuple[Feature, ...]:
    """What the tables of one name make, the refused ones noted and left out."""
    collector, path = notes
    made: list[Feature] = []
    for index, entry in enumerate(entries):
        made.extend(collector.attempt((*path, name, index), partial(make, entry)) or ())
    return tuple(made)


def _end_cut(entry: EndEntry) -> EndCut:
    return EndCut(
        entry.bevel if entry.long == "top" else -entry.bevel,
        entry.mitre if entry.long_side == "near" else -entry.mitre,
    )


def _copes(entry: CopeEntry, stock: Stock, practice: Practice, system: System) -> list[Cope]:
    if stock.profile is Profile.TUBE:
        raise ValueProblem(f"{stock.designation} is round and has no flange to cope: leave the cope out")
    radius = practice.cope_radius if entry.radius is None else entry.radius
    for name, limit in (("length", entry.length), ("depth", entry.depth)):
        if radius > limit:
            raise ValueProblem(
                f"radius {say(radius, system)} is more than {name} {say(limit, system)}: "
                "give a smaller radius"
            )
    return [
        Cope(end, edge, entry.length, entry.depth, radius)
        for end, edge in product(ends(entry.end), _edges(entry.flange))
    ]


def _trims(entry: TrimEntry, stock: Stock) -> list[FlangeTrim]:
    if stock.profile not in _WEBBED:
        raise ValueProblem(f"{stock.designation} has no flange to trim: use copes")
    if stock.profile is Profile.TEE and entry.flange != "top":
        raise ValueProblem(f'{stock.designation} has no bottom flange: give flange = "top"')
    cut = flanged_sides(entry.side, stock)
    return [
        FlangeTrim(end, flange, side, entry.length, entry.keep)
        for end, flange, side in product(ends(entry.end), _edges(entry.flange), cut)
    ]


def _clips(entry: ClipEntry, stock: Stock) -> list[Clip]:
    if stock.profile is not Profile.PLATE:
        raise ValueProblem(f"{stock.designation} is no plate: clips are for plates; use copes")
    return [
        Clip(end, edge, entry.along, entry.across)
        for end, edge in product(ends(entry.end), _edges(entry.edge))
    ]


def _through(*, asked: bool, stock: Stock) -> bool:
    if asked and stock.profile not in _HOLLOW:
        raise ValueProblem(
            "through is for hollow sections: leave it out, a hole goes through its web or flange"
        )
    return asked


def _opening(entry: OpeningEntry, stock: Stock, length: Length, practice: Practice) -> Opening:
    face = face_named(stock, entry.face)
    radius: Length
    if entry.diameter is not None and entry.length is None and entry.depth is None and entry.radius is None:
        long = deep = entry.diameter
        radius = entry.diameter / 2
    elif entry.diameter is None and entry.length is not None and entry.depth is not None:
        long, deep = entry.length, entry.depth
        radius = practice.opening_radius if entry.radius is None else entry.radius
    else:
        raise ValueProblem(
            "an opening is round by diameter alone, or has length and depth: give one of the two"
        )
    (x,) = columns(entry.from_, (entry.x,), length, {})
    low, high = face_range(stock, face)
    given = [name for name in ("down", "up", "offset") if getattr(entry, name) is not None]
    if len(given) > 1:
        raise ValueProblem(f"{' and '.join(given)} both place its middle: give one")
    if entry.down is not None:
        y = high - entry.down
    elif entry.up is not None:
        y = low + entry.up
    else:
        y = middle(stock, face) + (entry.offset or ZERO)
    return Opening(face, x, y, long, deep, radius, through=_through(asked=entry.through, stock=stock))


def _groups(
    entry: PieceEntry, stock: Stock, length: Length, practice: Practice, notes: tuple[Collector, Path]
) -> tuple[HoleGroup, ...]:
    collector, path = notes
    groups: list[HoleGroup] = []
    first_columns: dict[str, Length] = {}
    failed: set[str] = set()
    for index, holes in enumerate(entry.holes):
        name = holes.name or f"holes {index + 1}"
        here = (*path, "holes", index)
        if name in START_WORDS:
            where = "middle" if name.startswith("cent") else f"{name} end"
            collector.add(
                (*here, "name"),
                f'"{name}" means the {where} of the part wherever holes are measured: '
                f'give the group a name of its own, like "{name} holes"',
            )
            continue
        if name in first_columns or name in failed:
            collector.add((*here, "name"), f'"{name}" is taken: give each group a name of its own')
            continue
        if holes.from_ in failed:  # what it is measured from is said already
            failed.add(name)
            continue
        group = collector.attempt(here, partial(_group, holes, name, stock, length, practice, first_columns))
        if group is None:
            failed.add(name)
        else:
            groups.append(group)
            first_columns[name] = group.holes[0].x
    return tuple(groups)


def _group(
    entry: HolesEntry,
    name: str,
    stock: Stock,
    length: Length,
    practice: Practice,
    before: dict[str, Length],
) -> HoleGroup:
    face = face_named(stock, entry.face)
    xs = columns(
        entry.from_, places(entry.x, entry.columns, entry.spacing, "columns spacing"), length, before
    )
    maker = HoleMaker.of(entry, practice)
    ys = _rows(entry, stock, face, practice)
    if len(xs) * len(ys) > _MOST_HOLES:
        raise ValueProblem(
            f"{len(xs)} columns of {len(ys)} rows are {len(xs) * len(ys)} holes: "
            f"give at most {_MOST_HOLES} in a group"
        )
    through = _through(asked=entry.through, stock=stock)
    return HoleGroup(name, face, maker.grid(xs, ys), maker.bolt, maker.kind, entry.mates, through)


def _rows(entry: HolesEntry, stock: Stock, face: Face, practice: Practice) -> tuple[Length, ...]:
    """The rows of a group: as placed, or by gage about the middle, or by the shop's practice."""
    placed = [name for name in ("down", "up", "heel", "back") if getattr(entry, name) is not None]
    gage = entry.gage
    if gage is None and face in _LYING and not placed and entry.rows is None and entry.pitch is None:
        gage = _usual_gage(stock)
    if gage is not None:
        clash = [n for n in ("rows", "pitch") if getattr(entry, n) is not None] + placed
        if clash and (placed or entry.pitch is not None or entry.rows != 2):
            raise ValueProblem(
                f"gage means two rows about the middle: leave out {', '.join(clash)}, or leave out gage"
            )
        centre = middle(stock, face) + (entry.offset or ZERO)
        half, rest = gage.parts(2)
        return centre + rest, centre - half
    down = entry.down
    if not placed and entry.offset is None and Face.NEAR in faces_of(stock) and face not in _LYING:
        down = (practice.drop,)
    given = {"down": down, "up": entry.up, "heel": entry.heel, "back": entry.back}
    if entry.offset is not None:
        given["offset"] = (entry.offset,)
    return rows(given, stock, face, entry.rows or 1, (entry.pitch, practice.pitch))


def _usual_gage(stock: Stock) -> Length:
    gage = stock.gage if isinstance(stock, Section) and stock.profile in _GAGED else None
    if gage is None:
        remedy = "back" if stock.profile is Profile.CHANNEL else "gage, or rows with offset"
        raise ValueProblem(f"{stock.designation} has no usual gage: give {remedy}")
    return gage
