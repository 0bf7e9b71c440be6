from __future__ import annotations

from assembling import bay, detailed
from gageline.detail import Detailed
from gageline.detail.columns import rod_hole
from gageline.detail.shop import Shop
from gageline.job import default_practice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.part import FittingKind
from gageline.steel import Plate
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


def plate_of(stock: str, **given: object) -> tuple[float, float, float, float]:
    """Length and width of a base plate and its rods, inches."""
    table = with_column(stock=stock, base_plate=given)
    part = table.member("P").assembly.fittings[0].part
    holes = part.groups[0].holes
    assert isinstance(part.stock, Plate)
    along, across = ({hole.x for hole in holes}, {hole.y for hole in holes})
    sides = (part.length, part.stock.width, max(along) - min(along), max(across) - min(across))
    a, b, c, d = (side.inches for side in sides)
    return a, b, c, d


def test_a_plate_that_is_nearly_square_is_made_square_so_that_it_cannot_be_turned_wrongly() -> None:
    """A W12x65 is 12.1 by 12: 19 by 18 by rule; a W14x90 is 14 by 14.5: 20 by 21."""
    assert plate_of("W12X65") == (19, 19, 16, 16)
    assert plate_of("W14X90") == (21, 21, 18, 18)
    said = with_column(stock="W12X65").reasons["P"][1]
    assert said.because.endswith(
        'sides within 1" of each other are made one, so that it is never turned wrongly'
    )


def test_a_plate_with_plainly_different_sides_stays_and_so_do_given_ones() -> None:
    """A W16x57 is 16.4 by 7.12."""
    assert plate_of("W16X57") == (23, 14, 20, 11)
    assert plate_of("W12X65", gage="14") == (19, 18, 16, 14)
    assert plate_of("W12X65", width="18") == (19, 18, 16, 15)


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
