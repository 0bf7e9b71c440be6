"""A view along a piece with its stations, rows, call-outs and overall lengths."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from gageline.errors import ValueProblem
from gageline.part import Assembly, End, bounds
from gageline.sheets.boxes import extent
from gageline.sheets.dimensions import Dimensions, arrow_head, linear, running
from gageline.sheets.labels import Reading, Side, Writing
from gageline.sheets.lining import Lining
from gageline.sheets.measured import Measured, Note, Row
from gageline.sheets.notation import Scribe
from gageline.sheets.panels import Panel, panel
from gageline.sheets.scene import Anchor, Item, Level, Line, Point, Polygon, Text
from gageline.sheets.sight import Picture
from gageline.sheets.style import FINE, Role, Weight
from gageline.units import ZERO, Slope

__all__ = ["NAME_ROOM", "TRIANGLE", "bevel_triangle", "long_view", "overall_lengths", "row_room"]

NAME_ROOM = 16.0
"""mm at the left of a view for its name."""
_ROW = 3.6
_OFFSET = 4.0
_STEP = 7.0
TRIANGLE = 8.0
"""mm: the longer leg of the triangle beside a bevelled end."""
_WIDE = 400.0


def long_view(
    lining: Lining,
    measured: Measured,
    name: str,
    limits: tuple[float, float],
    *,
    notes: Side,
    overall: Sequence[tuple[float, float, str]] = (),
    depth: str = "",
) -> Panel:
    """Draw a view along a piece, the upper edge of the steel at y = 0.

    Args:
        lining: the view on paper.
        measured: what is said of it.
        name: of the view, written at its left; empty for none.
        limits: between which x everything stays, mm.
        notes: above or below; the stations stand on the other side.
        overall: lengths under the stations: from u to u in inches, and text.
        depth: the overall width of a plate, at its right; empty for none.

    Raises:
        ValueProblem: when the readings do not fit between the limits.
    """
    items = lining.items()
    for side, rows, datum in (
        (Side.LEFT, measured.left, measured.datum),
        (Side.RIGHT, measured.right, measured.datum),
    ):
        items += _rows(lining, rows, side, lining.y(datum))
    box = extent(tuple(items))
    low, high = min(box.top, 0.0), max(box.bottom, lining.height)
    if depth:
        right = max(box.right, lining.ends[1])
        items += linear(0.0, lining.height, depth, Side.RIGHT, right, (-_WIDE, _WIDE), size=FINE).items
    if name:
        middle = lining.height / 2
        items.append(Text(limits[0], middle, name, FINE, Weight.BOLD, level=Level.MIDDLE))
    inner = (limits[0] + (NAME_ROOM if name else 0.0), limits[1])
    base = {Side.ABOVE: low, Side.BELOW: high}
    stations = Side.BELOW if notes is Side.ABOVE else Side.ABOVE
    items += _notes(lining, measured.notes, notes, base[notes], inner)
    deep = 0.0
    if measured.stations:
        readings = [Reading(lining.x(u), text) for u, text in measured.stations]
        drawn = running(readings, stations, base[stations], inner, size=FINE, datum=lining.x(0.0))
        items += drawn.items
        deep = drawn.depth
    for number, (start, end, text) in enumerate(overall):
        at = base[stations] + deep + 1.0 + number * _STEP
        ends = lining.x(start), lining.x(end)
        items += linear(*ends, text, Side.BELOW, at, inner, offset=_OFFSET, size=FINE).items
    return panel(items, name)


def row_room(picture: Picture, rows: Sequence[Row], scale: float) -> float:
    """How far the readings of rows reach out from the steel, mm.

    Args:
        picture: the view.
        rows: its rows on one side.
        scale: mm of paper for one inch.
    """
    return _readings(picture, rows, scale, Side.RIGHT, 0.0, None).depth


def _readings(
    picture: Picture, rows: Sequence[Row], scale: float, side: Side, base: float, datum: float | None
) -> Dimensions:
    top = picture.bounds[3]
    height = (top - picture.bounds[1]) * scale
    need = max(0.0, len(rows) * _ROW - height) / 2 + 2.0
    readings = [Reading((top - row.v) * scale, row.text) for row in rows]
    return running(readings, side, base, (-need, height + need), size=FINE, datum=datum)


def _rows(lining: Lining, rows: Sequence[Row], side: Side, datum: float) -> Iterator[Item]:
    """Readings of rows beside the view, each with a line to its hole."""
    base = lining.ends[0] if side is Side.LEFT else lining.ends[1]
    yield from _readings(lining.picture, rows, lining.scale, side, base, datum).items
    for row in rows:
        x, y = lining.at(row.u, row.v)
        yield Line(base, y, x, y, Role.DIMENSION)


def _notes(
    lining: Lining, notes: Sequence[Note], side: Side, base: float, limits: tuple[float, float]
) -> Iterator[Item]:
    """Call-outs in rows beside the view, each with an arrow to what it speaks of."""
    if not notes:
        return
    readings = [Reading(lining.x(note.at[0]), note.text) for note in notes]
    yield from _level(readings, side, base, limits).items
    for note in notes:
        tip = lining.at(*note.at)
        start: Point = (tip[0], base - 0.8 if side is Side.ABOVE else base + 0.8)
        yield Line(*start, *tip, Role.DIMENSION)
        yield arrow_head(tip, start)


def _level(readings: Sequence[Reading], side: Side, base: float, limits: tuple[float, float]) -> Dimensions:
    """Call-outs written level if they have room, else upright."""
    try:
        return running(readings, side, base, limits, size=FINE, writing=Writing.LEVEL)
    except ValueProblem:
        return running(readings, side, base, limits, size=FINE)


def overall_lengths(assembly: Assembly, scribe: Scribe) -> list[tuple[float, float, str]]:
    """The length of the steel, and that of the whole piece where fittings stand out past its ends."""
    length = assembly.main.length
    lengths = [(0.0, length.inches, scribe.tell(length))]
    spans = [bounds(fitting)[0] for fitting in assembly.fittings]
    low = min([ZERO, *(span[0] for span in spans)])
    high = max([length, *(span[1] for span in spans)])
    if spans and (low, high) != (ZERO, length):
        lengths.append((low.inches, high.inches, f"{scribe.tell(high - low)} out to out"))
    return lengths


def bevel_triangle(slope: Slope, end: End, at: Point, texts: tuple[str, str]) -> Iterator[Item]:
    """The small triangle beside a bevelled end: rise in 12.

    Args:
        slope: of the end, positive where the top is longer.
        end: which end.
        at: the corner with the right angle, paper mm.
        texts: at its level and at its upright side.
    """
    ratio = abs(float(slope.ratio))
    level, upright = (TRIANGLE * ratio, TRIANGLE) if ratio <= 1 else (TRIANGLE, TRIANGLE / ratio)
    out = 1.0 if end is End.RIGHT else -1.0
    down = 1.0 if slope.ratio > 0 else -1.0
    x, y = at
    yield Polygon((at, (x + out * level, y), (x, y + down * upright)), Role.FRAME)
    over = Level.BOTTOM if down > 0 else Level.TOP
    yield Text(x + out * level / 2, y - down * 0.4, texts[0], FINE, anchor=Anchor.CENTRE, level=over)
    beside = Anchor.RIGHT if out > 0 else Anchor.LEFT
    yield Text(x - out * 0.8, y + down * upright / 2, texts[1], FINE, anchor=beside, level=Level.MIDDLE)
