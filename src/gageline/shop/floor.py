"""The places of the floor: Bench, Fit and Gate, and the ticks that come from there."""

from __future__ import annotations

import json
import uuid
from dataclasses import replace
from datetime import datetime
from functools import lru_cache
from typing import Any

from django.db.models import Max
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect, JsonResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from gageline.errors import GagelineError, ValueProblem
from gageline.job import Job
from gageline.part import Weld
from gageline.sheets import Scribe
from gageline.shop.engine import card_of, document_of, job_of, layout_of
from gageline.shop.filters import weight
from gageline.shop.inspecting import let_go
from gageline.shop.jobs import current_text
from gageline.shop.models import Copy, Person, Stage
from gageline.shop.office import person_of, whole
from gageline.shop.pictures import step_svg, stick_svg
from gageline.shop.readings import OnStick, half_read, on_stick, readings_on, stick_items, take, taken
from gageline.shop.roles import WORK
from gageline.shop.sawing import strike_saw
from gageline.shop.selectors import SHOWN, beyond, marks_table, onward, task_lines, waiting
from gageline.shop.ticking import Answer, Stroke, clock, send_off, strike, take_in
from gageline.steel import Profile
from gageline.units import System

__all__ = ["bench", "card", "counts", "fit", "fit_card", "gate", "send", "take_in_again", "tick", "ticks"]

_CARDS = {
    "saw": "saw-card", "bench": "bench-card", "stick": "bench-card", "read": "check-card",
    "check": "check-card",
}  # fmt: skip
_MOST_AT_ONCE = 500
_GONE = 50
_LONGEST_NOTE = 200


@require_GET
def bench(request: HttpRequest) -> HttpResponse:
    """Pieces waiting for layout."""
    return _waiting(request, Stage.BENCH, "bench-card")


@require_GET
def fit(request: HttpRequest) -> HttpResponse:
    """Pieces waiting for fit-up and weld."""
    return _waiting(request, Stage.FIT, "fit-card")


def _waiting(request: HttpRequest, stage: Stage, opens: str) -> HttpResponse:
    context = {"stage": stage, "waiting": waiting(stage), "beyond": beyond(stage), "opens": opens}
    template = "shop/part_waiting.html" if getattr(request, "htmx", False) else "shop/waiting.html"
    return render(request, template, context)


@require_GET
def gate(request: HttpRequest) -> HttpResponse:
    """What is ready to go, and what went last."""
    ready = Copy.objects.filter(active=True, stage=Stage.GATE).select_related("piece__job")[:SHOWN]
    gone = (
        Copy.objects.filter(active=True, stage=Stage.GONE)
        .select_related("piece__job")
        .annotate(last=Max("ticks__at"))
        .order_by("-last", "-id")[:_GONE]
    )
    lines = [(copy, _system(copy)) for copy in ready]
    totals = [
        weight(sum(copy.piece.weight or 0 for copy, own in lines if own is system), system)
        for system in System
        if any(own is system for _, own in lines)
    ]
    context = {
        "ready": lines, "beyond": beyond(Stage.GATE), "gone": gone,
        "weight": " and ".join(totals), "may": person_of(request).role in WORK,
    }  # fmt: skip
    template = "shop/part_gate.html" if getattr(request, "htmx", False) else "shop/gate.html"
    return render(request, template, context)


def _system(copy: Copy) -> System:
    """The units of the job that a piece belongs to."""
    return document_of(current_text(copy.piece.job)).job.units


@require_POST
def send(request: HttpRequest, copy: int) -> HttpResponse:
    """A piece has left through the gate."""
    return _at_gate(send_off(person_of(request), get_object_or_404(Copy, pk=copy)))


@require_POST
def take_in_again(request: HttpRequest, copy: int) -> HttpResponse:
    """A piece did not leave after all."""
    return _at_gate(take_in(person_of(request), get_object_or_404(Copy, pk=copy)))


def _at_gate(answer: Answer) -> HttpResponse:
    if answer.state == "conflict":
        raise ValueProblem(answer.text)
    return redirect("gate")


@require_GET
def card(request: HttpRequest, copy: int) -> HttpResponse:
    """The bench card of a piece, one step at a time."""
    return _card(request, copy, "bench")


@require_GET
def fit_card(request: HttpRequest, copy: int) -> HttpResponse:
    """Fittings with their places, welds, tack order."""
    return _card(request, copy, "fit")


@lru_cache(maxsize=256)  # the cards that are open on the floor
def _pictures(text: str, mark: str, place: str) -> tuple[dict[str, str], str]:
    """The picture of each task of a place by its code, and that of the whole stick."""
    layout = layout_of(text, mark)
    tasks = card_of(text, mark).tasks(place)
    pictures = {task.code: step_svg(layout, task.step) if task.step else "" for task in tasks}
    return pictures, stick_svg(layout.main, f"{mark}, unfolded")


