from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from gageline.detail import Detailed, detail_frame
from gageline.job import FrameEntry, default_practice
from gageline.part import End, Severity
from gageline.units import System


def off(y: float, **more: Any) -> dict[str, object]:
    """B1 from a place so far inside of the line of G1 to G2."""
    return bay(**({"from": {"point": "1/A", "x": 120, "y": y}} | more))


def moved(result: Detailed) -> list[str]:
    return [one.text() for one in result.findings if one.code == "point-moved"]


def notes(table: dict[str, object]) -> list[str]:
    entry = FrameEntry.model_validate(table, context={"system": System.FT_IN})
    return [message for _, message in detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)[1]]


@pytest.mark.parametrize("y", [3, -3])
def test_a_point_inside_its_girder_is_moved_to_the_middle_and_that_is_said(y: int) -> None:
    # the flange of W21X62 is 8.24 wide; whether the point is before or behind, the span is 15 ft
    result = detailed(off(y))
    assert result.frame.lines["B1"].run == pytest.approx(180.0)
    entered = "14'-9\"" if y > 0 else "15'-3\""
    (said,) = moved(result)
    assert said == (
        f'warning: B1: its start is 3" off the middle of G1 and was moved there: it is 15\'-0" between work '
        f"points, not {entered}: give the start on G1, or move one of them"
    )
    assert result.joints["B1", End.LEFT].site.station == pytest.approx(120.0)


def test_what_is_said_goes_with_the_piece() -> None:
    result = detailed(off(3))
    assert [one.code for one in result.said["B1"]] == ["point-moved"]
    assert all(one.severity is Severity.WARNING for one in result.said["B1"])


def test_a_hair_off_is_put_right_without_a_word() -> None:
    result = detailed(off(1 / 32))
    assert result.frame.lines["B1"].run == pytest.approx(180.0)
    assert not moved(result)


@pytest.mark.parametrize("y", [4.5, -4.5, 11.9])
def test_a_point_outside_its_girder_is_carried_by_nothing(y: float) -> None:
    (found,) = notes(off(y))
    assert found.startswith("nothing supports it; the nearest ")
    assert '"G1", ' in found
    assert 'move it there, or give overhang or connection = "free"' in found


def test_a_sideways_offset_on_a_skew_is_no_point_that_was_missed() -> None:
    # 6 in to the left of a line at 45 degrees: 6 in along it the girder's middle is met, as is meant
    ends: dict[str, Any] = {"from": {"on": "G1", "at": 50}, "to": {"on": "G2", "at": 230}}
    result = detailed(bay(offset=6, **ends))
    assert not moved(result)
    assert result.frame.lines["B1"].run == pytest.approx((180**2 + 180**2) ** 0.5)


def test_a_point_at_the_face_of_a_column_is_moved_to_its_middle() -> None:
    column = {
        "name": "P",
        "at": {"point": "1/A", "x": 60},
        "stock": "W10X49",
        "base": 0,
        "top": 200,
        "turn": 90,
    }
    ends: dict[str, Any] = {"from": {"point": "1/A", "x": 60, "y": 5}, "to": {"on": "G2", "at": 60}}
    table = bay(column=column, **ends)
    table["member"] = [one for one in table["member"] if one["name"] != "G1"]  # type: ignore[attr-defined]
    result = detailed(table)
    assert 'its start is 5" off the middle of P' in moved(result)[0]
    assert result.frame.lines["B1"].run == pytest.approx(180.0)
    table["member"][-1]["from"]["y"] = 6  # type: ignore[index] # W10X49 is 10 in deep
    assert '"P", 6" away' in notes(table)[0]


@pytest.mark.parametrize(("x", "bears"), [(0, True), (4, True), (6, False)])
def test_a_beam_ends_on_a_column_whose_outline_its_point_lies_in(x: float, bears: bool) -> None:
    post = {"name": "P", "at": "1/A", "stock": "W10X49", "base": 0, "under": "B"}
    ends = {"connection": "bearing"}, {"connection": "free"}
    beam = {"name": "B", "stock": "W16X26", "from": {"point": "1/A", "x": x}, "to": "2/A", "top": 144}
    table: dict[str, object] = {
        "grid": {"x": {"names": ["1", "2"], "spacing": [240]}, "y": {"names": ["A"]}},
        "column": [post],
        "member": [beam | {"start": ends[0], "end": ends[1]}],
    }
    if not bears:
        (note, *_) = notes(table)
        assert 'connection = "bearing" wants a column to end under it' in note
        assert 'the nearest is "P", 6" away' in note
        return
    result = detailed(table)
    (bearing,) = result.supports.bearings
    assert bearing.end is End.LEFT
    assert bearing.run == pytest.approx(0.0)
    assert result.frame.lines["B"].run == pytest.approx(240.0)
    assert bool(moved(result)) is bool(x)


def test_a_sloped_beam_keeps_its_slope_when_its_point_is_moved() -> None:
    table = off(3, rise="1 in 12", top="Floor")
    table["member"][1]["top"] = str(144 + 15)  # type: ignore[index] # a list
    line = detailed(table).frame.lines["B1"]
    assert line.slope == pytest.approx(1 / 12)
    assert line.start[2] == pytest.approx(144 - 3 / 12)
