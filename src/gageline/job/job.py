"""A job: facts, practice and pieces, built from its document."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path as FilePath

from gageline.errors import ValueProblem
from gageline.job.angles import join_angles
from gageline.job.collecting import Collector, Path
from gageline.job.cutting import main_part
from gageline.job.document import JobDocument, JobFacts, PieceEntry, PracticeEntry
from gageline.job.end_plates import join_end_plates
from gageline.job.joining import Joined
from gageline.job.lines import line_of, lines_of_keys
from gageline.job.plates import join_plates, join_stiffeners
from gageline.job.practice import Practice, default_practice
from gageline.job.problems import JobProblems, Problem
from gageline.job.reading import place, read_document, read_text
from gageline.part import Assembly, Finding, FittingKind, Part, check_assembly, opposite_hand
from gageline.steel import Measure, Stock, bolt, find, grade, usual_grade
from gageline.units import System, Unit

__all__ = ["Job", "build_job", "check_job", "open_job", "read_job"]


@dataclass(frozen=True, slots=True)
class Job:
    """A job as it goes through the shop.

    Args:
        facts: name, number, units and notes.
        practice: the shop's defaults.
        assemblies: the pieces, in the order of the document, every fitting with its mark.
    """

    facts: JobFacts
    practice: Practice
    assemblies: tuple[Assembly, ...]

    @property
    def system(self) -> System:
        """The units that the job is read and written in."""
        return self.facts.units

    def piece(self, mark: str) -> Assembly:
        """The piece of a mark.

        Raises:
            ValueProblem: when no piece has it.
        """
        for assembly in self.assemblies:
            if assembly.mark == mark:
                return assembly
        known = ", ".join(assembly.mark for assembly in self.assemblies[:20])
        raise ValueProblem(f'there is no piece "{mark}": the job has {known}')


def open_job(path: FilePath) -> Job:
    """The job in a file.

    Raises:
        JobProblems: with everything that is wrong with it.
    """
    return read_job(read_text(path))


def read_job(text: str) -> Job:
    """The job of a document's text.

    Raises:
        JobProblems: with everything that is wrong with it, each with its path and line.
    """
    document = read_document(text)
    collector = Collector()
    job = _build(document, collector)
    if collector.found:
        lines = lines_of_keys(text)
        raw = document.model_dump(by_alias=True)
        problems = [
            Problem(place(path, raw), message, line_of(path, lines)) for path, message in collector.found
        ]
        raise JobProblems(tuple(sorted(dict.fromkeys(problems), key=lambda problem: problem.line or 0)))
    return job


def build_job(document: JobDocument) -> Job:
    """The job of a document that did not come from a text.

    Raises:
        JobProblems: with everything that is wrong with it, each with its path.
    """
    collector = Collector()
    job = _build(document, collector)
    if collector.found:
        raw = document.model_dump(by_alias=True)
        raise JobProblems(tuple(Problem(place(path, raw), message) for path, message in collector.found))
    return job


def check_job(job: Job) -> tuple[Finding, ...]:
    """What the rules of the trade say about every piece of a job, each finding once."""
    found = (finding for assembly in job.assemblies for finding in check_assembly(assembly, job.system))
    return tuple(dict.fromkeys(found))


def _build(document: JobDocument, collector: Collector) -> Job:
    system = document.job.units
    practice = _practice(document.practice, system, collector)
    pieces: dict[str, Assembly] = {}
    hands: list[tuple[int, PieceEntry]] = []
    marks: set[str] = set()
    for index, entry in enumerate(document.pieces):
        path: Path = ("piece", index)
        if entry.mark in marks:
            collector.add((*path, "mark"), f'"{entry.mark}" is used twice: give each piece a mark of its own')
            continue
        marks.add(entry.mark)
        if entry.as_hand_of is not None:
            hands.append((index, entry))
        elif piece := _piece(entry, path, practice, system, collector):
            pieces[entry.mark] = piece
    for index, entry in hands:
        if mirrored := _hand(entry, ("piece", index), pieces, marks, collector):
            pieces[entry.mark] = mirrored
    order = (entry.mark for entry in document.pieces)
    assemblies = tuple(pieces[mark] for mark in dict.fromkeys(order) if mark in pieces)
    return Job(document.job, practice, _with_fitting_marks(assemblies, marks))


def _practice(entry: PracticeEntry, system: System, collector: Collector) -> Practice:
    given = {
        name: value for name in PracticeEntry.model_fields if (value := getattr(entry, name)) is not None
    }
    practice = replace(default_practice(system), **given)
    collector.attempt(("practice", "bolt"), lambda: bolt(practice.bolt))
    return practice


def _piece(
    entry: PieceEntry, path: Path, practice: Practice, system: System, collector: Collector
) -> Assembly | None:
    for name in ("stock", "length"):
        if getattr(entry, name) is None:
            collector.add((*path, name), "is missing: give it, or as_hand_of another piece")
    if entry.stock is None or entry.length is None:
        return None
    stock_text, grade_name, length = entry.stock, entry.grade, entry.length
    unit = Unit.MM if system is System.MM else Unit.INCH
    measure = Measure.EU if system is System.MM else Measure.US
    stock = collector.attempt((*path, "stock"), lambda: _find(stock_text, measure, unit))
    steel = None
    if stock is not None:
        found = stock
        steel = collector.attempt(
            (*path, "grade"), lambda: grade(grade_name) if grade_name else usual_grade(found)
        )
    if stock is None or steel is None:
        return None
    main = main_part(entry, stock, steel.name, length, practice, (collector, path))
    return _with_fittings(entry, main, path, practice, system, collector)


def _find(text: str, measure: Measure, unit: Unit) -> Stock:
    """Stock of the job's own tables first, then of the others."""
    try:
        return find(text, measure, unit)
    except ValueProblem:
        return find(text, None, unit)


