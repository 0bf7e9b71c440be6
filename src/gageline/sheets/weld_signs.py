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
from gageline.sheets.furniture import Block
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Anchor, Circle, Group, Item, Level, Line, Polygon, Text
from gageline.sheets.style import FINE, Role, Weight
from gageline.sheets.wrap import wrap

__all__ = ["weld_list", "weld_sign"]

_ROW = 7.4
_SIGN = 36.0
_LEG = 2.4
_LEAD = 1.15


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
    marks = {fitting.name: fitting.part.mark for fitting in assembly.fittings}
    counts: dict[tuple[str, Weld], int] = {}
    for weld in assembly.welds:
        key = marks[weld.fitting], replace(weld, fitting="")
        counts[key] = counts.get(key, 0) + 1
    head = line_height(FINE) * _LEAD
    many = max(1, int((height - head) // _ROW))
    lines = list(counts.items())
    return [_block(lines[n : n + many], head, scribe, width) for n in range(0, len(lines), many)]


def _block(lines: Sequence[tuple[tuple[str, Weld], int]], head: float, scribe: Scribe, width: float) -> Block:
    items: list[Item] = [Text(0, 0, "Shop welds", FINE, Weight.BOLD, level=Level.TOP)]
    for number, ((mark, weld), count) in enumerate(lines):
        row = tuple(_row(mark, weld, count, scribe, width))
        items.append(Group(row, 0.0, head + number * _ROW))
    return Block(tuple(items), head + len(lines) * _ROW)


def _row(mark: str, weld: Weld, count: int, scribe: Scribe, width: float) -> Iterator[Item]:
    middle = _ROW / 2
    yield Text(0, middle, mark, FINE, Weight.BOLD, level=Level.MIDDLE)
    yield from weld_sign(
        scribe.fine(weld.size),
        (9.0, middle),
        both=weld.both_sides,
        around=weld.all_around,
    )
    runs = f"{weld.runs} x " if weld.runs > 1 else ""
    places = f", on {count} fittings" if count > 1 else ""
    text = f"{weld.where}: {runs}{scribe.tell(weld.length)}{places}"
    yield from _lines(wrap(text, width - _SIGN, FINE)[:2], middle)


def _lines(lines: Sequence[str], middle: float) -> Iterator[Item]:
    step = line_height(FINE)
    for number, line in enumerate(lines):
        y = middle + (number - (len(lines) - 1) / 2) * step
        yield Text(_SIGN, y, line, FINE, level=Level.MIDDLE)


def weld_sign(size: str, tip: tuple[float, float], *, both: bool, around: bool) -> Iterator[Item]:
    """A fillet weld's symbol: arrow, reference line, triangle with its upright leg at the left, size.

    Args:
        size: leg of the fillet, as text.
        tip: where the arrow points, paper mm; the reference line runs to the right of it.
        both: on both sides of the joint, else on the side of the arrow.
        around: all around, a circle at the elbow.
    """
    x, y = tip
    elbow, end = x + 4.0, x + 24.0
    yield arrow_head((x - 2.0, y + 1.6), (elbow, y))
    yield Line(x - 2.0, y + 1.6, elbow, y, Role.DIMENSION)
    yield Line(elbow, y, end, y, Role.DIMENSION)
    if around:
        yield Circle(elbow, y, 1.1, Role.DIMENSION)
    left = x + 18.0
    for down in (1.0, -1.0) if both else (1.0,):
        yield Polygon(((left, y), (left, y + down * _LEG), (left + _LEG, y)), Role.DIMENSION)
        level = Level.TOP if down > 0 else Level.BOTTOM
        yield Text(left - 0.8, y, size, FINE, anchor=Anchor.RIGHT, level=level)
