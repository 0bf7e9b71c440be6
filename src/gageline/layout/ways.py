"""Where a piece is laid on a stick that is not as drawn: trim it, use it as it is, hold one end, split."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from gageline.job import Corner, Stick
from gageline.layout.ends import EndPlane, fit_end
from gageline.layout.long_tape import tape_of
from gageline.part import Assembly, End, Face, HoleGroup, Part, bounds, extent_y, extent_z, face_point
from gageline.steel import bolt, minimum_edge_distance
from gageline.units import ZERO, Length, round_to

__all__ = [
    "SAW_TRIM",
    "UNDERRUN",
    "Choice",
    "Edging",
    "EndFit",
    "Placed",
    "Way",
    "place",
    "plane_of",
    "stick_length",
]

UNDERRUN = Length.from_inches(Fraction(1, 4))
"""Shortness of the steel that connection design allows for.

Source: AISC Design Examples v16, the mill underrun of 1/4 in taken off edge distances throughout.
"""
_SIXTEENTH = Length.from_inches(Fraction(1, 16))
_LONG = Length.from_inches(12 * 30)
SAW_TRIM = Length.from_inches(Fraction(1, 4))
"""The least that a saw takes off an end cleanly. Common practice, no source."""
_NEAR_THE_END = Length.from_inches(12)  # a hole further in has edge distance to spare


class Choice(StrEnum):
    """What is done about ends that are not square and a length that is not right."""

    TRIM = "trim square"
    AS_IS = "as it is"
    HOLD = "hold one end"
    SPLIT = "split the difference"


@dataclass(frozen=True, slots=True)
class Way:
    """A choice, with what it needs to be carried out.

    Args:
        choice: trim both ends square; use the ends as they are, datum at the furthest corner of the
            left end; hold one end and throw the difference to the other; split it.
        held: the end that is held; holding the left end puts the marks where `AS_IS` does.
        saw_trim: the least that the saw takes off cleanly (common practice, no source).
    """

    choice: Choice
    held: End = End.LEFT
    saw_trim: Length = SAW_TRIM

    @property
    def words(self) -> str:
        """The choice in words."""
        return f"hold the {self.held} end" if self.choice is Choice.HOLD else str(self.choice)


@dataclass(frozen=True, slots=True)
class EndFit:
    """How one end of the steel comes to lie beside the place that the drawing gives it.

    Args:
        end: which end.
        plane: of the steel as it came.
        start: how far the furthest corner, or the trimmed end, stops short of its place; below zero
            where it runs past.
        trim: what is cut off at the furthest corner; zero where nothing is.
        as_came: the end is used as it came; otherwise it is cut, to its line or as near as the steel
            allows.
        corners: the levels from the bottom (0) to the top (1) of the end's highest and lowest points
            after coping.
        clear: what the fittings stand out past the end as drawn; None where none stands out.
    """

    end: End
    plane: EndPlane
    start: Length
    trim: Length
    as_came: bool
    corners: tuple[Fraction, Fraction]
    clear: Length | None

    def short_at(self, up: Fraction, across: Fraction) -> Length:
        """How far the steel stops short of its place; below zero where it runs past.

        Args:
            up: from the bottom edge (0) to the top edge (1).
            across: from the far side (0) to the near side (1).
        """
        if not self.as_came:
            return max(self.start, ZERO)
        return self.plane.back_at(up, across) + self.start

    @property
    def short(self) -> tuple[Length, Length, Length, Length]:
        """Shortness by corner in the order of `Corner`, a coped one where its cope leaves the end."""
        top, bottom = self.corners
        tn, tf, bn, bf = (
            self.short_at(top if corner.is_top else bottom, Fraction(int(corner.is_near)))
            for corner in Corner
        )
        return tn, tf, bn, bf

    @property
    def least(self) -> Length:
        """Shortness at the corner that reaches furthest."""
        return min(self.short)

    @property
    def most(self) -> Length:
        """Shortness at the corner that stands back furthest."""
        return max(self.short)

    @property
    def gap_least(self) -> Length | None:
        """From the face of the support to the nearest steel; below zero where the steel is in the way."""
        return None if self.clear is None else self.clear + self.least

    @property
    def gap_most(self) -> Length | None:
        """From the face of the support to the steel that stands back furthest."""
        return None if self.clear is None else self.clear + self.most

    @property
    def touches(self) -> bool:
        """Whether the steel meets the support before the fittings do."""
        return self.gap_least is not None and self.gap_least < ZERO


@dataclass(frozen=True, slots=True)
class Edging:
    """The distance from a connection's holes to the end of the steel.

    Args:
        group: the holes.
        end: the end they are at.
        drawn: as drawn, the least of its holes.
        left_over: on this stick, the least of its holes.
        lost: what the hole loses that loses most; below zero where the steel runs longer.
        limit: the least that the standard allows; None for holes without a bolt size.
    """

    group: HoleGroup
    end: End
    drawn: Length
    left_over: Length
    lost: Length
    limit: Length | None

    @property
    def refused(self) -> bool:
        """Whether the distance is less than the standard allows, or the hole lies past the steel."""
        return self.left_over < (self.limit or ZERO)


@dataclass(frozen=True, slots=True)
class Placed:
    """A piece placed on a stick.

    Args:
        way: what was chosen.
        length: of the stick at the reference temperature, between its furthest points.
        shift: from the datum of the running tape to the piece's left end as drawn.
        left: how the left end comes out; right likewise.
        edgings: of the holes near both ends.
        spare: steel left after both trims, below zero where it is too short to be trimmed.
    """

    way: Way
    length: Length
    shift: Length
    left: EndFit
    right: EndFit
    edgings: tuple[Edging, ...]
    spare: Length

    def fit(self, end: End) -> EndFit:
        """How one end comes out."""
        return self.left if end is End.LEFT else self.right

    @property
    def origin(self) -> Length:
        """From the furthest corner of the left end, as the stick came, to the piece's left end as drawn."""
        return self.left.trim + self.shift

    @property
    def possible(self) -> bool:
        """Whether it can be done: enough steel to trim, nothing in the way, no hole too near an end."""
        enough = self.way.choice is not Choice.TRIM or self.spare >= ZERO
        return enough and not any(
            (self.left.touches, self.right.touches, self.too_long, *(one.refused for one in self.edgings))
        )

    @property
    def within_design(self) -> bool:
        """Whether it can be done without asking the engineer; to a 64th, as it is printed."""
        losses = (round_to(lost, _SIXTEENTH / 4) for lost in self._losses)
        return self.possible and all(lost <= UNDERRUN for lost in losses) and not self.off_length

    @property
    def worst(self) -> Length:
        """The most end distance that a connection loses; of a piece without any, the most an end is short."""
        return max(self._losses, default=max(self.left.most, self.right.most))

    @property
    def free_short(self) -> Length:
        """How much the steel is short at ends where no connection makes up for it."""
        joined = {one.end for one in self.edgings}
        return sum((max(fit.least, ZERO) for fit in self._free if fit.end not in joined), ZERO)

    @property
    def free_long(self) -> Length:
        """How much the steel runs past its place at ends where no fitting stands out past it."""
        return sum((max(-fit.least, ZERO) for fit in self._free), ZERO)

    @property
    def _free(self) -> tuple[EndFit, ...]:
        return tuple(fit for fit in (self.left, self.right) if fit.clear is None)

    @property
    def too_long(self) -> bool:
        """Whether so much steel runs past its place that it is cut and not left."""
        return self.free_long > self.way.saw_trim

    @property
    def allowance(self) -> Length:
        """How far off a piece may be in length that frames to other steel.

        Source: AISC 303, 6.4 (11.2 in the 2022 edition): 1/16 in to 30 ft, 1/8 in over.
        """
        wanted = self.length - self.left.trim - self.right.trim + self.left.start + self.right.start
        return _SIXTEENTH * 2 if wanted > _LONG else _SIXTEENTH

    @property
    def off_length(self) -> Length:
        """What is short or long at free ends, where it is more than the allowance; else zero."""
        off = max(self.free_short, self.free_long)
        return off if round_to(off, _SIXTEENTH / 4) > self.allowance else ZERO

    @property
    def _losses(self) -> tuple[Length, ...]:
        """What each connection loses: of its holes' distance to the end, or of the steel it is welded to."""
        drilled = {one.end for one in self.edgings}
        welded = [
            fit.most for fit in (self.left, self.right) if fit.end not in drilled and fit.clear is not None
        ]
        return (*(one.lost for one in self.edgings), *welded)


