"""A job document written back to TOML."""

from __future__ import annotations

from typing import Any

import tomlkit

from gageline.job.document import JobDocument

__all__ = ["write_document"]


def write_document(document: JobDocument) -> str:
    """The TOML text of a job document; reading it gives an equal document.

    Lengths are written exactly, and only what was given is written, so that the shop's practice
    stays in one place.
    """
    context = {"system": document.job.units}
    table = document.model_dump(mode="json", by_alias=True, exclude_unset=True, context=context)
    return tomlkit.dumps(_without_none(table))


def _without_none(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _without_none(item) for key, item in value.items() if item is not None}
    if isinstance(value, list):
        return [_without_none(item) for item in value]
    return value
