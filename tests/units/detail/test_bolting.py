from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import bolt_length
from gageline.detail.bolting import size_named
from gageline.steel import bolt
from gageline.units import Length, parse_length


@pytest.mark.parametrize(
    ("size", "grip", "washers", "length"),
    [
        # CISC's worked case: 7/8 in, plies 10 and 9.7 mm, no washer: 2 in; with one washer 2 1/4 in
        ("7/8", "0.776in", 0, "2"),
        ("7/8", "0.776in", 1, "2 1/4"),
        # 1 + 5/32 + 1 = 2.156
        ("3/4", "1", 1, "2 1/4"),
    ],
)
def test_bolt_lengths(size: str, grip: str, washers: int, length: str) -> None:
    assert bolt_length(bolt(size), parse_length(grip), washers) == parse_length(length)


def test_a_metric_bolt_is_rounded_up_to_five_millimetres() -> None:
    found = bolt_length(bolt("M20"), Length.from_mm(25))
    assert found.mm % 5 == 0
    assert found.mm >= 25 + bolt("M20").nut_height.mm


def test_field_bolts_are_listed_by_connection() -> None:
    result = detailed(bay())
    lists = [(one.connection, one.support, one.count) for one in result.field_bolts]
    assert lists == [("start of B1", "G1", 6), ("end of B1", "G2", 6)]
    # 5/16 + 0.400 + 5/32 + 1 = 1.869
    assert {one.length for one in result.field_bolts} == {parse_length("2")}


def test_shop_bolts_stay_with_the_piece() -> None:
    (piece,) = [one for one in detailed(bay()).assemblies if one.mark == "B1"]
    assert [(bolts.count, bolts.field) for bolts in piece.bolts] == [(3, False), (3, False)]


@pytest.mark.parametrize(("size", "words"), [("3/4", "3/4"), ("1", "1 in"), ("M20", "M20")])
def test_a_size_in_words(size: str, words: str) -> None:
    assert size_named(bolt(size)) == words
