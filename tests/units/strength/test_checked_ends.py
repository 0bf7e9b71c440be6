from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from frames import one_bay
from gageline.detail import read_full
from gageline.job import PieceLoads, open_job
from gageline.part import End
from gageline.strength import Method, NotChecked, check_strength
from gageline.strength.checked_ends import checked_ends
from gageline.strength.framed import Subject

DEMO = Path(__file__).parents[3] / "src/gageline/demo/mezzanine.toml"


def test_every_end_with_a_connection_is_checked() -> None:
    job = open_job(DEMO)
    beam = job.piece("B1")
    subject = Subject("B1", 1, beam, PieceLoads("B1"), {})
    found = list(checked_ends(job, subject, Method.LRFD))
    assert [end for end, _ in found] == [End.LEFT, End.RIGHT]
    assert not any(isinstance(result, NotChecked) for _, result in found)


def test_bolts_of_no_known_grade_are_not_checked() -> None:
    job = open_job(DEMO)
    odd = replace(job, practice=replace(job.practice, bolt_grade="Z9"))
    subject = Subject("B1", 1, job.piece("B1"), PieceLoads("B1"), {})
    (end, result), *_ = checked_ends(odd, subject, Method.LRFD)
    assert end is None
    assert isinstance(result, NotChecked)
    assert result.what == "B1, its connections"
    assert "Z9" in result.why


@pytest.mark.parametrize(("play", "setback"), [("1/16", 7 / 16), ("0", 1 / 2)])
def test_angles_of_a_frame_are_checked_with_their_play_at_the_face(play: str, setback: float) -> None:
    bay = one_bay('ends = { reaction = "20 kip" }')
    full = read_full(f"{bay}[frame.practice]\nplay = '{play}'\n")
    verdict = check_strength(full.job, None, full.detailed).connections[0].verdict
    found = verdict.connection
    assert (found.name, found.setback, found.setback + found.play) == ("B1 left", setback, 0.5)
    (e,) = {step.value for check in verdict.checks for step in check.steps if step.symbol == "e"}
    assert found.end.top is not None
    assert e == pytest.approx(found.end.top.c + 0.5)
