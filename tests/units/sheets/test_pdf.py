"""Sheets as PDF, read back with pypdfium2."""

from __future__ import annotations

import numpy as np
import pypdfium2
import pytest

from gageline.errors import GagelineError
from gageline.sheets import Circle, Ink, Line, Page, Paper, Polygon, Sheet, Text, Typeset, literal, to_pdf

SHEET = Sheet(
    (
        Page((Text(20, 30, "18'-7 1/4\" \\ #[x] $ * _ @"), Line(0, 0, 9, 9), Circle(50, 50, 9))),
        Page((Text(20, 30, "far side", rotation=90),), Paper.A4, landscape=True),
    ),
    title='Card "B4"',
)


def test_pages_have_their_exact_sizes_and_texts() -> None:
    pdf = pypdfium2.PdfDocument(to_pdf(SHEET))
    sizes = [(page.get_width() * 25.4 / 72, page.get_height() * 25.4 / 72) for page in pdf]
    assert sizes == [pytest.approx((215.9, 279.4), abs=1e-3), pytest.approx((297, 210), abs=1e-3)]
    assert [page.get_textpage().get_text_range() for page in pdf] == [
        "18'-7 1/4\" \\ #[x] $ * _ @",
        "far side",
    ]
    assert pdf.get_metadata_dict()["Title"] == 'Card "B4"'


def test_lines_are_full_size_on_every_paper_and_stand_under_the_texts() -> None:
    """Templates are laid on steel: 150 mm on the page are 150 mm in the file."""
    line, fill = Line(20, 40, 170, 40), Polygon(((20, 60), (60, 60), (60, 80), (20, 80)), None, Ink.BLACK)
    texts = Text(30, 75, "over", ink=Ink.WHITE)
    for paper in (Paper.LETTER, Paper.A3):
        pdf = pypdfium2.PdfDocument(to_pdf(Sheet((Page((texts, line, fill), paper),))))
        # ten pixels for a millimetre
        dark = np.asarray(pdf[0].render(scale=10 * 25.4 / 72).to_pil().convert("L")) < 128
        (along,) = np.nonzero(dark[395:405].any(axis=0))
        assert (along[0] / 10, along[-1] / 10) == pytest.approx((20, 170), abs=0.3)
        assert not dark[600:800, 300:450].all()  # the text is read, though it was drawn before the fill


def test_the_same_sheet_gives_the_same_bytes() -> None:
    assert to_pdf(SHEET) == to_pdf(SHEET)


def test_only_the_fonts_of_the_sheets_are_used() -> None:
    pdf = to_pdf(SHEET)
    assert b"IBMPlexSansCond" in pdf
    assert b"Libertinus" not in pdf


def test_formulas_can_be_typeset_between_drawn_pages() -> None:
    formula = "$ phi R_n = 0.75 dot 0.6 F_u A_(n v) $"
    source = f"= Shear\n{formula} #{literal('18 # deep')}"
    pdf = pypdfium2.PdfDocument(to_pdf(Sheet((*SHEET.pages, Typeset(source)))))
    assert len(pdf) == 3
    assert "18 # deep" in pdf[2].get_textpage().get_text_range()


def test_source_that_cannot_be_set_is_refused() -> None:
    with pytest.raises(GagelineError, match='sheet "odd" cannot be set'):
        to_pdf(Sheet((Typeset("#nothing-like-that()"),), title="odd"))
