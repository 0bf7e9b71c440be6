"""What a drawing says in words and numbers: readings, holes, copes, ends and fittings."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from gageline.job import Job
from gageline.layout import bench_of
from gageline.part import Clip, Cope, End, Face, FlangeTrim, Hole, HoleGroup, Opening, Part, Side, extent_y
from gageline.sheets.furniture import bolt_text
from gageline.steel import HoleKind, Profile
from gageline.units import ZERO, Length, Slope, System, is_metric, millimetres, round_to, write_length

__all__ = ["WEB_FACES", "Scribe", "is_scattered", "long_point", "short_name"]

WEB_FACES = frozenset({Face.NEAR, Face.FAR, Face.LEG_A, Face.FACE})
"""The faces that an elevation looks at."""
_KINDS = {HoleKind.OVS: "oversize", HoleKind.SSL: "(short)", HoleKind.LSL: "(long)"}
_BEVELLED = ("top", "bottom"), ("toe of leg A", "heel")  # of other parts, then of an angle
_MITRED = ("near side", "far side"), ("heel", "toe of leg B")
_MANY_ROWS = 4
_NAME = 24


def is_scattered(group: HoleGroup) -> bool:
    """Whether holes lie on so many lines at no pitch that only a list can say where."""
    lines = sorted({hole.y for hole in group.holes})
    return len(lines) > _MANY_ROWS and len({b - a for a, b in pairwise(lines)}) > 1


def short_name(group: HoleGroup) -> str:
    """The name of a hole group, cut off where it is long."""
    return group.name if len(group.name) <= _NAME else f"{group.name[: _NAME - 1]}…"


def long_point(*, flat: bool, high: bool, is_angle: bool) -> str:
    """Where the long point of an end lies that is cut off square.

    Args:
        flat: the slope is seen on the flange or the outstanding leg, else on the web or the standing leg.
        high: it lies at the top or the near side.
        is_angle: of an angle, whose legs have a heel and a toe.
    """
    return (_MITRED if flat else _BEVELLED)[is_angle][not high]


@dataclass(frozen=True, slots=True)
class Scribe:
    """Writes lengths and features in the units of a job.

    Attributes:
        system: feet and inches, or millimetres.
        tape: the smallest division of the shop's tape.
        unit: what is written after millimetres; nothing where the whole job is in them.
        derived: the lengths were worked out, so that whole millimetres come about by chance.
    """

    system: System
    tape: Length
    unit: str = ""
    derived: bool = False

    @staticmethod
    def of(job: Job, part: Part | None = None) -> Scribe:
        """The writer of a job, or of one part of it: one that was drawn in millimetres is read in them.

        Args:
            job: in whose units and with whose tape is written.
            part: that is written of; None for the whole job.
        """
        if part is None:
            return Scribe(job.system, job.practice.tape)
        bench = bench_of(part, job.practice.tape, job.system)
        if bench.is_metric and job.system is System.FT_IN:
            return Scribe(System.MM, bench.tape, " mm")
        return Scribe(job.system, bench.tape, derived=part.derived)

    def tell(self, length: Length) -> str:
        """A dimension rounded once, to the tape."""
        given = "" if self.derived else self._metric(length)
        return given or self._write(round_to(length, self.tape))

    def fine(self, length: Length) -> str:
        """A size of a hole or a plate, to 1/64 in or 0.1 mm."""
        return self._metric(length) or self._write(length)

    def _write(self, length: Length) -> str:
        return f"{write_length(length, self.system, 64)}{self.unit}"

    def _metric(self, length: Length) -> str:
        """What was given in millimetres in a job of feet and inches, as it was given; else nothing."""
        if self.system is System.FT_IN and is_metric(length):
            return f"{millimetres(length)} mm"
        return ""

    def hole_size(self, hole: Hole) -> str:
        """Diameter of a hole, or width by length of a slot."""
        if not hole.is_slot:
            return f"Ø{self.fine(hole.width)}"
        turn = f" at {float(hole.angle):g}°" if hole.angle % 180 else ""
        return f"slots {self.fine(hole.width)} x {self.fine(hole.length)}{turn}"

    def holes(self, group: HoleGroup, part: Part, *, rows: bool) -> str:
        """A hole group as a call-out: how many, which size, on which lines.

        Args:
            group: the holes.
            part: that they are in.
            rows: whether to say how far down the rows lie.
        """
        text = f"{len(group.holes)} {self.hole_size(group.holes[0])}"
        if is_scattered(group):
            return f"{text}, see the list of {short_name(group)}"
        where = [self._gages(group, part, rows=rows)]
        if rows and group.face in WEB_FACES:
            where.append(self._rows(group, part))
        if part.profile in {Profile.BOX, Profile.TUBE}:
            where.append("through both walls" if group.through else f"{group.face} wall only")
        return ", ".join([text, *(words for words in where if words)])

    def _gages(self, group: HoleGroup, part: Part, *, rows: bool) -> str:
        """Where the lines of holes lie on a flange or a leg."""
        lines = sorted({hole.y for hole in group.holes})
        if group.face is Face.LEG_B or (group.face is Face.LEG_A and rows):
            return f"gage {', '.join(map(self.tell, lines))} from heel"
        if group.face in WEB_FACES:
            return ""
        if part.profile is Profile.CHANNEL:
            return f"{', '.join(self.tell(-line) for line in reversed(lines))} from back"
        if lines == [ZERO]:
            return "on centre line"
        if len(lines) == 2 and abs(lines[0] + lines[1]).ticks <= 1:
            return f"gage {self.tell(lines[1] - lines[0])}"
        sides = [f"{self.tell(abs(y))} {'near' if y > ZERO else 'far'}" if y else "centre" for y in lines]
        return f"lines {', '.join(sides)}"

    def _rows(self, group: HoleGroup, part: Part) -> str:
        if group.face is Face.LEG_A:
            return ""
        top = extent_y(part.stock)[1]
        return f"{self.run_of(sorted({top - hole.y for hole in group.holes}))} down"

    def run_of(self, places: Sequence[Length]) -> str:
        """Rows as running readings; many at one pitch as first, last and pitch."""
        steps = {b - a for a, b in pairwise(places)}
        if len(places) > _MANY_ROWS and len(steps) == 1:
            pitch = self.tell(steps.pop())
            return f"{self.tell(places[0])} to {self.tell(places[-1])} at {pitch}"
        return ", ".join(map(self.tell, places))

    def cope(self, copes: Sequence[Cope]) -> str:
        """A cope, or two alike at top and bottom: length by depth by radius."""
        cope = copes[0]
        which = "copes top and bottom" if len(copes) > 1 else f"{cope.edge} cope"
        size = f"{self.tell(cope.length)} x {self.tell(cope.depth)}"
        return f"{which} {size}, R {self.fine(cope.radius)}"

    def trim(self, trim: FlangeTrim) -> str:
        """A flange cut back on one side."""
        left = f"cut to {self.tell(trim.keep)} from web" if trim.keep else "cut flush"
        side = "near" if trim.side is Side.NEAR else "far"
        return f"{trim.flange} flange {left}, {side} side, {self.tell(trim.length)}"

    def clip(self, clip: Clip) -> str:
        """A corner snipped off."""
        return f"clip {self.tell(clip.along)} x {self.tell(clip.across)}"

    def opening(self, opening: Opening, part: Part) -> str:
        """An opening: its size and how far down its middle lies."""
        if opening.is_round:
            size = f"Ø{self.tell(opening.length)}"
        else:
            size = f"{self.tell(opening.length)} x {self.tell(opening.depth)}, R {self.fine(opening.radius)}"
        if opening.face not in WEB_FACES:
            return f"opening {size}"
        down = extent_y(part.stock)[1] - opening.y
        return f"opening {size}, middle {self.tell(down)} down"

    def bevel(self, slope: Slope, longer: str) -> str:
        """A cut out of square."""
        return f"cut {slope.text(self.system)}, long at {longer}"

    def end(self, part: Part, end: End) -> Iterable[str]:
        """What is said of an end that is not cut square: in the web plane, then in the flange plane."""
        cut = part.cut(end)
        is_angle = part.profile is Profile.ANGLE
        for lean, flat in ((cut.bevel, False), (cut.mitre, True)):
            longer = long_point(flat=flat, high=lean.ratio > 0, is_angle=is_angle)
            yield self.bevel(lean, longer) if lean else ""

    def kind(self, group: HoleGroup) -> str:
        """What a hole is for, in words of the note under the drawing."""
        kind = _KINDS.get(group.kind, "") if group.kind else ""
        bolt = f"for {bolt_text(group.bolt)} bolts" if group.bolt else ""
        return " ".join(word for word in (kind, bolt) if word)
