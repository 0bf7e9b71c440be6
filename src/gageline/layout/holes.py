"""Marks of hole patterns: one reference on the tape, every other hole exact from it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from gageline.layout.cuts import opposite_wall, other_wall
from gageline.layout.mark import Bench, Mark, MarkKind, Shift, Spot
from gageline.layout.reading import Datum, Reading, across
from gageline.part import Face, Hole, HoleGroup, Part, face_range, faces_of
from gageline.units import ZERO, Length, System, round_to

__all__ = ["MIDDLE", "Column", "Pattern", "centre_marks", "centred_faces", "hole_marks", "patterns"]

_FROM_HEEL = frozenset({Datum.HEEL, Datum.PAST_HEEL})
MIDDLE = "middle of the part"
_NEARLY = Length(2)  # the middle of an odd length is half a tick off, and so is that of a pattern
_TENTH = Length.from_mm(Fraction(1, 10))
_FINEST = {System.FT_IN: Length.from_inches(Fraction(1, 64)), System.MM: _TENTH}
_WRITTEN = {System.FT_IN: Length.from_inches(Fraction(1, 256)), System.MM: Length.from_mm(Fraction(1, 100))}
"""What a spacing is printed to without a remainder, so that it is kept as it is."""


@dataclass(frozen=True, slots=True)
class Column:
    """The holes on one cross line.

    Args:
        x: the cross line's reading.
        rows: readings of its holes, in the order they are struck.
    """

    x: Reading
    rows: tuple[Reading, ...]


@dataclass(frozen=True, slots=True)
class Pattern:
    """A group of holes with the readings that place them on one face.

    Args:
        name: what it is called on cards.
        group: the holes of record.
        face: the face they are struck on; the far wall has a pattern of its own.
        spots: one to a hole, in the order of `group.holes`.
        shifts: what rounding added to each hole; the same for all holes of a mating pattern, but for what
            puts a spacing that no tape has, as on a slope, on its finest division.
        columns: the cross lines from the datum on, each with its rows.
    """

    name: str
    group: HoleGroup
    face: Face
    spots: tuple[Spot, ...]
    shifts: tuple[Shift, ...]
    columns: tuple[Column, ...]

    @property
    def is_grid(self) -> bool:
        """Whether every cross line has the same rows."""
        return len({tuple((row.tape, row.from_) for row in column.rows) for column in self.columns}) == 1

    @property
    def rows(self) -> tuple[Reading, ...]:
        """Every row of the pattern once, in the order they are struck."""
        return _rows(self.spots)


def patterns(bench: Bench) -> tuple[Pattern, ...]:
    """Every pattern of a part, a group through both walls of a hollow section once on each.

    Args:
        bench: the part and the tape.

    Returns:
        Patterns in the order of the part's groups.
    """
    found: list[Pattern] = []
    for group in bench.part.groups:
        if group.face in faces_of(bench.part.stock):
            found.append(_pattern(bench, group, group.face, group.name))
            if group.through:
                found.append(_pattern(bench, group, opposite_wall(group.face), other_wall(group.name)))
    return tuple(found)


def _held(bench: Bench, group: HoleGroup) -> Bench:
    """The bench with the tape that a pattern is read on, whatever side the length of its part is read on.

    A pattern spaced in millimetres has no readings in fractions of an inch; it is read on the millimetre
    side of the tape, and one that is spaced in inches on the other.
    """
    if bench.system is System.MM or not group.mates:
        return bench
    first = group.holes[0]
    steps = [length for hole in group.holes for length in (hole.x - first.x, hole.y - first.y)]
    in_tenths = all(_nearly(step, _TENTH) for step in steps)
    if all(_nearly(step, _FINEST[System.FT_IN]) for step in steps):
        return bench if in_tenths else bench.own()
    return bench.metric() if in_tenths else bench.own()


def _nearly(step: Length, division: Length) -> bool:
    """Whether a spacing is a whole number of divisions, within what rounding leaves of it."""
    return abs(round_to(step, division) - step) <= _NEARLY


def _onto_tape(step: Length, bench: Bench) -> Length:
    """What puts a spacing on the finest division where it cannot be written as it is."""
    system = bench.read_in
    if step.ticks % _WRITTEN[system].ticks == 0:
        return ZERO
    return round_to(step, _FINEST[system]) - step


def _moved(bench: Bench, face: Face, one: Shift, step: tuple[Length, Length]) -> Shift:
    """The shift of a hole that lies so far from the reference hole of its pattern."""
    x, y = (_onto_tape(length, bench) for length in step)
    first, back = across(bench.part.stock, face)
    return Shift(one.x + x, one.y + y * first.sign, one.y_back + y * back.sign)


def _pattern(bench: Bench, group: HoleGroup, face: Face, name: str) -> Pattern:
    bench = _held(bench, group)
    reference = group.holes[0]
    if group.mates:
        one = bench.shift(face, reference.x, reference.y)
        steps = ((hole.x - reference.x, hole.y - reference.y) for hole in group.holes)
        shifts = tuple(_moved(bench, face, one, step) for step in steps)
    else:
        shifts = tuple(bench.shift(face, hole.x, hole.y) for hole in group.holes)
    spots = tuple(
        bench.spot(face, hole.x, hole.y, shift) for hole, shift in zip(group.holes, shifts, strict=True)
    )
    by_line = sorted(spots, key=lambda spot: spot.x.tape)
    columns = tuple(
        Column(same[0].x, _rows(tuple(same)))
        for same in (list(line) for _, line in groupby(by_line, key=lambda spot: spot.x.tape))
    )
    return Pattern(name, group, face, spots, shifts, columns)


def _rows(spots: tuple[Spot, ...]) -> tuple[Reading, ...]:
    """Distinct rows, from the top or the near side down, on legs from the heel out."""
    ordered = sorted(spots, key=lambda s: s.at[1] if s.y.from_ in _FROM_HEEL else -s.at[1])
    return tuple({(spot.y.tape, spot.y.from_): spot.y for spot in ordered}.values())


def hole_marks(bench: Bench, pattern: Pattern) -> Iterator[Mark]:
    """Cross lines, row lines and centres of a pattern, and both arc centres of every slot."""
    bench = _held(bench, pattern.group)
    yield from _lines(bench, pattern)
    for hole, spot, shift in zip(pattern.group.holes, pattern.spots, pattern.shifts, strict=True):
        yield Mark(pattern.face, MarkKind.HOLE, spot, pattern.name, size=hole.width)
        if hole.is_slot:
            for at in _slot_ends(hole):
                moved = _moved(bench, pattern.face, shift, (at[0] - hole.x, at[1] - hole.y))
                end = bench.spot(pattern.face, *at, moved)
                yield Mark(pattern.face, MarkKind.SLOT_END, end, pattern.name, size=hole.width)


def _slot_ends(hole: Hole) -> tuple[tuple[Length, Length], ...]:
    """The centres of a slot's two round ends."""
    half = (hole.length - hole.width) / 2
    turn = math.radians(hole.angle)
    dx = Length(round(half.ticks * math.cos(turn)))
    dy = Length(round(half.ticks * math.sin(turn)))
    return (hole.x - dx, hole.y - dy), (hole.x + dx, hole.y + dy)


