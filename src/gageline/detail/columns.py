"""Columns: shafts between base plates, splices and cap plates."""

from __future__ import annotations

import csv
from fractions import Fraction
from functools import cache
from importlib.resources import files
from itertools import pairwise
from typing import Any

from gageline.detail.carrier import AnchorRods, Carrier
from gageline.detail.line import Line
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop
from gageline.job import ColumnEntry, ColumnPlateEntry, EndPlateEntry, grade_of, join_end_plates
from gageline.part import Finding, FittingKind, Part, Placement, Severity
from gageline.steel import Section
from gageline.units import ZERO, Length, parse_length, round_up

__all__ = ["shafts_of"]

_ROD_HOLES = "AISC Manual Table 14-2, holes for anchor rods (from memory)"
_EMBEDDED = 12  # rod diameters
_OSHA_RODS = "29 CFR 1926.755(a): at least 4 anchor rods (from memory)"


def shafts_of(
    line: Line, cap: ColumnPlateEntry | None, splices: tuple[float, ...], shop: Shop
) -> tuple[tuple[float, Carrier], ...]:
    """The shafts of a column from the bottom up, each with the elevation it ends at, inches.

    Args:
        line: the column.
        cap: its cap plate, sized for what bears on it; None without one.
        splices: elevations of its splices, rising, inches.
        shop: the practice.
    """
    entry = line.entry
    base = entry.base_plate if isinstance(entry, ColumnEntry) else None
    low = (base.thickness or _base_thickness(shop)) if base else ZERO
    high = (cap.thickness or _cap_thickness(shop)) if cap else ZERO
    ends = [
        line.start[2] + low.inches,
        *splices,
        line.finish[2] - high.inches,
    ]
    made: list[tuple[float, Carrier]] = []
    for number, (foot, head) in enumerate(pairwise(ends), 1):
        name = f"{line.name}.{number}" if splices else line.name
        length = Length.from_inches(head) - Length.from_inches(foot)
        part = Part(name, line.stock, grade_of(line.stock, entry.grade), length)
        space = line.space
        origin = space.point((Length.from_inches(foot - line.start[2]), ZERO, ZERO))
        shaft = Carrier(line.name, part, Placement(origin, space.ex, space.ey))
        first, last = number == 1, number == len(ends) - 1
        made.append((line.finish[2] if last else head, shaft))
        between = (line.start[2] if first else foot, line.finish[2] if last else head)
        taken = (low if first else ZERO, high if last else ZERO)
        shaft.reasons.append(_shaft_reason(length, between, taken, (number, len(ends) - 1), shop))
        if first and base is not None:
            _base(shaft, line, base, low, shop)
        if last and cap is not None:
            _cap(shaft, line, cap, high, shop)
    return tuple(made)


def _shaft_reason(
    length: Length,
    between: tuple[float, float],
    taken: tuple[Length, Length],
    count: tuple[int, int],
    shop: Shop,
) -> Reason:
    """How the length of a shaft follows from where it stands and what plates are on it."""
    number, of = count
    which = f"shaft {number} of {of}" if of > 1 else "shaft"
    low, high = (shop.say(z) for z in between)
    foot = "spliced" if number > 1 else "base"
    head = "spliced" if number < of else "top"
    return Reason(
        f"{which} {shop.say(length)} long",
        f"{foot} at {low}, {head} at {high}; {_plates(*taken, shop)}",
        "geometry of the frame",
    )


def _plates(low: Length, high: Length, shop: Shop) -> str:
    """What is taken off the height of a column, in words."""
    named = [f"{name} plate {shop.say(thick)}" for name, thick in (("base", low), ("cap", high)) if thick]
    if not named:
        return "no plates are taken off"
    return f"{' and '.join(named)} {'is' if len(named) == 1 else 'are'} taken off"


def _base_thickness(shop: Shop) -> Length:
    return shop.pick(0.75, 20)


def _cap_thickness(shop: Shop) -> Length:
    return shop.pick(0.5, 12)


