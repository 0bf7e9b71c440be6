"""Shear end plates, by hand from Design Example II.A-11A."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.errors import ValueProblem
from gageline.strength import Check, Connection, Fillet, Method
from gageline.strength.kinds import end_plate

A11A = EXAMPLES["II.A-11A"]


def checks(connection: Connection = A11A) -> dict[str, Check]:
    return {check.title: check for check in end_plate(connection, Method.LRFD).checks}


def test_plate_and_weld_by_hand() -> None:
    """2 0.25 8.5 30 = 127.5; the weld 8 1/2 less 3/16 at each end: 1.392 3 2 8.125 = 67.9 kips."""
    found = checks()
    assert found["shear yielding of the plate"].capacity == pytest.approx(127.5)
    assert found["weld to the beam web"].capacity == pytest.approx(67.9, rel=1e-3)
    rupture = found["shear rupture of the beam web beside the weld"]
    assert rupture.capacity == pytest.approx(0.75 * 39 * 8.125 * 0.355)


def test_the_bolts_push_the_plate_up() -> None:
    """The end distance above the first row counts, not that below the last."""
    joint = replace(bolts(3, 1.75, 1.25), edge_top=2.0)
    assert checks(replace(A11A, to_support=joint))[
        "bolts to the support, in pairs"
    ].capacity == pytest.approx(3 * 2 * 0.75 * 54 * 0.4417865, rel=1e-6)
    low = replace(bolts(3, 1.75, 1.25), edge_bottom=2.0)
    assert (
        checks(replace(A11A, to_support=low))["bolts to the support, in pairs"]
        == checks()["bolts to the support, in pairs"]
    )


def test_a_pulled_plate_pries() -> None:
    found = checks(replace(A11A, N=10.0))
    assert {"bolts pulled with prying", "weld to the beam web, both forces"} <= set(found)
    along = found["rupture of the beam web along the weld, axial force"]
    assert along.capacity == pytest.approx(0.75 * 65 * 8.125 * 0.355)


def test_another_way_of_joining_is_refused() -> None:
    with pytest.raises(ValueProblem, match="a shear end plate is welded to the beam's web and bolted"):
        end_plate(replace(A11A, to_support=Fillet(0.25)), Method.LRFD)


def test_welds_that_leave_no_length_are_refused() -> None:
    short = replace(A11A.fitting, length=1.0)
    one = replace(A11A, fitting=short, to_support=bolts(1, 1.75, 1.25), to_beam=Fillet(0.5))
    with pytest.raises(ValueProblem, match=r"welds of 0\.5 in leave nothing of a plate 1 in long"):
        end_plate(one, Method.LRFD)
