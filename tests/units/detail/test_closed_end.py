from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from assembling import bay, detailed, overlaps, worst_mate
from gageline.detail import Detailed, detail_frame
from gageline.job import FrameEntry, default_practice
from gageline.part import Assembly, Fitting, FittingKind, Join
from gageline.steel import HoleKind
from gageline.units import System, parse_length

HOLLOW: dict[str, Any] = {"beam": "HSS8X4X1/4", "girder": "HSS16X8X3/8"}


def beam(result: Detailed) -> Assembly:
    return result.member("B1").assembly


def one(piece: Assembly, name: str) -> Fitting:
    (found,) = [fitting for fitting in piece.fittings if fitting.name == name]
    return found


def test_each_end_gets_a_cap_and_then_its_tongue_and_no_hole_in_the_beam() -> None:
    piece = beam(detailed(bay(**HOLLOW)))
    assert [(fit.name, fit.kind, fit.join) for fit in piece.fittings] == [
        ("left end cap", FittingKind.END_CAP, Join.WELDED),
        ("left tongue", FittingKind.TONGUE, Join.WELDED),
        ("right end cap", FittingKind.END_CAP, Join.WELDED),
        ("right tongue", FittingKind.TONGUE, Join.WELDED),
    ]
    assert not piece.main.groups
    assert not piece.main.copes
    assert piece.main.left.square


def test_the_tongue_has_its_holes_and_the_cap_closes_the_end() -> None:
    piece = beam(detailed(bay(**HOLLOW)))
    cap, tongue = one(piece, "left end cap"), one(piece, "left tongue")
    assert (cap.part.stock.designation, cap.part.length) == ("PL3/8X4-3/4", parse_length("8"))
    assert (tongue.part.stock.designation, tongue.part.length) == ("PL3/8X4-3/8", parse_length("5-1/2"))
    (group,) = tongue.part.groups
    assert [(hole.x.inches, hole.y.inches) for hole in group.holes] == [(1.25, 1.875), (4.25, 1.875)]
    assert (group.bolt, group.holes[0].width) == ("3/4", parse_length("13/16"))


def test_equal_caps_and_tongues_share_their_marks() -> None:
    (piece,) = [piece for piece in detailed(bay(**HOLLOW)).assemblies if piece.mark == "B1"]
    marks = [fit.part.mark for fit in piece.fittings]
    assert marks[:2] == marks[2:]
    assert [mark[0] for mark in marks] == ["k", "t", "k", "t"]


def test_the_welds_of_cap_and_tongue() -> None:
    welds = beam(detailed(bay(**HOLLOW))).welds[:2]
    assert [(w.fitting, w.size, w.runs, w.where, w.both_sides) for w in welds] == [
        ("left end cap", parse_length("1/4"), 2, "outside of both walls", False),
        ("left tongue", parse_length("1/4"), 2, "both sides of the tongue, to the end cap", True),
    ]
    # 8 high less two corners of 1 1/2 (design) walls, 2 x 0.466; as long as the tongue
    assert [w.length.inches for w in welds] == [pytest.approx(8 - 2 * 0.466, abs=1e-3), 5.5]


@pytest.mark.parametrize(("to", "angle"), [("120 in", 90), ("150 in", 0)])
def test_slots_of_the_practice_lie_across_the_reaction(to: str, angle: int) -> None:
    """The length of a tongue lies plumb where the end is square, and level where it is askew."""
    entry = FrameEntry.model_validate(
        bay(**HOLLOW, to={"on": "G2", "at": to}), context={"system": System.FT_IN}
    )
    slotted = replace(default_practice(System.FT_IN), hole=HoleKind.SSL)
    result, notes = detail_frame(entry, slotted, System.FT_IN)
    assert not notes
    holes = one(beam(result), "left tongue").part.groups[0].holes
    assert [(hole.width, hole.length, hole.angle) for hole in holes] == [
        (parse_length("13/16"), parse_length("1"), Fraction(angle))  # AISC 360-22 Table J3.3
    ] * 2


@pytest.mark.parametrize(("rise", "drop"), [(2, "0"), (6, "3")])
def test_on_a_slope_cap_and_tongue_stay_plumb(rise: int, drop: str) -> None:
    table = bay(**HOLLOW, rise=f"{rise} in 12", drop=drop)
    table["member"][1]["top"] = str(144 + 15 * rise)  # type: ignore[index] # a list
    result = detailed(table)
    placed = result.member("B1")
    for end in ("left", "right"):
        for name in ("end cap", "tongue"):
            stands = one(placed.assembly, f"{end} {name}").placement.then(placed.placement)
            assert stands.ex == pytest.approx((0.0, 0.0, -1.0))
    cap = one(placed.assembly, "left end cap")
    plumb = 8 * math.hypot(1, rise / 12)
    assert plumb - 1 / 8 < cap.part.length.inches <= plumb
    assert not overlaps(result)
    assert worst_mate(result, "B1") < 4 / 162560


def test_in_millimetres_too() -> None:
    result = detailed(bay(**HOLLOW), System.MM)
    cap, tongue = one(beam(result), "left end cap"), one(beam(result), "left tongue")
    assert (cap.part.stock.designation, tongue.part.stock.designation) == ("PL 10x120", "PL 10x115")
    assert worst_mate(result, "B1") < 1e-6


@pytest.mark.parametrize(("finish", "count"), [("hot-dip galvanized", 1), ("paint", 0), (None, 0)])
def test_closed_steel_that_goes_into_the_bath_is_warned_of(finish: str | None, count: int) -> None:
    keys = HOLLOW | ({"finish": finish} if finish else {})
    found = [one for one in detailed(bay(**keys)).findings if one.code == "closed-and-galvanized"]
    assert len(found) == count
    for one in found:
        assert one.text() == (
            "warning: B1: its hollow section is closed by an end cap and is to be galvanized: steam or acid "
            "shut in it bursts it in the bath, and can kill; no holes to vent and drain it are detailed: "
            "agree on vent and drain holes with the galvanizer and enter them, or paint it"
        )
