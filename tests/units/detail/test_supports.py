from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed, overlaps
from gageline.detail import FaceKind, detail_frame, read_full
from gageline.job import FrameEntry, default_practice
from gageline.part import End, Face
from gageline.units import System


def notes(table: dict[str, object]) -> list[str]:
    entry = FrameEntry.model_validate(table, context={"system": System.FT_IN})
    return [message for _, message in detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)[1]]


def test_the_support_of_each_end_is_found() -> None:
    result = detailed(bay())
    start, end = (result.joints["B1", side].site for side in End)
    assert (start.support.name, start.kind, start.face) == ("G1", FaceKind.GIRDER_WEB, Face.FAR)
    assert (end.support.name, end.face) == ("G2", Face.NEAR)


@pytest.mark.parametrize(("turn", "kind"), [(0, FaceKind.COLUMN_WEB), (90, FaceKind.COLUMN_FLANGE)])
def test_a_column_is_met_on_its_flange_or_its_web(turn: int, kind: FaceKind) -> None:
    column = {
        "name": "P",
        "at": {"point": "1/A", "x": 60},
        "stock": "W10X49",
        "base": "0",
        "top": "Floor",
        "turn": turn,
    }
    ends: dict[str, Any] = {"from": {"point": "1/A", "x": 60}, "to": {"on": "G2", "at": 60}}
    table = bay(column=column, **ends)
    table["member"] = [m for m in table["member"] if m["name"] != "G1"]  # type: ignore[attr-defined] # a list
    site = detailed(table).joints["B1", End.LEFT].site
    assert (site.support.name, site.kind) == ("P", kind)


def test_an_end_that_reaches_nothing_names_what_is_near() -> None:
    ends: dict[str, Any] = {"from": {"on": "G1", "at": 120}, "to": {"between": ("1/A", "1/B"), "at": 100}}
    (found,) = notes(bay(**ends))
    assert 'the nearest are "G2", 6\'-8" away; "G1"' in found


def test_a_beam_over_its_girder_says_how_they_miss_each_other() -> None:
    found = notes(bay(drop="-2'-0"))
    # W18X50 from 12'-6 to 14'-0 and W21X62 from 10'-3 to 12'-0
    assert len(found) == 2
    assert found[0] == (
        'nothing supports it; "G1" is there, but this end is from 12\'-6" to 14\'-0" in height and that from '
        '10\'-3" to 12\'-0": change one of them, or move it there, or give overhang or connection = "free"'
    )


def test_a_beam_that_runs_along_its_girder_is_told_so() -> None:
    along: dict[str, Any] = {"from": {"on": "G1", "at": 40}, "to": {"point": "1/A", "x": 200, "y": 30}}
    (found, _) = notes(bay(**along))
    assert '"G1" is there, but the two meet at less than 15 degrees' in found


def test_two_members_in_one_place() -> None:
    table = bay()
    twin = table["member"][2] | {"name": "B2"}  # type: ignore[index] # a list
    table["member"] = [*table["member"], twin]  # type: ignore[misc] # a list
    assert notes(table) == ['"B2" and "B1" stand in one place: move one or take it out']


def test_a_frame_that_is_wrong_says_where() -> None:
    text = """
[job]
name = "x"
[[frame.level]]
name = "Floor"
elevation = 0
[[frame.point]]
name = "a"
at = "b"
[[frame.member]]
name = "B1"
stock = "W8x18"
from = "a"
to = "c"
top = "Floor"
"""
    with pytest.raises(Exception, match=r'line 10: frame → member "B1": "b" is no point'):
        read_full(text)


def test_a_deep_beam_over_a_post_frames_into_the_girder_on_it() -> None:
    # W18X35, 17.7 deep, hangs 3 in past the underside of C15X33.9: the post has 3 in beside it, the girder 14
    post = {"name": "P", "at": {"point": "1/A", "x": 120}, "stock": "HSS6X6X3/8", "base": "0", "under": "G1"}
    result = detailed(bay(beam="W18X35", girder="C15X33.9", drop="1/2", column=post))
    assert result.joints["B1", End.LEFT].site.support.name == "G1"
    assert not overlaps(result)


def over_posts(at: str, to: str) -> dict[str, object]:
    """A girder that lies on two posts and goes on past both, a beam on it, and another girder beside."""
    bears = {"connection": "bearing"}
    hung = {"start": bears | {"overhang": "36 in"}, "end": bears | {"overhang": "60 in"}}
    posts = [
        {"name": f"P{n}", "at": f"{n}/A", "stock": "HSS6X6X3/8", "base": 0, "under": "G1"} for n in (1, 2)
    ]
    places: dict[str, Any] = {"from": {"on": "G1", "at": at}, "to": {"point": "1/B", "x": to}}
    table = bay(**places)
    first, second, beam = table["member"]  # type: ignore[misc] # a list of three
    first = {key: value for key, value in first.items() if key != "ends"} | hung  # type: ignore[has-type]
    long = {"from": {"point": "1/B", "x": "-100 in"}, "to": {"point": "2/B", "x": "100 in"}}
    return table | {"column": posts, "member": [first, second | long, beam]}  # type: ignore[has-type]


@pytest.mark.parametrize("at", ["-30 in", "290 in"])
def test_a_beam_stands_on_what_goes_on_past_a_post(at: str) -> None:
    result = detailed(over_posts(at, at))
    site = result.joints["B1", End.LEFT].site
    assert site.support.name == "G1"
    assert site.station == pytest.approx(float(at.removesuffix(" in")))
    assert not overlaps(result)


def test_nothing_stands_past_the_end_of_what_goes_on() -> None:
    assert any("is not on" in one for one in notes(over_posts("-37.5 in", "-37 in")))


@pytest.mark.parametrize("to", ["0", "40 in"])
def test_a_beam_beside_the_stiffeners_over_a_post_stays_outside_them_askew_or_not(to: str) -> None:
    result = detailed(over_posts("0", to))
    assert result.joints["B1", End.LEFT].kind == "extended plate"
    assert not [one for one in result.findings if one.code == "in-the-way"]
    assert not overlaps(result)


def test_an_overhang_may_go_through_a_column_but_not_through_what_ends_at_it() -> None:
    """B1 hangs over past its start: at G1 that is no column, at a post it is."""
    assert detailed(bay(start={"overhang": 24})).supports.through == ()
    post = {"name": "P", "at": {"point": "1/A", "x": 120}, "stock": "W8X31", "base": 0, "top": "Floor"}
    (site,) = detailed(bay(column=post, start={"overhang": 24})).supports.through
    assert (site.member.name, site.support.name, site.word) == ("B1", "P", "start")
