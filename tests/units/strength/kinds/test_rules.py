"""Rules of detail: edges, spacing and least weld."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.strength import Bolted, Check, Connection
from gageline.strength.check import Clause, step
from gageline.strength.kinds import detail_rules
from gageline.strength.kinds.rules import at_least, at_most

A4 = EXAMPLES["II.A-4"]
MM = 25.4
CLAUSE = Clause("J3.4", "test", "test")


def rules(connection: Connection = A4) -> dict[str, Check]:
    return {rule.title: rule for rule in detail_rules(connection).rules}


def with_bolts(joint: Bolted) -> Connection:
    return replace(A4, to_beam=joint, to_support=joint)


def test_a_rule_is_kept_at_its_limit() -> None:
    limit = step("l", "l_t", 1.0, "in", l_t=1.0)
    assert at_least(CLAUSE, "edge", limit, 1.0).passes
    assert not at_least(CLAUSE, "edge", limit, 0.99).passes
    assert at_most(CLAUSE, "edge", limit, 1.0).passes
    assert not at_most(CLAUSE, "edge", limit, 1.01).passes


@pytest.mark.parametrize(
    ("d", "least"),
    [
        (0.75, 1.0),
        (0.875, 1.125),
        (1.25, 1.625),
        (1.5, 1.875),
        (20 / 25.4, 26 / 25.4),
        (24 / 25.4, 30 / 25.4),
    ],
)
def test_least_edges_of_tables_j3_4_and_j3_4m(d: float, least: float) -> None:
    joint = replace(bolts(3, 2.125, 1.375), d=d)
    assert rules(with_bolts(joint))[
        "edge distance in the fitting, bolts to the beam"
    ].demand == pytest.approx(least)


def test_distances_of_example_4() -> None:
    """12 1/4 = 3 in, 8/3 3/4 = 2 in, 24 1/4 = 6 in; h_o/2 = 8 in; beam end 1 3/8, cope 1 1/4 in."""
    found = rules()
    assert found["edge distance, bolts to the beam"].capacity == 3.0
    assert found["pitch of the bolts to the beam"].capacity in {3.0, 6.0}
    assert found["length of the connection"].demand == 8.0
    assert found["end of the beam to its bolts, under-run taken off"].capacity == pytest.approx(1.375)
    assert found["cope to the first row of bolts"].capacity == 1.25


def test_uneven_pitches_have_their_least_and_their_most() -> None:
    joint = replace(bolts(3, 2.125, 1.375), pitch=1.75, uneven=(1.75, 6.5))
    broken = [rule for rule in detail_rules(with_bolts(joint)).rules if not rule.passes]
    assert {(rule.demand, rule.capacity) for rule in broken if "pitch" in rule.title} == {
        (2.0, 1.75),
        (6.5, 6.0),
    }


def test_columns_keep_their_distance() -> None:
    near = replace(bolts(3, 2.125, 1.375), columns=2, between=1.5)
    broken = {rule.title for rule in detail_rules(with_bolts(near)).rules if not rule.passes}
    assert broken == {"columns of the bolts to the beam", "columns of the bolts to the support"}


def test_least_welds_go_by_the_thinner_part() -> None:
    """II.A-2A: angles 3/8, flange 0.710: Table J2.4 asks 3/16 in of the thinner."""
    assert rules(EXAMPLES["II.A-2A"])["weld to the support"].demand == pytest.approx(3 / 16)


def test_a_seat_has_the_rules_of_its_support_alone() -> None:
    """L7x4x5/8 on a flange of 0.710 in: Table J2.4 asks 1/4 in of the thinner, 5/8."""
    found = rules(EXAMPLES["II.A-16"])
    assert {title: rule.demand for title, rule in found.items()} == {"weld to the support": 1 / 4}


def test_metric_classes_are_left_to_the_engineer() -> None:
    metric = with_bolts(replace(bolts(3, 2.125, 1.375), group="8.8"))
    (item,) = detail_rules(metric).not_checked
    assert item.what == "whether bolts of an ISO 898-1 property class are accepted"
    assert not detail_rules(A4).not_checked
