from __future__ import annotations

import datetime as dt
import json
import re
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from gageline.job import default_practice, read_job, schema_text
from gageline.job.document import JobFacts, PieceEntry, PracticeEntry
from gageline.job.features import (
    ClipEntry,
    CopeEntry,
    EndEntry,
    HolesEntry,
    HoleSize,
    OpeningEntry,
    TrimEntry,
)
from gageline.job.fields import Entry
from gageline.job.fittings import AnglesEntry, EndPlateEntry, FittingEntry, PlateEntry, StiffenerEntry
from gageline.job.loading import LoadEntry, SpanEntry, StrengthEntry
from gageline.units import Length, System, inches_text, millimetres

ROOT = Path(__file__).parents[3]
DEMOS = sorted(p for p in (ROOT / "src/gageline/demo").glob("*.toml") if p.name != "rack.toml")
PAGE = (ROOT / "docs/job-document.md").read_text(encoding="utf-8")
SECTIONS = {part.partition("\n")[0]: part for part in PAGE.split("\n## ")}
EXAMPLES = re.findall(r"```toml\n(.*?)```", PAGE, re.DOTALL)
TABLES: dict[str, type[Entry]] = {
    "The job: `[job]`": JobFacts,
    "How the shop works: `[practice]`": PracticeEntry,
    "How strength is checked: `[strength]`": StrengthEntry,
    "A piece: `[[piece]]`": PieceEntry,
    "An end: `left` and `right`": EndEntry,
    "Copes: `[[piece.copes]]`": CopeEntry,
    "Flange trims: `[[piece.trims]]`": TrimEntry,
    "Clipped corners of a plate: `[[piece.clips]]`": ClipEntry,
    "The size of a hole": HoleSize,
    "Holes: `[[piece.holes]]`": HolesEntry,
    "Openings: `[[piece.openings]]`": OpeningEntry,
    "What every fitting may say": FittingEntry,
    "Connection angles: `[[piece.angles]]`": AnglesEntry,
    "Single plates: `[[piece.plates]]`": PlateEntry,
    "Plates across an end: `end_plates`, `base_plates` and `cap_plates`": EndPlateEntry,
    "Stiffeners: `[[piece.stiffeners]]`": StiffenerEntry,
    "Loads: `[[piece.loads]]`": LoadEntry,
    "The span of a beam: `span`": SpanEntry,
}


def keys_of(table: type[Entry]) -> list[str]:
    return [field.alias or name for name, field in table.model_fields.items()]


def as_json(value: Any) -> Any:
    """TOML as JSON has it: dates are text."""
    if isinstance(value, dict):
        return {key: as_json(item) for key, item in value.items()}
    if isinstance(value, list):
        return [as_json(item) for item in value]
    return value.isoformat() if isinstance(value, dt.date) else value


def test_the_published_schema_is_current() -> None:
    published = (ROOT / "docs/job.schema.json").read_text(encoding="utf-8")
    assert published == schema_text(), "write it anew: gageline.job.schema_text()"


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.name)
def test_the_demo_jobs_are_valid_by_the_schema(demo: Path) -> None:
    jsonschema.Draft202012Validator.check_schema(json.loads(schema_text()))
    table = as_json(tomllib.loads(demo.read_text(encoding="utf-8")))
    assert not list(jsonschema.Draft202012Validator(json.loads(schema_text())).iter_errors(table))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('units = "ft-in"', 'units = "feet"'),
        ("quantity = 4", "quantity = 0"),
        ('mark = "B1"', 'mark = "/"'),
        ("rows = 3", "row = 3"),
    ],
)
def test_the_schema_refuses_what_the_program_refuses(old: str, new: str) -> None:
    text = (ROOT / "src/gageline/demo/mezzanine.toml").read_text(encoding="utf-8").replace(old, new, 1)
    validator = jsonschema.Draft202012Validator(json.loads(schema_text()))
    assert not validator.is_valid(as_json(tomllib.loads(text)))


def named_in(schema: object) -> set[str]:
    """The definitions that a piece of schema leads to."""
    if isinstance(schema, list):
        return set().union(*map(named_in, schema))
    if not isinstance(schema, dict):
        return set()
    own = {str(schema["$ref"]).rpartition("/")[2]} if "$ref" in schema else set()
    return own.union(*map(named_in, schema.values()))


def test_every_table_of_a_piece_has_its_place_in_the_reference() -> None:
    definitions = json.loads(schema_text())["$defs"]
    reached = {"JobFacts", "PieceEntry"}
    for _ in definitions:
        reached |= set().union(*(named_in(definitions[name]) for name in reached))
    known = {table.__name__ for table in TABLES.values()}
    apart = {"HoleSize", "FittingEntry", "PracticeEntry", "StrengthEntry"}
    assert reached - {"HoleKind", "System"} == known - apart


@pytest.mark.parametrize("heading", TABLES)
def test_the_reference_names_every_key_and_no_other(heading: str) -> None:
    table = TABLES[heading]
    own = re.findall(r"^\| `(\w+)` \|", SECTIONS[heading], re.MULTILINE)
    shared: list[str] = []
    for base in (HoleSize, FittingEntry):
        if issubclass(table, base) and table is not base:
            shared += keys_of(base)
    assert len(own) == len(set(own))
    assert set(own) | set(shared) == set(keys_of(table))
    assert not set(own) & set(shared)


@pytest.mark.parametrize("number", range(len(EXAMPLES)))
def test_every_example_of_the_reference_builds(number: int) -> None:
    text = EXAMPLES[number]
    if "[job]" not in text:
        text = '[job]\nname = "example"\n' + text
    if "[[piece]]" not in text:
        text += '[[piece]]\nmark = "B1"\nstock = "W16x26"\nlength = "10\'-0"\n'
    assert read_job(text).assemblies


def test_the_reference_has_an_example_of_every_table() -> None:
    text = "\n".join(EXAMPLES)
    lists = [name for name in keys_of(PieceEntry) if name.endswith("s") and name != "as_hand_of"]
    assert not [name for name in lists if f"[[piece.{name}]]" not in text and f"{name} = [" not in text]


def cell_of(value: object, system: System) -> str:
    """A default of practice as the reference writes it."""
    if isinstance(value, Length):
        return inches_text(value)[:-1] if system is System.FT_IN else millimetres(value)
    if isinstance(value, tuple):
        return ", ".join(cell_of(item, system) for item in value)
    return f'"{value}"' if isinstance(value, str) else str(value)


def test_the_defaults_of_practice_in_the_reference_are_those_of_the_program() -> None:
    section = SECTIONS["How the shop works: `[practice]`"]
    cells = re.findall(r"^\| `(\w+)` \| .*? \| ([^|]*) \| ([^|]*) \|$", section, re.MULTILINE)
    written = {name: tuple(cell.strip("`") for cell in pair) for name, *pair in cells}
    usual = {
        name: tuple(cell_of(getattr(default_practice(system), name), system) for system in System)
        for name in keys_of(PracticeEntry)
    }
    assert written == usual
