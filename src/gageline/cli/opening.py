"""A job opened for a command: its frame detailed, its findings said, its sheets written."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from rich.progress import BarColumn, Progress, TaskID, TextColumn

from gageline.cli.screen import aside, tracked, write
from gageline.detail import FullJob, checked_full, open_full
from gageline.job import CheckedJob, Job
from gageline.layout import Layout, lay_out
from gageline.part import Finding, Severity, grouped
from gageline.sheets import Sheet, to_pdf
from gageline.strength import strong_rows
from gageline.units import counted

__all__ = ["buildable", "layouts", "opened", "show_findings", "sound", "spoken", "write_sheet"]


def opened(job_file: Path, mark: str | None = None) -> FullJob:
    """The job of a file, its frame detailed, or one piece of it, with progress where there is a screen."""
    columns = (TextColumn("{task.description}"), BarColumn(), TextColumn("{task.completed}/{task.total}"))
    with Progress(*columns, console=aside, transient=True, disable=not aside.is_terminal) as shown:
        task = shown.add_task("detailing", total=None)
        tell = partial(_tell, shown, task)
        full = strong_rows(open_full(job_file, tell), tell)
    return full if mark is None else _only(full, mark)


def _only(full: FullJob, name: str) -> FullJob:
    """One piece of a job, with a word where it goes by the mark of an equal one."""
    one = full.only(name)
    if full.mark_of(name) != name:
        made = one.job.assemblies[0]
        aside.print(f"{name} is made as {made.mark}: {made.quantity} alike", markup=False, soft_wrap=True)
    return one


def _tell(shown: Progress, task: TaskID, done: int, total: int) -> None:
    shown.update(task, completed=done, total=total)


def sound(full: FullJob) -> CheckedJob:
    """The job without the pieces that have errors, after saying what is wrong."""
    result = checked_full(full)
    show_findings(result.findings)
    return result


def buildable(full: FullJob, mark: str | None = None) -> CheckedJob:
    """The job, or one piece of it, without the pieces that have errors; their errors are said."""
    result = checked_full(full if mark is None else _only(full, mark))
    show_findings(tuple(one for one in result.findings if one.severity is Severity.ERROR))
    return result


def layouts(job: Job) -> tuple[Layout, ...]:
    """Every piece of the job laid out, with a line of progress."""
    return tuple(lay_out(piece, job.practice, job.system) for piece in tracked(job.assemblies, "laying out"))


def spoken(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Every error, then warnings and notes that say the same of many pieces once."""
    errors = tuple(finding for finding in findings if finding.severity is Severity.ERROR)
    return (*errors, *grouped(finding for finding in findings if finding.severity is not Severity.ERROR))


def show_findings(findings: tuple[Finding, ...]) -> None:
    """Say findings beside the result, the graver the brighter."""
    styles = {Severity.ERROR: "red", Severity.WARNING: "yellow", Severity.NOTE: "dim"}
    for finding in spoken(findings):
        aside.print(finding.text(), markup=False, soft_wrap=True, style=styles[finding.severity])


def write_sheet(sheet: Sheet, out: Path | None, job_file: Path, what: str) -> None:
    """Write a sheet as PDF where the person wanted it, or beside as JOB-what.pdf."""
    with aside.status(f"setting {counted(len(sheet.pages), 'page')}"):
        content = to_pdf(sheet)
    write(out or Path(f"{job_file.stem}-{what}.pdf"), content)
