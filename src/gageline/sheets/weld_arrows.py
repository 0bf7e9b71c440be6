"""Welding symbols on the elevation of a piece, each where it has clear room; the list has them all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from gageline.part import Assembly, End, Face, Fitting, FittingKind, Weld, bounds, extent_y, foot
from gageline.sheets.boxes import text_box
from gageline.sheets.lining import Lining
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Arc, Box, Circle, Item, Leaf, Line, Point, Text, leaves
from gageline.sheets.weld_signs import SIGN_HALF, reference_length, weld_rows, weld_sign

__all__ = ["weld_arrows"]

_FREE = 0.5  # mm kept free round a symbol
_TIP = 0.6  # mm at the tip of the arrow where it may touch the edge that it points at
_NEAR_CORNER = 1.6
_OUT = (5.0, 8.0, 12.0)
_UP = (0.0, -5.0, 5.0, -8.0, 8.0, -12.0, 12.0)
_SHARES = (0.5, 0.3, 0.7)
_SEEN = frozenset({Face.NEAR, Face.LEG_A, Face.FACE, Face.TOP, Face.BOTTOM, None})


@dataclass(frozen=True, slots=True)
class _Tip:
    """What an arrow points at, to which side its line runs (1 right, -1 left), and if it may lie level."""

    at: Point
    way: float
    level: bool = True


def weld_arrows(
    assembly: Assembly, lining: Lining, drawn: Sequence[Item], box: Box, scribe: Scribe
) -> list[Item]:
    """The symbols that find room on the elevation.

    Args:
        assembly: the piece.
        lining: its elevation on paper.
        drawn: everything that stands there already.
        box: that the symbols must stay in, paper mm.
        scribe: writes in the units of the job.

    Returns:
        The symbols, none of them on a line or a text; those of welds out of sight are left out.
    """
    if not assembly.welds:  # what stands there need not be gone through
        return []
    fittings = {fitting.name: fitting for fitting in assembly.fittings}
    taken = _taken(drawn)
    found: list[Item] = []
    before: dict[str, int] = {}
    for (mark, weld), names in weld_rows(assembly).items():
        size = scribe.fine(weld.size)
        turn = before.get(mark, 0)
        before[mark] = turn + 1
        seen = (fittings[name] for name in names if fittings[name].on in _SEEN)
        tips = (tip for fitting in seen for tip in _tips(assembly, fitting, lining, turn))
        sign = next((made for tip in tips if (made := _placed(tip, size, weld, taken, box))), None)
        if sign:
            found += sign
            taken += _taken(sign)
    return found


def _tips(assembly: Assembly, fitting: Fitting, lining: Lining, turn: int) -> Iterator[_Tip]:
    """Edges of a fitting that are welded and in sight.

    Args:
        assembly: the piece.
        fitting: one of its fittings.
        lining: the elevation.
        turn: which weld of the fitting this is: the first points at the middle, others near the corner.
    """
    (left, right), (_, (low, high), _) = foot(fitting, assembly.main.stock), bounds(fitting)
    upright = fitting.kind is FittingKind.TONGUE
    if upright:  # on its end cap: the arrow comes over the tongue
        sides = [(right.inches, -1.0) if fitting.end is End.LEFT else (left.inches, 1.0)]
    elif fitting.on is None:  # a plate across an end: the joint is at the end of the steel
        bottom, top = extent_y(assembly.main.stock)
        at = 0.0 if fitting.end is End.LEFT else assembly.main.length.inches
        sides = [(at, 1.0 if fitting.end is End.LEFT else -1.0)]
        low, high = max(low, bottom), min(high, top)
    else:
        sides = [(right.inches, 1.0), (left.inches, -1.0)]
        sides = [one for one in sides if (fitting.end is None) or ((fitting.end is End.LEFT) == (one[1] > 0))]
    ys = [lining.y(high.inches), lining.y(low.inches)]
    if fitting.on in {Face.TOP, Face.BOTTOM}:
        heights = [ys[1] - _NEAR_CORNER if fitting.on is Face.TOP else ys[0] + _NEAR_CORNER]
    elif right - left > high - low and not turn and not upright:  # it lies along: its long edges are welded
        yield from (_Tip((lining.x(u) - way * _NEAR_CORNER, ys[0]), way, level=False) for u, way in sides)
        return
    elif turn:
        heights = [ys[0] + _NEAR_CORNER, ys[1] - _NEAR_CORNER]
    else:
        heights = [ys[0] + (ys[1] - ys[0]) * share for share in _SHARES]
    for u, way in sides:
        yield from (_Tip((lining.x(u), y), way) for y in heights)


def _placed(tip: _Tip, size: str, weld: Weld, taken: Sequence[BaseGeometry], box: Box) -> list[Item]:
    """The symbol at the first place that is clear; empty where none is."""
    tree = shapely.STRtree(taken)
    length = reference_length(size)
    for out in _OUT:
        for up in _UP if tip.level else _UP[1:]:
            elbow = tip.at[0] + tip.way * out, tip.at[1] + up
            start = elbow[0] if tip.way > 0 else elbow[0] - length
            room = shapely.box(
                start - _FREE,
                elbow[1] - SIGN_HALF - _FREE,
                start + length + _FREE,
                elbow[1] + SIGN_HALF + _FREE,
            )
            if not shapely.box(box.left, box.top, box.right, box.bottom).contains(room):
                continue
            arrow = shapely.LineString([elbow, tip.at])
            clear = arrow.difference(shapely.Point(tip.at).buffer(_TIP))
            if len(tree.query(room, predicate="intersects")) or len(
                tree.query(clear, predicate="intersects")
            ):
                continue
            return list(weld_sign(size, tip.at, elbow, tip.way, both=weld.both_sides, around=weld.all_around))
    return []


def _taken(items: Sequence[Item]) -> list[BaseGeometry]:
    """What is drawn, as shapes that no symbol may be put on."""
    return [shape for item, dx, dy in leaves(tuple(items)) for shape in _shapes(item, dx, dy)]


def _shapes(item: Leaf, dx: float, dy: float) -> Iterator[BaseGeometry]:
    if isinstance(item, Text):
        yield shapely.Polygon([(x + dx, y + dy) for x, y in text_box(item)])
    elif isinstance(item, Line):
        yield shapely.LineString([(item.x1 + dx, item.y1 + dy), (item.x2 + dx, item.y2 + dy)])
    elif isinstance(item, Circle | Arc):
        yield shapely.Point(item.x + dx, item.y + dy).buffer(item.radius)
    else:
        points = [(x + dx, y + dy) for x, y in item.points]
        yield shapely.LineString([*points, points[0]] if len(points) > 2 else points)
