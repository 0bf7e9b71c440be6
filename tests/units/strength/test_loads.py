from __future__ import annotations

import numpy as np
import pytest

from gageline.errors import ValueProblem
from gageline.strength import Case, Load, Method, combinations, reactions, worst
from gageline.strength.loads import combined, least, moment_along, shear_along

PLAIN = combinations(Method.ASD)[1]  # D + L
LOADS = (Load(Case.DEAD, 0.1, 0.0, 100.0), Load(Case.LIVE, 12.0, 25.0))


def test_reactions_balance_the_loads() -> None:
    found = reactions(LOADS, 100.0, PLAIN)
    assert found.left == pytest.approx(5.0 + 9.0)
    assert found.right == pytest.approx(5.0 + 3.0)


def test_a_partial_load_by_hand() -> None:
    """2 kip/in over the right half of 100 in: 100 kips, 75 in from the left."""
    found = reactions((Load(Case.DEAD, 2.0, 50.0, 100.0),), 100.0, PLAIN)
    assert found.left == pytest.approx(25.0)
    assert found.right == pytest.approx(75.0)


def test_the_worst_combination_of_each_method() -> None:
    """II.A-1A: dead 37.5 and live 113 kips ask for 226 by LRFD and 150.5 by ASD (Design Examples v16)."""
    loads = (Load(Case.DEAD, 75.0, 50.0), Load(Case.LIVE, 226.0, 50.0))
    for method, value, name in (
        (Method.LRFD, 226.0, "1.2D + 1.6L + 0.5Lr"),
        (Method.ASD, 150.5, "D + L"),
    ):
        pair, which = worst(loads, 100.0, method)
        assert pair.left == pytest.approx(value, rel=0.002)
        assert combinations(method)[int(which.left)].name == name


def test_shear_and_moment_along_the_beam() -> None:
    x = np.array([0.0, 25.0, 50.0, 100.0])
    assert shear_along(LOADS, 100.0, PLAIN, x) == pytest.approx([14.0, -0.5, -3.0, -8.0])
    assert moment_along(LOADS, 100.0, PLAIN, x) == pytest.approx([0.0, 318.75, 275.0, 0.0])


def test_a_load_beyond_the_beam_is_refused() -> None:
    with pytest.raises(ValueProblem, match="a live load reaches 120 in along a beam of 100 in"):
        reactions((Load(Case.LIVE, 1.0, 120.0),), 100.0, PLAIN)


def test_a_load_that_ends_where_it_begins_is_refused() -> None:
    with pytest.raises(ValueProblem, match="a load ends at 10 in, where it begins, at 10 in"):
        Load(Case.LIVE, 1.0, 10.0, 10.0)


def test_a_negative_load_is_refused() -> None:
    with pytest.raises(ValueProblem, match="amount = -1 must be more than 0"):
        Load(Case.LIVE, -1.0)


def test_the_largest_and_the_least_of_a_force() -> None:
    """10 dead and -4 live: 1.4D is 14, 1.2D + 1.6L is 5.6; by ASD D is 10 and D + L is 6."""
    force = {Case.DEAD: 10.0, Case.LIVE: -4.0}
    largest, name = combined(force, Method.LRFD)
    assert name == "1.4D"
    assert largest == pytest.approx(14.0)
    assert least(force, Method.LRFD) == pytest.approx(5.6)
    assert combined(force, Method.ASD) == (10.0, "D")
    assert least(force, Method.ASD) == pytest.approx(6.0)


def test_a_given_force_keeps_its_factors() -> None:
    """5 given beside 10 dead: 1.4 10 + 5."""
    assert combined({Case.DEAD: 10.0, Case.GIVEN: 5.0}, Method.LRFD)[0] == pytest.approx(19.0)
