"""The bolts of a job as lists print them: those that read the same are one line."""

from __future__ import annotations

from dataclasses import dataclass, replace

from gageline.detail import Detailed, bolt_length
from gageline.job import Job
from gageline.sheets.notation import Scribe
from gageline.steel import bolt
from gageline.takeoff import BoltLine, bolts_of_job

__all__ = ["BOLT_LENGTHS", "FRAME_BOLTS", "BoltRow", "bolt_rows"]

BOLT_LENGTHS = (
    "Lengths of bolts are from under the head to the end, for one flat washer a bolt "
    "(RCSC Specification, Table C-2.2)."
)
"""How the lengths of bolts are found."""
FRAME_BOLTS = (
    "Field bolts of the frame are counted with the piece that is put in; the sheets of the frame list them "
    "connection by connection."
)
"""How the bolts are counted that join two pieces of a frame."""


@dataclass(frozen=True, slots=True)
class BoltRow:
    """Bolts of one size, place, grip and length.

    Attributes:
        bolt: size as the practice writes it; empty where none is given.
        grade: as the practice names it.
        quantity: how many.
        grip: in words; empty where the other ply is not in this job.
        length: to order, in words; empty where the grip is not known.
        field: put in at the site.
    """

    bolt: str
    grade: str
    quantity: int
    grip: str
    length: str
    field: bool


def bolt_rows(job: Job, detailed: Detailed | None = None) -> tuple[BoltRow, ...]:
    """The bolts of a job by size, grip as printed, length and place, shop bolts first.

    Args:
        job: with the pieces to count; grips and lengths are written in its units.
        detailed: its frame, None where it has none.
    """
    rows: dict[BoltRow, int] = {}
    for line in bolts_of_job(job, detailed):
        row = _row(line, Scribe.of(job))
        rows[row] = rows.get(row, 0) + line.quantity
    return tuple(replace(row, quantity=count) for row, count in rows.items())


def _row(line: BoltLine, scribe: Scribe) -> BoltRow:
    """A line without its quantity."""
    grip = length = ""
    if line.grip is not None:
        grip = scribe.fine(line.grip)
        length = scribe.fine(bolt_length(bolt(line.bolt), line.grip)) if line.bolt else ""
    return BoltRow(line.bolt, line.grade if line.bolt else "", 0, grip, length, line.field)
