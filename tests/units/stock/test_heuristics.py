"""Quick plans: whole plans within the limits, never below the optimum, and known answers."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import numpy as np
import pytest

from cutting import all_patterns, least_cost, random_problem
from gageline.stock.columns import Master
from gageline.stock.heuristics import best_fit, dive, fill_rooms, settle
from gageline.stock.problem import Pattern, Problem, Stick, packing
from gageline.stock.watch import start_watch

PAIRS = Problem((51, 49, 34, 33), (4, 4, 2, 4), (Stick(100, 10),))


def check(problem: Problem, patterns: list[Pattern]) -> int:
    """Cost of a plan whose patterns are all possible, within the limits, and hold the demand or more."""
    assert set(patterns) <= set(all_patterns(problem))
    used = Counter(p.stick for p in patterns)
    assert all(used[s] <= n for s, n in enumerate(problem.limits()))
    held = Counter[int]()
    for pattern in patterns:
        held.update(dict(pattern.counts))
    assert all(held[i] >= n for i, n in enumerate(problem.demand))
    return packing(problem, patterns).cost


def dived(problem: Problem, target: int | None, seconds: float = 20.0) -> list[Pattern] | None:
    return dive(problem, Master(problem), problem.limits(), target, start_watch(seconds))


@pytest.mark.parametrize("drops", [False, True])
@pytest.mark.parametrize("seed", range(25))
def test_quick_plans_are_plans_and_cost_no_less_than_the_best(seed: int, *, drops: bool) -> None:
    problem = random_problem(seed, drops=drops)
    best = least_cost(problem)
    assert best is not None
    quick = best_fit(problem)
    assert quick is not None
    assert check(problem, quick) >= best
    deep = dived(problem, None)
    if deep is not None:
        assert check(problem, deep) >= best
    # few pieces are ended exactly: at the best cost there is a plan, and asked for less it finds none cheaper
    exact = dived(problem, best)
    assert exact is not None
    assert check(problem, exact) == best
    less = dived(problem, best - 1)
    assert less is None or check(problem, less) >= best


def test_longest_first_each_into_the_fullest_stick_that_takes_it() -> None:
    # 60 and 50 open a stick each; 40 goes to the room of 40, not of 50; 45 to the room of 50
    problem = Problem((60, 50, 45, 40), (1, 1, 1, 1), (Stick(100, 7),))
    found = best_fit(problem)
    assert found is not None
    assert {p.counts for p in found} == {((0, 1), (3, 1)), ((1, 1), (2, 1))}


def test_a_new_stick_is_the_cheapest_for_its_length_that_takes_the_piece() -> None:
    # the long one is cheaper by length, but does not take the piece of kind 1
    problem = Problem((50, 40), (2, 1), (Stick(60, 10), Stick(100, 15, fits=(True, False))))
    found = best_fit(problem)
    assert found is not None
    assert Counter(found) == Counter([Pattern(1, ((0, 2),)), Pattern(0, ((1, 1),))])


def test_a_stick_too_good_for_its_pieces_is_changed_in_the_end() -> None:
    # the long stick is the better bargain by length; alone, one 40 needs only the short one
    problem = Problem((40,), (3,), (Stick(90, 10), Stick(45, 6)))
    found = best_fit(problem)
    assert found is not None
    assert check(problem, found) == 16
    # where none of the short ones is left it stays
    none_left = replace(problem, sticks=(Stick(90, 10), Stick(45, 6, 0)))
    found = best_fit(none_left)
    assert found is not None
    assert check(none_left, found) == 20


def test_a_stick_freed_by_a_change_is_there_for_the_next() -> None:
    # 50 takes the only 60, 45 and 12 a 100; then 50 goes to a stick of its own length and 57 to the 60
    problem = Problem((50, 45, 12), (1, 1, 1), (Stick(60, 50, 1), Stick(100, 90), Stick(50, 48)))
    found = best_fit(problem)
    assert found is not None
    assert check(problem, found) == 48 + 50


def test_pieces_left_over_make_no_plan() -> None:
    assert best_fit(Problem((40,), (3,), (Stick(90, 10, 1),))) is None
    assert best_fit(Problem((40, 30), (1, 1), (Stick(90, 10, fits=(True, False)),))) is None
    assert dived(Problem((40,), (3,), (Stick(90, 10, 1),)), None) is None


def test_a_dive_finds_a_perfect_packing() -> None:
    found = dived(PAIRS, 60)
    assert found is not None
    assert packing(PAIRS, found).cost == 60
    assert dived(PAIRS, 59) is None


def test_a_tilted_dive_gives_a_plan_of_the_real_demand() -> None:
    for tilt in ([0.01, 0.0, -0.01, 0.0], [0.0, -0.01, 0.0, 0.01]):
        found = dive(PAIRS, Master(PAIRS), PAIRS.limits(), 70, start_watch(20.0), np.array(tilt))
        assert found is not None
        assert check(PAIRS, found) in {60, 70}


def test_no_time_makes_no_dive() -> None:
    assert dived(PAIRS, None, seconds=0.0) is None


def test_a_dive_leaves_the_limits_it_was_given() -> None:
    limits = PAIRS.limits()
    dive(PAIRS, Master(PAIRS), limits, None, start_watch(20.0))
    assert limits.tolist() == PAIRS.limits().tolist()


def test_no_more_is_settled_than_sticks_and_pieces_are_there() -> None:
    # rounding may make whole what is not: for three uses there are two sticks, for two pairs three pieces
    long, pair = Pattern(0, ((0, 1),)), Pattern(1, ((1, 2),))
    problem = Problem((90, 40), (5, 3), (Stick(100, 10, 2), Stick(80, 8)))
    demand, left = np.array([5, 3]), np.array([2, 4])
    assert settle(problem, [long, pair], np.array([3.0, 2.0]), demand, left) == [long, long, pair]
    assert demand.tolist() == [3, 1]
    assert left.tolist() == [0, 3]


def test_the_largest_fraction_is_settled_where_nothing_is_whole() -> None:
    some, more = Pattern(0, ((0, 1),)), Pattern(0, ((1, 1),))
    problem = Problem((90, 80), (2, 2), (Stick(100, 10),))
    demand, left = np.array([2, 2]), np.array([4])
    assert settle(problem, [some, more], np.array([0.3, 0.6]), demand, left) == [more]
    assert demand.tolist() == [2, 1]
    assert left.tolist() == [3]


def test_pieces_still_wanted_go_into_the_rooms_left() -> None:
    # rooms of 40 and 30 for a 40 and a 30; the third stick stays as it is
    problem = Problem((70, 60, 40, 30, 95), (1, 1, 1, 1, 1), (Stick(100, 10),))
    settled = [Pattern(0, ((0, 1),)), Pattern(0, ((1, 1),)), Pattern(0, ((4, 1),))]
    found = fill_rooms(problem, settled, start_watch(5.0))
    assert found is not None
    assert Counter(found) == Counter(
        [Pattern(0, ((0, 1), (3, 1))), Pattern(0, ((1, 1), (2, 1))), Pattern(0, ((4, 1),))]
    )


def test_rooms_too_small_or_of_sticks_not_accepted_make_no_plan() -> None:
    problem = Problem((70, 31), (2, 1), (Stick(100, 10), Stick(101, 12, fits=(True, False))))
    settled = [Pattern(0, ((0, 1),)), Pattern(1, ((0, 1),))]
    assert fill_rooms(problem, settled, start_watch(5.0)) is None
    free = replace(problem, sticks=(Stick(100, 10), Stick(101, 12)))
    found = fill_rooms(free, settled, start_watch(5.0))
    assert found is not None
    assert Pattern(1, ((0, 1), (1, 1))) in found


def test_a_full_stick_has_no_room() -> None:
    # not even for a piece of one unit, the shortest that there can be
    problem = Problem((100, 99, 1), (1, 1, 2), (Stick(100, 10),))
    full, room = Pattern(0, ((0, 1),)), Pattern(0, ((1, 1),))
    assert fill_rooms(problem, [full, room], start_watch(5.0)) is None
    assert fill_rooms(replace(problem, demand=(1, 0, 1)), [full], start_watch(5.0)) is None
    found = fill_rooms(replace(problem, demand=(1, 1, 1)), [full, room], start_watch(5.0))
    assert found is not None
    assert Counter(found) == Counter([full, Pattern(0, ((1, 1), (2, 1)))])


def test_nothing_wanted_changes_nothing() -> None:
    problem = Problem((70,), (1,), (Stick(100, 10),))
    settled = [Pattern(0, ((0, 1),))]
    assert fill_rooms(problem, settled, start_watch(0.0)) == settled
