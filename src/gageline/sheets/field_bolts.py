"""The field bolt list: what is bolted at the site, connection by connection, and what to order."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from gageline.detail import Detailed, FieldBolts, FullJob, Placed
from gageline.job import Job
from gageline.part import End
from gageline.sheets.card_ends import called, ends_by_card, place_of
from gageline.sheets.flow import Part, flow, room_of
from gageline.sheets.framing_plan import ERECTION_CARE, job_frame
from gageline.sheets.furniture import Heading, bind, bolt_text, paragraph
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Anchor, Sheet
from gageline.sheets.style import BODY, Weight
from gageline.sheets.table import Column, Table
from gageline.units import Length

__all__ = ["field_bolt_list"]

_RIGHT = Anchor.RIGHT
_OSHA = "1926.756(c)"
_NOTE = (
    "Counts are what the holes take: the shop's practice gives no spares, so none are counted. "
    "Lengths are from under the head to the end, for one flat washer a bolt. Bolts that go through two "
    "connections at once stand with the one whose name they have, with the grip of both. Left and right are "
    "the ends of the piece on its card, where its mark is written at the left; on the framing plan a dot "
    "stands at the left end."
)


def field_bolt_list(full: FullJob) -> Sheet:
    """The field bolts of a frame by connection, then all of one size, length and grade together.

    Args:
        full: a job with a frame.

    Raises:
        ValueProblem: a job without a frame, or a text with a character that the font lacks.
    """
    detailed, job = job_frame(full), full.job
    width, _ = room_of(job)
    parts = [
        Part("By connection", _connections(job, detailed)),
        Part("To order", _totals(job, detailed.field_bolts), together=True),
        Part("", paragraph("Notes", _NOTE, width, BODY)),
        *_double(detailed, width),
    ]
    heading = Heading("Field bolts", detail="by connection", care=ERECTION_CARE)
    return bind(job, "field bolts", list(flow(job, heading, parts)), detailed.wrong)


def _connections(job: Job, detailed: Detailed) -> Table:
    scribe = Scribe.of(job)
    marks = {one.assembly.mark: one.mark for one in detailed.placed}
    placed = {one.member: one for one in detailed.placed}
    ends = {
        joint.site.name: _end(placed[name], end)
        for (name, end), joint in detailed.joints.items()
        if name in placed
    }
    columns = (
        Column("Piece", weight=Weight.BOLD, wraps=False), Column("Connection"),
        Column("To", wraps=False), Column("No.", _RIGHT, wraps=False), Column("Bolt", wraps=False),
        Column("Grade"), Column("Grip", _RIGHT, wraps=False), Column("Length", _RIGHT, wraps=False),
    )  # fmt: skip
    rows = tuple(
        (
            marks[one.piece],
            ends.get(one.connection, one.connection),
            one.support,
            str(one.count),
            bolt_text(one.bolt),
            job.practice.bolt_grade,
            scribe.fine(one.grip),
            scribe.fine(one.length),
        )
        for one in detailed.field_bolts
    )
    total = ("Total", "", "", str(sum(one.count for one in detailed.field_bolts)), "", "", "", "")
    return Table(columns, (*rows, total), BODY, total=True)


def _end(one: Placed, end: End) -> str:
    """An end as the card of its piece calls it, and of which member where equal ones share the mark."""
    return ", ".join(filter(None, (f"{called(one, end)} end", place_of(one.member, one.mark))))


def _totals(job: Job, bolts: tuple[FieldBolts, ...]) -> Table:
    scribe = Scribe.of(job)
    count: dict[tuple[str, Length], int] = defaultdict(int)
    washers: dict[tuple[str, Length], int] = defaultdict(int)
    for one in bolts:
        count[one.bolt, one.length] += one.count
        washers[one.bolt, one.length] += one.count * one.washers
    columns = (
        Column("Bolt", wraps=False), Column("Length", _RIGHT, wraps=False), Column("Grade"),
        Column("Bolts and nuts", _RIGHT, wraps=False), Column("Washers", _RIGHT, wraps=False),
    )  # fmt: skip
    rows = tuple(
        (
            bolt_text(size),
            scribe.fine(length),
            job.practice.bolt_grade,
            str(count[size, length]),
            str(washers[size, length]),
        )
        for size, length in sorted(count)
    )
    total = ("Total", "", "", str(sum(count.values())), str(sum(washers.values())))
    return Table(columns, (*rows, total), BODY, total=True)


def _double(detailed: Detailed, width: float) -> Iterator[Part]:
    """Connections that share bolts over a column, with what keeps the first beam up."""
    say = ends_by_card(detailed)
    texts = [
        say(f"{one.subject}: {one.message}: {one.remedy}.")
        for one in detailed.findings
        if _OSHA in one.source
    ]
    for n, text in enumerate(dict.fromkeys(texts)):
        yield Part(
            "" if n else "Double connections at columns (29 CFR 1926.756(c))",
            paragraph("", text, width, BODY),
        )
