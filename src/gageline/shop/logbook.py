"""The log of the shop: who did what and when."""

from __future__ import annotations

from gageline.shop.models import Job, LogEntry, Piece

__all__ = ["note"]

_LONGEST = 300


def note(
    by: str, what: str, *, job: Job | None = None, piece: Piece | None = None, revision: int | None = None
) -> None:
    """Write down what somebody did; called inside the transaction that does it.

    Args:
        by: the name of the person.
        what: in plain words.
        job: that it was done to.
        piece: that it was done to.
        revision: of the job that it made.
    """
    entry = LogEntry(job=job, piece=piece, revision=revision, by=by[:80], what=what[:_LONGEST])
    entry.save(force_insert=True)
