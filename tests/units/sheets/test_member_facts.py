"""What a beam carries and what comes down a column, in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from gageline.job import stock_named
from gageline.sheets.member_facts import facts_of_beam, facts_of_column
from gageline.steel import Section
from gageline.strength import Case, CheckedColumn, Load, Material, Method, SimpleBeam
from gageline.units import System

LOADS = (Load(Case.DEAD, 0.1, 0.0, 240.0), Load(Case.LIVE, 0.05, 60.0, 120.0), Load(Case.LIVE, 20.0, 60.0))


def beam(**changes: object) -> SimpleBeam:
    section = stock_named("W18x50", System.FT_IN)
    assert isinstance(section, Section)
    made = SimpleBeam(section, Material("A992", 50.0, 65.0), 240.0, LOADS, 60.0, 360)
    return replace(made, **changes)  # type: ignore[arg-type] # any field


def test_a_beam_in_feet() -> None:
    """Left: 1.2 12 + 1.6 (3 150/240 + 20 180/240) = 41.4; right: 14.4 + 1.6 (1.125 + 5) = 24.2 kips."""
    assert dict(facts_of_beam(beam(), Method.LRFD, System.FT_IN)) == {
        "Span": "20'-0\", A992 (Fy 50 ksi)",
        "L_b": "5'-0\" between braces of the top flange",
        "Loads": "dead 1.2 kip/ft all along; live 0.6 kip/ft from 5'-0\" to 10'-0\"; live 20.0 kip at 5'-0\"",
        "Reactions": "left 41.4 kip (1.2D + 1.6L + 0.5Lr), right 24.2 kip (1.2D + 1.6L + 0.5Lr)",
        "Deflection": "live load L/360",
    }


def test_a_beam_in_millimetres() -> None:
    found = dict(facts_of_beam(beam(), Method.ASD, System.MM))
    assert found["Span"].startswith("6096 mm,")
    assert found["Loads"].startswith("dead 17.5 kN/m all along; live 8.76 kN/m from 1524 mm to 3048 mm")


@pytest.mark.parametrize(
    ("unbraced", "said"),
    [(None, "20'-0\": no braces are given"), (0.0, "0: the top flange is braced all along")],
)
def test_braces(unbraced: float | None, said: str) -> None:
    assert dict(facts_of_beam(beam(unbraced=unbraced), Method.LRFD, System.FT_IN))["L_b"] == said


def test_no_limit_of_deflection_is_said() -> None:
    found = dict(facts_of_beam(beam(live_limit=None), Method.LRFD, System.FT_IN))
    assert found["Deflection"] == "no limit is given: not checked"


def test_what_comes_down_a_column_from_each_beam() -> None:
    total = ((Case.DEAD, 5.0), (Case.LIVE, 10.0))
    parts = (("G1", ((Case.DEAD, 2.0), (Case.LIVE, 4.0))), ("G2", ((Case.DEAD, 3.0), (Case.LIVE, 6.0))))
    column = CheckedColumn("P1", "W10X49", total, 22.0, "1.2D + 1.6L + 0.5Lr", (), (), parts)
    assert facts_of_column(column, System.FT_IN) == (
        ("From G1", "dead 2.0 kip, live 4.0 kip"),
        ("From G2", "dead 3.0 kip, live 6.0 kip"),
        ("At its base", "dead 5.0 kip, live 10.0 kip"),
        ("In all", "22.0 kip (1.2D + 1.6L + 0.5Lr)"),
    )
