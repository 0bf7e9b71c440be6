"""The rack document: the saw, what can be bought, what is on the rack, and what was cut already."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from gageline.job import (
    Count,
    Date,
    Entry,
    Flag,
    GradeText,
    LengthText,
    Mark,
    PositiveLength,
    StockText,
    Text,
)
from gageline.units import ZERO, System

_DEAREST = 1_000_000


def _as_list(value: object) -> object:
    """One value stands for a list of one."""
    return value if isinstance(value, list | tuple) else [value]


Price = Annotated[Decimal, Field(ge=0, le=_DEAREST)]
_SomeLengths = Annotated[tuple[PositiveLength, ...], Field(min_length=1)]
_SomeMarks = Annotated[tuple[Mark, ...], Field(min_length=1)]
Lengths = Annotated[
    _SomeLengths, BeforeValidator(_as_list, json_schema_input_type=PositiveLength | _SomeLengths)
]
Marks = Annotated[_SomeMarks, BeforeValidator(_as_list, json_schema_input_type=Mark | _SomeMarks)]


class RackFacts(Entry):
    """What the document is."""

    name: Text = Field("", description="whose rack it is, or of which day")
    units: System = Field(System.FT_IN, description="ft-in or mm: how bare numbers are read")


class SawEntry(Entry):
    """The saw, and what the shop does with drops."""

    kerf: LengthText = Field(description="width of the cut, square to the blade")
    start_trim: LengthText = Field(ZERO, description="cut off the first end of each stick, kerf included")
    end_trim: LengthText = Field(ZERO, description="cut off the other end, kerf included")
    grip: LengthText = Field(ZERO, description="length at the other end that the saw cannot use")
    keep: LengthText = Field(ZERO, description="shortest drop that goes back on the rack")
    drop_percent: Annotated[int, Field(strict=True, ge=0, le=100)] = Field(
        0, description="what a kept drop is credited with, percent of its stick's price a length"
    )
    most_setups: Count | None = Field(None, description="the most different set-ups of one section")


class BuyEntry(Entry):
    """Sticks that the supplier has."""

    stock: StockText = Field(description="W16x26, L4x3x1/4, PL3/8x4 ...")
    grade: GradeText | None = Field(None, description="usual grade of that section when left out")
    finish: Text | None = Field(None, description="only for sticks that come painted or galvanized")
    lengths: Lengths = Field(description="of the sticks to be had")
    per_pound: Price | None = None
    per_kg: Price | None = None
    each: Price | None = Field(None, description="price of one stick; one length only")
    limit: Annotated[int, Field(strict=True, ge=0, le=9999)] | None = Field(
        None, description="the most to be had of each length"
    )
    certificate: Flag = False
    arrives: Date | None = Field(None, description="the day they come; left out, they come in time")
    heat: Text | None = Field(None, description="where the supplier promises one")


class HeldEntry(Entry):
    """One stick or drop on the rack."""

    mark: Mark = Field(description="what is written on it")
    stock: StockText
    grade: GradeText | None = None
    finish: Text | None = None
    length: PositiveLength
    value: Price = Field(Decimal(0), description="what using it costs")
    heat: Text | None = None
    certificate: Flag = Field(default=False, description="its certificate is on file")


class SheetEntry(Entry):
    """Sheets that the supplier has, or that are there."""

    thickness: PositiveLength
    grade: GradeText
    length: PositiveLength = Field(description="along the grain")
    width: PositiveLength
    per_pound: Price | None = None
    per_kg: Price | None = None
    each: Price | None = None
    limit: Annotated[int, Field(strict=True, ge=0, le=9999)] | None = None
    heat: Text | None = None


class BurnerEntry(Entry):
    """How plates are cut from sheets."""

    kerf: LengthText = ZERO
    trim: LengthText = Field(ZERO, description="margin kept free at all four edges of a sheet")
    cut: Literal["free", "shear"] = Field("free", description="shear: every cut from edge to edge")
    grain: Flag = Field(default=False, description="the length of each plate must lie along the grain")


class WishEntry(Entry):
    """What certain pieces must come from."""

    pieces: Marks = Field(description="marks of pieces or fittings, one or a list")
    heat: Text | None = Field(None, description="the heat they must come from")
    one_heat: Text | None = Field(None, description="a name: all pieces of that name from one heat")
    certificate: Flag = Field(default=False, description="only from steel with a certificate")
    needed: Date | None = Field(None, description="not from steel that comes later")


class DoneEntry(Entry):
    """A stick of the rack that was cut already."""

    stick: Mark = Field(description="its mark under [[held]]")
    pieces: Marks = Field(description="what was cut from it, a mark for each piece")


class RackDocument(Entry):
    """A whole rack document."""

    rack: RackFacts = RackFacts()
    saw: SawEntry
    buy: tuple[BuyEntry, ...] = ()
    held: tuple[HeldEntry, ...] = ()
    sheet: tuple[SheetEntry, ...] = ()
    burner: BurnerEntry = BurnerEntry()
    wish: tuple[WishEntry, ...] = ()
    done: tuple[DoneEntry, ...] = ()
