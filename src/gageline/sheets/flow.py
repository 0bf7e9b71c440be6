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


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a sheet: a heading over a block or a table.

    Attributes:
        title: its heading; empty for none.
        body: what stands under it.
    """

    title: str
    body: Block | Table


def room_of(job: Job, *, landscape: bool = False) -> tuple[float, float]:
    """Width and height that `flow` sets a page in, mm."""
    room = space(job, landscape=landscape)
    return room.width - 2 * _INSET, room.height - 2 * _INSET


def flow(job: Job, heading: Heading, parts: Sequence[Part], *, landscape: bool = False) -> Iterator[Draft]:
    """Set parts on pages: a block is never split, a table is split between rows under its repeated head.

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
    for part in parts:
        for number, (group, deep) in enumerate(_pieces(part, width, height - top, height)):
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


def _pieces(part: Part, width: float, free: float, height: float) -> Iterator[tuple[Group, float]]:
    """What goes on this page and on each further one, each with its height."""
    title = Text(0.0, 0.0, part.title, HEADING, Weight.BOLD, level=Level.TOP)
    under = line_height(HEADING) + _UNDER_TITLE if part.title else 0.0
    head: tuple[Item, ...] = (title,) if part.title else ()
    if isinstance(part.body, Block):
        yield Group((*head, Group(part.body.items, 0.0, under))), under + part.body.height
        return
    # The table's first page may be the next one: then its title goes there with it.
    pieces = table_blocks(part.body, width, free - under, height - under)
    if pieces and not pieces[0][1]:
        pieces = pieces[1:]
    for number, (group, deep) in enumerate(pieces):
        if number:
            yield group, deep
        else:
            yield Group((*head, Group((group,), 0.0, under))), under + deep
