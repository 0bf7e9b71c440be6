from __future__ import annotations

from dataclasses import replace

import pytest

from assembling import bay, detailed
from gageline.detail import Detailed, detail_frame
from gageline.detail.openings import crossed
from gageline.detail.shop import Shop
from gageline.job import FrameEntry, default_practice
from gageline.job.frame_practice import FramePracticeEntry, frame_practice
from gageline.units import System

SHOP = Shop(default_practice(System.FT_IN), frame_practice(FramePracticeEntry(), System.FT_IN), System.FT_IN)


def with_opening(*corners: object, level: str = "Floor") -> dict[str, object]:
    return bay() | {"opening": [{"name": "Stair", "level": level, "corners": list(corners)}]}


def crossings(result: Detailed) -> list[str]:
    return [one.text() for one in result.findings if one.code == "crosses-opening"]


def test_two_corners_make_a_rectangle() -> None:
    place = {"point": "1/A", "x": 130, "y": 30}
    (one,) = detailed(with_opening(place, {"point": "1/A", "x": 200, "y": 150})).frame.openings
    assert (one.name, one.elevation) == ("Stair", 144)
    assert one.corners == ((130, 30, 144), (200, 30, 144), (200, 150, 144), (130, 150, 144))


def test_more_corners_are_taken_one_after_the_other() -> None:
    corners = ({"on": "B1", "at": 20}, {"on": "B1", "at": 100}, {"point": "2/A", "x": -40, "y": 60})
    result = detailed(with_opening(*corners))
    assert result.frame.openings[0].corners == ((120, 20, 144), (120, 100, 144), (200, 60, 144))
    assert not crossings(result)  # B1 runs along its edge


def test_a_beam_through_an_opening_is_a_finding() -> None:
    one = {"point": "1/A", "x": 60, "y": 30}
    two = {"point": "1/A", "x": 200, "y": 150}
    (found,) = crossings(detailed(with_opening(one, two)))
    assert "runs through opening Stair over 9'-10\"" in found  # 120 less an inch at each edge
    assert not crossings(detailed(with_opening(one, two, level="20'-0")))


@pytest.mark.parametrize(("run", "said"), [(100, 0), (25, 1)])
def test_a_stringer_that_climbs_through_its_opening_is_none(run: float, said: int) -> None:
    """B1 falls by 6 in 12; one that leaves the opening within 30 in of the floor still runs through it."""
    document = with_opening({"point": "1/A", "x": 60, "y": 30}, {"point": "1/A", "x": 200, "y": 30 + run})
    frame = detailed(document).frame
    line = next(one for one in frame.beams if one.name == "B1")
    (x1, y1, z1), (x2, y2, _) = line.start, line.finish
    falls = replace(line, start=(x1, y1, z1), finish=(x2, y2, z1 - (y2 - y1) / 2))
    sloped = replace(frame, lines={**frame.lines, "B1": falls})
    found = [one for one in crossed(sloped, SHOP) if one.subject == "B1"]
    assert len(found) == said


@pytest.mark.parametrize(
    ("corners", "message"),
    [
        ((("1/A"), ("2/A")), "its corners do not go around an area"),
        (
            (
                "1/A",
                {"point": "1/A", "x": 60, "y": 60},
                {"point": "1/A", "x": 60},
                {"point": "1/A", "y": 60},
            ),
            "its corners do not go around an area",
        ),
        (("1/A", "4/Q"), '"4/Q" is no point and no crossing of the grid'),
        (("1/A", {"on": "B9", "at": 4}), '"B9" names no member or column of the frame'),
    ],
)
def test_openings_that_cannot_be(corners: tuple[object, ...], message: str) -> None:
    entry = FrameEntry.model_validate(with_opening(*corners), context={"system": System.FT_IN})
    _, notes = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)
    assert [path for path, _ in notes] == [("frame", "opening", 0)]
    assert message in notes[0][1]
