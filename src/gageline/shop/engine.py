"""The rooms below, asked on behalf of the pages: a job of its text, its pieces laid out, their cards."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from gageline.detail import FullJob, read_full
from gageline.exchange import plain
from gageline.job import Job, JobDocument, PieceEntry, check_job, read_document
from gageline.layout import Layout, Step, lay_out
from gageline.part import Assembly, Finding, Weld
from gageline.quality import Item, Rules, items_of, rules_of
from gageline.sheets import check_texts, findings_by_card
from gageline.strength import JobStrength, check_strength, strong_rows
from gageline.units import System

__all__ = [
    "INSPECTION",
    "Card",
    "Task",
    "card_key",
    "card_of",
    "document_of",
    "findings_of",
    "findings_on",
    "frame_key",
    "full_of",
    "is_framed",
    "items_for",
    "job_of",
    "layout_of",
    "rules_for",
    "strength_of",
]

_PAPERWORK = frozenset({"mark", "quantity", "finish"})
"""Keys of a piece that change nothing of what is struck."""
INSPECTION = "check-pass"
"""The task that ends an inspection."""


@dataclass(frozen=True, slots=True)
class Task:
    """One thing to tick off.

    Args:
        code: unique on the card: `bench-3`, `fit-2`, `weld-1`, `check-pass`.
        step: what to do; None of a weld and of the inspection.
        weld: what to weld; None of a step and of the inspection.
    """

    code: str
    step: Step | None = None
    weld: Weld | None = None

    @property
    def words(self) -> str:
        """What it is called in the log."""
        if self.step is not None:
            return f"{self.step.number}. {self.step.title}"
        return f"weld of the {self.weld.fitting}" if self.weld else "the inspection"


@dataclass(frozen=True, slots=True)
class Card:
    """What is done to a piece, place by place.

    Args:
        bench: steps of the layout, up to the first fitting.
        fit: steps of fitting up, then the welds.
        check: the one word that lets it go to the Gate.
    """

    bench: tuple[Task, ...]
    fit: tuple[Task, ...]
    check: tuple[Task, ...] = (Task(INSPECTION),)

    def tasks(self, place: str) -> tuple[Task, ...]:
        """The tasks of one place; none where nothing is ticked."""
        return {"bench": self.bench, "fit": self.fit, "check": self.check}.get(place, ())


@lru_cache(maxsize=64)  # the jobs that are worked on
def document_of(text: str) -> JobDocument:
    """The document of a saved text."""
    return read_document(text)


@lru_cache(maxsize=64)
def full_of(text: str) -> FullJob:
    """The job of a text, its frame detailed with the rows that the strength of its ends asks for.

    Raises:
        JobProblems: with everything that is wrong with it.
    """
    return strong_rows(read_full(text))


def job_of(text: str) -> Job:
    """The job of a saved text with every piece, as drawn and from its frame."""
    return full_of(text).job


def is_framed(text: str, mark: str) -> bool:
    """Whether a piece comes from the frame and not from a drawing."""
    return all(piece.mark != mark for piece in document_of(text).pieces)


@lru_cache(maxsize=64)
def findings_of(text: str) -> tuple[Finding, ...]:
    """What detailing, the rules of the trade and the sheets have to say about a saved text."""
    full = full_of(text)
    return (*findings_by_card(full.findings, full.detailed), *check_job(full.job), *check_texts(full.job))


def findings_on(text: str, mark: str) -> tuple[Finding, ...]:
    """What is said of one piece of a saved text, and of the ends of the members that it stands for."""
    detailed = full_of(text).detailed
    framed = findings_by_card(detailed.said.get(mark, ()), detailed) if detailed else ()
    own = (one for one in findings_of(text) if one.subject.split(" ")[0] == mark)
    return tuple(dict.fromkeys((*own, *framed)))


@lru_cache(maxsize=64)
def strength_of(text: str) -> JobStrength:
    """The checks of a saved text by its own method."""
    full = full_of(text)
    return check_strength(full.job, None, full.detailed)


@lru_cache(maxsize=512)
def layout_of(text: str, mark: str) -> Layout:
    """A piece of a saved text, laid out."""
    job = job_of(text)
    return lay_out(job.piece(mark), job.practice, job.system)


def rules_for(layout: Layout, full: FullJob) -> Rules:
    """The rules that a piece is inspected by; a column is in compression."""
    return rules_of(
        layout.main.part,
        metric=full.job.system is System.MM,
        tolerance_class=full.job.practice.tolerance_class,
        compression=full.is_column(layout.assembly.mark),
    )


@lru_cache(maxsize=512)
def items_for(text: str, mark: str) -> tuple[Item, ...]:
    """What is read on a piece of a saved text, in the order one walks round it."""
    layout = layout_of(text, mark)
    return items_of(layout, rules_for(layout, full_of(text)))


@lru_cache(maxsize=512)
def card_of(text: str, mark: str) -> Card:
    """The tasks of a piece: what is done at the bench, and what is done when it is fitted up."""
    layout = layout_of(text, mark)
    steps = layout.main.steps
    names = {fitting.name for fitting in layout.assembly.fittings}
    first = next((index for index, step in enumerate(steps) if step.for_ in names), len(steps))
    if 0 < first < len(steps) and not steps[first - 1].for_:
        first -= 1  # the turn that brings the first fitting's face up
    bench = tuple(Task(f"bench-{step.number}", step) for step in steps[:first])
    fit = tuple(Task(f"fit-{step.number}", step) for step in steps[first:])
    welds = tuple(Task(f"weld-{n}", weld=weld) for n, weld in enumerate(layout.assembly.welds, 1))
    return Card(bench, fit + welds)


def card_key(document: JobDocument, entry: PieceEntry) -> str:
    """A short name of everything that a card is made from: equal where the same is to be struck."""
    entries = {piece.mark: piece for piece in document.pieces}
    chain = [entry]
    while (other := chain[-1].as_hand_of) and other in entries and entries[other] not in chain:
        chain.append(entries[other])
    context = {"system": document.job.units}
    made: list[Any] = [document.job.units, document.practice.model_dump(mode="json", context=context)]
    for piece in chain:
        table = piece.model_dump(mode="json", context=context, exclude_unset=True)
        made.append({key: value for key, value in table.items() if key not in _PAPERWORK})
    return _short(made)


def frame_key(job: Job, assembly: Assembly) -> str:
    """The same for a piece of the frame: equal where detailing comes to the same piece."""
    alone = replace(assembly, main=replace(assembly.main, mark=""), quantity=1, finish="")
    return _short([job.system, plain(job.practice), plain(alone)])


def _short(made: list[Any]) -> str:
    return hashlib.sha256(json.dumps(made, sort_keys=True).encode()).hexdigest()[:16]
