from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from gageline.errors import ValueProblem
from gageline.strength.guard import (
    fraction,
    gradient,
    guarded,
    not_negative,
    numbers_of,
    positive,
    steel_of,
    whole,
)


@pytest.mark.parametrize("value", [0.0, -1.5])
def test_positive_refuses(value: float) -> None:
    with pytest.raises(ValueProblem, match=r"t_w = .* must be more than 0: give its true size or count"):
        positive(F_y=50.0, t_w=value)


def test_not_negative_refuses() -> None:
    with pytest.raises(ValueProblem, match=r"L_b = -1e-09 must be 0 or more: give its size without a sign"):
        not_negative(L_b=-1e-9)


@pytest.mark.parametrize("value", [-0.1, 1.1])
def test_fraction_refuses(value: float) -> None:
    with pytest.raises(ValueProblem, match=r"U = .* must lie between 0 and 1: check the two parts"):
        fraction(U=value)


@pytest.mark.parametrize("value", [0.5, 0.999, 5.1, -1.0])
def test_gradient_refuses(value: float) -> None:
    with pytest.raises(ValueProblem, match=r"C_b = .* must lie between 1 and 5: find it by Equation F1-1"):
        gradient(value)


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (math.nan, "d = nan is no number: give its true size or count"),
        (None, "d = None is no number: give its size or count as one"),
        ("3", "d = '3' is no number: give its size or count as one"),
        (True, "d = True is no number: give its size or count as one"),
        (math.inf, "d = inf must be at most 1e+06: check its unit"),
        (1e300, "d = 1e+300 must be at most 1e+06: check its unit"),
    ],
)
@pytest.mark.parametrize("guard", [positive, not_negative, fraction, whole])
def test_what_is_no_number_is_refused_by_every_guard(
    guard: Callable[..., None], value: float, words: str
) -> None:
    with pytest.raises(ValueProblem) as refused:
        guard(d=value)
    assert str(refused.value) == words


@pytest.mark.parametrize(("name", "most"), [("F_y", 1e3), ("f_c", 1e3), ("L_b", 1e6), ("M_r", 1e9)])
def test_a_quantity_has_a_most_by_its_kind(name: str, most: float) -> None:
    positive(**{name: most})
    with pytest.raises(ValueProblem, match="must be at most"):
        positive(**{name: 1.01 * most})


@pytest.mark.parametrize("count", [2.5, 10_001])
def test_a_count_is_whole(count: float) -> None:
    with pytest.raises(ValueProblem, match=r"n = .* must be a whole number up to 10000: give how many"):
        whole(n=count)


def test_a_steel_yields_before_it_breaks() -> None:
    with pytest.raises(ValueProblem, match="F_y = 70 ksi is more than F_u = 65 ksi: swap them"):
        steel_of(70, 65)


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ([[0.0, "x"]], "places are not numbers in even rows: give inches and kips"),
        ([[0.0], [1.0, 2.0]], "places are not numbers in even rows: give inches and kips"),
        ([math.nan], "places: one is not a finite number: give inches, degrees and kips"),
        ([-1e9], "places: 1e+09 must be at most 1e+08: check the unit"),
    ],
)
def test_many_numbers_at_once(values: object, words: str) -> None:
    with pytest.raises(ValueProblem) as refused:
        numbers_of(values, "places")  # type: ignore[arg-type] # what a caller may get wrong
    assert str(refused.value) == words


def test_a_guarded_function_refuses_by_its_annotations() -> None:
    @guarded
    def rule(F_y: float, F_u: float, n: int = 1, *, wet: bool = False, name: str = "") -> float:
        return F_u * n if F_y and not wet and not name else 0.0

    assert rule(50, 65, 2) == 130
    with pytest.raises(ValueProblem, match="F_y = None is no number"):
        rule(None, 65)  # type: ignore[arg-type] # what a caller may get wrong
    with pytest.raises(ValueProblem, match=r"n = 1\.5 must be a whole number"):
        rule(50, 65, n=1.5)  # type: ignore[arg-type] # what a caller may get wrong
    with pytest.raises(ValueProblem, match="wet = 1 is no True or False: give one"):
        rule(50, 65, wet=1)  # type: ignore[arg-type] # what a caller may get wrong
    with pytest.raises(ValueProblem, match="name = 3 is no text: give one"):
        rule(50, 65, name=3)  # type: ignore[arg-type] # what a caller may get wrong
    with pytest.raises(ValueProblem, match="F_y = 70 ksi is more than F_u = 65 ksi"):
        rule(70, F_u=65)


def test_good_values_pass() -> None:
    positive(a=1e-9)
    not_negative(a=0.0)
    fraction(a=1.0)
    gradient(1.0)
    gradient(5.0)
    whole(n=12.0)
    assert numbers_of([[1, 2]], "places").shape == (1, 2)
