from __future__ import annotations

from pathlib import Path

import pytest

from gageline.errors import ValueProblem
from gageline.job import JobProblems, build_job, check_job, checked, open_job, read_document, read_job
from gageline.part import Severity
from gageline.units import System
from jobs import job_of

DEMO = Path(__file__).parents[3] / "src/gageline/demo"
BEAM = 'mark = "B1"\nstock = "W16x26"\nlength = 120\n'


@pytest.mark.parametrize("name", ["mezzanine.toml", "metric.toml"])
def test_the_demo_jobs_build_without_a_finding(name: str) -> None:
    job = open_job(DEMO / name)
    assert len(job.assemblies) >= 6
    assert not check_job(job)


def test_a_piece_is_found_by_its_mark() -> None:
    job = job_of(BEAM)
    assert job.piece("B1").mark == "B1"
    assert job.system is System.FT_IN
    with pytest.raises(ValueProblem, match='there is no piece "B9": the job has B1'):
        job.piece("B9")


def test_the_rules_speak_in_the_units_of_the_job() -> None:
    job = job_of('mark = "B1"\nstock = "IPE 300"\nlength = 4000\nholes = [{ x = 20 }]\n', units="mm")
    (finding,) = check_job(job)
    assert finding.severity is Severity.WARNING
    assert "its edge distance 20 is less than 26" in finding.message


def test_a_document_without_a_text_has_problems_without_lines() -> None:
    document = read_document('[job]\nname = "t"\n[[piece]]\nmark = "B1"\nstock = "W16x26"\n')
    with pytest.raises(JobProblems) as refused:
        build_job(document)
    assert [problem.text() for problem in refused.value.problems] == [
        'piece "B1" → length: is missing: give it, or as_hand_of another piece'
    ]


def test_a_document_builds_to_the_same_job_as_its_text() -> None:
    text = (DEMO / "metric.toml").read_text(encoding="utf-8")
    assert build_job(read_document(text)) == read_job(text)


def test_pieces_with_an_error_are_named_and_left_out() -> None:
    text = (DEMO / "mezzanine.toml").read_text("utf8").replace('down = "4"', 'down = "20"', 1)
    job = read_job(text)
    result = checked(job)
    assert result.wrong == ("B4",)
    assert [piece.mark for piece in result.job.assemblies] == [
        piece.mark for piece in job.assemblies if piece.mark != "B4"
    ]
    assert result.findings == check_job(job)
