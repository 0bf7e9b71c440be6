from __future__ import annotations

import re

import pytest

from assembling import bay, detailed
from gageline.detail import Detailed
from gageline.part import End


def at_a_column(column: str, beam: str, turn: int = 0, **keys: object) -> Detailed:
    """The beam B1 from a column to nothing, from its web where it is not turned."""
    angles, free = {"connection": "double angles"}, {"connection": "free"}
    member = {"name": "B1", "stock": beam, "top": "Floor", "start": angles, "end": free} | keys
    stand = {"name": "P", "at": "1/A", "stock": column, "base": "0", "top": "20'-0", "turn": turn}
    return detailed(
        {
            "grid": {"x": {"names": ["1"]}, "y": {"names": ["A", "B"], "spacing": [120]}},
            "level": [{"name": "Floor", "elevation": 144}],
            "column": [stand],
            "member": [member | {"from": "1/A", "to": "1/B"}],
        }
    )


def why(result: Detailed) -> str:
    """The reason of the bolts at the start of B1."""
    (found,) = [
        one for one in result.reasons["B1"] if one.decision.startswith("bolts ") and one.end == "start"
        and ("can be put in" in one.decision or "too little room" in one.decision)
    ]  # fmt: skip
    return found.text()


def gap(result: Detailed, what: str) -> str:
    """What the reason says of a gap."""
    (found,) = re.findall(rf"; {what} ([^;,(]+)", why(result))
    return str(found).strip()


def short(result: Detailed) -> list[tuple[str, str]]:
    """Code and message of what is too near at the start of B1."""
    codes = {"bolt-entering", "bolt-clearance"}
    return [(f.code, f.message) for f in result.findings if f.code in codes and f.subject == "B1 start"]


def test_what_a_bolt_wants_is_said_with_what_it_has() -> None:
    result = detailed(bay())
    assert 'a 3/4 bolt wants 3/4" to be put in and 1 1/4" to be tightened, 3/4" to a fillet;' in why(result)
    # W21X62: first row 3 1/4 down, flange 0.615, kdet 1 5/16
    assert gap(result, "first row to the support's top flange") == '2 41/64"'
    assert gap(result, "rows to the support's fillets") == '1 15/16"'
    # L4x3-1/2x5/16: gage 2 in the shorter leg
    assert gap(result, "bolts of the web leg to the outstanding leg") == '1 11/16"'
    # W18X50: the last row 9 1/4 down, 18 deep, flange 0.570
    assert gap(result, "last row to the beam's bottom flange") == '8 3/16"'


def test_bolts_that_can_be_put_in_and_not_tightened() -> None:
    # W14X90, 1 1/2 in off its middle: 2.625 - 1.5 - 0.22 = 0.905, between 3/4 and 1 1/4
    result = at_a_column("W14X90", "W16X26", turn=90, offset="1 1/2")
    ((code, message),) = [one for one in short(result) if "web behind its flange" in one[1]]
    assert code == "bolt-clearance"
    assert message.endswith('29/32" is less than the 1 1/4" that a 3/4 bolt wants to be tightened')


def test_a_column_of_bolts_too_near_a_hollow_beam_is_spread() -> None:
    # HSS8X4: 4 wide, welds 1/4 and wrenches 1 1/4 to both sides make 7; the shop's gage is 5 1/2
    result = detailed(bay(beam="HSS8X4X1/4"))
    joint = result.joints["B1", End.LEFT]
    assert joint.spread is not None
    assert joint.spread.inches == 7.0
    assert gap(result, "bolts to the weld of the beam") == '1 1/4"'


def test_the_bolts_of_a_channels_end_plate_clear_its_web() -> None:
    # C12X20.7: flange 2.94, web 0.282; the plate is centred on the section
    result = detailed(bay(beam="C12X20.7", ends={"connection": "end plate"}))
    joint = result.joints["B1", End.LEFT]
    assert joint.spread is not None
    assert joint.spread.inches == 6.0  # 2.94, and 1/4 and 1 1/4 to both sides of it, up to 1/2
    assert not short(result)


def test_larger_bolts_get_a_longer_leg() -> None:
    # L4x3-1/2x5/16 leaves 1.09 beside the nut of the other leg, a 7/8 bolt wants half of 2 1/2
    result = detailed(bay(ends={"bolt": "7/8"}))
    assert result.joints["B1", End.LEFT].kind == "double angles"
    (reason,) = [
        one for one in result.reasons["B1"] if "outstanding leg 5" in one.decision and one.end == "start"
    ]
    assert reason.decision == 'L5X3-1/2X5/16, outstanding leg 5"'
    assert "in L4X3-1/2X5/16 the bolts of the two legs are in each other's way" in reason.because


def test_legs_whose_bolts_are_in_each_others_way_are_a_finding() -> None:
    result = detailed(bay(ends={"angle": "L3x3x5/16", "bolt": "3/4"}))
    (found, _) = [one for one in result.findings if one.code == "bolt-clearance"]
    assert "bolts of the outstanding leg to those of the web leg" in found.message
    assert found.remedy.startswith("use an angle with a longer or thinner leg")  # 3 in leave no stagger


