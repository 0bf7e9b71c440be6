"""Laws of the cutting sheets: no two texts touch, nothing leaves the frame, every piece stands on them."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.sheets import Page, cutting_sheet
from gageline.stock import Effort, answer, ask, read_rack
from jobs import job_of
from pages import crowded, in_title_block, outside, page_texts

RACK = """
[saw]
kerf = "1/8"
start_trim = "1/2"
grip = 4
keep = "2'"
drop_percent = 30
[[held]]
mark = "R1"
stock = "W12x26"
length = "16'-3 1/2"
heat = "7K2214"
[[buy]]
stock = "W12x26"
lengths = ["20'", "40'"]
per_pound = 0.9
[[buy]]
stock = "L3x3x1/4"
lengths = "20'"
each = 90
[[sheet]]
thickness = "3/8"
grade = "A572-50"
length = 96
width = 48
each = 400
[burner]
kerf = "1/8"
trim = "1/2"
"""
STOCKS = {"B": ("W12x26", 20, 180), "a": ("L3x3x1/4", 3, 60), "s": ("PL3/8x5 1/2", 8, 40)}
BEVELS = ("", 'right = { bevel = "45°", long = "top" }\n', 'left = { bevel = "3 in 12", long = "bottom" }\n')


@st.composite
def tables(draw: st.DrawFn) -> list[str]:
    """Pieces of three kinds of steel, some with angled ends, from one to very many."""
    found = []
    for number in range(draw(st.integers(1, 6))):
        letter = draw(st.sampled_from(sorted(STOCKS)))
        stock, least, most = STOCKS[letter]
        length = draw(st.integers(least * 16, most * 16)) / 16
        bevel = draw(st.sampled_from(BEVELS)) if letter == "B" else ""
        count = draw(st.integers(1, 30))
        mark = letter * draw(st.integers(1, 6)) + str(number)
        found.append(f'mark = "{mark}"\nquantity = {count}\nstock = "{stock}"\nlength = {length}\n{bevel}')
    return found


@settings(max_examples=12, deadline=None)
@given(tables())
def test_every_page_is_clear_and_every_piece_stands_on_it(pieces: list[str]) -> None:
    job = job_of(*pieces)
    plan = answer(ask([job], read_rack(RACK)), Effort(0.2))
    sheet = cutting_sheet([job], plan)
    for page in sheet.pages:
        assert isinstance(page, Page)
        assert crowded(page) == []
        assert outside(page) == []
        assert not in_title_block(page)
    said = [text for page in page_texts(sheet) for text in page]
    for blank in plan.question.blanks:
        assert blank.mark in said
