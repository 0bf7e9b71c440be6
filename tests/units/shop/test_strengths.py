from __future__ import annotations

from collections.abc import Callable

import pytest
from django.test import Client

from gageline.shop.engine import full_of, strength_of
from gageline.shop.jobs import current_text, import_job
from gageline.shop.models import Job, Person
from gageline.shop.strengths import strength_lines, unchecked_of
from gageline.units import System


def test_a_line_for_every_connection_with_what_governs(demo: Job) -> None:
    strength = strength_of(current_text(demo))
    lines = strength_lines(strength, System.FT_IN)
    assert len(lines) == len(strength.connections) + len(strength.beams) + len(strength.columns)
    for line, one in zip(lines, strength.connections, strict=False):
        assert one.verdict.governing.clause.number in line.governs
        assert one.verdict.capacity is not None
        assert line.carries == f"{one.verdict.capacity:.1f} kip"
        known = bool(one.verdict.connection.load)
        assert line.used == (f"{one.verdict.utilisation * 100:.0f} %" if known else "")


def test_the_lines_of_one_piece_are_its_own(demo: Job) -> None:
    strength = strength_of(current_text(demo))
    own = strength_lines(strength, System.FT_IN, frozenset({"B1"}))
    assert {line.piece for line in own} == {"B1"}
    assert [line.name for line in own] == ["B1 left", "B1 right"]


def test_what_carries_too_little_is_told_in_capitals(owner: Person) -> None:
    text = """[job]
name = "Invented"
[[piece]]
mark = "B1"
stock = "W12x26"
length = "9'-6"
angles = [{ end = "both", stock = "L4x3-1/2x5/16", rows = 2 }]
left = { reaction = "900 kip" }
right = { reaction = "1 kip" }
"""
    strength = strength_of(current_text(import_job(owner, text.encode())))
    left, right = strength_lines(strength, System.FT_IN)
    assert (left.state, left.kind) == ("NOT ENOUGH", "error")
    assert (right.state, right.kind) == ("enough", "note")
    assert "900.0 kip" in left.needs


def test_a_reaction_below_what_the_loads_ask_for_is_told(owner: Person) -> None:
    text = """[job]
name = "Invented"
[[piece]]
mark = "B1"
stock = "W12x26"
length = "9'-6"
angles = [{ end = "both", stock = "L4x3-1/2x5/16", rows = 2 }]
left = { reaction = "1 kip" }
loads = [{ case = "live", uniform = "2 kip/ft" }]
"""
    strength = strength_of(current_text(import_job(owner, text.encode())))
    left, right, _ = strength_lines(strength, System.FT_IN)
    (said,) = left.rules
    assert said.startswith("B1 left: 1.0 kip is given as the reaction, its loads ask for")
    assert right.rules == ()


def test_what_was_not_checked_is_listed_once_with_its_reason(framed: Job) -> None:
    strength = strength_of(current_text(framed))
    every = unchecked_of(strength)
    assert len(every) == len(set(every))
    assert set(strength.refused) <= set(every)
    assert all(one.why for one in every)
    own = unchecked_of(strength, frozenset({"G1"}))
    assert {one.what for one in own if one.what.endswith(" as a beam")} <= {"G1 as a beam"}
    assert {one.what for one in strength.refused if "G1" in one.what} <= {one.what for one in own}
    assert full_of(current_text(framed)).detailed is not None


@pytest.mark.parametrize("address", ["/office/{0.pk}/strength/", "/piece/{1.pk}/"])
def test_the_pages_defer_to_an_engineer(
    address: str, demo: Job, owner: Person, signed_in: Callable[[Person], Client]
) -> None:
    page = signed_in(owner).get(address.format(demo, demo.pieces.get(mark="B1"))).content.decode()
    assert "licensed engineer answers for the design" in page
    assert "not checked" in page
    assert "kip" in page


@pytest.mark.parametrize("system", [System.FT_IN, System.MM])
def test_a_beam_is_said_in_the_units_of_the_job(framed: Job, system: System) -> None:
    strength = strength_of(current_text(framed))
    first = len(strength.connections)
    lines = strength_lines(strength, system)[first : first + len(strength.beams)]
    worst = [max(beam.checks, key=lambda check: check.utilisation) for beam in strength.beams]
    assert {check.unit for check in worst} >= {"kip-in"}
    # 1 kip-in = 0.11298 kN m and 1 kip = 4.4482 kN (NIST SP 811, appendix B.8)
    metric = {"kip-in": (0.1129848, "kN m"), "kip": (4.4482216, "kN"), "in": (25.4, "mm")}
    for line, check in zip(lines, worst, strict=True):
        number, _, unit = line.carries.partition(" ")
        scale, wanted = metric[check.unit] if system is System.MM else (1, check.unit)
        assert unit == wanted
        assert float(number.replace(",", "")) == pytest.approx(check.capacity * scale, rel=0.01)


@pytest.mark.parametrize(("system", "unit"), [(System.FT_IN, "kip"), (System.MM, "kN")])
def test_what_comes_down_a_column_is_said_with_its_base_plate(framed: Job, system: System, unit: str) -> None:
    strength = strength_of(current_text(framed))
    assert strength.columns
    lines = strength_lines(strength, system)[-len(strength.columns) :]
    for line, column in zip(lines, strength.columns, strict=True):
        assert line.name == column.member
        assert f"{unit} come down ({column.load})" in line.needs
        assert line.state in ({"enough", "NOT ENOUGH"} if column.checks else {"base plate not checked"})
    own = strength_lines(strength, system, frozenset({strength.columns[0].member}))
    assert [line.name for line in own if "come down" in line.needs] == [strength.columns[0].member]