def plane_of(stick: Stick, part: Part, end: End) -> EndPlane:
    """The plane of an end, with the depth and width that were read there or else those of the section."""
    read = stick.at(end)
    (low, high), (far, near) = extent_y(part.stock), extent_z(part.stock)
    widths = [width for width in (read.top_width, read.bottom_width) if width is not None]
    width = sum(widths, ZERO) / len(widths) if widths else near - far
    return fit_end(read, high - low if read.depth is None else read.depth, width)


def stick_length(stick: Stick, part: Part) -> Length:
    """The stick's length between its furthest points at the reference temperature, nominal when not read."""
    if stick.length is None:
        return part.length
    length = tape_of(stick).length(stick.length)
    if stick.along is None:
        return length
    return length + sum((plane_of(stick, part, end).back(stick.along) for end in End), ZERO)


def place(assembly: Assembly, stick: Stick, way: Way, tape: Length) -> Placed:
    """Place a piece on a stick.

    Args:
        assembly: the piece as drawn.
        stick: as it lies.
        way: what is to be done about its ends.
        tape: the smallest division of the tape; an end open by no more counts as square.
    """
    part, length = assembly.main, stick_length(stick, assembly.main)
    planes = {end: plane_of(stick, part, end) for end in End}
    trims = {end: _trim(planes[end], part, end, way, tape) for end in End}
    over = length - part.length
    spare = over - trims[End.LEFT] - trims[End.RIGHT]
    shift = ZERO
    if way.choice is Choice.TRIM:
        trims[End.RIGHT] = max(over - trims[End.LEFT], ZERO)
        starts = {End.LEFT: ZERO, End.RIGHT: max(-spare, ZERO)}
    else:
        shift = _shift(way, over)
        starts = {End.LEFT: -shift, End.RIGHT: shift - over}
        trims = dict.fromkeys(End, ZERO)
    left, right = (
        EndFit(
            end,
            planes[end],
            starts[end],
            trims[end],
            way.choice is not Choice.TRIM and part.cut(end).square,
            _levels(part, end),
            _clear(assembly, end),
        )
        for end in End
    )
    edgings = [
        edging for fit in (left, right) for group in part.groups if (edging := _edging(part, group, fit))
    ]
    return Placed(way, length, shift, left, right, tuple(edgings), spare)


