from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from gageline.detail import full_job, open_full, read_full
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
    with pytest.raises(JobProblems, match=r'line \d+: frame → member "B5" → end: nothing supports it'):
        read_full(FRAME.replace('at = "21\'-0"', 'at = "39\'-0"'))


def test_problems_of_a_job_without_a_text() -> None:
    job = read_job(FRAME.replace('at = "21\'-0"', 'at = "39\'-0"'))
    with pytest.raises(JobProblems, match=r'frame → member "B5" → end: nothing supports it'):
        full_job(job)
