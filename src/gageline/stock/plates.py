"""Rectangular plates from sheets: a good plan with a bound, for shear (edge to edge) or plasma (free)."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from random import Random

import numpy as np

from gageline.errors import ValueProblem
from gageline.stock.bounds import Prices
from gageline.stock.faults import text
from gageline.stock.mix import Knowledge, Mix, cheapest_mix
from gageline.stock.problem import Problem, Stick
from gageline.stock.records import Steel
from gageline.stock.rectangles import Box, Room, fill_sheet
from gageline.stock.watch import Watch, start_watch
from gageline.units import ZERO, Length, System

_TRIES = 600  # orders tried for each sheet
_SEED = 6  # the same orders in every run


@dataclass(frozen=True, slots=True)
class Plate:
    """Rectangular pieces that are alike.

    Args:
        mark: the piece mark.
        steel: thickness (as section), grade and finish.
        length: size along the grain where that matters.
        width: size across the grain.
        quantity: how many.
        grain: whether the length must lie along the sheet's length.
    """

    mark: str
    steel: Steel
    length: Length
    width: Length
    quantity: int = 1
    grain: bool = False


@dataclass(frozen=True, slots=True)
class Sheet:
    """Sheets to cut from.

    Args:
        steel: thickness (as section), grade and finish.
        length: size along the grain.
        width: size across the grain.
        cents: price of one.
        limit: how many there are, or None.
        heat: heat number, if known.
    """

    steel: Steel
    length: Length
    width: Length
    cents: int
    limit: int | None = None
    heat: str | None = None


@dataclass(frozen=True, slots=True)
class Burner:
    """How plates are cut.

    Args:
        kerf: width of a cut; zero for a shear.
        trim: margin kept free at all four edges of a sheet.
        shear: whether every cut must go from edge to edge.
    """

    kerf: Length
    trim: Length = ZERO
    shear: bool = False


@dataclass(frozen=True, slots=True)
class Laid:
    """One piece on a sheet: lower left corner, and its sizes as it lies."""

    mark: str
    x: Length
    y: Length
    along: Length
    across: Length


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """One sheet and the pieces on it."""

    number: int
    sheet: Sheet
    pieces: tuple[Laid, ...]


@dataclass(frozen=True, slots=True)
class PlatePlan:
    """The plan of one steel.

    Args:
        sheets: the sheets in order.
        bound: no plan costs less, cents; from the area of the pieces with their kerfs, and from pieces so
            large that no two fit on one sheet.
    """

    sheets: tuple[SheetPlan, ...]
    bound: int

    @property
    def cents(self) -> int:
        """Price of the sheets."""
        return sum(s.sheet.cents for s in self.sheets)

    @property
    def proven(self) -> bool:
        """Whether no plan costs less."""
        return self.cents == self.bound

    @property
    def yield_(self) -> float:
        """Area of the pieces over area of the sheets, 0 to 1."""
        cut = sum(p.along.ticks * p.across.ticks for s in self.sheets for p in s.pieces)
        used = sum(s.sheet.length.ticks * s.sheet.width.ticks for s in self.sheets)
        return cut / used if used else 0.0


def plan_plates(
    plates: Sequence[Plate],
    sheets: Sequence[Sheet],
    burner: Burner,
    seconds: float = 20.0,
    stop: Callable[[], bool] = lambda: False,
    system: System = System.FT_IN,
) -> PlatePlan:
    """Lay plates of one steel out on sheets.

    Sheet after sheet is filled in many orders and the one that is best filled for its price is kept.

    Args:
        plates: the pieces.
        sheets: the sheets to be had.
        burner: how they are cut.
        seconds: the most it may take; each sheet is tried at least once.
        stop: asked between steps; True ends the search with the best plan kept.
        system: the units that refusals are written in.

    Returns:
        A good plan, with a bound; not necessarily the best.

    Raises:
        ValueProblem: everything that stands against a plan, one fault a line.
    """
    faults = _faults(plates, sheets, burner, system)
    if faults:
        raise ValueProblem("\n".join(faults))
    watch = start_watch(seconds, stop)
    ordered = sorted(plates, key=lambda p: (-p.length.ticks * p.width.ticks, p.length.ticks, p.mark))
    boxes = [Box(*_size(p, burner), p.grain) for p in ordered]
    rooms = [_room(s, burner) for s in sheets]
    left = [p.quantity for p in ordered]
    there = [s.limit for s in sheets]
    random = Random(_SEED)  # noqa: S311  # orders to try, nothing secret
    planned: list[SheetPlan] = []
    while any(left):
        best = None
        for k, sheet in enumerate(sheets):
            laid = _best_filling(rooms[k], boxes, left, burner, random, watch) if there[k] != 0 else []
            worth = sum(boxes[i].along * boxes[i].across for i, _ in laid) / sheet.cents
            if laid and (best is None or worth > best[0]):
                best = (worth, k, laid)
        if best is None:
            raise ValueProblem(
                f"{plates[0].steel}: {sum(left)} plates found no place on the sheets there are: "
                "raise a limit or order more"
            )
        _, k, laid = best
        there[k] = None if there[k] is None else (there[k] or 0) - 1
        for i, _ in laid:
            left[i] -= 1
        pieces = tuple(_laid(ordered[i], boxes[i], room, burner) for i, room in laid)
        planned.append(SheetPlan(len(planned) + 1, sheets[k], pieces))
    plan = PlatePlan(tuple(planned), _bound(boxes, [p.quantity for p in ordered], sheets, rooms))
    return _smaller_last(plan, ordered, sheets, burner)


def _size(plate: Plate, burner: Burner) -> tuple[int, int]:
    return plate.length.ticks + burner.kerf.ticks, plate.width.ticks + burner.kerf.ticks


def _room(sheet: Sheet, burner: Burner) -> Room:
    more = burner.kerf.ticks - 2 * burner.trim.ticks
    return Room(0, 0, sheet.length.ticks + more, sheet.width.ticks + more)


def _laid(plate: Plate, box: Box, at: Room, burner: Burner) -> Laid:
    turned = (at.along, at.across) != (box.along, box.across)
    along, across = (plate.width, plate.length) if turned else (plate.length, plate.width)
    return Laid(plate.mark, Length(at.x) + burner.trim, Length(at.y) + burner.trim, along, across)


def _best_filling(
    room: Room, boxes: list[Box], left: list[int], burner: Burner, random: Random, watch: Watch
) -> list[tuple[int, Room]]:
    """The filling of one sheet with the most area, of many orders: by area, side, and shuffles of these."""
    waiting = [i for i, n in enumerate(left) for _ in range(n)]
    keys = (
        lambda i: -boxes[i].along * boxes[i].across,
        lambda i: -max(boxes[i].along, boxes[i].across),
        lambda i: -min(boxes[i].along, boxes[i].across),
        lambda i: -boxes[i].across,
        lambda i: -boxes[i].along,
    )
    best: list[tuple[int, Room]] = []
    most = -1
    total = sum(boxes[i].along * boxes[i].across for i in waiting)
    for turn in range(_TRIES):
        if turn and (watch.over() or most in {total, room.along * room.across}):
            break
        order = sorted(waiting, key=keys[turn % len(keys)])
        if turn >= 2 * len(keys):
            # a shuffle that mostly keeps the large pieces ahead
            order = sorted(waiting, key=lambda i: (keys[turn % len(keys)](i)) * random.uniform(0.2, 1.0))
        laid = fill_sheet(room, boxes, order, shear=burner.shear, rule=turn // len(keys) % 2)
        area = sum(boxes[i].along * boxes[i].across for i, _ in laid)
        if area > most:
            best, most = laid, area
    return best


def _smaller_last(
    plan: PlatePlan, plates: Sequence[Plate], sheets: Sequence[Sheet], burner: Burner
) -> PlatePlan:
    """Move the last sheet's pieces to a cheaper sheet if one holds them."""
    last = plan.sheets[-1]
    marks = [p.mark for p in last.pieces]
    wanted = [replace(p, quantity=marks.count(p.mark)) for p in plates if p.mark in marks]
    used = [s.sheet for s in plan.sheets]
    for sheet in sorted(sheets, key=lambda s: s.cents):
        if sheet.cents >= last.sheet.cents or (sheet.limit is not None and used.count(sheet) >= sheet.limit):
            continue
        boxes = [Box(*_size(p, burner), p.grain) for p in wanted]
        filling = _best_filling(
            _room(sheet, burner),
            boxes,
            [p.quantity for p in wanted],
            burner,
            Random(_SEED),  # noqa: S311  # orders to try, nothing secret
            start_watch(2.0),
        )
        if len(filling) == len(marks):
            pieces = tuple(_laid(wanted[i], boxes[i], room, burner) for i, room in filling)
            return replace(plan, sheets=(*plan.sheets[:-1], SheetPlan(last.number, sheet, pieces)))
    return plan


