from __future__ import annotations

from typing import Any

import pytest

from gageline.job import (
    FrameEndEntry,
    FrameEntry,
    JobProblems,
    MemberEntry,
    PlaceEntry,
    read_document,
    read_job,
    write_document,
)
from gageline.units import System, parse_length

HEAD = '[job]\nname = "x"\n'
MEMBER = '[[frame.member]]\nname = "B1"\nstock = "W16x26"\nfrom = "1/A"\nto = "2/A"\ntop = "Floor"\n'


def member(**keys: Any) -> MemberEntry:
    table = {"name": "B1", "stock": "W16x26", "from": "1/A", "to": "2/A", "top": "Floor"} | keys
    return MemberEntry.model_validate(table, context={"system": System.FT_IN})


def test_a_bare_text_is_a_point_or_crossing() -> None:
    assert member().from_ == PlaceEntry(point="1/A")


def test_an_elevation_may_be_a_number() -> None:
    assert member(top=144).top == "144"


def test_an_end_says_first_and_both_ends_say_the_rest() -> None:
    one = member(ends={"connection": "single plate", "rows": 3}, start={"rows": 4})
    assert (one.joint("start").connection, one.joint("start").rows) == ("single plate", 4)
    assert one.joint("end").rows == 3


def test_a_frame_makes_a_job_without_pieces_as_drawn() -> None:
    job = read_job(HEAD + MEMBER)
    assert not job.assemblies
    assert job.frame is not None
    assert job.frame.members[0].name == "B1"


def test_a_job_with_neither_is_refused() -> None:
    with pytest.raises(JobProblems, match=r"piece: is missing: write a \[\[piece\]\] table for each"):
        read_job(HEAD)


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        (
            'top = "Floor"',
            "drops = 2",
            'frame → member "B1" → drops: there is no such key: did you mean "drop"?',
        ),
        ('"W16x26"', '"W16x27"', 'frame → member "B1" → stock: section "W16x27" is not in the tables'),
        ('top = "Floor"', "top = true", "is neither a level's name nor an elevation"),
        ('top = "Floor"', 'start = { connection = "glue" }', 'start → connection: "glue" is not one of'),
    ],
)
def test_what_is_wrong_is_said_with_its_place(old: str, new: str, message: str) -> None:
    with pytest.raises(JobProblems) as refused:
        read_job(HEAD + MEMBER.replace(old, new))
    assert message in str(refused.value)


def test_a_frame_is_written_back_as_it_was_read() -> None:
    text = HEAD + MEMBER + 'rise = "2 in 12"\noffset = "-6"\nends = { reaction = 22, overhang = "1\'-6" }\n'
    document = read_document(text)
    again = read_document(write_document(document))
    assert again == document


def test_an_empty_frame_has_its_defaults() -> None:
    frame = FrameEntry()
    assert not frame.members
    assert frame.practice.setback is None
    assert member(offset="-6").offset == -parse_length("6")


@pytest.mark.parametrize(
    ("units", "given", "value"),
    [
        (System.FT_IN, 30, 30.0),
        (System.FT_IN, "30 kip", 30.0),
        (System.FT_IN, "133.4466 kN", 30.0),
        (System.MM, "30 kip", 133.4466),
        (System.MM, 30.5, 30.5),
    ],
)
def test_a_reaction_is_a_number_or_a_force_with_its_unit(units: System, given: object, value: float) -> None:
    # 1 kip = 4.4482216 kN
    entry = FrameEndEntry.model_validate({"reaction": given}, context={"system": units})
    assert entry.reaction == pytest.approx(value, rel=1e-6)


@pytest.mark.parametrize(
    ("table", "message"),
    [
        ("ends = { reaction = -5 }", "-5 is no reaction: give 0 to 5000 in kip"),
        ("ends = { reaction = nan }", "nan is no reaction"),
        ('ends = { reaction = "30 t" }', '"30 t" has a unit that is no force'),
    ],
)
def test_what_is_no_reaction_is_refused(table: str, message: str) -> None:
    with pytest.raises(JobProblems) as refused:
        read_job(HEAD + MEMBER + table)
    assert message in str(refused.value)


@pytest.mark.parametrize("turn", ['"north"', "nan", "361", "true"])
def test_a_turn_is_degrees(turn: str) -> None:
    column = f'[[frame.column]]\nname = "P"\nat = "1/A"\nstock = "W10x49"\nbase = 0\nturn = {turn}\n'
    with pytest.raises(
        JobProblems, match=r'column "P" → turn: .* is no angle: give degrees from -360 to 360'
    ):
        read_job(HEAD + column)
