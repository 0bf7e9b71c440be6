"""The published schema of the rack document: current, and of one mind with the program."""

from __future__ import annotations

import datetime as dt
import json
import re
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from gageline.job import JobProblems
from gageline.stock import rack_schema_text, read_rack

ROOT = Path(__file__).parents[3]
DEMO = (ROOT / "src/gageline/demo/rack.toml").read_text(encoding="utf-8")
PAGE = (ROOT / "docs/cutting.md").read_text(encoding="utf-8")
EXAMPLE = re.findall(r"```toml\n(.*?)```", PAGE, re.DOTALL)[0]
VALIDATOR = jsonschema.Draft202012Validator(json.loads(rack_schema_text()))


def as_json(value: Any) -> Any:
    """TOML as JSON has it: dates are text."""
    if isinstance(value, dict):
        return {key: as_json(item) for key, item in value.items()}
    if isinstance(value, list):
        return [as_json(item) for item in value]
    return value.isoformat() if isinstance(value, dt.date) else value


def test_the_published_schema_is_current() -> None:
    published = (ROOT / "docs/rack.schema.json").read_text(encoding="utf-8")
    assert published == rack_schema_text(), "write it anew: gageline.stock.rack_schema_text()"


@pytest.mark.parametrize("text", [DEMO, EXAMPLE], ids=["demo", "reference"])
def test_the_examples_are_valid_by_the_schema(text: str) -> None:
    jsonschema.Draft202012Validator.check_schema(json.loads(rack_schema_text()))
    assert not list(VALIDATOR.iter_errors(as_json(tomllib.loads(text))))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('kerf = "1/8"', 'kerfs = "1/8"'),
        ("drop_percent = 50", "drop_percent = 101"),
        ("per_pound = 0.92", "per_pound = -0.92"),
        ('mark = "R1"', 'mark = "/"'),
        ('pieces = "G1"', "pieces = []"),
    ],
)
def test_the_schema_refuses_what_the_program_refuses(old: str, new: str) -> None:
    text = DEMO.replace(old, new, 1)
    assert text != DEMO
    assert not VALIDATOR.is_valid(as_json(tomllib.loads(text)))
    with pytest.raises(JobProblems):
        read_rack(text)


def test_the_reference_names_every_key_and_no_other() -> None:
    schema = json.loads(rack_schema_text())
    named: dict[str, set[str]] = {}
    table = ""
    for heading, cell in re.findall(r"^\| (?:`\[+(\w+)\]+`)? ?\| ((?:`\w+`(?:, )?)+) \|", PAGE, re.MULTILINE):
        table = heading or table
        named.setdefault(table, set()).update(re.findall(r"\w+", cell))
    known = {}
    for name, place in schema["properties"].items():
        reference = place.get("$ref") or place["items"]["$ref"]
        known[name] = set(schema["$defs"][reference.rpartition("/")[2]]["properties"])
    assert named == known
