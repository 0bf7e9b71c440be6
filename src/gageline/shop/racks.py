"""The rack document of the shop: its facts as text, with the sticks of the yard brought in and handed out."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any

import tomlkit
from django.db import transaction
from tomlkit.exceptions import TOMLKitError

from gageline.errors import ValueProblem
from gageline.job import JobProblems, Problem, parse
from gageline.shop.jobs import Conflict
from gageline.shop.logbook import note
from gageline.shop.models import Person, RackText, Stick, Where
from gageline.shop.prints import safe_cell
from gageline.shop.sticks import HELD, add_sticks, held_tables, save_stick, sticks_in
from gageline.stock import Held, Sheet, read_rack
from gageline.units import System

__all__ = [
    "LARGEST_RACK", "Brought", "add_sheet", "rack_text", "save_rack", "sticks_csv", "use_sheet", "whole_rack",
    "yard_system",
]  # fmt: skip

Table = dict[str, Any]
LARGEST_RACK = 500_000  # bytes; the sticks of ten yards
_FIRST = """\
# What the saw takes, and what can be bought. Lengths: 18'-7 1/4", 223.25in, 5670mm; bare numbers are inches.

[rack]
units = "ft-in"

[saw]
kerf = "1/8"
start_trim = "1/2"
end_trim = "1/2"
grip = "4"
keep = "3'-0" # shorter drops are scrap
drop_percent = 50

