"""Column generation: its value is that of the linear program over every pattern there is."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import linprog

from cutting import all_patterns, least_cost, random_problem
from gageline.stock.columns import Master, Relaxed
from gageline.stock.problem import Pattern, Problem, Stick
from gageline.stock.watch import start_watch


def relaxed(problem: Problem) -> Relaxed:
    return Master(problem).solve(np.array(problem.demand), problem.limits(), start_watch(20.0))


def over_all_patterns(problem: Problem) -> float:
    """The same program written out in full, solved by scipy."""
    patterns = all_patterns(problem)
    cover = np.zeros((len(problem.demand), len(patterns)))
    uses = np.zeros((len(problem.sticks), len(patterns)))
    for j, pattern in enumerate(patterns):
        uses[pattern.stick, j] = 1.0
        for i, n in pattern.counts:
            cover[i, j] = n
    limits = np.concatenate([-np.array(problem.demand), problem.limits()])
    solved = linprog([problem.cost(p) for p in patterns], A_ub=np.vstack([-cover, uses]), b_ub=limits)
    assert solved.fun is not None
    return float(solved.fun)


@pytest.mark.parametrize("drops", [False, True])
@pytest.mark.parametrize("seed", range(25))
def test_value_of_the_program_over_every_pattern(seed: int, *, drops: bool) -> None:
    problem = random_problem(seed, drops=drops)
    found = relaxed(problem)
    best = least_cost(problem)
    assert best is not None
    assert found.finished
    assert found.short == pytest.approx(0.0, abs=1e-9)
    assert found.value == pytest.approx(over_all_patterns(problem), rel=1e-7)
    assert found.value <= best + 1e-6


def test_three_of_ten_share_sticks_in_fractions() -> None:
    # a stick of 100 takes three 33s: ten of them take 10/3 sticks of 30
    problem = Problem((33,), (10,), (Stick(100, 30),))
    master = Master(problem)
    found = master.solve(np.array([10]), problem.limits(), start_watch(5.0))
    assert found.value == pytest.approx(100.0)
    assert found.duals[0] == pytest.approx(10.0)
    assert dict(zip(master.patterns, found.uses, strict=True))[Pattern(0, ((0, 3),))] == pytest.approx(10 / 3)


def test_prices_of_the_demand_add_up_to_the_value() -> None:
    problem = Problem((51, 49, 34, 33), (4, 4, 2, 4), (Stick(100, 10),))
    found = relaxed(problem)
    assert found.value == pytest.approx(60.0)  # 51 + 49 four times, 34 + 33 + 33 twice
    assert found.duals @ np.array(problem.demand) == pytest.approx(found.value)


def test_shortfall_counts_the_pieces_that_find_no_stick() -> None:
    # one stick of 100 holds two of the five 45s, whatever it costs
    problem = Problem((45,), (5,), (Stick(100, 30, 1),))
    found = Master(problem).solve(np.array([5]), np.array([1]), start_watch(5.0), shortfall=True)
    assert found.value == pytest.approx(3.0)
    assert found.short == pytest.approx(3.0)
    # and with cost counted the same pieces are missing
    found = Master(problem).solve(np.array([5]), np.array([1]), start_watch(5.0))
    assert found.short == pytest.approx(3.0)


def test_shortfall_and_cost_may_be_asked_in_turn() -> None:
    problem = Problem((45,), (4,), (Stick(100, 30),))
    master = Master(problem)
    demand, watch = np.array([4]), start_watch(5.0)
    assert master.solve(demand, np.array([4]), watch).value == pytest.approx(60.0)
    assert master.solve(demand, np.array([1]), watch, shortfall=True).value == pytest.approx(2.0)
    assert master.solve(demand, np.array([4]), watch).value == pytest.approx(60.0)


def test_patterns_with_more_than_is_still_wanted_are_closed() -> None:
    # three 33s a stick while ten are wanted; of two, one stick each pair: no fraction of three pays
    problem = Problem((33,), (10,), (Stick(100, 30),))
    master = Master(problem)
    watch = start_watch(5.0)
    master.solve(np.array([10]), np.array([10]), watch)
    assert master.solve(np.array([2]), np.array([10]), watch).value == pytest.approx(30.0)


def test_a_pattern_given_twice_is_held_once() -> None:
    master = Master(Problem((33,), (10,), (Stick(100, 30),)))
    one, two = Pattern(0, ((0, 1),)), Pattern(0, ((0, 2),))
    master.add([one, one])
    master.add([two, one])
    assert master.patterns == [one, two]


def test_kinds_that_a_stick_does_not_accept_come_from_the_dearer_one() -> None:
    problem = Problem((50, 50), (2, 2), (Stick(100, 10, fits=(True, False)), Stick(100, 40)))
    assert relaxed(problem).value == pytest.approx(50.0)


def test_a_tilt_moves_the_demand_by_its_price() -> None:
    problem = Problem((33,), (9,), (Stick(100, 30),))
    found = Master(problem).solve(np.array([9]), problem.limits(), start_watch(5.0), tilt=np.array([0.3]))
    assert found.value == pytest.approx(93.0)  # 9.3 thirds of a stick


def test_time_over_is_said() -> None:
    problem = Problem((51, 49, 34, 33), (4, 4, 2, 4), (Stick(100, 10),))
    found = Master(problem).solve(np.array(problem.demand), problem.limits(), start_watch(0.0))
    assert not found.finished
