"""A document of any kind from its TOML tables: every problem of form at once, with its place."""

from __future__ import annotations

from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from gageline.job.problems import Note, placed
from gageline.job.wording import refusal
from gageline.units import System

__all__ = ["filled"]

Form = TypeVar("Form", bound=BaseModel)


def filled(form: type[Form], table: dict[str, Any], text: str, system: System) -> Form:
    """The document that a form reads out of TOML tables.

    Args:
        form: the definition of the whole document.
        table: as read from the text.
        text: of the document, for the lines.
        system: the units that bare numbers are in.

    Raises:
        JobProblems: with everything that is wrong with its form, each with its path and line.
    """
    try:
        return form.model_validate(table, context={"system": system})
    except ValidationError as wrong:
        found = wrong.errors(include_url=False, include_context=True)
        notes: list[Note] = [(tuple(one["loc"]), refusal(one, form)) for one in found]
        raise placed(notes, table, text) from None
