from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import Joint
from gageline.part import End


def joint(**keys: object) -> Joint:
    return detailed(bay(**keys)).joints["B1", End.LEFT]  # type: ignore[arg-type] # keys of the beam


@pytest.mark.parametrize(
    ("keys", "kind"),
    [
        ({}, "double angles"),
        ({"to": {"on": "G2", "at": 150}}, "single plate"),
        ({"girder": "HSS16X8X3/8"}, "single plate"),
        ({"beam": "HSS8X4X1/4"}, "end plate"),
        ({"beam": "HSS8X4X1/4", "to": {"on": "G2", "at": 150}}, "single plate"),
        ({"beam": "HSS8X4X1/4", "girder": "HSS16X8X3/8"}, "single plate"),
        ({"ends": {"connection": "single angle"}}, "single angle"),
    ],
)
def test_the_connection_follows_by_rule(keys: dict[str, object], kind: str) -> None:
    assert joint(**keys).kind == kind


@pytest.mark.parametrize(
    ("keys", "done", "message"),
    [
        (
            {"to": {"on": "G2", "at": 150}, "ends": {"connection": "double angles"}},
            "single plate",
            "have to be bent",
        ),
        (
            {"girder": "HSS16X8X3/8", "ends": {"connection": "double angles"}},
            "single plate",
            "cannot be bolted",
        ),
        (
            {"beam": "HSS8X4X1/4", "ends": {"connection": "double angles"}},
            "single plate",
            "has no web for angles",
        ),
        (
            {"beam": "HSS8X4X1/4", "girder": "HSS16X8X3/8", "ends": {"connection": "end plate"}},
            "single plate",
            "cannot be bolted",
        ),
        (
            {"beam": "HSS8X4X1/4", "to": {"on": "G2", "at": 150}, "ends": {"connection": "end plate"}},
            "single plate",
            "have to be bent",
        ),
        (
            {"beam": "C12X20.7", "ends": {"connection": "seat"}},
            "single plate",
            "a seat wants a section with flanges",
        ),
        ({"ends": {"connection": "seat"}}, "single plate", "a seat wants a level beam"),
        ({"to": {"on": "G2", "at": -100}}, "free", "a skew of 50.7 degrees is over 45"),
    ],
)
def test_what_cannot_be_made_is_a_finding_and_never_made_silently(
    keys: dict[str, object], done: str, message: str
) -> None:
    table = bay(**keys)  # type: ignore[arg-type] # keys of the beam
    table["member"][1]["from"] = {"point": "1/B", "x": -300}  # type: ignore[index] # G2 made longer
    table["member"][1]["to"] = {"point": "2/B", "x": 300}  # type: ignore[index]
    if "to" in keys:
        table["member"][2]["to"]["at"] += 300  # type: ignore[index]
    else:
        table["member"][2]["to"] = {"on": "G2", "at": 420}  # type: ignore[index]
    found = detailed(table).joints["B1", End.LEFT]
    assert found.kind == done
    (finding,) = [one for one in found.findings if one.code == "connection-not-possible"]
    assert message in finding.message


@pytest.mark.parametrize(
    ("keys", "why"),
    [
        (
            {"beam": "HSS8X4X1/4", "girder": "HSS16X8X3/8"},
            "a hollow wall takes no bolts from behind: a plate is welded to it",
        ),
        (
            {"beam": "HSS8X4X1/4", "to": {"on": "G2", "at": "150 in"}},
            "the end is skewed: a plate in the middle of the beam is welded at the skew",
        ),
    ],
)
def test_a_hollow_beam_at_a_hollow_wall_or_askew_gets_a_tongue(keys: dict[str, object], why: str) -> None:
    found = joint(**keys)
    assert found.kind == "single plate"
    assert found.choice.tongued
    assert found.tongue is not None
    (reason,) = [one for one in found.reasons if one.decision == "single plate"]
    assert reason.because == (f"{why}; the beam is hollow: the plate is bolted to a tongue at its closed end")
    assert not found.findings


@pytest.mark.parametrize("connection", ["single plate", "extended plate"])
def test_a_hollow_beam_can_have_a_plate_wherever_the_document_gives_one(connection: str) -> None:
    found = joint(beam="HSS8X4X1/4", ends={"connection": connection})
    assert (found.kind, found.choice.tongued) == (connection, True)


def test_what_a_hollow_beam_can_have_is_the_remedy_for_what_it_cannot() -> None:
    found = joint(beam="HSS8X4X1/4", ends={"connection": "double angles"})
    (finding,) = [one for one in found.findings if one.code == "connection-not-possible"]
    assert finding.text() == (
        "error: B1 start: double angles: a hollow section has no web for angles; a single plate is detailed "
        "in its place: use an end plate, or a single plate, which is bolted to a tongue at the beam's closed "
        "end"
    )


def test_a_slope_over_six_in_twelve_gets_no_connection() -> None:
    table = bay(rise="7 in 12")
    table["member"][1]["top"] = str(144 + 105)  # type: ignore[index] # a list
    found = detailed(table).joints["B1", End.LEFT]
    assert found.kind == "free"
    assert any("a slope of 7 in 12 is over 6 in 12" in one.message for one in found.findings)


@pytest.mark.parametrize(("beam", "word"), [("W12X26", "web"), ("HSS8X4X1/4", "tongue")])
def test_what_runs_into_a_flange_of_the_column_is_named(beam: str, word: str) -> None:
    column = {"name": "P", "at": "1/A", "stock": "W8X31", "base": 0, "top": "240 in"}
    table = bay(beam=beam, column=column)
    free = {"connection": "free"}
    askew = {"name": "B1", "stock": beam, "from": "1/A", "to": {"point": "1/A", "x": 80, "y": 90}}
    table["member"] = [askew | {"top": "Floor", "end": free}]
    found = [one for one in detailed(table).findings if one.code == "connection-not-possible"]
    (said,) = [one.message for one in found if "runs into" in one.message]
    assert said.startswith(f"extended plate: at a skew of 41.6 degrees its {word} runs into a flange of the")
