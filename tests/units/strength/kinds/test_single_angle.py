"""Single angles, by hand from Design Example II.A-28A and Table 10-12."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES
from gageline.strength import Check, Connection, Fillet, Method
from gageline.strength.kinds import single_angle

A28A = EXAMPLES["II.A-28A"]


def checks(connection: Connection = A28A, method: Method = Method.LRFD) -> dict[str, Check]:
    return {check.title: check for check in single_angle(connection, method).checks}


def test_the_angle_by_hand() -> None:
    """0.375 11.5 = 4.31 in²: 129 kips; bending of the leg 0.9 50 12.40/(1.75 + 0.15) = 294 kips."""
    found = checks()
    assert found["shear yielding of the angle"].capacity == pytest.approx(129.4, rel=1e-3)
    bent = found["bending of the outstanding leg"]
    assert bent.capacity == pytest.approx(0.9 * 50 * 0.375 * 11.5**2 / 4 / 1.9)


def test_bolts_to_the_support_have_half_of_the_web_added_to_their_gage() -> None:
    check = checks()["bolts to the support, eccentric"]
    assert next(step.value for step in check.steps if step.symbol == "e") == pytest.approx(1.9)


@pytest.mark.parametrize(("leg", "lrfd", "asd"), [(3 / 16, 56.6, 37.8), (1 / 4, 75.5, 50.3)])
def test_the_weld_of_table_10_12(leg: float, lrfd: float, asd: float) -> None:
    """L4x3, 11 1/2 in long, the 3-in leg welded along toe and foot, half of the web 1/4 in (from memory)."""
    assert A28A.beam is not None
    welded = replace(A28A, to_support=Fillet(leg), beam=replace(A28A.beam, t_w=0.5))
    title = "weld to the support, along the toe and the foot"
    for method, value in ((Method.LRFD, lrfd), (Method.ASD, asd)):
        assert checks(welded, method)[title].capacity == pytest.approx(value, rel=0.005)


def test_an_angle_welded_all_round_needs_no_holes() -> None:
    welded = replace(A28A, to_support=Fillet(0.25), to_beam=Fillet(0.25))
    found = checks(welded)
    assert found["shear rupture of the angle"].capacity == pytest.approx(0.75 * 39 * 0.375 * 11.5)
    assert {"weld to the beam web", "beam web beside the weld"} <= set(found)


def test_an_axial_force_is_said_not_to_be_followed() -> None:
    found = single_angle(replace(A28A, N=5.0), Method.LRFD)
    assert [item.what for item in found.not_checked] == ["the axial force"]
