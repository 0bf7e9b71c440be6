"""Jobs are made, changed and taken back here; every change is a revision, and the log has a line for it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import tomlkit
from django.db import transaction

from gageline.errors import GagelineError, ValueProblem
from gageline.job import JobDocument, parse, read_document, write_document
from gageline.sheets import Scribe
from gageline.shop.drafts import with_piece
from gageline.shop.engine import card_key, document_of, frame_key, full_of, job_of
from gageline.shop.logbook import note
from gageline.shop.models import Copy, Job, Person, Piece, Revision, Stage
from gageline.takeoff import bill_of_piece
from gageline.units import System

__all__ = [
    "Conflict",
    "current_text",
    "import_job",
    "locked",
    "make_job",
    "piece_table",
    "remove_piece",
    "revise",
    "save_facts",
    "save_piece",
    "take_back",
    "take_back_piece",
    "weigh_some",
]

Table = dict[str, Any]
_WEIGHED_AT_ONCE = 40


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two people changed the same piece: what it was, what it is now, what was sent.

    Args:
        base: the table both started from.
        theirs: the table that is saved now.
        mine: the table that was sent.
        by: who saved meanwhile.
        number: the revision that is current now.
    """

    base: Table | None
    theirs: Table | None
    mine: Table
    by: str
    number: int


def current_text(job: Job) -> str:
    """The document of a job as it stands."""
    return job.revisions.get(number=job.current).text


def piece_table(document: JobDocument, mark: str | None) -> Table | None:
    """The table of a piece in a document, None where it has no such piece."""
    if not document.pieces:
        return None
    tables: list[Table] = parse(write_document(document)).get("piece", [])
    return next((table for table in tables if table["mark"] == mark), None)


def _empty_document(name: str, number: str, units: System) -> str:
    """The text of a job that has no pieces yet: a frame without members stands in for them."""
    facts = {"name": name, "units": units.value} | ({"number": number} if number else {})
    return write_document(read_document(tomlkit.dumps({"job": facts, "frame": {}})))


def make_job(person: Person, name: str, number: str, units: System) -> Job:
    """A new job without pieces.

    Raises:
        JobProblems: when name or number cannot be used.
    """
    return _start(person, _empty_document(name, number, units), "made the job")


def import_job(person: Person, content: bytes) -> Job:
    """A job from the bytes of a job document.

    Raises:
        GagelineError: with everything that is wrong with it.
    """
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as refused:
        raise ValueProblem("the file is not UTF-8 text: a job document in TOML is expected") from refused
    full_of(text)
    return _start(person, write_document(read_document(text)), "imported the job")


def _start(person: Person, text: str, what: str) -> Job:
    facts = document_of(text).job
    with transaction.atomic():
        job = Job.objects.create(name=facts.name, number=facts.number)
        revise(person, job, text, what)
    return job


def locked(job: Job) -> Job:
    """A job as it stands, held until the transaction ends so that two saves come one after the other."""
    return Job.objects.select_for_update().get(pk=job.pk)


def revise(person: Person, job: Job, text: str, what: str, piece: str | None = None) -> int:
    """Add a revision, bring the rows of the pieces in line with it, and note who did it."""
    before = current_text(job) if job.current else None
    job.current += 1
    facts = document_of(text).job
    job.name, job.number = facts.name, facts.number
    job.save()
    Revision.objects.create(job=job, number=job.current, text=text, what=what[:300], by=person.name)
    _bring_in_line(person, job, text, before)
    row = job.pieces.filter(mark=piece).first() if piece else None
    note(person.name, what, job=job, piece=row, revision=job.current)
    return job.current


def _bring_in_line(person: Person, job: Job, text: str, before: str | None) -> None:
    document = document_of(text)
    built = job_of(text)
    entries = {entry.mark: entry for entry in document.pieces}
    rows = {row.mark: row for row in job.pieces.all()}
    marks = set()
    for position, assembly in enumerate(built.assemblies):
        mark = assembly.mark
        marks.add(mark)
        key = card_key(document, entries[mark]) if mark in entries else frame_key(built, assembly)
        row = rows.get(mark) or Piece(job=job, mark=mark)
        changed = mark in rows and row.card != key
        if row.card != key:
            row.weight = None
        unit = " mm" if built.system is System.MM else ""
        row.position, row.quantity, row.active, row.card = position, assembly.quantity, True, key
        row.stock = assembly.main.stock.designation
        row.length = f"{Scribe.of(built, assembly.main).tell(assembly.main.length)}{unit}"
        row.save()
        _copies_in_line(row)
        if changed:
            _back_to_bench(person, job, row)
    for mark, row in rows.items():
        if mark not in marks and row.active:
            row.active = False
            row.save()
            row.copies.update(active=False)
    if before is None:
        weigh_some(job, _WEIGHED_AT_ONCE)


def _copies_in_line(row: Piece) -> None:
    have = row.copies.count()
    Copy.objects.bulk_create(Copy(piece=row, number=n) for n in range(have + 1, row.quantity + 1))
    row.copies.filter(number__lte=row.quantity).update(active=True)
    row.copies.filter(number__gt=row.quantity).update(active=False)


