"""The first pages of the cutting sheets: what it comes to, what to order, what the rack gives and gets."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.sheets.flow import Part
from gageline.sheets.furniture import paragraph
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Anchor
from gageline.sheets.style import BODY, Weight
from gageline.sheets.table import Column, Table
from gageline.stock import (
    Held,
    Offer,
    PlatePlan,
    SectionPlan,
    Sheet,
    ShopPlan,
    StickPlan,
    Weights,
    weigh_plan,
    weigh_plates,
    weigh_section,
)
from gageline.takeoff import weight_text, weight_unit
from gageline.units import Length, System, counted, is_metric

__all__ = ["drop_length", "drop_marks", "heat_of", "money", "proof", "scribe_of", "summary_parts"]

_RIGHT = Anchor.RIGHT


def money(cents: int) -> str:
    """An amount in whole hundredths of the shop's currency."""
    return f"{cents / 100:,.2f}"


def proof(cents: int, bound: int) -> str:
    """In plain words whether a plan can be bettered."""
    if cents == bound:
        return "proven: none costs less"
    return f"best found: none can save more than {money(cents - bound)}"


def drop_marks(plan: ShopPlan) -> dict[tuple[str, int], str]:
    """The mark for each drop to be kept, by steel and stick: D1, D2 and on, none a stick or piece has.

    The drop of a stick cut already has its mark by now.
    """
    taken = {stick.mark for stick in plan.question.rack.sticks if isinstance(stick, Held)}
    taken |= {blank.mark for blank in plan.question.blanks}
    marks: dict[tuple[str, int], str] = {}
    number = 0
    for section in plan.cuts.sections:
        for stick in section.sticks:
            if stick.kept and not stick.done:
                number += 1
                while f"D{number}" in taken:
                    number += 1
                marks[str(section.steel), stick.number] = f"D{number}"
    return marks


def summary_parts(plan: ShopPlan, scribe: Scribe, width: float) -> Iterator[Part]:
    """The parts of the summary in their order.

    Args:
        plan: the whole plan.
        scribe: writes lengths.
        width: of the page's room, mm.
    """
    yield Part("What it comes to", paragraph("", _sentence(plan, scribe), width, BODY))
    yield Part("By section and grade", _by_steel(plan, scribe))
    order = _order(plan, scribe)
    if order.rows:
        yield Part("To order", order, together=True)
    rack = _from_rack(plan, scribe)
    if rack.rows:
        yield Part("From the rack", rack)
    drops = _drops(plan, scribe)
    if drops.rows:
        yield Part("Drops to mark and put on the rack", drops)
    yield Part("The saw", paragraph("", _saw(plan, scribe), width, BODY))


def _sentence(plan: ShopPlan, scribe: Scribe) -> str:
    sticks = sum(len(section.sticks) for section in plan.cuts.sections)
    sheets = sum(len(plates.sheets) for plates in plan.plates)
    pieces = sum(blank.quantity for blank in plan.question.blanks)
    total, unit = weigh_plan(plan), weight_unit(scribe.system)
    taken, cut, kept, rest = (
        f"{weight_text(pounds, scribe.system, 0)} {unit}"
        for pounds in (total.taken, total.pieces, total.kept, total.scrap)
    )
    credit = sum(stick.credit for section in plan.cuts.sections for stick in section.sticks)
    less = f" after {money(credit)} for drops kept" if credit else ""
    many_sheets = f" and {counted(sheets, 'sheet')}" if sheets else ""
    dense = "490 lb/ft3" if scribe.system is System.FT_IN else "7850 kg/m3"
    return (
        f"{counted(pieces, 'piece')} from {counted(sticks, 'stick')}{many_sheets}. "
        f"Steel taken {taken}: {cut} in pieces, {kept} in drops kept, {rest} in kerfs, trims and scrap. "
        f"Cost {money(plan.cents)}{less}; "
        f"{proof(plan.cents, plan.bound)}. Weights are those of the tables, plates at {dense}."
    )


def _by_steel(plan: ShopPlan, scribe: Scribe) -> Table:
    unit = weight_unit(scribe.system)
    columns = (
        Column("Steel", weight=Weight.BOLD),
        Column("Sticks", _RIGHT),
        Column("Pieces", _RIGHT),
        Column("Set-ups", _RIGHT),
        Column(f"Taken {unit}", _RIGHT),
        Column("Yield", _RIGHT),
        Column("Cost", _RIGHT),
        Column("Can it be bettered?"),
    )
    rows = [_section_row(section, plan, scribe) for section in plan.cuts.sections]
    rows += [_plate_row(plan, number, scribe) for number in range(len(plan.plates))]
    weight = weight_text(weigh_plan(plan).taken, scribe.system, 0)
    total = ("Total", "", "", "", weight, "", money(plan.cents), "")
    return Table(columns, (*rows, total), total=True)


def _section_row(section: SectionPlan, plan: ShopPlan, scribe: Scribe) -> tuple[str, ...]:
    weights = weigh_section(section, plan.question.blanks)
    pieces = sum(len(stick.pieces) for stick in section.sticks)
    counts = str(len(section.sticks)), str(pieces), str(section.setups)
    return (str(section.steel), *counts, *_worth(weights, section.yield_, section, scribe))


