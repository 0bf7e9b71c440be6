from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from gageline.detail import Detailed
from gageline.part import End
from gageline.units import parse_length

ANGLES = {"connection": "double angles"}


def both_sides(
    drop: str = "0", stock: str = "W16X26", first: dict[str, Any] | None = None, **more: object
) -> Detailed:
    """B1 on one side of G2 and B2 on the other.

    Args:
        drop: of B2.
        stock: of B2.
        first: further keys of B1.
        more: further keys of B2.
    """
    table = bay(**(first or {}))
    table["grid"]["y"] = {"names": ["A", "B", "C"], "spacing": [180, 180]}  # type: ignore[index] # a table
    girder = table["member"][0]  # type: ignore[index] # a list
    far = {"name": "B2", "stock": stock, "from": {"on": "G2", "at": 120}, "to": {"on": "G3", "at": 120}}
    table["member"] = [
        *table["member"],  # type: ignore[misc] # a list
        girder | {"name": "G3", "from": "1/C", "to": "2/C"},
        far | {"top": "Floor", "drop": drop} | more,
    ]
    return detailed(table)


def test_beams_of_different_webs_share_one_spread() -> None:
    result = both_sides()
    one, two = result.joints["B1", End.RIGHT], result.joints["B2", End.LEFT]
    # by themselves W18X50 5 3/8 and W16X26 5 1/4
    assert one.spread == two.spread == parse_length("5 3/8")
    assert result.shared[0].rows == 3


def test_a_dropped_beam_puts_its_rows_on_those_of_the_other() -> None:
    result = both_sides(drop="1")
    one, two = result.joints["B1", End.RIGHT].ladder, result.joints["B2", End.LEFT].ladder
    assert one is not None
    assert two is not None
    apart = (one.first - two.first) / 3
    assert apart == pytest.approx(round(apart), abs=1e-6)


def test_the_girder_is_drilled_once_for_both() -> None:
    result = both_sides()
    holes = [hole for group in result.member("G2").assembly.main.groups for hole in group.holes]
    assert len(holes) == 6
    bolts = [one for one in result.field_bolts if one.support == "G2"]
    # 3 rows of 2, through both angles and the web: 5/16 + 0.400 + 5/16
    assert [one.count for one in bolts] == [6]
    assert bolts[0].grip.inches == pytest.approx(1.025, abs=1e-4)


def test_a_plate_on_the_other_side_shares_nothing() -> None:
    assert not both_sides(ends={"connection": "single plate"}).shared


def column_web(deep: str, shallow: str) -> Detailed:
    free = {"connection": "free"}
    joined = {"connection": "double angles"}
    return detailed(
        {
            "grid": {"x": {"names": ["1"]}, "y": {"names": ["A", "B", "C"], "spacing": [120, 120]}},
            "level": [{"name": "Floor", "elevation": 144}],
            "column": [{"name": "P", "at": "1/B", "stock": "W14X90", "base": "0", "top": "20'-0"}],
            "member": [
                {
                    "name": "S",
                    "stock": deep,
                    "from": "1/A",
                    "to": "1/B",
                    "top": "Floor",
                    "start": free,
                    "end": joined,
                },
                {
                    "name": "N",
                    "stock": shallow,
                    "from": "1/B",
                    "to": "1/C",
                    "top": "Floor",
                    "start": joined,
                    "end": free,
                },
            ],
        }
    )


def test_shared_bolts_at_a_column_web_raise_the_erection_finding() -> None:
    (found,) = [one for one in column_web("W16X26", "W16X26").findings if one.code == "double-connection"]
    assert found.severity == "warning"
    assert found.source == "29 CFR 1926.756(c)"
    assert "add a seat" in found.remedy


def test_a_longer_connection_on_one_side_is_a_remedy() -> None:
    (found,) = [one for one in column_web("W24X55", "W16X26").findings if one.code == "double-connection"]
    assert found.severity == "note"
    assert found.remedy.startswith("erect S first")


def test_no_erection_finding_away_from_columns() -> None:
    assert not [one for one in both_sides().findings if one.code == "double-connection"]


