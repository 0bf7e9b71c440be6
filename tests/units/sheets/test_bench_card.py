"""Cards of the two demo jobs; every number worked out by hand from the job file."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from importlib.resources import files
from itertools import pairwise
from pathlib import Path

import pypdfium2
import pytest

from assembling import bay, detailed
from frames import demo_frame
from gageline.errors import ValueProblem
from gageline.job import Job, JobFacts, default_practice, open_job, read_job
from gageline.layout import Layout, lay_out
from gageline.part import Assembly
from gageline.sheets import BODY, FINE, Page, bench_cards, texts, to_pdf
from gageline.sheets.bench_card import _seat_row
from gageline.units import System
from pages import page_texts
from pieces import at, piece

DEMOS = ("mezzanine", "metric")


@cache
def demo(name: str) -> tuple[Job, tuple[Layout, ...]]:
    job = open_job(Path(str(files("gageline") / "demo" / f"{name}.toml")))
    return job, tuple(lay_out(piece, job.practice, job.system) for piece in job.assemblies)


@cache
def cards(name: str) -> tuple[tuple[Page, str], ...]:
    """Each page and the text that can be read out of its PDF."""
    sheet = bench_cards(*demo(name))
    pdf = pypdfium2.PdfDocument(to_pdf(sheet))
    said = [" ".join(page.get_textpage().get_text_range().split()) for page in pdf]
    pages = [page for page in sheet.pages if isinstance(page, Page)]
    return tuple(zip(pages, said, strict=True))


def layouts_of(name: str, mark: str) -> list[list[str]]:
    """The texts of a piece's pages as they stand there, without inch marks and the side of a line."""
    pages = [page for page, _ in cards(name) if page.title.startswith(f"{mark} ")]
    return [[text.text.split('"')[0].split(" near")[0] for text in texts(page.items)] for page in pages]


def printed(name: str, mark: str) -> str:
    return " ".join(said for page, said in cards(name) if page.title.startswith(f"{mark} "))


@pytest.mark.parametrize("name", DEMOS)
def test_every_reading_of_every_step_can_be_read_from_the_pdf(name: str) -> None:
    _, layouts = demo(name)
    for layout in layouts:
        for laid in (layout.main, *layout.fittings):
            said = printed(name, laid.part.mark)
            for step in laid.steps:
                for reading in step.readings:
                    assert reading.text in said, (laid.part.mark, step.title)


HAND = [
    # common practice, no source; inch marks left out
    # 18'-7 1/4 long; copes 4 x 1 1/2; rail posts at 2'-6 and every 4'-6, gage 3 1/2; angles L4x3 1/2
    # at 1/2 past the end, web gage 2: 1 1/2 in; rows 3, 6, 9; out to out 18'-7 1/4 + 1
    (
        "mezzanine",
        "B1",
        "4 | 18'-3 1/4 | 2'-6 | 7'-0 | 11'-6 | 16'-0 | 1 1/2 | 18'-5 3/4 | 3 | 6 | 9 | 18'-8 1/4",
    ),
    # 11'-4 5/8 long, W16x31 15 7/8 deep: right copes 5 from the end, opening 1'-2 x 5 in the middle,
    # hanger holes at middle + 6, 4 apart, and the angle on the far side 1 1/2 from the right end
    (
        "mezzanine",
        "B2",
        "4 1/4 | 1 3/4 | 10'-11 5/8 | 6 | 5'-8 5/16 | 5'-1 5/16 | 6'-3 5/16 | 5 7/16 | 10 7/16",
    ),
    ("mezzanine", "B2", "6'-0 5/16 | 6'-4 5/16 | 11'-3 1/8 | 11'-5 5/8"),
    # its opposite hand changes near and far, and no reading along it
    (
        "mezzanine",
        "B3",
        "4 1/4 | 1 3/4 | 10'-11 5/8 | 5'-1 5/16 | 6'-3 5/16 | 6'-0 5/16 | 11'-3 1/8 | 11'-5 5/8",
    ),
    # 14'-2 long: holes 2 1/2 from both ends, toe plate at 1'-0 and every 2'-10, cope 3 at the left
    ("mezzanine", "C1", "2 1/2 | 13'-11 1/2 | 1'-0 | 3'-10 | 6'-8 | 9'-6 | 12'-4 | 3 | 1 3/4"),
    # turned end for end: 14'-2 less each of these
    ("mezzanine", "C2", "1'-10 | 4'-8 | 7'-6 | 10'-4 | 13'-2 | 13'-11 | 2 1/2 | 13'-11 1/2"),
    # 10'-1 13/16 long, holes 1 1/2 and 4 from both ends, 1 3/4 from the heel
    ("mezzanine", "D1", "1 1/2 | 4 | 9'-9 13/16 | 10'-0 5/16 | 1 3/4"),
    # 1'-4 1/2 long: middle 8 1/4; 9 apart 3 3/4 and 1'-0 3/4; 4 apart 6 1/4 and 10 1/4
    ("mezzanine", "T1", "8 1/4 | 3 3/4 | 1'-0 3/4 | 6 1/4 | 10 1/4 | 2 3/4"),
    # 5340 long; copes 90 x 35; purlin cleats from 420 every 1500, gage 80; angles 10 past, gage 55
    ("metric", "R1", "90 | 35 | 5250 | 420 | 1920 | 3420 | 4920 | 40 | 45 | 5295 | 75 | 145 | 215 | 5360"),
    # 4175.5 long, read 4176; 7.5 degrees over 200 take 26.3 off the top: 4149
    ("metric", "E1", "4176 | 4149 | 65 | 135 | 28"),
    # turned over, near and far changed
    ("metric", "E2", "4176 | 4149 | 65 | 135 | 28"),
]


