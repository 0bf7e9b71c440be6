"""The Saw: cutting plans asked for, watched, chosen and printed, and the sticks that are cut by one."""

from __future__ import annotations

from collections import Counter
from itertools import groupby
from typing import Any
from urllib.parse import urlencode

from django.db.models import Count, Q
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from gageline.errors import ValueProblem
from gageline.job import say
from gageline.sheets import cutting_sheet, money, proof, saw_card, to_pdf
from gageline.shop.cut_already import CUT, MADE
from gageline.shop.models import Cutting, Job, Plan, Search, Stick, Where
from gageline.shop.office import person_of
from gageline.shop.pictures import block_svg, cuts_svg
from gageline.shop.planner import launch
from gageline.shop.plans import (
    broke_off,
    choose_plan,
    jobs_of,
    plan_of,
    planned_of,
    start_plan,
    stop_plan,
    trouble_of,
)
from gageline.shop.roles import WORK
from gageline.shop.sawing import DROP, TAKE, card_name, card_of_cutting, saw_lines
from gageline.shop.sheeting import sheet_card
from gageline.shop.ticking import clock
from gageline.stock import Held, SheetPlan, ShopPlan, StickPlan
from gageline.units import counted, exact_text

__all__ = ["card", "choose", "new_plan", "print_plan", "show", "show_plan", "stop"]

_SECONDS = (10, 60, 300)
_LONGEST = 600
_MOST_JOBS = 200
_MOST_PICTURES = 60  # the rest stand on the cutting sheets


@require_GET
def show(request: HttpRequest) -> HttpResponse:
    """The sticks that are cut by the chosen plan, and the plans there are."""
    counted = Count("cuts", filter=~Q(cuts__task__in=(TAKE, DROP)))
    chosen = Plan.objects.filter(state=Search.CHOSEN).first()
    lines = []
    for one in Cutting.objects.filter(plan=chosen).select_related("stick").annotate(cut=counted):
        one.plan = chosen or one.plan  # once, and not once a stick: a plan is a large text
        planned = planned_of(one)
        lines.append((one, len(planned.pieces), _kind(planned)))
    context: dict[str, Any] = {
        "lines": [line for line in lines if not line[0].done],
        "cut": [line for line in lines if line[0].done],
        "may": person_of(request).role in WORK,
        "chosen": chosen,
    }
    if getattr(request, "htmx", False):
        return render(request, "shop/part_saw.html", context)
    jobs = Job.objects.filter(pieces__active=True).distinct().order_by("-pk")[:200]
    context |= {"plans": Plan.objects.defer("asked", "answer")[:20], "jobs": jobs, "seconds": _SECONDS}
    return render(request, "shop/saw.html", context)


@require_POST
def new_plan(request: HttpRequest) -> HttpResponse:
    """Ask for a cutting plan of jobs; it is searched beside the shop."""
    wanted = [int(text[:15]) for text in request.POST.getlist("job") if text.isascii() and text.isdigit()][
        :_MOST_JOBS
    ]
    jobs = list(Job.objects.filter(pk__in=wanted).order_by("pk"))
    seconds = request.POST.get("seconds", "")
    if not (seconds.isascii() and seconds.isdigit() and 1 <= int(seconds[:6]) <= _LONGEST):
        raise ValueProblem(f'"{seconds[:20]}" is no number of seconds from 1 to {_LONGEST}: choose one')
    plan = start_plan(person_of(request), jobs, int(seconds))
    launch(plan.pk)
    return redirect("saw-plan", plan.pk)


