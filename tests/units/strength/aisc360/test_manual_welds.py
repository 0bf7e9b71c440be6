from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import manual_welds


def test_sides_are_one_or_two() -> None:
    with pytest.raises(ValueProblem, match=r"sides = 3 must be 1 or 2: say on how many faces"):
        manual_welds.minimum_thickness_at_weld(0.25, 65, 3)


def test_both_sides_need_twice_as_much() -> None:
    one, two = (manual_welds.minimum_thickness_at_weld(0.25, 65, n).value for n in (1, 2))
    assert two == pytest.approx(2 * one)
