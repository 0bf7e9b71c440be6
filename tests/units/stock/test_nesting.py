"""The order of pieces in a stick, and angled ends back to back."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, sqrt

from gageline.stock import End, Piece, Steel
from gageline.stock.nesting import arrange
from gageline.units import Length

BEAM = Steel("W12X26")
SLOPE = End(Length.from_inches(12), Length.from_inches(12))


def piece(mark: str, inches: float, left: bool = False, right: bool = False) -> Piece:
    square = End()
    return Piece(
        mark, BEAM, Length.from_inches(inches), 1, SLOPE if left else square, SLOPE if right else square
    )


def test_longest_first_and_equal_ones_together() -> None:
    row = arrange([piece("A", 30), piece("B", 60), piece("C", 30), piece("D", 60)])
    assert [w.piece.mark for w in row] == ["B", "D", "A", "C"]


def test_a_chain_of_angled_ends_starts_and_ends_square() -> None:
    row = arrange(
        [
            piece("A", 30, left=True),
            piece("B", 60),
            piece("C", 40, left=True, right=True),
            piece("D", 50, left=True),
        ]
    )
    assert [w.shares for w in row].count(True) == 2
    chain = [w for w in row if w.piece.mark != "B"]
    assert not chain[0].first.angled
    assert not chain[-1].last.angled


def test_different_slopes_do_not_share() -> None:
    steep = replace(SLOPE, run=Length.from_inches(6))
    row = arrange([piece("A", 30, right=True), replace(piece("B", 40), left=steep)])
    assert [w.shares for w in row] == [False, False]


def test_kerf_at_45_degrees_is_longer_by_the_root_of_two() -> None:
    kerf = Length.from_inches(0.125)
    assert SLOPE.kerf(kerf).ticks == ceil(kerf.ticks * sqrt(2))
    assert End().kerf(kerf) == kerf
