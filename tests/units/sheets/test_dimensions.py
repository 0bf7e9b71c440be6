"""Running dimensions, chains and callouts."""

from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.sheets import (
    Circle,
    Line,
    Polyline,
    Reading,
    Role,
    Side,
    chain,
    linear,
    running,
    texts,
)


def test_no_readings_draw_nothing() -> None:
    drawn = running([], Side.ABOVE, 50, (0, 200))
    assert (drawn.items, drawn.depth) == ((), 0)


def test_a_reading_stands_over_its_place_and_its_leader_starts_there() -> None:
    drawn = running([Reading(70, "6'-0\"")], Side.ABOVE, 50, (0, 200), datum=20)
    (text,) = texts(drawn.items)
    assert (text.x, text.text) == (70, "6'-0\"")
    (leader,) = (item for item in drawn.items if isinstance(item, Polyline))
    assert {x for x, _ in leader.points} == {70}
    assert 50 > leader.points[0][1] > leader.points[-1][1] > text.y
    (dot,) = (item for item in drawn.items if isinstance(item, Circle))
    assert dot.x == 20


def test_a_chain_sets_what_fits_over_its_line_and_the_rest_further_out() -> None:
    drawn = chain([20, 60, 63, 120], ["3'-4\"", '3"', "4'-9\""], Side.ABOVE, 50, (0, 200))
    y = {text.text: text.y for text in texts(drawn.items)}
    assert y["3'-4\""] == y["4'-9\""] > y['3"']
    assert len([item for item in drawn.items if isinstance(item, Line) and item.role is Role.FRAME]) == 4


def test_an_empty_text_leaves_its_stretch_bare() -> None:
    drawn = chain([20, 60, 120], ["", "5'-0\""], Side.BELOW, 50, (0, 200))
    assert [text.text for text in texts(drawn.items)] == ["5'-0\""]


def test_a_chain_beside_a_drawing_is_written_along_it() -> None:
    drawn = chain([20, 60], ["3'-4\""], Side.LEFT, 50, (0, 200))
    assert [text.rotation for text in texts(drawn.items)] == [90]


def test_a_single_dimension_reads_the_same_from_either_end() -> None:
    one = linear(20, 90, "5'-10\"", Side.ABOVE, 50, (0, 200))
    assert one == linear(90, 20, "5'-10\"", Side.ABOVE, 50, (0, 200))
    assert [text.x for text in texts(one.items)] == [55]


@pytest.mark.parametrize(("points", "words"), [([1, 2, 3], ["a"]), ([3, 2], ["a"])])
def test_a_chain_that_does_not_add_up_is_refused(points: list[float], words: list[str]) -> None:
    with pytest.raises(ValueProblem, match="give the points in rising order and one text for each stretch"):
        chain(points, words, Side.ABOVE, 50, (0, 200))
