"""The bound of sheets: no packing known by its making costs less, and known answers."""

from __future__ import annotations

from random import Random

import pytest

from gageline.stock.layouts import Kind
from gageline.stock.rectangles import Box, Room
from gageline.stock.sheet_bound import sheet_bound
from gageline.stock.watch import start_watch
from plates import cut_apart


def kind(along: int, across: int, cents: int, limit: int | None = None) -> Kind:
    return Kind(Room(0, 0, along, across), cents, limit)


LARGE, SMALL = kind(120, 60, 1000), kind(60, 60, 550)


def bound(boxes: list[Box], demand: list[int], *kinds: Kind) -> int:
    return sheet_bound(boxes, demand, kinds, start_watch(5.0))


def test_area() -> None:
    assert bound([Box(30, 20, grain=False)], [24], LARGE) == 2000
    assert bound([Box(30, 20, grain=False)], [25], LARGE) == 3000
    # half a sheet more: a small one does for that
    assert bound([Box(30, 20, grain=False)], [25], LARGE, SMALL) == 2550


def test_pieces_of_which_no_two_share_a_sheet() -> None:
    # by area two sheets would hold the three of 62 x 40
    assert bound([Box(62, 40, grain=True)], [3], LARGE) == 3000
    assert bound([Box(62, 32, grain=False)], [3], LARGE) == 3000  # turned, 62 is more than the 60 across


def test_a_long_piece_fills_its_strip() -> None:
    # beside 100 of 120 nothing of 30 or more goes: 40 + 30 + 30 across need two sheets of 60, areas say one
    boxes = [Box(100, 36, grain=True), Box(100, 30, grain=True)]
    area = 100 * (36 + 30)
    assert area < 120 * 60
    assert bound(boxes, [1, 1], LARGE) == 2000


def test_a_limit_asks_for_the_dearer_sheet() -> None:
    assert bound([Box(60, 60, grain=True)], [5], LARGE, kind(60, 60, 400, 2)) == 2400
    assert bound([Box(60, 60, grain=True)], [5], LARGE, kind(60, 60, 400)) == 2000


@pytest.mark.parametrize("seed", range(30))
def test_no_packing_known_by_its_making_costs_less(seed: int) -> None:
    random = Random(seed)  # noqa: S311  # test data
    boxes: list[Box] = []
    cost = 0
    for number in range(random.randint(1, 4)):
        sheet = random.choice([LARGE, SMALL])
        cost += sheet.cents
        pieces = cut_apart(100 * seed + number, random.randint(1, 9), sheet.room.along, sheet.room.across)
        # a little taken off, so that sides do not add up
        boxes += [
            Box(
                max(1, b.along - random.randint(0, 2)),
                max(1, b.across - random.randint(0, 2)),
                random.random() < 0.5,
            )
            for b in pieces
        ]
    assert 0 < bound(boxes, [1] * len(boxes), LARGE, SMALL) <= cost
