from __future__ import annotations

import pytest

from assembling import detailed, overlaps, plays
from gageline.detail import Detailed
from gageline.part import Face, Join
from gageline.units import parse_length


def seated(top: str = "20'-0", **start: object) -> Detailed:
    return detailed(
        {
            "grid": {"x": {"names": ["1", "2"], "spacing": [120]}, "y": {"names": ["A"]}},
            "column": [{"name": "P", "at": "1/A", "stock": "W10X49", "base": "0", "top": top}],
            "member": [
                {
                    "name": "B", "stock": "W16X26", "from": "1/A", "to": "2/A", "top": "12'-0",
                    "start": {"connection": "seat"} | start, "end": {"connection": "free"},
                }
            ],
        }
    )  # fmt: skip


def test_the_seat_is_welded_to_the_column_and_the_clip_bolted_to_the_beam() -> None:
    result = seated()
    seat = result.member("P").assembly.fittings[1]
    clip = result.member("B").assembly.fittings[0]
    assert (seat.join, seat.part.stock.designation) == (Join.WELDED, "L6X4X3/8")
    assert (clip.join, clip.part.stock.designation) == (Join.BOLTED, "L4X4X1/4")
    assert not overlaps(result)


def test_the_beam_lies_on_the_seat() -> None:
    result = seated()
    post = result.member("P")
    stands = post.assembly.fittings[1].placement.then(post.placement)
    assert stands.origin[2] == parse_length("12'-0") - parse_length("15.7in")


def test_the_flanges_are_drilled_at_the_workable_gage() -> None:
    groups = result_groups()
    # W16X26: workable gage 3 1/2; the leg's gage 2 1/2 less the setback 1/2, the clip 1/16 off the column
    for face, x in ((Face.TOP, "2 1/16"), (Face.BOTTOM, "2")):
        (group,) = [one for one in groups if one.face is face]
        xs = {hole.x for hole in group.holes}
        ys = sorted(hole.y.inches for hole in group.holes)
        assert xs == {parse_length(x)}
        assert ys[1] - ys[0] == 3.5


def result_groups() -> tuple:  # type: ignore[type-arg] # hole groups
    return seated().member("B").assembly.main.groups


def test_a_column_too_short_for_the_clip_is_a_finding() -> None:
    assert {one.code for one in seated(top="12'-0").findings} == {"no-room-for-clip", "hung-free"}


def test_the_clip_keeps_play_at_the_column_and_counts_when_the_beam_is_put_in() -> None:
    result = seated()
    assert [off for off, _ in plays(result, "B")] == [pytest.approx(1 / 16, abs=1e-6)]
    (why,) = [one.because for one in result.reasons["B"] if one.decision.startswith("setback")]
    assert why.endswith('its top clip stays 1/16" off the face, for play')
