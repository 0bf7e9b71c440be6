from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import j7_bearing


def test_a_support_smaller_than_the_plate_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"A_2 = 90 in² must be at least A_1 = 100 in²: the plate must fit"
    ):
        j7_bearing.concrete_bearing(3, 100, 90)


def test_spreading_stops_at_twice() -> None:
    assert j7_bearing.concrete_bearing(3, 100, 1000).nominal == pytest.approx(1.7 * 3 * 100)


def test_finished_surfaces() -> None:
    assert j7_bearing.surface_bearing(50, 2).nominal == pytest.approx(180)
