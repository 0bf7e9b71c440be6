"""What a rule or an inspection has to say about a piece."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

__all__ = ["Finding", "Severity"]


class Severity(StrEnum):
    """How much a finding matters: an error stops the piece, a warning asks for a look, a note informs."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing a rule or an inspection has to say.

    Args:
        code: a short fixed name of the rule, for tests and filters.
        severity: error, warning or note.
        subject: the piece and the feature of it, in the trade's words.
        message: what is wrong, with the value and the limit.
        remedy: what usually puts it right.
        source: the standard's clause, or "common practice, no source".
    """

    code: str
    severity: Severity
    subject: str
    message: str
    remedy: str
    source: str = "common practice, no source"

    def text(self) -> str:
        """The finding in one line for people."""
        return f"{self.severity}: {self.subject}: {self.message}: {self.remedy}"