# [[buy]]
# stock = "W16x26"
# lengths = ["20'", "40'", "60'"]
# per_pound = 0.92
"""  # common practice, no source


@dataclass(frozen=True, slots=True)
class Brought:
    """What a rack document brought.

    Args:
        number: of the rack text that is current now.
        added: marks of sticks that are new in the yard.
        changed: marks of sticks that were there and differ.
    """

    number: int
    added: tuple[str, ...]
    changed: tuple[str, ...]


def rack_text() -> tuple[int, str]:
    """The facts of the rack as they stand, and their number; 0 while nobody has typed any."""
    latest = RackText.objects.first()
    return (latest.number, latest.text) if latest else (0, _FIRST)


def yard_system() -> System:
    """The units that bare numbers of the yard are in."""
    return _system_of(parse(rack_text()[1]))


def _system_of(tables: Table) -> System:
    facts = tables.get("rack")
    return System.MM if isinstance(facts, dict) and facts.get("units") == System.MM.value else System.FT_IN


def whole_rack(text: str, tables: Iterable[Table]) -> str:
    """A rack document of facts and sticks.

    Args:
        text: the facts.
        tables: of the sticks.
    """
    sticks = list(tables)
    return f"{text.rstrip()}\n\n{tomlkit.dumps({'held': sticks})}" if sticks else text


def save_rack(person: Person, content: bytes, base: int | None) -> Brought | Conflict:
    """Take a rack document: its facts are the shop's from now on, its sticks come into the yard.

    A stick that has a mark of the yard changes the one that is there; no stick is taken out. Sticks that
    the document says were cut already stay in its text.

    Args:
        person: who brings it.
        content: of the file, or as typed.
        base: the number of the facts that were edited; None for a file, which replaces them.

    Returns:
        What it brought, or the facts that another has saved meanwhile.

    Raises:
        GagelineError: with everything that is wrong with it.
    """
    text = _decoded(content)
    tables = parse(text)
    system = _system_of(tables)
    found = sticks_in(text, system)
    cut = {done["stick"] for done in tables.get("done", [])}
    there = [pair for pair in found if pair[0].mark not in cut]
    facts = _without(text, tables, cut)
    kept = yard_system()
    if system is not kept and Stick.objects.filter(where__in=(Where.YARD, Where.SAW)).exists():
        raise ValueProblem(
            f"the document is in {system.value} and the sticks in the yard are kept in {kept.value}: "
            f'give units = "{kept.value}", or take the sticks out first'
        )
    with transaction.atomic():
        latest = RackText.objects.select_for_update().first()
        number, now = (latest.number, latest.text) if latest else (0, _FIRST)
        if base is not None and base != number and now != facts:
            return Conflict(
                {"text": now}, {"text": now}, {"text": facts}, latest.by if latest else "", number
            )
        if facts != now or not latest:
            number += 1
            _save_facts(person, facts)
        added, changed = _bring_in(person, there, system)
    return Brought(number, tuple(added), tuple(changed))


def _decoded(content: bytes) -> str:
    if len(content) > LARGEST_RACK:
        raise ValueProblem(f"the rack document is larger than {LARGEST_RACK / 1e3:.0f} kB: split it")
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as refused:
        raise ValueProblem("this is not UTF-8 text: a rack document in TOML is expected") from refused


def _without(text: str, tables: Table, cut: set[str]) -> str:
    """The document as it was typed, comments and all, without the sticks that come into the yard."""
    kept = [table for table in tables.get(HELD, []) if table["mark"] in cut]
    if len(kept) == len(tables.get(HELD, [])):
        return text
    rest = {key: value for key, value in tables.items() if key != HELD}
    try:
        document = tomlkit.parse(text)
        del document[HELD]
        facts = tomlkit.dumps(document)
        if parse(facts) != rest:
            facts = tomlkit.dumps(rest)
    except (TOMLKitError, JobProblems):
        facts = tomlkit.dumps(rest)
    return whole_rack(facts, kept)


def _bring_in(person: Person, found: list[tuple[Held, Table]], system: System) -> tuple[list[str], list[str]]:
    """The sticks of a document into the yard: the marks of the new and of the changed ones."""
    known = {row.mark: row for row in Stick.objects.filter(where__in=(Where.YARD, Where.SAW))}
    there = {row.mark: held for row, held in held_tables()}
    add_sticks(person, (pair for pair in found if pair[0].mark not in known))
    changed = [kept for held, kept in found if held.mark in known and there.get(held.mark) != kept]
    for kept in changed:
        row = known[str(kept["mark"])]
        if row.where == Where.SAW:
            message = "is at the saw: leave it out of the document, or take it back from the saw first"
            raise JobProblems((Problem(f'held "{row.mark}"', message),))
        save_stick(person, row, kept, row.current, system)
    return [held.mark for held, _ in found if held.mark not in known], [str(one["mark"]) for one in changed]


def use_sheet(person: Person, sheet: Sheet, number: int) -> bool:
    """Count sheets of the rack that are taken, or come back; those without a limit are not counted.

    Args:
        person: who takes them.
        sheet: what they are.
        number: how many, below zero where they come back.

    Returns:
        False where not so many are there.
    """
    if sheet.limit is None:
        return True
    with transaction.atomic():
        RackText.objects.select_for_update().first()
        text = rack_text()[1]
        document = tomlkit.parse(text)
        for table, there in zip(document.get("sheet", []), read_rack(text).sheets, strict=True):
            if replace(there, limit=sheet.limit) == sheet and (there.limit or 0) >= number:
                table["limit"] = (there.limit or 0) - number
                _save_facts(person, tomlkit.dumps(document))
                return True
    return False


def add_sheet(person: Person, table: Table) -> None:
    """Put one sheet, or what is left of one, on the rack.

    Args:
        person: who does.
        table: as it stands under `[[sheet]]`.

    Raises:
        GagelineError: with everything that is wrong with it.
    """
    with transaction.atomic():
        RackText.objects.select_for_update().first()
        text = f"{rack_text()[1].rstrip()}\n\n{tomlkit.dumps({'sheet': [table]})}"
        read_rack(text)
        _save_facts(person, text)


def _save_facts(person: Person, text: str) -> None:
    number = rack_text()[0] + 1
    RackText.objects.create(number=number, text=text, by=person.name)
    note(person.name, f"changed the facts of the rack (number {number})")


def sticks_csv() -> str:
    """The sticks that are there as comma-separated values.

    Source: RFC 4180.
    """
    out = io.StringIO(newline="")
    table = csv.writer(out)
    table.writerow(("mark", "section", "grade", "length", "heat", "certificate", "value", "for"))
    for row, held in held_tables():
        piece = f"{row.copy.piece.job.name} {row.copy.piece.mark} {row.copy.number}" if row.copy else ""
        filed = "on file" if held.get("certificate") else ""
        texts = (row.mark, row.stock, row.grade, row.length, row.heat, filed, str(held.get("value", "")))
        table.writerow(tuple(map(safe_cell, (*texts, piece))))
    return out.getvalue()
