from __future__ import annotations

import math

import pytest

from gageline.errors import ValueProblem
from gageline.strength.guard import fraction, gradient, not_negative, positive


@pytest.mark.parametrize("value", [0.0, -1.5, math.nan, math.inf])
def test_positive_refuses(value: float) -> None:
    with pytest.raises(ValueProblem, match=r"t_w = .* must be more than 0: give its true size or count"):
        positive(F_y=50.0, t_w=value)


@pytest.mark.parametrize("value", [-1e-9, math.nan, math.inf])
def test_not_negative_refuses(value: float) -> None:
    with pytest.raises(ValueProblem, match=r"L_b = .* must be 0 or more: give its size without a sign"):
        not_negative(L_b=value)


@pytest.mark.parametrize("value", [-0.1, 1.1, math.nan])
def test_fraction_refuses(value: float) -> None:
    with pytest.raises(ValueProblem, match=r"U = .* must lie between 0 and 1: check the two parts"):
        fraction(U=value)


@pytest.mark.parametrize("value", [0.5, 0.999, 5.1, math.nan, -1.0])
def test_gradient_refuses(value: float) -> None:
    with pytest.raises(ValueProblem, match=r"C_b = .* must lie between 1 and 5: find it by Equation F1-1"):
        gradient(value)


def test_good_values_pass() -> None:
    positive(a=1e-9)
    not_negative(a=0.0)
    fraction(a=1.0)
    gradient(1.0)
    gradient(5.0)
