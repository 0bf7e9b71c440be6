"""Fitting cards at full size."""

from __future__ import annotations

import math
from importlib.resources import files
from itertools import combinations
from pathlib import Path

import pypdfium2
import pytest

from gageline.job import Job, open_job, read_job
from gageline.sheets import Circle, Page, fitting_templates, leaves, texts, to_pdf

HEAD = '[job]\nname = "A shed"\n'
PLATE = """
[[piece]]
mark = "P9"
quantity = 3
stock = "PL3/8x6"
length = "8"

[[piece.holes]]
name = "holes"
x = ["2", "5"]
rows = 2
pitch = "2 1/2"
down = "1 3/4"
"""


def pages_of(job: Job) -> list[Page]:
    return [page for page in fitting_templates(job).pages if isinstance(page, Page)]


def centres(page: Page) -> list[tuple[float, float]]:
    return [(item.x + dx, item.y + dy) for item, dx, dy in leaves(page.items) if isinstance(item, Circle)]


def test_holes_lie_as_far_apart_on_the_paper_as_on_the_steel() -> None:
    (page,) = pages_of(read_job(HEAD + PLATE))
    apart = sorted(math.dist(one, two) for one, two in combinations(centres(page), 2))
    diagonal = math.hypot(2.5, 3)
    assert apart == pytest.approx([d * 25.4 for d in (2.5, 2.5, 3, 3, diagonal, diagonal)], abs=0.01)


def test_the_card_says_size_section_quantity_and_warns_against_scaling() -> None:
    (page,) = pages_of(read_job(HEAD + PLATE))
    said = [text.text for text in texts(page.items)]
    assert {"P9", "3 wanted", "PL3/8X6 A572-50", "Full size, scale 1:1"} <= set(said)
    assert {'13/16"', 'end 2"', 'top 1 3/4"'} <= set(said)
    assert any(text.startswith("Full size: print at 100 %, not fitted to the page.") for text in said)


def test_the_pdf_itself_is_at_full_size() -> None:
    """The horizontal arm of a hole's cross is 13/16 in + 8 mm long in the PDF's own points."""
    document = pypdfium2.PdfDocument(to_pdf(fitting_templates(read_job(HEAD + PLATE))))
    assert document[0].get_size() == pytest.approx((8.5 * 72, 11 * 72), abs=0.01)
    widths = [b[2] - b[0] for b in (item.get_bounds() for item in document[0].get_objects())]
    wanted = (13 / 16 * 25.4 + 8) / 25.4 * 72
    pen = 0.7 / 25.4 * 72
    assert any(abs(width - wanted) < pen + 0.05 for width in widths)


def test_a_plate_larger_than_the_paper_goes_on_pages_that_overlap() -> None:
    job = read_job(HEAD + PLATE.replace('"PL3/8x6"', '"PL3/8x14"').replace('"8"', '"14"'))
    pages = pages_of(job)
    assert len(pages) == 4
    said = [text.text for page in pages for text in texts(page.items)]
    assert "joins column 2 here" in said
    assert "joins row 1 here" in said
    assert sum(text.startswith("Row ") and "Print at 100 %" in text for text in said) == 4


def test_holes_too_near_for_notes_come_with_a_table() -> None:
    tight = PLATE.replace('"2", "5"', '"1", "2", "3", "4", "5", "6", "7"').replace("rows = 2", "rows = 4")
    pages = pages_of(
        read_job(HEAD + tight.replace('pitch = "2 1/2"', 'pitch = "1"').replace('"1 3/4"', '"1 1/2"'))
    )
    said = [text.text for text in texts(pages[-1].items)]
    assert "From the top edge" in said
    assert "28" in said


def test_a_job_without_fittings_says_so() -> None:
    beam = '[[piece]]\nmark = "B1"\nstock = "W16x26"\nlength = "10\'-0"\n'
    (page,) = pages_of(read_job(HEAD + beam))
    assert "No fitting of this job needs a template." in [text.text for text in texts(page.items)]


@pytest.mark.parametrize("name", ["mezzanine", "metric"])
def test_every_drilled_angle_and_plate_of_the_demo_has_its_card(name: str) -> None:
    job = open_job(Path(str(files("gageline") / "demo" / f"{name}.toml")))
    marks = {page.title.split()[0] for page in pages_of(job)}
    drilled = {f.part.mark for a in job.assemblies for f in a.fittings if f.part.groups}
    assert drilled <= marks


@pytest.mark.parametrize(
    ("cut", "words"),
    [
        # a plate 3/8 thick at 20°: 0.375 tan 20° = 0.136, on the tape 1/8
        ('mitre = "20°", long_side = "far"', 'Left end, 1/8" in from the long point'),
        ('mitre = "20°", long_side = "near"', "Left end"),
        ('bevel = "3 in 12"', "Left end"),
    ],
)
def test_an_end_that_is_not_square_still_says_that_it_is_the_left(cut: str, words: str) -> None:
    """A template laid end for end drills every hole in the wrong place."""
    cut_plate = PLATE.replace("\n[[piece.holes]]", f"left = {{ {cut} }}\n\n[[piece.holes]]")
    (page,) = pages_of(read_job(HEAD + cut_plate))
    assert words in [text.text for text in texts(page.items)]
