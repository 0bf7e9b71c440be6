"""Problems collected while a document is turned into parts, so that all are said at once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TypeVar

from gageline.errors import ValueProblem
from gageline.job.problems import Note, Path

__all__ = ["Collector"]

Value = TypeVar("Value")


@dataclass(slots=True)
class Collector:
    """Where the turning of a document into parts notes what is wrong.

    Args:
        found: paths in the document and messages, in the order found.
    """

    found: list[Note] = field(default_factory=list)

    def add(self, path: Path, message: str) -> None:
        """Note one problem."""
        self.found.append((path, message))

    def attempt(self, path: Path, work: Callable[[], Value]) -> Value | None:
        """The result of some work, or None with its refusal noted."""
        try:
            return work()
        except ValueProblem as refusal:
            self.add(path, str(refusal))
            return None
