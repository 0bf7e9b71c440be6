"""Filling one sheet: what fits fits, nothing overlaps, and a shear can make every cut."""

from __future__ import annotations

from itertools import combinations
from random import Random

import pytest

from gageline.stock.rectangles import Box, Room, fill_sheet

SHEET = Room(0, 0, 10, 10)


def filled(boxes: list[Box], order: list[int], *, shear: bool, rule: int = 0) -> list[tuple[int, Room]]:
    return fill_sheet([SHEET], boxes, order, shear=shear, rule=rule)


def cells(room: Room) -> set[tuple[int, int]]:
    return {(x, y) for x in range(room.x, room.x + room.along) for y in range(room.y, room.y + room.across)}


def sheared(rooms: list[Room], low: tuple[int, int], high: tuple[int, int]) -> bool:
    """Whether some straight cut crosses no room, and the two parts can be taken apart the same way."""
    if len(rooms) <= 1:
        return True
    for axis in (0, 1):
        for at in range(low[axis] + 1, high[axis]):
            ends = [((r.x, r.y)[axis], (r.x + r.along, r.y + r.across)[axis]) for r in rooms]
            if any(a < at < b for a, b in ends):
                continue
            sides = [
                [r for r, (_, b) in zip(rooms, ends, strict=True) if b <= at],
                [r for r, (a, _) in zip(rooms, ends, strict=True) if a >= at],
            ]
            if all(sides):
                cut = (at, high[1]) if axis == 0 else (high[0], at)
                start = (at, low[1]) if axis == 0 else (low[0], at)
                return sheared(sides[0], low, cut) and sheared(sides[1], start, high)
    return False


def test_rooms_that_hold_and_meet() -> None:
    room = Room(2, 2, 4, 4)
    assert room.holds(room)
    assert room.holds(Room(3, 2, 3, 4))
    assert not room.holds(Room(3, 2, 4, 4))
    assert not Room(3, 3, 1, 1).holds(room)
    assert room.meets(Room(5, 5, 9, 9))
    # a common edge or corner has no area
    assert not room.meets(Room(6, 2, 4, 4))
    assert not room.meets(Room(2, 6, 4, 4))
    assert not room.meets(Room(0, 2, 2, 4))
    assert not room.meets(Room(2, 0, 4, 2))


@pytest.mark.parametrize("shear", [False, True])
def test_four_quarters_fill_the_sheet(*, shear: bool) -> None:
    found = filled([Box(5, 5, grain=False)], [0] * 5, shear=shear)
    assert [i for i, _ in found] == [0] * 4
    assert set().union(*(cells(room) for _, room in found)) == cells(SHEET)


@pytest.mark.parametrize("shear", [False, True])
def test_grain_is_not_turned(*, shear: bool) -> None:
    room = Room(0, 0, 4, 10)
    assert fill_sheet([room], [Box(10, 4, grain=True)], [0], shear=shear, rule=0) == []
    assert fill_sheet([room], [Box(10, 4, grain=False)], [0], shear=shear, rule=0) == [(0, room)]


def test_a_kind_that_does_not_fit_does_not_stop_the_others() -> None:
    boxes = [Box(11, 1, grain=False), Box(10, 6, grain=False), Box(10, 4, grain=False)]
    found = filled(boxes, [0, 1, 1, 2, 0], shear=False)
    assert found == [(1, Room(0, 0, 10, 6)), (2, Room(0, 6, 10, 4))]


def test_the_rule_says_which_rest_stays_whole() -> None:
    # after 6 x 8 there is a strip of 4 at the right and of 2 above: only one of them can be 10 long
    right, above = Box(4, 10, grain=True), Box(10, 2, grain=True)
    for rule, whole in ((0, right), (1, above)):
        other = above if whole is right else right
        assert len(filled([Box(6, 8, grain=True), whole], [0, 1], shear=True, rule=rule)) == 2
        assert len(filled([Box(6, 8, grain=True), other], [0, 1], shear=True, rule=rule)) == 1
        # free cuts leave both strips whole
        assert len(filled([Box(6, 8, grain=True), other], [0, 1], shear=False, rule=rule)) == 2


def test_the_place_that_leaves_the_narrowest_strip_is_taken() -> None:
    # after 10 x 6 of 10 x 10 a strip of 4 is left: 4 x 3 leaves 1 above it as it lies, and none turned
    boxes = [Box(10, 6, grain=False), Box(4, 3, grain=False)]
    assert filled(boxes, [0, 1], shear=True)[1] == (1, Room(0, 6, 3, 4))


@pytest.mark.parametrize("shear", [False, True])
@pytest.mark.parametrize("seed", range(20))
def test_random_fillings_can_be_cut(seed: int, *, shear: bool) -> None:
    random = Random(seed)  # noqa: S311  # test data
    sheet = Room(0, 0, 24, 15)
    boxes = [Box(random.randint(2, 11), random.randint(2, 11), random.random() < 0.5) for _ in range(6)]
    order = [random.randrange(6) for _ in range(20)]
    found = fill_sheet([sheet], boxes, order, shear=shear, rule=seed % 2)
    assert len(found) > 1
    for i, room in found:
        box = boxes[i]
        turned = (room.along, room.across) == (box.across, box.along) and not box.grain
        assert turned or (room.along, room.across) == (box.along, box.across)
        assert cells(room) <= cells(sheet)
    assert all(not cells(a) & cells(b) for (_, a), (_, b) in combinations(found, 2))
    assert all(found.count(one) == 1 for one in found)
    assert all([i for i, _ in found].count(k) <= order.count(k) for k in range(6))
    if shear:
        assert sheared([room for _, room in found], (0, 0), (24, 15))
    else:
        # what was left out has no place even now, wherever it is put
        taken = set().union(*(cells(room) for _, room in found))
        missing = {i for i in order if [k for k, _ in found].count(i) < order.count(i)}
        for i in missing:
            ways = {(boxes[i].along, boxes[i].across)}
            ways |= set() if boxes[i].grain else {(boxes[i].across, boxes[i].along)}
            spots = [Room(x, y, a, b) for a, b in ways for x in range(25 - a) for y in range(16 - b)]
            assert all(cells(spot) & taken for spot in spots)
