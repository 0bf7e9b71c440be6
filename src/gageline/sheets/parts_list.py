"""The parts list of a job: pieces, parts, bolts and weld, with weights and totals."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from gageline.detail import Detailed
from gageline.job import Job
from gageline.part import Assembly
from gageline.sheets.bolt_rows import BOLT_LENGTHS, FRAME_BOLTS, BoltRow, bolt_rows
from gageline.sheets.boxes import line_height
from gageline.sheets.furniture import Draft, Heading, bind, bolt_text, paragraph, practice_block, space
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Anchor, Box, Group, Item, Level, Sheet, Text
from gageline.sheets.style import BODY, HEADING, Weight
from gageline.sheets.table import Column, Table, table_blocks
from gageline.takeoff import PieceBill, bill_of_piece, parts_of_job, weight_text, weight_unit
from gageline.units import ZERO, Length, counted

__all__ = ["parts_list"]

_INSET = 3.0
_GAP = 5.0
_UNDER = 1.0
_HEAD = line_height(HEADING) * 1.3
_FEW = 5
_NARROW = 0.65
_RIGHT = Anchor.RIGHT
_WEIGHING = (
    "Weights by volume at 490 lb/ft3 (7849 kg/m3), without welds, bolts and coating; bare: the part alone."
)


def parts_list(job: Job, detailed: Detailed | None = None) -> Sheet:
    """The parts list of a job on as many pages as it takes, each table's head repeated.

    Args:
        job: the job.
        detailed: its frame, None where it has none; its field bolts are counted with the pieces.

    Raises:
        ValueProblem: a text with a character that the font lacks, or a part without a body.
    """
    bolts = bolt_rows(job, detailed)
    bills = [bill_of_piece(assembly) for assembly in job.assemblies]
    tables = [
        ("Pieces", _pieces(job, bills)),
        ("Parts to cut", _parts(job, bills)),
        ("Shop bolts", _bolts([row for row in bolts if not row.field])),
        ("Field bolts", _bolts([row for row in bolts if row.field])),
        ("Fillet weld in the shop", _welds(job, bills)),
    ]
    count = sum(bill.quantity for bill in bills)
    heading = Heading("Parts list", detail=f"of {counted(count, 'piece')}")
    pages = _flow(job, [(title, table) for title, table in tables if table.rows], _said(job, bolts))
    return bind(job, "parts list", [Draft(heading, tuple(page)) for page in pages])


def _pieces(job: Job, bills: Sequence[PieceBill]) -> Table:
    unit = weight_unit(job.system)
    columns = (
        Column("Mark", wraps=False),
        Column("No.", _RIGHT, wraps=False),
        Column("Section", wraps=False),
        Column("Length", _RIGHT, wraps=False),
        Column("Grade"),
        Column("Finish"),
        Column("Hand", wraps=False),
        Column(f"Each with fittings, {unit}", _RIGHT),
        Column(f"All with fittings, {unit}", _RIGHT),
    )
    rows = [_piece(job, assembly, bill) for assembly, bill in zip(job.assemblies, bills, strict=True)]
    count = sum(bill.quantity for bill in bills)
    weight = sum(bill.mass.weight * bill.quantity for bill in bills)
    total = ("Total", str(count), "", "", "", "", "", "", weight_text(weight, job.system, 0))
    return Table(columns, (*rows, total), BODY, total=True)


def _piece(job: Job, assembly: Assembly, bill: PieceBill) -> tuple[str, ...]:
    main = assembly.main
    return (
        assembly.mark,
        str(assembly.quantity),
        main.stock.designation,
        Scribe.of(job, main).tell(main.length),
        main.grade,
        assembly.finish,
        f"of {assembly.hand_of}" if assembly.hand_of else "",
        weight_text(bill.mass.weight, job.system),
        weight_text(bill.mass.weight * assembly.quantity, job.system, 0),
    )


def _parts(job: Job, bills: Sequence[PieceBill]) -> Table:
    unit = weight_unit(job.system)
    columns = (
        Column("Mark", wraps=False),
        Column("No.", _RIGHT, wraps=False),
        Column("Section", wraps=False),
        Column("Length", _RIGHT, wraps=False),
        Column("Grade", wraps=False),
        Column(f"Each bare, {unit}", _RIGHT, wraps=False),
        Column(f"All bare, {unit}", _RIGHT, wraps=False),
    )
    lines = parts_of_job(bills)
    rows = [
        (
            line.mark,
            str(line.quantity),
            line.designation,
            Scribe.of(job).tell(line.length),
            line.grade,
            weight_text(line.weight, job.system),
            weight_text(line.total_weight, job.system, 0),
        )
        for line in lines
    ]
    weight = weight_text(sum(line.total_weight for line in lines), job.system, 0)
    total = ("Total", str(sum(line.quantity for line in lines)), "", "", "", "", weight)
    return Table(columns, (*rows, total), BODY, total=True)


def _bolts(bolts: Sequence[BoltRow]) -> Table:
    columns = (
        Column("Bolt", wraps=False),
        Column("Grade", wraps=False),
        Column("No.", _RIGHT, wraps=False),
        Column("Grip", _RIGHT, wraps=False),
        Column("Length", _RIGHT, wraps=False),
    )
    rows = tuple(
        (
            bolt_text(row.bolt) or "size not given",
            row.grade,
            str(row.quantity),
            row.grip or "by the other ply",
            row.length or "by the grip",
        )
        for row in bolts
    )
    return Table(columns, rows, BODY)


def _welds(job: Job, bills: Sequence[PieceBill]) -> Table:
    sizes: dict[Length, Length] = {}
    for bill in bills:
        for weld in bill.welds:
            sizes[weld.size] = sizes.get(weld.size, ZERO) + weld.length * bill.quantity
    columns = (Column("Leg", wraps=False), Column("Length of all runs", _RIGHT, wraps=False))
    scribe = Scribe.of(job)
    rows = tuple((scribe.fine(size), scribe.tell(length)) for size, length in sorted(sizes.items()))
    return Table(columns, rows, BODY)


def _flow(job: Job, tables: Sequence[tuple[str, Table]], said: Sequence[str]) -> list[list[Item]]:
    """Tables one under the other, page after page, then how it was weighed and the practice."""
    whole = space(job)
    room = Box(whole.left + _INSET, whole.top + _INSET, whole.right - _INSET, whole.bottom - _INSET)
    foot = list(_foot(job, said, room.width))
    under = sum(height + _UNDER for _, height in foot)
    pages: list[list[Item]] = [[]]
    y = room.top
    for n, (title, table) in enumerate(tables):
        started = False
        for number, (block, height) in enumerate(
            _blocks(table, room, y, under if n == len(tables) - 1 else 0.0)
        ):
            if number:
                pages.append([])
                y = room.top
            if height:
                words = f"{title}, continued" if started else title
                started = True
                pages[-1].append(Text(room.left, y, words, HEADING, Weight.BOLD, level=Level.TOP))
                pages[-1].append(Group((block,), room.left, y + _HEAD))
                y += _HEAD + height + _GAP
    for items, height in foot:
        pages[-1].append(Group(items, room.left, y))
        y += height + _UNDER
    return pages


def _blocks(table: Table, room: Box, y: float, under: float) -> list[tuple[Group, float]]:
    """A table from y down, page after page, set so that what comes under it stands with rows of it."""
    width = room.width if len(table.columns) > _FEW else room.width * _NARROW
    below = under + _GAP if under else 0.0
    return table_blocks(table, width, room.bottom - y - _HEAD, room.height - _HEAD, below)


def _said(job: Job, bolts: Sequence[BoltRow]) -> list[str]:
    """How it was weighed and counted."""
    said = [_WEIGHING]
    if any(row.length for row in bolts):
        said.append(BOLT_LENGTHS)
    if job.frame is not None:
        said.append(FRAME_BOLTS)
    return said


def _foot(job: Job, said: Sequence[str], width: float) -> Iterator[tuple[tuple[Item, ...], float]]:
    for words in said:
        note = paragraph("", words, width, BODY)
        yield note.items, note.height
    practice = practice_block(job, width, BODY)
    yield practice.items, practice.height
