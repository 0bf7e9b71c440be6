"""The looks that meaning rests on."""

from __future__ import annotations

import pytest

from gageline.sheets import BODY, Ink, Role
from gageline.sheets.style import HEX, STROKES


def luminance(colour: str) -> float:
    """Relative luminance (WCAG 2.1, definition of relative luminance)."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return sum(w * c for w, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def test_every_role_has_a_pen() -> None:
    assert set(STROKES) == set(Role)


def test_every_ink_has_a_colour() -> None:
    assert set(HEX) == set(Ink)


def test_a_mark_is_the_widest_line_and_the_only_one_in_the_accent() -> None:
    mark = STROKES[Role.MARK]
    others = [stroke for role, stroke in STROKES.items() if role is not Role.MARK]
    assert all(stroke.width < mark.width for stroke in others)
    assert [stroke for stroke in others if stroke.ink is Ink.ACCENT] == []
    assert mark.ink is Ink.ACCENT


@pytest.mark.parametrize("ink", [Ink.ACCENT, Ink.GREY])
def test_inks_of_text_stand_out_from_white_paper(ink: Ink) -> None:
    # WCAG 2.1, success criterion 1.4.6 (enhanced contrast): at least 7:1 for text
    assert 1.05 / (luminance(HEX[ink]) + 0.05) >= 7


def test_cards_are_set_in_ten_points() -> None:
    assert BODY >= 10
