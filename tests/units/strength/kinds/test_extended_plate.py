"""Extended single plates: PL1/2 x 11 1/2 deep, bolts 9 in from the support, by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.strength import Check, Connection, Kind, Method, check_connection
from gageline.strength.kinds import extended_plate

A18 = EXAMPLES["II.A-18"]
PLATE = replace(
    A18,
    kind=Kind.EXTENDED_PLATE,
    fitting=replace(A18.fitting, t=0.5, leg=10.5),
    to_beam=bolts(4, 9.0, 1.5),
    setback=6.5,
)
PAIR = replace(PLATE, to_beam=replace(bolts(4, 9.0, 1.5), columns=2, between=3.0))


def checks(connection: Connection) -> dict[str, Check]:
    return {check.title: check for check in extended_plate(connection, Method.LRFD).checks}


def test_shear_and_bending_together() -> None:
    """V_c 30 5.75 = 172.5; M_c 0.9 50 16.53 = 743.9; with M = 9 V: 1/sqrt(1/172.5^2 + (9/743.9)^2) = 74.5."""
    check = checks(PLATE)["shear and bending of the plate together"]
    assert check.capacity == pytest.approx(74.5, rel=1e-3)
    symbols = [line.symbol for line in check.steps]
    assert symbols == ["a", "A_gv", "R_n", "φR_n", "V_c", "Z", "M_n", "φM_n", "M_c", "R"]


def test_bending_of_the_net_section() -> None:
    """Z 16.53 less 2 0.875 0.5 (1.5 + 4.5) = 5.25 is 11.28 in³; 0.75 65 11.28/9 = 61.1 kips."""
    assert checks(PLATE)["flexural rupture of the plate"].capacity == pytest.approx(61.1, rel=1e-3)


def test_without_stabilizers() -> None:
    """Equation 10-6: 0.9 1500 pi 11.5 0.5^3/81 = 75.3 kips."""
    expected = 0.9 * 1500 * math.pi * 11.5 * 0.125 / 81
    assert checks(PLATE)["plate without stabilizer plates"].capacity == pytest.approx(expected)


def test_two_columns_turn_about_their_middle() -> None:
    """Eccentricity 9 + 1 1/2 in; twice the bolts carry more than one column at 9 in."""
    two, one = checks(PAIR)["bolts through the beam web, eccentric"], checks(PLATE)
    assert next(step.value for step in two.steps if step.symbol == "e") == 10.5
    assert two.capacity > one["bolts through the beam web, eccentric"].capacity


def test_the_plate_yields_before_its_bolts_break() -> None:
    """Two columns of four at 3 in: C' 26.03 in (re-computed table); M_max 60 0.4418 26.03 = 690 kip-in.

    t_max = 6 690/(50 11.5^2) = 0.626 in, more than the 1/2 in plate.
    """
    found = {rule.title: rule for rule in extended_plate(PAIR, Method.LRFD).rules}
    rule = found["thickness of the plate"]
    assert rule.capacity == pytest.approx(0.626, rel=2e-3)
    assert rule.passes


def test_a_plate_that_would_break_its_bolts_first_is_not_made_good_by_strength() -> None:
    """3/4 in against the 0.626 in of Equation 10-3."""
    thick = replace(PAIR, fitting=replace(PAIR.fitting, t=0.75), V=1.0)
    verdict = check_connection(thick, Method.LRFD)
    assert verdict.governing.passes
    assert "thickness of the plate" in [rule.title for rule in verdict.forbidden]
    assert "thickness of the plate" not in [
        rule.title for rule in check_connection(replace(PAIR, V=1.0), Method.LRFD).forbidden
    ]


def test_one_column_in_a_thin_web_needs_no_such_limit() -> None:
    found = {rule.title for rule in extended_plate(PLATE, Method.LRFD).rules}
    (said,) = found - {"weld of the plate"}
    assert said.startswith("thickness of the plate: no limit, for one column of bolts")


def test_an_axial_force_bends_the_plate_by_its_distance() -> None:
    found = checks(replace(PLATE, V=20.0, N=20.0))
    used = found["yielding of the fitting, both forces"].utilisation
    expected = 20 * 9 / 743.9 + (20 / (0.9 * 50 * 5.75)) ** 2 + (20 / 172.5) ** 4
    assert used == pytest.approx(expected, rel=1e-3)