def _card(request: HttpRequest, pk: int, place: str) -> HttpResponse:
    now = clock()  # before the ticks are read, so that none is younger than it and missing
    copy = get_object_or_404(Copy.objects.select_related("piece__job"), pk=pk)
    piece, person = copy.piece, person_of(request)
    text = current_text(piece.job)
    if not piece.active:
        raise ValueProblem(f"{piece.mark} was taken out of the job: ask the office")
    layout = layout_of(text, piece.mark)
    pictures, stick = _pictures(text, piece.mark, place)
    on, _ = _on(copy)
    lines = tuple(
        replace(line, picture=pictures[line.task.code], readings=readings_on(line.task.step, on))
        for line in task_lines(copy, card_of(text, piece.mark), place)
    )
    context: dict[str, Any] = {
        "copy": copy,
        "piece": piece,
        "place": place,
        "lines": lines,
        "done": sum(line.tick is not None for line in lines),
        "of": len(lines),
        "finished": all(line.tick for line in lines),
        **onward(copy, place),
        "stick": stick,
        "marks": marks_table(layout.main.steps),
        "system": layout.system,
        "lengths": {
            line.task.code: _weld_words(line.task.weld, job_of(text)) for line in lines if line.task.weld
        },
        "may": person.role in WORK,
        "now": now,
        **(_stick_context(copy, layout.main.part.profile) if place == "bench" else {}),
    }
    return render(request, "shop/card.html", context)


def _stick_context(copy: Copy, profile: Profile) -> dict[str, Any]:
    """What was read on the stick of a piece, and what that changes."""
    found = taken(copy, "bench")
    items = [(item, found[item.name].value if item.name in found else "") for item in stick_items(profile)]
    on, trouble = _on(copy)
    return {"items": items, "on": on, "trouble": trouble, "half": half_read(copy)}


def _on(copy: Copy) -> tuple[OnStick | None, str]:
    """The piece on its stick, or what is wrong with what was read on it."""
    try:
        return on_stick(copy), ""
    except GagelineError as refused:
        return None, str(refused)


def _weld_words(weld: Weld, job: Job) -> tuple[str, str]:
    """The size of a weld and how many runs of which length, as the sheets write them."""
    scribe, unit = Scribe.of(job), " mm" if job.system is System.MM else ""
    return f"{scribe.fine(weld.size)}{unit}", f"{weld.runs} x {scribe.tell(weld.length)}{unit}"


@require_POST
def tick(request: HttpRequest) -> HttpResponse:
    """One tick by a plain form, for a browser without script."""
    given = request.POST
    key = given.get("key", "") or str(uuid.uuid4())
    stroke = Stroke(
        key[:64], whole(given.get("copy", "")), given.get("card", ""),
        given.get("task", ""), done=given.get("done", "1") == "1", note=given.get("note", "")[:_LONGEST_NOTE],
    )  # fmt: skip
    answer = _struck(person_of(request), stroke)
    if answer.state == "conflict":
        raise ValueProblem(answer.text)
    place = _CARDS.get(stroke.task.split("-")[0], "fit-card")
    return HttpResponseRedirect(f"{reverse(place, args=(stroke.copy,))}#{stroke.task}")


@require_POST
def ticks(request: HttpRequest) -> HttpResponse:
    """Ticks from a tablet, in the order they were made; each is answered by its key."""
    person = person_of(request)
    try:
        strokes = [_stroke(item, person.pk) for item in _items(request.body)]
    except (ValueError, KeyError, TypeError) as wrong:
        return JsonResponse({"refused": f"these are no ticks: {str(wrong)[:100]}"}, status=400)
    answers = []
    for stroke in strokes:
        answer = _struck(person, stroke)
        answers.append({"key": stroke.key, "state": answer.state, "text": answer.text})
    return JsonResponse({"answers": answers, "now": clock()})


def _items(body: bytes) -> list[dict[str, Any]]:
    items = json.loads(body)["ticks"]
    if not isinstance(items, list) or len(items) > _MOST_AT_ONCE:
        raise ValueError(f"a list of at most {_MOST_AT_ONCE} is expected")
    return items


def _stroke(item: dict[str, Any], person: int) -> Stroke:
    if item["who"] != person:
        raise ValueError("they are somebody else's: that person signs in to send them")
    if not (isinstance(item["copy"], int) and 0 < item["copy"] < 2**53):
        raise ValueError("a piece is told by its number")
    key = item["key"]
    if not (isinstance(key, str) and 8 <= len(key) <= 64):
        raise ValueError("a key has 8 to 64 characters")
    at = datetime.fromisoformat(item["at"])
    if at.tzinfo is None:
        raise ValueError("a time without its zone")
    return Stroke(
        key, item["copy"], str(item["card"])[:16], str(item["task"])[:24], bool(item["done"]), at,
        str(item.get("note", ""))[:_LONGEST_NOTE],
    )  # fmt: skip


def _struck(person: Person, stroke: Stroke) -> Answer:
    """A tick at the saw or on a piece, as its task says."""
    match stroke.task.split("-", maxsplit=1)[0]:
        case "saw":
            return strike_saw(person, stroke)
        case "read" | "stick":
            return take(person, stroke)
        case "check":
            return let_go(person, stroke)
        case _:
            return strike(person, stroke)


@require_GET
def counts(request: HttpRequest) -> HttpResponse:
    """The strip of places with what waits at each, as it is now."""
    return render(request, "shop/part_strip.html", {})
