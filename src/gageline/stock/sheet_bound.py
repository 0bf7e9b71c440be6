"""What sheets must cost at least: from areas, and from pieces too large to lie beside one another."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

import numpy as np

from gageline.stock.bounds import Prices
from gageline.stock.layouts import Kind
from gageline.stock.mix import Knowledge, Mix, cheapest_mix
from gageline.stock.problem import Problem, Stick
from gageline.stock.rectangles import Box
from gageline.stock.watch import Watch

_ROWS = 12  # the strongest are handed to the integer program
_SIZES = 20  # different sizes looked at in each direction
_FINE = 1_000_000  # parts of the largest weight of a sheet


def sheet_bound(boxes: Sequence[Box], demand: Sequence[int], sheets: Sequence[Kind], watch: Watch) -> int:
    """The least that sheets for these pieces can cost, cents; it holds for free cuts as well.

    Pieces are weighed by their area, a side that leaves less than a smallest side counted as the whole
    length and a smaller one as nothing: pieces that lie on one sheet then still weigh no more than it.
    After S. P. Fekete and J. Schepers, New classes of fast lower bounds for bin packing problems,
    Mathematical Programming 91 (2001), from memory.

    Args:
        boxes: the kinds of pieces, kerf added.
        demand: how many of each.
        sheets: the kinds of sheets.
        watch: when to stop.
    """
    long, wide = max(s.room.along for s in sheets), max(s.room.across for s in sheets)
    rows = []
    for least, low in product(_steps(boxes, long), _steps(boxes, wide)):
        need = sum(n * _weight(b, long, wide, least, low) for b, n in zip(boxes, demand, strict=True))
        holds = [_side(s.room.along, long, least) * _side(s.room.across, wide, low) for s in sheets]
        if need:
            rows.append((need / max(holds), need, holds))
    rows.sort(key=lambda row: -row[0])
    known = Knowledge()
    for _, need, holds in rows[:_ROWS]:
        # in parts of the largest, rounded so that the bound stays one
        unit = max(holds)
        gives = np.array([-(-h * _FINE // unit) for h in holds], dtype=np.int64)
        nothing = np.zeros(1, dtype=np.int64)
        known = known.learn(Prices(nothing, -gives, 1, need * _FINE // unit, counts_cost=False))
    sticks = tuple(Stick(1, s.cents, s.limit) for s in sheets)
    problem = Problem((1,), (sum(demand),), sticks)
    most = sum(s.cents for s in sheets) * sum(demand)
    mix = cheapest_mix(problem, known, most, watch)
    return mix.cost if isinstance(mix, Mix) else 0


def _steps(boxes: Sequence[Box], whole: int) -> list[int]:
    """Smallest sides worth trying: none, and those that make some side the whole length."""
    sides = {side for b in boxes for way in b.ways() for side in way}
    steps = {whole - side + 1 for side in sides if 2 * side > whole} | {
        side for side in sides if 2 * side <= whole
    }
    return [0, *sorted((s for s in steps if 2 * s <= whole + 1), reverse=True)[:_SIZES]]


def _side(side: int, whole: int, least: int) -> int:
    """A side weighed: nothing below the least, the whole where less than the least is left beside it."""
    if side < least:
        return 0
    return whole if side > whole - least else side


def _weight(box: Box, long: int, wide: int, least: int, low: int) -> int:
    """The least weight of a piece, whichever way it lies."""
    ways = [(a, c) for a, c in box.ways() if a <= long and c <= wide]
    return min(_side(a, long, least) * _side(c, wide, low) for a, c in ways)