def test_patterns_that_cannot_be_made_to_agree_are_a_finding() -> None:
    # four rows fill W16X26 from cope to fillet, and 1 1/2 in is no whole pitch
    given = {"rows": 4, "connection": "double angles"}
    result = both_sides("1 1/2", first={"beam": "W16X26", "ends": given}, ends=given)
    (found,) = [one for one in result.findings if one.code == "patterns-disagree"]
    assert "cannot be made to fall together" in found.message
    assert "use a single plate on one side" in found.remedy
    assert not result.shared


def test_the_erection_finding_where_a_girder_lies_over_a_column() -> None:
    post = {"name": "P", "at": {"point": "1/B", "x": 120}, "stock": "HSS8X8X3/8", "base": "0", "under": "G2"}
    result = both_sides(first={"beam": "W16X26", "column": post, "ends": ANGLES}, ends=ANGLES)
    (found,) = [one for one in result.findings if one.code == "double-connection"]
    assert (found.severity, found.source) == ("warning", "29 CFR 1926.756(c)")
    assert "through the girder web of G2 at a column" in found.message
    assert "shift one connection by a row" in found.remedy


def test_by_rule_nothing_is_shared_over_a_column() -> None:
    post = {"name": "P", "at": {"point": "1/B", "x": 120}, "stock": "HSS8X8X3/8", "base": "0", "under": "G2"}
    result = both_sides(first={"column": post})
    assert not result.shared
    assert {one.code for one in result.findings} == {"hung-free"}  # the girder, with both of its ends free


def test_one_end_gets_a_plate_where_patterns_cannot_be_made_to_agree() -> None:
    given = {"rows": 4}
    result = both_sides("1 1/2", first={"beam": "W16X26", "ends": given}, ends=given)
    assert not [one for one in result.findings if one.severity == "error"]
    kinds = {result.joints["B1", End.RIGHT].kind, result.joints["B2", End.LEFT].kind}
    assert kinds == {"double angles", "single plate"}
    assert any("does not go" in r.because or "do not go" in r.because for r in result.reasons["B1"])


def test_ends_of_two_bolt_sizes_share_no_holes() -> None:
    # by rule one of them gets a plate; where both are given, it is said
    chosen = both_sides(first={"ends": {"bolt": "7/8"}}, ends={"bolt": "3/4"})
    assert not chosen.shared
    assert not [one for one in chosen.findings if one.code == "patterns-disagree"]
    kinds = {chosen.joints["B1", End.RIGHT].kind, chosen.joints["B2", End.LEFT].kind}
    assert kinds == {"double angles", "single plate"}
    given = both_sides(first={"ends": ANGLES | {"bolt": "1"}}, ends=ANGLES | {"bolt": "3/4"})
    (found,) = [one for one in given.findings if one.code == "patterns-disagree"]
    assert found.message == (
        "its 1 in bolts and the 3/4 bolts of B2 on the other side of G2 share no holes: "
        "one size goes through both"
    )
    assert found.remedy.startswith("give both ends one bolt")


def test_a_spread_that_runs_past_the_shorter_legs_is_not_shared() -> None:
    # L6x4x3/8: gage 3 1/2 and half a web, 7 3/8; on L4x3-1/2x5/16 that leaves 0.49 at the edge, 1 in is least
    wide = {"ends": ANGLES | {"angle": "L6x4x3/8"}}
    chosen = both_sides(first=wide, stock="W18X50")
    assert chosen.joints["B2", End.LEFT].kind == "single plate"
    assert not [one for one in chosen.findings if one.code == "patterns-disagree"]
    given = both_sides(first=wide, stock="W18X50", ends=ANGLES)
    (found,) = [one for one in given.findings if one.code == "patterns-disagree"]
    assert 'want a spread of 7 3/8", which goes past the shorter legs' in found.message


def test_bolts_beside_a_hollow_beam_are_not_asked_of_legs_that_are_too_short() -> None:
    # HSS10X6: 6 + 2 (1/4 + 1 1/4) = 9 apart, past a 4 in leg; this once was told as a gage beyond the leg
    made = both_sides(first={"beam": "HSS10X6X3/8", "ends": {"connection": "end plate"}}, stock="W16X26")
    assert made.joints["B1", End.RIGHT].spread == parse_length("9")
    assert made.joints["B2", End.LEFT].kind == "single plate"
