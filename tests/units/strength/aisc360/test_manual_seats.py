from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength import Method
from gageline.strength.aisc360 import manual_seats


def test_a_small_reaction_still_bears_on_k() -> None:
    found = manual_seats.required_bearing_length(1, 50, 0.31, 0.515, 14.1, 0.915, Method.ASD)
    assert found[-1].value == 0.915


def test_a_leg_that_does_not_bend_is_left_out() -> None:
    e = manual_seats.seat_eccentricity(0.5, 0.5, 0.75).value
    assert e < 0
    with pytest.raises(ValueProblem, match=r"e = -0.375 must be more than 0"):
        manual_seats.seat_leg_flexure(50, 6, 0.75, e)


def test_leg_flexure() -> None:
    assert manual_seats.seat_leg_flexure(50, 6, 0.5, 0.75).nominal == pytest.approx(50 * 6 * 0.0625 / 0.75)
