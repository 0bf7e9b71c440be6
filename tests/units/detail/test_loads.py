from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from gageline.detail import Detailed, detail_frame
from gageline.job import FrameEntry, default_practice
from gageline.units import System

FLOOR = [{"case": "dead", "area": "60 psf"}, {"case": "live", "area": "100 psf"}]


def loaded(levels: list[dict[str, object]], **member: Any) -> tuple[Detailed, list[str]]:
    entry = FrameEntry.model_validate(bay(**member) | {"level": levels}, context={"system": System.FT_IN})
    result, notes = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)
    return result, [message for _, message in notes]


def floor(*loads: dict[str, str]) -> list[dict[str, object]]:
    return [{"name": "Floor", "elevation": 144, "loads": list(loads)}]


def loads_of(result: Detailed, name: str) -> list[tuple[object, ...]]:
    (one,) = [one for one in result.loads if one.member == name]
    return [
        (
            load.case,
            load.uniform.kips_per_inch * 12 if load.uniform else None,
            load.point.kips if load.point else None,
        )
        for load in one.loads
    ]


def test_a_tributary_width_makes_line_loads_of_the_level() -> None:
    result, _ = loaded(floor(*FLOOR), tributary="7'-6")
    # 60 psf and 100 psf over 7.5 ft
    assert loads_of(result, "B1") == [
        ("dead", pytest.approx(0.45), None),
        ("live", pytest.approx(0.75), None),
    ]
    assert loads_of(result, "G1") == []


def test_a_dropped_beam_carries_the_level_of_what_it_lies_below() -> None:
    result, _ = loaded(floor(*FLOOR), top=None, below="G1", drop="2", tributary="10'-0")
    assert loads_of(result, "B1")[0][1] == pytest.approx(0.6)


def test_loads_of_its_own_stand_behind_those_of_the_area() -> None:
    own = [{"case": "roof", "point": "5 kip", "at": 90}]
    result, _ = loaded(floor(FLOOR[0]), tributary="4'-0", loads=own, span={"live": 360})
    assert loads_of(result, "B1") == [("dead", pytest.approx(0.24), None), ("roof", None, 5.0)]
    assert [one.span.live for one in result.loads if one.member == "B1"] == [360]


def test_a_level_whose_loads_nobody_carries_is_a_finding() -> None:
    result, _ = loaded(floor(*FLOOR))
    (found,) = [one for one in result.findings if one.code == "area-load-not-carried"]
    assert found.subject == "Floor"
    assert "give tributary to the beams that carry the floor" in found.remedy
    assert not [
        one for one in loaded(floor(*FLOOR), tributary="4")[0].findings if one.code == "area-load-not-carried"
    ]


@pytest.mark.parametrize(
    ("load", "message"),
    [
        ({"point": "5 kip"}, "a point load has no place: give at, from where the member starts"),
        ({"point": "5 kip", "uniform": "1 klf", "at": 9}, "a load is either uniform or point"),
        ({"case": "live"}, "a load is either uniform or point"),
        (
            {"point": "5 kip", "at": 181},
            "its load is 15'-1\" along, the member is 15'-0\" between its work points",
        ),
        ({"uniform": "1 klf", "start": 90, "end": 60}, "its load ends 5'-0\" along, where it has not begun"),
        ({"uniform": "1 klf", "end": 200}, "its load is 16'-8\" along"),
    ],
)
def test_loads_that_cannot_be(load: dict[str, object], message: str) -> None:
    _, notes = loaded(floor(), loads=[load])
    assert len(notes) == 1
    assert message in notes[0]


def test_a_frame_without_loads_has_none() -> None:
    assert all(not one.loads for one in detailed(bay()).loads)


@pytest.mark.parametrize("top", ["12'-0", "144", 144])
def test_an_elevation_that_is_a_levels_counts_as_that_level(top: object) -> None:
    result, notes = loaded(floor(*FLOOR), top=top, tributary="7'-6")
    assert notes == []
    assert [one[1] for one in loads_of(result, "B1")] == [pytest.approx(0.45), pytest.approx(0.75)]
    assert not [one for one in result.findings if one.code == "area-load-not-carried"]


def test_a_beam_below_one_whose_top_is_an_elevation_carries_its_level() -> None:
    frame = bay(top=None, below="G1", drop="2", tributary="10'-0") | {"level": floor(*FLOOR)}
    members: Any = frame["member"]
    frame["member"] = [one | {"top": 144} if one["name"] != "B1" else one for one in members]
    entry = FrameEntry.model_validate(frame, context={"system": System.FT_IN})
    result, notes = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)
    assert notes == []
    assert loads_of(result, "B1")[0][1] == pytest.approx(0.6)


ROOF = {"name": "Roof", "elevation": 144, "loads": FLOOR}


@pytest.mark.parametrize(
    ("levels", "top", "why", "names"),
    [
        (floor(*FLOOR), "11'-10", "its top is at no level's elevation", '"Floor"'),
        ([*floor(*FLOOR), ROOF], "12'-0", "levels Floor and Roof both lie at its top", '"Floor", "Roof"'),
    ],
)
def test_a_tributary_width_of_no_level_is_an_error_at_the_member(
    levels: list[dict[str, object]], top: str, why: str, names: str
) -> None:
    _, notes = loaded(levels, top=top, tributary="4'-0")
    (note,) = notes
    assert note == (
        f"it carries the area loads of its level, and {why}: give top as a level's name ({names}) and drop, "
        "or leave tributary out"
    )


def test_a_tributary_width_without_any_level_is_an_error_at_the_member() -> None:
    girder = {"name": "G1", "stock": "W21X62", "from": "1/A", "to": "2/A", "top": 144, "tributary": 48}
    grid = bay()["grid"]
    free = {"ends": {"connection": "free"}}
    entry = FrameEntry.model_validate(
        {"grid": grid, "member": [girder | free]}, context={"system": System.FT_IN}
    )
    (note,) = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)[1]
    assert note[0] == ("frame", "member", 0, "tributary")
    assert note[1].endswith("at no level's elevation: add the level with its loads and give top by its name")