def _lines(bench: Bench, pattern: Pattern) -> Iterator[Mark]:
    """Each cross line and each row line, a hole's width past the outermost holes, on the steel."""
    face, name = pattern.face, pattern.name
    low, high = face_range(bench.part.stock, face)
    reach = max(hole.width for hole in pattern.group.holes)
    xs, ys = ([spot.at[axis] for spot in pattern.spots] for axis in (0, 1))
    top, bottom = min(max(ys) + reach, high), max(min(ys) - reach, low)
    left, right = max(min(xs) - reach, ZERO), min(max(xs) + reach, bench.part.length)
    for number in _first_of(pattern, "x"):
        x, shift = pattern.spots[number].at[0], pattern.shifts[number]
        start, stop = (bench.spot(face, x, y, shift) for y in (top, bottom))
        yield Mark(face, MarkKind.CROSS_LINE, start, name, stop)
    for number in _first_of(pattern, "y"):
        y, shift = pattern.spots[number].at[1], pattern.shifts[number]
        start, stop = (bench.spot(face, x, y, shift) for x in (left, right))
        yield Mark(face, MarkKind.ROW_LINE, start, name, stop)


def _first_of(pattern: Pattern, axis: str) -> tuple[int, ...]:
    """Numbers of the first spot on each distinct line, by its reading along or across."""
    readings = [spot.x if axis == "x" else spot.y for spot in pattern.spots]
    keys = [(reading.tape, reading.from_) for reading in readings]
    return tuple(keys.index(key) for key in dict.fromkeys(keys))


def centre_marks(bench: Bench) -> Iterator[Mark]:
    """The part's middle, struck on every face where a pattern or an opening lies about it."""
    part = bench.part
    middle = part.length.parts(2)[0]
    for face in centred_faces(part):
        low, high = face_range(part.stock, face)
        yield bench.line(face, MarkKind.CENTRE_LINE, (middle, high), (middle, low), MIDDLE)


def centred_faces(part: Part) -> tuple[Face, ...]:
    """The faces where a pattern or an opening lies about the middle of the length."""
    called = {opening.face for opening in part.openings if abs(opening.x * 2 - part.length) <= _NEARLY}
    for group in part.groups:
        if abs(group.holes[0].x + group.holes[-1].x - part.length) <= _NEARLY:
            called.add(group.face)
    return tuple(face for face in faces_of(part.stock) if face in called)
