"""Where texts land, measured in the printed PDF; and what SVG and PDF say."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pypdfium2
from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.sheets import (
    Anchor,
    Group,
    Level,
    Page,
    Sheet,
    Text,
    Weight,
    text_box,
    text_width,
    to_pdf,
    to_svg,
    wrap,
)
from gageline.sheets.fonts import font_metrics

PRINTABLE = "".join(
    sorted(c for c in font_metrics(Weight.REGULAR).advances if " " <= c <= "~" or c in "Ø°±×½¼¾")
)
words = st.text(PRINTABLE, min_size=1, max_size=20)
texts_anywhere = st.builds(
    Text,
    st.floats(90, 120),
    st.floats(120, 160),
    words.filter(str.strip),
    st.sampled_from([8.0, 10.0, 18.0]),
    st.sampled_from(Weight),
    st.sampled_from(Anchor),
    st.sampled_from(Level),
    st.floats(-180, 360),
)


@settings(max_examples=60, deadline=None)
@given(texts_anywhere)
def test_the_printed_glyphs_lie_in_the_box_and_fill_its_length(text: Text) -> None:
    page = pypdfium2.PdfDocument(to_pdf(Sheet((Page((text,)),))))[0]
    textpage = page.get_textpage()
    box = text_box(text)
    xs, ys = [x for x, _ in box], [y for _, y in box]
    printed = []
    for index in range(textpage.count_chars()):
        left, bottom, right, top = (v * 25.4 / 72 for v in textpage.get_charbox(index, loose=True))
        printed += [(left, 279.4 - top), (right, 279.4 - bottom)]
    # The reader's loose boxes are upright and as high as the font's own line: 0.35 em of play covers them.
    play = 0.35 * text.size * 25.4 / 72
    assert min(xs) - play <= min(x for x, _ in printed)
    assert max(x for x, _ in printed) <= max(xs) + play
    assert min(ys) - play <= min(y for _, y in printed)
    assert max(y for _, y in printed) <= max(ys) + play


@settings(max_examples=60, deadline=None)
@given(words.filter(lambda w: w == w.strip()), st.sampled_from([8.0, 10.0, 18.0]), st.sampled_from(Weight))
def test_the_width_is_the_printed_one(word: str, size: float, weight: Weight) -> None:
    items = (
        Text(30, 50, word, size, weight),
        Text(30 + text_width(word, size, weight), 50, "I", size, weight),
    )
    alone = (Text(30, 50, word + "I", size, weight),)
    together, apart = (
        pypdfium2.PdfDocument(to_pdf(Sheet((Page(x),))))[0].get_textpage() for x in (alone, items)
    )
    ends = [page.get_charbox(page.count_chars() - 1) for page in (together, apart)]
    # A PDF gives glyph widths in whole thousandths of the size; what is cut off each adds up along the word.
    play = 0.02 + 0.001 * size * len(word)
    assert abs(ends[0][0] - ends[1][0]) < play
    assert abs(ends[0][2] - ends[1][2]) < play


@settings(max_examples=60, deadline=None)
@given(st.lists(words, min_size=1, max_size=8))
def test_svg_is_well_formed_and_says_every_text(several: list[str]) -> None:
    items = tuple(Text(20, 20 + 10 * i, word) for i, word in enumerate(several))
    root = ET.fromstring(to_svg(Page((Group(items, dx=3),))))  # noqa: S314 our own text
    assert [element.text for element in root.iter("{http://www.w3.org/2000/svg}text")] == several


@settings(max_examples=30, deadline=None)
@given(st.lists(words.filter(lambda w: w == " ".join(w.split())), min_size=1, max_size=6))
def test_pdf_has_a_page_for_each_and_says_every_text(several: list[str]) -> None:
    pdf = pypdfium2.PdfDocument(to_pdf(Sheet(tuple(Page((Text(20, 20, word),)) for word in several))))
    assert [page.get_textpage().get_text_range() for page in pdf] == several


@settings(max_examples=200, deadline=None)
@given(st.text(PRINTABLE, max_size=120), st.floats(8, 120))
def test_wrapped_lines_fit_and_lose_nothing(text: str, width: float) -> None:
    lines = wrap(text, width, 10)
    assert all(text_width(line, 10) <= width + 1e-6 for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())
