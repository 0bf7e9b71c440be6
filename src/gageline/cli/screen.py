"""What every command shares: what a person types, where text goes, files opened and written."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Annotated, TypeVar

import typer
from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn, track

from gageline.detail import FullJob, checked_full, open_full
from gageline.errors import GagelineError
from gageline.job import CheckedJob, Job
from gageline.layout import Layout, lay_out
from gageline.part import Finding, Severity, grouped
from gageline.sheets import Sheet, to_pdf
from gageline.units import Length, System, counted, feet_inches, millimetres

__all__ = [
    "AsJson", "JobFile", "Mark", "Out", "aside", "buildable", "end_without", "layouts", "opened", "save",
    "say", "show_findings", "sound", "spoken", "tracked", "write", "write_sheet", "written",
]  # fmt: skip

say = Console(highlight=False)
aside = Console(stderr=True, highlight=False)

Item = TypeVar("Item")
JobFile = Annotated[Path, typer.Argument(help="the job document, a .toml file", metavar="JOB")]
AsJson = Annotated[bool, typer.Option("--json", help="the full result for other programs")]
Out = Annotated[Path | None, typer.Option("--out", "-o", help="where to write", show_default=False)]
Mark = Annotated[str | None, typer.Option("--piece", "-p", help="only the piece of this mark")]


def tracked(items: tuple[Item, ...], what: str) -> Iterable[Item]:
    """The items one by one, with a line of progress where there is a screen to show it."""
    return track(items, description=what, console=aside, transient=True, disable=not aside.is_terminal)


def opened(job_file: Path, mark: str | None = None) -> FullJob:
    """The job of a file, its frame detailed, or one piece of it, with progress where there is a screen."""
    columns = (TextColumn("{task.description}"), BarColumn(), TextColumn("{task.completed}/{task.total}"))
    with Progress(*columns, console=aside, transient=True, disable=not aside.is_terminal) as shown:
        task = shown.add_task("detailing", total=None)
        full = open_full(job_file, lambda done, total: shown.update(task, completed=done, total=total))
    return full if mark is None else full.only(mark)


def sound(full: FullJob) -> CheckedJob:
    """The job without the pieces that have errors, after saying what is wrong."""
    result = checked_full(full)
    show_findings(result.findings)
    return result


def buildable(full: FullJob, mark: str | None = None) -> CheckedJob:
    """The job, or one piece of it, without the pieces that have errors; their errors are said."""
    result = checked_full(full if mark is None else full.only(mark))
    show_findings(tuple(one for one in result.findings if one.severity is Severity.ERROR))
    return result


def end_without(wrong: tuple[str, ...], said: str = "left out for their errors") -> None:
    """Say which pieces have errors; the exit code is 1 when any has."""
    if wrong:
        aside.print(f"{said}: {', '.join(wrong)}", markup=False, soft_wrap=True, style="red")
        raise typer.Exit(1)


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


def written(length: Length, system: System) -> str:
    """A length as the job's unit system writes it."""
    return feet_inches(length, 64) if system is System.FT_IN else millimetres(length)


def save(path: Path, content: bytes) -> None:
    """Write a file, with the folders it stands in."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    except OSError as refused:
        reason = (refused.strerror or "it cannot be written").lower()
        raise GagelineError(
            f"{path} cannot be written ({reason}): choose another place with --out"
        ) from refused


def write(path: Path, content: bytes) -> None:
    """Write a file, and say where it is."""
    save(path, content)
    say.print(f"written: {path}", markup=False, soft_wrap=True)


def write_sheet(sheet: Sheet, out: Path | None, job_file: Path, what: str) -> None:
    """Write a sheet as PDF where the person wanted it, or beside as JOB-what.pdf."""
    with aside.status(f"setting {counted(len(sheet.pages), 'page')}"):
        content = to_pdf(sheet)
    write(out or Path(f"{job_file.stem}-{what}.pdf"), content)
