"""The kinds of value that a job document holds, each read from text and written back to it."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from fractions import Fraction
from itertools import pairwise
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PlainSerializer,
    PlainValidator,
    SerializationInfo,
    ValidationInfo,
    WithJsonSchema,
)

from gageline.errors import ValueProblem
from gageline.job.stock import stock_named
from gageline.job.wording import printable, say, shown
from gageline.steel import bolt, grade
from gageline.units import ZERO, Length, Slope, System, Unit, exact_text, parse_length, parse_slope

__all__ = [
    "LONGEST",
    "BoltText",
    "Count",
    "Date",
    "Entry",
    "Flag",
    "GradeText",
    "LengthText",
    "Line",
    "Mark",
    "PieceLength",
    "PositiveLength",
    "RowLengths",
    "SignedLength",
    "SlopeText",
    "SomeLengths",
    "StockText",
    "TapeLength",
    "Text",
    "Turn",
]

LONGEST = Length.from_inches(200 * 12)
_INCH = Length.from_inches(1)
_LEAST = {System.FT_IN: _INCH / 64, System.MM: Length.from_mm(Fraction(2, 5))}
_INCH_DIVISIONS = tuple(_INCH / 2**times for times in range(7))
_LEAST_PIECE = {System.FT_IN: _INCH / 2, System.MM: Length.from_mm(12)}
_MOST_IN_LIST = 500
_FARTHEST_TURN = 90
_NAMED_TURNS = {"along": Fraction(0), "across": Fraction(90)}


class Entry(BaseModel):
    """A table of the document: unknown keys are refused, and nothing changes once it is read."""

    model_config = ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)


def _system(info: ValidationInfo | SerializationInfo) -> System:
    context: Any = info.context
    return context["system"] if context else System.FT_IN


def _readable(value: object) -> object:
    """Text without blanks around it, refused with signs that no sheet can show."""
    if not isinstance(value, str):
        return value
    for character in value:
        if not printable(character):
            raise ValueProblem(f"{shown(value)} holds the control sign U+{ord(character):04X}: type it anew")
    return value.strip()


def _number(value: object) -> Fraction | None:
    """A number as it was typed, None for what is none; one of very many digits is only very large."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    if isinstance(value, int):
        return Fraction(value if value.bit_length() < 100 else 2**100)
    return Fraction(str(value)) if math.isfinite(value) else None


def _read_length(value: object, info: ValidationInfo) -> Length:
    """A length from text, or from a number in the job's own unit."""
    system = _system(info)
    if isinstance(value, Length):
        length = value
    elif isinstance(value, str):
        length = parse_length(str(_readable(value)), Unit.MM if system is System.MM else Unit.INCH)
    elif (number := _number(value)) is not None:
        length = Length.from_mm(number) if system is System.MM else Length.from_inches(number)
    else:
        raise ValueProblem(f'{shown(value)} is not a length: write it like "18\'-7 1/4\\"" or "5670mm"')
    if abs(length) > LONGEST:
        raise ValueProblem(f"{shown(value)} is longer than {say(LONGEST, system)}: check the units")
    return length


def _text_of(value: object, length: Length, info: ValidationInfo) -> str:
    return say(length, _system(info)) if isinstance(value, Length) else shown(value)


def _at_least(limits: dict[System, Length]) -> Callable[[object, ValidationInfo], Length]:
    """The reading of a length above zero that is not absurdly small."""

    def read(value: object, info: ValidationInfo) -> Length:
        length, least = _read_length(value, info), limits[_system(info)]
        if length <= ZERO:
            raise ValueProblem(f"{_text_of(value, length, info)} is not above zero: give a length above zero")
        if length < least:
            limit = say(least, _system(info))
            raise ValueProblem(f"{_text_of(value, length, info)} is less than {limit}: check the units")
        return length

    return read


def _read_tape(value: object, info: ValidationInfo) -> Length:
    """A division that a tape has: an inch halved up to six times, or whole tenths of a millimetre."""
    step = _at_least(_LEAST)(value, info)
    if _system(info) is System.FT_IN:
        known, usual = step in _INCH_DIVISIONS, "1/8, 1/16, 1/32 or 1/64"
    else:
        tenth = Length.from_mm(Fraction(1, 10))
        known, usual = step <= tenth * 100 and step.ticks % tenth.ticks == 0, "0.5, 1, 2 or 5"
    if not known:
        raise ValueProblem(f"{_text_of(value, step, info)} is no division of a tape: give {usual}")
    return step


def _read_not_negative(value: object, info: ValidationInfo) -> Length:
    length = _read_length(value, info)
    if length < ZERO:
        raise ValueProblem(f"{_text_of(value, length, info)} is below zero: give zero or more")
    return length


def _read_lengths(value: object, info: ValidationInfo) -> tuple[Length, ...]:
    """One length, or a list of running dimensions in rising order."""
    if not isinstance(value, list | tuple):
        return (_read_length(value, info),)
    if not value or len(value) > _MOST_IN_LIST:
        raise ValueProblem(f"is a list of {len(value)} dimensions: give 1 to {_MOST_IN_LIST}")
    lengths = tuple(_read_length(item, info) for item in value)
    for before, after in pairwise(lengths):
        if after <= before:
            system = _system(info)
            raise ValueProblem(
                f"running dimension {say(after, system)} is not beyond {say(before, system)}: "
                "give all from one start, rising"
            )
    return lengths


