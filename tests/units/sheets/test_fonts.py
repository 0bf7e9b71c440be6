"""Text widths and characters that the font lacks."""

from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.sheets import FONT_FILES, FONT_FOLDER, Weight, text_width
from gageline.sheets.fonts import font_metrics


def test_figures_are_tabular() -> None:
    for weight in Weight:
        assert len({text_width(figure, 10, weight) for figure in "0123456789"}) == 1


def test_width_grows_with_size() -> None:
    assert text_width("18'-7 1/4\"", 20) == pytest.approx(2 * text_width("18'-7 1/4\"", 10))


def test_a_figure_of_72_points_is_as_wide_as_the_font_says() -> None:
    # The font's own table: a figure advances 540 of 1000 units; 72 pt are 25.4 mm.
    assert text_width("7", 72) == pytest.approx(0.540 * 25.4)


def test_nothing_has_no_width() -> None:
    assert text_width("", 10) == 0


def test_metrics_are_fractions_of_the_size() -> None:
    for weight in Weight:
        metrics = font_metrics(weight)
        assert 0.6 < metrics.cap_height < metrics.ascent < 1
        assert metrics.ascent + metrics.descent == pytest.approx(1)


def test_the_font_files_are_installed() -> None:
    assert all((FONT_FOLDER / name).is_file() for name in FONT_FILES.values())


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("hole ⌀13/16", r'text "hole ⌀13/16" has the character \'⌀\' \(U\+2300\).*write Ø instead'),
        ("7\u20091/4", "write a plain space instead"),
        ("漢", "write it in letters that the font has instead"),
        ("one\ntwo", "write a text of one line each instead"),
    ],
)
def test_a_character_without_a_glyph_is_refused_with_a_remedy(text: str, message: str) -> None:
    with pytest.raises(ValueProblem, match=message):
        text_width(text, 10)
