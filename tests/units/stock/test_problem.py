"""The question in whole numbers."""

from __future__ import annotations

import pytest

from gageline.stock.problem import DropValue, Pattern, Problem, Stick, packing


def test_cost_of_a_pattern_is_the_stick_less_the_drop() -> None:
    drop = DropValue(keep=30, extra=5, rate=(1, 2))
    problem = Problem((20,), (9,), (Stick(100, 70, drop=drop),))
    assert problem.cost(Pattern(0, ((0, 3),))) == 70 - 45 // 2
    assert problem.cost(Pattern(0, ((0, 4),))) == 70


def test_step_is_the_common_divisor_of_the_costs() -> None:
    assert Problem((1,), (1,), (Stick(9, 2080), Stick(9, 4000), Stick(9, 5880))).step() == 40


def test_pieces_beyond_the_demand_are_left_out() -> None:
    problem = Problem((20, 10), (2, 1), (Stick(50, 7),))
    plan = packing(problem, [Pattern(0, ((0, 2),)), Pattern(0, ((0, 1), (1, 1)))])
    assert plan.cost == 14
    assert plan.patterns == ((Pattern(0, ((0, 2),)), 1), (Pattern(0, ((1, 1),)), 1))


def test_a_shortfall_is_an_error_of_the_program() -> None:
    with pytest.raises(ArithmeticError, match="wanted"):
        packing(Problem((20,), (2,), (Stick(50, 7),)), [Pattern(0, ((0, 1),))])
