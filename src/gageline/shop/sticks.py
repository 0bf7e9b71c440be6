"""Sticks of the yard are made, changed, taken out and given to a piece here; every change is a revision."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any

import tomlkit
from django.db import IntegrityError, transaction
from django.db.models import F

from gageline.errors import ValueProblem
from gageline.job import JobProblems, Problem, filled, parse
from gageline.shop.jobs import Conflict
from gageline.shop.logbook import note
from gageline.shop.models import Copy, Person, Stage, Stick, StickRevision, Where
from gageline.stock import Held, RackDocument, read_rack
from gageline.units import System

__all__ = [
    "HELD",
    "MEASURED",
    "WAY",
    "add_revision",
    "add_sticks",
    "assign",
    "bring_back",
    "free_mark",
    "held_tables",
    "part_of",
    "read_held",
    "remove_stick",
    "save_part",
    "save_stick",
    "sticks_in",
    "take_back_stick",
    "use_up",
]

Table = dict[str, Any]
HELD, MEASURED, WAY = "held", "measured", "way"
_EVERY = (HELD, MEASURED, WAY)


def part_of(stick: Stick, part: str, number: int | None = None) -> Table:
    """A part of what is known of a stick: HELD, MEASURED or WAY.

    Args:
        stick: of the yard.
        part: which.
        number: of the revision; the current one when left out.
    """
    revision = stick.revisions.filter(number=stick.current if number is None else number).first()
    table: Table = json.loads(revision.text).get(part, {}) if revision else {}
    return table


def held_tables() -> list[tuple[Stick, Table]]:
    """The sticks in the yard with what they are, by section, grade and length."""
    revisions = StickRevision.objects.filter(number=F("stick__current"), stick__where=Where.YARD)
    ordered = revisions.select_related("stick__copy__piece__job").order_by(
        "stick__stock", "stick__grade", "-stick__ticks", "stick__mark"
    )
    return [(one.stick, json.loads(one.text)[HELD]) for one in ordered]


def read_held(table: Table, system: System) -> tuple[Held, Table]:
    """A stick of its table, and the table as it is kept: lengths with their unit, whatever the yard's is.

    Raises:
        JobProblems: with everything that is wrong with it.
    """
    text = tomlkit.dumps({"rack": {"units": system.value}, "saw": {"kerf": "0"}, HELD: [table]})
    found = sticks_in(text, system)
    if len(found) != 1:
        raise ValueProblem("this is no stick that is there: list what can be bought in the rack document")
    return found[0]


def sticks_in(text: str, system: System) -> list[tuple[Held, Table]]:
    """The sticks on hand of a rack document, each with its table as it is kept.

    Args:
        text: the whole document.
        system: its units.

    Raises:
        JobProblems: with everything that is wrong with it.
    """
    sticks = [stick for stick in read_rack(text).sticks if isinstance(stick, Held)]
    entries = filled(RackDocument, parse(text), text, system).held
    context = {"system": system}
    tables = (entry.model_dump(mode="json", exclude_unset=True, context=context) for entry in entries)
    kept = ({key: value for key, value in table.items() if value is not None} for table in tables)
    return list(zip(sticks, kept, strict=True))


def save_stick(
    person: Person, stick: Stick | None, table: Table, base: int, system: System, *, force: bool = False
) -> Stick | Conflict:
    """Save what a stick is.

    Args:
        person: who saves.
        stick: that is changed; None for a new one.
        table: as typed.
        base: the revision that the form was opened on.
        system: the units of the yard.
        force: whether the person has seen what another saved meanwhile and chose their own.

    Returns:
        The stick, or what another has saved meanwhile.

    Raises:
        JobProblems: with everything that is wrong with it.
    """
    held, kept = read_held(table, system)
    taken = Stick.objects.filter(mark=held.mark, where__in=(Where.YARD, Where.SAW))
    problem = JobProblems(
        (Problem("held → mark", f'"{held.mark}" is on another stick: give each its own mark'),)
    )
    if any(row.pk != (stick.pk if stick else None) for row in taken):
        raise problem
    try:
        with transaction.atomic():
            row = Stick() if stick is None else _locked(stick)
            found = None if stick is None or force else _conflict(row, HELD, kept, base)
            if found is not None:
                return found
            _fill(row, held, kept)
            what = f"added stick {row.mark}" if stick is None else f"changed stick {row.mark}"
            return add_revision(person, row, what, {HELD: kept})
    except IntegrityError as taken_meanwhile:
        raise problem from taken_meanwhile


def _fill(row: Stick, held: Held, kept: Table) -> Stick:
    """What stands in the row of a stick, for lists and questions."""
    row.mark, row.stock, row.grade = held.mark, held.steel.section, held.steel.grade
    row.length, row.ticks, row.heat = str(kept["length"]), held.length.ticks, held.heat or ""
    return row


def add_sticks(person: Person, found: Iterable[tuple[Held, Table]]) -> None:
    """Many new sticks at once, whose marks are on no other; called inside a transaction.

    Args:
        person: who brings them.
        found: each stick with its table as it is kept.
    """
    pairs = [(_fill(Stick(current=1), held, kept), kept) for held, kept in found]
    Stick.objects.bulk_create([row for row, _ in pairs])
    StickRevision.objects.bulk_create(
        StickRevision(
            stick=row, number=1, text=json.dumps({HELD: kept, MEASURED: {}, WAY: {}}),
            what=f"added stick {row.mark}", by=person.name,
        )
        for row, kept in pairs
    )  # fmt: skip
    for row, _ in pairs:
        note(person.name, f"added stick {row.mark}")


def save_part(
    person: Person, stick: Stick, part: str, table: Table, base: int, *, force: bool = False
) -> Stick | Conflict:
    """Save how a stick was measured, or which way the piece is laid on it.

    Args:
        person: who saves.
        stick: of the yard.
        part: MEASURED or WAY.
        table: of it.
        base: the revision that the form was opened on.
        force: whether the person has seen what another saved meanwhile and chose their own.

    Returns:
        The stick, or what another has saved meanwhile.
    """
    with transaction.atomic():
        row = _locked(stick)
        found = None if force else _conflict(row, part, table, base)
        if found is not None:
            return found
        if part == WAY:
            return add_revision(
                person, row, f"stick {row.mark}: {table.get('way') or 'laid as advised'}", {WAY: table}
            )
        # a way that was chosen for other readings is chosen anew
        return add_revision(person, row, f"measured stick {row.mark}", {MEASURED: table, WAY: {}})


def _conflict(row: Stick, part: str, mine: Table, base: int) -> Conflict | None:
    if base == row.current:
        return None
    old, now = part_of(row, part, base), part_of(row, part)
    if now in (old, mine):
        return None
    latest = row.revisions.get(number=row.current)
    return Conflict(old, now, mine, latest.by, row.current)


def add_revision(person: Person, row: Stick, what: str, parts: Table | None = None) -> Stick:
    """Add a revision to a stick, with other parts where some changed; called inside a transaction.

    Args:
        person: who did it.
        row: the stick, as it is saved.
        what: was done, in plain words.
        parts: that changed.
    """
    known = {part: part_of(row, part) for part in _EVERY} if row.current else {part: {} for part in _EVERY}
    row.current += 1
    row.save()
    text = json.dumps(known | (parts or {}))
    StickRevision.objects.create(stick=row, number=row.current, text=text, what=what[:300], by=person.name)
    note(person.name, what, job=row.copy.piece.job if row.copy else None, piece=_piece_of(row))
    return row


def _piece_of(row: Stick) -> Any:
    return row.copy.piece if row.copy else None


def _locked(stick: Stick) -> Stick:
    return Stick.objects.select_for_update(of=("self",)).get(pk=stick.pk)


def remove_stick(person: Person, stick: Stick) -> None:
    """Take a stick out of the yard; its history stays, and it can be brought back.

    Raises:
        ValueProblem: when it is not in the yard.
    """
    with transaction.atomic():
        row = _locked(stick)
        if row.where != Where.YARD:
            raise ValueProblem(
                f"{row.mark} is {Where(row.where).label}: only a stick in the yard is taken out"
            )
        row.where, row.copy = Where.GONE, None
        add_revision(person, row, f"took stick {row.mark} out of the yard")


def take_back_stick(person: Person, stick: Stick, number: int, system: System) -> None:
    """Bring a stick back as it was in a revision; that is a new revision.

    Args:
        person: who brings it back.
        stick: of the yard, or taken out of it.
        number: of the revision.
        system: the units of the yard.

    Raises:
        ValueProblem: when it was cut, or its mark is on another stick by now.
    """
    with transaction.atomic():
        row = _locked(stick)
        if row.where not in {Where.YARD, Where.GONE}:
            raise ValueProblem(f"{row.mark} is {Where(row.where).label}: it stays as it is")
        parts = {part: part_of(row, part, number) for part in _EVERY}
        held, _ = read_held(parts[HELD], system)
        others = Stick.objects.filter(mark=held.mark, where__in=(Where.YARD, Where.SAW)).exclude(pk=row.pk)
        if others.exists():
            raise ValueProblem(f"{held.mark} is on another stick by now: change the mark of that one first")
        _fill(row, held, parts[HELD])
        row.where = Where.YARD
        add_revision(person, row, f"brought back stick {row.mark} as of revision {number}", parts)


def assign(person: Person, stick: Stick, copy: Copy | None) -> None:
    """Say which piece is to be made of a stick, so that its bench card reads for this stick.

    Args:
        person: who says so.
        stick: in the yard.
        copy: the piece; None to take it from the piece again.

    Raises:
        ValueProblem: when the piece is of another section, is gone, or has a stick already.
    """
    with transaction.atomic():
        row = _locked(stick)
        if row.where != Where.YARD:
            raise ValueProblem(f"{row.mark} is {Where(row.where).label}: give the piece a stick in the yard")
        if copy is not None:
            _check_fit(row, copy)
        before, row.copy = row.copy, copy
        name = copy.name if copy else "no piece"
        what = f"stick {row.mark} is for {name}"
        add_revision(person, row, what, {WAY: {}})
        if before is not None and copy is None:
            note(person.name, what, job=before.piece.job, piece=before.piece)


def use_up(person: Person, copy: Copy) -> None:
    """The stick of a piece that left the shop is in the yard no more; called inside a transaction."""
    row = Stick.objects.select_for_update(of=("self",)).filter(copy=copy, where=Where.YARD).first()
    if row is not None:
        row.where = Where.CUT
        add_revision(person, row, f"stick {row.mark} left as {copy.name}")


def bring_back(person: Person, copy: Copy) -> None:
    """The stick of a piece that did not leave after all is there again; called inside a transaction."""
    row = Stick.objects.select_for_update(of=("self",)).filter(copy=copy, where=Where.CUT).first()
    if row is not None:
        row.where = Where.YARD
        add_revision(person, row, f"stick {row.mark} did not leave as {copy.name}")


def _check_fit(row: Stick, copy: Copy) -> None:
    name = copy.name
    if copy.piece.stock != row.stock:
        raise ValueProblem(
            f"{row.mark} is {row.stock} and {name} is {copy.piece.stock}: choose another stick"
        )
    if not copy.active or copy.stage in {Stage.GATE, Stage.GONE}:
        raise ValueProblem(f"{name} is done or out of the job: choose another piece")
    other = Stick.objects.filter(copy=copy).exclude(pk=row.pk).first()
    if other is not None:
        raise ValueProblem(f"{name} has stick {other.mark} already: take it from the piece first")


def free_mark(wanted: str, also: Iterable[str] = ()) -> str:
    """The mark wanted, or the next of its kind that is on no stick: D3 after D2.

    Args:
        wanted: letters and a number.
        also: marks that are taken besides.
    """
    taken = set(Stick.objects.filter(where__in=(Where.YARD, Where.SAW)).values_list("mark", flat=True))
    taken |= set(also)
    letters = wanted.rstrip("0123456789") or "D"
    number = int(wanted.removeprefix(letters) or 1)
    while f"{letters}{number}" in taken:
        number += 1
    return f"{letters}{number}"
