"""Laws of the search: the optimum of tiny cases, and what may not make a plan dearer."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from cutting import least_cost
from gageline.stock.problem import DropValue, Problem, Stick
from gageline.stock.search import Found, search
from gageline.stock.watch import start_watch

MANY = 120


def solve(problem: Problem) -> Found:
    return search(problem, start_watch(30.0))


@st.composite
def problems(draw: st.DrawFn, *, drops: bool = False) -> Problem:
    lengths = draw(st.lists(st.integers(2, 14), min_size=1, max_size=4, unique=True))
    demand = draw(st.lists(st.integers(1, 2), min_size=len(lengths), max_size=len(lengths)))
    count = draw(st.integers(1, 3))
    sticks = []
    for s in range(count):
        length = draw(st.integers(max(lengths) if s == 0 else 4, 24))
        cost = draw(st.integers(10, 60))
        limit = None if s == 0 else draw(st.integers(0, 3))
        fits = () if s == 0 else tuple(draw(st.booleans()) for _ in lengths)
        percent = draw(st.integers(0, 90))
        drop = DropValue(draw(st.integers(1, 8)), draw(st.integers(-1, 1)), (percent * cost, 100 * length))
        sticks.append(Stick(length, cost, limit, fits, drop if drops else None))
    return Problem(tuple(lengths), tuple(demand), tuple(sticks))


@settings(max_examples=MANY, deadline=None)
@given(problems())
def test_optimum_equals_brute_force(problem: Problem) -> None:
    found = solve(problem)
    assert found.proven
    assert found.packing is not None
    assert found.packing.cost == found.bound == least_cost(problem)


@settings(max_examples=MANY, deadline=None)
@given(problems(drops=True))
def test_optimum_with_drops_that_earn_equals_brute_force(problem: Problem) -> None:
    found = solve(problem)
    assert found.proven
    assert found.packing is not None
    assert found.packing.cost == found.bound == least_cost(problem)


@settings(max_examples=MANY, deadline=None)
@given(problems())
def test_limited_sticks_alone_are_solved_or_shown_too_few(problem: Problem) -> None:
    limited = replace(problem, sticks=(replace(problem.sticks[0], limit=2), *problem.sticks[1:]))
    found = solve(limited)
    cost = None if found.packing is None else found.packing.cost
    assert found.proven
    assert cost == least_cost(limited)


@settings(max_examples=MANY, deadline=None)
@given(problems(drops=True), st.integers(4, 24), st.integers(0, 60))
def test_one_more_stick_on_the_rack_never_costs_more(problem: Problem, length: int, cost: int) -> None:
    richer = replace(problem, sticks=(*problem.sticks, Stick(length, cost, 1)))
    before, after = solve(problem), solve(richer)
    assert before.packing is not None
    assert after.packing is not None
    assert after.packing.cost <= before.packing.cost


@settings(max_examples=MANY, deadline=None)
@given(problems(drops=True))
def test_one_piece_less_never_costs_more(problem: Problem) -> None:
    fewer = replace(problem, demand=(problem.demand[0] - 1, *problem.demand[1:]))
    before, after = solve(problem), solve(fewer)
    assert before.packing is not None
    assert after.packing is not None
    assert after.packing.cost <= before.packing.cost


@settings(max_examples=MANY, deadline=None)
@given(problems(), st.integers(1, 2))
def test_kerf_never_lowers_the_cost(problem: Problem, kerf: int) -> None:
    wider = replace(
        problem,
        lengths=tuple(n + kerf for n in problem.lengths),
        sticks=tuple(replace(s, length=s.length + kerf) for s in problem.sticks),
    )
    before, after = solve(problem), solve(wider)
    assert before.packing is not None
    assert after.packing is not None
    assert after.packing.cost >= before.packing.cost
