"""Forms from the job document's own definition: every key of a table is a field, none is written twice."""

from __future__ import annotations

import re
import types
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from enum import Enum
from fractions import Fraction
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from gageline.units import Length, Slope, System

__all__ = [
    "Field",
    "Rows",
    "Section",
    "each_length",
    "field_id",
    "form_of",
    "row_names",
    "table_of",
    "tables_of",
]

Table = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Field:
    """One field of a form.

    Args:
        name: its path in the document, `copes.0.depth`.
        label: what it is called.
        kind: length, lengths, slope, turn, text, lines, table, whole, number, date, flag or choice.
        help: what it is for.
        value: as text.
        choices: of a choice, as (value, words).
        required: whether it must be given.
    """

    name: str
    label: str
    kind: str
    help: str
    value: str
    choices: tuple[tuple[str, str], ...] = ()
    required: bool = False

    @property
    def id(self) -> str:
        """Its name in the page."""
        return field_id(self.name)

    @property
    def is_length(self) -> bool:
        """Whether the length pad helps."""
        return self.kind in {"length", "lengths"}


@dataclass(frozen=True, slots=True)
class Section:
    """Fields that belong together.

    Args:
        name: its path in the document; empty for the whole.
        label: what it is called.
        fields: its own fields.
        sections: tables in it, there once.
        rows: lists of tables in it.
        open: whether anything in it is given.
        help: what it is for.
    """

    name: str
    label: str
    fields: tuple[Field, ...]
    sections: tuple[Section, ...] = ()
    rows: tuple[Rows, ...] = ()
    open: bool = False
    help: str = ""

    @property
    def id(self) -> str:
        """Its name in the page."""
        return field_id(self.name)


@dataclass(frozen=True, slots=True)
class Rows:
    """A list of tables, of which there may be any number."""

    name: str
    label: str
    help: str
    items: tuple[Section, ...]

    @property
    def id(self) -> str:
        """Its name in the page."""
        return field_id(self.name)


def field_id(name: str) -> str:
    """A path of the document as a name in a page."""
    return name.replace(".", "-") or "form"


def each_length(text: str) -> list[str]:
    """The lengths of a field that takes several, each as it was typed.

    A comma right before a digit divides nothing: to those who work in millimetres it is a decimal sign.
    """
    return [part.strip() for part in re.split(r";|,(?!\d)", text) if part.strip()]


def _bare(annotation: Any) -> Any:
    """A type without its checks and without None; of several the first."""
    while True:
        origin = get_origin(annotation)
        if origin is Annotated:
            annotation = get_args(annotation)[0]
        elif origin is Union or isinstance(annotation, types.UnionType):
            annotation = next(one for one in get_args(annotation) if one is not types.NoneType)
        else:
            return annotation


def _model(kind: Any) -> type[BaseModel] | None:
    return kind if isinstance(kind, type) and issubclass(kind, BaseModel) else None


def _item(kind: Any) -> Any:
    """What a tuple holds, None for anything else."""
    return _bare(get_args(kind)[0]) if get_origin(kind) is tuple else None


_DIGITS = 7  # more have numbers of rows that no form has made
_KINDS = {
    Length: "length",
    Slope: "slope",
    Fraction: "turn",
    bool: "flag",
    int: "whole",
    float: "number",
    date: "date",
    str: "text",
}


def _kind_of(kind: Any) -> tuple[str, tuple[tuple[str, str], ...]]:
    """Which kind of field a type is, and its choices."""
    if get_origin(kind) is Literal:
        return "choice", tuple((str(one), str(one).replace("_", " ")) for one in get_args(kind))
    if isinstance(kind, type) and issubclass(kind, Enum):
        return "choice", tuple((str(one.value), str(one.value)) for one in kind)
    if get_origin(kind) is dict:
        return "table", ()
    if (item := _item(kind)) is not None:
        return ("lengths" if item is Length else "lines"), ()
    if kind is bool:
        return "flag", (("true", "yes"), ("false", "no"))
    return _KINDS.get(kind, "text"), ()


def _words(name: str) -> str:
    return name.strip("_").replace("_", " ")


def _shown(value: Any, between: str = "; ") -> str:
    """A value of a document's table as it is typed."""
    match value:
        case None:
            return ""
        case bool():
            return "true" if value else "false"
        case dict():
            return "\n".join(f"{key} = {_shown(one)}" for key, one in value.items())
        case list() | tuple():
            return between.join(map(_shown, value))
        case _:
            return str(value)


def _usual(info: FieldInfo) -> str:
    """What holds where a choice is left alone."""
    if info.is_required():
        return ""
    default = info.default
    if default is None:
        return "as usual"
    words = (
        ("yes" if default else "no") if isinstance(default, bool) else str(getattr(default, "value", default))
    )
    return f"as usual: {words}"


def _help(info: FieldInfo, kind: str) -> str:
    """What a field is for, and what holds when it is left empty."""
    words = info.description or ""
    if kind == "table":
        return f"{words}; one a line: code = length"
    if kind == "lengths":
        return f"{words}; several with ; between".lstrip("; ")
    default = info.default
    if info.is_required() or kind in {"choice", "flag"} or not isinstance(default, int | str) or not default:
        return words
    return f"{words}; {default} when left out".lstrip("; ")


