from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import h_combined


def test_the_two_equations_meet_at_a_fifth() -> None:
    # Equations H1-1a and H1-1b where the whole strength is used
    for share in (0.2, 0.2 - 1e-12):
        assert h_combined.axial_and_flexure(share, 1, 0.9, 1).value == pytest.approx(1.0)


def test_shear_and_flexure_of_a_plate_is_a_circle() -> None:
    assert h_combined.shear_and_flexure(3, 5, 4, 5).value == pytest.approx(1.0)


def test_a_plate_under_one_force_alone() -> None:
    assert h_combined.axial_shear_and_flexure(5, 5, 0, 1, 0, 1).value == pytest.approx(1.0)
    assert h_combined.axial_shear_and_flexure(0, 1, 5, 5, 0, 1).value == pytest.approx(1.0)


def test_no_strength_to_divide_by_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"V_c = 0 must be more than 0"):
        h_combined.shear_and_flexure(1, 0, 1, 1)
