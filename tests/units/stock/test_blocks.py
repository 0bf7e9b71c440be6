"""Blocks: every one lies within its sizes, is cut edge to edge, and keeps waste, demand and grain."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest

from gageline.stock.blocks import Blocks, build_blocks
from gageline.stock.rectangles import Box, Room
from plates import cut_apart

SHEET = Room(0, 0, 120, 60)


def built(boxes: list[Box], demand: list[int], waste: float, room: Room = SHEET, seed: int = 1) -> Blocks:
    return build_blocks(room, boxes, np.array(demand), waste, np.random.default_rng(seed))


def cut_free(pieces: list[Room]) -> bool:
    """Whether straight cuts that meet no piece take the pieces apart."""
    if len(pieces) == 1:
        return True
    for place in sorted({p.x for p in pieces}):
        low = [p for p in pieces if p.x + p.along <= place]
        high = [p for p in pieces if p.x >= place]
        if low and high and len(low) + len(high) == len(pieces):
            return cut_free(low) and cut_free(high)
    for place in sorted({p.y for p in pieces}):
        low = [p for p in pieces if p.y + p.across <= place]
        high = [p for p in pieces if p.y >= place]
        if low and high and len(low) + len(high) == len(pieces):
            return cut_free(low) and cut_free(high)
    return False


@pytest.mark.parametrize("waste", [0.0, 0.05, 0.4])
@pytest.mark.parametrize("seed", range(4))
def test_every_block_is_what_it_says(seed: int, waste: float) -> None:
    boxes = cut_apart(seed, 6)
    demand = [1, 2, 3, 1, 2, 1]
    blocks = built(boxes, demand, waste)
    assert len(blocks) > len(boxes)
    for number in range(len(blocks)):
        whole = Room(7, 3, int(blocks.along[number]), int(blocks.across[number]))
        placed = blocks.pieces(number, 7, 3)
        rooms = [room for _, room in placed]
        counts = Counter(kind for kind, _ in placed)
        assert all(whole.holds(room) for room in rooms)
        assert not any(one.meets(other) for one, other in combinations(rooms, 2))
        assert cut_free(rooms)
        assert [counts[i] for i in range(6)] == blocks.counts[number].tolist()
        assert all(counts[i] <= n for i, n in enumerate(demand))
        assert all((room.along, room.across) in boxes[kind].ways() for kind, room in placed)
        area = sum(room.along * room.across for room in rooms)
        assert blocks.area[number] == area
        assert whole.along * whole.across - area <= waste * SHEET.along * SHEET.across
        assert whole.along <= SHEET.along
        assert whole.across <= SHEET.across


@pytest.mark.parametrize("seed", range(6))
def test_a_sheet_cut_apart_is_put_together_again(seed: int) -> None:
    boxes = cut_apart(seed, 10)
    blocks = built(boxes, [1] * 10, 0.0)
    assert blocks.area.max() == SHEET.along * SHEET.across


def test_no_block_comes_twice() -> None:
    blocks = built(cut_apart(2, 8), [2] * 8, 0.05)
    sizes = zip(blocks.along.tolist(), blocks.across.tolist(), blocks.counts.tolist(), strict=True)
    seen = Counter((along, across, tuple(counts)) for along, across, counts in sizes)
    assert set(seen.values()) == {1}


def test_equal_pieces_make_grids() -> None:
    blocks = built([Box(10, 7, grain=True)], [40], 0.0)
    sizes = set(zip(blocks.along.tolist(), blocks.across.tolist(), strict=True))
    assert (50, 56) in sizes  # 5 by 8
    assert max(blocks.counts[:, 0]) == 40


def test_grain_is_kept_and_pieces_too_large_or_not_wanted_are_left_out() -> None:
    tall = Box(30, 70, grain=False)
    assert built([replace(tall, grain=True)], [1], 0.0).along.tolist() == []
    assert built([tall], [1], 0.0).along.tolist() == [70]
    assert built([tall], [0], 0.0).along.tolist() == []


def test_the_same_chance_gives_the_same_blocks() -> None:
    boxes = [Box(11 + k, 7 + k % 5, grain=False) for k in range(20)]
    one, other = (built(boxes, [3] * 20, 0.03) for _ in range(2))
    assert one.counts.tolist() == other.counts.tolist()
