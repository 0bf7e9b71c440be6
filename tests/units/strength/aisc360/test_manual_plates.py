from __future__ import annotations

import math

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import manual_plates
from gageline.strength.aisc360.j3_bolts import Hole


@pytest.mark.parametrize("n", [1, 13])
def test_the_number_of_bolts_is_limited(n: int) -> None:
    with pytest.raises(ValueProblem, match=rf"n = {n} bolts must be 2 to 12 in a conventional single plate"):
        manual_plates.conventional_plate(n, 0.75, 3, Hole.STANDARD)


def test_a_wide_plate_is_extended() -> None:
    with pytest.raises(ValueProblem, match=r"a = 4 in must be at most 3.5 in .*: design it as extended"):
        manual_plates.conventional_plate(4, 0.75, 4, Hole.STANDARD)


def test_other_holes_are_refused() -> None:
    with pytest.raises(ValueProblem, match=r"oversized holes are outside the method: use standard holes or"):
        manual_plates.conventional_plate(4, 0.75, 3, Hole.OVERSIZED)


@pytest.mark.parametrize(
    ("n", "hole", "e", "t_max"),
    [
        (5, Hole.STANDARD, 1.5, 0.4375),
        (6, Hole.STANDARD, 3.0, 0.3125),
        (5, Hole.SHORT_PERPENDICULAR, 1.5, float("inf")),
        (6, Hole.SHORT_PERPENDICULAR, 1.5, 0.4375),
    ],
)
def test_table_10_9(n: int, hole: Hole, e: float, t_max: float) -> None:
    found = manual_plates.conventional_plate(n, 0.75, 3, hole)
    most = found.t_max.value if found.t_max else math.inf
    assert (found.e.value, most) == (e, t_max)


def test_weld_of_a_plate() -> None:
    assert manual_plates.single_plate_weld(0.4).value == pytest.approx(0.25)
