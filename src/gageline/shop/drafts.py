"""A piece while it is typed: from the fields of a form to the piece itself, or to what is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import tomlkit
from pydantic import BaseModel

from gageline.detail import read_full
from gageline.errors import GagelineError
from gageline.job import (
    JobDocument,
    JobProblems,
    PieceEntry,
    Problem,
    check_job,
    parse,
    read_document,
    read_job,
    write_document,
)
from gageline.layout import Layout, lay_out
from gageline.part import Finding
from gageline.shop.fields import Section, form_of, table_of
from gageline.shop.saying import Said, say_all

__all__ = ["Draft", "draft_of", "first_choices", "new_piece", "with_piece", "with_row", "without_row"]

Table = dict[str, Any]

_FIRST_ROWS: dict[str, tuple[Table, Table]] = {
    "copes": (
        {"end": "both", "flange": "top", "length": "4", "depth": "1 1/2"},
        {"end": "both", "flange": "top", "length": "100", "depth": "40"},
    ),
    "trims": (
        {"end": "left", "flange": "bottom", "length": "6"},
        {"end": "left", "flange": "bottom", "length": "150"},
    ),
    "clips": (
        {"end": "left", "edge": "top", "along": "1", "across": "1"},
        {"end": "left", "edge": "top", "along": "25", "across": "25"},
    ),
    "holes": (
        {"from": "left", "x": "1'-0", "rows": 2},
        {"from": "left", "x": "300", "rows": 2},
    ),
    "openings": (
        {"from": "centre", "diameter": "4"},
        {"from": "centre", "diameter": "100"},
    ),
    "angles": (
        {"end": "both", "stock": "L4x3-1/2x5/16", "rows": 3},
        {"end": "both", "stock": "L 100x100x10", "rows": 3, "web_gage": "55", "out_gage": "55"},
    ),
    "plates": (
        {"on": "near", "x": "6'-0", "thickness": "3/8", "width": "4 1/2", "rows": 3},
        {"on": "near", "x": "2000", "thickness": "10", "width": "110", "rows": 3},
    ),
    "stiffeners": (
        {"x": "6'-0", "thickness": "3/8"},
        {"x": "2000", "thickness": "10"},
    ),
}  # list -> what a new row starts with, in inches and in millimetres; common practice, no source
_PLATE_AT_END = (
    {"end": "left", "thickness": "3/8", "width": "6", "length": "9", "rows": 2, "gage": "3 1/2"},
    {"end": "left", "thickness": "10", "width": "150", "length": "220", "rows": 2, "gage": "90"},
)
_FIRST_ROWS |= dict.fromkeys(("end_plates", "base_plates", "cap_plates"), _PLATE_AT_END)
_FIRST_PIECE: tuple[Table, Table] = (
    {"stock": "W16x26", "length": "20'-0"},
    {"stock": "IPE 300", "length": "6000"},
)


@dataclass(frozen=True, slots=True)
class Draft:
    """A piece as far as it is typed.

    Args:
        table: as the document would have it.
        form: the fields with what is in them.
        said: at each place of the form.
        layout: of the piece; None while something is wrong.
        problems: that keep it from being saved.
    """

    table: Table
    form: Section
    said: tuple[Said, ...]
    layout: Layout | None
    problems: tuple[Problem, ...]


def _is_metric(document: JobDocument) -> int:
    return 1 if document.job.units == "mm" else 0


def new_piece(document: JobDocument) -> Table:
    """What a new piece starts with: the next mark, and the stock of the last piece."""
    marks = {piece.mark for piece in document.pieces}
    number = next(n for n in range(1, len(marks) + 2) if f"B{n}" not in marks)
    table: Table = {"mark": f"B{number}", "quantity": 1, **_FIRST_PIECE[_is_metric(document)]}
    if document.pieces and document.pieces[-1].stock:
        table["stock"] = document.pieces[-1].stock
    return table


def first_choices(document: JobDocument, name: str) -> Table:
    """What a new row of a list starts with."""
    return dict(_FIRST_ROWS.get(name, ({}, {}))[_is_metric(document)])


def with_row(model: type[BaseModel], document: JobDocument, posted: Mapping[str, str], place: str) -> Table:
    """The typed table with another row in one of its lists.

    Args:
        model: the table's definition.
        document: the job that it belongs to.
        posted: the fields of the form.
        place: of the list, told as `copes` or as `level.1.loads`.
    """
    table = table_of(model, posted, "", document.job.units)
    holder, name = _holder(table, place)
    if holder is not None:
        holder[name] = [*holder.get(name, []), first_choices(document, name)]
    return table


def without_row(
    model: type[BaseModel], document: JobDocument, posted: Mapping[str, str], place: str
) -> Table:
    """The typed table without one row, told as `copes.0` or as `level.1.loads.0`."""
    table = table_of(model, posted, "", document.job.units)
    path, _, number = place.rpartition(".")
    holder, name = _holder(table, path)
    rows = list(holder.get(name, [])) if holder is not None else []
    if holder is not None and _is_number(number) and int(number) < len(rows):
        del rows[int(number)]
        holder.pop(name)
        holder |= {name: rows} if rows else {}
    return table


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdigit() and len(text) < 6


def _holder(table: Table, place: str) -> tuple[Table | None, str]:
    """The table that a list stands in and the list's name there; no table where there is no such place."""
    *steps, name = place.split(".")
    at: Any = table
    for step in steps:
        if isinstance(at, list):
            at = at[int(step)] if _is_number(step) and int(step) < len(at) else None
        elif isinstance(at, dict):
            at = at.setdefault(step, {})
    return (at if isinstance(at, dict) else None), name


