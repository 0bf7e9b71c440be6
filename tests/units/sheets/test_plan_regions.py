"""Plans cut into parts along match lines."""

import pytest

from frames import bays
from gageline.detail import read_full
from gageline.sheets.plan_members import PlanBeam, plan_levels
from gageline.sheets.plan_regions import (
    Grid,
    Region,
    halves,
    inside,
    line_at,
    neighbours,
    regions_of,
    seen,
)

WHOLE = Region(-6, -6, 1206, 606)
GRID: Grid = ({f"{n + 1}": 300.0 * n for n in range(5)}, {"A": 0.0, "B": 300.0, "C": 600.0})
NONE: Grid = ({}, {})


@pytest.fixture(scope="module")
def beams() -> tuple[PlanBeam, ...]:
    full = read_full(bays([300] * 4, [300] * 2, 5))
    assert full.detailed is not None
    return plan_levels(full.detailed)[0].beams


@pytest.mark.parametrize("grid", [GRID, NONE])
def test_every_member_is_in_one_part_and_none_is_too_full(beams: tuple[PlanBeam, ...], grid: Grid) -> None:
    regions = regions_of(WHOLE, beams, grid, 20)
    counts = [len(inside(region, beams)) for region in regions]
    assert sum(counts) == len(beams) == 62
    assert min(counts) > 0
    assert max(len(inside(seen(region, beams, grid, 1.0), beams)) for region in regions) <= 20


def test_a_plan_is_cut_at_a_grid_line_so_that_its_bays_stay_whole(beams: tuple[PlanBeam, ...]) -> None:
    two = halves(WHOLE, beams, GRID)
    assert two is not None
    first, second = two
    assert line_at(first.right, GRID[0]) == line_at(second.left, GRID[0]) == "3"
    shown = [seen(part, beams, GRID, 20.0) for part in two]
    assert (shown[0].right, shown[1].left) == (620.0, 580.0)  # line 3 is at 600: it is on both sheets
    assert (shown[0].left, shown[1].right) == (WHOLE.left, WHOLE.right)
    on_line = {beam.name for beam in beams if all(abs(x - 600) < 0.1 for x, _ in beam.work)}
    assert on_line
    for part in shown:
        assert on_line <= {beam.name for beam in inside(part, beams)}


def test_no_more_is_shown_past_a_grid_line_than_leaves_the_next_member_out(
    beams: tuple[PlanBeam, ...],
) -> None:
    first = Region(WHOLE.left, WHOLE.low, 601.0, WHOLE.high)
    nearest = min(x for beam in beams for x, _ in beam.work if x > 601)
    assert seen(first, beams, GRID, 500.0).right == (600 + nearest) / 2


def test_a_grid_line_that_leaves_next_to_nothing_on_one_side_is_not_cut_at(
    beams: tuple[PlanBeam, ...],
) -> None:
    first, second = halves(WHOLE, beams, ({"1": 0.0, "9": 1200.0}, {})) or (WHOLE, WHOLE)
    at = first.right if first.right == second.left else first.low
    assert at not in (1.0, 1201.0)
    assert min(len(inside(part, beams)) for part in (first, second)) > 20


def test_match_line_lies_on_no_member_along_it(beams: tuple[PlanBeam, ...]) -> None:
    two = halves(WHOLE, beams, NONE)
    assert two is not None
    first, second = two
    axis = 0 if first.right == second.left else 1
    at = first.right if axis == 0 else first.low
    assert all(abs(p[axis] - at) > 0.5 for beam in beams for p in beam.work)


def test_parts_know_what_lies_beside_them() -> None:
    parts = [Region(0, 0, 10, 10), Region(10, 0, 20, 10), Region(0, 10, 20, 20)]
    assert neighbours(0, parts) == {"right": [1], "above": [2]}
    assert neighbours(2, parts) == {"below": [0, 1]}
