"""The search for layouts: everything is laid out within the limits, and known answers are found."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import combinations
from time import monotonic

import pytest

from gageline.stock.layouts import Filling, Kind, Task, lay_out
from gageline.stock.rectangles import Box, Room
from gageline.stock.watch import Progress, Watch, start_watch
from plates import cut_apart

LARGE = Kind(Room(0, 0, 120, 60), 1000, None)
SMALL = Kind(Room(0, 0, 60, 60), 550, None)
FOUR = tuple(box for seed in range(4) for box in cut_apart(seed, 10))
PERFECT = Task(FOUR, (1,) * len(FOUR), (LARGE,), shear=True)


def laid(task: Task, bound: int = 0, seconds: float = 20.0, watch: Watch | None = None) -> int:
    """Cost of a layout that holds everything within the sheets and their limits."""
    found = lay_out(task, bound, watch or start_watch(seconds))
    assert found is not None
    check(task, found)
    return task.cents(found)


def check(task: Task, plan: tuple[Filling, ...]) -> None:
    made = Counter(kind for filling in plan for kind, _ in filling.placed)
    assert [made[i] for i in range(len(task.boxes))] == list(task.demand)
    used = Counter(filling.sheet for filling in plan)
    assert all(s.limit is None or used[k] <= s.limit for k, s in enumerate(task.sheets))
    for filling in plan:
        rooms = [room for _, room in filling.placed]
        assert rooms
        assert all(task.sheets[filling.sheet].room.holds(room) for room in rooms)
        assert not any(one.meets(other) for one, other in combinations(rooms, 2))
        assert all((r.along, r.across) in task.boxes[kind].ways() for kind, r in filling.placed)


@pytest.mark.parametrize("shear", [True, False])
def test_four_sheets_cut_apart_are_four_sheets_again(*, shear: bool) -> None:
    assert laid(replace(PERFECT, shear=shear), bound=4000) == 4000


def test_a_cheaper_sheet_for_what_is_left() -> None:
    task = Task((Box(60, 60, grain=False),), (3,), (LARGE, SMALL), shear=True)
    assert laid(task, seconds=3.0) == 1550
    assert laid(replace(task, sheets=(LARGE, replace(SMALL, limit=0))), seconds=3.0) == 2000


def test_limits_are_kept_and_too_few_sheets_are_no_plan() -> None:
    task = Task((Box(50, 50, grain=False),), (4,), (LARGE, replace(SMALL, limit=2)), shear=True)
    assert laid(replace(task, sheets=(replace(LARGE, limit=1), replace(SMALL, limit=2))), seconds=3.0) == 2100
    scarce = replace(task, sheets=(replace(LARGE, limit=1), replace(SMALL, limit=1)))
    assert lay_out(scarce, 0, start_watch(2.0)) is None


def test_no_time_still_gives_a_first_plan() -> None:
    assert laid(PERFECT, seconds=0.0) >= 4000


def test_a_stop_ends_the_search_with_the_best_plan_and_each_turn_is_told() -> None:
    told: list[Progress] = []
    begun = monotonic()
    laid(PERFECT, bound=0, watch=start_watch(60.0, lambda: len(told) >= 2, told.append))
    assert monotonic() - begun < 20.0
    assert [p.stage for p in told] == ["sheets", "sheets"]
    assert all(p.best is not None and p.bound == 0 for p in told)


def test_what_is_left_over_lies_on_few_sheets() -> None:
    # nine of 40 x 30 fill one and a half sheets: the half that is left is left on one sheet
    task = Task((Box(40, 30, grain=False),), (9,), (LARGE,), shear=True)
    plan = lay_out(task, 2000, start_watch(5.0))
    assert plan is not None
    assert sorted(len(f.placed) for f in plan) == [3, 6]
    assert [task.left(f) for f in plan] == [0.0, 0.5]
    assert task.spread(plan) == -0.25


def test_pieces_on_a_sheet_not_full_lie_close_together() -> None:
    # 2 x 3 of 20 x 20 and two of 10 x 30 fit into 50 x 60: more than half the sheet is left in one piece
    task = Task((Box(20, 20, grain=False), Box(10, 30, grain=False)), (6, 2), (LARGE,), shear=False)
    plan = lay_out(task, 1000, start_watch(5.0))
    assert plan is not None
    check(task, plan)
    assert max(room.x + room.along for _, room in plan[0].placed) == 50
