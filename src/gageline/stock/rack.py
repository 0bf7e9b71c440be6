"""The rack as the planner takes it: saw, sticks, sheets, wishes and sticks cut, from their document."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from gageline.job import Note, filled, grade_of, parse, placed, read_text, stock_named
from gageline.steel import DENSITY, Stock, grade
from gageline.stock.document import BuyEntry, HeldEntry, RackDocument, SawEntry, SheetEntry
from gageline.stock.plates import Burner, Sheet
from gageline.stock.records import Held, Offer, Saw, Steel
from gageline.units import ZERO, Length, System, inches_text, millimetres

NO_BURNER = Burner(ZERO)
_POUNDS_PER_KG = Fraction(10**8, 45359237)
_PRICES = ("per_pound", "per_kg", "each")


@dataclass(frozen=True, slots=True)
class Wish:
    """What certain pieces must come from.

    Args:
        pieces: their marks.
        heat: the heat they must come from.
        one_heat: name of the group that must all come from one heat.
        certificate: only from steel with a certificate.
        needed: not from steel that comes later.
    """

    pieces: tuple[str, ...]
    heat: str | None = None
    one_heat: str | None = None
    certificate: bool = False
    needed: date | None = None


@dataclass(frozen=True, slots=True)
class Done:
    """A stick of the rack that was cut already: its mark, and the mark of each piece cut from it."""

    stick: str
    pieces: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Rack:
    """What pieces can be cut from, and with what.

    Args:
        system: the units that it is read and written in.
        saw: the saw.
        sticks: to buy and on the rack.
        sheets: of plate.
        burner: how plates are cut from sheets.
        grain: whether the length of every plate lies along the grain.
        wishes: what certain pieces must come from.
        done: sticks that were cut already.
    """

    system: System
    saw: Saw
    sticks: tuple[Offer | Held, ...]
    sheets: tuple[Sheet, ...] = ()
    burner: Burner = NO_BURNER
    grain: bool = False
    wishes: tuple[Wish, ...] = ()
    done: tuple[Done, ...] = ()


def open_rack(path: Path) -> Rack:
    """The rack in a file.

    Raises:
        JobProblems: with everything that is wrong with it.
    """
    return read_rack(read_text(path))


def read_rack(text: str) -> Rack:
    """The rack of a document's text.

    Args:
        text: the whole TOML document.

    Raises:
        JobProblems: with everything that is wrong with it, each with its path and line.
    """
    table = parse(text)
    facts = table.get("rack")
    metric = isinstance(facts, dict) and facts.get("units") == System.MM.value
    system = System.MM if metric else System.FT_IN
    document = filled(RackDocument, table, text, system)
    notes = list(_faults(document))
    if notes:
        raise placed(notes, table, text)
    burner = document.burner
    return Rack(
        system,
        _saw(document.saw),
        tuple(_sticks(document, system)),
        tuple(_sheet(entry, system) for entry in document.sheet),
        Burner(burner.kerf, burner.trim, shear=burner.cut == "shear"),
        burner.grain,
        tuple(Wish(w.pieces, w.heat, w.one_heat, w.certificate, w.needed) for w in document.wish),
        tuple(Done(d.stick, d.pieces) for d in document.done),
    )


def sheet_steel(thickness: Length, grade_name: str, system: System) -> Steel:
    """What plates of one thickness and grade are cut from, named in the units of the rack."""
    if system is System.MM:
        return Steel(f"PL {millimetres(thickness, 2)}", grade_name)
    size = inches_text(thickness, 64).removesuffix('"').replace(" ", "-")
    return Steel(f"PL{size}", grade_name)


def _faults(document: RackDocument) -> Iterator[Note]:
    """What no key can know by itself."""
    for kind, entries in (("buy", document.buy), ("sheet", document.sheet)):
        for index, entry in enumerate(entries):
            given = [name for name in _PRICES if getattr(entry, name) is not None]
            if len(given) != 1:
                said = " and ".join(given) or "no price"
                yield (kind, index), f"has {said}: give one of {', '.join(_PRICES)}"
            elif not getattr(entry, given[0]):
                yield (kind, index, given[0]), "is zero: give the price, or list it under [[held]]"
            if isinstance(entry, BuyEntry) and entry.each is not None and len(entry.lengths) > 1:
                yield (kind, index, "each"), "is one price for several lengths: give each length its own"
    marks = [entry.mark for entry in document.held]
    for index, mark in enumerate(marks):
        if mark in marks[:index]:
            yield ("held", index, "mark"), f'"{mark}" is on two sticks: give each its own mark'
    cut = [entry.stick for entry in document.done]
    for index, stick in enumerate(cut):
        if stick not in marks:
            known = ", ".join(marks[:20]) or "none"
            yield ("done", index, "stick"), f'"{stick}" is no stick of the rack: [[held]] has {known}'
        elif stick in cut[:index]:
            yield ("done", index, "stick"), f'"{stick}" stands here twice: put its pieces in one list'
    for index, wish in enumerate(document.wish):
        if not (wish.heat or wish.one_heat or wish.certificate or wish.needed):
            yield ("wish", index), "wishes nothing: give heat, one_heat, certificate or needed"


def _saw(entry: SawEntry) -> Saw:
    return Saw(
        entry.kerf,
        entry.start_trim,
        entry.end_trim,
        entry.grip,
        entry.keep,
        entry.drop_percent,
        entry.most_setups,
    )


def _steel(entry: BuyEntry | HeldEntry, system: System) -> tuple[Steel, Stock]:
    stock = stock_named(entry.stock, system)
    return Steel(stock.designation, grade_of(stock, entry.grade), entry.finish or ""), stock


def _sticks(document: RackDocument, system: System) -> Iterator[Offer | Held]:
    for held in document.held:
        steel, _ = _steel(held, system)
        yield Held(held.mark, steel, held.length, round(held.value * 100), held.heat, held.certificate)
    for offer in document.buy:
        steel, stock = _steel(offer, system)
        for length in offer.lengths:
            pounds = Fraction(stock.weight) * Fraction(length.ticks, Length.from_inches(12).ticks)
            yield Offer(
                steel,
                length,
                _cents(offer, pounds),
                offer.limit,
                offer.certificate,
                offer.arrives,
                offer.heat,
            )


def _sheet(entry: SheetEntry, system: System) -> Sheet:
    steel = sheet_steel(entry.thickness, grade(entry.grade).name, system)
    cubic = entry.thickness.inches * entry.length.inches * entry.width.inches
    cents = _cents(entry, Fraction(cubic * DENSITY))
    long, wide = entry.length, entry.width
    return Sheet(steel, long, wide, cents, entry.limit, entry.heat)


def _cents(entry: BuyEntry | SheetEntry, pounds: Fraction) -> int:
    """Price of one stick or sheet, to a cent."""
    if entry.each is not None:
        return round(entry.each * 100)
    per_pound = (
        Fraction(entry.per_pound or Decimal(0)) + Fraction(entry.per_kg or Decimal(0)) / _POUNDS_PER_KG
    )
    return round(pounds * per_pound * 100)
