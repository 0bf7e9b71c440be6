from __future__ import annotations

from typing import Any

from assembling import bay, detailed
from gageline.detail import Detailed


def said(result: Detailed) -> list[str]:
    return [one.text() for one in result.findings if one.code == "in-the-way"]


def with_member(**member: Any) -> Detailed:
    frame = bay()
    free = {"connection": "free"}
    frame["member"] = [
        *frame["member"],
        {"name": "B2", "stock": "W12X26", "top": "Floor", "ends": free} | member,
    ]  # type: ignore[misc] # a list of tables
    return detailed(frame)


def test_a_frame_with_room_has_nothing_in_the_way() -> None:
    assert not said(detailed(bay()))
    apart = {"from": {"on": "G1", "at": 60}, "to": {"on": "G2", "at": 60}, "ends": {}}
    assert not said(with_member(**apart))


def test_beams_that_cross_without_meeting() -> None:
    crossing = {"from": {"point": "1/A", "x": 60, "y": 90}, "to": {"point": "1/A", "x": 200, "y": 90}}
    (found,) = said(with_member(**crossing))
    assert "B1 and B2 would stand in one place" in found
    assert "set them apart, turn or cope one" in found
    assert not said(with_member(**crossing | {"top": "10'-0"}))


def test_beams_too_near_each_other_on_one_girder() -> None:
    beside = {"from": {"on": "G1", "at": 126}, "to": {"on": "G2", "at": 126}, "ends": {}}
    (found,) = said(with_member(**beside))
    # W18X50 is 7.50 wide and W12X26 6.49: 6 in apart their flanges overlap, and so do the angles
    assert "B1 and B2 would stand in one place, and " in found
    assert "more of the two" in found


def test_angles_over_a_column_run_into_its_stiffeners() -> None:
    post = {"name": "P", "at": {"point": "1/A", "x": 120}, "stock": "HSS8X8X3/8", "base": "0", "under": "G1"}
    angles = detailed(bay(column=post, ends={"connection": "double angles"}))
    (found,) = said(angles)
    # the angles reach 4 in past the web, the walls of the post are 7.65 apart; so is its flange, 7.50 wide
    assert found.startswith("error: G1: G1 far stiffener, ")
    assert "would stand in one place, and 3 more of the two: use an extended plate" in found
    assert not said(detailed(bay(column=post)))  # by rule the end gets an extended plate there


def test_a_beam_in_the_plates_of_a_splice() -> None:
    column = {"name": "P", "at": {"point": "1/A", "x": 20, "y": 60}, "stock": "W10X49", "base": "0"}
    spliced = column | {"top": "20'-0", "splices": [{"at": "Floor", "above": 0}]}
    beam = {"from": spliced["at"], "to": {"point": "1/A", "x": 100, "y": 60}, "start": {}}
    frame = bay(column=spliced)
    frame["member"] = [
        *frame["member"],
        {"name": "B2", "stock": "W12X26", "top": "Floor", "end": {"connection": "free"}} | beam,
    ]  # type: ignore[misc] # a list of tables
    found = said(detailed(frame))
    assert found
    assert all("splice plate" in one for one in found)
