from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from gageline.detail import Detailed, Joint
from gageline.part import End, Severity
from gageline.steel import bolt
from gageline.units import System, parse_length

IPE: dict[str, object] = {
    "level": [{"name": "Floor", "elevation": 3000}],
}


def metric(beam: str, girder: str, span: int = 3000, **more: object) -> Detailed:
    free = {"connection": "free"}
    girders = [
        {"name": f"G{n}", "stock": girder, "from": f"1/{row}", "to": f"2/{row}", "top": "Floor", "ends": free}
        for n, row in enumerate("AB", 1)
    ]
    between = {"name": "B1", "stock": beam, "from": {"on": "G1", "at": 3000}, "to": {"on": "G2", "at": 3000}}
    grid = {"x": {"names": ["1", "2"], "spacing": [6000]}, "y": {"names": ["A", "B"], "spacing": [span]}}
    return detailed(IPE | {"grid": grid, "member": [*girders, between | {"top": "Floor"} | more]}, System.MM)


def start(result: Detailed) -> Joint:
    return result.joints["B1", End.LEFT]


def why(result: Detailed) -> str:
    (reason,) = [
        one.text() for one in result.reasons["B1"] if " not go" in one.because and one.end == "start"
    ]
    return reason


def errors(result: Detailed) -> list[str]:
    return [one.text() for one in result.findings if one.severity is Severity.ERROR]


def test_a_small_beam_gets_smaller_bolts_closer_together_and_the_reason_says_what_was_tried() -> None:
    # IPE 200 in IPE 300: 139.5 mm are clear, two rows of M20 at 70 or 60 mm want 150 or 140
    result = metric("IPE 200", "IPE 300")
    assert not errors(result)
    joint = start(result)
    assert joint.ladder is not None
    assert (joint.kind, joint.ladder.rows, joint.choice.size) == ("double angles", 2, bolt("M16"))
    assert joint.ladder.pitch == parse_length("50 mm")
    assert why(result) == (
        "start: double angles with M16 bolts at 50 mm, because double angles with M20 bolts at 70 mm, double "
        "angles with M20 bolts at 60 mm and double angles with M16 bolts at 70 mm do not go: one row leaves "
        "fewer than two bolts in the beam (common practice, no source)"
    )


def test_a_bolt_that_is_given_is_kept_and_another_connection_is_taken() -> None:
    result = metric("IPE 200", "IPE 300", ends={"bolt": "M20"})
    assert not errors(result)
    assert start(result).choice.size == bolt("M20")
    assert (start(result).kind, start(result).choice.bolts_in_beam) == ("end plate", 2)
    assert "double angles and a single plate do not go" in why(result)


def vain(result: Detailed) -> str:
    (one, _) = [one for one in result.findings if one.code == "nothing-goes"]
    return one.text()


def test_a_connection_that_is_given_is_kept() -> None:
    result = detailed(bay(beam="W24X55", girder="W12X26", ends={"connection": "double angles"}))
    assert errors(result)
    assert start(result).kind == "double angles"
    assert "closer rows and smaller bolts were tried here and break a rule too" in vain(result)


def test_where_nothing_goes_it_is_said_what_was_tried() -> None:
    result = detailed(bay(beam="W24X55", girder="W6X9"))
    assert errors(result)
    assert vain(result) == (
        "note: B1 start: closer rows, smaller bolts, a single plate, an end plate, an extended plate and "
        "double angles welded to the beam were tried here and break a rule too: change a section or a top of "
        "steel, or enter the end as drawn"
    )


def test_a_face_too_narrow_for_angles_gets_what_fits() -> None:
    column = {"name": "P", "at": {"point": "1/A", "x": 120, "y": 90}, "stock": "W6X20", "base": 0, "top": 200}
    table = bay(column=column | {"turn": 90})
    beam = {"name": "B2", "stock": "W12X26", "from": {"point": "1/A", "x": 120, "y": 90}, "to": "2/B"}
    assert isinstance(table["member"], list)
    table["member"] = [
        beam | {"to": {"point": "1/A", "x": 120, "y": 20}, "end": {"connection": "free"}, "top": 144}
    ]
    result = detailed(table)
    assert not errors(result)
    assert result.joints["B2", End.LEFT].kind != "free"


@pytest.mark.parametrize("system", System)
def test_what_is_usual_stays_where_it_goes(system: System) -> None:
    result = metric("IPE 300", "IPE 500", 6000) if system is System.MM else detailed(bay())
    assert start(result).kind == "double angles"
    assert not [one for one in result.reasons["B1"] if " not go" in one.because]


def short(span: str, **keys: Any) -> Detailed:
    """The beam B1 between girders so far apart that its angles are in the way of putting it in."""
    table = bay(beam="W16X26", **keys)
    table["grid"]["y"]["spacing"] = [span]  # type: ignore[index] # a table
    return detailed(table)


def kinds(result: Detailed) -> tuple[str, str]:
    return result.joints["B1", End.LEFT].kind, result.joints["B1", End.RIGHT].kind


def test_a_beam_that_cannot_be_put_in_gets_another_connection_at_one_end() -> None:
    result = short("48 in")
    assert kinds(result) == ("double angles", "single plate")
    assert not [one for one in result.findings if one.code == "cannot-be-put-in"]
    (reason,) = [one for one in result.reasons["B1"] if " not go" in one.because]
    assert reason.text() == (
        "end: single plate, because double angles do not go: the finished beam needs 4'-0 3/16\" turned in "
        "the plan in a gap of 3'-11 19/32\" (common practice, no source)"
    )


def test_both_ends_change_where_one_is_not_enough() -> None:
    assert kinds(short("30 in")) == ("single plate", "single plate")


def test_an_end_that_is_given_is_not_changed_so_that_the_beam_goes_in() -> None:
    angles = {"connection": "double angles"}
    assert kinds(short("48 in", start=angles)) == ("double angles", "single plate")
    assert kinds(short("48 in", end=angles)) == ("single plate", "double angles")
    both = short("48 in", ends=angles)
    assert kinds(both) == ("double angles", "double angles")
    assert [one for one in both.findings if one.code == "cannot-be-put-in"]


def test_nothing_is_said_to_be_tried_where_nothing_was() -> None:
    result = detailed(bay(ends={"connection": "seat"}))  # no seat on a girder: a plate in its place, said
    assert [one.code for one in result.findings if one.severity is Severity.ERROR] == [
        "connection-not-possible"
    ] * 2
    assert not [one for one in result.findings if one.code == "nothing-goes"]
