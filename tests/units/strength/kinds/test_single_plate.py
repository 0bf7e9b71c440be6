"""Conventional single plates, by hand from Design Example II.A-18."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from connections import EXAMPLES, bolts
from gageline.errors import ValueProblem
from gageline.strength import (
    Bolted,
    Check,
    Connection,
    Fillet,
    Material,
    Method,
    SupportFace,
    check_connection,
)
from gageline.strength.aisc360.j3_bolts import Hole
from gageline.strength.kinds import single_plate

A18 = EXAMPLES["II.A-18"]


def checks(connection: Connection = A18) -> dict[str, Check]:
    return {check.title: check for check in single_plate(connection, Method.LRFD).checks}


def rules(connection: Connection = A18) -> dict[str, Check]:
    return {rule.title: rule for rule in single_plate(connection, Method.LRFD).rules}


def test_the_plate_by_hand() -> None:
    """0.25 11.5 30 = 86.25; (11.5 - 4 0.875) 0.25 = 2.0 in² tear at 39, 0.75: 58.5 kips (Table 10-10a)."""
    found = checks()
    assert found["shear yielding of the plate"].capacity == pytest.approx(86.25)
    assert found["shear rupture of the plate"].capacity == pytest.approx(58.5)
    assert found["weld to the support"].capacity == pytest.approx(1.392 * 3 * 2 * 11.5, rel=1e-3)


def test_a_skewed_plate_has_less_throat() -> None:
    """At 30 degrees the cosine of 15 degrees, 0.966; at 31 the acute side is no fillet."""
    square = checks()["weld to the support"].capacity
    skewed = checks(replace(A18, skew=30.0))["weld to the support"].capacity
    assert skewed == pytest.approx(square * math.cos(math.radians(15)))
    steep = single_plate(replace(A18, skew=31.0), Method.LRFD)
    assert [item.what for item in steep.not_checked] == ["the weld of the plate"]


def test_the_limits_of_the_method() -> None:
    """Half of 3/4 and 1/16 are 7/16 in; 2 d is 1 1/2 in; 5/8 of a 1/4 plate is 5/32 in of weld."""
    found = rules()
    assert found["thickness of the plate or of the web"].capacity == pytest.approx(7 / 16)
    assert found["thickness of the plate or of the web"].demand == 0.25
    assert found["bolts to the edge of the plate"].demand == 1.5
    assert found["weld of the plate"].demand == pytest.approx(5 / 32)
    assert all(rule.passes for rule in found.values())


def test_a_plate_on_a_hollow_wall_must_not_punch_through() -> None:
    """HSS of F_u 62 ksi with 0.349 in of wall and a plate of 50 ksi: 0.433 in."""
    assert A18.support is not None
    wall = replace(A18.support, face=SupportFace.WALL, t=0.349, steel=Material("A500-C", 50.0, 62.0))
    title = "plate that would punch through the wall"
    rule = rules(replace(A18, support=wall))[title]
    assert rule.capacity == pytest.approx(0.433, rel=1e-3)
    assert rule.passes
    thick = replace(A18, support=wall, fitting=replace(A18.fitting, t=0.4375))
    assert not rules(thick)[title].passes
    assert title in [rule.title for rule in check_connection(thick, Method.LRFD).forbidden]
    assert title not in rules()


@pytest.mark.parametrize(
    ("changes", "title"),
    [
        (
            {"fitting": replace(A18.fitting, t=0.5), "beam": replace(A18.end, t_w=0.5)},
            "thickness of the plate or of the web",
        ),
        ({"to_support": Fillet(1 / 8)}, "weld of the plate"),
        ({"to_beam": bolts(4, 3.0, 1.25)}, "bolts to the edge of the plate"),
        ({"setback": 1.75}, "bolts to the end of the beam"),
    ],
)
def test_a_broken_condition_of_the_method_is_not_made_good_by_strength(
    changes: dict[str, Any], title: str
) -> None:
    """Table 10-9 holds only within its limits: d/2 + 1/16 = 7/16 in thick, 5/8 of 1/4 in for the weld, edges
    of 2 d = 1 1/2 in, as read in Examples II.A-17A and II.A-18."""
    verdict = check_connection(replace(A18, V=1.0, **changes), Method.LRFD)
    assert verdict.governing.passes
    assert title in [rule.title for rule in verdict.forbidden]
    assert not check_connection(A18, Method.LRFD).forbidden


def test_a_plate_without_a_limit_of_thickness_says_so() -> None:
    """Table 10-9 (from memory): 2 to 5 bolts in short slots."""
    joint = A18.to_beam
    assert isinstance(joint, Bolted)
    slots = replace(joint.holes, kind=Hole.SHORT_PERPENDICULAR, across=1.0)
    found = rules(replace(A18, to_beam=replace(joint, holes=slots)))
    assert "thickness of the plate or of the web: no limit, for up to 5 bolts in short slots" in found


def test_six_bolts_take_the_whole_distance_and_a_thinner_plate() -> None:
    """Table 10-9 (from memory): 6 to 12 bolts, e = a and d/2 - 1/16."""
    long = replace(A18, fitting=replace(A18.fitting, length=17.5), to_beam=bolts(6, 3.0, 1.5))
    eccentric = checks(long)["bolts through the beam web, eccentric"]
    assert next(step.value for step in eccentric.steps if step.symbol == "e") == 3.0
    assert rules(long)["thickness of the plate or of the web"].capacity == pytest.approx(5 / 16)


def test_a_plate_joined_otherwise_is_refused() -> None:
    with pytest.raises(ValueProblem, match="welded to its support and bolted to the beam's web"):
        single_plate(replace(A18, to_beam=Fillet(0.25)), Method.LRFD)
