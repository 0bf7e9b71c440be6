"""The sheet of measurements: a TOML file of its own beside the job document.

`[[measured]]` holds what was read on the sticks, `[[inspected]]` what was read on finished pieces,
`[tolerances]` what the shop holds its work to where it is not what the standards say.
"""

from __future__ import annotations

import difflib
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import Field

from gageline.errors import ValueProblem
from gageline.job.fields import Date, Entry, Flag, LengthText, Mark, PositiveLength, SignedLength, Text
from gageline.job.forms import filled
from gageline.job.measured import Corner, Edge, EndReadings, SquareGap, Stick
from gageline.job.problems import Note, placed
from gageline.job.reading import parse
from gageline.units import ZERO, Length, System

__all__ = ["Inspected", "Measurements", "read_measurements"]

_COLDEST, _HOTTEST = -60.0, 200.0  # of steel in a yard or a shop, °F or °C
_TAPE_SHARE = 100  # a tape that is off by more is no tape
_OPEN_SHARE = 4  # an end that is open by more than 1 in 4 is cut before anybody measures it
_UNEVEN = Length.from_inches(12)
Temperature = Annotated[float, Field(ge=_COLDEST, le=_HOTTEST)]


class EndEntry(Entry):
    """One end of a stick as read."""

    top_near: SignedLength | None = Field(None, description="steel past a square line; minus where short")
    top_far: SignedLength | None = None
    bottom_near: SignedLength | None = None
    bottom_far: SignedLength | None = None
    web_gap: LengthText | None = Field(None, description="square held across the depth: open by so much")
    web_blade: PositiveLength | None = Field(None, description="length of that square's blade")
    web_long: Literal["top", "bottom"] | None = Field(None, description="the edge that touches the blade")
    flange_gap: LengthText | None = Field(None, description="square held across the flange: open by so much")
    flange_blade: PositiveLength | None = None
    flange_long: Literal["near", "far"] | None = None
    depth: PositiveLength | None = Field(None, description="over the flanges, at the web")
    top_width: PositiveLength | None = None
    bottom_width: PositiveLength | None = None
    top_tilt: SignedLength | None = Field(None, description="out of square, above zero: near edge higher")
    bottom_tilt: SignedLength | None = None


class MeasuredEntry(Entry):
    """One stick as measured."""

    piece: Mark = Field(description="the piece that is to be made of it")
    heat: Text | None = None
    length: PositiveLength | None = Field(None, description="between the furthest points of the ends")
    along: Corner | None = Field(None, description="the corner whose edge the length was read along")
    left: EndEntry = EndEntry()
    right: EndEntry = EndEntry()
    web_off: LengthText | None = Field(None, description="web off the middle of the flanges")
    web_toward: Literal["near", "far"] = "near"
    camber: LengthText | None = Field(None, description="mid-ordinate in the plane of the web")
    camber_way: Literal["up", "down"] = "up"
    sweep: LengthText | None = Field(None, description="mid-ordinate in the plane of the flanges")
    sweep_way: Literal["near", "far"] = "near"
    steel_temperature: Temperature | None = Field(None, description="°F; °C in an mm job")
    tape_temperature: Temperature | None = Field(None, description="°F; °C in an mm job")
    tape_error: SignedLength | None = Field(None, description="the tape is too long by so much")
    tape_length: PositiveLength | None = Field(None, description="over so much of it")
    worked: Flag = Field(default=False, description="holes or cuts are in it already")
    as_column: Flag = Field(default=False, description="ordered as a column")
    ordered: PositiveLength | None = Field(None, description="length it was ordered at; the piece's own")
    ordered_camber: LengthText = Field(ZERO, description="what the mill was asked to camber it by")


class InspectedEntry(Entry):
    """One finished piece as measured; without readings its blank sheet is wanted."""

    piece: Mark
    by: Text | None = None
    date: Date | None = None
    number: Annotated[int, Field(strict=True, ge=1, le=9999)] = 1
    compression: Flag = Field(default=False, description="a column, or another member in compression")
    bearing: Flag = Field(default=False, description="both ends are finished for contact bearing")
    camber: LengthText = Field(ZERO, description="what the drawing asks for")
    readings: dict[str, SignedLength] = Field(
        default_factory=dict, description="by the names that the inspection sheet prints"
    )


class MeasurementsDocument(Entry):
    """A whole sheet of measurements."""

    measured: tuple[MeasuredEntry, ...] = ()
    inspected: tuple[InspectedEntry, ...] = ()
    tolerances: dict[str, LengthText] = Field(
        default_factory=dict, description="a limit of the shop's own, by the code of the rule"
    )


@dataclass(frozen=True, slots=True)
class Inspected:
    """A finished piece as read.

    Args:
        piece: its mark.
        number: which of several pieces of that mark.
        by: who measured, empty when not said.
        date: as typed, empty when not said.
        readings: name on the inspection sheet and what was read.
        compression: a column, or another member in compression.
        bearing: both ends are finished for contact bearing.
        camber: what the drawing asks for.
    """

    piece: str
    number: int
    by: str
    date: str
    readings: tuple[tuple[str, Length], ...]
    compression: bool = False
    bearing: bool = False
    camber: Length = ZERO


@dataclass(frozen=True, slots=True)
class Measurements:
    """Everything on a sheet of measurements.

    Args:
        sticks: as measured in the yard.
        inspected: finished pieces as measured.
        tolerances: the shop's own limits by the code of the rule.
    """

    sticks: tuple[Stick, ...]
    inspected: tuple[Inspected, ...]
    tolerances: tuple[tuple[str, Length], ...]

    def stick(self, piece: str) -> Stick:
        """The first stick measured for a piece.

        Raises:
            ValueProblem: when none was.
        """
        for stick in self.sticks:
            if stick.piece == piece:
                return stick
        known = ", ".join(dict.fromkeys(stick.piece for stick in self.sticks)) or "none"
        raise ValueProblem(f'no stick was measured for piece "{piece}": the sheet has {known}')


