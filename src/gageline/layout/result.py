"""The whole layout of a piece: what cards, files and pages are made from."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.job import Practice
from gageline.layout.accuracy import Accuracy, accuracy
from gageline.layout.holes import patterns
from gageline.layout.mark import Bench, Mark, bench_of
from gageline.layout.marks import marks_of
from gageline.layout.seats import Seat, overall, seat_of
from gageline.layout.setups import FaceSetups, Template, plan_setups
from gageline.layout.step import Step
from gageline.layout.steps import part_steps
from gageline.layout.tongues import cap_of
from gageline.part import Assembly, Face, Part, faces_of
from gageline.units import Length, System

__all__ = ["Layout", "PartLayout", "lay_out"]


@dataclass(frozen=True, slots=True)
class PartLayout:
    """One part with everything to strike on it.

    Args:
        part: the geometry of record.
        quantity: how many of it are in one piece.
        marks: on all faces, in the order of work.
        steps: numbered, in the order of work.
        setups: both ways to mark the holes, one plan a face.
        accuracy: the largest errors from rounding to the tape.
    """

    part: Part
    quantity: int
    marks: tuple[Mark, ...]
    steps: tuple[Step, ...]
    setups: tuple[FaceSetups, ...]
    accuracy: Accuracy

    def on(self, face: Face) -> tuple[Mark, ...]:
        """The marks of one face."""
        return tuple(mark for mark in self.marks if mark.face is face)

    @property
    def faces(self) -> tuple[Face, ...]:
        """The faces of the part, in the order they unfold from the top."""
        return faces_of(self.part.stock)

    @property
    def by_hand(self) -> int:
        """Placements of the square, every line squared by hand."""
        return sum(plan.by_hand for plan in self.setups)

    @property
    def with_template(self) -> int:
        """The fewest placings of the hole template."""
        return sum(plan.with_template for plan in self.setups)

    @property
    def saving(self) -> int:
        """Placements saved by the template; below zero where the square is quicker."""
        return self.by_hand - self.with_template


@dataclass(frozen=True, slots=True)
class Layout:
    """A piece laid out: its main part, each distinct fitting once, and where the fittings sit.

    Args:
        assembly: the geometry of record.
        main: the main part, its steps including the fitting-up.
        fittings: one for each distinct fitting part, in the order they first appear.
        seats: where each fitting sits, in the assembly's order.
        out_to_out: over everything, end to end.
        tape: the tape's smallest division.
        system: the units that readings are printed in.
        datum: where the running tape of the main part starts, in words.
    """

    assembly: Assembly
    main: PartLayout
    fittings: tuple[PartLayout, ...]
    seats: tuple[Seat, ...]
    out_to_out: Length
    tape: Length
    system: System
    datum: str

    @property
    def accuracy(self) -> Accuracy:
        """The largest errors over all parts of the piece."""
        every = [self.main.accuracy, *(part.accuracy for part in self.fittings)]
        return Accuracy(
            mark=max(one.mark for one in every),
            hole_to_hole=max(one.hole_to_hole for one in every),
            in_pattern=max(one.in_pattern for one in every),
        )


def lay_out(assembly: Assembly, practice: Practice, system: System) -> Layout:
    """Lay a piece out: every mark, step, error and set-up of its main part and of its fittings.

    Args:
        assembly: the piece.
        practice: the shop's tape and hole template.
        system: the units that readings are printed in.

    Raises:
        ValueProblem: when the tape or the template of the practice cannot be used.
    """
    template = Template(practice.template_rows, practice.template_gages)
    bench = bench_of(assembly.main, practice.tape, system)
    seats = tuple(seat_of(bench, fitting, cap_of(assembly, fitting)) for fitting in assembly.fittings)
    span = overall(assembly.main, assembly.fittings)
    counts: dict[Part, int] = {}
    for fitting in assembly.fittings:
        counts[fitting.part] = counts.get(fitting.part, 0) + 1
    return Layout(
        assembly=assembly,
        main=_part_layout(bench, 1, template, seats, span),
        fittings=tuple(
            _part_layout(bench_of(part, practice.tape, system), count, template)
            for part, count in counts.items()
        ),
        seats=seats,
        out_to_out=span[1] - span[0],
        tape=practice.tape,
        system=system,
        datum="left end" if assembly.main.left.square else "left end, long point",
    )


def _part_layout(
    bench: Bench,
    quantity: int,
    template: Template,
    seats: tuple[Seat, ...] = (),
    span: tuple[Length, Length] | None = None,
) -> PartLayout:
    found = patterns(bench)
    own = marks_of(bench, found)
    marks = own + tuple(mark for seat in seats for mark in seat.lines)
    return PartLayout(
        part=bench.part,
        quantity=quantity,
        marks=marks,
        steps=part_steps(bench, found, seats, span),
        setups=plan_setups(found, template),
        accuracy=accuracy(marks, found),
    )
