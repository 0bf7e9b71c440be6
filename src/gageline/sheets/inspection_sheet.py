"""The inspection sheet of a piece: blank, to be filled walking around it, or filled, with its outcome."""

from __future__ import annotations

from collections.abc import Sequence

from gageline.job import Job
from gageline.quality import Outcome, Report, Row
from gageline.sheets.flow import Part, flow, room_of
from gageline.sheets.furniture import Block, Draft, Heading, bind, paragraph
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Sheet
from gageline.sheets.style import BODY, FINE, Weight
from gageline.sheets.table import Column, Table
from gageline.units import ZERO, Length

__all__ = ["inspection_sheets"]

_TO_FILL = "____________"


def inspection_sheets(job: Job, reports: Sequence[Report]) -> Sheet:
    """The inspection sheets of a job: blank where nothing was read, else filled with their outcome.

    Args:
        job: whose pieces they are.
        reports: in the order they are printed.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    drafts: list[Draft] = []
    for report in reports:
        drafts.extend(flow(job, _heading(job, report), _parts(job, report)))
    return bind(job, "inspection", drafts)


def _heading(job: Job, report: Report) -> Heading:
    assembly = report.layout.assembly
    length = Scribe.of(job).tell(assembly.main.length)
    detail = f"{assembly.main.stock.designation} {assembly.main.grade}, {length}"
    sheet = "Inspection sheet" if report.inspected is None else "Inspection report"
    return Heading(sheet, assembly.mark, assembly.quantity, assembly.hand_of, detail)


def _parts(job: Job, report: Report) -> list[Part]:
    width, _ = room_of(job)
    scribe = Scribe.of(job)
    if report.inspected is None:
        who = "Piece no. ______   Measured by ____________________   Date ______________"
        return [
            Part("Walk around the piece in this order", paragraph("", who, width, BODY)),
            Part("", _blank(report, scribe)),
            Part("", _sources(report, width)),
        ]
    inspected = report.inspected
    said = [f"Piece no. {inspected.number}"]
    said += [f"measured by {inspected.by}"] if inspected.by else []
    said += [inspected.date] if inspected.date else []
    outcome = str(report.outcome) if report.complete else f"{report.outcome}, as far as it was read"
    parts = [Part(f"Outcome: {outcome}", paragraph("", ", ".join(said) + ".", width, BODY))]
    out = report.findings(job.system)
    if out:
        parts.append(Part("What to do", Table((Column("Finding"), Column("Remedy")), tuple(
            (f"{one.subject}: {one.message}", one.remedy) for one in out
        ))))  # fmt: skip
    return [*parts, Part("", _filled(report, scribe)), Part("", _sources(report, width))]


def _blank(report: Report, scribe: Scribe) -> Table:
    columns = (
        Column("At"), Column("Read"), Column("With"), Column("Wanted", weight=Weight.BOLD, wraps=False),
        Column("Allowed"), Column("Found", wraps=False),
    )  # fmt: skip
    rows = tuple(
        (
            row.item.station,
            row.item.name,
            row.item.tool,
            _said(row.judgement.wanted, row, scribe),
            _allowed(row, scribe),
            _TO_FILL,
        )
        for row in report.rows
    )
    return Table(columns, rows)


def _filled(report: Report, scribe: Scribe) -> Table:
    columns = (
        Column("Read"), Column("Wanted", wraps=False), Column("Found", weight=Weight.BOLD, wraps=False),
        Column("Off", wraps=False), Column("Allowed"), Column("Outcome", weight=Weight.BOLD),
    )  # fmt: skip
    return Table(columns, tuple(_row(row, scribe) for row in report.rows))


def _row(row: Row, scribe: Scribe) -> tuple[str, ...]:
    judged = row.judgement
    off = judged.off
    read = "-" if judged.read is None else _said(judged.read, row, scribe)
    away = "-" if off is None else _said(off, row, scribe)
    if off is not None and off > ZERO and away != _said(ZERO, row, scribe):
        away = f"+{away}"
    outcome = str(row.outcome).upper() if row.outcome in {Outcome.ASK, Outcome.REWORK} else str(row.outcome)
    return judged.name, _said(judged.wanted, row, scribe), read, away, _allowed(row, scribe), outcome


def _said(length: Length, row: Row, scribe: Scribe) -> str:
    """A reading to the divisions of what it is read with."""
    return scribe.tell(length) if row.item.taped else scribe.fine(length)


def _allowed(row: Row, scribe: Scribe) -> str:
    limit = row.judgement.limit
    return limit.text(scribe.system) if limit else "not checked"


def _sources(report: Report, width: float) -> Block:
    """Every source of a limit on the sheet once, with how far it can be trusted."""
    cited = dict.fromkeys(
        f"{row.judgement.limit.rule}: {row.judgement.limit.cited}"
        for row in report.rows
        if row.judgement.limit is not None
    )
    return paragraph("Where the limits come from", "; ".join(cited) + ".", width, FINE)
