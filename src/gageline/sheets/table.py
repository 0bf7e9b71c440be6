"""Tables: columns as wide as their texts need, long texts wrapped, the head repeated on every page."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gageline.errors import ValueProblem
from gageline.sheets.boxes import line_height
from gageline.sheets.fonts import font_metrics, text_width
from gageline.sheets.scene import Anchor, Group, Item, Line, Polygon, Text
from gageline.sheets.style import BODY, Ink, Role, Weight
from gageline.sheets.wrap import words, wrap

__all__ = ["Column", "Table", "column_widths", "table_blocks"]

_SIDE = 1.5
_ABOVE = 0.9
_LEAD = 1.15
_TICK = 3.6
_BROKEN = 14.0  # mm: a column of broken words is no narrower
_HALVINGS = 40
_MEASURES = re.compile(r"[/'\"]")  # a reading or a section, which is never broken


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table.

    Attributes:
        title: its head.
        anchor: how its texts stand; numbers to the right.
        weight: of its texts.
        wraps: its texts may be broken into lines where the table is too wide.
        ticks: a box to tick stands in each of its rows in place of a text.
    """

    title: str
    anchor: Anchor = Anchor.LEFT
    weight: Weight = Weight.REGULAR
    wraps: bool = True
    ticks: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """A table to be set.

    Attributes:
        columns: its columns.
        rows: the texts, one for each column in each row.
        size: points.
        total: the last row is a total, set bold under a heavier line.
    """

    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    size: float = BODY
    total: bool = False


@dataclass(frozen=True, slots=True)
class _Row:
    """One set row: its lines column by column, and its height in mm."""

    cells: tuple[tuple[str, ...], ...]
    height: float
    bold: bool
    shaded: bool


def column_widths(table: Table, width: float) -> tuple[float, ...]:
    """Widths of the columns: what the widest text needs, or less for those that wrap, filling the table.

    Where long names leave no room, the widest columns of names are made narrower and the names broken.

    Args:
        table: the table.
        width: of the whole table, mm.

    Returns:
        Widths in mm, together as wide as the table.

    Raises:
        ValueProblem: columns that cannot be made narrow enough.
    """
    full, least, floor = [], [], []
    for i, column in enumerate(table.columns):
        title = [(column.title, Weight.BOLD)]
        texts = [(row[i], _weight(table, n, i)) for n, row in enumerate(table.rows)]
        full.append(_widest(title + texts, table.size) + 2 * _SIDE)
        narrow = _words(title) + (_words(texts) if column.wraps else texts)
        least.append(_widest(narrow, table.size) + 2 * _SIDE)
        whole = _words(title) + [one for one in narrow if _MEASURES.search(one[0])]
        broken = max(_widest(whole, table.size), _BROKEN) + 2 * _SIDE
        floor.append(min(least[-1], broken) if column.anchor is Anchor.LEFT else least[-1])
    if sum(floor) > width + 1e-6:
        raise ValueProblem(
            f"a table of {len(table.columns)} columns needs {sum(floor):.1f} mm and has {width:.1f} mm: "
            f"turn the page, take a column out or choose a smaller text"
        )
    if sum(least) > width + 1e-6:
        return _squeezed(least, floor, width)
    spare = width - sum(least)
    wants = [f - n for f, n in zip(full, least, strict=True)]
    if sum(wants) > spare:
        return tuple(n + spare * want / sum(wants) for n, want in zip(least, wants, strict=True))
    return tuple(f + (width - sum(full)) / len(full) for f in full)


def _squeezed(least: Sequence[float], floor: Sequence[float], width: float) -> tuple[float, ...]:
    """The widest columns cut down to one width, none under its floor, so that all fill the table."""
    low, high = 0.0, max(least)
    for _ in range(_HALVINGS):
        level = (low + high) / 2
        widths = tuple(max(f, min(n, level)) for n, f in zip(least, floor, strict=True))
        low, high = (low, level) if sum(widths) > width else (level, high)
    return tuple(max(f, min(n, low)) for n, f in zip(least, floor, strict=True))


def _words(cells: Sequence[tuple[str, Weight]]) -> list[tuple[str, Weight]]:
    return [(word, weight) for text, weight in cells for word in words(text)]


def _widest(cells: Sequence[tuple[str, Weight]], size: float) -> float:
    return max(
        (text_width(line, size, weight) for text, weight in cells for line in text.split("\n")), default=0.0
    )


def _weight(table: Table, row: int, column: int) -> Weight:
    last = table.total and row == len(table.rows) - 1
    return Weight.BOLD if last else table.columns[column].weight


