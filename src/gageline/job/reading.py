"""A job document read from its text, with all that is wrong said at once."""

from __future__ import annotations

import tomllib
from pathlib import Path as FilePath
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from gageline.job.document import JobDocument
from gageline.job.problems import JobProblems, Note, Path, Problem, placed
from gageline.job.wording import refusal
from gageline.units import System

__all__ = ["parse", "read_document", "read_text", "validated"]

LARGEST = 20_000_000  # bytes; a job of 20,000 pieces is smaller
_LONGEST_LINE = 20_000  # characters; no list of dimensions is longer
_EXPECTED = "a text file in TOML is expected"


def read_text(path: FilePath) -> str:
    """The text of a job file.

    Raises:
        JobProblems: when there is no such file, or it is too large or no text.
    """
    try:
        return _text_in(path)
    except FileNotFoundError:
        problem = "there is no such file: check the name"
    except UnicodeDecodeError:
        problem = f"is not UTF-8 text: {_EXPECTED}"
    except (OSError, ValueError) as refused:  # a ValueError is a name that no file can have
        reason = getattr(refused, "strerror", None) or str(refused)
        problem = f"cannot be read ({reason.lower()}): check the file"
    raise JobProblems((Problem(str(path), problem),))


def _text_in(path: FilePath) -> str:
    if path.is_dir():
        raise JobProblems((Problem(str(path), "is a folder: name the job file in it"),))
    with path.open("rb") as file:
        content = file.read(LARGEST + 1)  # never more, whatever size the file system tells
    if len(content) > LARGEST:
        raise JobProblems((Problem(str(path), f"is larger than {LARGEST / 1e6:.0f} MB: split the job"),))
    return content.decode("utf-8-sig")


def read_document(text: str) -> JobDocument:
    """A job document from its TOML text.

    Args:
        text: the whole document.

    Raises:
        JobProblems: with every problem of form, each with its path and line.
    """
    table = parse(text)
    document, notes = validated(table)
    if document is None:
        raise placed(notes, table, text)
    return document


def parse(text: str) -> dict[str, Any]:
    """The tables of a TOML text.

    Raises:
        JobProblems: when it is not TOML, with the line.
    """
    for number, line in enumerate(text.split("\n"), 1):
        if len(line) > _LONGEST_LINE:
            message = f"is longer than {_LONGEST_LINE} characters: break the line"
            raise JobProblems((Problem("", message, number),))
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as wrong:
        raise JobProblems((_toml_problem(str(wrong), text),)) from None
    except RecursionError:
        message = "is nested too deep: a job document is at most 4 tables deep"
        raise JobProblems((Problem("", message),)) from None
    except ValueError:  # Python reads no whole number of more than 4300 digits
        raise JobProblems((Problem("", "holds a number of thousands of digits: correct it"),)) from None


def _toml_problem(message: str, text: str) -> Problem:
    """The parser's message with its line taken out and put where lines belong."""
    reason, _, at = message.rpartition(" (at ")
    digits = at.removeprefix("line ").partition(",")[0]
    line = int(digits) if digits.isdigit() else text.count("\n") + 1
    reason = f"{reason[:1].lower()}{reason[1:]}"
    return Problem("", f"is not TOML ({reason}): correct this line or the one before", line)


def _is_full(detail: ErrorDetails) -> bool:
    return detail["type"] == "too_short" and isinstance(detail["input"], list) and bool(detail["input"])


def _path_of(detail: ErrorDetails) -> Path:
    """Where in the document; a list that was left out goes by its key, not by the name it has here."""
    path = tuple(detail["loc"])
    return ("piece",) if path == ("pieces",) and detail["type"] == "value_error" else path


def validated(table: dict[str, Any]) -> tuple[JobDocument | None, list[Note]]:
    """The document of TOML tables, or None and every problem of form.

    Args:
        table: as read from the text.
    """
    facts = table.get("job")
    metric = isinstance(facts, dict) and facts.get("units") == System.MM.value
    context = {"system": System.MM if metric else System.FT_IN}
    try:
        return JobDocument.model_validate(table, context=context), []
    except ValidationError as wrong:
        found = wrong.errors(include_url=False, include_context=True)
        # a list whose items were all refused is not an empty one
        details = [detail for detail in found if not _is_full(detail)]
        return None, [(_path_of(detail), refusal(detail, JobDocument)) for detail in details]
