from __future__ import annotations

import math

import pytest

from assembling import bay, detailed
from gageline.detail import Joint
from gageline.part import End
from gageline.units import System, parse_length


def joint(**keys: object) -> Joint:
    return detailed(bay(**keys)).joints["B1", End.LEFT]  # type: ignore[arg-type] # keys of the beam


def at_column(stock: str, connection: str, turn: int = 0) -> Joint:
    column = {
        "name": "P",
        "at": {"point": "1/A", "x": 60},
        "stock": stock,
        "base": "0",
        "top": "20'-0",
        "turn": turn,
    }
    keys = {
        "from": {"point": "1/A", "x": 60},
        "to": {"on": "G2", "at": 60},
        "start": {"connection": connection},
    }
    table = bay(column=column, **keys)  # type: ignore[arg-type] # keys of the beam
    table["member"] = [m for m in table["member"] if m["name"] != "G1"]  # type: ignore[attr-defined] # a list
    return detailed(table).joints["B1", End.LEFT]


def test_the_spread_is_two_gages_and_twice_half_the_web_rounded_up() -> None:
    # W18X50: web 0.355, half 0.1775, rounded up 3/16; gage of a 4 in leg 2 1/2
    assert joint().spread == parse_length("5 3/8")


def test_a_narrow_flange_gets_a_smaller_angle() -> None:
    wide = at_column("W10X49", "double angles", turn=90)
    narrow = at_column("W8X24", "double angles", turn=90)
    assert wide.angle is not None
    assert narrow.angle is not None
    assert wide.angle.designation == "L4X3-1/2X5/16"
    assert narrow.angle.designation == "L3-1/2X3X5/16"


def test_an_end_plate_takes_the_columns_workable_gage() -> None:
    assert at_column("W14X90", "end plate", turn=90).spread == parse_length("5 1/2")


def test_an_end_plate_narrows_to_lie_between_a_columns_fillets() -> None:
    # W10X49: 10 - 2 x 1.06 = 7.88 flat, 3.94 to each side less 1 1/4, twice: 5.38, down to 5
    assert at_column("W10X49", "end plate").spread == parse_length("5")


def test_a_skewed_plate_leaves_room_for_the_wrench() -> None:
    skewed = joint(to={"on": "G2", "at": 239})
    angle = math.atan2(119, 180)
    out = 0.355 / 2 + 0.375 + 47 / 64 + 0.25
    least = (1.25 + out * math.sin(angle)) / math.cos(angle)
    assert skewed.gage.inches == math.ceil(max(least, 3.0) * 4) / 4


def test_the_grip_is_the_material_and_what_it_lies_on() -> None:
    assert joint().grip.inches == pytest.approx(5 / 16 + 0.400, abs=1e-4)
    plate = joint(ends={"connection": "single plate"})
    assert plate.grip.inches == pytest.approx(3 / 8 + 0.355, abs=1e-4)


def test_a_thick_plate_on_a_thick_web_is_a_finding() -> None:
    stiff = joint(beam="W18X97", ends={"connection": "single plate", "thickness": "1/2"})
    assert [one.code for one in stiff.findings if one.code == "plate-stiff"]


def test_a_plate_that_does_not_fit_the_face_is_a_finding_and_not_built() -> None:
    narrow = at_column("W6X25", "end plate")
    assert narrow.kind == "free"
    (found,) = [one for one in narrow.findings if one.code == "face-too-narrow"]
    assert "no connection is detailed" in found.message


def test_the_reason_of_a_plates_bolts_gives_rounding_and_wrench() -> None:
    result = detailed(bay(ends={"connection": "single plate"}))
    (square, _) = [one for one in result.reasons["B1"] if "off the face" in one.decision]
    assert square.because.endswith('make 2"; rounded up to 1/4", at least 3"')
    skewed = detailed(bay(to={"on": "G2", "at": "230 in"}, ends={"bolt": "1"}))
    wrench = [one.because for one in skewed.reasons["B1"] if "off the face" in one.decision]
    assert all("the wrench beside the skewed face wants" in one for one in wrench)


def test_a_mitre_is_in_degrees_where_the_job_is_in_millimetres() -> None:
    table = bay(beam="IPE 300", girder="IPE 500", to={"on": "G2", "at": "156 in"})
    reasons = [one.because for one in detailed(table, System.MM).reasons["B1"] if "setback" in one.decision]
    assert all(one.endswith("the end is mitred 11.31 degrees") for one in reasons)
    feet = bay(to={"on": "G2", "at": "156 in"})
    reasons = [one.because for one in detailed(feet).reasons["B1"] if "setback" in one.decision]
    assert all(one.endswith("the end is mitred 2.4 in 12") for one in reasons)


def test_large_bolts_stand_two_diameters_from_the_edge_of_a_plate() -> None:
    result = detailed(bay(ends={"connection": "single plate", "bolt": "1"}))
    made = result.joints["B1", End.LEFT]
    assert (made.edge, made.gage) == (parse_length("2"), parse_length("3"))
    (plate, *_) = [fit.part for fit in result.member("G1").assembly.fittings]
    assert plate.stock.width == parse_length("5")  # type: ignore[union-attr] # a plate


def test_a_thin_web_has_its_bolts_within_twelve_thicknesses_of_its_end() -> None:
    # W8X10: 0.170 x 12 is 2.04, with the setback 2.54
    result = detailed(bay(beam="W8X10", ends={"connection": "single plate"}))
    made = result.joints["B1", End.LEFT]
    assert made.gage == parse_length("2 1/2")
    (reason, _) = [one for one in result.reasons["B1"] if "off the face" in one.decision]
    assert reason.because.endswith('less as 12 thicknesses of the web go only to 2 1/2"')
