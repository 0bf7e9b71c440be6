"""The reasons table: every decision of detailing, why it was taken, and where the rule is from."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.detail import Detailed, FullJob
from gageline.sheets.flow import Part, flow
from gageline.sheets.framing_plan import job_frame
from gageline.sheets.furniture import CARE, Heading, bind
from gageline.sheets.scene import Sheet
from gageline.sheets.style import FINE, Weight
from gageline.sheets.table import Column, Table

__all__ = ["reasons_table"]


def reasons_table(full: FullJob, marks: frozenset[str] | None = None) -> Sheet:
    """The reasons of the pieces of a frame, piece by piece.

    Args:
        full: a job with a frame.
        marks: of the pieces wanted; None for all.

    Raises:
        ValueProblem: a job without a frame, or a text with a character that the font lacks.
    """
    columns = (
        Column("Piece", weight=Weight.BOLD, wraps=False),
        Column("End", wraps=False),
        Column("Decision", weight=Weight.BOLD),
        Column("Because"),
        Column("Source"),
    )
    rows = tuple(_rows(job_frame(full), marks))
    heading = Heading("Reasons", detail="why each piece is as it is", care=CARE)
    table = Part("Reasons, piece by piece", Table(columns, rows, FINE))
    return bind(full.job, "reasons", list(flow(full.job, heading, [table], landscape=True)))


def _rows(detailed: Detailed, marks: frozenset[str] | None) -> Iterator[tuple[str, ...]]:
    for mark, reasons in detailed.reasons.items():
        if marks is None or mark in marks:
            for reason in reasons:
                yield mark, reason.end, reason.decision, reason.because, reason.source
