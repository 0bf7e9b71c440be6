from __future__ import annotations

from importlib.resources import files

import pytest
import tomlkit

from assembling import bay, detailed
from frames import bays
from gageline.detail import read_full
from gageline.job import JobProblems


def without(text: str, *columns: str) -> str:
    """A job document without some of its columns."""
    document = tomlkit.parse(text).unwrap()
    frame = document["frame"]
    frame["column"] = [one for one in frame["column"] if one["name"] not in columns]
    return tomlkit.dumps(document)


def refused(text: str) -> str:
    with pytest.raises(JobProblems) as wrong:
        read_full(text)
    return str(wrong.value)


def test_girders_hung_upon_one_another_where_a_column_was_are_named_with_their_place() -> None:
    said = refused(without(bays([240.0], [180.0], 1), "C2B"))
    assert (
        'they only carry one another: the end of "GL11B" on "EL12A" and the end of "EL12A" on "GL11B", and '
        'nothing stands under them at "2/B"; the nearest columns are "C2A" 15\'-0" away, "C1B" 20\'-0" away, '
        '"C1A" 25\'-0" away: put a column there, or let one of them run on to something that stands'
    ) in said
    assert "line " in said


def test_two_lines_that_end_together_in_line_are_told_so() -> None:
    said = refused(without(files("gageline.demo").joinpath("mezzanine-frame.toml").read_text("utf-8"), "P5"))
    for one, two, end in (("G3", "G4", "end"), ("G4", "G3", "start")):
        assert (
            f'member "{one}" → {end}: nothing supports it; "{two}" ends there too and nothing stands under '
            'the two: put a column there, or move it there, or give overhang or connection = "free"'
        ) in said


@pytest.mark.parametrize("gone", ["P1", "P2", "P3", "P4", "P5", "P6", "P7", "P8"])
def test_every_column_of_the_demo_is_missed(gone: str) -> None:
    text = without(files("gageline.demo").joinpath("mezzanine-frame.toml").read_text("utf-8"), gone)
    try:
        full = read_full(text)
    except JobProblems as wrong:
        said = str(wrong)
        assert "nothing supports it" in said or "they only carry one another" in said
    else:
        assert "hung-free" in {one.code for one in full.findings}


def test_a_ring_of_beams_is_named_whole() -> None:
    # four beams around a hole, each ending on the next, none on anything else
    ring = {"A": "B", "B": "C", "C": "D", "D": "A"}
    corners = {
        "A": ((0, 0), (100, 0)),
        "B": ((100, -30), (100, 100)),
        "C": ((130, 100), (0, 100)),
        "D": ((0, 130), (0, 0)),
    }
    assert set(ring) == set(corners)
    lines = ['[job]\nname = "x"\n[frame.grid]\nx = { names = ["1"] }\ny = { names = ["A"] }']
    for name, (one, two) in corners.items():
        places = [f'{{ point = "1/A", x = {x}, y = {y} }}' for x, y in (one, two)]
        start = 'start = { connection = "free" }' if name != "A" else ""
        lines.append(
            f'[[frame.member]]\nname = "{name}"\nstock = "W12x26"\nfrom = {places[0]}\nto = {places[1]}\n'
            f"top = 120\n{start}"
        )
    said = refused("\n".join(lines))
    assert 'they only carry one another: the start of "A" on "D"' in said
    for name in "BCD":
        assert f'the end of "{name}" on' in said
    assert "the frame has no columns" in said


def test_a_beam_with_one_support_or_none_is_a_finding() -> None:
    found = {one.subject: one for one in detailed(bay(end={"connection": "free"})).findings}
    assert set(found) == {"G1", "G2", "B1"}
    assert found["G1"].message == "nothing of the frame carries it: both of its ends are free"
    assert found["B1"].message.startswith("it rests on one support only, and no connection")
    assert {one.code for one in detailed(bay()).findings} == {"hung-free"}


def test_a_frame_of_levels_alone_is_a_finding() -> None:
    (found,) = detailed({"level": [{"name": "Floor", "elevation": 0}]}).findings
    assert found.message == "it has no columns and no members: there is nothing to detail"


def test_a_beam_that_goes_on_over_two_columns_is_held() -> None:
    post = {"stock": "W10X49", "base": 0, "under": "B"}
    over = {"overhang": 24}
    table: dict[str, object] = {
        "grid": {"x": {"names": ["1", "2", "3", "4"], "spacing": [60, 120, 60]}, "y": {"names": ["A"]}},
        "column": [post | {"name": f"P{n}", "at": f"{n}/A"} for n in (2, 3)],
        "member": [
            {
                "name": "B",
                "stock": "W16X26",
                "from": "1/A",
                "to": "4/A",
                "top": 144,
                "start": over,
                "end": over,
            }
        ],
    }
    assert not detailed(table).findings
