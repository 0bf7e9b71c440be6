"""Tables."""

from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.sheets import Anchor, Column, Group, Table, Weight, extent, table_blocks, texts
from gageline.sheets.table import column_widths

COLUMNS = (Column("No.", Anchor.RIGHT, Weight.BOLD, wraps=False), Column("Do"), Column("Read", wraps=False))
STEP = "Square a line across the near web and carry it over both flanges with the square"


def steps(count: int) -> Table:
    return Table(COLUMNS, tuple((str(i), STEP, "18'-7 1/4\"") for i in range(count)))


def test_columns_fill_the_table_and_keep_what_must_not_wrap() -> None:
    widths = column_widths(steps(3), 90)
    assert sum(widths) == pytest.approx(90)
    (block,) = table_blocks(steps(3), 90, 200, 200)
    assert [t.text for t in texts((block[0],))].count("18'-7 1/4\"") == 3


def test_the_head_stands_on_every_page_and_no_row_is_lost() -> None:
    blocks = table_blocks(steps(30), 90, 60, 100)
    assert len(blocks) > 2
    for block, height in blocks:
        found = [t.text for t in texts((block,))]
        assert found[:3] == ["No.", "Do", "Read"]
        box = extent((block,))
        assert box.bottom <= height + 1e-9
        assert box.right <= 90 + 1e-9
    numbers = [t.text for block, _ in blocks for t in texts((block,)) if t.text.isdecimal()]
    assert numbers == [str(i) for i in range(30)]
    assert blocks[0][1] <= 60
    assert all(height <= 100 for _, height in blocks)


def test_a_first_page_without_room_is_left_empty() -> None:
    blocks = table_blocks(steps(2), 90, 5, 100)
    assert blocks[0] == (Group(()), 0.0)
    assert len(blocks) == 2


def test_a_table_without_rows_is_its_head() -> None:
    ((block, _),) = table_blocks(Table(COLUMNS, ()), 90, 50, 50)
    assert [t.text for t in texts((block,))] == ["No.", "Do", "Read"]


def test_a_total_is_bold() -> None:
    table = Table(COLUMNS, (("1", "cut", "3"), ("", "Total", "3")), total=True)
    ((block, _),) = table_blocks(table, 90, 50, 50)
    assert [t.weight for t in texts((block,)) if t.text == "Total"] == [Weight.BOLD]
    assert [t.weight for t in texts((block,)) if t.text == "cut"] == [Weight.REGULAR]


def test_long_names_are_broken_where_they_leave_no_room_and_readings_never() -> None:
    columns = (Column("Piece", wraps=False), Column("To", wraps=False), Column("Length", wraps=False))
    name, reading = "W" * 24, "118'-10 15/16\""
    table = Table(columns, ((name, name, reading), ("B1", "G1", reading)))
    widths = column_widths(table, 90)
    assert sum(widths) == pytest.approx(90)
    assert widths[0] == pytest.approx(widths[1])
    ((block, _),) = table_blocks(table, 90, 200, 200)
    found = [text.text for text in texts((block,))]
    assert found.count(reading) == 2
    assert "".join(text for text in found if set(text) == {"W"}) == name * 2
    assert extent((block,)).right <= 90 + 1e-9


def test_a_table_too_wide_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"a table of 3 columns needs .* mm and has 30.0 mm: turn the page"
    ):
        table_blocks(steps(1), 30, 50, 50)


def test_a_row_too_tall_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"does not fit a page with 12\.0 mm: shorten the text"):
        table_blocks(steps(1), 60, 12, 12)


def test_a_row_with_a_missing_text_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"table row 2 has 1 texts for 3 columns: give one for each"):
        table_blocks(Table(COLUMNS, (("1", "2", "3"), ("1",))), 90, 50, 50)


def test_a_total_goes_to_the_next_page_with_the_row_before_it() -> None:
    rows = tuple((str(n), f"row {n}", "1") for n in range(6))
    alone = table_blocks(Table(COLUMNS, rows), 120.0, 200.0, 200.0)[0][1]
    # one hair less than all of them have
    with_total = table_blocks(Table(COLUMNS, rows, total=True), 120.0, alone - 0.1, 200.0)
    without = table_blocks(Table(COLUMNS, rows), 120.0, alone - 0.1, 200.0)
    said = [[text.text for text in texts((group,))] for group, _ in with_total]
    assert "row 4" in said[1]
    assert "row 5" in said[1]
    assert "row 4" in [text.text for text in texts((without[0][0],))]


def test_only_the_page_of_the_last_row_leaves_room_under_it() -> None:
    table = Table(COLUMNS, tuple((str(n), "text", "") for n in range(12)))
    ((_, whole),) = table_blocks(table, 120.0, 500.0, 500.0)
    assert [high for _, high in table_blocks(table, 120.0, whole, whole)] == [whole]
    (_, one), (_, two) = table_blocks(table, 120.0, whole, whole, under=10.0)
    assert one < whole
    assert two + 10.0 <= whole
    # no page can hold both: then the table is set as without
    assert [high for _, high in table_blocks(table, 120.0, whole, whole, under=whole)] == [whole]
