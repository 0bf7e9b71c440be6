from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.job.collecting import Collector


def refuse() -> int:
    raise ValueProblem("depth 5 is too deep: give less")


def test_a_refusal_is_noted_with_its_place_and_work_goes_on() -> None:
    collector = Collector()
    assert collector.attempt(("piece", 0), refuse) is None
    assert collector.attempt(("piece", 1), lambda: 7) == 7
    collector.add(("piece", 2, "mark"), "is used twice")
    assert collector.found == [
        (("piece", 0), "depth 5 is too deep: give less"),
        (("piece", 2, "mark"), "is used twice"),
    ]


def test_a_bug_is_no_problem_of_the_document() -> None:
    with pytest.raises(ZeroDivisionError):
        Collector().attempt((), lambda: 1 // 0)
