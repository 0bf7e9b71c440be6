"""What a rule or an inspection has to say about a piece."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

__all__ = ["Finding", "Severity", "grouped"]

_NUMBERS = re.compile(r"[\d./'\"-]*\d[\d./'\" -]*")
_NAMED = 6


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


def grouped(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings that say the same but for their numbers as one: the first, with the pieces of the others.

    Args:
        findings: in any order; each subject begins with the mark of its piece.

    Returns:
        One finding for each kind, where the first of its kind stood.
    """
    kinds: dict[tuple[str, str, str, str], list[Finding]] = {}
    for one in findings:
        key = one.code, one.severity, _NUMBERS.sub("#", one.message), one.remedy
        kinds.setdefault(key, []).append(one)
    return tuple(_as_one(alike) for alike in kinds.values())


def _as_one(alike: list[Finding]) -> Finding:
    first, more = alike[0], len(alike) - 1
    if not more:
        return first
    marks = list(dict.fromkeys(one.subject.split()[0].rstrip(",:") for one in alike[1:]))
    named = ", ".join(marks[:_NAMED])
    rest = f" and {len(marks) - _NAMED} more pieces" if len(marks) > _NAMED else ""
    return replace(first, subject=f"{first.subject} (and {more} alike on {named}{rest})")
