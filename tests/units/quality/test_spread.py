from random import Random

import pytest
from scipy.stats import chi2

from gageline.errors import ValueProblem
from gageline.quality.spread import ASSUMED, Act, Spread, estimated, spread_from


def test_the_default_says_that_it_is_an_assumption() -> None:
    assert "assumption" in ASSUMED.source
    assert ASSUMED.hole == pytest.approx((2 * (1 / 96) ** 2) ** 0.5)


def test_one_act_is_scaled_alone() -> None:
    half = ASSUMED.scaled(Act.TAPE, 0.5)
    assert (half.tape, half.setting) == (1 / 64, ASSUMED.setting)


@pytest.mark.parametrize("value", [-0.1, 12.0, float("nan")])
def test_an_impossible_spread_is_refused(value: float) -> None:
    with pytest.raises(ValueProblem, match="in of punch is not from 0 to 12: give it in inches"):
        Spread(punch=value)


def test_a_spread_by_hand() -> None:
    """Errors 1, -1, 2, -2, 0: squares sum to 10, over 5 is 2."""
    told = estimated([1, -1, 2, -2, 0])
    assert told.value == pytest.approx(2**0.5)
    assert told.low == pytest.approx((10 / chi2.ppf(0.975, 5)) ** 0.5)
    assert told.high == pytest.approx((10 / chi2.ppf(0.025, 5)) ** 0.5)
    assert told.count == 5


def test_a_shop_that_is_always_long_is_wrong_by_that() -> None:
    assert estimated([1 / 32] * 10).value == pytest.approx(1 / 32)


def test_too_few_readings_are_refused() -> None:
    with pytest.raises(ValueProblem, match="4 readings are too few to tell a spread: give 5 or more"):
        estimated([0.1] * 4)


def test_the_true_spread_lies_in_the_interval_19_times_in_20() -> None:
    draw = Random(5)  # noqa: S311 - a simulation, no secret
    sigma, held = 1 / 32, 0
    for _ in range(400):
        told = estimated([draw.gauss(0, sigma) for _ in range(12)])
        held += told.low <= sigma <= told.high
    # 380 expected, standard deviation 4.4
    assert 362 <= held <= 398


def test_records_replace_what_they_tell_and_leave_the_rest() -> None:
    spread, found = spread_from({Act.TAPE: [0.05] * 6, Act.GAGE: [0.1] * 3, Act.DRILL: [0.02] * 5})
    assert (spread.tape, spread.gage) == pytest.approx((0.05, ASSUMED.gage))
    # A drill read hole to hole holds the punch too.
    assert (spread.drill, spread.punch) == pytest.approx((0.02, 0.0))
    assert set(found) == {Act.TAPE, Act.DRILL}
    assert spread.source.startswith("the shop's own records: tape from 6 readings, drill from 5 readings")


def test_without_records_nothing_changes() -> None:
    assert spread_from({Act.TAPE: [0.1]}) == (ASSUMED, {})