def test_bolts_that_cannot_even_be_put_in() -> None:
    # L2x2x3/8: gage 1 1/8, so 1.128 - 0.375 - 0.734 - 0.25 is nothing
    result = detailed(bay(ends={"angle": "L2x2x3/8", "bolt": "3/4"}))
    codes = dict(short(result))
    assert codes["bolt-entering"].endswith('is less than the 3/4" that a 3/4 bolt wants to be put in')
    assert why(result).startswith("start: bolts have too little room")


def test_between_the_flanges_of_a_column() -> None:
    # W12X65: half of 12.1 less 0.605 is 5.445, less kdes 1.20 is 4.85; half of the spread 5 1/4 is 2.625
    result = at_a_column("W12X65", "W16X26")
    assert gap(result, "bolts to the nearer flange of the column") == '2 13/16"'
    assert gap(result, "bolts to the nearer fillet of the column") == '2 7/32"'
    assert not short(result)


def test_beside_a_beam_off_the_columns_middle() -> None:
    # 1/2 in nearer to one flange: 5.445 - 2.625 - 0.5 = 2.32
    result = at_a_column("W12X65", "W16X26", offset="1/2")
    assert gap(result, "bolts to the nearer flange of the column") == '2 5/16"'


def test_behind_the_flange_of_a_column() -> None:
    # W14X90: web 0.440, k1 1 7/16; half of the spread 5 1/4 is 2.625
    result = at_a_column("W14X90", "W16X26", turn=90)
    assert gap(result, "bolts to the column's web behind its flange") == '2 13/32"'
    assert gap(result, "bolts to the fillet behind the flange") == '1 3/16"'
    # 1 in off the middle one line of bolts is at 1.625: over the fillet 0.19
    off = at_a_column("W14X90", "W16X26", turn=90, offset="1")
    assert gap(off, "bolts to the fillet behind the flange") == '3/16"'
    (found,) = [message for _, message in short(off) if "fillet" in message]
    assert found.endswith('is less than the 3/4" that a 3/4 bolt wants for a washer that lies flat')


def test_a_bolt_between_a_plate_and_a_columns_flange_has_to_come_in_along_its_axis() -> None:
    plates = {"connection": "single plate", "bolt": "7/8"}
    # W6X20: 3.1 - 0.365 - 0.115 = 2.62 between web and flange; grip 0.625 wants 2
    wide = at_a_column("W6X20", "W8X18", start=plates)
    (line,) = re.findall(r"farther flange of the column ([^;(]+)", why(wide))
    assert line.strip().startswith('2 5/8", wanted 2" to be put in')
    (gapped,) = [m for _, m in short(at_a_column("W6X20", "W8X18", start=plates | {"thickness": "1 1/4"}))
                 if "farther flange" in m]  # fmt: skip
    assert gapped.endswith("wants to be put in")


@pytest.mark.parametrize("size", ["M16", "M20", "M24", "M30"])
def test_metric_bolts_are_checked_with_the_next_larger_line_of_the_table(size: str) -> None:
    result = detailed(bay(ends={"bolt": size, "connection": "single plate"}))
    larger = {"M16": "a 3/4", "M20": "a 7/8", "M24": "a 1 in", "M30": "a 1-1/4"}[size]
    said = f"the table has no {size}, the next that is larger all round is taken: {larger} bolt wants"
    assert said in why(result)
    assert "common practice, no source" in why(result)


def test_what_is_a_hair_too_little_does_not_read_as_enough() -> None:
    # W10X49 leaves room for L3-1/2x3x5/16: 2 + 1/8 - 0.170/2 - 0.3125 - 47/64 - 0.25 = 0.743
    result = at_a_column("W10X49", "W8X10")
    (message,) = [text for code, text in short(result) if code == "bolt-entering"]
    assert '0.743" is less than the 0.750" that' in message


def test_the_bolts_of_a_seat_clear_web_fillet_and_upright_leg() -> None:
    """W12X26: web 0.23, k1 3/4, gage 3 1/2; L6X4X3/8 with its 4 in leg's gage 2 1/2."""
    result = at_a_column("W8X31", "W12X26", turn=90, start={"connection": "seat"})
    assert gap(result, "bolts of the seat to the beam's web") == '1 41/64"'
    assert gap(result, "bolts of the seat to the beam's fillet") == '1"'
    assert gap(result, "bolts of the seat to its upright leg") == '2 1/8"'


def test_a_seat_under_a_narrow_flange_wants_smaller_bolts() -> None:
    """W10X12: gage 2 1/4, web 0.19."""
    result = at_a_column("W8X31", "W10X12", turn=90, start={"connection": "seat"})
    (one, *_) = [one.text() for one in result.findings if one.code == "bolt-clearance"]
    assert one == (
        'error: B1 start: bolts of the seat to the beam\'s web: 1 1/32" is less than the 1 1/4" that a 3/4 '
        "bolt wants to be tightened: widen the gage, or use smaller bolts or another connection"
    )
