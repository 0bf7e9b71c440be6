"""The reasons table: every decision of detailing, why it was taken, and where the rule is from."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.detail import Detailed, FullJob, Reason
from gageline.sheets.flow import Part, flow
from gageline.sheets.framing_plan import job_frame
from gageline.sheets.furniture import CARE, Heading, bind
from gageline.sheets.scene import Sheet
from gageline.sheets.style import FINE, Weight
from gageline.sheets.table import Column, Table

__all__ = ["reasons_table"]


def reasons_table(full: FullJob, marks: frozenset[str] | None = None) -> Sheet:
    """The reasons of the pieces of a frame, one table a piece.

    Args:
        full: a job with a frame.
        marks: of the pieces wanted; None for all.

    Raises:
        ValueProblem: a job without a frame, or a text with a character that the font lacks.
    """
    job_frame(full)
    parts = list(_parts(full.detailed, marks)) if full.detailed else []
    heading = Heading("Reasons", detail="why each piece is as it is", care=CARE)
    return bind(full.job, "reasons", list(flow(full.job, heading, parts, landscape=True)))


def _parts(detailed: Detailed, marks: frozenset[str] | None) -> Iterator[Part]:
    sections = {one.mark: one.main.stock.designation for one in detailed.assemblies}
    columns = (
        Column("End", wraps=False),
        Column("Decision", weight=Weight.BOLD),
        Column("Because"),
        Column("Source"),
    )
    for mark, reasons in detailed.reasons.items():
        if reasons and (marks is None or mark in marks):
            yield Part(f"{mark}, {sections[mark]}", Table(columns, tuple(map(_row, reasons)), FINE))


def _row(reason: Reason) -> tuple[str, ...]:
    return reason.end, reason.decision, reason.because, reason.source
