from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import d_tension


def test_a_hole_takes_a_sixteenth_more() -> None:
    assert d_tension.hole_for_net_area(13 / 16) == pytest.approx(7 / 8)


def test_a_zigzag_chain_gives_back() -> None:
    straight, slanting = d_tension.net_width(8, 15 / 16, 1), d_tension.net_width(8, 15 / 16, 2, [(2, 3)])
    assert straight.value == pytest.approx(7)
    assert slanting.value == pytest.approx(6 + 4 / 12)


def test_holes_that_take_all_are_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"8 holes of 1 in leave 0 in of b = 8 in: use fewer or smaller holes"
    ):
        d_tension.net_width(8, 15 / 16, 8)


def test_shear_lag_is_a_fraction() -> None:
    with pytest.raises(ValueProblem, match=r"U = 1.2 must lie between 0 and 1"):
        d_tension.effective_net_area(3, 1.2)