def read_measurements(text: str, system: System, marks: Collection[str] | None = None) -> Measurements:
    """The sheet of measurements in a TOML text.

    Args:
        text: the whole sheet.
        system: the units of the job, which bare numbers are in.
        marks: of the job's pieces; None where they are not known.

    Raises:
        JobProblems: with everything that is wrong with it, each with its path and line.
    """
    table = parse(text)
    document = filled(MeasurementsDocument, table, text, system)
    notes = [note for index, entry in enumerate(document.measured) for note in _faults(entry, index)]
    if marks is not None:
        notes.extend(_strangers(document, marks))
    if notes:
        raise placed(notes, table, text)
    return Measurements(
        tuple(_stick(entry, system) for entry in document.measured),
        tuple(_inspected(entry) for entry in document.inspected),
        tuple(document.tolerances.items()),
    )


def _strangers(document: MeasurementsDocument, marks: Collection[str]) -> Iterator[Note]:
    """Steel that was read for pieces which the job has not."""
    measured = ((("measured", index), one.piece) for index, one in enumerate(document.measured))
    inspected = ((("inspected", index), one.piece) for index, one in enumerate(document.inspected))
    for path, piece in (*measured, *inspected):
        if piece not in marks:
            near = difflib.get_close_matches(piece, marks, n=1, cutoff=0.4)
            meant = f'did you mean "{near[0]}"?' if near else f"it has {', '.join(sorted(marks)[:20])}"
            yield (*path, "piece"), f'the job has no piece "{piece}": {meant}'


def _faults(entry: MeasuredEntry, index: int) -> Iterator[Note]:
    """What no field can know by itself: readings that need one another."""
    here = ("measured", index)
    for name in ("left", "right"):
        for fault in _end_faults(getattr(entry, name)):
            yield (*here, name), fault
    if (entry.steel_temperature is None) != (entry.tape_temperature is None):
        yield here, "one temperature alone corrects nothing: give steel and tape"
    error, length = entry.tape_error, entry.tape_length
    if (error is None) != (length is None):
        yield here, "the tape's error needs its length: give both or none"
    if error is not None and length is not None and abs(error) * _TAPE_SHARE > length:
        yield (*here, "tape_error"), "is more than 1 in 100 of tape_length: check both"
    if entry.along is not None and entry.length is None:
        yield (*here, "along"), "says where no length was read: give the length"


def _end_faults(end: EndEntry) -> Iterator[str]:
    corners = [getattr(end, corner.replace(" ", "_")) for corner in Corner]
    for plane in ("web", "flange"):
        gap, blade, long = (getattr(end, f"{plane}_{word}") for word in ("gap", "blade", "long"))
        read = [part is not None for part in (gap, blade, long)]
        if any(read) and not all(read):
            yield f"a reading of the square needs {plane}_gap, {plane}_blade and {plane}_long: give all three"
        elif all(read) and gap * _OPEN_SHARE > blade:
            yield f"{plane}_gap is more than a quarter of {plane}_blade: check both, or cut the end first"
        if gap is not None and any(corner is not None for corner in corners):
            yield "has both corners and a square's gap: keep one way of measuring"
    if [corner is None for corner in corners] in ([False, True, True, False], [True, False, False, True]):
        yield "two corners across from each other tell no plane: read a third corner"
    known = [corner for corner in corners if corner is not None]
    if known and max(known) - min(known) > _UNEVEN:
        yield "its corners are more than a foot apart: check the units, or cut the end first"


def _stick(entry: MeasuredEntry, system: System) -> Stick:
    def toward(value: Length | None, *, minus: bool) -> Length | None:
        return -value if minus and value is not None else value

    def fahrenheit(degrees: float | None) -> float | None:
        return degrees * 9 / 5 + 32 if system is System.MM and degrees is not None else degrees

    same = ("length", "along", "tape_error", "tape_length", "worked", "as_column", "ordered")
    given: dict[str, Any] = {name: getattr(entry, name) for name in (*same, "ordered_camber")}
    return Stick(
        piece=entry.piece,
        heat=entry.heat or "",
        left=_end(entry.left),
        right=_end(entry.right),
        web_off=toward(entry.web_off, minus=entry.web_toward == "far"),
        camber=toward(entry.camber, minus=entry.camber_way == "down"),
        sweep=toward(entry.sweep, minus=entry.sweep_way == "far"),
        steel_temperature=fahrenheit(entry.steel_temperature),
        tape_temperature=fahrenheit(entry.tape_temperature),
        **given,
    )


def _end(entry: EndEntry) -> EndReadings:
    return EndReadings(
        (entry.top_near, entry.top_far, entry.bottom_near, entry.bottom_far),
        _gap(entry.web_gap, entry.web_blade, entry.web_long),
        _gap(entry.flange_gap, entry.flange_blade, entry.flange_long),
        entry.depth,
        entry.top_width,
        entry.bottom_width,
        entry.top_tilt,
        entry.bottom_tilt,
    )


def _gap(gap: Length | None, blade: Length | None, long: str | None) -> SquareGap | None:
    return SquareGap(gap, blade, Edge(long)) if gap is not None and blade and long else None


def _inspected(entry: InspectedEntry) -> Inspected:
    date = entry.date.isoformat() if entry.date else ""
    return Inspected(
        entry.piece, entry.number, entry.by or "", date, tuple(entry.readings.items()),
        entry.compression, entry.bearing, entry.camber,
    )  # fmt: skip
