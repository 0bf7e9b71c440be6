"""Broken views."""

from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.sheets import Polyline, break_marks, broken_scale


def test_a_short_piece_is_drawn_whole_at_the_wanted_scale() -> None:
    scale = broken_scale([0, 10, 50], left=20, width=200, wanted=2)
    assert (scale.scale, scale.gaps) == (2, ())
    assert [scale.at(x) for x in (-1, 0, 10, 50, 51)] == [18, 20, 40, 120, 122]


def test_a_larger_scale_is_taken_up_to_its_limit() -> None:
    assert broken_scale([0, 50], 20, 200, wanted=2, largest=10).scale == 4
    assert broken_scale([0, 50], 20, 200, wanted=2, largest=3).scale == 3


def test_a_long_piece_is_broken_where_nothing_happens_and_fills_the_width() -> None:
    features = [0, 3, 6, 220, 223]
    scale = broken_scale(features, left=20, width=200, wanted=2)
    assert len(scale.gaps) == 1
    assert scale.scale == 2
    assert scale.at(223) == pytest.approx(220)
    assert scale.at(6) - scale.at(0) == pytest.approx(12)
    assert scale.at(6) < scale.gaps[0][0] < scale.gaps[0][1] < scale.at(220)


def test_lines_stop_at_the_gaps() -> None:
    scale = broken_scale([0, 6, 220, 223], left=20, width=200, wanted=2)
    (gap,) = scale.gaps
    assert scale.pieces(0, 223) == [(20, gap[0]), (gap[1], pytest.approx(220))]
    assert scale.pieces(3, 0) == [(20, 26)]
    assert scale.pieces(221, 223) == [pytest.approx((216, 220))]


def test_each_gap_has_two_edges_across_the_strip() -> None:
    scale = broken_scale([0, 6, 220, 223], left=20, width=200, wanted=2)
    marks = [mark for mark in break_marks(scale, 50, 70) if isinstance(mark, Polyline)]
    assert [mark.points[0][0] for mark in marks] == list(scale.gaps[0])
    assert all(mark.points[0][1] < 50 and mark.points[-1][1] > 70 for mark in marks)


@pytest.mark.parametrize(
    ("features", "width", "wanted"), [([], 200, 1), ([5, 5], 200, 1), ([0, 1], 0, 1), ([0, 1], 9, 0)]
)
def test_a_view_of_nothing_is_refused(features: list[float], width: float, wanted: float) -> None:
    with pytest.raises(ValueProblem, match="give at least the two ends of the piece, a width and a scale"):
        broken_scale(features, 20, width, wanted=wanted)
