from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from gageline.errors import ValueProblem
from gageline.strength import eccentric_welds, elastic_welds, manual_coefficient, wrench

LINE = [[[0.0, 0.0], [0.0, 10.0]]]


@pytest.mark.parametrize("angle", [0, 11, 20, 30, 45, 60, 90])
def test_a_concentric_load_gives_the_closed_form(angle: float) -> None:
    # Specification Section J2.4: 1 + 0.5 sin^1.5 θ times the length; the curve peaks 0.1 % above one, and
    # across the weld the first break comes before that peak is lost by more than 0.2 %
    found = eccentric_welds(LINE, wrench(angle, 0.0, 5.0))
    assert found.length == pytest.approx([10 * (1 + 0.5 * np.sin(np.radians(angle)) ** 1.5)], rel=0.002)
    assert np.abs(found.centre).max() > 1e6


def test_lines_in_pieces_are_the_same_lines() -> None:
    load = wrench(20, 7.0, 4.0)
    pieces = np.array([[[0, 0], [0, 2.5]], [[0, 10], [0, 7]], [[0, 2.5], [0, 7]]])
    assert eccentric_welds(pieces, load).length == pytest.approx(eccentric_welds(LINE, load).length, rel=1e-9)


def test_lines_can_be_given_from_either_end() -> None:
    load = wrench(20, 7.0, 4.0)
    turned = [[[0.0, 10.0], [0.0, 0.0]]]
    assert eccentric_welds(turned, load).length == pytest.approx(
        eccentric_welds(LINE, load).length, rel=1e-12
    )


def test_elastic_line_by_hand() -> None:
    # P at 6 in on 10 in: P/10 down and 6P·5/(10³/12) across at an end
    found = elastic_welds(LINE, wrench(0, 6.0, 5.0))
    assert 1 / found.length[0] == pytest.approx(np.hypot(1 / 10, 6 * 5 / (1000 / 12)))


def test_coefficient_of_the_manual_for_a_concentric_line() -> None:
    # 1.392/0.75 = 1.856 kip per inch and sixteenth
    assert manual_coefficient(10.0, 10.0) == pytest.approx(1.856, abs=5e-4)


@pytest.mark.parametrize("method", [eccentric_welds, elastic_welds])
@pytest.mark.parametrize(
    ("lines", "load", "message"),
    [
        (
            [[0, 0], [0, 1]],
            [0, -1, 0],
            r"weld lines of shape \(2, 2\) and loads of shape \(1, 3\) do not fit",
        ),
        (np.zeros((1, 0, 2, 2)), [0, -1, 0], "the group has 0 weld lines, at least 1 is needed"),
        ([[[1, 1], [1, 1]]], [0, -1, 0], "a weld line has length 0, its two ends must differ"),
        (LINE, [0, 0, 0], "a load is zero, its direction is needed"),
        (np.ones((2, 1, 2, 2)), np.ones((3, 3)), "2 groups and 3 loads do not fit"),
        ([[[0, 0], [0, np.nan]]], [0, -1, 0], "ends of weld lines: one is not a finite number"),
    ],
)
def test_refusals(method: Callable[..., object], lines: np.ndarray, load: np.ndarray, message: str) -> None:
    with pytest.raises(ValueProblem, match=message):
        method(lines, load)
