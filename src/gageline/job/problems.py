"""Everything that is wrong with a job document, with its place."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.errors import GagelineError

__all__ = ["JobProblems", "Problem"]


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
        place = f"line {self.line}: " if self.line else ""
        return f"{place}{self.path}: {self.message}" if self.path else f"{place}{self.message}"


class JobProblems(GagelineError):
    """A job document that cannot be used, with every problem in it.

    Args:
        problems: at least one, in the order of the document.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        self.problems = problems
        super().__init__("\n".join(problem.text() for problem in problems))
