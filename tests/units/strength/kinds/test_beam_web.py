"""The web of the supported beam, by hand from Design Examples II.A-4 to II.A-6."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.strength import Beam, Check, Connection, Method, Notch
from gageline.strength.kinds import beam_web
from gageline.strength.kinds.beam_web import bolted_block, end_distance, first_row

A1, A4, A5 = EXAMPLES["II.A-1A"], EXAMPLES["II.A-4"], EXAMPLES["II.A-5"]


def checks(connection: Connection) -> dict[str, Check]:
    return {check.title: check for check in beam_web(connection, Method.LRFD).checks}


def left_out(connection: Connection) -> set[str]:
    return {item.what for item in beam_web(connection, Method.LRFD).not_checked}


def beam(connection: Connection) -> Beam:
    assert connection.beam is not None
    return connection.beam


def test_distances_count_the_setback_and_what_the_beam_may_be_short() -> None:
    """Gage 2 1/8 less 1/2 and 1/4 is 1 3/8 in; 1/4 in of drop and 1 1/4 in of angle are 1 1/2 in."""
    joint = bolts(3, 2.125, 1.375)
    assert end_distance(A4, joint) == pytest.approx(1.375)
    assert first_row(replace(A4, drop=0.25), joint) == pytest.approx(1.5)


def test_an_uncoped_web_has_its_shear_alone() -> None:
    """W36x231: 0.6 50 36.5 0.760 = 832 kips."""
    found = checks(A1)
    assert set(found) == {"shear of the beam web"}
    assert found["shear of the beam web"].capacity == pytest.approx(832.2)


def test_block_shear_of_one_and_of_two_columns() -> None:
    """One: A_gv 7.25 0.355, A_nv (7.25 - 2.5 0.875) 0.355, A_nt (1.375 - 0.4375) 0.355.

    Two columns 3 in apart: A_nt (4.375 - 1.5 0.875) 0.355, of which U_bs counts half.
    """
    one = bolted_block(A4, bolts(3, 2.125, 1.375))
    assert one.nominal == pytest.approx(39 * 5.0625 * 0.355 + 65 * 0.9375 * 0.355)
    two = bolted_block(A4, replace(bolts(3, 2.125, 1.375), columns=2, between=3.0))
    assert two.nominal == pytest.approx(39 * 5.0625 * 0.355 + 0.5 * 65 * 3.0625 * 0.355)


def test_a_welded_leg_tears_out_its_outline() -> None:
    """II.A-5: A_gv = (8 1/2 + 3/8) 0.355 = 3.15, A_nt = (3 1/2 - 3/4) 0.355 = 0.976: 158 kips nominal."""
    check = checks(A5)["block shear of the beam web"]
    assert check.capacity == pytest.approx(0.75 * (30 * 8.875 * 0.355 + 65 * 2.75 * 0.355))


def test_both_copes_leave_a_plate_with_holes() -> None:
    """h_o 18 - 4 = 14: (14 - 3 0.875) 0.355 in² tear: 0.75 39 4.04 = 118 kips."""
    both = replace(A4, beam=replace(beam(A4), bottom=Notch(4.0, 2.0)))
    found = checks(both)
    assert found["shear rupture of the coped beam web"].capacity == pytest.approx(0.75 * 39 * 11.375 * 0.355)
    assert "bending of the web between the copes" in found


def test_what_no_method_covers_is_said() -> None:
    assert left_out(replace(A4, beam=None)) == {"the supported beam"}
    low = replace(A4, beam=replace(beam(A4), top=None, bottom=Notch(4.0, 2.0)))
    assert left_out(low) == {"bending of the web at a bottom cope"}
    shorter = replace(A4, beam=replace(beam(A4), bottom=Notch(3.0, 2.0)))
    assert left_out(shorter) == {
        "what Equation 9-22 of the Manual gains where the bottom cope is the shorter"
    }
    channel = replace(A4, beam=replace(beam(A4), rolled_i=False))
    assert left_out(channel) == {"bending of the coped web"}
    assert left_out(replace(A4, N=5.0)) == {"bending and buckling of the coped web under the axial force"}
