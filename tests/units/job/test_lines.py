from __future__ import annotations

from gageline.job.lines import line_of, lines_of_keys

TEXT = '''# a job
[job]
name = "a # b = [c"   # not a key = 1
"quoted key" = 1
notes = [
  "one",
  """two
  [three]
  """,
  'four = 4', "five",
]

[[piece]]
mark = "B1"
copes = [
  { end = "left", depth = 1 }, { end = "right",
    depth = 2 },
]
left = { bevel = "3 in 12" }
[[piece.holes]]
x = [1,
  2]
[[piece.holes]]
x.y = 3.5
[[piece]]
mark = "B2"
[piece.right]
bevel = \'\'\'
7 in 12\'\'\'
mitre = "1 in 12"
'''
# the inline table that breaks its line is not TOML 1.0; the walk does not mind


def test_every_header_key_and_item_has_its_line() -> None:
    lines = lines_of_keys(TEXT)
    expected = {
        ("job",): 2,
        ("job", "name"): 3,
        ("job", "quoted key"): 4,
        ("job", "notes"): 5,
        ("job", "notes", 0): 6,
        ("job", "notes", 1): 7,
        ("job", "notes", 2): 10,
        ("job", "notes", 3): 10,
        ("piece", 0): 13,
        ("piece", 0, "mark"): 14,
        ("piece", 0, "copes"): 15,
        ("piece", 0, "copes", 0): 16,
        ("piece", 0, "copes", 1): 16,
        ("piece", 0, "copes", 1, "depth"): 17,
        ("piece", 0, "left", "bevel"): 19,
        ("piece", 0, "holes", 0): 20,
        ("piece", 0, "holes", 0, "x", 0): 21,
        ("piece", 0, "holes", 0, "x", 1): 22,
        ("piece", 0, "holes", 1): 23,
        ("piece", 0, "holes", 1, "x", "y"): 24,
        ("piece", 1): 25,
        ("piece", 1, "mark"): 26,
        ("piece", 1, "right"): 27,
        ("piece", 1, "right", "bevel"): 28,
        ("piece", 1, "right", "mitre"): 30,
    }
    assert {path: lines.get(path) for path in expected} == expected
    assert ("job", "three") not in lines
    assert ("c",) not in lines


def test_a_place_without_a_line_has_that_of_what_is_around_it() -> None:
    lines = {("piece",): 3, ("piece", 0): 3, ("piece", 0, "copes"): 7}
    assert line_of(("piece", 0, "copes", 1, "depth"), lines) == 7
    assert line_of(("piece", 0, "length"), lines) == 3
    assert line_of(("job",), lines) is None
    assert line_of((), lines) is None
