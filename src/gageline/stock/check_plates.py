"""An independent check of plate plans: it shares no code with the planner."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import combinations

from gageline.stock.plates import Burner, Laid, Plate, PlatePlan, Sheet, SheetPlan


def check_plates(
    plan: PlatePlan, plates: Sequence[Plate], sheets: Sequence[Sheet], burner: Burner
) -> list[str]:
    """Check demand, edges, kerfs, grain, edge-to-edge cuts, limits and the bound.

    Args:
        plan: the plan.
        plates: the pieces that were asked for.
        sheets: the sheets there were.
        burner: how they are cut.

    Returns:
        What is wrong, one sentence each; empty where the plan is right.
    """
    of_mark = {p.mark: p for p in plates}
    wrong = [f"{m}: asked for twice" for m, n in Counter(p.mark for p in plates).items() if n > 1]
    made = Counter(p.mark for s in plan.sheets for p in s.pieces)
    wrong += [f"{m}: {made[m]} cut, {p.quantity} wanted" for m, p in of_mark.items() if made[m] != p.quantity]
    wrong += [f"{m}: {n} cut, none wanted" for m, n in made.items() if m not in of_mark]
    used = Counter(s.sheet for s in plan.sheets)
    for sheet, count in used.items():
        # two lots of equal sheets are there together
        alike = [s.limit for s in sheets if s == sheet]
        there = sum(n for n in alike if n is not None)
        if not alike or (None not in alike and count > there):
            wrong.append(f"{count} sheets of {sheet.length.ticks} x {sheet.width.ticks} ticks are not there")
    for number in plan.sheets:
        wrong += [f"sheet {number.number}: {w}" for w in _check_sheet(number, of_mark, burner)]
    if plan.bound > sum(s.sheet.cents for s in plan.sheets):
        wrong.append("the bound is above the cost")
    return wrong


def _check_sheet(plan: SheetPlan, of_mark: dict[str, Plate], burner: Burner) -> list[str]:
    wrong = []
    trim, kerf = burner.trim.ticks, burner.kerf.ticks
    for laid in plan.pieces:
        if laid.mark in of_mark and not _as_wanted(laid, of_mark[laid.mark]):
            wrong.append(f"{laid.mark} has the wrong sizes or lies across the grain")
        x0, y0, x1, y1 = _corners(laid)
        if (
            x0 < trim
            or y0 < trim
            or x1 > plan.sheet.length.ticks - trim
            or y1 > plan.sheet.width.ticks - trim
        ):
            wrong.append(f"{laid.mark} lies beyond the edge")
    for one, other in combinations(plan.pieces, 2):
        a, b = _corners(one), _corners(other)
        apart = max(a[0] - b[2], b[0] - a[2], a[1] - b[3], b[1] - a[3])
        if apart < kerf:
            wrong.append(f"{one.mark} and {other.mark} are closer than a kerf")
    if burner.shear and not _separable([_corners(p) for p in plan.pieces]):
        wrong.append("the pieces cannot be cut from edge to edge")
    return wrong


def _as_wanted(laid: Laid, plate: Plate) -> bool:
    straight = (laid.along, laid.across) == (plate.length, plate.width)
    turned = (laid.along, laid.across) == (plate.width, plate.length) and not plate.grain
    return straight or turned


def _corners(laid: Laid) -> tuple[int, int, int, int]:
    x, y = laid.x.ticks, laid.y.ticks
    return x, y, x + laid.along.ticks, y + laid.across.ticks


def _separable(pieces: list[tuple[int, int, int, int]]) -> bool:
    """Whether straight cuts that cross no piece take them apart one by one."""
    if len(pieces) <= 1:
        return True
    for low, high in ((0, 2), (1, 3)):
        ordered = sorted(pieces, key=lambda p: p[low])
        reach = ordered[0][high]
        for k in range(1, len(ordered)):
            if ordered[k][low] >= reach:
                return _separable(ordered[:k]) and _separable(ordered[k:])
            reach = max(reach, ordered[k][high])
    return False
