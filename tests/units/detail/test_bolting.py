from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import bolt_length
from gageline.steel import bolt
from gageline.units import Length, parse_length


@pytest.mark.parametrize(
    ("size", "grip", "washers", "length"),
    [
        # CISC's worked case: 7/8 in, plies 10 and 9.7 mm, no washer: 2 in; with one washer 2 1/4 in
        ("7/8", "0.776in", 0, "2"),
        ("7/8", "0.776in", 1, "2 1/4"),
        # 1 + 5/32 + 1 = 2.156
        ("3/4", "1", 1, "2 1/4"),
    ],
)
def test_bolt_lengths(size: str, grip: str, washers: int, length: str) -> None:
    assert bolt_length(bolt(size), parse_length(grip), washers) == parse_length(length)


def test_a_metric_bolt_is_rounded_up_to_five_millimetres() -> None:
    found = bolt_length(bolt("M20"), Length.from_mm(25))
    assert found.mm % 5 == 0
    assert found.mm >= 25 + bolt("M20").nut_height.mm


def test_bolts_under_a_flange_that_cannot_be_tightened() -> None:
    # the girder stands 2 in over the beam: its flange 0.96 in thick leaves the first row 1.04 + drop
    result = detailed(
        bay(beam="W12X26", girder="W14X90", drop="0", ends={"connection": "single plate", "drop": "2"})
    )
    lines = [reason for reason in result.reasons["B1"] if "top flange" in reason.decision]
    assert lines
    assert 'a 3/4 bolt wants 1 1/4"' in lines[0].because


def test_legs_whose_bolts_are_in_each_others_way_are_a_finding() -> None:
    result = detailed(bay(ends={"angle": "L3x3x5/16"}))
    (found, _) = [one for one in result.findings if one.code == "bolt-clearance"]
    assert "bolts of the outstanding leg to those of the web leg" in found.message
    assert "stagger the legs" in found.remedy


def test_field_bolts_are_listed_by_connection() -> None:
    result = detailed(bay())
    lists = [(one.connection, one.support, one.count) for one in result.field_bolts]
    assert lists == [("start of B1", "G1", 6), ("end of B1", "G2", 6)]
    # 5/16 + 0.400 + 5/32 + 1 = 1.869
    assert {one.length for one in result.field_bolts} == {parse_length("2")}


def test_shop_bolts_stay_with_the_piece() -> None:
    (piece,) = [one for one in detailed(bay()).assemblies if one.mark == "B1"]
    assert [(bolts.count, bolts.field) for bolts in piece.bolts] == [(3, False), (3, False)]
