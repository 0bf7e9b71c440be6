from itertools import combinations

import pytest
from shapely import Polygon as Flat

from gageline.job import Job, read_job
from gageline.layout import lay_out
from gageline.sheets import (
    FINE,
    Draft,
    Heading,
    Page,
    Paper,
    bench_cards,
    bind,
    extent,
    piece_drawings,
    practice_rows,
    text_box,
    texts,
)
from gageline.sheets.furniture import fitted, paper_of, practice_block, space
from jobs import job_of
from pages import page_texts

DOCUMENT = """
[job]
name = "{name}"
number = "7"
place = "Nowhere"
made_by = "tester"
date = 2026-01-02
{more}

[[piece]]
mark = "B1"
stock = "W16x26"
length = "10'-0"
"""


def job(name: str = "A shed", more: str = "") -> Job:
    return read_job(DOCUMENT.format(name=name, more=more))


def page(made: Job, heading: Heading, *, landscape: bool = True) -> Page:
    made_page = bind(made, "test", [Draft(heading, (), landscape=landscape)]).pages[0]
    assert isinstance(made_page, Page)
    return made_page


@pytest.mark.parametrize(
    ("more", "paper"),
    [("", Paper.LETTER), ('units = "mm"', Paper.A4), ('sheet = "a4"', Paper.A4)],
)
def test_the_paper_follows_the_units_unless_it_is_named(more: str, paper: Paper) -> None:
    assert paper_of(job(more=more)) is paper


def test_the_title_block_says_what_the_sheet_is() -> None:
    heading = Heading("Piece drawing", "B3", 2, "B2", "W16X31 A992", "Scale 1:10")
    said = {text.text for text in texts(page(job(), heading).items)}
    assert {
        "B3", "2 wanted", "Opposite hand of B2", "Piece drawing", "W16X31 A992", "Scale 1:10",
        "A shed", "Job 7", "Nowhere", "Made by tester, 2026-01-02", "Units: feet and inches", "Sheet 1 of 1",
    } <= said  # fmt: skip
    assert any("not checked" in text for text in said)


def test_the_title_block_names_pieces_with_errors_that_are_on_the_sheet() -> None:
    draft = Draft(Heading("Framing plan"), (), landscape=True)
    made = bind(job(), "test", [draft], ("B4", "G2")).pages[0]
    assert isinstance(made, Page)
    assert {"Do not build: errors in", "B4, G2"} <= {text.text for text in texts(made.items)}
    many = bind(job(), "test", [draft], tuple(f"B{n}" for n in range(99))).pages[0]
    assert isinstance(many, Page)
    assert "…" in {text.text for text in texts(many.items)}


@pytest.mark.parametrize(
    ("facts", "said"),
    [
        ('made_by = "tester"\n', "Made by tester"),
        ("date = 2026-01-02\n", "2026-01-02"),
        ("", None),
    ],
)
def test_the_maker_and_the_date_are_said_where_they_are_given(facts: str, said: str | None) -> None:
    given = 'made_by = "tester"\ndate = 2026-01-02\n'
    made = read_job(DOCUMENT.replace(given, facts).format(name="A shed", more=""))
    found = [text.text for text in texts(page(made, Heading("Card")).items)]
    assert [text for text in found if "Made by" in text or "2026" in text] == ([said] if said else [])


@pytest.mark.parametrize("landscape", [True, False])
def test_the_longest_names_stay_in_their_cells_and_inside_the_paper(landscape: bool) -> None:
    heading = Heading("Piece drawing", "M" * 24, 9999, "W" * 24, "HSS20X12X0.625 A500-C", "Scale 1:10")
    made = page(job("Wide name of a job " * 4), heading, landscape=landscape)
    boxes = [Flat(text_box(text)) for text in texts(made.items)]
    assert not any(a.intersects(b) for a, b in combinations(boxes, 2))
    box = extent(made.items)
    assert box.left >= made.frame.left - 1e-6
    assert box.right <= made.frame.right + 1e-6
    assert box.bottom <= made.frame.bottom + 1e-6


def test_drawing_room_ends_above_the_title_block() -> None:
    room = space(job())
    assert room.bottom < page(job(), Heading("Card"), landscape=False).frame.bottom - 20


def test_a_text_too_long_is_made_smaller_then_cut() -> None:
    assert fitted("short", 100, FINE).size == FINE
    assert fitted("a little too long a text", 20, FINE).size < FINE
    assert fitted("x" * 200, 25, FINE).text.endswith("…")


def test_every_default_of_the_practice_is_named() -> None:
    rows = dict(practice_rows(job(more='units = "mm"')))
    assert rows["tape"] == "1"
    assert rows["bolts"] == "M20 8.8"
    assert rows["holes"] == "standard"
    assert rows["cope radius"] == "12"
    assert len(rows) == 13
    block = practice_block(job(), 120)
    said = " ".join(text.text for text in texts(block.items))
    assert 'first row down 3"' in said
    assert extent(block.items).right <= 120


def test_a_sheet_of_a_piece_in_millimetres_says_so_in_a_job_of_feet_and_inches() -> None:
    job = job_of(
        'mark = "M1"\nstock = "IPE 300"\nlength = "4200 mm"\n',
        'mark = "B1"\nstock = "W16x26"\nlength = "10\'"\n',
    )
    layouts = tuple(lay_out(piece, job.practice, job.system) for piece in job.assemblies)
    for sheet in (piece_drawings(job), bench_cards(job, layouts)):
        units = [next(text for text in page if text.startswith("Units:")) for page in page_texts(sheet)]
        assert list(dict.fromkeys(units)) == ["Units: millimetres", "Units: feet and inches"]
