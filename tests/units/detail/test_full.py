from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from gageline.detail import (
    Asked,
    Detailed,
    FullJob,
    checked_full,
    full_job,
    open_full,
    read_full,
    with_rows,
)
from gageline.errors import ValueProblem
from gageline.job import JobProblems, read_job
from gageline.part import End

FRAME = (files("gageline") / "demo" / "mezzanine-frame.toml").read_text(encoding="utf-8")
DRAWN = '\n[[piece]]\nmark = "X1"\nstock = "W16x26"\nlength = "10\'-0"\n'


def test_a_job_without_a_frame_stays_as_it_is() -> None:
    text = '[job]\nname = "x"\n' + DRAWN
    full = read_full(text)
    assert full.detailed is None
    assert not full.findings
    assert [one.mark for one in full.job.assemblies] == ["X1"]


def test_drawn_and_detailed_pieces_stand_together() -> None:
    full = read_full(FRAME + DRAWN)
    marks = [one.mark for one in full.job.assemblies]
    assert marks[0] == "X1"
    assert {"G1", "G3", "B1", "P1"} <= set(marks)
    assert len(marks) == len(set(marks))


def test_the_job_in_a_file(tmp_path: Path) -> None:
    file = tmp_path / "frame.toml"
    file.write_text(FRAME, encoding="utf-8")
    assert open_full(file).job.assemblies == read_full(FRAME).job.assemblies


def test_problems_have_their_line() -> None:
    with pytest.raises(JobProblems, match=r'line \d+: frame → member "B5": at 39\'-0" is not on "G5": give'):
        read_full(FRAME.replace('at = "21\'-0"', 'at = "39\'-0"'))


def test_problems_of_a_job_without_a_text() -> None:
    job = read_job(FRAME.replace('at = "21\'-0"', 'at = "39\'-0"'))
    with pytest.raises(JobProblems, match=r'frame → member "B5": at 39\'-0" is not on "G5": give'):
        full_job(job)


def test_a_piece_that_detailing_finds_an_error_in_is_left_out() -> None:
    full = read_full(FRAME.replace("ends = { reaction = 44 }", "ends = { rows = 9 }"))
    result = checked_full(full)
    assert result.wrong == ("G4",)
    assert "G4" not in [one.mark for one in result.job.assemblies]
    assert [one.code for one in result.findings if one.severity == "error"] == ["rows-as-given"] * 2
    warned = [one.text() for one in result.findings if one.code == "carries-an-error"]
    assert warned[0] == (
        "warning: P5: what is cut into it and joined to it for G4 may change when that is put right: "
        "put G4 right before this piece is made"
    )
    assert [text.split(":")[1].strip() for text in warned] == ["P5", "P6"]
    assert not checked_full(read_full(FRAME)).wrong


def test_one_piece_alone_has_its_own_findings() -> None:
    full = read_full(FRAME.replace("ends = { reaction = 44 }", "ends = { rows = 9 }"))
    assert checked_full(full.only("G4")).wrong == ("G4",)
    alone = checked_full(full.only("B1"))
    assert (alone.wrong, alone.findings) == ((), ())
    assert [one.mark for one in alone.job.assemblies] == ["B1"]


def test_both_pieces_that_stand_in_one_place_are_left_out() -> None:
    beside = """
[[frame.member]]
name = "B99"
stock = "W12x26"
from = { on = "G1", at = "6'-6" }
to = { on = "G3", at = "6'-6" }
top = "Mezzanine"
"""
    full = read_full(FRAME + beside)
    assert full.detailed is not None
    both = [one for one in full.detailed.findings if one.code == "in-the-way"]
    assert both
    assert {"B1", "B99"} <= set(checked_full(full).wrong)


def asking(full: FullJob, name: str, rows: int) -> Detailed:
    """The frame detailed again with rows asked for at the left end of a member."""
    assert full.detailed is not None
    named = full.detailed.joints[name, End.LEFT].choice.named
    again = with_rows(full, {named: Asked(rows, "since it is weak", "a clause")}).detailed
    assert again is not None
    return again


def rows_of(detailed: Detailed | None, name: str) -> int:
    assert detailed is not None
    ladder = detailed.joints[name, End.LEFT].ladder
    assert ladder is not None
    return ladder.rows


def test_rows_that_strength_asks_for_are_made_where_they_fit() -> None:
    full = read_full(FRAME)
    wanted = rows_of(full.detailed, "B1") + 1
    assert rows_of(asking(full, "B1", wanted), "B1") == wanted


def test_another_connection_is_taken_where_rows_for_strength_do_not_fit() -> None:
    full = read_full(FRAME)
    assert full.detailed is not None
    again = asking(full, "B1", 12)
    assert again.joints["B1", End.LEFT].choice.named != full.detailed.joints["B1", End.LEFT].choice.named
    assert not any(one.code == "rows-for-strength" for one in again.findings)


def test_a_connection_that_is_given_stays_and_its_missing_rows_are_said() -> None:
    given = 'ends = { reaction = 44, connection = "double angles" }'
    again = asking(read_full(FRAME.replace("ends = { reaction = 44 }", given)), "G4", 12)
    fit = rows_of(again, "G4")
    (warned,) = [one for one in again.findings if one.code == "rows-for-strength"]
    assert warned.severity == "warning"
    assert warned.message.startswith(
        f"{fit} rows are fewer than the 12 that strength asks for, since it is weak: {fit} rows fit"
    )


def test_a_member_is_found_by_its_name_where_an_equal_one_gives_the_mark() -> None:
    full = read_full(FRAME)
    assert full.detailed is not None
    shared = next(one for one in full.detailed.placed if one.member != one.mark)
    assert full.mark_of(shared.member) == shared.mark
    assert [one.mark for one in full.only(shared.member).job.assemblies] == [shared.mark]
    with pytest.raises(ValueProblem, match='there is no piece "Z9"'):
        full.only("Z9")


def test_a_column_is_one_of_the_frame_or_has_a_plate_of_a_column() -> None:
    plate = '[[piece.base_plates]]\nend = "left"\nthickness = "3/4"\nwidth = "12"\nlength = "12"\n'
    full = read_full(FRAME + DRAWN + DRAWN.replace("X1", "X2") + plate)
    assert [full.is_column(mark) for mark in ("P1", "X2", "B1", "X1")] == [True, True, False, False]
