"""Whether what was typed can be printed, told before a sheet is drawn."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.errors import ValueProblem
from gageline.job import FrameEntry, Job
from gageline.part import Finding, Severity
from gageline.sheets.fonts import text_width

__all__ = ["check_texts"]


def check_texts(job: Job) -> tuple[Finding, ...]:
    """A finding for every text of a job with a character that the sheets cannot print.

    Args:
        job: its facts, practice, frame and pieces are looked at.
    """
    findings = []
    for subject, text in _texts(job):
        try:
            text_width(text, 10)
        except ValueProblem as refused:
            message, remedy = str(refused).split(": write ", 1)
            findings.append(Finding("unprintable", Severity.ERROR, subject, message, f"write {remedy}"))
    return tuple(dict.fromkeys(findings))


def _texts(job: Job) -> Iterator[tuple[str, str]]:
    facts = job.facts
    yield from (
        ("job name", facts.name), ("job number", facts.number), ("job place", facts.place),
        ("job made by", facts.made_by),
    )  # fmt: skip
    yield from (("job notes", line) for line in facts.notes)
    yield from (("practice bolt grade", job.practice.bolt_grade), ("practice finish", job.practice.finish))
    for piece in job.assemblies:
        yield f"piece {piece.mark} mark", piece.mark
        yield f"piece {piece.mark} finish", piece.finish
        for fitting in piece.fittings:
            yield f"piece {piece.mark} fitting mark", fitting.part.mark
            yield f"piece {piece.mark} fitting", fitting.name
        for part in (piece.main, *(fitting.part for fitting in piece.fittings)):
            yield from ((f"piece {piece.mark} holes", group.name) for group in part.groups)
    if job.frame is not None:
        yield from _names(job.frame)


def _names(frame: FrameEntry) -> Iterator[tuple[str, str]]:
    """The names that plans, elevations and schedules print."""
    if frame.grid is not None:
        yield from (("grid line", name) for lines in (frame.grid.x, frame.grid.y) for name in lines.names)
    yield from ((f"level {level.name}", level.name) for level in frame.levels)
    yield from ((f"opening {opening.name}", opening.name) for opening in frame.openings)
