from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest

from gageline.detail import open_full
from gageline.job import open_job, read_job
from gageline.sheets import Typeset, check_sheet, to_pdf
from gageline.strength import BelowLoads, check_strength
from gageline.strength.connection import Leeway

DEMO = Path(__file__).parents[3] / "src/gageline/demo/mezzanine.toml"


@pytest.fixture(scope="module")
def text() -> str:
    job = open_job(DEMO)
    pdf = pypdfium2.PdfDocument(to_pdf(check_sheet(job, check_strength(job))))
    return "\n".join(page.get_textpage().get_text_bounded() for page in pdf)


def test_it_shows_what_governs_with_capacity_clause_and_care(text: str) -> None:
    assert "35.64 / 48.75 kip = 0.73" in text
    assert "block shear of the beam web" in text
    assert "J4.3" in text
    assert "A licensed engineer answers for the" in text
    assert "Checked by" in text
    assert "seismic detailing" in text


def test_alike_connections_share_one_run_of_pages() -> None:
    job = open_job(DEMO)
    strength = check_strength(job)
    sheet = check_sheet(job, strength)
    assert len(sheet.pages) < len(strength.connections) + 1
    first = sheet.pages[0]
    assert isinstance(first, Typeset)
    assert "B1 left" in first.source
    assert "B1 right" in first.source


def test_names_from_the_document_are_shown_as_they_are() -> None:
    """Signs of typst in a job's name are text, not markup."""
    table = '[[piece]]\nmark = "B1"\nstock = "W16x26"\nlength = "9\'-0"\n'
    angles = 'angles = [{ end = "left", stock = "L4x3x5/16", rows = 3 }]\n'
    job = read_job(f"[job]\nname = '#sys.version $x$ \"q\" \\\\'\n{table}{angles}")
    pdf = pypdfium2.PdfDocument(to_pdf(check_sheet(job, check_strength(job))))
    assert "#sys.version $x$" in pdf[0].get_textpage().get_text_bounded()


def test_every_page_says_what_it_belongs_to_and_its_number() -> None:
    job = open_job(DEMO)
    pdf = pypdfium2.PdfDocument(to_pdf(check_sheet(job, check_strength(job))))
    for number, page in enumerate(pdf, 1):
        words = page.get_textpage().get_text_bounded()
        assert f"page {number} of {len(pdf)}" in words
        assert f"{job.facts.name}: checks of strength - " in words


def test_values_that_no_formula_gives_say_where_they_come_from(text: str) -> None:
    assert "coefficient of the group under that load" in text
    assert "of the tee that the cope leaves, without fillets" in text


def test_beams_columns_and_reactions_below_the_loads_are_on_the_last_pages() -> None:
    full = open_full(DEMO.parent / "mezzanine-frame.toml")
    strength = check_strength(full.job, detailed=full.detailed)
    below = BelowLoads("B1 left", 10.0, 14.0, "1.4D")
    last = check_sheet(full.job, replace(strength, below=(below,))).pages[-1]
    assert isinstance(last, Typeset)
    for words in ("Reactions", '$L_"b"$', "From G1", "At its base", "10.0 kip is given as the reaction"):
        assert words in last.source


def test_what_their_places_leave_to_change_makes_no_two_types_of_alike_connections() -> None:
    job = open_job(DEMO)
    strength = check_strength(job)
    told = tuple(
        replace(
            one,
            verdict=replace(
                one.verdict,
                connection=replace(one.verdict.connection, leeway=Leeway(9.0, number / 8, 0.0, 0.5, 0.5)),
            ),
        )
        for number, one in enumerate(strength.connections)
    )
    apart = check_sheet(job, replace(strength, connections=told))
    assert len(apart.pages) == len(check_sheet(job, strength).pages)
