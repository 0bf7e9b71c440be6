"""Values and refusals in the words of the person who types a job."""

from __future__ import annotations

import datetime as dt
import difflib
from typing import Any

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from gageline.units import Length, System, write_length

__all__ = ["printable", "refusal", "say", "shown"]

_LONGEST = 60  # characters of a value that a message repeats
_MOST_DIGITS_BITS = 200


def printable(character: str) -> bool:
    """Whether a character can stand on a sheet: no control signs, no ends of lines."""
    return character.isprintable() or character in {" ", "\u00a0", "\u2009", "\u202f"}


def shown(value: object) -> str:
    """A value as it stands in a document, short enough for a message."""
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            clean = "".join(c if printable(c) else f"\\u{ord(c):04x}" for c in value[: _LONGEST + 1])
            return f'"{clean}"' if len(value) <= _LONGEST else f'"{clean[:_LONGEST]}..."'
        case int() if value.bit_length() > _MOST_DIGITS_BITS:
            return "a number of very many digits"
        case int() | float():
            return str(value)
        case dt.date() | dt.time():
            return value.isoformat()
        case dict():
            return "a table"
        case list() | tuple():
            return "a list"
        case _:
            return "a value"


def say(length: Length, system: System) -> str:
    """A length in the job's own units for a message, to 1/64 in or 0.1 mm."""
    text = write_length(length, system, 64)
    return f"{text} mm" if system is System.MM else text


def say_finely(length: Length, system: System) -> str:
    """A small length in decimals, so that a thousandth over a limit is not written as nothing."""
    return f"{length.mm:.2f} mm" if system is System.MM else f'{length.inches:.3f}"'


def refusal(detail: ErrorDetails, root: type[BaseModel]) -> str:
    """What is wrong with one value, what would be right, in one sentence.

    Args:
        detail: what the check of the document's form found.
        root: the definition of the whole document.
    """
    kind, value, limits = detail["type"], detail["input"], detail.get("ctx", {})
    match kind:
        case "missing":
            tables = {"job": "write a [job] table with name", "piece": "write a [[piece]] table for each"}
            remedy = tables.get(str(detail["loc"][0]), "") if len(detail["loc"]) == 1 else ""
            return f"is missing: {remedy or 'give it'}"
        case "extra_forbidden":
            return _unknown_key(tuple(detail["loc"]), root)
        case "value_error":
            return str(limits["error"])
        case "enum" | "literal_error":
            choices = limits["expected"].replace(" or ", ", ").replace("'", '"')
            return f"{shown(value)} is not one of {choices}: choose one"
        case "model_type" | "dict_type" | "model_attributes_type":
            return f"{shown(value)} stands where a table is due: write its keys under it"
        case "tuple_type" | "list_type":
            return f"{shown(value)} stands where a list is due: write {_list_form(detail)}"
        case "string_type":
            return f"{shown(value)} is no text: write it in quotes"
        case "bool_type":
            return f"{shown(value)} is neither true nor false: write one of them, without quotes"
        case "int_type" | "int_from_float" | "int_parsing_size":
            return f"{shown(value)} is not a whole number: write it like 4"
        case _:
            return _out_of_limits(kind, value, limits) or f"{shown(value)} is wrong here: correct it"


def _list_form(detail: ErrorDetails) -> str:
    name = ".".join(step for step in detail["loc"] if isinstance(step, str))
    return "notes = [...] in brackets" if name == "job.notes" else f"[[{name}]] in double brackets"


def _out_of_limits(kind: str, value: object, limits: dict[str, Any]) -> str | None:
    match kind:
        case "too_short":
            return "is empty: give at least one"
        case "string_too_short":
            return "is empty: write it, or leave the key out"
        case "string_too_long":
            return f"{shown(value)} is longer than {limits['max_length']} characters: shorten it"
        case "too_long":
            return f"has more than {limits['max_length']} items: give fewer, or split the job"
        case "string_pattern_mismatch":
            return f"{shown(value)} is not a mark: use letters, digits and . _ + -, a letter or digit first"
        case "greater_than_equal":
            return f"{shown(value)} is less than {limits['ge']}: give {limits['ge']} or more"
        case "less_than_equal":
            return f"{shown(value)} is more than {limits['le']}: give {limits['le']} or less"
        case _:
            return None


def _unknown_key(path: tuple[str | int, ...], root: type[BaseModel]) -> str:
    known = _known_keys(path[:-1], root)
    near = difflib.get_close_matches(str(path[-1])[:_LONGEST], known, n=1, cutoff=0.5)
    if near:
        return f'there is no such key: did you mean "{near[0]}"?'
    return f"there is no such key: use one of {', '.join(known)}"


def _known_keys(path: tuple[str | int, ...], root: type[BaseModel]) -> list[str]:
    """The keys of the table at a path, found by walking the document's own definition."""
    model = root
    for step in path:
        for name, field in model.model_fields.items():
            if step == (field.alias or name):
                model = _model_in(field.annotation) or model
                break
    return [field.alias or name for name, field in model.model_fields.items()]


def _model_in(annotation: Any) -> type[BaseModel] | None:
    """The table type named in an annotation such as `tuple[CopeEntry, ...]`."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    inner = (_model_in(argument) for argument in getattr(annotation, "__args__", ()))
    return next((model for model in inner if model), None)
