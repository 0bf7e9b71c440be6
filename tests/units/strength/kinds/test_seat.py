"""Unstiffened seats, by hand from Design Example II.A-16: W14x38 on L7x4x5/8, 6 in long."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.errors import ValueProblem
from gageline.strength import Check, Connection, Method, Notch
from gageline.strength.kinds import seat

A16 = EXAMPLES["II.A-16"]


def checks(connection: Connection = A16, method: Method = Method.LRFD) -> dict[str, Check]:
    return {check.title: check for check in seat(connection, method).checks}


def test_the_web_over_the_seat() -> None:
    """R_1 and R_2 of the print, 35.5 + 3.25 15.5 = 85.9 kips.

    l_b/d is 3.25/14.1 = 0.230, over 0.2: R_3 of the print, 44.7, times 1 + (4 0.230 - 0.2) 0.467 = 1.337.
    """
    found = checks()
    assert found["local yielding of the beam web over the seat"].capacity == pytest.approx(85.9, rel=0.005)
    crippling = found["local crippling of the beam web over the seat"].capacity
    assert crippling == pytest.approx(44.7 * 1.337, rel=0.005)


def test_the_leg_shears_and_bends() -> None:
    """0.6 36 6 0.625 = 81 kips; 40 kips need l_b = k 0.915 and e 0.915/2 + 3/4 - 5/8 - 3/8 = 0.2075 in.

    0.9 36 6 0.625^2/4 = 18.98 kip-in over 0.2075 in.
    """
    found = checks()
    assert found["shear of the seat's leg"].capacity == pytest.approx(81.0)
    assert found["bending of the seat's leg"].capacity == pytest.approx(18.984 / 0.2075, rel=1e-3)


def test_bolts_instead_of_welds_say_that_their_tension_is_left_out() -> None:
    bolted = replace(A16, to_support=bolts(2, 2.75, 1.5))
    assert checks(bolted)["bolts of the seat, in pairs"].capacity > 0
    left_out = {item.what for item in seat(bolted, Method.ASD).not_checked}
    assert "tension and prying of the seat's bolts" in left_out


def test_what_a_seat_cannot_be() -> None:
    assert A16.beam is not None
    coped = replace(A16, beam=replace(A16.beam, bottom=Notch(4.0, 2.0)))
    with pytest.raises(ValueProblem, match="coped at its bottom, where a seat bears"):
        seat(coped, Method.LRFD)
    with pytest.raises(ValueProblem, match=r"leg of 0\.5 in does not reach past the gap of 0\.75 in"):
        seat(replace(A16, fitting=replace(A16.fitting, out=0.5)), Method.LRFD)


def test_an_axial_force_is_said_not_to_be_followed() -> None:
    assert "the axial force" in {item.what for item in seat(replace(A16, N=3.0), Method.LRFD).not_checked}
