from __future__ import annotations

from assembling import bay, detailed
from gageline.detail import Detailed
from gageline.detail.columns import rod_hole
from gageline.detail.shop import Shop
from gageline.job import default_practice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.part import FittingKind
from gageline.units import System, parse_length

SHOP = Shop(default_practice(System.FT_IN), frame_practice(FramePracticeEntry(), System.FT_IN), System.FT_IN)


def with_column(**keys: object) -> Detailed:
    column = {
        "name": "P",
        "at": {"point": "1/A", "x": 20, "y": 60},
        "stock": "W10X49",
        "base": "-6",
        "top": "Floor",
    }
    return detailed(bay(column=column | keys))


def test_plate_thicknesses_are_taken_off_the_shaft() -> None:
    shaft = with_column(cap_plate={}).member("P").assembly.main
    assert shaft.length == parse_length("12'-6") - parse_length("3/4") - parse_length("1/2")


def test_a_column_without_plates_is_its_whole_height() -> None:
    table = with_column()
    plates = [fitting.kind for fitting in table.member("P").assembly.fittings]
    assert plates == [FittingKind.BASE_PLATE]
    assert table.member("P").placement.origin[2] == parse_length("-6".lstrip("-")) * -1 + parse_length("3/4")


def test_the_base_plate_takes_four_rods_outside_the_flanges() -> None:
    plate = with_column().member("P").assembly.fittings[0].part
    holes = plate.groups[0].holes
    assert len(holes) == 4
    # W10X49 is 10 by 10: plate 16 by 16, holes 13 by 13
    assert plate.length == parse_length("16")
    assert holes[-1].x - holes[0].x == parse_length("13")
    assert holes[0].width == parse_length("1 5/16")


def test_anchor_rod_holes_of_the_table() -> None:
    # AISC Manual Table 14-2 (from memory)
    rods = {"3/4": "1 5/16", "7/8": "1 9/16", "1": "1 13/16"}
    assert {rod: rod_hole(parse_length(rod), SHOP) for rod in rods} == {
        rod: parse_length(rods[rod]) for rod in rods
    }


def test_given_plates_are_kept() -> None:
    plate = with_column(
        base_plate={"thickness": "1", "width": "18", "length": "20", "pitch": "14", "gage": "12"}
    )
    part = plate.member("P").assembly.fittings[0].part
    assert part.stock.designation == "PL1X18"
    assert part.length == parse_length("20")


def test_a_cap_plate_without_holes_and_one_with() -> None:
    bare = with_column(cap_plate={}).member("P").assembly.fittings[1].part
    drilled = with_column(cap_plate={"pitch": "8", "gage": "4"}).member("P").assembly.fittings[1].part
    assert not bare.groups
    assert len(drilled.groups[0].holes) == 4


def test_a_plate_that_does_not_cover_its_column_is_a_finding() -> None:
    found = with_column(base_plate={"width": "8", "length": "8"}, cap_plate={"width": "9"}).findings
    assert [(one.subject, one.message) for one in found if one.code == "plate-too-small"] == [
        ("P base plate", '8" by 8" does not cover W10X49, 10" by 10"'),
        ("P cap plate", '9" by 11" does not cover W10X49, 10" by 10"'),
    ]


def test_a_column_without_plates_says_so() -> None:
    (first, *_) = with_column().reasons["P"]
    assert first.because == 'base at -6", top at 12\'-0"; base plate 3/4" is taken off'