def _tables(document: JobDocument) -> Table:
    return parse(write_document(document))


def with_piece(document: JobDocument, table: Table, replaces: str | None) -> str:
    """The text of a document with a piece put in, checked as a whole.

    Args:
        document: as it stands.
        table: of the piece.
        replaces: the mark it stood under; None for a new one.

    Raises:
        JobProblems: with everything that is wrong.
    """
    tables = _tables(document)
    pieces: list[Table] = list(tables.get("piece", []))
    places = [n for n, piece in enumerate(pieces) if piece["mark"] == replaces]
    if places:
        pieces[places[0]] = table
        new = table.get("mark")
        for piece in pieces:
            if piece.get("as_hand_of") == replaces and new:
                piece["as_hand_of"] = new
    else:
        pieces.append(table)
    if not tables.get("frame"):
        tables.pop("frame", None)  # it stood in for the pieces of a new job
    text = tomlkit.dumps({**tables, "piece": pieces})
    read_full(text)
    return write_document(read_document(text))


def _alone(document: JobDocument, table: Table) -> str:
    """A small document of one piece, with the pieces that it is the opposite hand of."""
    tables = _tables(document)
    known = {piece["mark"]: piece for piece in tables.get("piece", [])}
    pieces, wanted = [table], table.get("as_hand_of")
    while isinstance(wanted, str) and wanted in known and len(pieces) < 5:
        pieces.append(known[wanted])
        wanted = known[wanted].get("as_hand_of")
    kept = {key: value for key, value in tables.items() if key not in {"piece", "frame"}}
    return tomlkit.dumps({**kept, "piece": pieces})


def draft_of(document: JobDocument, table: Table) -> Draft:
    """A piece as far as it is typed, laid out where it can be.

    Args:
        document: the job that it belongs to.
        table: of the piece as typed.
    """
    system = document.job.units
    form = form_of(PieceEntry, table)
    problems: tuple[Problem, ...] = ()
    findings: tuple[Finding, ...] = ()
    layout = None
    try:
        job = read_job(_alone(document, table))
        assembly = job.assemblies[0]
        layout = lay_out(assembly, job.practice, job.system)
        mark = assembly.mark
        findings = tuple(f for f in check_job(job) if f.subject.startswith(mark) or len(job.assemblies) == 1)
    except JobProblems as wrong:
        problems = wrong.problems
    except GagelineError as wrong:
        problems = (Problem("", str(wrong)),)
    return Draft(table, form, say_all(form, problems, findings, system), layout, problems)