def _own_first(model: type[BaseModel]) -> list[tuple[str, FieldInfo]]:
    """The fields of a table, those that it shares with others last: the end of angles before their holes."""
    return sorted(model.model_fields.items(), key=lambda one: one[0] not in model.__annotations__)


def _first_line(model: type[BaseModel]) -> str:
    return (model.__doc__ or "").split("\n", maxsplit=1)[0]


def form_of(model: type[BaseModel], table: Mapping[str, Any], name: str = "", label: str = "") -> Section:
    """The form of a table of the document.

    Args:
        model: the table's definition.
        table: what is given so far, as the document has it.
        name: its path in the document.
        label: what it is called.
    """
    fields: list[Field] = []
    sections: list[Section] = []
    rows: list[Rows] = []
    for own, info in _own_first(model):
        key = info.alias or own
        path = f"{name}.{key}" if name else key
        kind, given = _bare(info.annotation), table.get(key)
        if (inner := _model(kind)) is not None:
            made = form_of(inner, given if isinstance(given, dict) else {}, path, _words(own))
            sections.append(replace(made, help=info.description or _first_line(inner)))
        elif (inner := _model(_item(kind))) is not None:
            items = [item for item in given if isinstance(item, dict)] if isinstance(given, list) else []
            one = _words(own).removesuffix("s")
            each = (form_of(inner, item, f"{path}.{n}", f"{one} {n + 1}") for n, item in enumerate(items))
            rows.append(Rows(path, _words(own), _first_line(inner), tuple(each)))
        else:
            which, choices = _kind_of(kind)
            if choices and not info.is_required():
                choices = (("", _usual(info)), *choices)
            help_ = _help(info, which)
            text = _shown(given, "\n" if which == "lines" else "; ")
            fields.append(Field(path, _words(own), which, help_, text, choices, required=info.is_required()))
    return Section(name, label, tuple(fields), tuple(sections), tuple(rows), open=bool(table))


def row_names(section: Section) -> Iterator[str]:
    """The paths of all lists of a form, of those in its tables and in the rows of its lists too."""
    for inner in section.sections:
        yield from row_names(inner)
    for rows in section.rows:
        yield rows.name
        for item in rows.items:
            yield from row_names(item)


def tables_of(model: type[BaseModel]) -> dict[str, type[BaseModel]]:
    """The tables that a document has once, by their keys."""
    kinds = {info.alias or own: _model(_bare(info.annotation)) for own, info in model.model_fields.items()}
    return {key: kind for key, kind in kinds.items() if kind is not None}


def table_of(
    model: type[BaseModel], posted: Mapping[str, str], name: str = "", system: System = System.FT_IN
) -> Table:
    """The table that was typed into a form: what was left empty is left out.

    Args:
        model: the table's definition.
        posted: the fields of the form by their names.
        name: the table's path in the document.
        system: the units of the job, which a bare number is in.
    """
    table: Table = {}
    for own, info in model.model_fields.items():
        key = info.alias or own
        path = f"{name}.{key}" if name else key
        kind = _bare(info.annotation)
        if (inner := _model(kind)) is not None:
            if found := table_of(inner, posted, path, system):
                table[key] = found
        elif (inner := _model(_item(kind))) is not None:
            numbers = _numbers(posted, path)
            if numbers:
                table[key] = [table_of(inner, posted, f"{path}.{n}", system) for n in numbers]
        elif text := posted.get(path, "").strip():
            value = _typed(_kind_of(kind)[0], text)
            table[key] = [value] if _is_list(kind) and not isinstance(value, list) else value
    return table


def _is_list(kind: Any) -> bool:
    """Whether lengths are always a list: each is read by itself, so that one alone is a list of one."""
    return _item(kind) is Length and get_args(kind)[0] is not Length


def _numbers(posted: Mapping[str, str], path: str) -> list[int]:
    """The rows of a list that a form has, each told by a hidden field of its own."""
    found = {key.removeprefix(f"{path}.") for key in posted if key.startswith(f"{path}.")}
    return sorted(int(n) for n in found if n.isascii() and n.isdigit() and len(n) < _DIGITS)


def _typed(kind: str, text: str) -> Any:
    """The value of a document for what was typed; what cannot be read stays text, so that it is refused."""
    match kind:
        case "whole" | "number" | "turn":
            return _number(text)
        case "flag":
            return {"true": True, "false": False}.get(text, text)
        case "lengths":
            parts = each_length(text)
            return parts if len(parts) > 1 else "".join(parts)
        case "table":
            pairs = (line.partition("=") for line in text.splitlines() if line.strip())
            return {key.strip(): value.strip() for key, _, value in pairs}
        case "lines":
            return [line.strip() for line in text.splitlines() if line.strip()]
        case _:
            return text


def _number(text: str) -> int | float | str:
    try:
        return int(text)
    except ValueError:
        pass
    try:
        return float(text)
    except ValueError:
        return text
