"""Hatching, measured against shapely."""

from __future__ import annotations

from math import cos, radians, sin

import pytest
from shapely import LineString
from shapely import Polygon as Shape

from gageline.errors import ValueProblem
from gageline.sheets import Hatch, Polygon
from gageline.sheets.hatching import hatch_lines

SQUARE = ((0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (0.0, 10.0))
HOLE = ((5.0, 2.0), (9.0, 2.0), (9.0, 8.0), (5.0, 8.0))
ARROW = ((0.0, 0.0), (12.0, 5.0), (0.0, 10.0), (4.0, 5.0))


@pytest.mark.parametrize("angle", [0, 30, 45, 90, 135, -20])
@pytest.mark.parametrize(("points", "openings"), [(SQUARE, ()), (SQUARE, (HOLE,)), (ARROW, ())])
def test_the_lines_are_what_the_shape_cuts_out_of_the_grid(
    points: tuple[tuple[float, float], ...],
    openings: tuple[tuple[tuple[float, float], ...], ...],
    angle: float,
) -> None:
    lines = hatch_lines(Polygon(points, openings=openings), Hatch(angle, 0.7))
    shape = Shape(points, openings)
    c, s = cos(radians(angle)), sin(radians(angle))
    grid = [
        LineString(
            [(k * 0.7 * s - 99 * c, k * 0.7 * c + 99 * s), (k * 0.7 * s + 99 * c, k * 0.7 * c - 99 * s)]
        )
        for k in range(-60, 60)
    ]
    # a line exactly along an edge may count or not
    inside = shape.buffer(-1e-6)
    expected = sum(line.intersection(inside).length for line in grid)
    drawn = [LineString(line) for line in lines]
    assert sum(line.intersection(inside).length for line in drawn) == pytest.approx(expected, abs=1e-3)
    assert all(shape.buffer(1e-6).covers(line) for line in drawn)


def test_crossed_hatching_has_both_sets() -> None:
    square = Polygon(SQUARE)
    one, other = hatch_lines(square, Hatch(30)), hatch_lines(square, Hatch(120))
    assert hatch_lines(square, Hatch(30, crossed=True)) == one + other


def test_a_spacing_of_nothing_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"hatch spacing 0 mm is not above 0: give at least 0\.5 mm"):
        hatch_lines(Polygon(SQUARE), Hatch(spacing=0))
