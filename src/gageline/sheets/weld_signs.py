"""The weld list of a piece: a welding symbol for each weld, with where it runs and how long.

Source: shapes of the fillet symbol, the arrow and the all-around circle as in AWS A2.4 and ISO 2553,
system B; from memory.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gageline.part import Assembly, Weld
from gageline.sheets.boxes import line_height
from gageline.sheets.dimensions import arrow_head
from gageline.sheets.fonts import text_width
from gageline.sheets.furniture import Block
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Anchor, Circle, Group, Item, Level, Line, Point, Polygon, Text
from gageline.sheets.style import FINE, Role, Weight
from gageline.sheets.wrap import wrap

__all__ = ["SIGN_HALF", "reference_length", "weld_list", "weld_rows", "weld_sign"]

_ROW = 7.4
_SIGN = 29.0  # mm from the tip of the arrow to the words
_TIP = 7.0  # mm to the tip of the arrow at the least
_LEG = 2.4
_LEAD = 1.15
_OFF = 0.4  # mm from the reference line to the box of a size
_BEFORE = 1.6  # mm of reference line before the size and after the triangle
SIGN_HALF = 3.5
"""mm from the reference line to the upper and lower edge of a symbol."""


def weld_rows(assembly: Assembly) -> dict[tuple[str, Weld], list[str]]:
    """The welds of a piece, those alike together: mark and weld, with the names of the fittings."""
    marks = {fitting.name: fitting.part.mark for fitting in assembly.fittings}
    rows: dict[tuple[str, Weld], list[str]] = {}
    for weld in assembly.welds:
        rows.setdefault((marks[weld.fitting], replace(weld, fitting="")), []).append(weld.fitting)
    return rows


def weld_list(assembly: Assembly, scribe: Scribe, width: float, height: float) -> list[Block]:
    """The shop welds of a piece, those alike together.

    Args:
        assembly: the piece.
        scribe: writes in the units of the job.
        width: of the list, mm.
        height: that one block of it may have, mm.

    Returns:
        The list in as many blocks as it takes, each with its head; none where nothing is welded.
    """
    head = line_height(FINE) * _LEAD
    many = max(1, int((height - head) // _ROW))
    lines = [(row, len(names)) for row, names in weld_rows(assembly).items()]
    return [_block(lines[n : n + many], head, scribe, width) for n in range(0, len(lines), many)]


def _block(lines: Sequence[tuple[tuple[str, Weld], int]], head: float, scribe: Scribe, width: float) -> Block:
    items: list[Item] = [Text(0, 0, "Shop welds", FINE, Weight.BOLD, level=Level.TOP)]
    tip = max(_TIP, *(text_width(mark, FINE, Weight.BOLD) + 1.0 for (mark, _), _ in lines))
    for number, ((mark, weld), count) in enumerate(lines):
        row = tuple(_row(mark, weld, count, scribe, (tip, width)))
        items.append(Group(row, 0.0, head + number * _ROW))
    return Block(tuple(items), head + len(lines) * _ROW)


def _row(mark: str, weld: Weld, count: int, scribe: Scribe, across: tuple[float, float]) -> Iterator[Item]:
    middle, (tip, width) = _ROW / 2, across
    yield Text(0, middle, mark, FINE, Weight.BOLD, level=Level.MIDDLE)
    yield from weld_sign(
        scribe.fine(weld.size),
        (tip, middle + 1.6),
        (tip + 6.0, middle),
        both=weld.both_sides,
        around=weld.all_around,
    )
    runs = f"{weld.runs} x " if weld.runs > 1 else ""
    places = f", on {count} fittings" if count > 1 else ""
    text = f"{weld.where}: {runs}{scribe.tell(weld.length)}{places}"
    yield from _lines(wrap(text, width - tip - _SIGN, FINE)[:2], (tip + _SIGN, middle))


def _lines(lines: Sequence[str], at: Point) -> Iterator[Item]:
    step, (x, middle) = line_height(FINE), at
    for number, line in enumerate(lines):
        y = middle + (number - (len(lines) - 1) / 2) * step
        yield Text(x, y, line, FINE, level=Level.MIDDLE)


def reference_length(size: str) -> float:
    """How long the reference line of a symbol is, mm."""
    return text_width(size, FINE) + _LEG + 2 * _BEFORE + 1.0


def weld_sign(
    size: str, tip: Point, elbow: Point, way: float = 1.0, *, both: bool, around: bool
) -> Iterator[Item]:
    """A fillet weld's symbol: arrow, reference line, triangle with its upright leg at the left, size.

    Args:
        size: leg of the fillet, as text.
        tip: where the arrow points, paper mm.
        elbow: where the reference line begins, paper mm.
        way: to which side of the elbow it runs: 1 right, -1 left.
        both: on both sides of the joint, else on the side of the arrow.
        around: all around, a circle at the elbow.
    """
    length = reference_length(size)
    x, y = elbow
    start = x if way > 0 else x - length
    yield arrow_head(tip, elbow)
    yield Line(*tip, x, y, Role.DIMENSION)
    yield Line(start, y, start + length, y, Role.DIMENSION)
    if around:
        yield Circle(x, y, 1.1, Role.DIMENSION)
    left = start + _BEFORE + text_width(size, FINE) + 0.8
    for down in (1.0, -1.0) if both else (1.0,):
        yield Polygon(((left, y), (left, y + down * _LEG), (left + _LEG, y)), Role.DIMENSION)
        level = Level.TOP if down > 0 else Level.BOTTOM
        yield Text(left - 0.8, y + down * _OFF, size, FINE, anchor=Anchor.RIGHT, level=level)
