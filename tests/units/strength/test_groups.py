from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from gageline.errors import ValueProblem
from gageline.strength import eccentric_bolts, elastic_bolts, share_of_full_strength, wrench

SQUARE = [[0.0, 0.0], [3.0, 0.0], [3.0, 3.0], [0.0, 3.0]]


def test_a_load_straight_down() -> None:
    assert wrench(0, 5.0, 2.0) == pytest.approx([0.0, -1.0, -5.0])


def test_a_load_to_the_right() -> None:
    assert wrench(90, 5.0, 2.0) == pytest.approx([1.0, 0.0, -2.0])


def test_many_loads_at_once() -> None:
    assert wrench([0, 90], 5.0, [1.0, 2.0]).shape == (2, 3)


def test_a_load_that_is_no_number_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"the angle and the point of a load: one is not a finite number"):
        wrench(float("nan"), 1.0)


def test_share_of_strength_at_the_break() -> None:
    # Manual Part 7: 0.34 in gives 98 % of the ultimate strength
    assert share_of_full_strength(0.34) == pytest.approx(0.9815, abs=5e-5)


def test_a_concentric_load_moves_all_bolts_alike() -> None:
    found = eccentric_bolts(SQUARE, wrench(0, 1.5))
    assert found.coefficient == pytest.approx([4 * share_of_full_strength(0.34)])
    assert not np.isfinite(found.centre).any()
    assert found.forces[0] == pytest.approx(np.tile([0.0, -share_of_full_strength(0.34)], (4, 1)))


def test_a_pure_moment_turns_about_the_middle() -> None:
    found = eccentric_bolts(SQUARE, [0.0, 0.0, 1.0])
    assert found.centre == pytest.approx(np.array([[1.5, 1.5]]))
    assert found.coefficient == pytest.approx([4 * share_of_full_strength(0.34) * 1.5 * 2**0.5])


def test_two_bolts_by_hand() -> None:
    # a moment on two bolts 3 in apart: both at full reach, 1 1/2 in from the middle
    found = eccentric_bolts([[0, 0], [0, 3]], [0, 0, -2])
    assert found.coefficient == pytest.approx([share_of_full_strength(0.34) * 3 / 2])


def test_elastic_square_by_hand() -> None:
    # P at 6 in: each bolt P/4 down and 6P·r/Σr² across its radius, Σr² = 18
    found = elastic_bolts(SQUARE, wrench(0, 7.5, 1.5))
    down, turn = 1 / 4, 6 / 18 * 1.5
    assert 1 / found.coefficient[0] == pytest.approx(np.hypot(down + turn, turn))
    assert np.hypot(*found.forces[0].T).max() == pytest.approx(1.0)


@pytest.mark.parametrize("method", [eccentric_bolts, elastic_bolts])
@pytest.mark.parametrize(
    ("points", "load", "message"),
    [
        ([], [0, -1, 0], r"bolts of shape \(0,\) and loads of shape \(1, 3\) do not fit"),
        (np.zeros((1, 0, 2)), [0, -1, 0], "the group has 0 bolts, at least 2 are needed"),
        ([[1, 2]], [0, -1, 0], "all bolts of a group are in one place and the load passes beside it"),
        (SQUARE, [0, 0, 0], "a load is zero, its direction is needed"),
        (SQUARE, [0, -1], r"loads of shape \(1, 2\) do not fit: give"),
        (np.zeros((2, 4, 2)), np.ones((3, 3)), "2 groups and 3 loads do not fit: give one load for each"),
        ([[0, 0], [0, np.inf]], [0, -1, 0], "places of bolts: one is not a finite number"),
    ],
)
def test_refusals(method: Callable[..., object], points: np.ndarray, load: np.ndarray, message: str) -> None:
    with pytest.raises(ValueProblem, match=message):
        method(points, load)


def test_a_bolt_in_the_middle_of_a_lopsided_group_does_not_hold_it() -> None:
    """Four bolts whose centre is one of them, turned by a moment.

    A search of its own for the centre at which the forces of the curve cancel: (-0.622, 5.378) and 7.849594.
    """
    points = [(-1.0, 5.0), (0.0, 7.0), (1.0, 6.0), (-4.0, 2.0)]
    for turn in (1.0, -1.0):
        found = eccentric_bolts(points, (0.0, 0.0, turn))
        assert found.coefficient[0] == pytest.approx(7.849594, rel=1e-6)
        assert found.centre[0] == pytest.approx((-0.621954, 5.378046), abs=1e-5)
        assert found.forces[0].sum(axis=0) == pytest.approx((0.0, 0.0), abs=1e-9)


def test_a_load_through_one_of_two_bolts_leaves_the_other_still() -> None:
    """Two bolts one above the other, the load level through the upper one, which carries it alone."""
    found = eccentric_bolts([(4.0, -1.0), (4.0, 0.0)], (1.0, 0.0, 0.0))
    assert found.coefficient[0] == pytest.approx(0.9815, abs=1e-4)
    assert abs(found.forces[0][0]).max() < 1e-5


@pytest.mark.parametrize("angle", [0.0, 30.0, 90.0])
def test_a_single_bolt_carries_a_load_through_it(angle: float) -> None:
    load = wrench(angle, 4.0, 2.0)
    assert eccentric_bolts([[4.0, 2.0]], load).coefficient == pytest.approx(
        [float(share_of_full_strength(0.34))]
    )
    assert elastic_bolts([[4.0, 2.0]], load).coefficient == pytest.approx([1.0])
