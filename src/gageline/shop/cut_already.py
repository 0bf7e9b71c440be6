"""What a cutting plan is asked: what is free to cut from, and what of the jobs is cut already."""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import tomlkit

from gageline.job import Job as BuiltJob
from gageline.shop.models import Copy, Cut, Cutting, Stage, Stick
from gageline.shop.racks import rack_text, whole_rack
from gageline.shop.sticks import held_tables
from gageline.stock import Blank, Question, Rack, Saw, Steel, blanks_of, read_rack
from gageline.units import exact_text

__all__ = ["CUT", "MADE", "Source", "blank_key", "plates_done", "rack_of_now", "sources_among"]

Table = dict[str, Any]
CUT = "cut "
"""What the names of sticks that were cut by an earlier plan start with."""
MADE = "made "
"""The same of pieces that went on from the Bench without the saw knowing of them."""


@dataclass(frozen=True, slots=True)
class Source:
    """Where a mark of a plan stands: the job, its mark there, and what the saw cuts it by."""

    job: int
    mark: str
    blank: Blank


@dataclass(frozen=True, slots=True)
class _Stick:
    """A stick that went into pieces: its name in the question, its heat, the plan's marks cut from it."""

    name: str
    heat: str
    marks: tuple[str, ...]


def blank_key(blank: Blank) -> str:
    """A short name of everything the saw cuts a piece by: equal where the same is cut."""
    made = (blank.stock.designation, blank.grade, blank.length.ticks, repr(blank.left), repr(blank.right))
    return hashlib.sha256(repr(made).encode()).hexdigest()[:16]


def sources_among(jobs: Sequence[tuple[int, BuiltJob]]) -> dict[str, Source]:
    """The marks of a plan of jobs, which leads a mark that several jobs have by the job.

    Args:
        jobs: with their keys, each with pieces.
    """
    single = [(pk, blank) for pk, job in jobs for blank in blanks_of((job,))]
    together = blanks_of([job for _, job in jobs])
    pairs = zip(together, single, strict=True)
    return {blank.mark: Source(pk, alone.mark, blank) for blank, (pk, alone) in pairs}


def rack_of_now(jobs: Sequence[tuple[int, BuiltJob]], ask: Callable[[str], Question]) -> str:
    """The rack document to plan with: facts, sticks that are free, and what was cut of the jobs already.

    Args:
        jobs: with their keys, each with pieces.
        ask: the question of the jobs and a rack document.

    Raises:
        GagelineError: with everything that is wrong with the question.
    """
    sources = sources_among(jobs)
    text = rack_text()[1]
    free = [held for row, held in held_tables() if row.copy is None]
    rack = read_rack(text)
    steels = {piece.mark: piece.steel for piece in ask(whole_rack(text, free)).pieces}
    left = _left(rack, {mark: sources[mark].blank.quantity for mark in steels})
    held, done = [], []
    for stick in (*_sticks(sources), *_made(jobs, sources)):
        counted = _counted(stick, left, steels)
        if counted:
            blanks = [sources[mark].blank for mark in counted]
            held.append(_used(stick, steels[counted[0]], blanks, rack.saw))
            done.append({"stick": stick.name, "pieces": counted})
    whole = whole_rack(text, [*free, *held])
    return f"{whole.rstrip()}\n\n{tomlkit.dumps({'done': done})}" if done else whole


def plates_done(jobs: Sequence[tuple[int, BuiltJob]], question: Question) -> dict[str, int]:
    """How many of each plate of a question are cut already.

    Args:
        jobs: with their keys, each with pieces.
        question: asked of them.
    """
    sources = sources_among(jobs)
    made = Counter(mark for one in (*_sticks(sources), *_made(jobs, sources)) for mark in one.marks)
    wanted = {plate.mark: plate.quantity for one in question.plates for plate in one.plates}
    return {mark: min(made[mark], number) for mark, number in wanted.items() if made[mark]}


def _left(rack: Rack, wanted: dict[str, int]) -> Counter[str]:
    """How many of each mark are wanted that the rack's own text does not say are cut."""
    left = Counter(wanted)
    for done in rack.done:
        left.subtract(mark for mark in done.pieces if mark in wanted)
    return left


def _counted(stick: _Stick, left: Counter[str], steels: dict[str, Steel]) -> list[str]:
    """The pieces of a stick that are still wanted and of one steel; they are wanted no more."""
    counted: list[str] = []
    for mark in stick.marks:
        if left[mark] > 0 and (not counted or steels[mark] == steels[counted[0]]):
            left[mark] -= 1
            counted.append(mark)
    return counted


def _used(stick: _Stick, steel: Steel, blanks: Sequence[Blank], saw: Saw) -> Table:
    """What of a stick went into pieces, as a stick of its own; its drop is in the yard by itself."""
    length = saw.start_trim + saw.end_trim + saw.grip
    for blank in blanks:
        length += blank.length + blank.left.kerf(saw.kerf) + blank.right.kerf(saw.kerf)
    named = {"mark": stick.name, "stock": steel.section, "grade": steel.grade, "length": exact_text(length)}
    more = {"finish": steel.finish, "heat": stick.heat}
    return named | {key: value for key, value in more.items() if value}


def _sticks(sources: dict[str, Source]) -> Iterator[_Stick]:
    """What was cut of the jobs, stick by stick, and the sticks that were given to one piece as they came."""
    of_job = {(source.job, source.mark): mark for mark, source in sources.items()}
    ready = Cut.objects.filter(job__in={source.job for source in sources.values()})
    found: dict[int, tuple[Cutting, list[str]]] = {}
    for cut in ready.select_related("cutting").order_by("id"):
        mark = of_job.get((cut.job_id or 0, cut.mark))
        if mark is not None and blank_key(sources[mark].blank) == cut.blank:
            found.setdefault(cut.cutting_id, (cut.cutting, []))[1].append(mark)
    for cutting, marks in found.values():
        yield _Stick(f"{CUT}{cutting.pk}", cutting.heat, tuple(marks))
    given = Stick.objects.filter(copy__active=True, copy__cuts=None).select_related("copy__piece")
    for stick in given:
        mark = of_job.get((stick.copy.piece.job_id, stick.copy.piece.mark)) if stick.copy else None
        if mark is not None:
            yield _Stick(stick.mark, stick.heat, (mark,))


def _made(jobs: Sequence[tuple[int, BuiltJob]], sources: dict[str, Source]) -> Iterator[_Stick]:
    """Pieces that went on from the Bench, and fittings of those that went on from the Fit."""
    of_job = {(source.job, source.mark): mark for mark, source in sources.items()}
    known = Counter(mark for stick in _sticks(sources) for mark in stick.marks)
    for pk, job in jobs:
        gone = Copy.objects.filter(piece__job_id=pk, piece__active=True, active=True)
        laid = Counter(gone.exclude(stage=Stage.BENCH).values_list("piece__mark", flat=True))
        fitted = Counter(
            gone.exclude(stage__in=(Stage.BENCH, Stage.FIT)).values_list("piece__mark", flat=True)
        )
        made: Counter[str] = Counter()
        for assembly in job.assemblies:
            made[assembly.main.mark] += laid[assembly.mark]
            for fitting in assembly.fittings:
                made[fitting.part.mark] += fitted[assembly.mark]
        for own, count in made.items():
            mark = of_job[pk, own]
            for number in range(count - known[mark]):
                yield _Stick(f"{MADE}{pk} {own} {number + 1}"[:24], "", (mark,))