@require_GET
def show_plan(request: HttpRequest, plan: int) -> HttpResponse:
    """A cutting plan: bound and best while it is searched, then every stick."""
    row = get_object_or_404(Plan, pk=plan)
    running = row.state == Search.RUNNING and not broke_off(row)
    if getattr(request, "htmx", False):
        if not running:
            return HttpResponse(status=204, headers={"HX-Refresh": "true"})
        return render(request, "shop/part_plan.html", {"plan": row})
    context: dict[str, Any] = {
        "plan": row, "may": person_of(request).role in WORK, "running": running,
        "trouble": trouble_of(row) if row.state == Search.READY or broke_off(row) else "",
        "problems": row.trouble.splitlines()[:200], "jobs": [one.facts.name for one in jobs_of(row.asked)],
    }  # fmt: skip
    if row.answer:
        context |= _found(plan_of(row)) | {"pictures": _pictures(row), "most": _MOST_PICTURES}
    return render(request, "shop/plan.html", context)


def _found(plan: ShopPlan) -> dict[str, Any]:
    """What a plan comes to, steel by steel, what to order, and every stick."""
    sections = [
        (str(one.steel), str(len(one.sticks)), str(one.setups), f"{100 * one.yield_:.1f} %", money(one.cents),
         proof(one.cents, one.bound))
        for one in plan.cuts.sections
    ]  # fmt: skip
    sections += [
        (str(asked.steel), counted(len(one.sheets), "sheet"), "", f"{100 * one.yield_:.1f} %",
         money(one.cents), proof(one.cents, one.bound))
        for asked, one in zip(plan.question.plates, plan.plates, strict=True)
    ]  # fmt: skip
    sticks = [
        (
            str(section.steel), stick.number,
            _source(stick),
            ", ".join(f"{n} x {mark}" for mark, n in Counter(p.mark for p in stick.pieces).items()),
        )
        for section in plan.cuts.sections
        for stick in section.sticks
    ]  # fmt: skip
    sticks += [
        (str(asked.steel), sheet.number, "a sheet",
         ", ".join(f"{n} x {mark}" for mark, n in Counter(p.mark for p in sheet.pieces).items()))
        for asked, one in zip(plan.question.plates, plan.plates, strict=True)
        for sheet in one.sheets
    ]  # fmt: skip
    return {
        "sections": sections, "sticks": sticks, "order": _order(plan), "total": money(plan.cents),
        "proof": proof(plan.cents, plan.bound),
    }  # fmt: skip


def _order(plan: ShopPlan) -> list[tuple[str, str, int, str]]:
    """What to buy: steel, size, how many, and what a new stick of the yard starts with when one came."""
    system = plan.question.rack.system
    sticks = [
        (
            str(offer.steel), say(offer.length, system), count,
            urlencode(
                {"stock": offer.steel.section, "grade": offer.steel.grade, "finish": offer.steel.finish,
                 "length": exact_text(offer.length, system), "value": f"{offer.cents / 100:.2f}"}
            ),
        )
        for offer, count in plan.cuts.order()
    ]  # fmt: skip
    sheets = [
        (str(sheet.steel), f"{say(sheet.width, system)} x {say(sheet.length, system)}", count, "")
        for plates in plan.plates
        for sheet, count in plates.order()
    ]
    return sticks + sheets  # the yard has sticks only: a sheet that came is not entered there


def _pictures(row: Plan) -> list[tuple[str, str]]:
    """The picture of every stick with what it is; alike ones next to one another have one."""
    plan, job = plan_of(row), jobs_of(row.asked)[0]
    of_mark = {piece.mark: piece for piece in plan.question.pieces}
    found: list[tuple[str, str]] = []
    for section in plan.cuts.sections:
        to_cut = [stick for stick in section.sticks if not stick.done]
        for _, same in groupby(to_cut, key=lambda one: (one.stock.length, one.pieces)):
            alike = list(same)
            first, last = alike[0].number, alike[-1].number
            title = f"{section.steel}, stick {first}" + (f" to {last}, alike" if last > first else "")
            if len(found) < _MOST_PICTURES:
                made = saw_card(job, alike[0], of_mark, plan.question.rack.saw.kerf)
                found.append((title, block_svg(made.picture, title)))
    for asked, plates in zip(plan.question.plates, plan.plates, strict=True):
        for sheet in plates.sheets[: max(0, _MOST_PICTURES - len(found))]:
            title = f"{asked.steel}, sheet {sheet.number}"
            found.append((title, block_svg(sheet_card(job, sheet, plan.question.rack.burner).picture, title)))
    return found


