from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from gageline.detail import checked_full, full_job, open_full, read_full
from gageline.job import JobProblems, read_job

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
