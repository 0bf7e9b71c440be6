from __future__ import annotations

from gageline.job import Practice, default_practice
from gageline.steel import bolt
from gageline.units import Length, System


def test_a_shop_in_feet_and_one_in_millimetres() -> None:
    assert default_practice(System.FT_IN) == Practice()
    metric = default_practice(System.MM)
    assert (metric.tape, metric.bolt, metric.pitch) == (Length.from_mm(1), "M20", Length.from_mm(70))


def test_usual_bolts_are_in_the_table_and_usual_pitches_far_enough() -> None:
    """Source: AISC 360, J3.3: the preferred distance is 3 diameters."""
    for system in System:
        practice = default_practice(system)
        assert practice.pitch >= bolt(practice.bolt).diameter * 3
