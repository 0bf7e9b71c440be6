"""Axial force through the bolts of Design Example II.A-18: PL1/4x4-1/2, four 3/4 bolts, W18x35 coped."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts, check_named
from gageline.strength import Connection, Method, Verdict, check_connection
from gageline.strength.kinds.axial import pulled_block, resultant_of

LRFD, ASD = Method.LRFD, Method.ASD
PULLED = replace(EXAMPLES["II.A-18"], V=39.8, N=20.0)


def verdict(connection: Connection = PULLED, method: Method = LRFD) -> Verdict:
    return check_connection(connection, method)


def test_both_forces_as_one() -> None:
    """3, 4 and 5; the angle from upright has the tangent 4/3."""
    total, angle = resultant_of(replace(PULLED, V=3.0, N=4.0))
    assert total == pytest.approx(5.0)
    assert angle == pytest.approx(53.13, abs=0.005)


def test_the_block_between_the_outer_rows_of_a_plate() -> None:
    """Holes of 7/8 in: 2 (1.5 - 0.4375) 0.25 = 0.531 in² tear, (9 - 3 0.875) 0.25 = 1.594 in² pull.

    min(39 0.531, 30 0.75) + 65 1.594 = 20.7 + 103.6 = 124.3 kips.
    """
    joint = bolts(4, 3.0, 1.5)
    block = pulled_block(PULLED.fitting.steel, 0.25, joint, joint.holes, 1.5, 1.25)
    assert block.nominal == pytest.approx(124.3, rel=1e-3)


def test_a_single_row_tears_out_with_the_free_end() -> None:
    """(1.5 - 0.4375) 0.25 = 0.266 in² tear, (1.25 - 0.4375) 0.25 = 0.203 in² pull: 10.4 + 13.2 kips."""
    joint = bolts(1, 3.0, 1.5)
    block = pulled_block(PULLED.fitting.steel, 0.25, joint, joint.holes, 1.5, 1.25)
    assert block.nominal == pytest.approx(39 * 0.265625 + 65 * 0.203125, rel=1e-6)


def test_the_plate_yields_through_by_equation_9_1() -> None:
    """P_c 0.9 50 2.875 = 129.4, V_c 30 2.875 = 86.25, M_c 0.9 50 8.266 = 372.0, M_r 39.8 1.5 = 59.7.

    59.7/372.0 + (20/129.4)^2 + (39.8/86.25)^4 = 0.1605 + 0.0239 + 0.0453 = 0.2297.
    """
    check = check_named(verdict(), "yielding of the fitting, both forces")
    assert check.utilisation == pytest.approx(0.2297, rel=1e-3)


def test_both_block_shears_by_the_sum_of_their_squares() -> None:
    found = verdict()
    level = check_named(found, "block shear of the fitting, axial force")
    assert level.capacity == pytest.approx(0.75 * 124.3, rel=1e-3)
    upright = check_named(found, "block shear of the plate")
    both = check_named(found, "block shear of the fitting, both forces")
    assert both.utilisation == pytest.approx(upright.utilisation**2 + level.utilisation**2)


def test_the_bolts_carry_the_resultant_less_their_eccentricity() -> None:
    """The reaction alone takes 39.8 of 58.7 kips; the resultant of 44.5 kips takes a larger share."""
    found = verdict()
    alone = check_named(found, "bolts through the beam web, eccentric")
    both = check_named(found, "bolts through the beam web, both forces")
    assert both.demand == pytest.approx(44.54, rel=1e-3)
    assert both.utilisation > alone.utilisation


def test_a_web_without_a_cope_tears_only_between_its_rows() -> None:
    """End 3 - 0.75 in: 2 (2.25 - 0.4375) 0.3 tear, (9 - 3 0.875) 0.3 pull: 42.4 + 124.3 kips."""
    assert PULLED.beam is not None
    whole = verdict(replace(PULLED, beam=replace(PULLED.beam, top=None)))
    check = check_named(whole, "block shear of the beam web, axial force")
    yielding, rupture = 30 * 2 * 2.25 * 0.3, 39 * 2 * 1.8125 * 0.3
    assert check.capacity == pytest.approx(0.75 * (min(yielding, rupture) + 65 * 6.375 * 0.3))
    assert "block shear of the beam web, both forces" not in {one.title for one in whole.checks}


def test_all_bolted_angles_are_followed_to_the_support() -> None:
    found = verdict(replace(EXAMPLES["II.A-1A"], V=150.0, N=20.0), ASD)
    titles = {check.title for check in found.checks}
    assert {"bolts through the beam web, both forces", "bolts pulled with prying"} <= titles
    assert "bending of the support's face that the axial force pulls" in {
        one.what for one in found.not_checked
    }


def test_the_weld_of_a_plate_carries_both_forces_at_their_angle() -> None:
    """1.392 3 2 11.5 = 96.0 kips along; at 26.7 degrees 1 + 0.5 sin^1.5 = 1.150 times as much."""
    check = check_named(verdict(), "weld to the support, both forces")
    assert check.capacity == pytest.approx(96.05 * 1.1505, rel=1e-3)
