"""The Check place: the sheet of a piece filled in walking round it, judged, printed, and the piece let go."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from django.db import transaction
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, render
from django.views.decorators.http import require_GET

from gageline.errors import ValueProblem
from gageline.job import say
from gageline.quality import Outcome, Report, Row
from gageline.sheets import inspection_sheets, to_pdf
from gageline.shop.engine import INSPECTION, job_of
from gageline.shop.jobs import current_text
from gageline.shop.logbook import note
from gageline.shop.models import Copy, Person, Piece, Reading, Sent, Stage
from gageline.shop.office import person_of
from gageline.shop.readings import item_code, report_of, shop_records, taken, words_of
from gageline.shop.receiving import odds_words, told_odds
from gageline.shop.roles import WORK
from gageline.shop.selectors import beyond, onward, waiting
from gageline.shop.ticking import Answer, Stroke, clock, strike
from gageline.units import System

__all__ = ["card", "let_go", "list_waiting", "odds", "outcome", "print_pdf"]


@dataclass(frozen=True, slots=True)
class _Line:
    """A line of the sheet.

    Args:
        code: its task.
        row: what is read, and how it is judged.
        wanted: as it is printed.
        allowed: likewise.
        value: what was read, as it is typed.
        by: who read it.
        words: what it is judged as.
    """

    code: str
    row: Row
    wanted: str
    allowed: str
    value: str
    by: str
    words: str


def _lines(report: Report, found: dict[str, Reading], system: System) -> Iterator[_Line]:
    for number, row in enumerate(report.rows, 1):
        limit, read = row.judgement.limit, found.get(row.item.name)
        yield _Line(
            item_code(number), row, say(row.judgement.wanted, system), limit.text(system) if limit else "-",
            read.value if read else "", read.by if read else "", words_of(row, system),
        )  # fmt: skip


@require_GET
def list_waiting(request: HttpRequest) -> HttpResponse:
    """Pieces that are fitted and wait for inspection."""
    context = {
        "stage": Stage.CHECK,
        "waiting": waiting(Stage.CHECK),
        "beyond": beyond(Stage.CHECK),
        "opens": "check-card",
    }
    template = "shop/part_waiting.html" if getattr(request, "htmx", False) else "shop/waiting.html"
    return render(request, template, context)


def _copy(pk: int) -> Copy:
    copy: Copy = get_object_or_404(Copy.objects.select_related("piece__job"), pk=pk)
    if not copy.piece.active:
        raise ValueProblem(f"{copy.piece.mark} was taken out of the job: ask the office")
    return copy


def _outcome_of(report: Report) -> dict[str, object]:
    read = sum(row.judgement.read is not None for row in report.rows)
    out = [row for row in report.rows if row.outcome in {Outcome.REWORK, Outcome.ASK}]
    return {"outcome": report.outcome, "read": read, "of": len(report.rows), "out": out}


@require_GET
def card(request: HttpRequest, copy: int) -> HttpResponse:
    """The inspection sheet of a piece, in the order one walks round it."""
    now = clock()  # before the readings are read, so that none is younger than it and missing
    row = _copy(copy)
    system = job_of(current_text(row.piece.job)).system
    report = report_of(row)
    lines = _lines(report, taken(row, "check"), system)
    stations = [(name, list(group)) for name, group in groupby(lines, lambda line: line.row.item.station)]
    passed = row.ticks.filter(card=row.piece.card, task=INSPECTION).first()
    context = {
        "copy": row, "piece": row.piece, "stations": stations, "passed": passed, "task": INSPECTION,
        "metric": system is System.MM, "may": person_of(request).role in WORK, **_outcome_of(report),
        "now": now, "ready": row.stage not in {Stage.BENCH, Stage.FIT}, "finished": passed is not None,
        **onward(row, "check"),
    }  # fmt: skip
    return render(request, "shop/check_card.html", context)


@require_GET
def outcome(request: HttpRequest, copy: int) -> HttpResponse:
    """What the readings so far come to."""
    return render(request, "shop/part_outcome.html", _outcome_of(report_of(_copy(copy))))


@require_GET
def print_pdf(_request: HttpRequest, copy: int) -> HttpResponse:
    """The inspection sheet as PDF, filled as far as it was read."""
    row = _copy(copy)
    sheet = inspection_sheets(job_of(current_text(row.piece.job)), [report_of(row)])
    response = HttpResponse(to_pdf(sheet), content_type="application/pdf")
    name = "".join(c if c.isalnum() else "-" for c in row.piece.mark)
    response["Content-Disposition"] = f'attachment; filename="{name}-{row.number}-inspection.pdf"'
    return response


def let_go(person: Person, stroke: Stroke) -> Answer:
    """Let a piece go to the Gate, or take that back.

    A piece goes by itself when something was read on it and nothing read is out. Otherwise it goes only
    with words: what was done, or who accepts it; they stand in the log.

    Args:
        person: who lets it go.
        stroke: the tick; its note has the words.
    """
    with transaction.atomic():
        copy = (
            Copy.objects.select_for_update(of=("self",))
            .select_related("piece__job")
            .filter(pk=stroke.copy)
            .first()
        )
        known = Sent.objects.filter(key=stroke.key).exists()
        words = stroke.note.strip()
        fits = copy is not None and copy.active and copy.piece.active and stroke.card == copy.piece.card
        if copy is None or not fits or known or not stroke.done or copy.stage != Stage.CHECK:
            return strike(person, stroke)
        report = report_of(copy)
        name = copy.name
        read = sum(row.judgement.read is not None for row in report.rows)
        refusal = _why_not(report, read, name)
        if refusal and not words:
            Sent.objects.create(key=stroke.key, answer=f"conflict {refusal}"[:300])
            return Answer("conflict", refusal)
        answer = strike(person, stroke)
        said = f", in spite of that: {words}" if refusal else f": {words}" if words else ""
        what = f"inspected {name}: {report.outcome}, {read} of {len(report.rows)} read{said}"
        note(person.name, what, job=copy.piece.job, piece=copy.piece)
    return answer


def _why_not(report: Report, read: int, name: str) -> str:
    """Why a piece does not go without words; empty where it does."""
    if not read:
        return f"nothing was read on {name}: read it, or say why it goes unread"
    if report.outcome in {Outcome.REWORK, Outcome.ASK}:
        out = [row.item.name for row in report.rows if row.outcome in {Outcome.REWORK, Outcome.ASK}]
        what = f"{report.outcome} for {', '.join(out[:4])}"
        return f"{name}: {what}: put it right and read again, or say who accepts it"
    return ""


@require_GET
def odds(request: HttpRequest, piece: int) -> HttpResponse:
    """The odds that a piece bolts up without reaming, with the shop's own spread where it has records."""
    row = get_object_or_404(Piece.objects.select_related("job"), pk=piece, active=True)
    told = told_odds(current_text(row.job), row.mark, shop_records())
    return render(request, "shop/part_odds.html", odds_words(told))
