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
        ({"beam": "HSS8X4X1/4", "ends": {"connection": "double angles"}}, "free", "has no web for angles"),
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
    "keys",
    [
        {"beam": "HSS8X4X1/4", "girder": "HSS16X8X3/8"},
        {"beam": "HSS8X4X1/4", "to": {"on": "G2", "at": "150 in"}},
    ],
)
def test_a_hollow_beam_at_a_hollow_wall_or_askew_says_what_to_do(keys: dict[str, object]) -> None:
    found = joint(**keys)
    assert found.kind == "free"
    (finding,) = [one for one in found.findings if one.code == "connection-not-possible"]
    assert finding.remedy == (
        "use a W or C beam here, or let the hollow one meet a W column's flange or an open girder square; "
        "else enter the end as drawn, with a plate on the beam's closed end that is bolted to one on the "
        "support"
    )


def test_a_slope_over_six_in_twelve_gets_no_connection() -> None:
    table = bay(rise="7 in 12")
    table["member"][1]["top"] = str(144 + 105)  # type: ignore[index] # a list
    found = detailed(table).joints["B1", End.LEFT]
    assert found.kind == "free"
    assert any("a slope of 7 in 12 is over 6 in 12" in one.message for one in found.findings)
