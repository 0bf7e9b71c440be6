from __future__ import annotations

import math

import pytest

from gageline.strength import Check, Clause, Factors, Method, Strength, figure, step

CLAUSE = Clause("J4.2(a)", "Shear yielding", "A standard")
STRENGTH = Strength(
    CLAUSE, 127.5, Factors(0.75, 2.0), "kip", (step("R_n", "0.60 F_y A_gv", 127.5, "kip", F_y=50, A_gv=4.25),)
)


def test_available_strength_by_both_methods() -> None:
    assert STRENGTH.available(Method.LRFD) == pytest.approx(95.625)
    assert STRENGTH.available(Method.ASD) == pytest.approx(63.75)


def test_other_factors_leave_the_rest() -> None:
    other = STRENGTH.under(Factors(1.0, 1.5))
    assert other.available(Method.LRFD) == 127.5
    assert other.steps == STRENGTH.steps


def test_line_shows_formula_numbers_and_value() -> None:
    assert STRENGTH.steps[0].line == "R_n = 0.60 F_y A_gv = 0.60 × 50 × 4.25 = 127.5 kip"


def test_line_says_nothing_twice() -> None:
    assert step("C_v2", "1", 1.0).line == "C_v2 = 1"


def test_negative_numbers_stand_in_brackets() -> None:
    assert step("x", "a - b", 3.0, a=1.0, b=-2.0).numbers == "1 - (-2)"


def test_primes_and_functions_in_a_formula() -> None:
    line = step("n", "max(m', sqrt(b))/2", 1.0, **{"m'": 2.0, "b": 4.0})
    assert line.numbers == "max(2, sqrt(4))/2"


@pytest.mark.parametrize(
    ("value", "text"), [(29000.0, "29000"), (0.3125, "0.3125"), (0.00012346, "0.0001235")]
)
def test_figures(value: float, text: str) -> None:
    assert figure(value) == text


def test_check_closes_the_working_with_the_factor() -> None:
    check = STRENGTH.check(50.0, Method.LRFD, "shear yielding of the plate")
    assert check.title == "shear yielding of the plate"
    assert check.clause is CLAUSE
    assert check.capacity == pytest.approx(95.625)
    assert check.steps[-1].line == "φR_n = φ R_n = 0.75 × 127.5 = 95.62 kip"
    assert check.utilisation == pytest.approx(50 / 95.625)
    assert check.passes


def test_check_by_asd_divides() -> None:
    check = STRENGTH.check(70.0, Method.ASD)
    assert check.title == "Shear yielding"
    assert check.steps[-1].line == "R_n/Ω = 127.5/2 = 63.75 kip"
    assert not check.passes


@pytest.mark.parametrize(("demand", "utilisation"), [(1.0, math.inf), (0.0, 0.0)])
def test_no_capacity_is_not_divided_by(demand: float, utilisation: float) -> None:
    assert Check(CLAUSE, "", demand, 0.0, "kip", ()).utilisation == utilisation


def test_lines_before_a_strength_leave_it_as_it_is() -> None:
    line = step("A_gv", "L t", 4.25, "in²", L=17.0, t=0.25)
    found = STRENGTH.after(line)
    assert found.steps == (line, *STRENGTH.steps)
    assert found.nominal == STRENGTH.nominal
