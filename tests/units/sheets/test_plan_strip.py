"""The column beside a plan."""

import pytest

from gageline.job import Job, read_job
from gageline.sheets import Hatch, Polygon, leaves, texts
from gageline.sheets.plan_members import FREE, PlanBeam, PlanLevel
from gageline.sheets.plan_regions import Region
from gageline.sheets.plan_strip import StripFacts, side_strip
from gageline.steel import Section, find

WIDTH = 62.0
LEFT, RIGHT = Region(0, 0, 120, 100), Region(120, 0, 240, 100)


def job() -> Job:
    return read_job('[job]\nname = "n"\n[[piece]]\nmark = "A"\nstock = "W16x26"\nlength = "8\'"\n')


def beam(finish: tuple[float, float], kinds: tuple[str, str]) -> PlanBeam:
    stock = find("W16x26")
    assert isinstance(stock, Section)
    ends = ((0.0, 0.0), finish)
    return PlanBeam("B", "B", stock, *ends, ends, kinds, (0.0, 0.0), 0.0, (0.0, 0.0), 0.0)


def strip(
    beams: tuple[PlanBeam, ...], regions: list[Region], number: int = 0, bearings: bool = False
) -> list[str]:
    level = PlanLevel("Roof", 180.0, beams, (), ((0.0, 0.0),) if bearings else ())
    block = side_strip(StripFacts(level, beams, regions, number), job(), WIDTH)
    assert max(text.y for text in texts(block.items)) <= block.height
    return [text.text for text in texts(block.items)]


def test_level_and_tops_of_steel_come_first() -> None:
    found = strip((beam((100, 0), ("seat", "seat")),), [LEFT])
    assert found[:2] == ["Level Roof", "Tops of steel"]
    assert "All at +15'-0\", unless a height in brackets" in " ".join(found)


def test_the_legend_has_the_signs_of_this_plan_and_no_others() -> None:
    found = strip((beam((100, 0), ("seat", FREE)),), [LEFT])
    assert "seat angle with top clip" in found
    assert "free end of a cantilever" in found
    assert "double angles" not in found
    assert "bears on a column" not in found


def test_bearing_on_a_column_is_in_the_legend_where_beams_pass_over_one() -> None:
    assert "bears on a column" in strip((beam((100, 0), ("seat", "seat")),), [LEFT], bearings=True)


def test_skewed_members_bring_a_note_on_what_their_ends_say() -> None:
    assert "askew" in " ".join(strip((beam((100, 30), ("seat", "seat")),), [LEFT]))
    assert "askew" not in " ".join(strip((beam((100, 0), ("seat", "seat")),), [LEFT]))


def test_a_plan_in_parts_has_a_key_with_this_part_hatched() -> None:
    beams = (beam((100, 0), ("seat", "seat")),)
    assert "Parts of this level" not in strip(beams, [LEFT])
    found = strip(beams, [LEFT, RIGHT], 1)
    assert found[-2:] == ["Parts of this level", "1"]
    block = side_strip(StripFacts(PlanLevel("R", 0.0, beams, (), ()), beams, [LEFT, RIGHT], 1), job(), WIDTH)
    hatched = [(item, dx) for item, dx, _ in leaves(block.items) if isinstance(item, Polygon) and item.hatch]
    ((polygon, _),) = hatched
    assert isinstance(polygon.hatch, Hatch)
    assert min(x for x, _ in polygon.points) == pytest.approx(WIDTH / 2)
