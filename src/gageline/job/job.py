"""A job: facts, practice and pieces, built from its document."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from pathlib import Path as FilePath

from gageline.errors import ValueProblem
from gageline.job.building import build_pieces, loads_of, practice_of
from gageline.job.collecting import Collector
from gageline.job.document import JobDocument, JobFacts
from gageline.job.frame import FrameEntry
from gageline.job.loading import PieceLoads, StrengthEntry
from gageline.job.practice import Practice
from gageline.job.problems import placed
from gageline.job.reading import parse, read_text, validated
from gageline.job.salvage import original_path, salvaged
from gageline.part import Assembly, Finding, Severity, check_assembly
from gageline.units import System

__all__ = ["CheckedJob", "Job", "build_job", "check_job", "checked", "open_job", "read_job"]


@dataclass(frozen=True, slots=True)
class Job:
    """A job as it goes through the shop.

    Args:
        facts: name, number, units and notes.
        practice: the shop's defaults.
        assemblies: the pieces, in the order of the document, every fitting with its mark.
        frame: what stands where, whose pieces are found by detailing it; None without one.
        strength: how strength is checked.
        loads: what each piece carries, by mark.
    """

    facts: JobFacts
    practice: Practice
    assemblies: tuple[Assembly, ...]
    frame: FrameEntry | None = None
    strength: StrengthEntry = field(default_factory=StrengthEntry)
    loads: tuple[PieceLoads, ...] = ()

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
    table = parse(text)
    document, notes = validated(table)
    if document is not None:
        collector = Collector()
        job = _build(document, collector)
        if collector.found:
            raise placed(collector.found, table, text)
        return job
    wrong = {path for path, _ in notes}
    rest, origins = salvaged(table, wrong)
    if rest is not None:
        collector = Collector()
        _build(rest, collector)
        found = ((original_path(path, origins), message) for path, message in collector.found)
        notes.extend(note for note in found if note[0] not in wrong)
    raise placed(notes, table, text)


def build_job(document: JobDocument) -> Job:
    """The job of a document that did not come from a text.

    Raises:
        JobProblems: with everything that is wrong with it, each with its path.
    """
    collector = Collector()
    job = _build(document, collector)
    if collector.found:
        raise placed(collector.found, document.model_dump(by_alias=True))
    return job


def check_job(job: Job) -> tuple[Finding, ...]:
    """What the rules of the trade say about every piece of a job, each finding once."""
    found = (finding for assembly in job.assemblies for finding in check_assembly(assembly, job.system))
    return tuple(dict.fromkeys(found))


@dataclass(frozen=True, slots=True)
class CheckedJob:
    """A job after the rules of the trade went over it.

    Args:
        job: the pieces without an error.
        wrong: the marks of the others.
        findings: what was found, each once, in the order of the pieces.
    """

    job: Job
    wrong: tuple[str, ...]
    findings: tuple[Finding, ...]


def checked(job: Job) -> CheckedJob:
    """The job without the pieces that the rules of the trade find an error in."""
    found = {piece.mark: check_assembly(piece, job.system) for piece in job.assemblies}
    wrong = {mark for mark, all_ in found.items() if any(f.severity is Severity.ERROR for f in all_)}
    sound = tuple(piece for piece in job.assemblies if piece.mark not in wrong)
    findings = dict.fromkeys(finding for all_ in found.values() for finding in all_)
    return CheckedJob(
        replace(job, assemblies=sound), tuple(mark for mark in found if mark in wrong), tuple(findings)
    )


def _build(document: JobDocument, collector: Collector) -> Job:
    practice = practice_of(document.practice, document.job.units)
    pieces = build_pieces(document, practice, collector)
    loads = loads_of(document, pieces)
    return Job(document.job, practice, pieces, document.frame, document.strength, loads)
