from __future__ import annotations

import pytest

from gageline.sheets.formula import math_of, symbol_of
from gageline.strength import step


@pytest.mark.parametrize(
    ("name", "math"),
    [
        ("t", "t"),
        ("F_y", 'F_"y"'),
        ("b'", "b'"),
        ("F'_nt", 'F\'_"nt"'),
        ("EI", 'italic("EI")'),
        ("λ_p", 'λ_"p"'),
    ],
)
def test_symbols(name: str, math: str) -> None:
    assert symbol_of(name) == math


@pytest.mark.parametrize(
    ("formula", "math"),
    [
        ("F_y A_g", 'F_"y" thin A_"g"'),
        ("a b/c d", "a thin display(frac(b, c)) thin d"),
        ("t d^2/4", "t thin display(frac(d^(2), 4))"),
        ("(a + b)/(c - d)", "display(frac(a + b, c - d))"),
        ("sqrt(a b)", "sqrt(a thin b)"),
        ("min(a, b) + c", "min lr((a, b)) + c"),
        ("2.2 (h/c)^1.65", "2.2 thin lr((display(frac(h, c))))^(1.65)"),
    ],
)
def test_formulas(formula: str, math: str) -> None:
    assert math_of(step("R", formula, 1.0)).split(" = ")[1] == math


def test_numbers_are_put_in_with_times_signs_and_the_unit_stands_upright() -> None:
    line = math_of(step("R_n", "0.60 F_y A_gv", 127.5, "kip", F_y=50.0, A_gv=4.25))
    assert (
        line == 'R_"n" = 0.60 thin F_"y" thin A_"gv" = 0.60 times 50 times 4.25 = 127.5 thin upright("kip")'
    )


def test_a_negative_number_gets_brackets() -> None:
    assert "lr((-2))" in math_of(step("a", "3 b", -6.0, b=-2.0))
