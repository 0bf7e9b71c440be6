"""A sheet of plate at the saw: taken, its plates cut in any order, what is left kept or scrap."""

from __future__ import annotations

from typing import Any

from gageline.errors import GagelineError, ValueProblem
from gageline.job import Job
from gageline.sheets import SawCard, SawCut, Scribe, sheet_picture
from gageline.shop.logbook import note
from gageline.shop.models import Cut, Cutting, Person
from gageline.shop.plans import plan_of
from gageline.shop.racks import add_sheet, use_sheet, yard_system
from gageline.stock import Burner, Sheet, SheetPlan, shear_cuts
from gageline.units import ZERO, Length, System, Unit, exact_text, parse_length

__all__ = ["keep_rest", "lay_sheet_back", "sheet_card", "take_rest_up", "take_sheet"]

_BY = " x "
_NOTHING = "-"


def sheet_card(job: Job, plan: SheetPlan, burner: Burner, width: float = 250.0) -> SawCard:
    """A sheet of a cutting plan for the screen: its picture, and each plate with its size and its place.

    Args:
        job: whose units it is written in.
        plan: the sheet and the plates on it.
        burner: how it is cut; the cuts of a shear are in the picture with their numbers.
        width: of the picture, mm.
    """
    scribe, unit = Scribe.of(job), " mm" if job.system is System.MM else ""

    def say(one: Length) -> str:
        return f"{scribe.fine(one)}{unit}"

    cuts = tuple(
        SawCut(number, laid.mark, f"{say(laid.along)} x {say(laid.across)}",
               f"{say(laid.x)} along, {say(laid.y)} up", "", ZERO)
        for number, laid in enumerate(plan.pieces, 1)
    )  # fmt: skip
    size = f"{say(plan.sheet.width)} x {say(plan.sheet.length)}"
    sheared = shear_cuts(plan, burner) if burner.shear else ()
    return SawCard(sheet_picture(plan, scribe, width, sheared), size, cuts, "")


def take_sheet(person: Person, cutting: Cutting, plan: SheetPlan, typed: str) -> None:
    """A sheet comes to be cut: one that is there is counted, of one that was bought the heat is told.

    Raises:
        ValueProblem: when none is there any more.
    """
    if not use_sheet(person, plan.sheet, 1):
        raise ValueProblem("such a sheet is not on the rack any more: plan again")
    cutting.heat = plan.sheet.heat or typed
    cutting.save()
    note(person.name, f"took a sheet of {cutting.steel}, heat {cutting.heat}, to be cut")


def lay_sheet_back(person: Person, cutting: Cutting, plan: SheetPlan) -> None:
    """A sheet of which nothing was cut goes back."""
    use_sheet(person, plan.sheet, -1)
    cutting.heat = plan.sheet.heat or ""
    cutting.save()
    note(person.name, f"took back: a sheet of {cutting.steel} to be cut")


def keep_rest(person: Person, cutting: Cutting, plan: SheetPlan, typed: str) -> str:
    """What is left of a sheet goes on the rack as a sheet of its own, or is scrap.

    Args:
        person: who cuts.
        cutting: of which sheet.
        plan: of the sheet.
        typed: the largest rectangle left, length x width, or a dash.

    Returns:
        The rectangle, exactly; empty for scrap.

    Raises:
        ValueProblem: when it is no rectangle, or larger than the sheet.
    """
    size = _rectangle(typed, plan.sheet)
    if size is None:
        note(person.name, f"the rest of a sheet of {cutting.steel}, heat {cutting.heat}, is scrap")
    else:
        add_sheet(person, _table(cutting, plan, size))
        note(person.name, f"put back {typed.strip()} of a sheet of {cutting.steel}, heat {cutting.heat}")
    cutting.done = True
    cutting.save()
    return "" if size is None else _BY.join(exact_text(one, yard_system()) for one in size)


def take_rest_up(person: Person, cutting: Cutting, plan: SheetPlan, back: Cut) -> None:
    """The rest of a sheet is put to it again, so that more can be cut.

    Raises:
        ValueProblem: when it was used or changed since.
    """
    size = _rectangle(back.mark or _NOTHING, plan.sheet)
    if size is not None:
        cents = _worth(cutting, plan, size)
        rest = Sheet(plan.sheet.steel, *size, cents=cents, limit=1, heat=cutting.heat)
        if not use_sheet(person, rest, 1):
            raise ValueProblem(f"the rest of it, {back.mark}, was changed or used since: it stays")
    cutting.done = False
    cutting.save()
    note(person.name, f"took back: the rest of a sheet of {cutting.steel}")


def _rectangle(typed: str, sheet: Sheet) -> tuple[Length, Length] | None:
    """Length and width of what is left; None for nothing."""
    text = typed.strip()
    if text in {_NOTHING, "0"}:
        return None
    unit = Unit.MM if yard_system() is System.MM else Unit.INCH
    parts = text.casefold().replace("×", "x").split("x")
    try:
        sides = [parse_length(part.strip(), unit) for part in parts]
    except GagelineError as refused:
        raise ValueProblem(f"what is left: {refused}: type length x width, or a dash for scrap") from refused
    if len(sides) != 2 or min(sides) <= ZERO:
        raise ValueProblem(f'"{text[:40]}" is no rectangle: type length x width, or a dash for scrap')
    length, width = sides
    room = (sheet.length, sheet.width)
    if max(sides) > max(room) or min(sides) > min(room):
        raise ValueProblem(f'"{text[:40]}" is larger than the sheet was: measure it again')
    return length, width


def _worth(cutting: Cutting, plan: SheetPlan, size: tuple[Length, Length]) -> int:
    """What is left of a sheet, in cents: its share of the sheet, as much of it as a drop of a stick earns."""
    share = plan_of(cutting.plan).question.rack.saw.drop_percent
    area = plan.sheet.length.ticks * plan.sheet.width.ticks
    return max(1, plan.sheet.cents * share * size[0].ticks * size[1].ticks // (100 * area))


def _table(cutting: Cutting, plan: SheetPlan, size: tuple[Length, Length]) -> dict[str, Any]:
    system = yard_system()
    thick = next(
        one.thickness for one in plan_of(cutting.plan).question.plates if one.steel == plan.sheet.steel
    )
    return {
        "thickness": exact_text(thick, system), "grade": plan.sheet.steel.grade,
        "length": exact_text(size[0], system), "width": exact_text(size[1], system),
        "each": f"{_worth(cutting, plan, size) / 100:.2f}", "limit": 1, "heat": cutting.heat,
    }  # fmt: skip
