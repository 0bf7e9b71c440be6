"""Records as plain data, for JSON and for other programs."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from fractions import Fraction
from typing import Any

from pydantic import BaseModel

from gageline.steel import Plate, Section
from gageline.units import Length, Slope, System, exact_text

__all__ = ["json_text", "plain"]


def plain(value: object, system: System = System.FT_IN) -> Any:
    """A record, with all that it holds, as dicts, lists, texts and numbers.

    A length becomes `{"text": ..., "in": 223.25, "mm": 5670.55}`, a bevel its rise in 12
    and its angle; sections and plates are named by their designation.

    Args:
        value: a frozen record, a length, a list or a plain value.
        system: the units that texts of lengths are written in.
    """
    match value:
        case Enum():
            return value.value
        case None | bool() | int() | float() | str():
            return value
        case Length():
            return {"text": exact_text(value, system), "in": value.inches, "mm": value.mm}
        case Section() | Plate():
            return value.designation
        case Slope():
            return {"in_12": value.rise_in_12.inches, "degrees": value.degrees}
        case Fraction():
            return float(value)
        case date():
            return value.isoformat()
        case BaseModel():
            return {name: plain(getattr(value, name), system) for name in type(value).model_fields}
        case Mapping():
            return {str(plain(key, system)): plain(item, system) for key, item in value.items()}
        case tuple() | list() | set() | frozenset():
            return [plain(item, system) for item in value]
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: plain(getattr(value, field.name), system) for field in fields(value)}
    raise TypeError(f"a {type(value).__name__} has no plain form")


def json_text(value: object, system: System = System.FT_IN) -> str:
    """A record as JSON text, see `plain`."""
    return json.dumps(plain(value, system), indent=2, ensure_ascii=False)
