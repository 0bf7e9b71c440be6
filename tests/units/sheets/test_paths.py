"""What the SVG and PDF writers share."""

from __future__ import annotations

from math import hypot

import pytest

from gageline.sheets import Arc, Circle, Hatch, Ink, Line, Polygon, Polyline, Role, Text
from gageline.sheets.paths import Path, drawn, number


def only(*items: Line | Polyline | Polygon | Circle | Arc) -> list[Path]:
    return [path for path in drawn(items) if isinstance(path, Path)]


def test_numbers_are_short_and_never_in_powers_of_ten() -> None:
    assert [number(v) for v in (1.0, 0.1234, 279.39999, 1e-7, -0.5)] == ["1", "0.123", "279.4", "0", "-0.5"]


def test_lines_of_one_role_become_one_path() -> None:
    path, other = only(Line(0, 0, 1, 0), Polyline(((2, 2), (3, 3))), Line(0, 0, 1, 0, Role.MARK))
    assert [step[0] for step in path.steps] == ["M", "L", "M", "L"]
    assert (path.role, other.role) == (Role.OUTLINE, Role.MARK)


def test_what_lies_between_keeps_its_place() -> None:
    things = list(drawn((Line(0, 0, 1, 0), Text(0, 0, "x"), Line(0, 0, 1, 0))))
    assert [isinstance(thing, Path) for thing in things] == [True, False, True]


def test_a_polygon_is_filled_then_hatched_then_outlined() -> None:
    square = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
    fill, hatch, edge = only(Polygon(square, Role.OUTLINE, Ink.PALE, Hatch()))
    assert (fill.role, fill.fill) == (None, Ink.PALE)
    assert (hatch.role, hatch.fill) == (Role.THIN, None)
    assert (edge.role, edge.fill, edge.steps[-1]) == (Role.OUTLINE, None, ("Z", ()))


@pytest.mark.parametrize(
    ("start", "end", "first", "last"),
    [(0, 90, (15, 20), (10, 15)), (270, 90, (10, 25), (10, 15)), (-30, 180, None, (5, 20))],
)
def test_an_arc_runs_counter_clockwise_as_seen(
    start: float, end: float, first: tuple[float, float] | None, last: tuple[float, float]
) -> None:
    (path,) = only(Arc(10, 20, 5, start, end))
    if first:
        assert path.steps[0][1] == pytest.approx(first)
    assert path.steps[-1][1][-2:] == pytest.approx(last)


def test_the_curves_of_a_circle_keep_its_radius_to_a_thousandth() -> None:
    (path,) = only(Circle(0, 0, 100))
    x, y = path.steps[0][1]
    for code, v in path.steps[1:]:
        if code != "C":
            continue
        for t in (0.1, 0.25, 0.5, 0.8):
            b = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
            px = b[0] * x + b[1] * v[0] + b[2] * v[2] + b[3] * v[4]
            py = b[0] * y + b[1] * v[1] + b[2] * v[3] + b[3] * v[5]
            assert hypot(px, py) == pytest.approx(100, rel=1 / 3000)
        x, y = v[4:]
