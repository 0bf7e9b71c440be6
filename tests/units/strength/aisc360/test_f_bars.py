from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import f_bars


@pytest.mark.parametrize("limit", [0.08, 1.9])
def test_the_ranges_of_buckling_meet_closely(limit: float) -> None:
    # Equations F11-2 and F11-3 leave a step of under 3 % between their ranges
    length = limit * 29000 / 50 * 0.5**2 / 12
    below, above = (f_bars.bar_lateral_buckling(50, 12, 0.5, length * f).nominal for f in (0.999, 1.001))
    assert below == pytest.approx(above, rel=0.03)


def test_a_stocky_bar_reaches_its_plastic_moment() -> None:
    assert f_bars.bar_lateral_buckling(50, 4, 1, 2).nominal == f_bars.bar_yielding(50, 4, 1).nominal


def test_small_holes_do_not_matter() -> None:
    assert f_bars.rupture_at_holes(50, 65, 4, 3.9, 88, 101).nominal == pytest.approx(5050)
    assert f_bars.rupture_at_holes(50, 65, 4, 2.0, 88, 101).nominal == pytest.approx(65 * 2 / 4 * 88)


def test_a_bar_without_thickness_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"t = 0 must be more than 0"):
        f_bars.bar_yielding(50, 4, 0)


def test_a_net_flange_is_no_more_than_the_whole() -> None:
    with pytest.raises(ValueProblem, match=r"A_fn = 5 in² is more than A_fg = 4 in²: take the holes off"):
        f_bars.rupture_at_holes(50, 65, 4, 5, 88, 101)