def _read_rows(value: object, info: ValidationInfo) -> tuple[Length, ...]:
    lengths = _read_lengths(value, info)
    if lengths[0] < ZERO:
        raise ValueProblem(f"{say(lengths[0], _system(info))} is below zero: give zero or more")
    return lengths


def _write_length(length: Length, info: SerializationInfo) -> str:
    return exact_text(length, _system(info))


def _write_lengths(lengths: tuple[Length, ...], info: SerializationInfo) -> str | list[str]:
    texts = [_write_length(length, info) for length in lengths]
    return texts[0] if len(texts) == 1 else texts


def _read_slope(value: object) -> Slope:
    if isinstance(value, Slope):
        return value
    if not isinstance(value, str):
        raise ValueProblem(f'{shown(value)} is not a bevel: write it like "3 in 12", "1:20" or "16.5°"')
    return parse_slope(str(_readable(value)))


def _write_slope(slope: Slope) -> str:
    """A slope so that it reads back the same: a rise in 12, an angle, or else the bare ratio."""
    rise = slope.rise_in_12
    if rise.ratio(Length.from_inches(12)) == slope.ratio and not rise.ticks % (_INCH / 256).ticks:
        return f"{exact_text(rise)} in 12".replace('"', "")
    angle = round(slope.degrees, 6)
    if Slope.from_degrees(angle) == slope:
        return f"{angle:f}".rstrip("0").rstrip(".") + "°"
    return f"{slope.ratio.numerator} in {slope.ratio.denominator}"


def _read_turn(value: object) -> Fraction:
    """A slot's long axis in degrees from the line along the part."""
    if isinstance(value, Fraction):
        return value
    turn = _NAMED_TURNS.get(value) if isinstance(value, str) else _number(value)
    if turn is None or abs(turn) > _FARTHEST_TURN:
        raise ValueProblem(f"{shown(value)} is no turn of a slot: write along, across or -90 to 90 degrees")
    return turn


def _write_turn(turn: Fraction) -> str | float:
    names = {degrees: name for name, degrees in _NAMED_TURNS.items()}
    return names.get(turn, float(turn))


def _read_date(value: object) -> object:
    if isinstance(value, dt.datetime) or not isinstance(value, dt.date | str):
        raise ValueProblem(f"{shown(value)} is no date: write it like 2026-11-25")
    try:
        return value if isinstance(value, dt.date) else dt.date.fromisoformat(value)
    except ValueError as wrong:
        raise ValueProblem(f"{shown(value)} is no date: write it like 2026-11-25") from wrong


def _known_bolt(text: str) -> str:
    bolt(text)
    return text


def _known_grade(text: str) -> str:
    grade(text)
    return text


def _known_stock(text: str, info: ValidationInfo) -> str:
    stock_named(text, _system(info))
    return text


_SCHEMA = WithJsonSchema(
    {
        "type": ["string", "number"],
        "description": "a length: 18'-7 1/4\", 7/8, 223.25in, 5670mm; a bare number is in the job's units",
    }
)
_LIST_SCHEMA = WithJsonSchema(
    {
        "type": ["string", "number", "array"],
        "items": {"type": ["string", "number"]},
        "description": "a length, or a list of running dimensions that rise from one start",
    }
)
_SLOPE_SCHEMA = WithJsonSchema({"type": "string", "description": "a bevel: 3 in 12, or 16.5°"})
_TURN_SCHEMA = WithJsonSchema(
    {"anyOf": [{"enum": ["along", "across"]}, {"type": "number", "minimum": -90, "maximum": 90}]}
)
_WRITE, _WRITE_LIST = PlainSerializer(_write_length), PlainSerializer(_write_lengths)

SignedLength = Annotated[Length, PlainValidator(_read_length), _WRITE, _SCHEMA]
LengthText = Annotated[Length, PlainValidator(_read_not_negative), _WRITE, _SCHEMA]
PositiveLength = Annotated[Length, PlainValidator(_at_least(_LEAST)), _WRITE, _SCHEMA]
TapeLength = Annotated[Length, PlainValidator(_read_tape), _WRITE, _SCHEMA]
PieceLength = Annotated[Length, PlainValidator(_at_least(_LEAST_PIECE)), _WRITE, _SCHEMA]
SomeLengths = Annotated[tuple[Length, ...], PlainValidator(_read_lengths), _WRITE_LIST, _LIST_SCHEMA]
RowLengths = Annotated[tuple[Length, ...], PlainValidator(_read_rows), _WRITE_LIST, _LIST_SCHEMA]
SlopeText = Annotated[Slope, PlainValidator(_read_slope), PlainSerializer(_write_slope), _SLOPE_SCHEMA]
Turn = Annotated[Fraction, PlainValidator(_read_turn), PlainSerializer(_write_turn), _TURN_SCHEMA]
Date = Annotated[dt.date, BeforeValidator(_read_date)]
Flag = Annotated[bool, Field(strict=True)]
Count = Annotated[int, Field(strict=True, ge=1, le=500)]
Text = Annotated[str, Field(min_length=1, max_length=80), BeforeValidator(_readable)]
Line = Annotated[str, Field(min_length=1, max_length=200), BeforeValidator(_readable)]
BoltText = Annotated[Text, AfterValidator(_known_bolt)]
GradeText = Annotated[Text, AfterValidator(_known_grade)]
StockText = Annotated[Text, AfterValidator(_known_stock)]
Mark = Annotated[
    str,
    Field(min_length=1, max_length=24, pattern=r"^[A-Za-z0-9][A-Za-z0-9 ._+-]*$"),
    BeforeValidator(_readable),
]
