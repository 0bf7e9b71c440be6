from __future__ import annotations

import json
from collections.abc import Iterator
from importlib.resources import files
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import BaseModel

from gageline.job import JobDocument, PieceEntry, parse, read_document, schema_text, write_document
from gageline.shop.fields import Section, field_id, form_of, row_names, table_of, tables_of


def _posted(form: Section) -> dict[str, str]:
    """What a browser sends for a form that nobody touched."""
    sent = {field.name: field.value for field in form.fields}
    for inner in form.sections:
        sent |= _posted(inner)
    for rows in form.rows:
        for item in rows.items:
            sent |= {item.name: "1"} | _posted(item)
    return sent


def _keys(form: Section) -> set[str]:
    own = {field.name for field in form.fields}
    return own | {one.name for one in form.sections} | {rows.name for rows in form.rows}


def test_every_key_of_a_piece_has_its_field() -> None:
    assert _keys(form_of(PieceEntry, {})) == {
        info.alias or name for name, info in PieceEntry.model_fields.items()
    }


@pytest.mark.parametrize("name", ["mezzanine.toml", "metric.toml"])
def test_an_untouched_form_sends_back_the_same_piece(name: str) -> None:
    document = read_document((files("gageline") / "demo" / name).read_text("utf8"))
    for table in parse(write_document(document))["piece"]:
        again = table_of(PieceEntry, _posted(form_of(PieceEntry, table)))
        context = {"system": document.job.units}
        assert PieceEntry.model_validate(again, context=context) == PieceEntry.model_validate(
            table, context=context
        )


@given(st.dictionaries(st.text(max_size=20), st.text(max_size=40), max_size=8))
def test_whatever_is_posted_makes_a_table(posted: dict[str, str]) -> None:
    assert isinstance(table_of(PieceEntry, posted), dict)


def test_rows_are_numbered_anew_and_numbers_are_numbers() -> None:
    posted = {"quantity": "4", "holes.7": "1", "holes.7.rows": "3", "holes.7.x": "2; 1'-0", "holes.2": "1"}
    posted |= {"holes.7.turn": "22.5", "holes.7.mates": "false", "holes.x": "1", "holes.9999999": "1"}
    wanted: dict[str, Any] = {"rows": 3, "x": ["2", "1'-0"], "turn": 22.5, "mates": False}
    assert table_of(PieceEntry, posted) == {"quantity": 4, "holes": [{}, wanted]}


def test_no_row_is_lost_however_many_there_are() -> None:
    posted = {f"holes.{n}": "1" for n in range(2000)} | {f"holes.{n}.rows": str(n) for n in range(2000)}
    assert [row["rows"] for row in table_of(PieceEntry, posted)["holes"]] == list(range(2000))


def test_a_field_of_several_lines_sends_back_what_it_shows() -> None:
    practice = tables_of(JobDocument)["practice"]
    table = {"tolerances": {"length": '1/32"', "camber": "1/8"}, "tolerance_class": 2}
    form = form_of(practice, table)
    (field,) = [one for one in form.fields if one.name == "tolerances"]
    assert (field.kind, field.value) == ("table", 'length = 1/32"\ncamber = 1/8')
    assert table_of(practice, _posted(form)) == table
    assert table_of(practice, {"tolerances": "no length here"}) == {"tolerances": {"no length here": ""}}


def _of_schema(schema: dict[str, Any], node: dict[str, Any], path: str) -> Iterator[str]:
    """Every key that the published schema allows, as the name of a field with one row in each list."""
    options = [node, *node.get("anyOf", ())]
    rows = [one["items"] for one in options if isinstance(one.get("items"), dict)]
    kept = [item for item in rows if _tables(schema, item)]
    for table in _tables(schema, node):
        for key, inner in table["properties"].items():
            yield from _of_schema(schema, inner, f"{path}.{key}")
    for item in kept:
        yield from _of_schema(schema, item, f"{path}.0")
    if not kept and not _tables(schema, node):
        yield path


def _tables(schema: dict[str, Any], node: dict[str, Any]) -> list[dict[str, Any]]:
    named = (one["$ref"].rpartition("/")[2] for one in [node, *node.get("anyOf", ())] if "$ref" in one)
    return [table for table in map(schema["$defs"].get, named) if table and "properties" in table]


def _grown(form: Section, model: type[BaseModel], table: dict[str, Any], name: str) -> Section:
    """A form with one row in each of its lists, in the rows' own lists too."""
    while empty := [rows for rows in row_names(form) if not _row(table, rows.removeprefix(f"{name}."))]:
        form = form_of(model, table, name)
        assert empty
    return form


def _row(table: dict[str, Any], path: str) -> bool:
    """Put one row into the list at a path; true when it had one."""
    *steps, last = path.split(".")
    place: Any = table
    for step in steps:
        place = place[int(step)] if isinstance(place, list) else place.setdefault(step, {})
    had = bool(place.get(last))
    place.setdefault(last, [{}])
    return had


def _names(form: Section) -> Iterator[str]:
    yield from (field.name for field in form.fields)
    for inner in form.sections:
        yield from _names(inner)
    for rows in form.rows:
        for item in rows.items:
            yield from _names(item)


def test_every_key_of_the_published_schema_has_its_field() -> None:
    schema = json.loads(schema_text())
    pages: dict[str, type[BaseModel]] = {**tables_of(JobDocument), "piece": PieceEntry}
    assert set(schema["properties"]) == set(pages)
    for key, model in pages.items():
        node = schema["properties"][key]
        if key == "piece":
            node = node["items"]
        wanted = set(_of_schema(schema, node, key))
        form = _grown(form_of(model, {}, key), model, {}, key)
        assert set(_names(form)) == wanted


def test_every_table_and_list_of_a_form_says_what_it_is_for() -> None:
    frame = tables_of(JobDocument)["frame"]
    said = {one.label: one.help for one in (*form_of(PieceEntry, {}).sections, *form_of(frame, {}).sections)}
    assert said["left"].startswith("How an end is cut")
    assert said["grid"].startswith("The grid: lines across x")
    assert all(said.values())


def test_what_is_a_tables_own_comes_before_what_it_shares() -> None:
    form = form_of(PieceEntry, {"angles": [{}]})
    labels = [
        field.label for field in next(rows for rows in form.rows if rows.name == "angles").items[0].fields
    ]
    assert labels[0] == "end"
    assert labels.index("rows") < labels.index("bolt")


def test_what_is_no_number_stays_as_it_was_typed() -> None:
    assert table_of(PieceEntry, {"quantity": "four"}) == {"quantity": "four"}


def test_tables_that_stand_once() -> None:
    assert {"job", "practice", "frame"} <= set(tables_of(JobDocument))
    assert "piece" not in tables_of(JobDocument)
    assert field_id("copes.0.depth") == "copes-0-depth"


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ("62; 70", ["62", "70"]),
        ("62, 70", ["62", "70"]),
        ("62,5", "62,5"),
        ("62,5; 70", ["62,5", "70"]),
        (";", ""),
    ],
)
def test_several_lengths_are_told_apart_and_a_decimal_comma_is_left_to_be_refused(
    typed: str, wanted: Any
) -> None:
    assert table_of(PieceEntry, {"holes.0": "1", "holes.0.x": typed})["holes"] == [{"x": wanted}]


def test_a_field_of_several_lengths_says_how_they_are_typed() -> None:
    (group,) = form_of(PieceEntry, {"holes": [{}]}).rows[3].items
    assert {field.label: field.help for field in group.fields}["x"].endswith("; several with ; between")
