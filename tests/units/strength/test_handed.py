"""Loads handed down a small frame: B1 on two girders, the girders on four columns."""

from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from frames import bays
from gageline.detail import read_full
from gageline.part import End
from gageline.strength import Case, Handed, Method, hand_down
from gageline.units import System

LOADS = [{"case": "dead", "uniform": "1 kip/ft"}, {"case": "live", "point": "12 kip", "at": "5'-0"}]


def column(name: str, at: str) -> dict[str, Any]:
    return {"name": name, "at": at, "stock": "W10X49", "base": "0", "top": "Floor"}


def framed(**beam: Any) -> dict[str, Any]:
    frame: dict[str, Any] = bay(**beam)
    frame["column"] = [column("P1", "1/A"), column("P2", "2/A"), column("P3", "1/B"), column("P4", "2/B")]
    for girder in frame["member"][:2]:
        girder.pop("ends")
    return frame


def handed(frame: dict[str, Any], system: System = System.FT_IN) -> Handed:
    return hand_down(detailed(frame, system), system)


def test_a_beam_on_two_girders_by_kind_of_load() -> None:
    """15 ft at 1 kip/ft: 7.5 at each end; 12 kips 5 ft from the start: 8 and 4."""
    found = handed(framed(loads=LOADS))
    left, right = found.at("B1", End.LEFT), found.at("B1", End.RIGHT)
    assert left == pytest.approx({Case.DEAD: 7.5, Case.LIVE: 8.0})
    assert right == pytest.approx({Case.DEAD: 7.5, Case.LIVE: 4.0})


def test_girders_hand_on_what_stands_on_them() -> None:
    """B1 stands in the middle of both girders: half of its ends on each column."""
    found = handed(framed(loads=LOADS))
    for name, live in (("P1", 4.0), ("P2", 4.0), ("P3", 2.0), ("P4", 2.0)):
        ((_, amounts),) = found.by_support()[name]
        assert amounts == pytest.approx({Case.DEAD: 3.75, Case.LIVE: live})
    assert [load.start for load in found.loads["G1"]] == [120.0, 120.0]


def test_a_given_reaction_goes_before_the_loads_and_is_handed_on() -> None:
    found = handed(framed(loads=LOADS, start={"reaction": 30}))
    assert found.at("B1", End.LEFT) == {Case.GIVEN: 30.0}
    assert found.at("B1", End.RIGHT) == pytest.approx({Case.DEAD: 7.5, Case.LIVE: 4.0})
    assert found.at("G1", End.LEFT) == pytest.approx({Case.GIVEN: 15.0})


def test_a_given_reaction_of_a_metric_frame_is_in_kilonewtons() -> None:
    frame = framed(beam="IPE 300", girder="IPE 400", start={"reaction": 100})
    frame["grid"] = {
        "x": {"names": ["1", "2"], "spacing": [6000]}, "y": {"names": ["A", "B"], "spacing": [5000]}
    }  # fmt: skip
    frame["level"] = [{"name": "Floor", "elevation": 4000}]
    frame["member"][2] |= {"from": {"on": "G1", "at": 3000}, "to": {"on": "G2", "at": 3000}}
    for one in frame["column"]:
        one["stock"] = "HEB 200"
    found = handed(frame, System.MM)
    assert found.at("B1", End.LEFT) == pytest.approx({Case.GIVEN: 100 / 4.4482216})


def test_what_is_not_known_is_not_handed_on() -> None:
    found = handed(framed())
    assert found.at("G1", End.LEFT) is None
    assert found.why == {
        "B1": "it has no loads",
        "G1": "B1 stands on it, whose reaction is not known",
        "G2": "B1 stands on it, whose reaction is not known",
    }
    assert found.by_support()["P1"] == [("G1", None)]