def _base(carrier: Carrier, line: Line, given: ColumnPlateEntry, thick: Length, shop: Shop) -> None:
    """The base plate, its holes, and the anchor rods that go through them."""
    stock = line.stock
    rod = given.rod or shop.pick(0.75, 20)
    hole = given.diameter or rod_hole(rod, shop)
    beside = shop.pick(3, 75)
    length = given.length or round_up(stock.d + beside * 2, shop.pick(1, 10))
    width = given.width or round_up(stock.bf + beside * 2, shop.pick(1, 10))
    (length, width), alike = _made_square((length, width), given, shop)
    edge, grout = shop.pick(1.5, 40), shop.pick(1.5, 40)
    pitch, gage = given.pitch or length - edge * 2, given.gage or width - edge * 2
    fits = _covers("base plate", (length, width), carrier, shop)
    holes: dict[str, Any] = {"rows": 2, "columns": 2, "pitch": pitch, "gage": gage, "diameter": hole}
    entry = EndPlateEntry.model_construct(
        end="left",
        thickness=thick,
        width=width,
        length=length,
        weld=given.weld,
        **(holes if fits else {}),
    )
    carrier.join(join_end_plates(FittingKind.BASE_PLATE, entry, carrier.part, shop.practice, shop.system))
    up = given.projection or round_up(thick + grout + rod * Fraction(5, 2), shop.pick(0.5, 10))
    carrier.reasons.append(
        Reason(
            f"base plate {shop.say(thick)} x {shop.say(width)} x {shop.say(length)}",
            f"{stock.designation} is {shop.say(stock.bf)} by {shop.say(stock.d)}; {shop.say(beside)} and "
            f"more to each side for rods outside the column{alike}",
            PRACTICE,
        )
    )
    if not fits:
        return  # what it does not cover has no room for rods either
    deep = given.embedment or round_up(rod * _EMBEDDED, shop.pick(1, 10))
    carrier.rods = AnchorRods(line.name, rod, 4, hole, up, deep, pitch, gage)
    carrier.reasons.append(
        Reason(
            f"holes {shop.say(hole)} for {shop.say(rod)} anchor rods, rods {shop.say(up)} over the concrete",
            "as given"
            if given.projection
            else f"plate {shop.say(thick)}, grout {shop.say(grout)}, nut, washer and some thread, two and a "
            "half rod diameters, rounded up",
            f"{_ROD_HOLES}; {_OSHA_RODS}",
        )
    )
    carrier.reasons.append(
        Reason(
            f"rods {shop.say(deep)} into the concrete, {shop.say(carrier.rods.length)} long",
            "as given" if given.embedment else f"{_EMBEDDED} rod diameters, rounded up; not checked",
            PRACTICE,
        )
    )


def _made_square(
    sides: tuple[Length, Length], given: ColumnPlateEntry, shop: Shop
) -> tuple[tuple[Length, Length], str]:
    """Sides of a base plate that are nearly alike made one, and why: a square cannot be set turned."""
    near, apart = shop.pick(1, 25), abs(sides[0] - sides[1])
    if given.length or given.width or given.pitch or given.gage or not apart or apart > near:
        return sides, ""
    words = f"; sides within {shop.say(near)} of each other are made one, so that it is never turned wrongly"
    return (max(sides), max(sides)), words


def _covers(name: str, size: tuple[Length, Length], carrier: Carrier, shop: Shop) -> bool:
    """Whether a plate is as large as the section that stands on it or under it, with a finding if not."""
    stock, (length, width) = carrier.part.stock, size
    if not isinstance(stock, Section) or (length >= stock.d and width >= stock.bf):
        return True
    carrier.findings.append(
        Finding(
            "plate-too-small",
            Severity.ERROR,
            f"{carrier.part.mark} {name}",
            f"{shop.say(width)} by {shop.say(length)} does not cover {stock.designation}, "
            f"{shop.say(stock.bf)} by {shop.say(stock.d)}",
            "give a larger width and length, or leave them out",
        )
    )
    return False


@cache
def _rod_table() -> dict[Length, Length]:
    text = (files("gageline.detail") / "data" / "anchor_rods.csv").read_text(encoding="utf-8")
    lines = csv.DictReader(text.splitlines())
    return {parse_length(line["rod_in"]): parse_length(line["hole_in"]) for line in lines}


def rod_hole(rod: Length, shop: Shop) -> Length:
    """The hole in a base plate for an anchor rod; of a size that no table has, 1/2 in or 12 mm larger.

    Args:
        rod: diameter of the rod.
        shop: the practice.

    Source: AISC Manual Table 14-2 (from memory).
    """
    return _rod_table().get(rod, rod + shop.pick(0.5, 12))


def _cap(carrier: Carrier, line: Line, given: ColumnPlateEntry, thick: Length, shop: Shop) -> None:
    stock = line.stock
    length = given.length or round_up(stock.d + shop.pick(1, 25), shop.pick(1, 10))
    width = given.width or round_up(stock.bf + shop.pick(1, 25), shop.pick(1, 10))
    _covers("cap plate", (length, width), carrier, shop)
    holes: dict[str, Any] = {}
    if given.pitch is not None and given.gage is not None:
        hole = {"pitch": given.pitch, "gage": given.gage, "diameter": given.diameter}
        holes = {"rows": 2, "columns": 2} | {key: value for key, value in hole.items() if value is not None}
    entry = EndPlateEntry.model_construct(
        end="right", thickness=thick, width=width, length=length, weld=given.weld, **holes
    )
    carrier.join(join_end_plates(FittingKind.CAP_PLATE, entry, carrier.part, shop.practice, shop.system))
    carrier.reasons.append(
        Reason(
            f"cap plate {shop.say(thick)} x {shop.say(width)} x {shop.say(length)}",
            f"{stock.designation} is {shop.say(stock.bf)} by {shop.say(stock.d)}"
            + (
                f"; holes {shop.say(given.pitch)} by {shop.say(given.gage)} for what bears on it"
                if given.pitch and given.gage
                else ""
            ),
            PRACTICE,
        )
    )
