"""Blocks and tables set one under the other over as many pages as they need."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gageline.job import Job
from gageline.sheets.boxes import line_height
from gageline.sheets.furniture import Block, Draft, Heading, space
from gageline.sheets.scene import Group, Item, Level, Text
from gageline.sheets.style import HEADING, Weight
from gageline.sheets.table import Table, table_blocks

__all__ = ["Part", "flow", "room_of"]

_INSET = 2.5
_BETWEEN = 3.0
_UNDER_TITLE = 1.2
_NEXT = 2  # pieces of a table that stands on the next page: nothing on this one, then all of it


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a sheet: a heading over a block or a table.

    Attributes:
        title: its heading; empty for none.
        body: what stands under it.
        together: a table that goes to the next page rather than over two, where one can hold it.
    """

    title: str
    body: Block | Table
    together: bool = False


def room_of(job: Job, *, landscape: bool = False) -> tuple[float, float]:
    """Width and height that `flow` sets a page in, mm."""
    room = space(job, landscape=landscape)
    return room.width - 2 * _INSET, room.height - 2 * _INSET


def flow(job: Job, heading: Heading, parts: Sequence[Part], *, landscape: bool = False) -> Iterator[Draft]:
    """Set parts on pages: a block is never split, a table is split between rows under its repeated heads.

    Args:
        job: whose paper it is.
        heading: for the title block of every page.
        parts: in their order.
        landscape: the long side lies across.

    Raises:
        ValueProblem: a row or a column too big for the page.
    """
    room = space(job, landscape=landscape)
    width, height = room_of(job, landscape=landscape)
    pages: list[list[tuple[float, Group]]] = [[]]
    top = 0.0
    for index, part in enumerate(parts):
        under = _under(parts[index + 1 :])
        for number, (group, deep) in enumerate(_pieces(part, width, (height - top, height), under)):
            if pages[-1] and (number or top + deep > height + 1e-6):
                pages.append([])
                top = 0.0
            pages[-1].append((top, group))
            top += deep + _BETWEEN
    for page in pages:
        items: tuple[Item, ...] = tuple(
            Group((group,), room.left + _INSET, room.top + _INSET + y) for y, group in page
        )
        yield Draft(heading, items, landscape)


def _under(rest: Sequence[Part]) -> float:
    """How much comes under the last table and should stand with rows of it, mm; none before another table."""
    if any(isinstance(part.body, Table) for part in rest):
        return 0.0
    return sum(
        _title_height(part) + part.body.height + _BETWEEN for part in rest if isinstance(part.body, Block)
    )


def _title_height(part: Part) -> float:
    return line_height(HEADING) + _UNDER_TITLE if part.title else 0.0


def _pieces(
    part: Part, width: float, room: tuple[float, float], under: float
) -> Iterator[tuple[Group, float]]:
    """What goes on this page and on each further one, each with its height.

    Args:
        part: what is set.
        width: of the page, mm.
        room: height free on this page and on each further one, mm.
        under: height of what comes under it at the end of the sheet, mm.
    """
    high = _title_height(part)
    if isinstance(part.body, Block):
        yield _titled(part.title, part.body.items, high), high + part.body.height
        return
    pieces = _set(part.body, width, (room[0] - high, room[1] - high), under, together=part.together)
    for number, (group, deep) in enumerate(pieces):
        title = f"{part.title}, continued" if part.title and number else part.title
        yield _titled(title, (group,), high), high + deep


def _titled(title: str, items: tuple[Item, ...], high: float) -> Group:
    head = (Text(0.0, 0.0, title, HEADING, Weight.BOLD, level=Level.TOP),) if title else ()
    return Group((*head, Group(items, 0.0, high)))


def _set(
    table: Table, width: float, room: tuple[float, float], under: float, *, together: bool
) -> list[tuple[Group, float]]:
    """A table page by page; what comes under it at the end is given room beside its last rows."""
    pieces = table_blocks(table, width, *room, under + _BETWEEN if under else 0.0)
    if together and len(pieces) > 1:
        whole = table_blocks(table, width, 0.0, room[1])
        pieces = whole if len(whole) == _NEXT else pieces
    # The table's first page may be the next one: then its title goes there with it.
    return pieces[1:] if pieces and not pieces[0][1] else pieces
