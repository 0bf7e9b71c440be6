"""The pages of a frame: its plans and members, the forms they are changed by, and the document as text."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from gageline.detail import Detailed, FullJob
from gageline.errors import GagelineError, ValueProblem
from gageline.job import JobDocument, JobProblems, Problem
from gageline.part import End
from gageline.sheets import findings_by_card, framing_plans, reasons_by_card
from gageline.shop import jobs
from gageline.shop.drafts import with_row, without_row
from gageline.shop.engine import document_of, full_of, layout_of
from gageline.shop.fields import row_names, table_of
from gageline.shop.frames import (
    GRID,
    KINDS,
    entry_form,
    entry_table,
    frame_tables,
    new_entry,
    remove_entry,
    save_entry,
    save_text,
    with_entry,
)
from gageline.shop.models import Job
from gageline.shop.office import person_of, show_conflict, typed_fields, whole
from gageline.shop.pictures import page_svg, stick_svg
from gageline.shop.prints import PRINTS
from gageline.shop.saying import Said, say_all, spoken
from gageline.units import System

__all__ = ["edit", "edit_grid", "edit_text", "look", "new", "remove", "show"]

Table = dict[str, Any]
_KINDS_WITH_NAMES = ("member", "column")


@dataclass(frozen=True, slots=True)
class _Row:
    """A member or a column in the list of the frame.

    Args:
        kind: member or column.
        name: in the document.
        mark: of the piece that it became.
        piece: the number of that piece's page; None where it has none.
        stock: its section.
        where: from where to where, or at which point, and between which levels.
        ends: how its ends are joined.
    """

    kind: str
    name: str
    mark: str
    piece: int | None
    stock: str
    where: str
    ends: str


@lru_cache(maxsize=16)  # the frames that are looked at
def _plans(text: str) -> tuple[tuple[str, ...], str]:
    """The plans of a frame as pictures, or why there are none."""
    full = full_of(text)
    if full.detailed is None or not full.detailed.placed:
        return (), ""
    try:
        return page_svg(framing_plans(full)), ""
    except GagelineError as refused:
        return (), str(refused)


def _place_words(table: Any) -> str:
    """A place of the plan in words."""
    if not isinstance(table, dict):
        return str(table or "")
    parts = [str(table["point"])] if "point" in table else []
    if "on" in table:
        parts.append(f"on {table['on']}")
    if "between" in table:
        parts.append(f"between {' and '.join(table['between'])}")
    parts += [f"{key} {table[key]}" for key in ("at", "x", "y") if key in table]
    return ", ".join(parts)


def _rows(text: str, job: Job) -> list[_Row]:
    frame, full = frame_tables(document_of(text)), full_of(text)
    pages = dict(job.pieces.filter(active=True).values_list("mark", "pk"))
    marks = {one.member: one.mark for one in full.detailed.placed} if full.detailed else {}
    rows = []
    for table in frame.get("column", []):
        top = table.get("top") or f"under {table.get('under', '')}"
        words = f"{_place_words(table.get('at'))}; {table.get('base', '')} to {top}"
        rows.append(("column", table, words, _top(full.detailed, str(table["name"]))))
    for table in frame.get("member", []):
        words = f"{_place_words(table.get('from'))} → {_place_words(table.get('to'))}"
        rows.append(("member", table, words, _ends(full.detailed, str(table["name"]))))
    return [
        _Row(
            kind,
            name,
            (mark := marks.get(name, "")),
            pages.get(mark),
            str(table.get("stock", "")),
            words,
            ends,
        )
        for kind, table, words, ends in rows
        for name in (str(table["name"]),)
    ]


def _ends(detailed: Detailed | None, name: str) -> str:
    """How the ends of a member came to be joined, what it bears on, and which of its ends are free."""
    if detailed is None:
        return ""
    words = {End.LEFT: "start", End.RIGHT: "end", None: "between"}
    said = {end: list[str]() for end in words}
    for end in (End.LEFT, End.RIGHT):
        joint = detailed.joints.get((name, end))
        if joint is not None:
            rows = f", {joint.ladder.rows} rows" if joint.ladder else ""
            said[end].append(f"{joint.kind}{rows} to {joint.site.support.name}")
    for bearing in sorted(detailed.supports.bearings, key=lambda one: one.run):
        if bearing.member.name == name:
            said[bearing.end].append(f"bears on {bearing.column.name}")
    for line, end in detailed.supports.free:
        if line.name == name:
            said[end].append("free beyond it" if said[end] else "free")
    order = (End.LEFT, None, End.RIGHT)
    return "; ".join(f"{words[end]}: {', '.join(said[end])}" for end in order if said[end])


def _top(detailed: Detailed | None, name: str) -> str:
    """What bears on a column."""
    bearings = detailed.supports.bearings if detailed else ()
    carried = [one.member.name for one in bearings if one.column.name == name]
    return f"top: under {', '.join(carried)}" if carried else ""


@require_GET
def show(request: HttpRequest, pk: int) -> HttpResponse:
    """The framing plan of each level, and everything that stands in the frame."""
    job = get_object_or_404(Job, pk=pk)
    text = jobs.current_text(job)
    plans, refused = _plans(text)
    rows, full = _rows(text, job), full_of(text)
    context = {
        "job": job, "plans": plans, "refused": refused, "rows": rows,
        "findings": spoken(findings_by_card(full.findings, full.detailed)) if rows else (),
        "prints": {name: one.title for name, one in PRINTS.items() if one.framed},
    }  # fmt: skip
    return render(request, "shop/frame.html", context)


@dataclass(frozen=True, slots=True)
class _Draft:
    """A table of a frame as far as it is typed, and what the frame would come to with it."""

    table: Table
    problems: tuple[Problem, ...]
    full: FullJob | None
    text: str


def _draft(document: JobDocument, kind: str, table: Table, was: str | None) -> _Draft:
    try:
        text = with_entry(document, kind, table, was)
        return _Draft(table, (), full_of(text), text)
    except JobProblems as wrong:
        return _Draft(table, wrong.problems, None, "")
    except GagelineError as wrong:
        return _Draft(table, (Problem("", str(wrong)),), None, "")


def _said(draft: _Draft, kind: str, system: System) -> tuple[Said, ...]:
    """What is said at each field: problems of this table at their fields, all others at the head."""
    own = f'frame → {kind} "{draft.table.get("name")}" → '
    placed = (
        replace(one, path=f"- → {one.path.removeprefix(own)}") if one.path.startswith(own) else one
        for one in draft.problems
    )
    return say_all(entry_form(kind, draft.table), placed, (), system)


def _picture(draft: _Draft, kind: str) -> dict[str, Any]:
    """The picture beside the form and the reasons under it."""
    full = draft.full
    if full is None or full.detailed is None:
        return {"picture": "", "reasons": ()}
    if kind == GRID:
        plans, refused = _plans(draft.text)
        words = refused or "No picture yet: nothing stands on this grid."
        return {"picture": "".join(plans) or f"<p>{words.replace('<', ' ')}</p>", "reasons": ()}
    name = draft.table.get("name")
    mark = next((one.mark for one in full.detailed.placed if one.member == name), None)
    if mark is None:
        return {"picture": "", "reasons": ()}
    try:
        svg = stick_svg(layout_of(draft.text, mark).main, f"{name}: {mark}, unfolded")
    except GagelineError as refused:
        svg = f'<p class="said warning">{str(refused).replace("<", " ")}</p>'
    reasons = reasons_by_card(full.detailed.reasons.get(mark, ()), full.detailed)
    return {"picture": svg, "reasons": reasons, "mark": mark}


def _form(
    request: HttpRequest, job: Job, kind: str, was: str | None, draft: _Draft, base: int, **more: Any
) -> HttpResponse:
    system = document_of(jobs.current_text(job)).job.units
    context = {
        "job": job, "kind": kind, "was": was, "form": entry_form(kind, draft.table), "base": base,
        "said": {one.id: one for one in _said(draft, kind, system)}, "metric": system is System.MM,
        "title": _title(kind, was), **_picture(draft, kind), **more,
    }  # fmt: skip
    part = getattr(request, "htmx", False)
    template = "shop/part_form.html" if part else "shop/frame_form.html"
    return render(request, template, context, status=422 if more.get("refused") else 200)


def _title(kind: str, was: str | None) -> str:
    if kind == GRID:
        return "Grid, levels and points"
    return f"{kind.capitalize()} {was}" if was else f"New {kind}"


def _handle(request: HttpRequest, pk: int, kind: str, was: str | None) -> HttpResponse:
    """The form of a table of the frame, another row in it, or what it saves."""
    job = get_object_or_404(Job, pk=pk)
    if kind not in KINDS:
        raise ValueProblem(f'a frame has no "{kind}": choose {" or ".join(_KINDS_WITH_NAMES)}')
    document = document_of(jobs.current_text(job))
    if request.method == "GET":
        is_new = kind != GRID and was is None
        table = new_entry(document, kind) if is_new else entry_table(document, kind, was)
        if table is None:
            raise ValueProblem(f'the frame has no {kind} "{was}": it was taken out or renamed meanwhile')
        draft = _Draft(table, (), None, "") if is_new else _draft(document, kind, table, was)
        return _form(request, job, kind, was, draft, job.current)
    posted = typed_fields(request)
    base, model = whole(posted.get("on-revision", "")), KINDS[kind]
    typed = entry_form(kind, table_of(model, posted, "", document.job.units))
    if posted.get("add-row") in set(row_names(typed)):
        table = with_row(model, document, posted, posted["add-row"])
        return _form(request, job, kind, was, _draft(document, kind, table, was), base)
    if "drop-row" in posted:
        table = without_row(model, document, posted, posted["drop-row"])
        return _form(request, job, kind, was, _draft(document, kind, table, was), base)
    table = table_of(model, posted, "", document.job.units)
    try:
        saved = save_entry(person_of(request), job, kind, table, was, base, force="over-theirs" in posted)
    except JobProblems as wrong:
        draft = _Draft(table, wrong.problems, None, "")
        return _form(request, job, kind, was, draft, base, refused=True)
    if isinstance(saved, jobs.Conflict):
        return show_conflict(request, job, _title(kind, was), saved)
    return HttpResponseRedirect(reverse("frame", args=(pk,)))


@require_http_methods(["GET", "POST"])
def new(request: HttpRequest, pk: int, kind: str) -> HttpResponse:
    """A new member or column."""
    return _handle(request, pk, kind, None)


@require_http_methods(["GET", "POST"])
def edit(request: HttpRequest, pk: int, kind: str, name: str) -> HttpResponse:
    """A member or a column, changed."""
    return _handle(request, pk, kind, name)


@require_http_methods(["GET", "POST"])
def edit_grid(request: HttpRequest, pk: int) -> HttpResponse:
    """Grid, levels, points, and the shop's practice of framing."""
    return _handle(request, pk, GRID, None)