def _shift(way: Way, over: Length) -> Length:
    """How far the whole piece is moved along the stick."""
    if way.choice is Choice.SPLIT:
        return over / 2
    return over if way.choice is Choice.HOLD and way.held is End.RIGHT else ZERO


def _trim(plane: EndPlane, part: Part, end: End, way: Way, tape: Length) -> Length:
    """What comes off the furthest corner: nothing of a square end, else all that is open and a saw's trim."""
    square = plane.out_of_square <= tape and part.cut(end).square
    return ZERO if square else plane.out_of_square + way.saw_trim


def _levels(part: Part, end: End) -> tuple[Fraction, Fraction]:
    """The highest and the lowest level of an end that its copes leave, from 0 at the bottom to 1."""
    cope = dict.fromkeys((Face.TOP, Face.BOTTOM), ZERO)
    for one in part.copes:
        if one.end is end:
            cope[one.edge] = max(cope[one.edge], one.depth)
    low, high = extent_y(part.stock)
    return (high - cope[Face.TOP] - low).ratio(high - low), cope[Face.BOTTOM].ratio(high - low)


def _clear(assembly: Assembly, end: End) -> Length | None:
    """How far the fittings of an end stand out past it as drawn; None where none does."""
    out = ZERO
    for fitting in assembly.fittings:
        if fitting.end is end and fitting.on is not None:
            left, right = bounds(fitting)[0]
            out = max(out, -left if end is End.LEFT else right - assembly.main.length)
    return out or None


def _edging(part: Part, group: HoleGroup, fit: EndFit) -> Edging | None:
    """The end distances of a group; None where it is not near the end."""
    (low, high), (far, near) = extent_y(part.stock), extent_z(part.stock)
    drawn, over, lost = [], [], []
    for hole in group.holes:
        _, y, z = face_point(part.stock, group.face, hole.x, hole.y)
        end_x = part.end_x(fit.end, y, z)
        as_drawn = hole.x - end_x if fit.end is End.LEFT else end_x - hole.x
        short = fit.short_at((y - low).ratio(high - low), (z - far).ratio(near - far))
        drawn.append(as_drawn)
        over.append(as_drawn - short)
        lost.append(short)
    if min(drawn) > _NEAR_THE_END:
        return None
    limit = None
    if group.bolt and group.kind is not None:
        to_edge = any(hole.is_slot and hole.angle == 0 for hole in group.holes)
        limit = minimum_edge_distance(bolt(group.bolt), group.kind, slot_to_edge=to_edge)
    return Edging(group, fit.end, min(drawn), min(over), max(lost), limit)
