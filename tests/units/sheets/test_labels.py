"""Rows of labels."""

from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.sheets import Reading, Side, Text, Writing
from gageline.sheets.labels import arrange, draw_rows, once, rows_depth, to_paper


def rail(count: int, pitch: float) -> list[Reading]:
    return [Reading(20 + i * pitch, f"{i}'-7 1/4\"") for i in range(count)]


@pytest.mark.parametrize(
    ("side", "point"),
    [(Side.ABOVE, (3, 8)), (Side.BELOW, (3, 12)), (Side.LEFT, (8, 3)), (Side.RIGHT, (12, 3))],
)
def test_outwards_is_away_from_the_drawing(side: Side, point: tuple[float, float]) -> None:
    assert to_paper(side, 10, 3, 2) == point


def test_labels_with_room_are_level_in_one_row_without_a_shift() -> None:
    rows = arrange(rail(5, 30), Side.ABOVE, (0, 200), 100, 10)
    assert (rows.upright, len(rows.places), rows.shift) == (False, 1, 0)


def test_closer_labels_take_two_level_rows_then_stand_upright() -> None:
    rows = arrange(rail(14, 12), Side.ABOVE, (0, 200), 100, 10)
    assert (rows.upright, len(rows.places)) == (False, 2)
    rows = arrange(rail(40, 4.2), Side.ABOVE, (0, 200), 100, 10)
    assert (rows.upright, len(rows.places)) == (True, 1)


def test_a_crowd_takes_several_upright_rows() -> None:
    rows = arrange(rail(70, 2.4), Side.BELOW, (0, 200), 100, 10)
    assert rows.upright
    assert len(rows.places) > 1


def test_labels_beside_a_drawing_are_level() -> None:
    rows = arrange(rail(3, 8), Side.RIGHT, (0, 50), 50, 10, Writing.UPRIGHT)
    labels = [item for item in draw_rows(rows, 100, 2, 1) if isinstance(item, Text)]
    assert [label.rotation for label in labels] == [0, 0, 0]


def test_the_way_of_writing_can_be_asked_for() -> None:
    assert arrange(rail(3, 30), Side.ABOVE, (0, 200), 99, 10, Writing.UPRIGHT).upright
    assert not arrange(rail(14, 12), Side.ABOVE, (0, 200), 99, 10, Writing.LEVEL).upright


def test_the_same_text_at_the_same_place_is_shown_once() -> None:
    twice = [Reading(50, "3"), Reading(50.01, "3"), Reading(50, "4"), Reading(60, "3")]
    assert [r.text for r in once(twice)] == ["3", "4", "3"]


def test_depth_is_kept() -> None:
    crowd = rail(14, 12)
    level = rows_depth(arrange(crowd, Side.ABOVE, (0, 200), 99, 10))
    assert rows_depth(arrange(crowd, Side.ABOVE, (0, 200), level, 10)) == level
    with pytest.raises(
        ValueProblem, match=r"14 dimension texts of 10 pt do not fit on 200\.0 mm with 3\.0 mm"
    ):
        arrange(crowd, Side.ABOVE, (0, 200), 3, 10)


def test_a_place_outside_the_limits_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r'"7" belongs to 201\.00 mm, outside the view from 0\.00 to 200\.00 mm'
    ):
        arrange([Reading(201, "7")], Side.ABOVE, (0, 200), 99, 10)