def _source(stick: StickPlan) -> str:
    """Where a stick of a plan comes from, in words."""
    if not isinstance(stick.stock, Held):
        return "to buy"
    if not stick.done:
        return f"{stick.stock.mark} of the yard"
    return (
        "cut already"
        if stick.stock.mark.startswith((CUT, MADE))
        else f"{stick.stock.mark}, given to its piece"
    )


@require_POST
def stop(request: HttpRequest, plan: int) -> HttpResponse:
    """End a search with the best plan kept."""
    stop_plan(person_of(request), get_object_or_404(Plan, pk=plan))
    return redirect("saw-plan", plan)


@require_POST
def choose(request: HttpRequest, plan: int) -> HttpResponse:
    """Cut by a plan from now on."""
    choose_plan(person_of(request), get_object_or_404(Plan, pk=plan))
    return redirect("saw")


@require_GET
def print_plan(_request: HttpRequest, plan: int) -> HttpResponse:
    """The cutting sheets of a plan as PDF."""
    row = get_object_or_404(Plan, pk=plan)
    response = HttpResponse(
        to_pdf(cutting_sheet(jobs_of(row.asked), plan_of(row))), content_type="application/pdf"
    )
    response["Content-Disposition"] = f'attachment; filename="cutting-{row.pk}.pdf"'
    return response


def _kind(planned: StickPlan | SheetPlan) -> str:
    return "sheet" if isinstance(planned, SheetPlan) else "stick"


def _alike(row: Cutting, planned: StickPlan | SheetPlan) -> list[Stick]:
    """The sticks of the yard that could be the one that was bought."""
    if row.stick is not None or isinstance(planned, SheetPlan):
        return []
    stock = planned.stock
    return list(
        Stick.objects.filter(
            where=Where.YARD, stock=stock.steel.section, grade=stock.steel.grade, copy=None,
            ticks=stock.length.ticks,
        )[:50]
    )  # fmt: skip


@require_GET
def card(request: HttpRequest, cutting: int) -> HttpResponse:
    """One stick at the saw, one cut at a time."""
    now = clock()  # before the ticks are read, so that none is younger than it and missing
    rows = Cutting.objects.select_related("plan", "stick", "drop")
    row = get_object_or_404(rows, pk=cutting)
    if row.plan.state != Search.CHOSEN and not row.cuts.exists():
        raise ValueProblem("this cutting plan was put aside: open the saw again")
    made = card_of_cutting(row)
    lines = saw_lines(row, made)
    ticks = {cut.task: cut for cut in row.cuts.all()}
    planned = planned_of(row)
    sheet = isinstance(planned, SheetPlan)
    after = Cutting.objects.filter(plan__state=Search.CHOSEN, done=False).exclude(pk=row.pk)
    other = after.filter(pk__gt=row.pk).first() or after.first()
    context = {
        "onward": reverse("saw-card", args=(other.pk,)) if other else "",
        "onward_words": f"{other.steel}, {_kind(planned_of(other))} {other.number}" if other else "",
        "back_to": reverse("saw"), "finished": row.done,
        "cutting": row, "name": card_name(row), "card": made, "lines": lines, "taken": ticks.get(TAKE),
        "back": ticks.get(DROP), "take": TAKE, "drop": DROP, "now": now,
        "done": len(ticks), "of": len(lines) + 2,
        "asks": not (row.stick.heat if row.stick else sheet and row.heat) and TAKE not in ticks,
        "bought": row.stick is None, "kind": _kind(planned), "sheet": sheet, "alike": _alike(row, planned),
        "shears": any(line.sheared for line in lines),
        "picture": cuts_svg(
            made.picture, f"{_kind(planned)} {row.number} of {row.steel} with its cuts", len(made.cuts)
        ),
        "may": person_of(request).role in WORK and row.plan.state == Search.CHOSEN,
    }  # fmt: skip
    return render(request, "shop/saw_card.html", context)
