"""Rectangular plates from sheets: a good plan with a bound, for shear (edge to edge) or plasma (free)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from gageline.errors import ValueProblem
from gageline.job import say
from gageline.stock.effort import Effort
from gageline.stock.layouts import Kind, Task, lay_out
from gageline.stock.records import Steel
from gageline.stock.rectangles import Box, Room
from gageline.stock.sheet_bound import sheet_bound
from gageline.stock.watch import start_watch
from gageline.units import ZERO, Length, System

_BOUND_SECONDS = 5.0


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
        bound: no plan costs less, cents; from the areas of the pieces with their kerfs, and from pieces
            too large to lie beside one another.
    """

    sheets: tuple[SheetPlan, ...]
    bound: int

    @property
    def cents(self) -> int:
        """Price of the sheets."""
        return sum(s.sheet.cents for s in self.sheets)

    def order(self) -> tuple[tuple[Sheet, int], ...]:
        """The sheets that are needed, each with how many, the longest first."""
        count = Counter(plan.sheet for plan in self.sheets)
        return tuple(
            sorted(count.items(), key=lambda item: (-item[0].length, -item[0].width, item[0].heat or ""))
        )

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
    effort: Effort | None = None,
    system: System = System.FT_IN,
) -> PlatePlan:
    """Lay plates of one steel out on sheets.

    Args:
        plates: the pieces.
        sheets: the sheets to be had.
        burner: how they are cut.
        effort: how long to search, and whom to tell; a first plan is made however short the time.
        system: the units that refusals are written in.

    Returns:
        A good plan, with a bound; not necessarily the best.

    Raises:
        ValueProblem: everything that stands against a plan, one fault a line.
    """
    effort = effort or Effort()
    faults = _faults(plates, sheets, burner, system)
    if faults:
        raise ValueProblem("\n".join(faults))
    steel = plates[0].steel
    watch = start_watch(effort.seconds, effort.stop, partial(effort.tell, steel))
    ordered = sorted(
        (p for p in plates if p.quantity),
        key=lambda p: (-p.length.ticks * p.width.ticks, p.length.ticks, p.mark),
    )
    to_be_had = sorted(sheets, key=lambda s: (s.cents, s.length, s.width, s.heat or ""))
    boxes = tuple(_box(p, burner) for p in ordered)
    kinds = tuple(Kind(_room(s, burner), s.cents, s.limit) for s in to_be_had)
    demand = tuple(p.quantity for p in ordered)
    bound = sheet_bound(boxes, demand, kinds, start_watch(_BOUND_SECONDS))
    found = lay_out(Task(boxes, demand, kinds, burner.shear), bound, watch)
    if found is None:
        raise ValueProblem(
            f"{steel}: the sheets there are do not hold all {sum(demand)} plates: raise a limit or order more"
        )
    return PlatePlan(
        tuple(
            SheetPlan(
                number,
                to_be_had[filling.sheet],
                tuple(_laid(ordered[i], boxes[i], room, burner) for i, room in filling.placed),
            )
            for number, filling in enumerate(found, 1)
        ),
        bound,
    )


def _box(plate: Plate, burner: Burner) -> Box:
    kerf = burner.kerf.ticks
    return Box(plate.length.ticks + kerf, plate.width.ticks + kerf, plate.grain)


def _room(sheet: Sheet, burner: Burner) -> Room:
    more = burner.kerf.ticks - 2 * burner.trim.ticks
    return Room(0, 0, sheet.length.ticks + more, sheet.width.ticks + more)


def _laid(plate: Plate, box: Box, at: Room, burner: Burner) -> Laid:
    turned = (at.along, at.across) != (box.along, box.across)
    along, across = (plate.width, plate.length) if turned else (plate.length, plate.width)
    return Laid(plate.mark, Length(at.x) + burner.trim, Length(at.y) + burner.trim, along, across)


def _faults(plates: Sequence[Plate], sheets: Sequence[Sheet], burner: Burner, system: System) -> list[str]:
    faults = []
    if burner.kerf < ZERO or burner.trim < ZERO:
        faults.append(
            f"kerf {say(burner.kerf, system)} and trim {say(burner.trim, system)} must be zero or more"
        )
    for sheet in sheets:
        name = f"{sheet.steel}: sheet {say(sheet.length, system)} x {say(sheet.width, system)}"
        if min(sheet.length, sheet.width) - 2 * burner.trim <= ZERO:
            faults.append(f"{name}: the trim {say(burner.trim, system)} leaves nothing of it: give less trim")
        if sheet.cents <= 0 or (sheet.limit is not None and sheet.limit < 0):
            faults.append(f"{name}: price {sheet.cents} cents must be above zero and the stock not negative")
    if not plates or not sheets:
        return [*faults, "there must be at least one plate and one sheet"]
    if len({p.steel for p in plates} | {s.steel for s in sheets}) > 1:
        faults.append("plates and sheets must be of one steel: plan each steel by itself")
    for mark, times in Counter(p.mark for p in plates).items():
        if times > 1:
            faults.append(
                f'{plates[0].steel}: plate "{mark}" stands there {times} times: '
                "add up the quantities, or give each its own mark"
            )
    if plates and not any(p.quantity > 0 for p in plates):
        faults.append(f"{plates[0].steel}: no plate is wanted: give a quantity")
    for plate in plates:
        name = (
            f'{plate.steel}: plate "{plate.mark}", {say(plate.length, system)} x {say(plate.width, system)}'
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
