from __future__ import annotations

import pytest

from gageline.job import JobProblems, PieceEntry, read_document
from gageline.shop.drafts import draft_of, first_choices, new_piece, with_piece, with_row, without_row
from gageline.shop.jobs import current_text
from gageline.shop.models import Job

_LISTS = ("copes", "trims", "holes", "openings", "angles", "plates", "end_plates", "stiffeners")


def test_the_first_choices_of_every_list_make_a_piece(job: Job) -> None:
    document = read_document(current_text(job))
    for units in ("ft-in", "mm"):
        facts = document.job.model_copy(update={"units": type(document.job.units)(units)})
        other = document.model_copy(update={"job": facts, "pieces": ()})
        for name in _LISTS:
            table = {**new_piece(other), name: [first_choices(other, name)]}
            draft = draft_of(other, table)
            assert draft.problems == (), (units, name)
            assert draft.layout is not None


def test_rows_come_and_go(job: Job) -> None:
    document = read_document(current_text(job))
    posted = {"mark": "B9", "stock": "W12x26", "length": "10'"}
    grown = with_row(PieceEntry, document, posted, "copes")
    assert grown["copes"] == [first_choices(document, "copes")]
    sent = posted | {"copes.0": "1", "copes.0.end": "left", "copes.1": "1", "copes.1.end": "right"}
    assert without_row(PieceEntry, document, sent, "copes.0")["copes"] == [{"end": "right"}]
    assert without_row(PieceEntry, document, sent, "copes.9")["copes"] == [{"end": "left"}, {"end": "right"}]


def test_a_renamed_original_keeps_its_opposite_hand(demo: Job) -> None:
    text = current_text(demo)
    table = {"mark": "B2X", "stock": "W16x31", "length": "11'-4"}
    changed = read_document(with_piece(read_document(text), table, "B2"))
    assert next(piece for piece in changed.pieces if piece.mark == "B3").as_hand_of == "B2X"


def test_a_draft_says_what_is_wrong_and_draws_nothing(job: Job) -> None:
    draft = draft_of(read_document(current_text(job)), {"mark": "B9", "stock": "W99x99", "length": "x"})
    assert draft.layout is None
    said = {one.id: one.text for one in draft.said}
    assert "W99x99" in said["stock"]
    assert '"x"' in said["length"]


def test_a_mark_that_is_taken_is_refused(job: Job) -> None:
    with pytest.raises(JobProblems, match="B1"):
        with_piece(read_document(current_text(job)), {"mark": "B1", "stock": "W12x26", "length": "9'"}, None)
