"""Columns: shafts between base plates, splices and cap plates."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from gageline.detail.carrier import Carrier
from gageline.detail.line import Line
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop, up_to
from gageline.job import ColumnEntry, ColumnPlateEntry, EndPlateEntry, grade_of, join_end_plates
from gageline.part import End, FittingKind, Part, Placement
from gageline.units import ZERO, Length, round_up

__all__ = ["shafts_of"]

_INCH = Length.from_inches(1)
_ROD_HOLES = "AISC Manual Table 14-2, holes for anchor rods (from memory)"
_OSHA_RODS = "29 CFR 1926.755(a): at least 4 anchor rods (from memory)"
_GROUT = _INCH * 3 / 2


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
    whole = _column(line, cap, shop)
    if not splices:
        return ((line.finish[2], whole),)
    bottom = whole.placement.point((ZERO, ZERO, ZERO))[2]
    cuts = [*(Length.from_inches(z) - bottom for z in splices), whole.part.length]
    made: list[tuple[float, Carrier]] = []
    start = ZERO
    for number, stop in enumerate(cuts, 1):
        part = replace(whole.part, mark=f"{line.name}.{number}", length=stop - start)
        origin = whole.placement.point((start, ZERO, ZERO))
        shaft = Carrier(line.name, part, Placement(origin, whole.placement.ex, whole.placement.ey))
        for fitting in whole.fittings:
            if fitting.end is End.LEFT and number == 1:
                shaft.fittings.append(fitting)
            elif fitting.end is End.RIGHT and number == len(cuts):
                x, y, z = fitting.placement.origin
                moved = Placement((x - start, y, z), fitting.placement.ex, fitting.placement.ey)
                shaft.fittings.append(replace(fitting, placement=moved))
        names = {fitting.name for fitting in shaft.fittings}
        shaft.welds.extend(weld for weld in whole.welds if weld.fitting in names)
        shaft.reasons.extend(whole.reasons)
        shaft.reasons.append(
            Reason(
                f"shaft {number} of {len(cuts)}, {shop.say(part.length)} long",
                "spliced at " + ", ".join(shop.say(z) for z in splices),
                "geometry of the frame",
            )
        )
        top = line.finish[2] if number == len(cuts) else splices[number - 1]
        made.append((top, shaft))
        start = stop
    return tuple(made)


def _column(line: Line, cap: ColumnPlateEntry | None, shop: Shop) -> Carrier:
    """A column with its plates, as if it were one shaft."""
    entry = line.entry
    base = entry.base_plate if isinstance(entry, ColumnEntry) else None
    low = (base.thickness or _base_thickness(shop)) if base else ZERO
    high = (cap.thickness or _cap_thickness(shop)) if cap else ZERO
    overall = Length.from_inches(line.run)
    length = overall - low - high
    part = Part(line.name, line.stock, grade_of(line.stock, entry.grade), length)
    space = line.space
    carrier = Carrier(line.name, part, Placement(space.point((low, ZERO, ZERO)), space.ex, space.ey))
    carrier.reasons.append(
        Reason(
            f"shaft {shop.say(length)} long",
            f"base at {shop.say(line.start[2])}, top at {shop.say(line.finish[2])}; base plate "
            f"{shop.say(low)} and cap plate {shop.say(high)} are taken off",
            "geometry of the frame",
        )
    )
    if base is not None:
        _base(carrier, line, base, low, shop)
    if cap is not None:
        _cap(carrier, line, cap, high, shop)
    return carrier


def _base_thickness(shop: Shop) -> Length:
    del shop
    return _INCH * 3 / 4


def _cap_thickness(shop: Shop) -> Length:
    del shop
    return _INCH / 2


def _base(carrier: Carrier, line: Line, given: ColumnPlateEntry, thick: Length, shop: Shop) -> None:
    """The base plate, its holes, and the anchor rods that go through them."""
    stock = line.stock
    rod = given.rod or _INCH * 3 / 4
    hole = given.diameter or rod_hole(rod)
    length = given.length or up_to(stock.d.inches + 6, _INCH)
    width = given.width or up_to(stock.bf.inches + 6, _INCH)
    edge = _INCH * 3 / 2
    pitch, gage = given.pitch or length - edge * 2, given.gage or width - edge * 2
    entry = EndPlateEntry.model_construct(
        end="left",
        thickness=thick,
        width=width,
        length=length,
        rows=2,
        columns=2,
        pitch=pitch,
        gage=gage,
        diameter=hole,
        weld=given.weld,
    )
    carrier.join(join_end_plates(FittingKind.BASE_PLATE, entry, carrier.part, shop.practice, shop.system))
    up = given.projection or round_up(thick + _GROUT + rod * Fraction(5, 2), _INCH / 2)
    carrier.reasons.append(
        Reason(
            f"base plate {shop.say(thick)} x {shop.say(width)} x {shop.say(length)}",
            f'{stock.designation} is {shop.say(stock.bf)} by {shop.say(stock.d)}; 3" and more to each side '
            "for rods outside the flanges",
            PRACTICE,
        )
    )
    carrier.reasons.append(
        Reason(
            f"holes {shop.say(hole)} for {shop.say(rod)} anchor rods, rods {shop.say(up)} over the concrete",
            f"plate {shop.say(thick)}, grout {shop.say(_GROUT)}, nut, washer and some thread, two and a half "
            "rod diameters, rounded up to 1/2 in",
            f"{_ROD_HOLES}; {_OSHA_RODS}",
        )
    )


def rod_hole(rod: Length) -> Length:
    """The hole in a base plate for an anchor rod: 9/16 in larger, from 1 in on 13/16, from 1 1/4 on 13/16.

    Source: AISC Manual Table 14-2 (from memory): 3/4 in rods 1 5/16, 7/8 in 1 9/16, 1 in 1 13/16.
    """
    table = {6: 21, 7: 25, 8: 29, 10: 33, 12: 37, 14: 44, 16: 52, 20: 60}  # eighths: sixteenths
    eighths = round(rod.inches * 8)
    sixteenths = table.get(eighths, eighths * 2 + 12)
    return _INCH * sixteenths / 16


def _cap(carrier: Carrier, line: Line, given: ColumnPlateEntry, thick: Length, shop: Shop) -> None:
    stock = line.stock
    length = given.length or up_to(stock.d.inches + 1, _INCH)
    width = given.width or up_to(stock.bf.inches + 1, _INCH)
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
