from __future__ import annotations

from importlib.resources import files
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gageline.job import JobDocument, PieceEntry, parse, read_document, write_document
from gageline.shop.fields import Section, field_id, form_of, table_of, tables_of


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
    posted |= {"holes.7.turn": "22.5", "holes.7.mates": "false", "holes.x": "1", "holes.99999": "1"}
    wanted: dict[str, Any] = {"rows": 3, "x": ["2", "1'-0"], "turn": 22.5, "mates": False}
    assert table_of(PieceEntry, posted) == {"quantity": 4, "holes": [{}, wanted]}


def test_what_is_no_number_stays_as_it_was_typed() -> None:
    assert table_of(PieceEntry, {"quantity": "four"}) == {"quantity": "four"}


def test_tables_that_stand_once() -> None:
    assert {"job", "practice", "frame"} <= set(tables_of(JobDocument))
    assert "piece" not in tables_of(JobDocument)
    assert field_id("copes.0.depth") == "copes-0-depth"
