"""What the pages show, read and put in order; nothing is written here."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from django.db.models import Count, Q
from django.urls import reverse

from gageline.layout import Step
from gageline.shop.engine import Card, Task, card_of, items_for
from gageline.shop.jobs import current_text
from gageline.shop.models import Copy, Job, Piece, Stage, Tick

__all__ = [
    "SHOWN",
    "Line",
    "ReadingLine",
    "TaskLine",
    "Waiting",
    "beyond",
    "jobs_with_counts",
    "marks_table",
    "onward",
    "piece_lines",
    "task_lines",
    "waiting",
]

SHOWN = 500
"""Pieces that a page of a place shows at once."""
_STAGES = tuple(stage.value for stage in Stage)


@dataclass(frozen=True, slots=True)
class Line:
    """A piece in the list of a job.

    Args:
        piece: the piece.
        states: how many of it are where, in words.
        weight: of all of them, lb; None until weighed.
    """

    piece: Piece
    states: str
    weight: float | None


@dataclass(frozen=True, slots=True)
class Waiting:
    """A piece that waits at a place.

    Args:
        copy: the piece.
        done: tasks ticked of this place, at Check lines read.
        of: tasks of this place, at Check lines of the sheet.
        more: of the same mark that wait here too and were not begun; they have no line of their own.
    """

    copy: Copy
    done: int
    of: int
    more: int = 0


@dataclass(frozen=True, slots=True)
class ReadingLine:
    """A reading of a step as it is struck on the stick in hand.

    Args:
        text: what the tape reads.
        drawn: what it reads on steel as drawn, where that is something else; empty where it is the same.
        why: what changed it.
        hook: where the tape is hooked, where that is another place than on steel as drawn.
    """

    text: str
    drawn: str = ""
    why: str = ""
    hook: str = ""


@dataclass(frozen=True, slots=True)
class TaskLine:
    """A task with who ticked it, its picture and its readings; `tick` is None while it is to be done."""

    task: Task
    tick: Tick | None
    picture: str = ""
    readings: tuple[ReadingLine, ...] = ()


def jobs_with_counts() -> Iterable[Job]:
    """The jobs, newest first, with how many pieces each has and how many are ready or gone."""
    active = Q(pieces__copies__active=True)
    ready = active & Q(pieces__copies__stage__in=(Stage.GATE, Stage.GONE))
    return Job.objects.annotate(
        all=Count("pieces__copies", filter=active), ready=Count("pieces__copies", filter=ready)
    ).order_by("-id")


def piece_lines(job: Job) -> tuple[Line, ...]:
    """The pieces of a job in the order of its document."""
    rows = job.pieces.filter(active=True).order_by("position")
    counts: dict[int, dict[str, int]] = {}
    found = (
        Copy.objects.filter(piece__job=job, active=True)
        .values_list("piece_id", "stage")
        .annotate(n=Count("id"))
    )
    for piece, stage, number in found.order_by():
        counts.setdefault(piece, {})[stage] = number
    return tuple(
        Line(row, _states(counts.get(row.pk, {})), None if row.weight is None else row.weight * row.quantity)
        for row in rows
    )


def _states(counts: dict[str, int]) -> str:
    total = sum(counts.values())
    said = [(stage, counts[stage]) for stage in _STAGES if counts.get(stage)]
    if len(said) == 1:
        return str(Stage(said[0][0]).label)
    return ", ".join(f"{number} of {total} {Stage(stage).label}" for stage, number in said)


def waiting(stage: Stage) -> tuple[Waiting, ...]:
    """The pieces that wait at a place, by jobs and documents; of alike ones not begun the first."""
    copies = (
        Copy.objects.filter(active=True, stage=stage)
        .select_related("piece__job")
        .prefetch_related("ticks", "readings")
        .order_by("piece__job_id", "piece__position", "number")[:SHOWN]
    )
    texts: dict[int, str] = {}
    found: list[Waiting] = []
    fresh: dict[int, int] = {}  # a mark whose first untouched piece has a line already, and which
    for copy in copies:
        job = copy.piece.job
        text = texts.setdefault(job.pk, "") or current_text(job)
        texts[job.pk] = text
        one = Waiting(copy, *_progress(copy, text, stage))
        line = fresh.get(copy.piece_id)
        if line is not None and not one.done:
            found[line] = replace(found[line], more=found[line].more + 1)
            continue
        if not one.done:
            fresh[copy.piece_id] = len(found)
        found.append(one)
    return tuple(found)


def beyond(stage: Stage) -> int:
    """How many pieces are at a place beyond those that its page shows."""
    return max(0, Copy.objects.filter(active=True, stage=stage).count() - SHOWN)


def onward(copy: Copy, place: str) -> dict[str, object]:
    """Where one goes from a card that is done: the next piece that waits at its place, or all of them.

    Args:
        copy: whose card it is.
        place: bench, fit or check.
    """
    others = Copy.objects.filter(active=True, stage=place).exclude(pk=copy.pk).select_related("piece__job")
    piece = copy.piece
    after = (
        Q(piece=piece, number__gt=copy.number)
        | Q(piece__job_id=piece.job_id, piece__position__gt=piece.position)
        | Q(piece__job_id__gt=piece.job_id)
    )
    other = others.filter(after).first() or others.first()
    words = f"{other.name}, {other.piece.stock}, {other.piece.length}" if other else ""
    address = reverse(f"{place}-card", args=(other.pk,)) if other else ""
    return {"onward": address, "onward_words": words, "back_to": reverse(place)}


def _progress(copy: Copy, text: str, stage: Stage) -> tuple[int, int]:
    """How much of what is done at a place is done: tasks ticked, or at Check what was read."""
    card, mark = copy.piece.card, copy.piece.mark
    if stage is Stage.CHECK:
        names = {item.name for item in items_for(text, mark)}
        newest = {one.name: one.value for one in copy.readings.all() if one.card == card}
        return sum(bool(newest.get(name)) for name in names), len(names)
    codes = {task.code for task in card_of(text, mark).tasks(stage.value)}
    return len({tick.task for tick in copy.ticks.all() if tick.card == card} & codes), len(codes)


def task_lines(copy: Copy, card: Card, place: str) -> tuple[TaskLine, ...]:
    """The tasks of a place, each with its tick."""
    ticks = {tick.task: tick for tick in copy.ticks.filter(card=copy.piece.card)}
    return tuple(TaskLine(task, ticks.get(task.code)) for task in card.tasks(place))


def marks_table(steps: Iterable[Step]) -> tuple[tuple[str, ...], ...]:
    """The readings of a card as rows of a table, for those who listen: step, face, from where, readings."""
    return tuple(
        (
            str(step.number),
            step.title,
            str(step.face or ""),
            step.from_,
            ", ".join(reading.text for reading in step.readings),
        )
        for step in steps
        if step.readings
    )
