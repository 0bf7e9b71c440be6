"""The Yard: sticks in stock with their heats, the forms they are typed and measured in, the rack document."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_http_methods, require_POST
from pydantic import BaseModel

from gageline.errors import GagelineError, ValueProblem
from gageline.job import JobProblems, MeasuredEntry, Problem
from gageline.shop.fields import Section, form_of, table_of
from gageline.shop.jobs import Conflict
from gageline.shop.models import Copy, Stage, Stick, Where
from gageline.shop.office import person_of, typed_fields, whole
from gageline.shop.racks import (
    LARGEST_RACK,
    Brought,
    rack_text,
    save_rack,
    sticks_csv,
    whole_rack,
    yard_system,
)
from gageline.shop.readings import shop_records
from gageline.shop.receiving import (
    card_pdf,
    judge,
    judgement_rows,
    odds_words,
    stick_odds,
    way_rows,
    wrong_readings,
)
from gageline.shop.roles import OFFICE, WORK
from gageline.shop.saying import say_all
from gageline.shop.sticks import (
    HELD,
    MEASURED,
    WAY,
    assign,
    free_mark,
    held_tables,
    part_of,
    read_held,
    remove_stick,
    save_part,
    save_stick,
    take_back_stick,
)
from gageline.stock import HeldEntry
from gageline.units import System

__all__ = [
    "assign_stick",
    "edit_rack",
    "edit_stick",
    "export_rack",
    "list_sticks",
    "measure",
    "new_stick",
    "odds",
    "print_card",
    "remove",
    "say_stick",
    "show_stick",
    "spreadsheet",
    "take_back",
    "take_way",
]

Table = dict[str, Any]
_LEFT_OUT = {"piece", "heat"}  # of the readings: they stand on the stick


@dataclass(frozen=True, slots=True)
class _Form:
    """One of the two forms of a stick: what it is, and what was read on it.

    Args:
        model: the definition of the table.
        problems: that keep a typed table from being saved.
        hint: what the form is for.
    """

    model: type[BaseModel]
    problems: Callable[[Table, System, Stick | None], tuple[Problem, ...]]
    hint: str


def _held_problems(table: Table, system: System, _stick: Stick | None) -> tuple[Problem, ...]:
    try:
        read_held(table, system)
    except JobProblems as wrong:
        return wrong.problems
    return ()


_FORMS = {
    HELD: _Form(HeldEntry, _held_problems, "What is written on it and what it is."),
    MEASURED: _Form(
        MeasuredEntry,
        wrong_readings,
        "Leave empty what was not read: it is taken as nominal. Square an end by its four corners "
        "or by the gap of a square, not by both.",
    ),
}


@require_GET
def list_sticks(request: HttpRequest) -> HttpResponse:
    """The sticks in stock, by section and grade."""
    groups: dict[str, list[tuple[Stick, Table]]] = {}
    for row, held in held_tables():
        groups.setdefault(f"{row.stock} {row.grade}", []).append((row, held))
    context = {
        "groups": groups,
        "at_saw": Stick.objects.filter(where=Where.SAW),
        "may": person_of(request).role in WORK,
        "office": person_of(request).role in OFFICE,
    }
    template = "shop/part_yard.html" if getattr(request, "htmx", False) else "shop/yard.html"
    return render(request, template, context)


@require_GET
def spreadsheet(_request: HttpRequest) -> HttpResponse:
    """The sticks in stock for a spreadsheet."""
    return _file(sticks_csv().encode(), "text/csv; charset=utf-8", "sticks.csv")


def _file(content: bytes, kind: str, name: str) -> HttpResponse:
    response = HttpResponse(content, content_type=kind)
    response["Content-Disposition"] = f'attachment; filename="{name}"'
    return response


@require_GET
def show_stick(request: HttpRequest, stick: int) -> HttpResponse:
    """Everything about a stick: what it is, how it came, what can be made of it, history."""
    row = get_object_or_404(Stick.objects.select_related("copy__piece__job"), pk=stick)
    trouble, judged = "", None
    try:
        judged = judge(row)
    except GagelineError as wrong:
        trouble = str(wrong)
    waiting = Copy.objects.filter(
        active=True, piece__stock=row.stock, stage__in=(Stage.BENCH, Stage.FIT), stick=None
    ).select_related("piece__job")
    context = {
        "stick": row, "held": part_of(row, HELD), "judged": judged, "trouble": trouble,
        "waiting": waiting.order_by("piece__job_id", "piece__position", "number")[:200],
        "revisions": row.revisions.all()[:200], "may": person_of(request).role in WORK,
        "in_yard": row.where == Where.YARD, "ways": way_rows(judged) if judged else (),
        "judgements": judgement_rows(judged) if judged else (),
    }  # fmt: skip
    return render(request, "shop/stick.html", context)


@require_GET
def odds(request: HttpRequest, stick: int) -> HttpResponse:
    """The odds that the piece of a stick bolts up without reaming."""
    row = get_object_or_404(Stick.objects.select_related("copy__piece__job"), pk=stick)
    return render(request, "shop/part_odds.html", odds_words(stick_odds(row, shop_records())))


@require_http_methods(["GET", "POST"])
def new_stick(request: HttpRequest) -> HttpResponse:
    """A stick that came."""
    return _handle(request, None, HELD)


@require_http_methods(["GET", "POST"])
def edit_stick(request: HttpRequest, stick: int) -> HttpResponse:
    """What a stick is, changed."""
    return _handle(request, _in_yard(stick), HELD)


@require_http_methods(["GET", "POST"])
def measure(request: HttpRequest, stick: int) -> HttpResponse:
    """What was read on a stick before anything is laid out on it."""
    return _handle(request, _in_yard(stick), MEASURED)


def _in_yard(stick: int) -> Stick:
    row = get_object_or_404(Stick.objects.select_related("copy__piece__job"), pk=stick)
    if row.where != Where.YARD:
        raise ValueProblem(f"{row.mark} is {Where(row.where).label}: only a stick in the yard is changed")
    return row


def _handle(request: HttpRequest, row: Stick | None, part: str) -> HttpResponse:
    """The form, or what it saves."""
    system = yard_system()
    if request.method == "GET":
        table = part_of(row, part) if row else {"mark": free_mark("R1"), **_known(request)}
        units = System.MM if table.pop("units", "") == System.MM.value else system
        return _form(request, row, part, table, row.current if row else 0, units)
    posted = typed_fields(request)
    base = whole(posted.get("on-revision", ""))
    table = table_of(_FORMS[part].model, posted, "", system)
    force = "over-theirs" in posted
    if part == MEASURED:
        for key in _LEFT_OUT:
            table.pop(key, None)
    problems = _FORMS[part].problems(table, system, row)
    saved: Stick | Conflict | None = None
    if not problems:
        try:
            if part == HELD:
                saved = save_stick(person_of(request), row, table, base, system, force=force)
            elif row is not None:
                read = {**table, "units": system.value} if table else {}
                saved = save_part(person_of(request), row, MEASURED, read, base, force=force)
        except JobProblems as wrong:
            problems = wrong.problems
    if isinstance(saved, Conflict) and row is not None:
        return _conflict(request, row, saved)
    if isinstance(saved, Stick):
        return HttpResponseRedirect(reverse("yard-stick", args=(saved.pk,)))
    return _form(request, row, part, table, base, system, problems)


def _known(request: HttpRequest) -> Table:
    """What a new stick starts with: what the address says of it, else the section of the last one."""
    keys = (key for key in HeldEntry.model_fields if key not in {"mark", "certificate"})
    said = {key: request.GET[key][:80] for key in keys if request.GET.get(key)}
    if said:
        return said
    last = Stick.objects.filter(where=Where.YARD).order_by("-pk").first()
    held = part_of(last, HELD) if last else {}
    return {key: held[key] for key in ("stock", "grade") if key in held}


def _shown(part: str, table: Table) -> Section:
    form = form_of(_FORMS[part].model, table)
    fields = tuple(field for field in form.fields if part == HELD or field.name not in _LEFT_OUT)
    return replace(form, fields=fields, sections=tuple(replace(one, open=True) for one in form.sections))


def _form(
    request: HttpRequest,
    row: Stick | None,
    part: str,
    table: Table,
    base: int,
    system: System,
    problems: tuple[Problem, ...] = (),
) -> HttpResponse:
    form = _shown(part, table)
    said = {one.id: one for one in say_all(form, problems, (), system)}
    context = {
        "stick": row, "part": part, "form": form, "said": said, "base": base, "refused": bool(problems),
        "hint": _FORMS[part].hint, "metric": system is System.MM,
    }  # fmt: skip
    return render(request, "shop/stick_form.html", context, status=422 if problems else 200)


@require_POST
def say_stick(request: HttpRequest, part: str) -> HttpResponse:
    """What is to be said at each field of a stick's form as it is typed."""
    if part not in _FORMS:
        raise ValueProblem(f'a stick has no form "{part[:20]}": open it again')
    system = yard_system()
    table = table_of(_FORMS[part].model, typed_fields(request), "", system)
    form = _shown(part, table)
    row = Stick.objects.filter(pk=whole(request.GET.get("stick", ""))).first()
    problems = _FORMS[part].problems(table, system, row) if table else ()
    return render(request, "shop/part_said.html", {"said": say_all(form, problems, (), system)})


