"""Ticks: what is done on which piece, once, in order, and whose."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from django.db import transaction
from django.db.models import QuerySet
from django.utils import timezone

from gageline.shop.engine import Task, card_of
from gageline.shop.jobs import current_text
from gageline.shop.logbook import note
from gageline.shop.models import Copy, Person, Sent, Stage, Tick
from gageline.shop.roles import OFFICE
from gageline.shop.sticks import bring_back, use_up

__all__ = [
    "Answer", "Stroke", "clock", "held_copy", "may_take_back", "once", "send_off", "strike", "take_in",
]  # fmt: skip

_NEXT = {Stage.BENCH: Stage.FIT, Stage.FIT: Stage.CHECK, Stage.CHECK: Stage.GATE}
_PLACES = {"bench": Stage.BENCH, "check": Stage.CHECK}  # first word of a task -> its place; Fit has the rest
_BEFORE = {Stage.BENCH: (), Stage.FIT: (Stage.BENCH,), Stage.CHECK: (Stage.BENCH, Stage.FIT)}


@dataclass(frozen=True, slots=True)
class Stroke:
    """A tick as it was sent.

    Args:
        key: of the sender, so that the same one sent twice counts once.
        copy: the piece it was done on.
        card: the card that was on the screen.
        task: of that card.
        done: ticked, or the tick taken back.
        at: when it was done; now when it is not told or lies in the future.
        note: what was typed beside it, as a heat number at the saw.
    """

    key: str
    copy: int
    card: str
    task: str
    done: bool = True
    at: datetime | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Answer:
    """What became of a tick: `done`, or `conflict` with the reason."""

    state: str
    text: str


def clock() -> int:
    """The clock of the shop in milliseconds, by which a tablet knows what a kept page does not show yet."""
    return time.time_ns() // 1_000_000


def strike(person: Person, stroke: Stroke) -> Answer:
    """Tick a task off, or take the tick back; sent again it is answered the same and does nothing."""
    with transaction.atomic():
        copy = held_copy(stroke.copy)
        return once(stroke.key, lambda: _strike(person, stroke, copy))


def held_copy(number: int) -> Copy | None:
    """A copy of a piece that nobody else changes before this transaction ends; None where there is none."""
    return _held().filter(pk=number).first()


def _held() -> QuerySet[Copy]:
    return Copy.objects.select_for_update(of=("self",)).select_related("piece__job")


def once(key: str, work: Callable[[], Answer]) -> Answer:
    """What became of something that a tablet sent; sent again it is answered the same and does nothing.

    Args:
        key: of the sender.
        work: does it, the first time.
    """
    before = Sent.objects.filter(key=key).first()
    if before is not None:
        state, _, text = before.answer.partition(" ")
        return Answer(state, text)
    answer = work()
    Sent.objects.create(key=key, answer=f"{answer.state} {answer.text}"[:300])
    return answer


def _strike(person: Person, stroke: Stroke, copy: Copy | None) -> Answer:
    if copy is None or not copy.active or not copy.piece.active:
        return Answer("conflict", "this piece was taken out of the job: ask the office")
    piece = copy.piece
    name = copy.name
    if stroke.card != piece.card:
        note(person.name, f"tick on an old card of {name} was refused", job=piece.job, piece=piece)
        return Answer(
            "conflict", f"the drawing of {piece.mark} was changed: open the new card and look again"
        )
    place = _place(stroke.task)
    tasks = card_of(current_text(piece.job), piece.mark).tasks(place.value)
    task = next((task for task in tasks if task.code == stroke.task), None)
    if task is None:
        return Answer("conflict", "this card has no such step: open the card again")
    if copy.stage == Stage.GONE:
        return Answer("conflict", f"{name} was sent off already")
    if copy.stage in _BEFORE[place]:
        return Answer(
            "conflict", f"{name} is not ready for this, it still waits at: {Stage(copy.stage).label}"
        )
    known = Tick.objects.filter(copy=copy, card=piece.card, task=stroke.task).first()
    if stroke.done:
        return _tick(person, stroke, copy, known, task, name)
    return _untick(person, copy, known, task, name)


def _place(task: str) -> Stage:
    """Where a task is done."""
    return _PLACES.get(task.split("-", maxsplit=1)[0], Stage.FIT)


def _tick(person: Person, stroke: Stroke, copy: Copy, known: Tick | None, task: Task, name: str) -> Answer:
    piece = copy.piece
    if known is not None:
        same = known.by == person.name
        return Answer("done", "ticked already" if same else f"ticked already by {known.by}")
    now = timezone.now()
    at = min(stroke.at, now) if stroke.at else now
    Tick.objects.create(copy=copy, card=piece.card, task=stroke.task, by=person.name, at=at)
    note(person.name, f"ticked {task.words} on {name}", job=piece.job, piece=piece)
    _move_on(person, copy, name)
    return Answer("done", "")


def _untick(person: Person, copy: Copy, known: Tick | None, task: Task, name: str) -> Answer:
    piece = copy.piece
    if known is None:
        return Answer("done", "")
    if not may_take_back(person, known.by):
        return Answer("conflict", f"ticked by {known.by}, who takes it back or asks the office")
    known.delete()
    whose = "" if known.by == person.name else f", ticked by {known.by},"
    note(person.name, f"took back {task.words}{whose} on {name}", job=piece.job, piece=piece)
    place = _place(task.code)
    if copy.stage != place:
        Copy.objects.filter(pk=copy.pk).update(stage=place)
        note(person.name, f"{name} is back at {place.label}", job=piece.job, piece=piece)
    return Answer("done", "")


def may_take_back(person: Person, by: str) -> bool:
    """Whether somebody may take a tick back: who made it, and the office.

    Args:
        person: who wants to.
        by: the name of who ticked.
    """
    return person.name == by or person.role in OFFICE


def _move_on(person: Person, copy: Copy, name: str) -> None:
    """Move a piece to its next place when everything is ticked where it is, and on where nothing is to do."""
    card = card_of(current_text(copy.piece.job), copy.piece.mark)
    ticked = set(copy.ticks.filter(card=copy.piece.card).values_list("task", flat=True))
    stage = Stage(copy.stage)
    while stage in _NEXT and all(task.code in ticked for task in card.tasks(stage.value)):
        stage = _NEXT[stage]
    if stage != copy.stage:
        Copy.objects.filter(pk=copy.pk).update(stage=stage)
        note(person.name, f"{name} is at {stage.label}", job=copy.piece.job, piece=copy.piece)


def take_in(person: Person, copy: Copy) -> Answer:
    """Note that a piece did not leave after all: it is at the Gate again."""
    with transaction.atomic():
        copy = _held().get(pk=copy.pk)
        if copy.stage != Stage.GONE:
            return Answer("conflict", f"it is not gone but at: {Stage(copy.stage).label}")
        bring_back(person, copy)
        return _passed(person, copy, Stage.GATE, "is back at the Gate")


def send_off(person: Person, copy: Copy) -> Answer:
    """Note that a piece has left through the gate."""
    with transaction.atomic():
        copy = _held().get(pk=copy.pk)
        if copy.stage != Stage.GATE:
            return Answer("conflict", f"it is not at the Gate but: {Stage(copy.stage).label}")
        use_up(person, copy)
        return _passed(person, copy, Stage.GONE, "was sent off")


def _passed(person: Person, copy: Copy, stage: Stage, how: str) -> Answer:
    """Note that a piece went through the gate, one way or the other."""
    Copy.objects.filter(pk=copy.pk).update(stage=stage)
    note(person.name, f"{copy.name} {how}", job=copy.piece.job, piece=copy.piece)
    return Answer("done", "")
