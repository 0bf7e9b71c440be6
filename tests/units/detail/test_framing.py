from __future__ import annotations

import pytest

from assembling import bay
from gageline.detail.framing import frame_of, parse_signed
from gageline.detail.line import Frame
from gageline.job import FrameEntry, Note
from gageline.units import System


def read(table: dict[str, object]) -> tuple[Frame, list[Note]]:
    return frame_of(FrameEntry.model_validate(table, context={"system": System.FT_IN}), System.FT_IN)


def notes(**changes: object) -> list[str]:
    table = bay()
    members = list(table["member"])  # type: ignore[call-overload] # a list
    members[2] = members[2] | changes
    return [message for _, message in read(table | {"member": members})[1]]


def test_places_by_crossing_point_member_and_between() -> None:
    table = bay()
    table["point"] = [{"name": "press", "at": {"point": "1/A", "x": "3'-0", "y": "-2'-0"}}]
    table["member"] = [
        *table["member"],  # type: ignore[misc] # a list
        {"name": "B2", "stock": "W8X18", "from": "press", "to": {"on": "B1", "at": 60}, "top": "12'-0"},
        {
            "name": "B3",
            "stock": "W8X18",
            "from": {"between": ["1/A", "1/B"], "at": 45},
            "to": "2/B",
            "top": "0",
        },
    ]
    frame, wrong = read(table)
    assert not wrong
    assert frame.lines["B2"].start == (36.0, -24.0, 144.0)
    assert frame.lines["B2"].finish == (120.0, 60.0, 144.0)
    assert frame.lines["B3"].start == (0.0, 45.0, 0.0)


def test_the_top_of_steel_by_a_drop_from_another_member_and_an_offset() -> None:
    table = bay(offset="6", below="G1", drop="2 1/4")
    del table["member"][2]["top"]  # type: ignore[index] # a list
    line = read(table)[0].lines["B1"]
    assert line.start == (114.0, 0.0, 141.75)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"from": {"on": "G7", "at": 10}}, 'did you mean "G2"'),
        ({"from": "1/C"}, '"1/C" is no point and no crossing of the grid: did you mean "1/B"'),
        ({"top": "Flor"}, '"Flor" is neither a level nor an elevation: did you mean "Floor"'),
        ({"from": {"on": "B1", "at": 5}}, "placed by each other in a circle, B1 → B1"),
        ({"to": {"on": "G1", "at": 121}}, 'from and to are 1" apart'),
        (
            {"from": {"on": "G1", "at": 241}, "ends": {"connection": "free"}},
            'at 20\'-1" is not on "G1": give at up to 20\'-0", or lengthen "G1"',
        ),
        ({"to": {"on": "G2", "at": -1}}, 'at -1" is not on "G2": give at up to 20\'-0"'),
        ({"from": {"on": "G1"}}, "at goes with on or between"),
        ({"from": {"on": "G1", "point": "1/A", "at": 1}}, "by one of point, on and between"),
        ({"rise": "1 in 12", "fall": "1 in 12"}, "rise and fall are both given"),
        ({"rise": "13 in 12"}, "steeper than 12 in 12"),
        ({"below": "G1"}, "its top of steel is needed once"),
        ({"stock": "L4x4x1/4"}, "is no section for a beam of a frame"),
    ],
)
def test_what_is_wrong_is_said_with_its_remedy(changes: dict[str, object], message: str) -> None:
    (found,) = notes(**changes)
    assert message in found


@pytest.mark.parametrize(("at", "wrong"), [(None, False), (0, False), (12, True), (-12, True)])
def test_a_column_stands_in_one_place(at: int | None, wrong: bool) -> None:
    column = {"name": "P", "at": "1/A", "stock": "W8X31", "base": "0", "top": "Floor"}
    place = {"on": "P"} | ({} if at is None else {"at": at})
    table = bay(column=column)
    beam = {"name": "B2", "stock": "W12X26", "from": place, "to": "2/B", "top": "Floor"}
    table["member"] = [*table["member"], beam]  # type: ignore[misc] # a list
    found = [message for _, message in read(table)[1]]
    assert bool(found) is wrong
    if wrong:
        way = "1'-0\"" if at == 12 else "-1'-0\""
        (message,) = found
        assert message == (
            f'at {way} on "P" means nothing, a column stands in one place: leave at out, '
            "and give x and y for a place beside it"
        )


@pytest.mark.parametrize(("at", "wrong"), [(0, False), (180, False), (181, True), (-1, True)])
def test_a_place_between_two_points_lies_between_them(at: int, wrong: bool) -> None:
    table = bay()
    beam = {"name": "B2", "stock": "W12X26", "from": {"between": ["2/A", "2/B"], "at": at}, "to": "1/B"}
    other = beam | {"to": {"point": "1/A", "x": 60, "y": 90}, "top": "Floor"}
    table["member"] = [*table["member"], other]  # type: ignore[misc] # a list
    found = [message for _, message in read(table)[1]]
    assert bool(found) is wrong
    if wrong:
        assert 'is not between "2/A" and "2/B": give at from 0 to 15\'-0", or a point farther off' in found[0]


def test_an_overhang_is_stood_on_too() -> None:
    table = bay()
    hung = {"start": {"overhang": 24}, "end": {"overhang": 36}}
    girders = [one | hung for one in table["member"][:2]]  # type: ignore[index] # a list
    beam = table["member"][2]  # type: ignore[index] # a list
    for at, wrong in ((-24, False), (276, False), (-25, True), (277, True)):
        placed = beam | {"from": {"on": "G1", "at": at}, "to": {"on": "G2", "at": at}}
        found = [message for _, message in read(table | {"member": [*girders, placed]})[1]]
        assert bool(found) is wrong
        assert all('give at as -2\'-0" to 23\'-0", or lengthen "G1"' in message for message in found)


def test_a_level_upside_down() -> None:
    column = {"name": "P", "at": "1/A", "stock": "W8X31", "base": "Floor", "top": "0"}
    (found,) = [message for _, message in read(bay(column=column))[1]]
    assert found == 'its top, 0", is not above its base, 12\'-0": change base or top'


def test_a_splice_outside_its_column() -> None:
    column = {
        "name": "P", "at": "1/A", "stock": "W8X31", "base": "0", "top": "Floor", "splices": [{"at": "Floor"}],
    }  # fmt: skip
    (found,) = [message for _, message in read(bay(column=column))[1]]
    assert "a splice at 16'-0\" is not between base and top" in found


def test_a_name_used_twice_and_a_grid_with_a_spacing_too_few() -> None:
    table = bay()
    table["member"] = [*table["member"], table["member"][2]]  # type: ignore[misc, index] # a list
    table["grid"]["x"]["spacing"] = []  # type: ignore[index] # a table
    messages = [message for _, message in read(table)[1]]
    assert any('"B1" is used twice' in message for message in messages)
    assert any("2 names want 1 spacings, not 0" in message for message in messages)


def test_an_elevation_may_be_below_zero() -> None:
    assert parse_signed("-0'-6", System.FT_IN) == -6.0
    assert parse_signed("2540", System.MM) == pytest.approx(100.0)