def _conflict(request: HttpRequest, row: Stick, found: Conflict) -> HttpResponse:
    theirs, base = found.theirs or {}, found.base or {}
    keys = [key for key in dict.fromkeys((*theirs, *found.mine)) if theirs.get(key) != found.mine.get(key)]
    rows = [(key, base.get(key), theirs.get(key), found.mine.get(key)) for key in keys]
    left_out = {"csrfmiddlewaretoken", "on-revision", "over-theirs"}
    mine = sorted((key, value) for key, value in typed_fields(request).items() if key not in left_out)
    context = {
        "rows": rows, "by": found.by, "base": found.number, "mine": mine, "name": f"stick {row.mark}",
        "back": reverse("yard-stick", args=(row.pk,)),
    }  # fmt: skip
    return render(request, "shop/yard_conflict.html", context, status=409)


@require_POST
def remove(request: HttpRequest, stick: int) -> HttpResponse:
    """Take a stick out of the yard."""
    remove_stick(person_of(request), get_object_or_404(Stick, pk=stick))
    return redirect("yard")


@require_POST
def take_back(request: HttpRequest, stick: int, number: int) -> HttpResponse:
    """Bring a stick back as it was in a revision."""
    row = get_object_or_404(Stick, pk=stick)
    get_object_or_404(row.revisions, number=number)
    take_back_stick(person_of(request), row, number, yard_system())
    return redirect("yard-stick", stick)


