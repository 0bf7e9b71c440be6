"""Plans cut into parts along match lines."""

from frames import bays
from gageline.detail import read_full
from gageline.sheets.plan_members import plan_levels
from gageline.sheets.plan_regions import Region, halves, inside, neighbours, regions_of

WHOLE = Region(-6, -6, 1206, 606)


def test_every_member_is_in_one_part_and_none_is_too_full() -> None:
    full = read_full(bays([300] * 4, [300] * 2, 5))
    assert full.detailed is not None
    beams = plan_levels(full.detailed)[0].beams
    regions = regions_of(WHOLE, beams, 20)
    counts = [len(inside(region, beams)) for region in regions]
    assert sum(counts) == len(beams) == 62
    assert max(counts) <= 20


def test_match_line_lies_on_no_member_along_it() -> None:
    full = read_full(bays([300] * 4, [300] * 2, 5))
    assert full.detailed is not None
    beams = plan_levels(full.detailed)[0].beams
    two = halves(WHOLE, beams)
    assert two is not None
    first, second = two
    axis = 0 if first.right == second.left else 1
    at = first.right if axis == 0 else first.low
    assert all(abs(p[axis] - at) > 0.5 for beam in beams for p in beam.work)


def test_parts_know_what_lies_beside_them() -> None:
    parts = [Region(0, 0, 10, 10), Region(10, 0, 20, 10), Region(0, 10, 20, 20)]
    assert neighbours(0, parts) == {"right": [1], "above": [2]}
    assert neighbours(2, parts) == {"below": [0, 1]}
