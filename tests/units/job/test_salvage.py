from __future__ import annotations

import tomllib

from gageline.job.salvage import original_path, salvaged

TEXT = """
[job]
units = "mm"
[practice]
bolt = "M99"
[[piece]]
mark = "/"
[[piece]]
mark = "B2"
length = "x"
[[piece.holes]]
name = "a"
x = "y"
[[piece.holes]]
name = "b"
from = "a"
[[piece.holes]]
name = "c"
"""
WRONG = [
    ("job", "name"),
    ("practice", "bolt"),
    ("piece", 0, "mark"),
    ("piece", 1, "length"),
    ("piece", 1, "holes", 0, "x"),
]


def test_what_is_right_is_kept_and_knows_where_it_stood() -> None:
    rest, origins = salvaged(tomllib.loads(TEXT), WRONG)
    assert rest is not None
    assert rest.practice.bolt is None
    (piece,) = rest.pieces
    assert (piece.mark, piece.length) == ("B2", None)
    assert [group.name for group in piece.holes] == ["c"]  # b is measured from a
    assert original_path(("piece", 0, "holes", 0, "x"), origins) == ("piece", 1, "holes", 2, "x")
    assert original_path(("piece", 0, "length"), origins) == ("piece", 1, "length")
    assert original_path(("job",), origins) == ("job",)


def test_nothing_is_left_of_a_job_without_a_right_piece() -> None:
    rest, _ = salvaged({"job": {"name": "t"}, "piece": 3}, [("piece",)])
    assert rest is None
