"""The column schedule."""

from frames import bays, demo_frame
from gageline.detail import read_full
from gageline.sheets import column_schedule
from gageline.sheets.column_schedule import grid_point
from pages import all_texts


def joined(texts: list[str]) -> str:
    return " ".join(texts)


def test_column_schedule_has_a_row_for_each_column() -> None:
    found = all_texts(column_schedule(demo_frame()))
    for wanted in ("1/A", "2/A (P2)", "3/B", "W8X31 A992", "+12'-0\"", '−6"', "8 shafts"):
        assert wanted in found
    # Under the girder: 12'-0" less its depth, 18.0 in (AISC Manual Table 1-1, W18X50).
    assert found.count("+10'-6\"") == 2


def test_plates_and_their_holes_are_said() -> None:
    found = joined(all_texts(column_schedule(demo_frame())))
    # AISC Manual Table 14-2: holes 1 5/16 for anchor rods of 3/4
    assert 'PL3/4X12 x 1\'-0", 4 holes Ø1 5/16"' in found
    assert 'PL1/2X7 x 11 1/2", 4 holes Ø13/16"' in found


def test_anchor_rods_with_their_spacing_and_how_far_they_stand_out() -> None:
    detailed = demo_frame().detailed
    assert detailed is not None
    rods = next(one for one in detailed.anchor_rods if one.column == "P1")
    found = joined(all_texts(column_schedule(demo_frame())))
    assert f'{rods.count} rods Ø3/4" x 1\'-1 1/2", 9" by 9" apart, 4 1/2" over the concrete' in found
    assert rods.projection.inches == 4.5


def test_a_spliced_column_has_a_row_for_each_shaft_and_rods_at_its_foot_only() -> None:
    text = bays([240], [240], 0, levels=2).replace(
        'at = "1/A"\n', 'at = "1/A"\nsplices = [{ at = "15 ft" }]\n', 1
    )
    found = all_texts(column_schedule(read_full(text)))
    assert "5 shafts" in found
    assert sum(text.startswith("4 rods") for text in found) == 4
    assert joined(found).count("+19'-0\"") >= 2  # 4'-0 over the level of 15'-0


def test_place_off_the_grid_says_how_far() -> None:
    full = demo_frame()
    assert full.detailed is not None
    assert grid_point(288.0, 222.0, full.detailed, full.job) == "2/B"
    assert grid_point(291.0, 222.0, full.detailed, full.job) == '2/B x +3"'


def test_a_turned_column_says_its_turn() -> None:
    text = bays([240], [240], 0).replace('at = "1/A"\n', 'at = "1/A"\nturn = 90\n', 1)
    assert all_texts(column_schedule(read_full(text))).count("90°") == 1


def test_a_column_of_the_same_mark_that_stands_turned_round_says_so() -> None:
    """One beam between two columns: the holes are in the flange that faces it, on one side and the other."""
    text = """[job]
name = "two posts"
[frame.grid]
x = { names = ["1", "2"], spacing = ["20'-0"] }
y = { names = ["A"] }
[[frame.level]]
name = "F"
elevation = "12'-0"
[[frame.member]]
name = "G1"
stock = "W18X50"
from = "1/A"
to = "2/A"
top = "F"
"""
    for name, at in (("P1", "1/A"), ("P2", "2/A")):
        text += f'[[frame.column]]\nname = "{name}"\nat = "{at}"\nstock = "W10X49"\nbase = 0\ntop = "F"\n'
    found = all_texts(column_schedule(read_full(text)))
    assert "2/A (P2)" in found
    assert (found.count("0°"), found.count("180°")) == (1, 1)
