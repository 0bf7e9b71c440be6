"""Whether what was typed can be printed, told before a sheet is drawn."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.part import Finding, Severity
from gageline.sheets.fonts import text_width

__all__ = ["check_texts"]


def check_texts(job: Job) -> tuple[Finding, ...]:
    """A finding for every text of a job with a character that the sheets cannot print.

    Args:
        job: its facts, marks and finishes are looked at.
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
    for piece in job.assemblies:
        yield f"piece {piece.mark} mark", piece.mark
        yield f"piece {piece.mark} finish", piece.finish
        yield from ((f"piece {piece.mark} fitting mark", fitting.part.mark) for fitting in piece.fittings)
