from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import Detailed, bolt_length
from gageline.steel import bolt
from gageline.units import Length, parse_length


def at_a_column_web(column: str, beam: str, **keys: object) -> Detailed:
    """The beam B1 from the web of a column to nothing."""
    angles, free = {"connection": "double angles"}, {"connection": "free"}
    member = {"name": "B1", "stock": beam, "top": "Floor", "start": angles, "end": free} | keys
    return detailed(
        {
            "grid": {"x": {"names": ["1"]}, "y": {"names": ["A", "B"], "spacing": [120]}},
            "level": [{"name": "Floor", "elevation": 144}],
            "column": [{"name": "P", "at": "1/A", "stock": column, "base": "0", "top": "20'-0"}],
            "member": [member | {"from": "1/A", "to": "1/B"}],
        }
    )


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
    result = detailed(bay(ends={"angle": "L3x3x5/16", "bolt": "3/4"}))
    (found, _) = [one for one in result.findings if one.code == "bolt-clearance"]
    assert "bolts of the outstanding leg to those of the web leg" in found.message
    assert found.remedy.startswith("use an angle with a longer or thinner leg")  # 3 in leave no stagger


def test_the_wrench_between_the_flanges_of_a_column() -> None:
    # W12X65: half of 12.1 less 0.605 is 5.445; half of the spread 5 1/4 is 2.625
    result = at_a_column_web("W12X65", "W16X26")
    (reason,) = [one for one in result.reasons["B1"] if "flange of the column" in one.decision]
    assert reason.decision == 'bolts to the nearer flange of the column: 2 13/16" for the wrench'
    assert not [one for one in result.findings if one.code == "bolt-clearance"]


def test_the_wrench_beside_a_beam_off_the_columns_middle() -> None:
    # 1/2 in nearer to one flange: 5.445 - 2.625 - 0.5 = 2.32
    result = at_a_column_web("W12X65", "W16X26", offset="1/2")
    (reason,) = [one for one in result.reasons["B1"] if "flange of the column" in one.decision]
    assert reason.decision == 'bolts to the nearer flange of the column: 2 5/16" for the wrench'


def test_bolts_without_clearances_in_the_table_are_said_not_to_be_checked() -> None:
    result = detailed(bay(ends={"bolt": "M20"}))
    (start, _) = [one for one in result.reasons["B1"] if "wrench" in one.decision]
    assert start.decision == "room for the wrench is not checked"
    assert "the table gives no clearances for an M20 bolt" in start.because


def test_field_bolts_are_listed_by_connection() -> None:
    result = detailed(bay())
    lists = [(one.connection, one.support, one.count) for one in result.field_bolts]
    assert lists == [("start of B1", "G1", 6), ("end of B1", "G2", 6)]
    # 5/16 + 0.400 + 5/32 + 1 = 1.869
    assert {one.length for one in result.field_bolts} == {parse_length("2")}


def test_shop_bolts_stay_with_the_piece() -> None:
    (piece,) = [one for one in detailed(bay()).assemblies if one.mark == "B1"]
    assert [(bolts.count, bolts.field) for bolts in piece.bolts] == [(3, False), (3, False)]
