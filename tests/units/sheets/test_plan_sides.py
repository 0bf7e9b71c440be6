"""Sides of a plan: chains and bubbles."""

import pytest

from gageline.errors import ValueProblem
from gageline.sheets import Box, Circle, texts
from gageline.sheets.labels import Side
from gageline.sheets.notation import Scribe
from gageline.sheets.plan_sides import Edge, edging, match_line
from gageline.units import Length, System

FEET = Scribe(System.FT_IN, Length.from_inches(1 / 16))

GRID = (("1", 0.0), ("2", 240.0), ("3", 480.0))


def words(edge: Edge) -> list[str]:
    drawn = edging(edge, 50.0, 20.0, 0.25, (10.0, 150.0), FEET)
    return [text.text for text in texts(drawn.items)]


def test_spacings_and_bubbles() -> None:
    assert words(Edge(Side.ABOVE, GRID, (), bubbles=True)) == ["20'-0\"", "20'-0\"", "1", "2", "3"]


def test_stations_divide_the_inner_chain_only() -> None:
    found = words(Edge(Side.ABOVE, GRID, (60.0,), bubbles=True))
    assert found == ["5'-0\"", "15'-0\"", "20'-0\"", "20'-0\"", "20'-0\"", "1", "2", "3"]


def test_places_that_no_tape_tells_apart_are_one() -> None:
    assert words(Edge(Side.BELOW, GRID, (240.01,), bubbles=False)) == ["20'-0\"", "20'-0\""]


def test_bubbles_of_near_lines_are_moved_apart() -> None:
    edge = Edge(Side.LEFT, (("A", 0.0), ("B", 12.0), ("C", 400.0)), (), bubbles=True)
    drawn = edging(edge, 50.0, 120.0, -0.25, (10.0, 150.0), FEET)
    centres = sorted(item.y for item in drawn.items if isinstance(item, Circle))
    assert centres[2] - centres[1] >= 2 * 3.9


def test_too_many_bubbles_are_refused() -> None:
    grid = tuple((str(n), float(n)) for n in range(30))
    edge = Edge(Side.ABOVE, grid, (), bubbles=True)
    with pytest.raises(ValueProblem, match="30 grid bubbles do not fit along 140 mm: split the plan"):
        edging(edge, 50.0, 20.0, 0.25, (10.0, 150.0), FEET)


@pytest.mark.parametrize("side", list(Side))
def test_a_match_line_runs_across_the_view_with_its_words_at_the_outside(side: Side) -> None:
    frame = Box(10.0, 20.0, 210.0, 120.0)
    line, items, room = match_line(side, 50.0, [2, 3], frame, "7")
    upright = side in {Side.LEFT, Side.RIGHT}
    assert (line.x1, line.y1, line.x2, line.y2) == ((50, 20, 50, 120) if upright else (10, 50, 210, 50))
    assert [text.text for text in texts(items)] == ["Match line at grid line 7, see parts 2 and 3"]
    left, top, right, bottom = room.bounds
    near = {
        Side.LEFT: left - frame.left, Side.RIGHT: frame.right - right,
        Side.ABOVE: top - frame.top, Side.BELOW: frame.bottom - bottom,
    }  # fmt: skip
    assert 0.0 < near[side] < 1.0
    assert (bottom - top > right - left) is upright
