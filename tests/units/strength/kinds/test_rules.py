"""Rules of detail: edges, spacing and least weld."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from connections import EXAMPLES, bolts
from gageline.strength import Bolted, Check, Connection, Fillet, Holes
from gageline.strength.aisc360.j3_bolts import Hole
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
    assert found["bolts to the beam, the nearest edge of the fitting"].capacity == 3.0
    assert found["end of the beam to its bolts, at most"].capacity == pytest.approx(12 * 0.355)
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
    """L7x4x5/8 on a flange of 0.710 in: Table J2.4 asks 1/4 in of the thinner, 5/8; J2.2b lets 9/16 be."""
    found = rules(EXAMPLES["II.A-16"])
    assert set(found) == {"weld to the support", "weld along the edges of the angle, to the support"}
    assert found["weld to the support"].demand == 1 / 4
    assert found["weld along the edges of the angle, to the support"].capacity == 9 / 16


@pytest.mark.parametrize(("t", "leg", "kept"), [
    (1 / 4, 3 / 16, True), (1 / 4, 1 / 4, False), (3 / 16, 3 / 16, True), (3 / 16, 1 / 4, False),
    (3 / 8, 5 / 16, True), (3 / 8, 3 / 8, False),
])  # fmt: skip
def test_a_weld_along_an_edge_leaves_the_edge_to_be_seen(t: float, leg: float, kept: bool) -> None:
    """J2.2b(b): under 1/4 in as thick as the part, from there on 1/16 in less."""
    example = EXAMPLES["II.A-2A"]
    connection = replace(example, fitting=replace(example.fitting, t=t), to_support=Fillet(leg))
    assert rules(connection)["weld along the edges of the angle, to the support"].passes is kept


def test_a_plate_welded_square_on_has_no_largest_weld() -> None:
    assert not any("edges" in title for title in rules(EXAMPLES["II.A-18"]))
    assert not any("edges" in title for title in rules(EXAMPLES["II.A-11A"]))


def test_the_most_pitch_goes_by_the_thinner_part() -> None:
    """J3.6: 24 times the thinner of the parts in contact; angles 1/4 in, a web of 0.1 in gives 2.4 in."""
    assert A4.beam is not None
    thin = replace(A4, beam=replace(A4.beam, t_w=0.1))
    found = [r for r in detail_rules(thin).rules if r.title == "pitch of the bolts to the beam"]
    assert found[1].capacity == pytest.approx(2.4)
    assert not found[1].passes


def test_a_bolt_is_held_to_its_nearest_edge_alone() -> None:
    """J3.6: two rows 5 in from the ends of a leg, but 1 3/8 in from its side."""
    joint = replace(bolts(2, 2.125, 1.375), edge_top=5.0, edge_bottom=5.0)
    assert rules(with_bolts(joint))["bolts to the beam, the nearest edge of the fitting"].demand == 1.375


def test_the_least_length_is_half_of_t_as_the_tables_give_it() -> None:
    """II.A-17A: T/2; W18x50 has T 15 1/8 in; without a table the flat of the web, 18.0 - 2 0.972."""
    example = EXAMPLES["II.A-11B"]
    assert example.beam is not None
    listed = replace(example, beam=replace(example.beam, T=15.125))
    assert rules(listed)["length of the connection"].demand == pytest.approx(7.5625)
    assert rules(example)["length of the connection"].demand == pytest.approx(8.028)


def test_metric_classes_are_left_to_the_engineer() -> None:
    metric = with_bolts(replace(bolts(3, 2.125, 1.375), group="8.8"))
    (item,) = detail_rules(metric).not_checked
    assert item.what == "whether bolts of an ISO 898-1 property class are accepted"
    assert not detail_rules(A4).not_checked


ROUND = Holes(Hole.STANDARD, 13 / 16, 13 / 16)
HOLES = {
    "OVS": Holes(Hole.OVERSIZED, 15 / 16, 15 / 16),
    "SSL along": Holes(Hole.SHORT_PARALLEL, 1.0, 13 / 16),
    "SSL across": Holes(Hole.SHORT_PERPENDICULAR, 13 / 16, 1.0),
    "LSL along": Holes(Hole.LONG_PARALLEL, 1.875, 13 / 16),
    "LSL across": Holes(Hole.LONG_PERPENDICULAR, 13 / 16, 1.875),
}


def forbidden(holes: str, other: Holes = ROUND, N: float = 0.0) -> list[str]:
    """What Section J3.3 forbids of the bolts on the beam."""
    joint = replace(bolts(3, 2.125, 1.375), holes=HOLES[holes], other=other)
    connection = replace(A4, to_beam=joint, N=N)
    return [rule.title for rule in detail_rules(connection).rules if not rule.passes and rule.binding]


@pytest.mark.parametrize(
    ("holes", "what"),
    [
        ("OVS", "oversized holes"),
        ("SSL along", "slots along the load"),
        ("LSL along", "slots along the load"),
    ],
)
def test_holes_that_a_bearing_joint_may_not_have(holes: str, what: str) -> None:
    """AISC 360-22 J3.3: oversized holes and slots along the load are for slip-critical joints alone."""
    (rule,) = forbidden(holes)
    assert rule == (
        f"{what} in the fitting, bolts to the beam: not allowed in a bearing joint; "
        "use STD, or slots across the load, or slip-critical bolts (A325-SC)"
    )


def test_slots_across_the_load_are_allowed_and_long_ones_in_one_part() -> None:
    """J3.3: short slots in any part, long slots in one of the two, both square to the load."""
    assert forbidden("SSL across", HOLES["SSL across"]) == []
    assert forbidden("LSL across") == []
    (both,) = forbidden("LSL across", HOLES["LSL across"])
    assert both.startswith("long slots in both parts, bolts to the beam: not allowed in any joint")


def test_an_axial_force_turns_the_load_along_level_slots() -> None:
    """RCSC 4.3: across the load means within 10 degrees; 10 kip level to 60 up lean 9.5, 11 lean 10.4."""
    assert forbidden("SSL across", N=10.0) == []
    (turned,) = forbidden("SSL across", N=11.0)
    assert turned.startswith("slots along the load in the fitting, bolts to the beam")


@pytest.mark.parametrize(
    ("holes", "end", "side"),
    [
        ("OVS", 1.0625, 1.0625),
        ("SSL along", 1.125, 1.0),
        ("SSL across", 1.0, 1.125),
        ("LSL along", 1.5625, 1.0),
        ("LSL across", 1.0, 1.5625),
    ],
)
def test_least_edges_of_slots_and_oversized_holes(holes: str, end: float, side: float) -> None:
    """Table J3.5 for 3/4 bolts: C2 1/16 oversized, 1/8 short slot, 3/4 d long slot, 0 along the edge."""
    found = rules(with_bolts(replace(bolts(3, 2.125, 1.375), holes=HOLES[holes])))
    assert found["end distance in the fitting, bolts to the beam"].demand == pytest.approx(end)
    assert found["edge distance in the fitting, bolts to the beam"].demand == pytest.approx(side)


def test_the_holes_of_the_web_ask_for_their_own_edges() -> None:
    """Table J3.5: an oversized hole for a 3/4 bolt stands 1 1/16 in from the end of the beam and the cope."""
    found = rules(replace(A4, to_beam=replace(bolts(3, 2.125, 1.375), other=HOLES["OVS"])))
    assert found["end of the beam to its bolts, under-run taken off"].demand == pytest.approx(1.0625)
    assert found["cope to the first row of bolts"].demand == pytest.approx(1.0625)


@pytest.mark.parametrize(
    ("name", "changes", "title"),
    [
        ("II.A-4", {"t": 0.75}, "thickness of the angles, so that the beam's end can turn"),
        ("II.A-11A", {"t": 0.5}, "thickness of the end plate, so that the beam's end can turn"),
        ("II.A-28A", {"t": 0.3125}, "thickness of the single angle for its bolts"),
    ],
)
def test_simple_connections_must_let_the_beam_turn(name: str, changes: dict[str, Any], title: str) -> None:
    """Manual Part 10, from memory; the examples themselves keep the limits."""
    example = EXAMPLES[name]
    bent = replace(example, fitting=replace(example.fitting, **changes))

    def broken(connection: Connection) -> set[str]:
        return {rule.title for rule in detail_rules(connection).rules if not rule.passes}

    assert title in broken(bent)
    assert title not in broken(example)


@pytest.mark.parametrize(("gage", "kept"), [(1.5, False), (1.75, True), (2.75, True), (3.0, False)])
def test_the_bolts_of_an_end_plate_stand_three_and_a_half_to_five_and_a_half_apart(
    gage: float, kept: bool
) -> None:
    plate = replace(EXAMPLES["II.A-11A"], to_support=bolts(3, gage, 1.25))
    found = [rule for rule in detail_rules(plate).rules if "both sides of the web" in rule.title]
    assert all(rule.passes for rule in found) is kept