@require_POST
def assign_stick(request: HttpRequest, stick: int) -> HttpResponse:
    """Say which piece is to be made of a stick."""
    row = get_object_or_404(Stick, pk=stick)
    wanted = request.POST.get("copy", "")
    copies = Copy.objects.select_related("piece__job")
    copy = get_object_or_404(copies, pk=whole(wanted)) if wanted else None
    assign(person_of(request), row, copy)
    return redirect("yard-stick", stick)


@require_POST
def take_way(request: HttpRequest, stick: int) -> HttpResponse:
    """Choose which way the piece is laid on a stick."""
    row = _in_yard(stick)
    decision = judge(row).decision
    words = [option.way.words for option in decision.options] if decision else []
    way = request.POST.get("way", "")
    if way and way not in words:
        raise ValueProblem(f'"{way[:40]}" is no way to lay it: choose one of {", ".join(words) or "none"}')
    save_part(person_of(request), row, WAY, {"way": way} if way else {}, row.current)
    return redirect("yard-stick", stick)


@require_GET
def print_card(_request: HttpRequest, stick: int) -> HttpResponse:
    """The receiving card of a stick as PDF."""
    row = get_object_or_404(Stick.objects.select_related("copy__piece__job"), pk=stick)
    return _file(card_pdf(row, shop_records()), "application/pdf", f"receiving-{row.pk}.pdf")


@require_GET
def export_rack(_request: HttpRequest) -> HttpResponse:
    """The rack document: the facts and every stick that is free, as it can be brought in again."""
    document = whole_rack(rack_text()[1], (held for row, held in held_tables() if row.copy is None))
    return _file(document.encode(), "application/toml; charset=utf-8", "rack.toml")


@require_http_methods(["GET", "POST"])
def edit_rack(request: HttpRequest) -> HttpResponse:
    """Saw, prices and lengths to buy, typed as a rack document or brought in as one."""
    number, text = rack_text()
    context: Table = {"base": number, "text": text, "problems": (), "brought": None}
    if request.method == "GET":
        return render(request, "shop/rack.html", context)
    file = request.FILES.get("document")
    typed = request.POST.get("text", "")
    try:
        if file is not None:
            if (file.size or 0) > LARGEST_RACK:
                raise ValueProblem(f"the file is larger than {LARGEST_RACK / 1e3:.0f} kB: split it")
            found = save_rack(person_of(request), file.read(), None)
        elif "text" in request.POST:
            base = whole(request.POST.get("on-revision", ""))
            force = "over-theirs" in request.POST
            found = save_rack(
                person_of(request),
                typed.encode(),
                None if force else base,
            )
        else:
            raise ValueProblem("no file came with the form: choose a rack document")
    except GagelineError as wrong:
        listed = [one.text() for one in wrong.problems] if isinstance(wrong, JobProblems) else [str(wrong)]
        context |= {"problems": listed[:200], "base": whole(request.POST.get("on-revision", "")) or number}
        context["text"] = typed or text
        return render(request, "shop/rack.html", context, status=422)
    if isinstance(found, Brought):
        context |= {"brought": found, "base": found.number, "text": rack_text()[1]}
        return render(request, "shop/rack.html", context)
    rows = [("rack document", "", (found.theirs or {}).get("text"), found.mine["text"])]
    mine = [("text", typed)]
    context = {
        "rows": rows, "by": found.by, "base": found.number, "mine": mine, "name": "the rack",
        "back": reverse("yard-rack"),
    }  # fmt: skip
    return render(request, "shop/yard_conflict.html", context, status=409)
