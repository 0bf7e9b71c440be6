from __future__ import annotations

from gageline.job import JobProblems, Problem
from gageline.job.problems import place, placed

TABLE = {"job": {}, "piece": [{"mark": "B4", "copes": [{}, {}]}, {"mark": 3}, "x", {"mark": "a\x1b"}]}


def test_a_place_in_the_words_of_the_document() -> None:
    assert place(("piece", 0, "copes", 1, "depth"), TABLE) == 'piece "B4" → copes 2 → depth'
    assert place(("piece", 1, "mark"), TABLE) == "piece 2 → mark"
    assert place(("piece", 2), TABLE) == "piece 3"
    assert place(("piece", 3), TABLE) == "piece 4"
    assert place(("piece", 9, "holes", 0), TABLE) == "piece 10 → holes 1"
    assert place(("job", "name"), TABLE) == "job → name"
    assert place((), TABLE) == ""


def test_problems_come_in_the_order_of_the_document_and_once() -> None:
    text = '[job]\n\n[[piece]]\nmark = "B4"\n'
    notes = [(("piece", 0, "mark"), "second"), (("job",), "first"), (("piece", 0, "mark"), "second")]
    found = placed(notes, TABLE, text)
    assert isinstance(found, JobProblems)
    assert str(found) == 'line 1: job: first\nline 4: piece "B4" → mark: second'
    assert Problem("", "is not TOML", None).text() == "is not TOML"