def _with_fittings(
    entry: PieceEntry, main: Part, path: Path, practice: Practice, system: System, collector: Collector
) -> Assembly:
    work: list[tuple[str, int, Callable[[], Joined]]] = [
        *(("angles", i, partial(join_angles, e, main, practice, system)) for i, e in enumerate(entry.angles)),
        *(("plates", i, partial(join_plates, e, main, practice, system)) for i, e in enumerate(entry.plates)),
        *(
            ("stiffeners", i, partial(join_stiffeners, e, main, practice, system))
            for i, e in enumerate(entry.stiffeners)
        ),
    ]
    plates = (
        ("end_plates", FittingKind.END_PLATE, entry.end_plates),
        ("base_plates", FittingKind.BASE_PLATE, entry.base_plates),
        ("cap_plates", FittingKind.CAP_PLATE, entry.cap_plates),
    )
    for name, kind, entries in plates:
        work.extend(
            (name, i, partial(join_end_plates, e, kind, main, practice, system))
            for i, e in enumerate(entries)
        )
    joined = [
        done for name, i, make in work if (done := collector.attempt((*path, name, i), make)) is not None
    ]
    names: set[str] = set()
    for fitting in (fitting for one in joined for fitting in one.fittings):
        if fitting.name in names:
            collector.add(path, f"has two fittings in one place ({fitting.name}): keep one of them")
        names.add(fitting.name)
    groups = (*main.groups, *(group for one in joined for group in one.groups))
    return Assembly(
        replace(main, groups=groups),
        entry.quantity,
        tuple(fitting for one in joined for fitting in one.fittings),
        tuple(weld for one in joined for weld in one.welds),
        tuple(bolts for one in joined for bolts in one.bolts),
        entry.finish or practice.finish,
    )


def _hand(
    entry: PieceEntry, path: Path, pieces: dict[str, Assembly], marks: set[str], collector: Collector
) -> Assembly | None:
    here = (*path, "as_hand_of")
    allowed = {"mark", "quantity", "as_hand_of", "finish"}
    for name in sorted(entry.model_fields_set - allowed):
        collector.add((*path, name), "is taken from the other hand: leave it out beside as_hand_of")
    original = pieces.get(entry.as_hand_of or "")
    if original is None or original.hand_of is not None:
        if original is not None or entry.as_hand_of in marks:
            reason = "is itself an opposite hand or has problems: name a piece as drawn"
        else:
            reason = f"names no piece of the job: use one of {', '.join(list(pieces)[:20]) or 'none'}"
        collector.add(here, f'"{entry.as_hand_of}" {reason}')
        return None
    mirrored = opposite_hand(original, entry.mark, entry.quantity)
    return replace(mirrored, finish=entry.finish) if entry.finish else mirrored


_LETTERS = {
    FittingKind.ANGLE: "a",
    FittingKind.PLATE: "p",
    FittingKind.END_PLATE: "e",
    FittingKind.STIFFENER: "s",
    FittingKind.BASE_PLATE: "b",
    FittingKind.CAP_PLATE: "c",
}


def _with_fitting_marks(assemblies: tuple[Assembly, ...], taken: set[str]) -> tuple[Assembly, ...]:
    """Give every fitting a mark: its own, or the next free one; equal fittings share one."""
    given: dict[Part, str] = {}
    used = set(taken)
    used.update(f.part.mark for a in assemblies for f in a.fittings if f.part.mark)
    marked = []
    for assembly in assemblies:
        fittings = []
        for fitting in assembly.fittings:
            part = fitting.part
            if not part.mark:
                if part not in given:
                    given[part] = _next_mark(_LETTERS[fitting.kind], used)
                part = replace(part, mark=given[part])
            fittings.append(replace(fitting, part=part))
        marked.append(replace(assembly, fittings=tuple(fittings)))
    return tuple(marked)


def _next_mark(letter: str, used: set[str]) -> str:
    number = 1
    while f"{letter}{number}" in used:
        number += 1
    used.add(f"{letter}{number}")
    return f"{letter}{number}"
