"""A job document read from its text, with all that is wrong said at once."""

from __future__ import annotations

import difflib
import tomllib
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from gageline.job.document import JobDocument
from gageline.job.lines import line_of, lines_of_keys
from gageline.job.problems import JobProblems, Problem
from gageline.units import System

__all__ = ["place", "read_document", "read_text"]

LARGEST = 20_000_000  # bytes; a job of 20,000 pieces is smaller
_CONTROL = "a text file in TOML is expected"


def read_text(path: Path) -> str:
    """The text of a job file.

    Raises:
        JobProblems: when there is no such file, or it is too large or no text.
    """
    try:
        if path.is_dir():
            raise JobProblems((Problem(str(path), "is a folder: name the job file in it"),))
        size = path.stat().st_size
        if size > LARGEST:
            megabytes = f"{size / 1e6:.0f} MB"
            raise JobProblems(
                (Problem(str(path), f"is {megabytes}, more than {LARGEST / 1e6:.0f} MB: split the job"),)
            )
        return path.read_bytes().decode("utf-8-sig")
    except FileNotFoundError as missing:
        raise JobProblems((Problem(str(path), "there is no such file: check the name"),)) from missing
    except UnicodeDecodeError as binary:
        raise JobProblems((Problem(str(path), f"is not UTF-8 text: {_CONTROL}"),)) from binary
    except OSError as refused:
        reason = refused.strerror or "it cannot be opened"
        raise JobProblems(
            (Problem(str(path), f"cannot be read ({reason.lower()}): check the file"),)
        ) from refused


def read_document(text: str) -> JobDocument:
    """A job document from its TOML text.

    Args:
        text: the whole document.

    Raises:
        JobProblems: with every problem of form, each with its path and line.
    """
    table = _parse(text)
    try:
        return JobDocument.model_validate(table, context={"system": _system(table)})
    except ValidationError as wrong:
        lines = lines_of_keys(text)
        raise JobProblems(tuple(_problems(wrong, table, lines))) from None


def _parse(text: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as wrong:
        raise JobProblems((_toml_problem(str(wrong), text),)) from None
    except RecursionError:
        raise JobProblems(
            (Problem("", "is nested too deep: a job document is at most 4 tables deep"),)
        ) from None
    except ValueError as wrong:  # a date or a number that TOML's form allows and no calendar does
        raise JobProblems((Problem("", f"is not TOML ({wrong}): correct the value"),)) from None


def _toml_problem(message: str, text: str) -> Problem:
    """The parser's message with its line taken out and put where lines belong."""
    reason, _, at = message.partition(" (at ")
    digits = at.removeprefix("line ").partition(",")[0]
    line = int(digits) if digits.isdigit() else len(text.splitlines()) or 1
    return Problem("", f"is not TOML ({reason[:1].lower()}{reason[1:]}): correct this line", line)


def _system(table: dict[str, Any]) -> System:
    facts = table.get("job")
    units = facts.get("units") if isinstance(facts, dict) else None
    return System.MM if units == System.MM.value else System.FT_IN


def place(path: Iterable[str | int], table: object) -> str:
    """A path in the words of the document: `piece "B4" → copes 1 → depth`."""
    words: list[str] = []
    at: Any = table
    for step in path:
        at = _inside(at, step)
        if isinstance(step, str):
            words.append(step)
        elif isinstance(at, dict) and isinstance(at.get("mark"), str) and words == ["piece"]:
            words[-1] = f'piece "{at["mark"]}"'
        elif words:
            words[-1] = f"{words[-1]} {step + 1}"
    return " → ".join(words)


def _inside(at: Any, step: str | int) -> Any:
    if isinstance(at, dict):
        return at.get(step, at if step == 0 else None)
    if isinstance(at, list) and isinstance(step, int) and step < len(at):
        return at[step]
    return None


def _problems(
    wrong: ValidationError, table: dict[str, Any], lines: dict[tuple[str | int, ...], int]
) -> list[Problem]:
    problems = []
    for detail in wrong.errors(include_url=False, include_context=True):
        path = tuple(detail["loc"])
        problems.append(Problem(place(path, table), _message(detail, path), line_of(path, lines)))
    unique = dict.fromkeys(problems)
    return sorted(unique, key=lambda problem: problem.line or 0)


def _message(detail: ErrorDetails, path: tuple[str | int, ...]) -> str:
    kind, value, limits = detail["type"], detail["input"], detail.get("ctx", {})
    match kind:
        case "missing":
            return "is missing: give it"
        case "extra_forbidden":
            return _unknown_key(path)
        case "value_error":
            return str(limits["error"])
        case "enum" | "literal_error":
            return f"{_shown(value)} is not one of {limits['expected'].replace(' or ', ', ')}: choose one"
        case "model_type" | "dict_type" | "model_attributes_type":
            return f"{_shown(value)} is a value where a table is expected: write its keys under it"
        case "tuple_type" | "list_type":
            return f"{_shown(value)} is not a list: write [[...]] tables or a list in brackets"
        case "too_short" | "string_too_short":
            return "is empty: give at least one"
        case "too_long" | "string_too_long":
            return f"is too long: give at most {limits.get('max_length')}"
        case "string_pattern_mismatch":
            return f"{_shown(value)} is not a mark: use letters, digits and . _ + -, a letter or digit first"
        case "greater_than_equal":
            return f"{_shown(value)} is less than {limits['ge']}: give {limits['ge']} or more"
        case "less_than_equal":
            return f"{_shown(value)} is more than {limits['le']}: give {limits['le']} or less"
        case _:
            return f"{_shown(value)} is wrong here ({detail['msg'].lower()}): correct it"


def _shown(value: object) -> str:
    text = f'"{value}"' if isinstance(value, str) else repr(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _unknown_key(path: tuple[str | int, ...]) -> str:
    known = _known_keys(path[:-1])
    near = difflib.get_close_matches(str(path[-1]), known, n=1, cutoff=0.5)
    if near:
        return f'there is no such key: did you mean "{near[0]}"?'
    return f"there is no such key: use one of {', '.join(known)}"


def _known_keys(path: tuple[str | int, ...]) -> list[str]:
    """The keys of the table at a path, found by walking the document's own definition."""
    model: type[BaseModel] = JobDocument
    for step in path:
        if isinstance(step, str):
            for name, field in model.model_fields.items():
                if step in {name, field.alias}:
                    model = _model_in(field.annotation) or model
    return [field.alias or name for name, field in model.model_fields.items()]


def _model_in(annotation: Any) -> type[BaseModel] | None:
    """The table type named in an annotation such as `tuple[CopeEntry, ...]`."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    inner = (_model_in(argument) for argument in getattr(annotation, "__args__", ()))
    return next((model for model in inner if model), None)
