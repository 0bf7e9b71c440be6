from __future__ import annotations

import pytest

from gageline.job import JobProblems, Practice, default_practice
from gageline.steel import bolt
from gageline.units import Length, System
from jobs import job_of


def test_a_shop_in_feet_and_one_in_millimetres() -> None:
    assert default_practice(System.FT_IN) == Practice()
    metric = default_practice(System.MM)
    assert (metric.tape, metric.bolt, metric.pitch) == (Length.from_mm(1), "M20", Length.from_mm(70))


def test_usual_bolts_are_in_the_table_and_usual_pitches_far_enough() -> None:
    """Source: AISC 360, J3.3: the preferred distance is 3 diameters."""
    for system in System:
        practice = default_practice(system)
        assert practice.pitch >= bolt(practice.bolt).diameter * 3


PIECE = 'mark = "B1"\nstock = "IPE 300"\nlength = 5000'


def test_a_shop_sets_limits_and_a_class_of_its_own() -> None:
    practice = job_of(
        PIECE, units="mm", practice="tolerance_class = 2\ntolerances = { en1090-bow = 5 }"
    ).practice
    assert practice.tolerance_class == 2
    assert practice.tolerances == {"en1090-bow": Length.from_mm(5)}
    assert (default_practice(System.MM).tolerance_class, default_practice(System.MM).tolerances) == (1, {})


def test_a_class_that_en_1090_has_not_is_refused() -> None:
    with pytest.raises(JobProblems, match="practice → tolerance_class: 3 is more than 2: give 2 or less"):
        job_of(PIECE, units="mm", practice="tolerance_class = 3")
