"""The picture of one sheet of plate with the pieces laid out on it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from gageline.sheets.boxes import line_height
from gageline.sheets.dimensions import linear
from gageline.sheets.fonts import text_width
from gageline.sheets.furniture import Block
from gageline.sheets.labels import Side
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Anchor, Circle, Group, Item, Level, Polygon, Polyline, Text
from gageline.sheets.style import BODY, FINE, Hatch, Ink, Role, Weight
from gageline.stock import Laid, ShearCut, SheetPlan

__all__ = ["sheet_picture"]

_WASTE = Hatch(spacing=2.2)
_TALLEST = 105.0
"""mm of paper for the width of a sheet."""
_SIDE = 8.0
_DISC = 1.9
_PLACES = 15
"""Places along a cut where its number is tried."""


def sheet_picture(plan: SheetPlan, scribe: Scribe, width: float, cuts: Sequence[ShearCut] = ()) -> Block:
    """One sheet to scale, its length along the page, its first corner at the lower left.

    Args:
        plan: the sheet and the pieces on it.
        scribe: writes the sizes.
        width: that it may take, mm.
        cuts: of a shear, drawn with their numbers.
    """
    sheet = plan.sheet
    scale = min((width - 2 * _SIDE) / sheet.length.mm, _TALLEST / sheet.width.mm)
    long, wide = sheet.length.mm * scale, sheet.width.mm * scale
    items: list[Item] = [Polygon(_corners(0.0, 0.0, long, wide), Role.OUTLINE, None, _WASTE)]
    for laid in plan.pieces:
        items += _piece(laid, scale, wide)
    items += _cuts(cuts, items, scale, wide)
    along = linear(0.0, long, scribe.fine(sheet.length), Side.BELOW, wide, (-_SIDE, long + _SIDE), size=FINE)
    across = linear(0.0, wide, scribe.fine(sheet.width), Side.LEFT, 0.0, (0.0, wide), size=FINE)
    shift = max(_SIDE, across.depth + 1.0)
    return Block((Group((*items, *along.items, *across.items), shift, 0.5),), wide + along.depth + 1.5)


def _corners(left: float, top: float, right: float, bottom: float) -> tuple[tuple[float, float], ...]:
    return (left, top), (right, top), (right, bottom), (left, bottom)


def _piece(laid: Laid, scale: float, wide: float) -> Iterator[Item]:
    left, low = laid.x.mm * scale, wide - laid.y.mm * scale
    right, high = left + laid.along.mm * scale, low - laid.across.mm * scale
    yield Polygon(_corners(left, high, right, low), Role.OUTLINE, Ink.WHITE)
    x, y = (left + right) / 2, (low + high) / 2
    for size in (BODY, FINE):
        need, tall = text_width(laid.mark, size, Weight.BOLD) + 0.6, line_height(size)
        if need <= right - left and tall <= low - high:
            yield Text(x, y, laid.mark, size, Weight.BOLD, Anchor.CENTRE, Level.MIDDLE)
            return
        if need <= low - high and tall <= right - left:
            yield Text(x, y, laid.mark, size, Weight.BOLD, Anchor.CENTRE, Level.MIDDLE, 90.0)
            return


def _cuts(cuts: Sequence[ShearCut], items: Sequence[Item], scale: float, wide: float) -> Iterator[Item]:
    """The lines of the cuts, the numbers where they hide no mark and no other number if there is room."""
    taken = [
        (item.x, item.y, max(text_width(item.text, item.size, item.weight), line_height(item.size)) / 2)
        for item in items
        if isinstance(item, Text)
    ]
    for cut in cuts:
        at, start, stop = cut.at.mm * scale, cut.start.mm * scale, cut.stop.mm * scale
        ends = ((at, start), (at, stop)) if cut.across else ((start, at), (stop, at))
        yield Polyline(tuple((x, wide - y) for x, y in ends), Role.CUT)
        places = []
        for step in range(_PLACES):
            along = start + (step + 0.5) / _PLACES * (stop - start)
            x, y = (at, wide - along) if cut.across else (along, wide - at)
            clear = min((max(abs(x - u), abs(y - v)) - r for u, v, r in taken), default=_DISC)
            places.append((min(clear - _DISC, 0.0), -step, x, y))
        _, _, x, y = max(places)
        taken.append((x, y, _DISC))
        yield Circle(x, y, _DISC, Role.DIMENSION, Ink.WHITE)
        yield Text(x, y, str(cut.number), FINE, Weight.BOLD, Anchor.CENTRE, Level.MIDDLE)