def _bound(boxes: list[Box], demand: list[int], sheets: Sequence[Sheet], rooms: list[Room]) -> int:
    """Cheapest mix of sheets with area enough, and enough sheets for the pieces that need one each."""
    longest, widest = max(r.along for r in rooms), max(r.across for r in rooms)
    alone = sum(n for b, n in zip(boxes, demand, strict=True) if _alone(b, longest, widest))
    area = sum(b.along * b.across * n for b, n in zip(boxes, demand, strict=True))
    sizes = [r.along * r.across for r in rooms]
    scale = max(sizes)
    # areas in parts of the largest sheet, rounded so that the bound stays one
    sticks = tuple(
        Stick(-(-a * 1_000_000 // scale), s.cents, s.limit) for a, s in zip(sizes, sheets, strict=True)
    )
    problem = Problem((1,), (sum(demand),), sticks)
    rows = Knowledge()
    for need, gives in (
        (area * 1_000_000 // scale, [s.length for s in sticks]),
        (alone, [1] * len(sticks)),
    ):
        slack = -np.array(gives, dtype=np.int64)
        rows = rows.learn(Prices(np.zeros(1, dtype=np.int64), slack, 1, need, counts_cost=False))
    most = sum(s.cents for s in sheets) * sum(demand)
    mix = cheapest_mix(problem, rows, most, start_watch(5.0))
    return mix.cost if isinstance(mix, Mix) else 0


def _alone(box: Box, longest: int, widest: int) -> bool:
    """Whether no two pieces at least so large fit on one sheet, whichever way they lie."""
    ways = [(box.along, box.across)] + ([] if box.grain else [(box.across, box.along)])
    return all(2 * a > longest and 2 * b > widest for a, b in ways if a <= longest and b <= widest)


def _faults(plates: Sequence[Plate], sheets: Sequence[Sheet], burner: Burner, system: System) -> list[str]:
    faults = []
    if burner.kerf < ZERO or burner.trim < ZERO:
        faults.append(
            f"kerf {text(burner.kerf, system)} and trim {text(burner.trim, system)} must be zero or more"
        )
    for sheet in sheets:
        name = f"{sheet.steel}: sheet {text(sheet.length, system)} x {text(sheet.width, system)}"
        if min(sheet.length, sheet.width) - 2 * burner.trim <= ZERO:
            faults.append(
                f"{name}: the trim {text(burner.trim, system)} leaves nothing of it: give less trim"
            )
        if sheet.cents <= 0 or (sheet.limit is not None and sheet.limit < 0):
            faults.append(f"{name}: price {sheet.cents} cents must be above zero and the stock not negative")
    if not plates or not sheets:
        return [*faults, "there must be at least one plate and one sheet"]
    if len({p.steel for p in plates} | {s.steel for s in sheets}) > 1:
        faults.append("plates and sheets must be of one steel: plan each steel by itself")
    for plate in plates:
        name = (
            f'{plate.steel}: plate "{plate.mark}", {text(plate.length, system)} x {text(plate.width, system)}'
        )
        if min(plate.length, plate.width) <= ZERO or plate.quantity < 0:
            faults.append(f"{name}: sizes must be above zero and the quantity not negative")
        elif not any(_goes_on(plate, s, burner) for s in sheets):
            faults.append(f"{name}, fits no sheet: order a larger sheet, or splice it if the engineer allows")
    return faults


def _goes_on(plate: Plate, sheet: Sheet, burner: Burner) -> bool:
    length, width = sheet.length - 2 * burner.trim, sheet.width - 2 * burner.trim
    straight = plate.length <= length and plate.width <= width
    return straight or (not plate.grain and plate.width <= length and plate.length <= width)
