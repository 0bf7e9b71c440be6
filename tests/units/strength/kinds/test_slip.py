"""Slip-critical joints: published strengths of a bolt, put into whole connections."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts, of_step
from gageline.strength import Bolted, Check, Connection, Holes, Method, check_connection
from gageline.strength.aisc360.j3_bolts import Hole
from gageline.strength.kinds import detail_rules, slip_checks

A1, A18, A28, A11B, A16 = (EXAMPLES[f"II.A-{name}"] for name in ("1A", "18", "28A", "11B", "16"))


def slipping(connection: Connection, surface: str = "A", **changes: object) -> Connection:
    def held(joint: object) -> object:
        changed = {"surface": surface, **changes}
        return replace(joint, **changed) if isinstance(joint, Bolted) else joint  # type: ignore[arg-type] # any field

    return replace(connection, to_beam=held(connection.to_beam), to_support=held(connection.to_support))  # type: ignore[arg-type] # the same joints


def checks(connection: Connection, method: Method = Method.LRFD) -> dict[str, Check]:
    return {check.title.split(",")[0]: check for check in slip_checks(connection, method).checks}


def test_bolts_that_bear_do_not_slip() -> None:
    assert not slip_checks(A1, Method.LRFD).checks
    assert not slip_checks(A1, Method.LRFD).not_checked


@pytest.mark.parametrize(("method", "one", "two"), [(Method.LRFD, 9.49, 19.0), (Method.ASD, 6.33, 12.7)])
def test_double_angles_hold_by_two_planes_and_by_pairs(method: Method, one: float, two: float) -> None:
    """Examples J.5 and J.4A: 3/4 group 120, class A: 9.49 and 6.33 kips a plane; 8 rows."""
    found = checks(slipping(A1), method)
    assert found["slip of the bolts to the beam"].capacity == pytest.approx(8 * two, rel=0.005)
    assert found["slip of the bolts to the support"].capacity == pytest.approx(16 * one, rel=0.005)


def test_class_b_holds_five_thirds_of_class_a() -> None:
    """Section J3.9: 0.50 against 0.30."""
    a, b = checks(slipping(A1)), checks(slipping(A1, "B"))
    for title, check in a.items():
        assert b[title].capacity / check.capacity == pytest.approx(5 / 3)


def test_holes_lower_the_factors() -> None:
    """J.4B: long slots 0.70 against 1.00; oversized ones 0.85."""
    for kind, phi in (
        (Hole.LONG_PERPENDICULAR, 0.70),
        (Hole.OVERSIZED, 0.85),
        (Hole.SHORT_PERPENDICULAR, 1.0),
    ):
        wide = slipping(A1, holes=Holes(kind, 13 / 16, 1.0))
        for title, check in checks(wide).items():
            assert check.capacity == pytest.approx(phi * checks(slipping(A1))[title].capacity)


def test_oversized_holes_are_allowed_where_bolts_do_not_bear() -> None:
    wide = Holes(Hole.OVERSIZED, 15 / 16, 15 / 16)
    along = Holes(Hole.LONG_PARALLEL, 1.875, 13 / 16)
    assert not [rule for rule in detail_rules(slipping(A1, holes=wide)).rules if rule.binding]
    broken = [r.title for r in detail_rules(slipping(A1, holes=along, other=along)).rules if r.binding]
    assert broken == [
        f"long slots in both parts, bolts to the {where}: not allowed in any joint; use STD in one of them"
        for where in ("beam", "support")
    ]


def test_a_single_plate_holds_by_its_coefficient() -> None:
    """II.A-18: C/n 0.885 for four bolts at a/2; one plane of 9.49 kips."""
    found = checks(slipping(A18))["slip of the bolts to the beam"]
    assert of_step(found, "R_n") == pytest.approx(0.885 * 4 * 9.492, rel=0.006)


def test_a_single_angle_is_eccentric_on_its_support() -> None:
    """II.A-28A in the table of single angles: C 3.07 for four bolts, 2 1/2 in from the reaction."""
    tabled = replace(A28, to_support=bolts(4, 2.5 - 0.300 / 2, 1.25))
    found = checks(slipping(tabled))["slip of the bolts to the support"]
    assert found.capacity == pytest.approx(3.07 * 9.492, rel=0.006)


@pytest.mark.parametrize(("method", "N"), [(Method.LRFD, 72.0), (Method.ASD, 48.0)])
def test_a_pull_takes_friction_away(method: Method, N: float) -> None:
    """J.5: eight 3/4 bolts, 72 and 48 kips of tension: k_sc 0.716; 54.4 and 36.3 kips."""
    joint = replace(bolts(4, 2.75, 1.5), surface="A")
    pulled = replace(A11B, to_support=joint, N=N)
    (check,) = slip_checks(pulled, method).checks
    assert of_step(check, "k_sc") == pytest.approx(0.716, rel=0.01)
    assert check.capacity == pytest.approx(54.4 if method is Method.LRFD else 36.3, rel=0.01)


def test_a_pull_turns_the_load_along_level_slots() -> None:
    """Both forces on the web's bolts: short slots have 0.85 then."""
    slots = slipping(replace(A1, N=60.0), holes=Holes(Hole.SHORT_PERPENDICULAR, 13 / 16, 1.0))
    check = checks(slots)["slip of the bolts to the beam"]
    assert check.demand == pytest.approx((226**2 + 60**2) ** 0.5)
    assert check.capacity == pytest.approx(0.85 * 8 * 2 * 9.492, rel=0.001)


def test_a_seat_holds_by_pairs_on_its_support() -> None:
    seat = replace(A16, to_support=replace(bolts(2, 2.75, 1.5), surface="A"))
    (check,) = slip_checks(seat, Method.LRFD).checks
    assert check.capacity == pytest.approx(4 * 9.492, rel=0.001)


def test_slip_stands_beside_bearing_in_the_whole_connection() -> None:
    verdict = check_connection(slipping(A1), Method.LRFD)
    titles = [check.title for check in verdict.checks]
    assert "bolts through the beam web" in titles
    assert verdict.governing.title == "slip of the bolts to the beam, surfaces A"
    assert any(item.what.startswith("the faying surfaces") for item in verdict.not_checked)
