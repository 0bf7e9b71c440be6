from __future__ import annotations

import math

import pytest

from gageline.detail.space import (
    UP,
    along,
    cross,
    inverse,
    line_crossing,
    placement_of,
    point_of,
    relative,
    sideways,
    turned,
    unit,
    vec_of,
)


def test_a_quarter_turn_is_clean() -> None:
    assert turned(90) == (0.0, 1.0, 0.0)
    assert turned(180) == (-1.0, 0.0, 0.0)
    assert sideways((1.0, 0.0, 0.0)) == (0.0, 1.0, 0.0)


def test_x_and_y_make_z_by_the_right_hand() -> None:
    assert cross((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)) == UP


def test_a_point_comes_back_from_the_space_of_a_piece() -> None:
    placement = placement_of((10.0, 20.0, 30.0), turned(30), UP)
    out = along(along((10.0, 20.0, 30.0), placement.ex, 5.0), UP, 7.0)
    assert inverse(placement, out) == pytest.approx((5.0, 7.0, 0.0), abs=1e-5)


def test_a_placing_seen_from_another_and_put_back_is_itself() -> None:
    outer = placement_of((100.0, -4.0, 12.0), turned(90), UP)
    inner = placement_of((3.0, 4.0, 5.0), UP, turned(180))
    back = relative(inner, outer).then(outer)
    assert back.origin == inner.origin
    assert back.ex == pytest.approx(inner.ex)
    assert back.ey == pytest.approx(inner.ey)


def test_a_line_meets_a_plane_and_misses_a_parallel_one() -> None:
    assert line_crossing((0, 0, 0), (1, 0, 0), (12, 5, 0), (1, 0, 0)) == 12
    assert line_crossing((0, 0, 0), (0, 1, 0), (12, 5, 0), (1, 0, 0)) is None


def test_directions_have_length_one() -> None:
    assert unit((3.0, 4.0, 0.0)) == (0.6, 0.8, 0.0)
    assert math.hypot(*unit((1.0, 2.0, 3.0))) == pytest.approx(1.0)


def test_points_of_record_round_to_their_step() -> None:
    assert vec_of(point_of((0.5, 1 / 3, -2.0))) == pytest.approx((0.5, 1 / 3, -2.0), abs=4e-6)
