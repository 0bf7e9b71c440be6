from __future__ import annotations

import datetime as dt

from gageline.job import read_document
from gageline.units import System

TEXT = """
[job]
name = " Test "
date = 2026-11-25
units = "mm"
sheet = "letter"
notes = ["one", "two"]
[[piece]]
mark = "B1"
"""


def test_the_facts_of_a_job() -> None:
    facts = read_document(TEXT).job
    assert (facts.name, facts.date, facts.units) == ("Test", dt.date(2026, 11, 25), System.MM)
    assert (facts.sheet, facts.notes, facts.number, facts.place) == ("letter", ("one", "two"), "", "")


def test_a_date_may_stand_in_quotes() -> None:
    assert read_document(TEXT.replace("2026-11-25", '"2026-11-25"')).job.date == dt.date(2026, 11, 25)


def test_what_is_left_out_of_a_piece() -> None:
    piece = read_document(TEXT).pieces[0]
    assert (piece.quantity, piece.stock, piece.copes, piece.holes) == (1, None, (), ())
    assert piece.left == piece.right
