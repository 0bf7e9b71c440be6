"""Pieces: the form they are typed into with the picture beside it, and the page that ties them together."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils.text import slugify
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from gageline.errors import ValueProblem
from gageline.job import JobProblems, PieceEntry
from gageline.sheets import piece_drawings, piece_dxf, reasons_by_card
from gageline.shop import jobs
from gageline.shop.drafts import Draft, draft_of, new_piece, with_row, without_row
from gageline.shop.engine import (
    card_of,
    document_of,
    findings_on,
    full_of,
    is_framed,
    job_of,
    layout_of,
    strength_of,
)
from gageline.shop.fields import form_of, row_names, table_of
from gageline.shop.models import Job, Piece, Stage
from gageline.shop.office import person_of, typed_fields, whole
from gageline.shop.pictures import page_svg, qr_svg, solid_page, stick_svg
from gageline.shop.sawing import heats_of
from gageline.shop.saying import Said, echo
from gageline.shop.selectors import marks_table
from gageline.shop.strengths import CARE, strength_lines, unchecked_of
from gageline.units import System

__all__ = ["echo_length", "edit", "new", "picture", "remove", "show", "solid", "true_size", "undo"]

_SOLID_POLICY = (
    "sandbox allow-scripts; default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; "
    "img-src data: blob:; connect-src data: blob:; frame-ancestors 'self'"
)  # the page of the body has its script in itself, and is shut off from the shop instead


def _form(
    request: HttpRequest, job: Job, piece: Piece | None, draft: Draft, base: int, **more: Any
) -> HttpResponse:
    said = {one.id: one for one in draft.said}
    context = {
        "job": job, "piece": piece, "form": draft.form, "said": said, "base": base,
        "picture": _picture(draft), "metric": _is_metric(job), **more,
    }  # fmt: skip
    part = getattr(request, "htmx", False)
    status = 409 if more.get("conflict") else 422 if more.get("refused") else 200
    return render(request, "shop/part_form.html" if part else "shop/piece_form.html", context, status=status)


def _is_metric(job: Job) -> bool:
    return document_of(jobs.current_text(job)).job.units is System.MM


def _picture(draft: Draft) -> str:
    if draft.layout is None:
        return ""
    return stick_svg(draft.layout.main, f"{draft.table.get('mark', '')}, unfolded")


def _handle(request: HttpRequest, job: Job, piece: Piece | None) -> HttpResponse:
    """The form, another row in it, or what it saves."""
    text = jobs.current_text(job)
    document = document_of(text)
    mark = piece.mark if piece else None
    if request.method == "GET":
        table = jobs.piece_table(document, mark) if mark else new_piece(document)
        return _form(request, job, piece, draft_of(document, table or new_piece(document)), job.current)
    posted = typed_fields(request)
    base = whole(posted.get("on-revision", ""))
    typed = form_of(PieceEntry, table_of(PieceEntry, posted, "", document.job.units))
    if posted.get("add-row") in set(row_names(typed)):
        return _form(
            request,
            job,
            piece,
            draft_of(document, with_row(PieceEntry, document, posted, posted["add-row"])),
            base,
        )
    if "drop-row" in posted:
        return _form(
            request,
            job,
            piece,
            draft_of(document, without_row(PieceEntry, document, posted, posted["drop-row"])),
            base,
        )
    table = table_of(PieceEntry, posted, "", document.job.units)
    try:
        saved = jobs.save_piece(person_of(request), job, table, mark, base, force="over-theirs" in posted)
    except JobProblems as wrong:
        draft = _with_problems(draft_of(document, table), wrong)
        return _form(request, job, piece, draft, base, refused=True)
    if isinstance(saved, jobs.Conflict):
        return _conflict(request, job, piece, saved)
    target = f"{reverse('job', args=(job.pk,))}#piece-{slugify(table.get('mark', ''))}"
    if getattr(request, "htmx", False):
        return HttpResponse(status=204, headers={"HX-Redirect": target})
    return HttpResponseRedirect(target)


def _with_problems(draft: Draft, wrong: JobProblems) -> Draft:
    """A draft that is right by itself and wrong in its job, as with a mark that is taken."""
    if draft.problems:
        return draft
    text = " | ".join(problem.text() for problem in wrong.problems[:10])
    said = tuple(one for one in draft.said if one.id != "form")
    return replace(draft, said=(Said("form", "error", text), *said), problems=wrong.problems)


def _conflict(request: HttpRequest, job: Job, piece: Piece | None, found: jobs.Conflict) -> HttpResponse:
    document = document_of(jobs.current_text(job))
    keys = dict.fromkeys((*(found.theirs or {}), *found.mine))
    theirs = found.theirs or {}
    rows = [
        (key, (found.base or {}).get(key), theirs.get(key), found.mine.get(key))
        for key in keys
        if theirs.get(key) != found.mine.get(key)
    ]
    sides = [
        (name, stick_svg(draft.layout.main, name) if draft.layout else "")
        for name, draft in (
            (f"Saved by {found.by}", draft_of(document, theirs) if theirs else None),
            ("Yours", draft_of(document, found.mine)),
        )
        if draft is not None
    ]
    context = {
        "job": job, "piece": piece, "rows": rows, "sides": sides, "by": found.by, "base": found.number,
        "mine": sorted(typed_fields(request).items()), "gone": found.theirs is None, "what": "The piece",
    }  # fmt: skip
    if getattr(request, "htmx", False):
        response = render(request, "shop/part_conflict.html", context)
        response["HX-Retarget"] = "main"
        response["HX-Reswap"] = "innerHTML"
        return response
    return render(request, "shop/conflict.html", context, status=409)


@require_http_methods(["GET", "POST"])
def new(request: HttpRequest, pk: int) -> HttpResponse:
    """A new piece of a job."""
    return _handle(request, get_object_or_404(Job, pk=pk), None)


@require_http_methods(["GET", "POST"])
def edit(request: HttpRequest, pk: int, piece: int) -> HttpResponse:
    """A piece of a job, changed."""
    job = get_object_or_404(Job, pk=pk)
    return _handle(request, job, _drawn(job, piece))


def _drawn(job: Job, pk: int) -> Piece:
    """A piece that is changed by its own form; one of the frame changes with the frame."""
    row: Piece = get_object_or_404(job.pieces, pk=pk, active=True)
    if is_framed(jobs.current_text(job), row.mark):
        raise ValueProblem(f"{row.mark} comes from the frame: change its member or column there")
    return row


@require_POST
def picture(request: HttpRequest, pk: int) -> HttpResponse:
    """The picture of what is typed so far, and what is to be said at each field."""
    job = get_object_or_404(Job, pk=pk)
    document = document_of(jobs.current_text(job))
    draft = draft_of(document, table_of(PieceEntry, typed_fields(request), "", document.job.units))
    context = {"picture": _picture(draft), "said": draft.said}
    return render(request, "shop/part_picture.html", context)


@require_POST
def remove(request: HttpRequest, pk: int, piece: int) -> HttpResponse:
    """Take a piece out of its job."""
    job = get_object_or_404(Job, pk=pk)
    row = _drawn(job, piece)
    jobs.remove_piece(person_of(request), job, row.mark)
    return redirect("job", pk)


@require_POST
def undo(request: HttpRequest, pk: int, piece: int, number: int) -> HttpResponse:
    """Bring a piece back as it was in a revision."""
    job = get_object_or_404(Job, pk=pk)
    row = get_object_or_404(job.pieces, pk=piece)
    get_object_or_404(job.revisions, number=number)
    jobs.take_back_piece(person_of(request), job, row.mark, number)
    return redirect("piece", piece)


@require_GET
def echo_length(request: HttpRequest) -> HttpResponse:
    """What a length was understood as."""
    system = System.MM if request.GET.get("units") == System.MM.value else System.FT_IN
    return render(request, "shop/part_echo.html", {"said": echo(request.GET.get("text", "")[:500], system)})


@require_GET
def show(request: HttpRequest, piece: int) -> HttpResponse:
    """Everything about a piece: drawing, card, fittings, checks, the body in space, history."""
    row = get_object_or_404(Piece.objects.select_related("job"), pk=piece)
    context: dict[str, Any] = {"piece": row, "job": row.job, "log": row.log.all()[:200]}
    if row.active:
        text = jobs.current_text(row.job)
        layout, built = layout_of(text, row.mark), job_of(text)
        alone = replace(built, assemblies=(built.piece(row.mark),))
        card = card_of(text, row.mark)
        copies = list(row.copies.filter(active=True).order_by("number"))
        heats = heats_of(copies)
        context |= {
            "layout": layout,
            "card": card,
            "stick": stick_svg(layout.main, f"{row.mark}, unfolded"),
            "drawing": page_svg(piece_drawings(alone)),
            "marks": marks_table(layout.main.steps),
            "fittings": _fittings(layout.assembly),
            "findings": findings_on(text, row.mark),
            "copies": [(copy, heats.get(copy.pk, "")) for copy in copies],
            "qr": qr_svg(request.build_absolute_uri(reverse("piece", args=(row.pk,)))),
            "stages": Stage,
            "system": built.system,
            **_from_frame(text, row.mark),
            **_strength(text, row.mark),
        }
    return render(request, "shop/piece.html", context)


def _from_frame(text: str, mark: str) -> dict[str, Any]:
    """The members that a piece of the frame stands for, and why it is as it is."""
    detailed = full_of(text).detailed
    if detailed is None or not is_framed(text, mark):
        return {}
    members = [one.member for one in detailed.placed if one.mark == mark]
    columns = {line.name for line in detailed.frame.columns}
    kinds = [("column" if name in columns else "member", name) for name in dict.fromkeys(members)]
    return {"members": kinds, "reasons": reasons_by_card(detailed.reasons.get(mark, ()), detailed)}


def _strength(text: str, mark: str) -> dict[str, Any]:
    strength, detailed = strength_of(text), full_of(text).detailed
    placed = detailed.placed if detailed else ()
    names = frozenset({mark, *(one.member for one in placed if one.mark == mark)})
    return {
        "strength": strength_lines(strength, job_of(text).system, names),
        "unchecked": unchecked_of(strength, names),
        "method": strength.method.value,
        "care": CARE,
    }


def _fittings(assembly: Any) -> list[tuple[str, str, str, str]]:
    return [
        (fitting.part.mark, fitting.name, fitting.part.stock.designation, str(fitting.join))
        for fitting in assembly.fittings
    ]


@require_GET
def solid(_request: HttpRequest, piece: int) -> HttpResponse:
    """The body of a piece, to be turned under the finger; a page shut off from the shop."""
    row = get_object_or_404(Piece.objects.select_related("job"), pk=piece, active=True)
    page = solid_page(job_of(jobs.current_text(row.job)).piece(row.mark))
    response = HttpResponse(page)
    response["Content-Security-Policy"] = _SOLID_POLICY
    return response


@require_GET
def true_size(_request: HttpRequest, piece: int) -> HttpResponse:
    """The views of a piece one to one as a drawing file, in the units of its job."""
    row = get_object_or_404(Piece.objects.select_related("job"), pk=piece, active=True)
    built = job_of(jobs.current_text(row.job))
    response = HttpResponse(piece_dxf(built, built.piece(row.mark)), content_type="image/vnd.dxf")
    response["Content-Disposition"] = f'attachment; filename="{slugify(row.mark) or "piece"}.dxf"'
    return response
