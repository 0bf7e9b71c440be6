"""What is struck or punched on a face, and the tape readings that place it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from gageline.layout.reading import Reading, Scale, across, along, printed_length
from gageline.part import End, Face, Part
from gageline.units import ZERO, Length, System, is_metric, round_to

__all__ = ["Bench", "Mark", "MarkKind", "Shift", "Spot", "bench_of"]

_METRIC_STEPS = (Length.from_mm(1), Length.from_mm(Fraction(1, 2)), Length.from_mm(Fraction(1, 10)))
_FINEST_INCH = Length.from_inches(Fraction(1, 64))


class MarkKind(StrEnum):
    """How a mark is made and what is done at it."""

    CUT_LINE = "cut line"
    CENTRE_LINE = "centre line"
    CROSS_LINE = "cross line"
    ROW_LINE = "row line"
    EDGE_LINE = "edge line"
    HOLE = "hole centre"
    SLOT_END = "slot end"
    RADIUS_CENTRE = "radius centre"


@dataclass(frozen=True, slots=True)
class Spot:
    """A place on a face as the fitter finds it.

    Args:
        at: its true place: x from the part's left end, and the face's own y.
        struck: where the readings put it.
        x: from the left end.
        y: from the edge or line that rows are read from.
        y_back: the same across from the other edge.
    """

    at: tuple[Length, Length]
    struck: tuple[Length, Length]
    x: Reading
    y: Reading
    y_back: Reading


@dataclass(frozen=True, slots=True)
class Mark:
    """A point to punch, or a line to strike from one spot to another.

    Args:
        face: the face it is on.
        kind: how it is made.
        spot: the point, or where the line starts.
        for_: the feature it is for.
        to: where the line ends; None for a point.
        size: diameter or slot width at a hole, radius at a radius centre; None for lines.
    """

    face: Face
    kind: MarkKind
    spot: Spot
    for_: str
    to: Spot | None = None
    size: Length | None = None

    @property
    def x(self) -> Reading:
        """The reading along the part, of a line the one where it starts."""
        return self.spot.x

    @property
    def y(self) -> Reading:
        """The reading across the face, of a line the one where it starts."""
        return self.spot.y

    @property
    def runs_across(self) -> bool:
        """Whether it is a line square across the part, at one reading along it."""
        return self.to is not None and self.to.at[0] == self.spot.at[0]

    @property
    def spots(self) -> tuple[Spot, ...]:
        """The point, or both ends of the line."""
        return (self.spot,) if self.to is None else (self.spot, self.to)


@dataclass(frozen=True, slots=True)
class Shift:
    """How far a pattern is moved as one, so that its reference hole is on the tape.

    Args:
        x: along the part.
        y: on the tape that rows are read from.
        y_back: on the tape from the other edge.
    """

    x: Length
    y: Length
    y_back: Length


@dataclass(frozen=True, slots=True)
class Bench:
    """A part laid out to be marked, with the tape that marks it.

    Args:
        part: the part.
        tape: the tape's smallest division.
        system: the units that readings are printed in.
        other: the division of the tape's side in inches, where a job in inches reads millimetres.
    """

    part: Part
    tape: Length
    system: System
    other: Length | None = None

    def metric(self) -> Bench:
        """The same bench on the millimetre side of the tape, to a step that is no coarser."""
        if self.is_metric:
            return self
        step = next((step for step in _METRIC_STEPS if step <= self.tape), _METRIC_STEPS[-1])
        return replace(self, tape=step, other=self.tape)

    def own(self) -> Bench:
        """The same bench on the side of the tape that the job is in."""
        return self if self.other is None else replace(self, tape=self.other, other=None)

    @property
    def is_metric(self) -> bool:
        """Whether it is read on the millimetre side of the tape."""
        return self.system is System.MM or self.tape.ticks % _FINEST_INCH.ticks != 0

    @property
    def read_in(self) -> System:
        """The units of the side of the tape that it is read on."""
        return System.MM if self.is_metric else self.system

    def x(self, at: Length, end: End = End.LEFT) -> Reading:
        """The reading along the part, rounded to the tape."""
        return self._read(along(self.part, end), at)

    def y(self, face: Face, at: Length) -> Reading:
        """The reading across a face from where rows are read, rounded to the tape."""
        return self._read(across(self.part.stock, face)[0], at)

    def _read(self, scale: Scale, at: Length, shift: Length | None = None) -> Reading:
        moved = scale.shift(at, self.tape) if shift is None else shift
        return scale.reading(at, moved, self.system, metric=self.is_metric)

    def spot(self, face: Face, x: Length, y: Length, shift: Shift | None = None) -> Spot:
        """A spot on a face, each reading rounded once, or moved with the pattern it belongs to.

        Args:
            face: the face.
            x: from the left end.
            y: the face's own y.
            shift: of the pattern; None to round the spot on its own.
        """
        moved = shift or self.shift(face, x, y)
        first, back = across(self.part.stock, face)
        return Spot(
            (x, y),
            (x + moved.x, y + moved.y * first.sign),
            self._read(along(self.part), x, moved.x),
            self._read(first, y, moved.y),
            self._read(back, y, moved.y_back),
        )

    def shift(self, face: Face, x: Length, y: Length) -> Shift:
        """What brings a reference point onto the tape, along and across."""
        first, back = across(self.part.stock, face)
        tape = self.tape
        return Shift(along(self.part).shift(x, tape), first.shift(y, tape), back.shift(y, tape))

    def line(
        self,
        face: Face,
        kind: MarkKind,
        start: tuple[Length, Length],
        stop: tuple[Length, Length],
        for_: str,
    ) -> Mark:
        """A line to strike between two places on a face."""
        return Mark(face, kind, self.spot(face, *start), for_, self.spot(face, *stop))

    def say(self, length: Length) -> str:
        """A length rounded to the tape and printed, for checks and sizes."""
        rounded = round_to(length, self.tape)
        sign = "-" if rounded < ZERO else ""
        return f"{sign}{printed_length(abs(rounded), self.system, metric=self.is_metric)}"

    def exact(self, length: Length) -> str:
        """A length printed as it is: of drills, radii and the spacing of a pattern."""
        in_tenths = length.ticks % _METRIC_STEPS[-1].ticks == 0  # a drill in inches keeps its name
        return printed_length(length, self.system, metric=self.is_metric and in_tenths)


def bench_of(part: Part, tape: Length, system: System) -> Bench:
    """The bench of a part; one that was drawn in millimetres, as its length says, is read in them.

    A length that was worked out says nothing: it may come to whole millimetres by chance.

    Args:
        part: what is marked.
        tape: the smallest division of the shop's tape.
        system: the units of the job.
    """
    bench = Bench(part, tape, system)
    drawn_in_mm = system is System.FT_IN and not part.derived and is_metric(part.length)
    return bench.metric() if drawn_in_mm else bench
