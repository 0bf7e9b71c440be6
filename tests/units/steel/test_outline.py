from __future__ import annotations

import math

import pytest
from shapely import Polygon

from gageline.steel.outline import (
    angle_outline,
    box_outline,
    channel_outline,
    circle_outline,
    fillet_radius,
    i_outline,
    rounded,
    tee_outline,
)

SPANDREL = 1 - math.pi / 4  # area between a square corner and its arc, of radius 1


def area(loop: tuple[tuple[float, float], ...]) -> float:
    return float(Polygon(loop).area)


def test_rounding_a_square_leaves_a_circle() -> None:
    square = [(1.0, -1.0, 1.0), (1.0, 1.0, 1.0), (-1.0, 1.0, 1.0), (-1.0, -1.0, 1.0)]
    loop = rounded(square, steps=64)
    assert all(math.hypot(z, y) == pytest.approx(1.0) for z, y in loop)
    assert area(loop) == pytest.approx(math.pi, rel=1e-3)


def test_the_same_corners_either_way_round_enclose_the_same() -> None:
    corners = [
        (0.0, 0.0, 0.0),
        (4.0, 0.0, 0.3),
        (4.0, 1.0, 0.2),
        (1.0, 1.0, 0.5),
        (1.0, 3.0, 0.0),
        (0.0, 3.0, 0.1),
    ]
    assert area(rounded(corners)) == pytest.approx(area(rounded(corners[::-1])))


def test_an_i_shape_has_four_fillets() -> None:
    expected = 2 * 6 * 0.5 + 9 * 0.25 + 4 * SPANDREL * 0.4**2
    assert area(i_outline(10, 6, 0.25, 0.5, 0.4, steps=64)) == pytest.approx(expected, rel=1e-4)


def test_a_taper_about_the_middle_of_the_overhang_keeps_the_area() -> None:
    assert area(i_outline(10, 6, 0.5, 0.5, 0, 1 / 6)) == pytest.approx(area(i_outline(10, 6, 0.5, 0.5, 0)))


def test_a_tee_is_half_an_i_shape() -> None:
    assert area(tee_outline(5, 6, 0.25, 0.5, 0.4)) == pytest.approx(
        area(i_outline(10, 6, 0.25, 0.5, 0.4)) / 2
    )


def test_a_channel_has_its_back_at_zero() -> None:
    loop = channel_outline(8, 2.5, 0.25, (0.4, 1.125, 1 / 6), (0.4, 0.1))
    assert min(z for z, _ in loop) == 0
    assert Polygon(loop).bounds == pytest.approx((0, -4, 2.5, 4))


def test_an_angle_has_its_heel_at_the_origin() -> None:
    loop = angle_outline(4, 3, 0.5, (0.5, 0.0), steps=64)
    assert Polygon(loop).bounds == pytest.approx((0, 0, 3, 4))
    assert area(loop) == pytest.approx(6.5 * 0.5 + SPANDREL * 0.25, rel=1e-4)


def test_a_box_loses_its_corners() -> None:
    assert area(box_outline(6, 4, 0.5, steps=64)) == pytest.approx(24 - 4 * SPANDREL * 0.25, rel=1e-4)


def test_a_circle_of_chords_has_the_circles_area() -> None:
    assert area(circle_outline(6, steps=24)) == pytest.approx(math.pi * 9)


def test_the_fillet_radius_gives_back_the_distance_to_its_end() -> None:
    loop = i_outline(10, 6, 0.5, 0.5, fillet_radius(1.5, 0.5 + 5.5 / 4 / 6, 1 / 6), 1 / 6)
    ends = [y for z, y in loop if z == pytest.approx(0.25)]
    assert max(ends) == pytest.approx(5 - 1.5)
    assert fillet_radius(1.5, 0.5, 0.0) == pytest.approx(1.0)
