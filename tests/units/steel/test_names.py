from __future__ import annotations

import pytest

from gageline.steel.names import clean, keys, word_and_sizes


@pytest.mark.parametrize(
    ("text", "cleaned"),
    [("w16×26", "W16X26"), ("  a  b ", "A B"), ("L4x3½", "L4X3 1/2"), ("3⁄8", "3/8"), ("W16–26", "W16-26")],
)
def test_text_is_cleaned(text: str, cleaned: str) -> None:
    assert clean(text) == cleaned


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("W16X26", ("W", [(16000, 16000), (26000, 26000)], "")),
        ("HSS6X6X5/16", ("HSS", [(6000, 6000), (6000, 6000), (312, 313)], "")),
        ("PIPE 3-1/2 XS", ("PIPE", [(3500, 3500)], "XS")),
        ("PIPE6SCH40", ("PIPE", [(6000, 6000)], "SCH40")),
        ("HE 200 A", ("HE", [(200000, 200000)], "A")),
    ],
)
def test_a_designation_comes_apart(text: str, parts: tuple[str, list[tuple[int, int]], str]) -> None:
    assert word_and_sizes(text) == parts


@pytest.mark.parametrize("text", ["", "16X26", "W", "WX", "W16XX26", "W1.2.3", "W1/0", "W16X26X"])
def test_what_is_no_designation_has_no_keys(text: str) -> None:
    assert word_and_sizes(text) is None
    assert keys(text) == []


def test_a_fraction_between_thousandths_is_filed_under_both() -> None:
    assert keys("HSS6X5/16") == ["HSS 6000X312", "HSS 6000X313"]