def table_blocks(
    table: Table, width: float, first: float, further: float, under: float = 0.0
) -> list[tuple[Group, float]]:
    """Set a table in as many pieces as the pages need, each with the head.

    Args:
        table: the table.
        width: of the table, mm.
        first: height free on the first page, mm; too little for a row sends it to the next page.
        further: height free on each further page, mm.
        under: height that is left free under the last row, where a page can hold both, mm.

    Returns:
        (piece, height in mm) for each page in turn, its top left corner at (0, 0); a first page without
        room has an empty piece of height 0.

    Raises:
        ValueProblem: a row with a wrong count of texts, columns or a row too big for the page.
    """
    for number, row in enumerate(table.rows, 1):
        if len(row) != len(table.columns):
            raise ValueProblem(
                f"table row {number} has {len(row)} texts for {len(table.columns)} columns: give one for each"
            )
    widths = column_widths(table, width)
    head = _set(tuple(c.title for c in table.columns), table, widths, bold=True, shaded=False)
    rows = [
        _set(row, table, widths, bold=table.total and n == len(table.rows) - 1, shaded=n % 2 == 1)
        for n, row in enumerate(table.rows)
    ]
    blocks = []
    for page in _pages(head, rows, (first, further, under), together=table.total):
        if rows and not page:
            blocks.append((Group(()), 0.0))
            continue
        height = head.height + sum(row.height for row in page)
        blocks.append((Group(tuple(_draw(head, page, table, widths)), name="table"), height))
    return blocks


def _set(
    cells: tuple[str, ...], table: Table, widths: tuple[float, ...], *, bold: bool, shaded: bool
) -> _Row:
    lines = tuple(
        tuple(wrap(cell, w - 2 * _SIDE, table.size, Weight.BOLD if bold else column.weight))
        for cell, w, column in zip(cells, widths, table.columns, strict=True)
    )
    many = max(len(cell) for cell in lines)
    return _Row(lines, many * line_height(table.size) * _LEAD + 2 * _ABOVE, bold, shaded)


def _pages(
    head: _Row, rows: list[_Row], room: tuple[float, float, float], *, together: bool
) -> Iterator[list[_Row]]:
    """The rows page by page; `together` keeps the last, a total, with the one before it."""
    first, further, under = room
    tallest = max((row.height for row in rows), default=0.0)
    if head.height + tallest > further:
        raise ValueProblem(
            f"a table row of {tallest:.1f} mm under a head of {head.height:.1f} mm does not fit a page with "
            f"{further:.1f} mm: shorten the text or widen the table"
        )
    units = [[row] for row in rows]
    if together and head.height + sum(row.height for row in rows[-2:]) <= further:
        units[-2:] = [rows[-2:]]
    free = first - head.height
    page: list[_Row] = []
    for number, unit in enumerate(units):
        height = sum(row.height for row in unit)
        below = under if number == len(units) - 1 and head.height + height + under <= further else 0.0
        if height + below > free + (1e-9 if number else 0.0):
            yield page
            page, free = [], further - head.height
        page += unit
        free -= height
    yield page


def _draw(head: _Row, rows: list[_Row], table: Table, widths: tuple[float, ...]) -> Iterator[Item]:
    width = sum(widths)
    y = head.height
    for row in rows:
        if row.shaded:
            yield Polygon(((0, y), (width, y), (width, y + row.height), (0, y + row.height)), None, Ink.PALE)
        y += row.height
    y = 0.0
    for row in (head, *rows):
        if row.bold and row is not head:
            yield Line(0, y, width, y, Role.FRAME)
        yield from _cells(row, table, widths, y)
        y += row.height
        if row is head:
            yield Line(0, y, width, y, Role.FRAME)
    yield Line(0, y, width, y, Role.FRAME)


def _cells(row: _Row, table: Table, widths: tuple[float, ...], top: float) -> Iterator[Item]:
    font = font_metrics(Weight.REGULAR)
    em = line_height(table.size)
    left = 0.0
    for cell, column, width in zip(row.cells, table.columns, widths, strict=True):
        inset = {Anchor.LEFT: _SIDE, Anchor.CENTRE: width / 2, Anchor.RIGHT: width - _SIDE}
        x = left + inset[column.anchor]
        for n, line in enumerate(cell):
            if line:
                y = top + _ABOVE + em * (_LEAD * n + (_LEAD - 1) / 2 + font.ascent)
                weight = Weight.BOLD if row.bold else column.weight
                yield Text(x, y, line, table.size, weight, column.anchor)
        if column.ticks and not row.bold:
            low = top + _ABOVE + em * (_LEAD + 1) / 2
            corners = ((x, low - _TICK), (x + _TICK, low - _TICK), (x + _TICK, low), (x, low))
            yield Polygon(corners, Role.FRAME, Ink.WHITE)
        left += width
