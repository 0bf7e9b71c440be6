"""Boxes of texts and drawings."""

from __future__ import annotations

import pytest

from gageline.sheets import (
    Anchor,
    Arc,
    Box,
    Circle,
    Group,
    Level,
    Line,
    Polygon,
    Text,
    extent,
    line_height,
    text_box,
    text_start,
    text_width,
    texts,
)

WIDE = text_width("B4", 10)


@pytest.mark.parametrize(
    ("anchor", "left"), [(Anchor.LEFT, 50.0), (Anchor.CENTRE, 50 - WIDE / 2), (Anchor.RIGHT, 50 - WIDE)]
)
def test_anchors_along_the_line(anchor: Anchor, left: float) -> None:
    assert text_start(Text(50, 30, "B4", anchor=anchor)) == pytest.approx((left, 30))


def test_levels_move_the_baseline() -> None:
    y = {level: text_start(Text(0, 30, "B4", level=level))[1] for level in Level}
    em = 10 * 25.4 / 72
    assert y[Level.BASELINE] == 30
    assert y[Level.MIDDLE] == pytest.approx(30 + 0.698 * em / 2)  # capitals are 698/1000 high
    assert y[Level.TOP] - y[Level.BOTTOM] == pytest.approx(em)


def test_an_upright_text_stands_on_its_anchor_and_reads_upwards() -> None:
    corners = text_box(Text(50, 80, "B4", rotation=90))
    (x0, y0), (x1, y1), _, (x3, _) = corners
    assert x0 == pytest.approx(x1)
    assert y0 == pytest.approx(80)
    assert y1 == pytest.approx(80 - WIDE)
    assert x3 < 50 < x0  # the letters' tops point to the left, their feet to the right


def test_a_box_is_one_line_high_at_any_rotation() -> None:
    for rotation in (0, 30, 90, 200):
        a, _, _, d = text_box(Text(5, 5, "B4", rotation=rotation))
        assert ((a[0] - d[0]) ** 2 + (a[1] - d[1]) ** 2) ** 0.5 == pytest.approx(line_height(10))


def test_texts_are_found_inside_groups_where_they_lie() -> None:
    inside = Text(1, 2, "in", 12, rotation=15)
    found = list(texts((Group((inside,), dx=10, dy=5), Line(0, 0, 1, 1), Text(3, 3, "out"))))
    assert found == [Text(11, 7, "in", 12, rotation=15), Text(3, 3, "out")]


def test_extent_of_every_kind_of_item() -> None:
    items = (
        Line(0, 0, 1, 1),
        Circle(10, 10, 4),
        Arc(20, 0, 3, 0, 90),
        Group((Polygon(((0, 0), (1, 0), (1, 30))),), dx=-5),
    )
    assert extent(items) == Box(-5, -3, 23, 30)
    assert extent((Text(0, 0, "B4"),)).right == pytest.approx(WIDE)
