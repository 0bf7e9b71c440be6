"""Text broken into lines."""

from __future__ import annotations

from gageline.sheets import text_width, wrap
from gageline.sheets.wrap import words


def test_a_short_text_stays_on_one_line() -> None:
    assert wrap("Square a line", 100, 10) == ["Square a line"]


def test_no_text_is_one_empty_line() -> None:
    assert wrap("", 100, 10) == [""]


def test_a_line_break_is_kept() -> None:
    assert wrap("one\ntwo  three", 100, 10) == ["one", "two three"]


def test_a_line_is_filled_as_far_as_it_goes() -> None:
    width = text_width("Square a line", 10)
    assert wrap("Square a line across", width, 10) == ["Square a line", "across"]
    assert wrap("Square a line across", width - 0.01, 10)[0] == "Square a"


def test_a_word_wider_than_the_column_is_broken() -> None:
    lines = wrap("W16x26W16x26", text_width("W16x26", 10), 10)
    assert lines == ["W16x26", "W16x26"]


def test_a_fraction_stays_with_its_inches() -> None:
    assert words("strike 18'-7 1/4\" down 1/2 from top") == [
        "strike",
        "18'-7 1/4\"",
        "down",
        "1/2",
        "from",
        "top",
    ]
    assert wrap("at 7 1/4", text_width("7 1/4", 10) + 0.1, 10) == ["at", "7 1/4"]