def test_an_overhang_lifts_the_far_end() -> None:
    """G1 bears on P1 and, at 180 in, on P2; B1 at 210 in lifts P1 by 30/180 of what it hands."""
    frame = framed(loads=LOADS, to={"on": "G2", "at": 210}, **{"from": {"on": "G1", "at": 210}})
    under = {"stock": "W10X49", "base": "0", "under": "G1"}
    frame["column"][0] = {"name": "P1", "at": "1/A", **under}
    frame["column"][1] = {"name": "P2", "at": {"point": "1/A", "x": 180}, **under}
    frame["member"][0] |= {"start": {"connection": "bearing"}, "end": {"connection": "free"}}
    found = handed(frame)
    beam = found.at("B1", End.LEFT)
    assert beam is not None
    ((_, first),), ((_, second),) = (found.by_support()[name] for name in ("P1", "P2"))
    assert first is not None
    assert second is not None
    for case, amount in beam.items():
        assert second[case] == pytest.approx(amount * 210 / 180)
        assert first[case] == pytest.approx(-amount * 30 / 180)


def test_three_supports_are_not_worked_out() -> None:
    frame = framed(loads=LOADS)
    frame["column"].append(
        {"name": "P5", "at": {"point": "1/A", "x": 60}, "stock": "W10X49", "base": "0", "under": "G1"}
    )
    found = handed(frame)
    assert found.why["G1"] == "it rests on 3 supports: only beams on two are worked out"


def test_everything_that_is_put_on_a_frame_comes_down_its_columns() -> None:
    """Two floors of two bays with infill beams, each beam with a strip of 5 ft: statics."""
    text = bays([240, 300], [240], 2, levels=2)
    beam = '[[frame.member]]\ntributary = "60 in"\n'
    level = (
        '[[frame.level]]\nloads = [{ case = "dead", area = "60 psf" }, { case = "live", area = "125 psf" }]\n'
    )
    text = text.replace("[[frame.member]]\n", beam).replace("[[frame.level]]\n", level)
    full = read_full(text)
    assert full.detailed is not None
    found = hand_down(full.detailed, System.FT_IN)
    feet = sum(line.run for line in full.detailed.frame.beams) / 12
    columns = [line.name for line in full.detailed.frame.columns]
    for case, psf in ((Case.DEAD, 60), (Case.LIVE, 125)):
        down = sum(
            (amounts or {}).get(case, 0.0) for name in columns for _, amounts in found.by_support()[name]
        )
        assert down == pytest.approx(feet * 5 * psf / 1000, rel=1e-9)


def test_a_given_reaction_below_the_loads_is_told() -> None:
    """1.2 7.5 + 1.6 8.0 = 21.8 kips at the start, 15.4 at the end; 20 and 16 are given."""
    frame = framed(loads=LOADS, start={"reaction": 20}, end={"reaction": 16})
    (below,) = handed(frame).below_loads(Method.LRFD)
    assert (below.name, below.given, below.load) == ("B1 left", 20.0, "1.2D + 1.6L + 0.5Lr")
    assert below.asked == pytest.approx(21.8)


@pytest.mark.parametrize(("system", "given"), [(System.FT_IN, 40.0), (System.MM, 40 / 4.4482216152605)])
def test_a_reaction_given_on_top_of_a_column_is_handed_to_it(system: System, given: float) -> None:
    posts = [
        {"name": f"P{n}", "at": f"{n}/A", "stock": "HSS6X6X3/8", "base": "0 in", "under": "G"} for n in (1, 2)
    ]
    ends = {"reaction": 40, "connection": "bearing"}
    girder = {"name": "G", "stock": "W18X50", "from": "1/A", "to": "2/A", "top": "120 in", "ends": ends}
    grid = {"x": {"names": ["1", "2"], "spacing": ["192 in"]}, "y": {"names": ["A"]}}
    found = handed({"grid": grid, "column": posts, "member": [girder]}, system)
    assert found.at("G", End.LEFT) == pytest.approx({Case.GIVEN: given})
    ((name, amounts),) = found.by_support()["P2"]
    assert (name, amounts) == ("G", found.at("G", End.RIGHT))
