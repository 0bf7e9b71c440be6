"""A whole job: the pieces as drawn and those of its frame, together."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path as FilePath

from gageline.detail.detail import Progress, detail_frame
from gageline.detail.detailed import Detailed
from gageline.job import Job, parse, placed, read_job, read_text
from gageline.part import Finding

__all__ = ["FullJob", "full_job", "open_full", "read_full"]


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


def full_job(job: Job, progress: Progress | None = None) -> FullJob:
    """A job with its frame detailed.

    Args:
        job: as read from its document.
        progress: told how many members of how many are done.

    Raises:
        JobProblems: with everything that is wrong with the frame, without lines.
    """
    return _full(job, "", progress)


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


def _full(job: Job, text: str, progress: Progress | None) -> FullJob:
    if job.frame is None:
        return FullJob(job, None)
    detailed, notes = detail_frame(job.frame, job.practice, job.system, job.assemblies, progress)
    if notes:
        table = parse(text) if text else {"frame": job.frame.model_dump(by_alias=True)}
        raise placed(notes, table, text)
    return FullJob(replace(job, assemblies=(*job.assemblies, *detailed.assemblies)), detailed)
