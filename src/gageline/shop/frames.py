"""The frame of a job changed piece by piece: its grid and levels, its columns, its members, or as text."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import tomlkit
from django.db import transaction
from pydantic import BaseModel

from gageline.errors import ValueProblem
from gageline.job import (
    ColumnEntry,
    FrameEntry,
    JobDocument,
    JobProblems,
    MemberEntry,
    Problem,
    parse,
    read_document,
    write_document,
)
from gageline.shop.engine import document_of, full_of
from gageline.shop.fields import Section, form_of
from gageline.shop.jobs import Conflict, current_text, locked, revise
from gageline.shop.models import Job, Person

__all__ = [
    "GRID",
    "KINDS",
    "entry_form",
    "entry_table",
    "frame_tables",
    "new_entry",
    "remove_entry",
    "save_entry",
    "save_text",
    "with_entry",
]

Table = dict[str, Any]
GRID = "grid"
"""The kind of everything in a frame that is neither column nor member: it stands there once."""
KINDS: dict[str, type[BaseModel]] = {"member": MemberEntry, "column": ColumnEntry, GRID: FrameEntry}
_LISTS = ("member", "column")


@dataclass(frozen=True, slots=True)
class _Place:
    """Where a table stands in the list of its kind; None where it is not there."""

    tables: list[Table]
    index: int | None


def frame_tables(document: JobDocument) -> Table:
    """The frame's tables as the document has them."""
    found: Table = parse(write_document(document)).get("frame", {})
    return found


def _place(frame: Table, kind: str, name: str | None) -> _Place:
    tables = list(frame.get(kind, []))
    index = next((n for n, table in enumerate(tables) if table.get("name") == name), None)
    return _Place(tables, index)


def entry_table(document: JobDocument, kind: str, name: str | None) -> Table | None:
    """The table of a member or a column by its name, or everything else of the frame.

    Args:
        document: of the job.
        kind: one of KINDS.
        name: of the member or the column; without meaning for the rest.
    """
    frame = frame_tables(document)
    if kind == GRID:
        return {key: value for key, value in frame.items() if key not in _LISTS}
    place = _place(frame, kind, name)
    return None if place.index is None else place.tables[place.index]


def new_entry(document: JobDocument, kind: str) -> Table:
    """What a new member or column starts with: the next name, and stock and level of the last one."""
    frame = frame_tables(document)
    tables: list[Table] = frame.get(kind, [])
    taken = {table["name"] for list_ in _LISTS for table in frame.get(list_, [])}
    letter = "P" if kind == "column" else "B"
    number = next(n for n in range(1, len(taken) + 2) if f"{letter}{n}" not in taken)
    last = tables[-1] if tables else {}
    kept: Table = {key: last[key] for key in ("stock", "top", "base") if key in last}
    return {"name": f"{letter}{number}", **kept}


def entry_form(kind: str, table: Mapping[str, Any]) -> Section:
    """The form of a table of the frame; members and columns have forms of their own."""
    whole = form_of(KINDS[kind], table)
    if kind != GRID:
        return whole
    rows = tuple(rows for rows in whole.rows if rows.name not in _LISTS)
    return Section(whole.name, whole.label, whole.fields, whole.sections, rows, whole.open)


def with_entry(document: JobDocument, kind: str, table: Table, replaces: str | None) -> str:
    """The text of a document with a table of its frame put in, detailed as a whole.

    Args:
        document: as it stands.
        kind: one of KINDS.
        table: of the member, the column or the rest.
        replaces: the name it stood under; None for a new one.

    Raises:
        JobProblems: with everything that is wrong.
    """
    tables = parse(write_document(document))
    frame: Table = tables.get("frame", {})
    if kind == GRID:
        frame = {**table, **{key: frame[key] for key in _LISTS if key in frame}}
    else:
        place = _place(frame, kind, replaces)
        if place.index is None:
            place.tables.append(table)
        else:
            place.tables[place.index] = table
        frame = {**frame, kind: place.tables}
    return _read({**tables, "frame": frame})


def _read(tables: Table) -> str:
    """The text of a document's tables, read and detailed once as it will be kept."""
    raw = tomlkit.dumps(tables)
    try:
        text = write_document(read_document(raw))
        full_of(text)
    except JobProblems as wrong:  # its lines are those of a text that nobody has seen
        raise JobProblems(tuple(Problem(one.path, one.message) for one in wrong.problems)) from wrong
    return text


def save_entry(
    person: Person, job: Job, kind: str, table: Table, name: str | None, base: int, *, force: bool = False
) -> Conflict | int:
    """Save a member, a column or the rest of the frame that was typed from a revision.

    Args:
        person: who saves.
        job: whose frame it is.
        kind: one of KINDS.
        table: as typed.
        name: that it stood under; None for a new one.
        base: the revision that the form was opened on.
        force: whether the person has seen what another saved meanwhile and chose their own.

    Returns:
        The number of the new revision, or what another has saved meanwhile.

    Raises:
        JobProblems: with everything that is wrong with it.
    """
    with transaction.atomic():
        job = locked(job)
        text = current_text(job)
        document = document_of(text)
        there = kind == GRID or name is not None
        if there and base != job.current and not force:
            then = job.revisions.filter(number=base).first()
            old = entry_table(document_of(then.text), kind, name) if then else None
            now = entry_table(document, kind, name)
            if now not in (old, table):
                latest = job.revisions.get(number=job.current)
                return Conflict(old, now, table, latest.by, job.current)
        new = with_entry(document, kind, table, name)
        if new == text:
            return job.current
        called = "grid, levels and points" if kind == GRID else f"{kind} {table.get('name')}"
        renamed = f", before {name}" if name and name != table.get("name") else ""
        return revise(person, job, new, f"{'changed' if there else 'added'} {called}{renamed}")


def remove_entry(person: Person, job: Job, kind: str, name: str) -> None:
    """Take a member or a column out of the frame; the revision before has it still.

    Raises:
        JobProblems: when something else of the frame stands on it.
        ValueProblem: when the frame has no such member or column.
    """
    with transaction.atomic():
        job = locked(job)
        tables = parse(current_text(job))
        frame: Table = tables.get("frame", {})
        place = _place(frame, kind, name)
        if place.index is None:
            raise ValueProblem(f'the frame has no {kind} "{name}": it was taken out or renamed meanwhile')
        del place.tables[place.index]
        rest = {key: value for key, value in frame.items() if key != kind}
        frame = {**rest, kind: place.tables} if place.tables else rest
        revise(person, job, _read({**tables, "frame": frame}), f"took out {kind} {name}")


def save_text(person: Person, job: Job, text: str, base: int) -> Conflict | int:
    """Save the whole job document as it was typed.

    Args:
        person: who saves.
        job: whose document it is.
        text: of the document.
        base: the revision that it was opened on.

    Returns:
        The number of the new revision, or what another has saved meanwhile.

    Raises:
        JobProblems: with everything that is wrong with it, each with its line.
    """
    full_of(text)  # its problems have the lines that were typed
    with transaction.atomic():
        job = locked(job)
        before = current_text(job)
        new = write_document(read_document(text))
        if new == before:
            return job.current
        if base != job.current:
            latest = job.revisions.get(number=job.current)
            return Conflict(None, {"document": before}, {"document": text}, latest.by, job.current)
        return revise(person, job, new, "changed the job document")
