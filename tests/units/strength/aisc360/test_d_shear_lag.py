"""Table D3.1, by hand; the formulas and the factors of cases 7 and 8 from memory of the table."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from gageline.errors import ValueProblem
from gageline.strength import Step
from gageline.strength.aisc360 import d_shear_lag as lag


@pytest.mark.parametrize(
    ("found", "U"),
    [
        (lag.all_joined(), 1.0),
        (lag.part_joined(1.0, 9.0), 8 / 9),
        (lag.transverse_welds(2.0, 4.0), 0.5),
        (lag.welded_plate(8.0, 4.0), 192 / 208),
        (lag.welded_plate(8.0, 4.0, 1.0), 192 / 208 * 7 / 8),
        (lag.flange_or_web_rows(3, 8.0, 5.34, flange=True), 0.90),
        (lag.flange_or_web_rows(3, 8.0, 5.25, flange=True), 0.85),
        (lag.flange_or_web_rows(4, 8.0, 5.25, flange=False), 0.70),
        (lag.angle_rows(4), 0.80),
        (lag.angle_rows(3), 0.60),
    ],
)
def test_factors(found: Step, U: float) -> None:
    assert found.value == pytest.approx(U)


@pytest.mark.parametrize(
    ("case", "message"),
    [
        (lambda: lag.part_joined(3.0, 3.0), "l = 3 in must be more than x_bar = 3 in: make the joint longer"),
        (lambda: lag.welded_plate(3.0, 2.0, 4.0), "x_bar = 4 in must be 0 or more and less than l = 3 in"),
        (lambda: lag.transverse_welds(4.0, 3.0), "A_n = 4 in² is more than A_g = 3 in²: leave out"),
        (lambda: lag.flange_or_web_rows(2, 8, 5, flange=True), "n = 2 bolts in a line in the flange"),
        (lambda: lag.flange_or_web_rows(3, 8, 5, flange=False), "n = 3 bolts in a line in the web must be"),
        (lambda: lag.angle_rows(2), "n = 2 bolts in a line must be at least 3: use case 2"),
    ],
)
def test_what_the_table_does_not_have_is_refused(case: Callable[[], Step], message: str) -> None:
    with pytest.raises(ValueProblem) as refused:
        case()
    assert str(refused.value).startswith(message)
