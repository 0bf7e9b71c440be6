"""Why a dimension is what it is."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["PRACTICE", "Reason"]

PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Reason:
    """One decision of detailing, for the sheet and for whoever asks.

    Args:
        decision: what was decided, with its value ('top cope 4" long, 2" deep').
        because: the rule and the numbers that it was worked with.
        source: the standard's clause or table, or "common practice, no source".
        end: the end of the piece it belongs to, as the member lies: start, end, or empty for the piece.
    """

    decision: str
    because: str
    source: str = PRACTICE
    end: str = ""

    def text(self) -> str:
        """The reason in one line for people."""
        where = f"{self.end}: " if self.end else ""
        return f"{where}{self.decision}, because {self.because} ({self.source})"
