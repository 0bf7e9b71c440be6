from __future__ import annotations

import pytest

from gageline.job import FramePractice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.units import System, parse_length


def test_what_is_given_goes_before_the_default() -> None:
    entry = FramePracticeEntry.model_validate({"setback": "3/4"}, context={"system": System.FT_IN})
    made = frame_practice(entry, System.FT_IN)
    assert made.setback == parse_length("3/4")
    assert made.cope_step == FramePractice().cope_step


def test_a_metric_job_has_metric_clearances() -> None:
    made = frame_practice(FramePracticeEntry(), System.MM)
    assert made.setback.mm == 10
    assert made.angle == "L 100x100x10"


@pytest.mark.parametrize("name", list(FramePracticeEntry.model_fields))
def test_every_key_of_the_document_is_a_value_of_practice(name: str) -> None:
    assert hasattr(FramePractice(), name)
