from __future__ import annotations

import pytest

from gageline.strength import Fitting, Material, Method
from gageline.strength.kinds.shear_and_bending import shear_and_bending

PLATE = Fitting("PL1/2", Material("A572-50", 50.0, 65.0), 0.5, 11.5, 10.5)


def test_shear_and_bending_of_a_plate_together() -> None:
    """V_c 30 5.75 = 172.5; M_c 0.9 50 16.53 = 743.9; with M = 9 V: 1/sqrt(1/172.5^2 + (9/743.9)^2) = 74.5."""
    check = shear_and_bending(PLATE, 9.0, "weld to the bolts", 40.0, Method.LRFD, "both")
    assert check.capacity == pytest.approx(74.5, rel=1e-3)
    assert (check.title, check.demand, check.steps[0].note) == ("both", 40.0, "weld to the bolts")


def test_without_an_arm_it_is_shear() -> None:
    check = shear_and_bending(PLATE, 0.0, "none", 40.0, Method.LRFD, "both")
    assert check.capacity == pytest.approx(172.5)
