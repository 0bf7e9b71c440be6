"""The legs of angles on the beam's web."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.strength import Fillet
from gageline.strength.aisc360.f_bars import bar_yielding
from gageline.strength.kinds.web_legs import as_reaction, pulled_web, web_bolts, web_weld

A4, A5 = EXAMPLES["II.A-4"], EXAMPLES["II.A-5"]


def test_a_bending_strength_is_a_reaction_by_its_arm() -> None:
    """50 0.25 8.5^2/4 = 225.8 kip-in over 2 in is 112.9 kips."""
    found = as_reaction(bar_yielding(50.0, 8.5, 0.25), 2.0)
    assert found.nominal == pytest.approx(112.9, rel=1e-3)
    assert found.unit == "kip"


def test_near_bolts_leave_out_their_eccentricity() -> None:
    ((title, strength),) = web_bolts(A4, bolts(3, 2.125, 1.375), 2)
    assert title == "bolts through the beam web"
    assert strength.nominal * 0.75 == pytest.approx(73.35, rel=1e-3)  # II.A-4, unrounded in the notes
    assert pulled_web(A4, bolts(3, 3.0, 1.25), 2).e == 0.0


def test_two_columns_count_it_and_bend_the_legs() -> None:
    """The middle of columns 2 and 4 1/2 in from the heel is 3 1/4 in away; the legs bend at the first."""
    joint = replace(bolts(3, 2.0, 1.25), columns=2, between=2.5)
    pulled = pulled_web(A4, joint, 2)
    assert (pulled.e, pulled.arm) == (3.25, 2.0)
    titles = [title for title, _ in web_bolts(A4, joint, 2)]
    assert titles == [
        "bolts through the beam web, eccentric",
        "bending of the legs on the beam",
        "flexural rupture of the legs on the beam",
    ]


def test_weld_a_of_table_10_2() -> None:
    """3/16 welds 8 1/2 in long: 110 kips by LRFD for two angles (through II.A-5, IIA-76)."""
    found = web_weld(replace(A5, setback=0.5, under_run=0.0), Fillet(3 / 16), 2)
    assert found.nominal * 0.75 == pytest.approx(110, rel=0.01)


def test_one_angle_has_half_of_the_weld_of_two() -> None:
    one, two = (web_weld(A5, Fillet(3 / 16), count).nominal for count in (1, 2))
    assert two == pytest.approx(2 * one)
