from __future__ import annotations

from assembling import bay, detailed
from gageline.detail import Detailed
from gageline.units import parse_length


def spliced(stock: str = "W10X49") -> Detailed:
    column = {
        "name": "P", "at": {"point": "1/A", "x": 20, "y": 60}, "stock": stock, "base": "0", "top": "24'-0",
        "splices": [{"at": "Floor"}],
    }  # fmt: skip
    return detailed(bay(column=column))


def test_the_shafts_of_a_splice_make_up_the_column() -> None:
    lower, upper = (one for one in spliced().placed if one.member == "P")
    # 4 ft over the floor at 12 ft; the base plate is 3/4 in
    assert lower.assembly.main.length == parse_length("16'-0") - parse_length("3/4")
    assert upper.assembly.main.length == parse_length("8'-0")
    assert upper.placement.origin[2] == parse_length("16'-0")


def test_the_plates_are_bolted_to_both_shafts() -> None:
    result = spliced()
    lower, upper = (one.assembly for one in result.placed if one.member == "P")
    assert [fitting.name for fitting in lower.fittings][1:] == ["top splice plate", "bottom splice plate"]
    assert sum(len(group.holes) for group in lower.main.groups) == 8
    assert sum(len(group.holes) for group in upper.main.groups) == 8
    assert [one.count for one in result.field_bolts if one.connection == "P splice"] == [8]


def test_a_hollow_column_is_not_spliced_silently() -> None:
    result = spliced("HSS8X8X3/8")
    (found,) = [one for one in result.findings if one.code == "splice-not-detailed"]
    assert "only W columns" in found.message
    assert len([one for one in result.placed if one.member == "P"]) == 1
