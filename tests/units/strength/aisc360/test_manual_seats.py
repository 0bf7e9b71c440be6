from __future__ import annotations

import math

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


@pytest.mark.parametrize(("L", "W"), [(6.0, 4.0), (12.0, 6.0), (24.0, 9.0)])
def test_the_weld_of_a_stiffened_seat_is_a_t_by_the_elastic_method(L: float, W: float) -> None:
    """Two lines of L and two of L/5 at their tops: length 2.4 L, modulus at the top 0.6 L²."""
    lines = (2 * L, 0.4 * L)
    y = (lines[0] * L / 2) / sum(lines)
    inertia = 2 * L**3 / 12 + lines[0] * (L / 2 - y) ** 2 + lines[1] * y**2
    each = 0.60 * 70 * 2**0.5 / 2 * 0.25
    unit = math.hypot(1 / sum(lines), 0.8 * W * y / inertia)
    assert manual_seats.stiffened_seat_weld(0.25, L, W).nominal == pytest.approx(each / unit)
