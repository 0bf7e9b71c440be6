"""The cutting sheets of small jobs: what stands on them."""

from __future__ import annotations

import pytest

from gageline.part import End
from gageline.sheets import cutting_sheet
from gageline.sheets.notation import Scribe
from gageline.stock import Effort, answer, ask, read_rack
from jobs import job_of
from pages import all_texts, page_texts

RACK = """
[saw]
kerf = "1/8"
start_trim = "1/2"
keep = "2'"
[[held]]
mark = "R1"
stock = "W16x26"
length = "12'"
value = 1
heat = "7K2214"
[[buy]]
stock = "W16x26"
lengths = "20'"
each = 500
"""
SHEET = """
[saw]
kerf = "1/8"
[[sheet]]
thickness = "3/8"
grade = "A572-50"
length = 96
width = 48
each = 400
"""
BEAM = 'mark = "B1"\nquantity = {}\nstock = "W16x26"\nlength = "9\'-0"\n{}'


def said_of(count: int, more: str = "", rack: str = RACK) -> list[str]:
    job = job_of(BEAM.format(count, more))
    return [
        t
        for page in page_texts(cutting_sheet([job], answer(ask([job], read_rack(rack)), Effort(2.0))))
        for t in page
    ]


def test_heat_source_and_cuts_of_each_stick() -> None:
    said = said_of(3)
    assert "1: bought, heat ____________" in said
    assert "2: rack R1, heat 7K2214, drop D1" in said
    assert "9'-0 1/2\", 18'-0 5/8\"" in said  # trim 1/2 in, and a kerf of 1/8 in before the second
    assert "1 to 2" in said


def test_sticks_alike_are_drawn_once() -> None:
    said = said_of(9)
    assert any("sticks 1 to 4, alike: 20'-0\"" in text for text in said)
    assert [text for text in said if text.startswith("4: bought")]


def test_an_angled_end_says_which_way() -> None:
    said = " ".join(said_of(1, 'right = { bevel = "3 in 12", long = "top" }\n'))
    assert "end cut 3 in 12, long at" in said


@pytest.mark.parametrize("units", ["ft-in", "mm"])
@pytest.mark.parametrize(
    ("cut", "longer"),
    [
        ('bevel = "3 in 12", long = "top"', "toe of leg A"),
        ('bevel = "3 in 12", long = "bottom"', "heel"),
        ('mitre = "3 in 12", long_side = "near"', "heel"),
        ('mitre = "3 in 12", long_side = "far"', "toe of leg B"),
    ],
)
def test_an_angle_is_long_at_its_heel_or_a_toe_as_its_drawing_says(cut: str, longer: str, units: str) -> None:
    text = f'mark = "A1"\nstock = "L6x4x3/8"\nlength = "4\'-0"\nright = {{ {cut} }}\n'
    job = job_of(text, units=units)
    rack = read_rack('[saw]\nkerf = "1/8"\n[[buy]]\nstock = "L6x4x3/8"\nlengths = "20\'"\neach = 500\n')
    (drawn,) = (words for words in Scribe.of(job).end(job.piece("A1").main, End.RIGHT) if words)
    assert drawn.endswith(f"long at {longer}")
    said = all_texts(cutting_sheet([job], answer(ask([job], rack), Effort(2.0))))
    assert f"last end {drawn}" in " ".join(said)


def test_a_stick_cut_already_says_so() -> None:
    done = RACK + '[[done]]\nstick = "R1"\npieces = "B1"\n'
    assert any("stick 1: 12'-0\", cut already" in text for text in said_of(2, rack=done))


def test_several_jobs_share_the_sheets() -> None:
    jobs = [job_of(BEAM.format(1, "")), job_of(BEAM.format(2, ""))]
    said = [
        t
        for page in page_texts(cutting_sheet(jobs, answer(ask(jobs, read_rack(RACK)), Effort(2.0))))
        for t in page
    ]
    assert {"1 B1", "2 B1", "test, test"} <= set(said)


def test_the_trim_is_a_cut_to_tick_off_and_the_drop_is_named_in_the_picture() -> None:
    said = said_of(1)
    assert "trim" in said
    # 12 ft less 1/2 in, 9 ft and 1/8 in
    assert "drop D1, 2'-11 3/8\"" in said
    assert "trim" not in said_of(1, rack=RACK.replace('start_trim = "1/2"', ""))


def test_a_table_of_plates_says_its_sheet_on_every_page() -> None:
    job = job_of('mark = "s"\nquantity = 60\nstock = "PL3/8x5 1/2"\nlength = "8"')
    plan = answer(ask([job], read_rack(SHEET)), Effort(0.2))
    named = "PL3/8 A572-50, sheet 1: plates"
    pages = [page for page in page_texts(cutting_sheet([job], plan)) if "Along" in page]
    titles = [[text for text in page if text.startswith(named)] for page in pages]
    assert len(pages) > 1
    assert titles == [[named], *[[f"{named}, continued"]] * (len(pages) - 1)]


def test_a_shear_gets_its_cuts_in_order_and_a_torch_does_not() -> None:
    job = job_of('mark = "s"\nquantity = 2\nstock = "PL3/8x5 1/2"\nlength = "8"')
    shear = f'{SHEET}[burner]\nkerf = 0\ncut = "shear"\n'
    pages = page_texts(cutting_sheet([job], answer(ask([job], read_rack(shear)), Effort(0.2))))
    said = [text for page in pages for text in page]
    assert "PL3/8 A572-50, sheet 1: cuts of the shear, in their order" in said
    cut = said.index("Gives") + 1
    strip = ["1", "across", '5 1/2"', '5 1/2" along', '0"', "4'-0\""]
    first = ["2", "along", '8"', '8" up', '0"', '5 1/2"', "s"]
    last = ["3", "along", '8"', "1'-4\" up", '0"', '5 1/2"', "s"]
    assert said[cut : cut + 20] == [*strip, *first, *last]
    pages = page_texts(cutting_sheet([job], answer(ask([job], read_rack(SHEET)), Effort(0.2))))
    assert not [text for page in pages for text in page if "shear" in text]