@require_POST
def look(request: HttpRequest, pk: int, kind: str) -> HttpResponse:
    """What the frame comes to with what is typed so far, and what is to be said at each field."""
    job = get_object_or_404(Job, pk=pk)
    if kind not in KINDS:
        raise ValueProblem(f'a frame has no "{kind}": choose {" or ".join(KINDS)}')
    document = document_of(jobs.current_text(job))
    posted = typed_fields(request)
    table = table_of(KINDS[kind], posted, "", document.job.units)
    draft = _draft(document, kind, table, posted.get("was-named") or None)
    context = {"said": _said(draft, kind, document.job.units), **_picture(draft, kind)}
    return render(request, "shop/part_picture.html", context)


@require_POST
def remove(request: HttpRequest, pk: int, kind: str, name: str) -> HttpResponse:
    """Take a member or a column out of the frame."""
    job = get_object_or_404(Job, pk=pk)
    if kind not in _KINDS_WITH_NAMES:
        raise ValueProblem(f'a frame has no "{kind}": choose {" or ".join(_KINDS_WITH_NAMES)}')
    remove_entry(person_of(request), job, kind, name)
    return redirect("frame", pk)


@require_http_methods(["GET", "POST"])
def edit_text(request: HttpRequest, pk: int) -> HttpResponse:
    """The whole job document as text, with every problem of it at once."""
    job = get_object_or_404(Job, pk=pk)
    text, base = jobs.current_text(job), job.current
    problems: tuple[str, ...] = ()
    if request.method == "POST":
        text = request.POST.get("document", "").replace("\r\n", "\n")
        base = whole(request.POST.get("on-revision", ""))
        try:
            saved = save_text(person_of(request), job, text, base)
            if isinstance(saved, int):
                return redirect("job", pk)
            return show_conflict(request, job, "The job document", saved)
        except JobProblems as wrong:
            problems = tuple(one.text() for one in wrong.problems[:200])
        except GagelineError as wrong:
            problems = (str(wrong),)
    context = {"job": job, "text": text, "base": base, "problems": problems}
    return render(request, "shop/job_text.html", context, status=422 if problems else 200)