def _back_to_bench(person: Person, job: Job, row: Piece) -> None:
    """Its drawing changed: what was ticked on the old card counts no more, and the log says so."""
    begun = row.copies.filter(active=True).exclude(stage=Stage.GONE)
    touched = begun.filter(ticks__isnull=False).distinct().count()
    begun.exclude(stage=Stage.BENCH).update(stage=Stage.BENCH)
    if touched:
        what = (
            f"{row.mark} changed: ticks on {touched} begun pieces count no more, they are back at the Bench"
        )
        note(person.name, what, job=job, piece=row)
    gone = row.copies.filter(active=True, stage=Stage.GONE).count()
    if gone:
        note(person.name, f"{row.mark} changed after {gone} were sent off", job=job, piece=row)


def save_piece(
    person: Person, job: Job, table: Table, mark: str | None, base: int, *, force: bool = False
) -> Conflict | int:
    """Save a piece that was typed from a revision.

    Args:
        person: who saves.
        job: of the piece.
        table: of the piece.
        mark: that it stood under; None for a new piece.
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
        if base != job.current and mark is not None and not force:
            then = job.revisions.filter(number=base).first()
            old = piece_table(document_of(then.text), mark) if then else None
            now = piece_table(document, mark)
            if now not in (old, table):
                latest = job.revisions.get(number=job.current)
                return Conflict(old, now, table, latest.by, job.current)
        new = with_piece(document, table, mark)
        if new == text:
            return job.current
        name = str(table.get("mark"))
        what = f"added {name}" if piece_table(document, mark) is None else f"changed {name}"
        renamed = f", before {mark}" if mark and mark != name else ""
        if renamed:
            _rename(job, str(mark), name)
        return revise(person, job, new, what + renamed, name)


def _rename(job: Job, old: str, new: str) -> None:
    """Keep the row of a piece, with all that was done to it, under its new mark."""
    job.pieces.filter(mark=new, active=False).update(mark=f"{new[:18]}+{job.current}")
    job.pieces.filter(mark=old).update(mark=new)


def remove_piece(person: Person, job: Job, mark: str) -> None:
    """Take a piece out of a job; its history stays.

    Raises:
        GagelineError: when another piece is its opposite hand.
    """
    with transaction.atomic():
        job = locked(job)
        tables = parse(current_text(job))
        rest = [table for table in tables.get("piece", []) if table["mark"] != mark]
        tables.pop("piece", None)
        tables = {**tables, "piece": rest} if rest else {**tables, "frame": tables.get("frame", {})}
        text = tomlkit.dumps(tables)
        full_of(text)
        revise(person, job, write_document(read_document(text)), f"took out {mark}", mark)


def save_facts(person: Person, job: Job, mine: dict[str, Table], base: int) -> int | Conflict:
    """Save what the job is and the shop's practice for it.

    Args:
        person: who saves.
        job: of which.
        mine: the tables as typed, by their keys.
        base: the revision that the form was opened on.

    Returns:
        The number of the new revision, or what another has saved meanwhile.

    Raises:
        JobProblems: with everything that is wrong with it.
    """
    with transaction.atomic():
        job = locked(job)
        tables = parse(current_text(job))
        theirs = {key: tables.get(key, {}) for key in mine}
        then = job.revisions.filter(number=base).first()
        before = parse(then.text) if then else {}
        old = {key: before.get(key, {}) for key in mine}
        if base != job.current and theirs not in (old, mine):
            return Conflict(old, theirs, mine, job.revisions.get(number=job.current).by, job.current)
        text = tomlkit.dumps({**tables, **mine})
        full_of(text)
        return revise(person, job, write_document(read_document(text)), "changed facts or practice")


def take_back(person: Person, job: Job, number: int) -> None:
    """Bring back the whole job as it was in a revision; that is a new revision."""
    with transaction.atomic():
        job = locked(job)
        text = job.revisions.get(number=number).text
        revise(person, job, text, f"brought back revision {number}")


def take_back_piece(person: Person, job: Job, mark: str, number: int) -> None:
    """Bring back one piece as it was in a revision.

    Raises:
        ValueProblem: when that revision has no such piece.
    """
    table = piece_table(document_of(job.revisions.get(number=number).text), mark)
    if table is None:
        raise ValueProblem(f"revision {number} has no piece {mark}: choose another revision")
    with transaction.atomic():
        job = locked(job)
        document = document_of(current_text(job))
        text = with_piece(document, table, mark)
        revise(person, job, text, f"brought back {mark} of revision {number}", mark)


def weigh_some(job: Job, most: int = _WEIGHED_AT_ONCE) -> None:
    """Weigh pieces that have not been weighed since they changed, a few at a time."""
    waiting = list(job.pieces.filter(active=True, weight__isnull=True)[:most])
    if not waiting:
        return
    built = {assembly.mark: assembly for assembly in job_of(current_text(job)).assemblies}
    for row in waiting:
        try:
            weight = bill_of_piece(built[row.mark]).mass.weight
        except GagelineError:
            continue  # a piece without a body has a finding that says so
        Piece.objects.filter(pk=row.pk, card=row.card).update(weight=weight)
