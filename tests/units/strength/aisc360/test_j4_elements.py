from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import j4_elements


def test_more_net_than_gross_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"A_nv = 3 in² is more than A_gv = 2 in²: take the holes off"):
        j4_elements.block_shear(50, 65, 2, 3, 1)


def test_an_unknown_tension_factor_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"U_bs = 0.7 must be 1.0 .* or 0.5"):
        j4_elements.block_shear(50, 65, 3, 2, 1, 0.7)


def test_a_negative_area_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"A_gv = -1 must be more than 0"):
        j4_elements.shear_yielding(50, -1)


def test_buckling_begins_above_a_slenderness_of_25() -> None:
    assert j4_elements.compression(50, 2, 25, 1).nominal == pytest.approx(100)
    assert j4_elements.compression(50, 2, 26, 1).nominal < 100


def test_the_two_buckling_curves_meet() -> None:
    limit = 4.71 * (29000 / 50) ** 0.5
    below, above = (j4_elements.compression(50, 2, limit * f, 1).nominal for f in (0.9999, 1.0001))
    assert below == pytest.approx(above, rel=0.01)
