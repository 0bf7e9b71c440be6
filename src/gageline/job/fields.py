"""The kinds of value that a job document holds, each read from text and written back to it."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import pairwise
from typing import Annotated, Any

from pydantic import (
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
from gageline.units import ZERO, Length, Slope, System, Unit, exact_text, parse_length, parse_slope

__all__ = [
    "LONGEST",
    "Entry",
    "LengthText",
    "Mark",
    "PositiveLength",
    "PositiveLengths",
    "SignedLength",
    "SlopeText",
    "SomeLengths",
    "listed",
]

LONGEST = Length.from_inches(200 * 12)
_MOST_IN_LIST = 500


class Entry(BaseModel):
    """A table of the document: unknown keys are refused, and nothing changes once it is read."""

    model_config = ConfigDict(
        extra="forbid", frozen=True, arbitrary_types_allowed=True, populate_by_name=True
    )


def _bare(info: ValidationInfo) -> Unit:
    context: Any = info.context
    return Unit.MM if context and context.get("system") is System.MM else Unit.INCH


def _read_length(value: object, info: ValidationInfo) -> Length:
    """A length from text, or from a number in the job's own unit."""
    if isinstance(value, Length):
        length = value
    elif isinstance(value, str):
        length = parse_length(value, _bare(info))
    elif isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value):
        number = Fraction(str(value))
        length = Length.from_mm(number) if _bare(info) is Unit.MM else Length.from_inches(number)
    else:
        raise ValueProblem(f'{value!r} is not a length: write it like "18\'-7 1/4\\"" or "5670mm"')
    if abs(length) > LONGEST:
        raise ValueProblem(f"{exact_text(length)} is longer than {exact_text(LONGEST)}: check the units")
    return length


def _read_positive(value: object, info: ValidationInfo) -> Length:
    length = _read_length(value, info)
    if length <= ZERO:
        raise ValueProblem(f"{exact_text(length)} is not above zero: give a length above zero")
    return length


def _read_not_negative(value: object, info: ValidationInfo) -> Length:
    length = _read_length(value, info)
    if length < ZERO:
        raise ValueProblem(f"{exact_text(length)} is below zero: give zero or more")
    return length


def _read_lengths(value: object, info: ValidationInfo) -> tuple[Length, ...]:
    """One length, or a list of running dimensions in rising order."""
    if not isinstance(value, list | tuple):
        return (_read_length(value, info),)
    if not value or len(value) > _MOST_IN_LIST:
        raise ValueProblem(f"a list of {len(value)} dimensions: give 1 to {_MOST_IN_LIST}")
    lengths = tuple(_read_length(item, info) for item in value)
    if any(after <= before for before, after in pairwise(lengths)):
        raise ValueProblem(
            "running dimensions do not rise from one to the next: give each from the same start"
        )
    return lengths


def _read_positives(value: object, info: ValidationInfo) -> tuple[Length, ...]:
    lengths = _read_lengths(value, info)
    if lengths[0] < ZERO:
        raise ValueProblem(f"{exact_text(lengths[0])} is below zero: give zero or more")
    return lengths


def _write_length(length: Length, info: SerializationInfo) -> str:
    context: Any = info.context
    return exact_text(length, context["system"] if context else System.FT_IN)


def _write_lengths(lengths: tuple[Length, ...], info: SerializationInfo) -> str | list[str]:
    texts = [_write_length(length, info) for length in lengths]
    return texts[0] if len(texts) == 1 else texts


def _read_slope(value: object) -> Slope:
    if isinstance(value, Slope):
        return value
    if not isinstance(value, str):
        raise ValueProblem(f'{value!r} is not a bevel: write it like "3 in 12" or "16.5°"')
    return parse_slope(value)


def _write_slope(slope: Slope) -> str:
    """A slope so that it reads back the same: the rise in 12 in where that is exact, else the angle."""
    rise = slope.rise_in_12
    if rise.ratio(Length.from_inches(12)) == slope.ratio:
        return f"{exact_text(rise)} in 12".replace('"', "")
    return f"{slope.degrees!r}°"


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
_WRITE = PlainSerializer(_write_length)

SignedLength = Annotated[Length, PlainValidator(_read_length), _WRITE, _SCHEMA]
LengthText = Annotated[Length, PlainValidator(_read_not_negative), _WRITE, _SCHEMA]
PositiveLength = Annotated[Length, PlainValidator(_read_positive), _WRITE, _SCHEMA]
SomeLengths = Annotated[
    tuple[Length, ...], PlainValidator(_read_lengths), PlainSerializer(_write_lengths), _LIST_SCHEMA
]
PositiveLengths = Annotated[
    tuple[Length, ...], PlainValidator(_read_positives), PlainSerializer(_write_lengths), _LIST_SCHEMA
]
SlopeText = Annotated[
    Slope,
    PlainValidator(_read_slope),
    PlainSerializer(_write_slope),
    WithJsonSchema({"type": "string", "description": "a bevel: 3 in 12, or 16.5°"}),
]


def listed(value: object) -> object:
    """One table where a list of tables may stand is taken as a list of one."""
    return [value] if isinstance(value, dict) else value


Mark = Annotated[
    str,
    BeforeValidator(lambda value: value.strip() if isinstance(value, str) else value),
    Field(min_length=1, max_length=24, pattern=r"^[A-Za-z0-9][A-Za-z0-9 ._+-]*$"),
]
