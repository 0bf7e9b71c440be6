from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import detail_frame
from gageline.errors import ValueProblem
from gageline.job import FrameEntry, default_practice
from gageline.part import Severity, check_assembly
from gageline.units import System


def test_every_piece_passes_the_rules_of_the_trade() -> None:
    for piece in detailed(bay()).assemblies:
        assert not [one for one in check_assembly(piece) if one.severity is Severity.ERROR]


def test_every_fitting_has_a_mark_and_equal_ones_have_one() -> None:
    marks = [fit.part.mark for piece in detailed(bay()).assemblies for fit in piece.fittings]
    assert len(set(marks)) <= 2
    assert all(mark[0] == "a" for mark in marks)
    assert len(marks) == 4


def test_each_piece_says_why_it_is_as_it_is() -> None:
    result = detailed(bay())
    words = " ".join(reason.text() for reason in result.reasons["B1"])
    for word in ("cut 14'-10", "girder web of G1", "double angles", "setback", "cope", "rows", "field bolts"):
        assert word in words


def test_progress_is_told_of_every_beam() -> None:
    told: list[tuple[int, int]] = []
    entry = FrameEntry.model_validate(bay(), context={"system": System.FT_IN})
    detail_frame(entry, default_practice(System.FT_IN), System.FT_IN, progress=lambda *at: told.append(at))
    assert told == [(1, 3), (2, 3), (3, 3)]


def test_a_member_by_its_name() -> None:
    result = detailed(bay())
    assert result.member("B1").member == "B1"
    with pytest.raises(ValueProblem, match='there is no member "B9" in the frame'):
        result.member("B9")


def test_a_wrong_angle_is_noted_at_its_end() -> None:
    entry = FrameEntry.model_validate(bay(start={"angle": "W8x31"}), context={"system": System.FT_IN})
    _, notes = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)
    assert notes == [
        (("frame", "member", 2, "start"), "angle W8X31 is no angle: give one like L4x3-1/2x5/16")
    ]


def test_setbacks_that_leave_nothing_of_a_beam() -> None:
    entry = FrameEntry.model_validate(
        bay() | {"practice": {"setback": "8'-0"}}, context={"system": System.FT_IN}
    )
    _, notes = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)
    ((path, message),) = notes
    assert path == ("frame", "member", 2)
    assert message.startswith("nothing is left of it: it is 15'-0\" between work points")


def test_what_a_plate_cannot_be_is_said_at_its_member() -> None:
    entry = FrameEntry.model_validate(
        bay(ends={"connection": "end plate", "thickness": "10"}), context={"system": System.FT_IN}
    )
    _, notes = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)
    assert notes == [
        (
            ("frame", "member", 2),
            "plate thickness 10 is more than the width 8: write the thickness first, then the width",
        )
    ]
