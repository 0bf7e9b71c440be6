"""A whole job: the pieces as drawn and those of its frame, together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path as FilePath

from gageline.detail.choice import Asked, Named
from gageline.detail.detail import NOTHING_ASKED, Progress, detail_frame
from gageline.detail.detailed import Detailed
from gageline.detail.values import bolt_value
from gageline.errors import ValueProblem
from gageline.job import CheckedJob, Job, Note, checked, parse, placed, read_job, read_text
from gageline.part import Assembly, Finding, FittingKind, Severity
from gageline.steel import bolt

__all__ = ["FullJob", "checked_full", "full_job", "open_full", "read_full", "with_rows"]

_OF_COLUMNS = frozenset({FittingKind.BASE_PLATE, FittingKind.CAP_PLATE})


@dataclass(frozen=True, slots=True)
class FullJob:
    """A job with the pieces of its frame.

    Args:
        job: with every piece, as drawn and detailed, so that cards, drawings and lists take it as it is.
        detailed: the frame detailed, None where the job has none.
    """

    job: Job
    detailed: Detailed | None

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What detailing has to say; the rules for the pieces say theirs by themselves."""
        return self.detailed.findings if self.detailed else ()

    def mark_of(self, name: str) -> str:
        """The mark that a member of the frame is made by, which an equal one may have given; else the name.

        Args:
            name: a piece mark, or the name of a member.
        """
        if self.detailed is None or any(one.mark == name for one in self.job.assemblies):
            return name
        return next((one.mark for one in self.detailed.placed if one.member == name), name)

    def met_of(self, mark: str) -> Mapping[tuple[str, str], str] | None:
        """What the holes of a piece meet in the frame; None of a piece as drawn, which stands in none."""
        return self.detailed.met.get(mark) if self.detailed else None

    def is_column(self, mark: str) -> bool:
        """Whether a piece is a column: of the frame, or with a base or a cap plate.

        Raises:
            ValueProblem: when no piece has the mark.
        """
        if any(fitting.kind in _OF_COLUMNS for fitting in self.job.piece(mark).fittings):
            return True
        columns = {line.name for line in self.detailed.frame.columns} if self.detailed else set()
        placed = self.detailed.placed if self.detailed else ()
        return any(one.mark == mark and one.member in columns for one in placed)

    def only(self, name: str) -> FullJob:
        """One piece of it, with what detailing has to say of that one.

        Args:
            name: its mark, or the name of a member that is made as that piece.

        Raises:
            ValueProblem: when no piece has the mark.
        """
        mark = self.mark_of(name)
        job = replace(self.job, assemblies=(self.job.piece(mark),))
        if self.detailed is None:
            return FullJob(job, None)
        return FullJob(job, replace(self.detailed, findings=self.detailed.said.get(mark, ())))


def full_job(job: Job, progress: Progress | None = None) -> FullJob:
    """A job with its frame detailed.

    Args:
        job: as read from its document.
        progress: told how many members of how many are done.

    Raises:
        JobProblems: with everything that is wrong with the frame, without lines.
    """
    return _full(job, "", progress)


def with_rows(full: FullJob, asked: Mapping[Named, Asked], progress: Progress | None = None) -> FullJob:
    """A job whose frame is detailed again with the rows of bolts that the strength of its ends asks for.

    Args:
        full: the job, its frame detailed.
        asked: rows by the connection that asks for them.
        progress: told how many members of how many are done.

    Raises:
        JobProblems: with everything that is wrong with the frame, without lines.
    """
    framed = {one.mark for one in full.detailed.assemblies} if full.detailed else set()
    drawn = tuple(one for one in full.job.assemblies if one.mark not in framed)
    return _full(replace(full.job, assemblies=drawn), "", progress, asked)


def checked_full(full: FullJob) -> CheckedJob:
    """A job without the pieces that detailing or the rules of the trade find an error in.

    Pieces that carry one of those are warned of: what is cut into them for it may change.
    """
    result = checked(full.job)
    framed = full.detailed.wrong if full.detailed else ()
    wrong = {*result.wrong, *framed}
    sound = tuple(piece for piece in result.job.assemblies if piece.mark not in framed)
    return CheckedJob(
        replace(full.job, assemblies=sound),
        tuple(piece.mark for piece in full.job.assemblies if piece.mark in wrong),
        tuple(dict.fromkeys((*full.findings, *result.findings, *_carrying(full, sound, wrong)))),
    )


def _carrying(full: FullJob, sound: tuple[Assembly, ...], wrong: set[str]) -> Iterator[Finding]:
    """A warning for every sound piece that carries pieces with errors."""
    if full.detailed is None or not wrong:
        return
    marks: dict[str, set[str]] = {}
    for one in full.detailed.placed:
        marks.setdefault(one.member, set()).add(one.mark)
    for piece in sound:
        carried = sorted(
            mark
            for site in full.detailed.supports.sites
            if piece.mark in marks.get(site.support.name, ())
            for mark in marks.get(site.member.name, ())
            if mark in wrong
        )
        if carried:
            names = ", ".join(dict.fromkeys(carried))
            yield Finding(
                "carries-an-error",
                Severity.WARNING,
                piece.mark,
                f"what is cut into it and joined to it for {names} may change when that is put right",
                f"put {names} right before this piece is made",
            )


def open_full(path: FilePath, progress: Progress | None = None) -> FullJob:
    """The job in a file, with its frame detailed.

    Args:
        path: of the job document.
        progress: told how many members of how many are done.

    Raises:
        JobProblems: with everything that is wrong with it, each with its path and line.
    """
    return read_full(read_text(path), progress)


def read_full(text: str, progress: Progress | None = None) -> FullJob:
    """The job of a document's text, with its frame detailed.

    Args:
        text: the whole document.
        progress: told how many members of how many are done.

    Raises:
        JobProblems: with everything that is wrong with it, each with its path and line.
    """
    return _full(read_job(text), text, progress)


def _said_once(notes: list[Note], size: str) -> list[Note]:
    """The notes, with a bolt of the practice that is wrong said once, at the practice.

    Every end that takes the bolt of the practice would say the same.
    """
    try:
        bolt_value(bolt(size))
    except ValueProblem as wrong:
        others = [note for note in notes if note[1] != str(wrong)]
        own = [] if len(others) == len(notes) else [(("practice", "bolt"), str(wrong))]
        return [*own, *others]
    return notes


def _full(
    job: Job, text: str, progress: Progress | None, asked: Mapping[Named, Asked] = NOTHING_ASKED
) -> FullJob:
    if job.frame is None:
        return FullJob(job, None)
    detailed, found = detail_frame(job.frame, job.practice, job.system, job.assemblies, progress, asked)
    if notes := _said_once(found, job.practice.bolt):
        table = parse(text) if text else {"frame": job.frame.model_dump(by_alias=True)}
        raise placed(notes, table, text)
    return FullJob(replace(job, assemblies=(*job.assemblies, *detailed.assemblies)), detailed)
