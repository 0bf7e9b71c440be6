from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import Served, detail_frame
from gageline.errors import ValueProblem
from gageline.job import FrameEntry, default_practice
from gageline.part import End
from gageline.units import System, parse_length

COLUMN = {"name": "P", "at": {"point": "1/A", "x": 20, "y": 60}, "stock": "W10X49", "base": "-6", "top": 288}


def test_a_member_is_found_by_its_name() -> None:
    result = detailed(bay())
    assert result.member("G2").assembly.mark == "G2"
    with pytest.raises(ValueProblem, match='there is no member "G9" in the frame'):
        result.member("G9")


def test_plates_on_a_girder_know_whom_they_serve() -> None:
    result = detailed(bay(ends={"connection": "single plate"}))
    assert result.served == (
        Served("G1", "far plate", "B1", End.LEFT),
        Served("G2", "near plate", "B1", End.RIGHT),
    )
    for one in result.served:
        assert one.fitting in {fit.name for fit in result.member(one.piece).assembly.fittings}


def test_angles_that_go_with_the_beam_serve_no_one_else() -> None:
    assert not detailed(bay()).served


def test_angles_welded_to_the_girder_and_seats_are_served_too() -> None:
    result = detailed(bay(start={"connection": "double angles", "to_support": "welded"}))
    assert [(one.piece, one.member, one.end) for one in result.served] == [("G1", "B1", End.LEFT)] * 2
    names = {fit.name for fit in result.member("G1").assembly.fittings}
    assert {one.fitting for one in result.served} == names


def test_a_shaft_of_a_spliced_column_is_named_by_itself() -> None:
    arm = {"name": "A", "stock": "W12X26", "top": "20'-0", "ends": {"connection": "single plate"}}
    ends = {"from": COLUMN["at"], "to": {"point": "1/A", "x": 120, "y": 60}, "end": {"connection": "free"}}
    frame = bay(column=COLUMN | {"splices": [{"at": "Floor"}]})
    frame["member"] = [*frame["member"], arm | ends]  # type: ignore[misc] # a list of tables
    result = detailed(frame)
    assert [(one.piece, one.member) for one in result.served] == [("P.2", "A")]
    names = {(one.piece, one.support) for one in result.field_bolts}
    assert names == {("B1", "G1"), ("B1", "G2"), ("A", "P.2"), ("P.2", "P.1")}


def test_anchor_rods_are_data() -> None:
    (rods,) = detailed(bay(column=COLUMN)).anchor_rods
    # base plate 3/4, grout 1 1/2, two and a half rods: 4 1/8, up to 4 1/2; twelve rods: 9
    assert (rods.column, rods.count) == ("P", 4)
    assert rods.diameter == parse_length("3/4")
    assert rods.hole == parse_length("1 5/16")
    assert rods.projection == parse_length("4 1/2")
    assert rods.embedment == parse_length("9")
    assert rods.length == parse_length("13 1/2")
    assert (rods.pitch, rods.gage) == (parse_length("13"), parse_length("13"))


def test_anchor_rods_as_given_and_none_without_a_base_plate() -> None:
    given = {"rod": "1", "projection": "6", "embedment": "1'-3"}
    (rods,) = detailed(bay(column=COLUMN | {"base_plate": given})).anchor_rods
    assert (rods.projection, rods.embedment) == (parse_length("6"), parse_length("15"))
    assert rods.hole == parse_length("1 13/16")


def test_a_column_without_a_base_plate_has_no_rods() -> None:
    entry = FrameEntry.model_validate(bay(column=COLUMN), context={"system": System.FT_IN})
    bare = tuple(column.model_copy(update={"base_plate": None}) for column in entry.columns)
    entry = entry.model_copy(update={"columns": bare})
    result, _ = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)
    assert not result.anchor_rods
