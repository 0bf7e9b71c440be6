"""What every command shares: what a person types, where text goes, files written."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Annotated, TypeVar

import typer
from rich.console import Console
from rich.progress import track

from gageline.errors import GagelineError
from gageline.units import Length, System, feet_inches, millimetres

__all__ = [
    "AsJson",
    "JobFile",
    "Mark",
    "Out",
    "aside",
    "end_without",
    "save",
    "say",
    "tracked",
    "write",
    "written",
]

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


def end_without(wrong: tuple[str, ...], said: str = "left out for their errors") -> None:
    """Say which pieces have errors; the exit code is 1 when any has."""
    if wrong:
        aside.print(f"{said}: {', '.join(wrong)}", markup=False, soft_wrap=True, style="red")
        raise typer.Exit(1)


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