def _plate_row(plan: ShopPlan, number: int, scribe: Scribe) -> tuple[str, ...]:
    asked, plates = plan.question.plates[number], plan.plates[number]
    weights = weigh_plates(plates, asked.thickness)
    pieces = sum(len(sheet.pieces) for sheet in plates.sheets)
    counts = f"{len(plates.sheets)} sh.", str(pieces), "-"
    return (str(asked.steel), *counts, *_worth(weights, plates.yield_, plates, scribe))


def _worth(
    weights: Weights, share: float, part: SectionPlan | PlatePlan, scribe: Scribe
) -> tuple[str, str, str, str]:
    taken = weight_text(weights.taken, scribe.system, 0)
    return taken, f"{100 * share:.1f} %", money(part.cents), proof(part.cents, part.bound)


def _order(plan: ShopPlan, scribe: Scribe) -> Table:
    columns = (
        Column("Steel", weight=Weight.BOLD),
        Column("Length", _RIGHT, wraps=False),
        Column("No.", _RIGHT, Weight.BOLD),
        Column("Each", _RIGHT),
        Column("Together", _RIGHT),
        Column("Certificate"),
        Column("Comes"),
        Column("Here", ticks=True),
    )
    rows = [_ordered(offer, count, scribe) for offer, count in plan.cuts.order()]
    rows += [_sheets(sheet, count, scribe) for plates in plan.plates for sheet, count in plates.order()]
    return Table(columns, tuple(rows))


def _ordered(offer: Offer, count: int, scribe: Scribe) -> tuple[str, ...]:
    price = money(offer.cents), money(offer.cents * count)
    filed = "with the steel" if offer.certificate else ""
    comes = offer.arrives.isoformat() if offer.arrives else ""
    return str(offer.steel), scribe.tell(offer.length), str(count), *price, filed, comes, ""


def _sheets(sheet: Sheet, count: int, scribe: Scribe) -> tuple[str, ...]:
    size = f"{scribe.tell(sheet.width)} x {scribe.tell(sheet.length)}"
    return str(sheet.steel), size, str(count), money(sheet.cents), money(sheet.cents * count), "", "", ""


def _from_rack(plan: ShopPlan, scribe: Scribe) -> Table:
    columns = (
        Column("Mark", weight=Weight.BOLD, wraps=False),
        Column("Steel"),
        Column("Length", _RIGHT, wraps=False),
        Column("Heat"),
        Column("Stick", _RIGHT),
        Column("Certificate"),
        Column("Here", ticks=True),
    )
    rows = []
    for section in plan.cuts.sections:
        for stick in section.sticks:
            held = stick.stock
            if isinstance(held, Held):
                number = f"{stick.number}, cut already" if stick.done else str(stick.number)
                filed = "on file" if held.certificate else "none"
                length = scribe.tell(held.length)
                rows.append((held.mark, str(held.steel), length, held.heat or "not known", number, filed, ""))
    return Table(columns, tuple(rows))


def _drops(plan: ShopPlan, scribe: Scribe) -> Table:
    columns = (
        Column("Mark", weight=Weight.BOLD, wraps=False),
        Column("Steel"),
        Column("Length", _RIGHT, wraps=False),
        Column("Heat"),
        Column("Off stick"),
        Column("Marked", ticks=True),
    )
    marks = drop_marks(plan)
    rows = [
        (
            marks[str(section.steel), stick.number],
            str(section.steel),
            drop_length(stick, scribe),
            heat_of(stick),
            str(stick.number),
            "",
        )
        for section in plan.cuts.sections
        for stick in section.sticks
        if stick.kept and not stick.done
    ]
    return Table(columns, tuple(rows))


def scribe_of(stick: StickPlan, scribe: Scribe) -> Scribe:
    """The writer for one stick: a stick of whole millimetres is read in millimetres from end to end."""
    metric = scribe.system is System.FT_IN and is_metric(stick.stock.length)
    return Scribe(System.MM, Length.from_mm(1)) if metric else scribe


def drop_length(stick: StickPlan, scribe: Scribe) -> str:
    """The length of a drop, with its unit where that is not the job's."""
    own = scribe_of(stick, scribe)
    return f"{own.tell(stick.drop)}{'' if own.system is scribe.system else ' mm'}"


def heat_of(stick: StickPlan) -> str:
    """The heat of a stick, or a line to write it on when it comes."""
    if stick.heat:
        return stick.heat
    return "____________" if isinstance(stick.stock, Offer) else "not known"


def _saw(plan: ShopPlan, scribe: Scribe) -> str:
    saw, burner = plan.question.rack.saw, plan.question.rack.burner
    text = (
        f"Kerf {scribe.fine(saw.kerf)}; trimmed off the first end {scribe.fine(saw.start_trim)}, off the "
        f"other {scribe.fine(saw.end_trim)}; grip {scribe.fine(saw.grip)}; drops from "
        f"{scribe.fine(saw.keep)} are kept, credited at {saw.drop_percent} % of the price of their stick. "
    )
    if plan.plates:
        way = "edge to edge (shear)" if burner.shear else "free (plasma or flame)"
        trim = scribe.fine(burner.trim)
        text += f"Plates: cut {way}, kerf {scribe.fine(burner.kerf)}, {trim} kept free at the edges. "
    hand = [blank.mark for blank in plan.question.blanks if blank.by_hand]
    if hand:
        text += f"Angled both ways, sawn square to the long points and finished by hand: {', '.join(hand)}. "
    return text.strip()
