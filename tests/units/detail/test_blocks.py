from __future__ import annotations

import pytest

from gageline.detail.blocks import blocks_of
from gageline.job import stock_named
from gageline.part import HERE, Cope, End, EndCut, Face, FlangeTrim, Part, Placement, Side
from gageline.units import SQUARE, ZERO, Length, System, parse_length, parse_slope


def part(name: str, length: str = "100", **keys: object) -> Part:
    stock = stock_named(name, System.FT_IN)
    return Part("B", stock, "A992", parse_length(length), **keys)  # type: ignore[arg-type] # fields of a part


def test_a_plate_is_one_block() -> None:
    (block,) = blocks_of(part("PL1/2x8", "20"), HERE)
    assert (block.low, block.high) == ((0, 0, -0.5), (20, 8, 0))


def test_an_angle_is_its_two_legs() -> None:
    upright, level = blocks_of(part("L4x3x1/4", "10"), HERE)
    assert upright.high[1] - upright.low[1] == pytest.approx(4)
    assert upright.high[2] - upright.low[2] == pytest.approx(0.25)
    assert level.high[1] - level.low[1] == pytest.approx(0.25)
    assert level.high[2] - level.low[2] == pytest.approx(3)


def test_a_beam_is_a_web_and_four_halves_of_flanges() -> None:
    blocks = list(blocks_of(part("W16x26"), HERE))
    assert len(blocks) == 5
    # W16X26: d 15.7, bf 5.50, tw 0.250
    assert {block.high[1] - block.low[1] for block in blocks} >= {15.7}
    assert sorted({round(block.high[2] - block.low[2], 3) for block in blocks}) == [0.25, 2.75]


def test_a_cope_takes_off_flange_and_web() -> None:
    cope = Cope(End.LEFT, Face.TOP, parse_length("4"), parse_length("2"), parse_length("1/2"))
    blocks = list(blocks_of(part("W16x26", copes=(cope,)), HERE))
    web = [block for block in blocks if block.high[2] - block.low[2] < 1]
    assert [(round(one.low[0], 6), round(one.high[1], 6)) for one in web] == [(4, 15.7), (0, 13.7)]
    assert [round(one.low[0], 6) for one in blocks if one.low[1] > 14] == [4, 4]


def test_a_trim_takes_off_one_side_of_a_flange() -> None:
    trim = FlangeTrim(End.RIGHT, Face.BOTTOM, Side.NEAR, parse_length("6"), ZERO)
    ends = {
        round(block.high[0], 6): block.high[2] > 1
        for block in blocks_of(part("W16x26", trims=(trim,)), HERE)
        if block.high[1] < 1
    }
    assert ends == {94: True, 100: False}


def test_a_mitred_flange_is_cut_in_strips() -> None:
    mitred = part("W16x26", left=EndCut(SQUARE, parse_slope("12 in 12")))
    starts = sorted(round(block.low[0], 3) for block in blocks_of(mitred, HERE) if block.low[1] > 14)
    assert len(starts) == 8
    assert starts[0] == pytest.approx(5.5 / 8, abs=1e-3)
    assert starts[-1] == pytest.approx(5.5, abs=1e-3)


def test_a_block_stands_where_its_part_stands() -> None:
    there = Placement((Length.from_inches(10), ZERO, ZERO), (0, 1, 0), (0, 0, 1))
    (block,) = blocks_of(part("PL1/2x8", "20"), there)
    assert block.low == pytest.approx((9.5, 0, 0))
    assert block.high == pytest.approx((10, 20, 8))
