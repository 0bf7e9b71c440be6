"""Everything that is wrong with a job document, with its place."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from gageline.errors import GagelineError
from gageline.job.lines import line_of, lines_of_keys

__all__ = ["JobProblems", "Note", "Path", "Problem", "place", "placed"]

_NAMED: dict[tuple[str, ...], str] = {("piece",): "mark", ("held",): "mark"} | {
    ("frame", table): "name" for table in ("column", "member", "point", "level", "opening")
}  # the key that an item of a list is known by
Path = tuple[str | int, ...]
Note = tuple[Path, str]


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong in a job document.

    Args:
        path: where, in the words of the document: `piece "B4" → copes 1 → depth`.
        message: name, value, limit and remedy.
        line: in the document, counted from 1; None when the place has no line.
    """

    path: str
    message: str
    line: int | None = None

    def text(self) -> str:
        """The problem in one line for people."""
        where = f"line {self.line}: " if self.line else ""
        return f"{where}{self.path}: {self.message}" if self.path else f"{where}{self.message}"


class JobProblems(GagelineError):
    """A job document that cannot be used, with every problem in it.

    Args:
        problems: at least one, in the order of the document.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        self.problems = problems
        super().__init__("\n".join(problem.text() for problem in problems))


def placed(notes: Iterable[Note], table: dict[str, Any], text: str = "") -> JobProblems:
    """Problems with their place in words and their line, in the order of the document.

    Args:
        notes: paths in the document and messages.
        table: the document as TOML tables.
        text: of the document, empty when it did not come from one.
    """
    lines = lines_of_keys(text)
    problems = [Problem(place(path, table), message, line_of(path, lines)) for path, message in notes]
    return JobProblems(tuple(sorted(dict.fromkeys(problems), key=lambda problem: problem.line or 0)))


def place(path: Path, table: object) -> str:
    """A path in the words of the document: `piece "B4" → copes 1 → depth`."""
    words: list[str] = []
    at: Any = table
    for step in path:
        at = _inside(at, step)
        if isinstance(step, str):
            words.append(step)
        elif isinstance(at, dict) and _is_word(name := at.get(_NAMED.get(tuple(words), ""))):
            words[-1] = f'{words[-1]} "{name}"'
        else:
            words[-1] = f"{words[-1]} {step + 1}"
    return " → ".join(words)


def _is_word(mark: object) -> bool:
    return isinstance(mark, str) and 0 < len(mark) <= 24 and mark.isprintable()


def _inside(at: Any, step: str | int) -> Any:
    if isinstance(at, dict):
        return at.get(step)
    if isinstance(at, list | tuple) and isinstance(step, int) and step < len(at):
        return at[step]
    return None