@pytest.mark.parametrize(("name", "mark", "readings"), HAND)
def test_the_readings_are_those_of_the_job_file(name: str, mark: str, readings: str) -> None:
    said = {word for laid in layouts_of(name, mark) for word in laid}
    for reading in readings.split(" | "):
        assert reading in said, reading


def test_a_card_says_quantity_hand_exactness_set_ups_and_practice() -> None:
    said = printed("mezzanine", "B3")
    assert "Opposite hand of B2" in said
    assert "1 wanted" in said
    assert 'Rounding to the 1/16" tape moves no mark more than 0.0' in said
    assert "Holes with tape and square: 8 placings. With the hole template: 3, which saves 5." in said
    assert 'Shop practice where nothing else is said: tape 1/16"' in said
    assert "4 wanted" in printed("mezzanine", "B1")


def test_fittings_are_listed_with_their_places_and_counted_over_the_job() -> None:
    assert 'left near angle L4X3-1/2X5/16 near web 1/2" 1 3/4" 3" bolted' in printed("mezzanine", "B1")
    _, layouts = demo("mezzanine")
    a1 = layouts[0].fittings[0].part.mark
    assert "16 wanted" in printed("mezzanine", a1)  # four on each of four beams


@pytest.mark.parametrize("name", DEMOS)
def test_steps_are_never_split_and_stand_under_their_heads(name: str) -> None:
    for page, _ in cards(name):
        found = list(texts(page.items))
        numbers = [text for text in found if text.text.startswith(" ") and text.size > BODY]
        heads = [text for text in found if text.text == "Do, and what the tape reads"]
        assert len(heads) == bool(numbers)
        assert all(heads[0].y < number.y for number in numbers)
        assert [int(number.text) for number in numbers] == sorted(int(number.text) for number in numbers)


@pytest.mark.parametrize("name", DEMOS)
def test_nothing_above_the_title_block_is_smaller_than_ten_points(name: str) -> None:
    for page, _ in cards(name):
        strip = page.frame.bottom - 24
        assert all(text.size >= BODY > FINE for text in texts(page.items) if text.y < strip)


def test_where_fittings_sit_never_stands_alone_on_a_page() -> None:
    job = demo_frame().job
    pieces = [job.piece(mark) for mark in ("P5", "G5", "B1")]
    sheet = bench_cards(job, [lay_out(piece, job.practice, job.system) for piece in pieces])
    listed = [page for page in page_texts(sheet) if "Fittings and where they sit" in page]
    assert len(listed) == len(pieces)
    assert all("Step" in page and page.index("Step") + 4 < len(page) for page in listed)


def test_pages_of_a_piece_follow_one_another() -> None:
    order = [page.title.split()[0] for page, _ in cards("mezzanine")]
    runs = [one for one, two in pairwise(["", *order]) if one != two]
    assert len(runs) == len(set(runs))


def test_more_rows_than_a_page_is_high_are_left_to_the_steps() -> None:
    rows = "\n".join(
        f'[[piece.holes]]\nname = "g{n}"\nx = "{6 + n * 4}"\ndown = "{2 + n * 0.4:.4f}"\nmates = false'
        for n in range(75)
    )
    job = read_job(f'[job]\nname = "x"\n[[piece]]\nmark = "B9"\nstock = "W40x149"\nlength = "60\'-0"\n{rows}')
    layout = lay_out(job.assemblies[0], job.practice, job.system)
    said = {
        text.text
        for page in bench_cards(job, [layout]).pages
        if isinstance(page, Page)
        for text in texts(page.items)
    }
    assert any("readings across in the steps" in text for text in said)
    assert {reading.text for step in layout.main.steps for reading in step.readings} <= said


def test_a_text_that_the_font_lacks_is_named() -> None:
    facts = JobFacts(name="Trial \u4e2d", units=System.FT_IN)
    job = Job(facts, default_practice(System.FT_IN), (Assembly(piece(), 1),))
    with pytest.raises(ValueProblem, match="cannot print"):
        bench_cards(job, [lay_out(job.assemblies[0], job.practice, job.system)])


def test_the_table_of_fittings_gives_a_tongue_on_its_cap() -> None:
    """PL3/8 x 4 3/8 on PL3/8 x 4 3/4: 4 3/8 out, 1 3/4 under the cap's top, 3 to its first row."""
    result = detailed(bay(beam="HSS8X4X1/4", girder="HSS16X8X3/8"))
    beam = next(one for one in result.assemblies if one.mark == "B1")
    layout = lay_out(beam, default_practice(System.FT_IN), System.FT_IN)
    rows = [_seat_row(layout, seat) for seat in layout.seats]
    cap, tongue = (fitting.part.mark for fitting in beam.fittings[:2])
    assert rows[0] == (cap, "left end cap", "PL3/8X4-3/4", "left end", '3/8"', '0"', "-", "welded")
    assert rows[1] == (tongue, "left tongue", "PL3/8X4-3/8", cap, '4 3/8"', '1 3/4"', '3"', "welded")


def test_the_table_of_fittings_says_what_is_measured_along_a_cut() -> None:
    result = detailed(bay(beam="HSS8X4X1/4", girder="HSS16X8X3/8"))
    beam = next(one for one in result.assemblies if one.mark == "B1")
    layout = lay_out(beam, default_practice(System.FT_IN), System.FT_IN)
    row = _seat_row(layout, replace(layout.seats[0], along_cut=True, first_row=-at("1")))
    assert row[4:7] == ('3/8"', '0" along the cut', '1" above along the cut')
    without_holes = _seat_row(layout, replace(layout.seats[0], along_cut=True))
    assert without_holes[4:7] == ('3/8"', '0" along the cut', "-")
