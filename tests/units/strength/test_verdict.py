"""What the checks of a connection come to."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES
from gageline.strength import Check, Clause, Method, NotChecked, Verdict
from gageline.strength.verdict import Findings, gathered

CLAUSE = Clause("J4.2", "test", "test")


def check(demand: float, capacity: float) -> Check:
    return Check(CLAUSE, "test", demand, capacity, "kip", ())


def verdict(*checks: Check, rules: tuple[Check, ...] = (), N: float = 0.0) -> Verdict:
    return Verdict(replace(EXAMPLES["II.A-4"], V=60.0, N=N), Method.LRFD, checks, rules, ())


def test_findings_are_gathered_in_their_order() -> None:
    one, two, left = check(1, 2), check(3, 4), NotChecked("a", "b")
    found = gathered([Findings((one,), (two,)), Findings(not_checked=(left,)), Findings((two,))])
    assert found == Findings((one, two), (two,), (left,))


def test_the_first_check_governs_and_says_what_can_be_carried() -> None:
    """60 kips use 3/4 of the governing limit state: 80 kips use it up."""
    found = verdict(check(60.0, 80.0), check(60.0, 100.0))
    assert found.governing.capacity == 80.0
    assert found.utilisation == pytest.approx(0.75)
    assert found.capacity == pytest.approx(80.0)
    assert found.passes


def test_beside_an_axial_force_no_single_reaction_is_the_capacity() -> None:
    assert verdict(check(60.0, 80.0), N=5.0).capacity is None


def test_a_broken_rule_or_too_little_strength_does_not_pass() -> None:
    broken = check(1.25, 1.0)
    found = verdict(check(60.0, 80.0), rules=(check(1.0, 1.25), broken))
    assert found.broken_rules == (broken,)
    assert not found.passes
    assert not verdict(check(60.0, 59.0)).passes
