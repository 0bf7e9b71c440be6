import pytest

from gageline.takeoff import weight_number, weight_text, weight_unit
from gageline.units import System


def test_a_weight_is_written_in_the_units_of_the_job() -> None:
    # 1 lb = 0.45359237 kg, by international agreement of 1959
    assert weight_text(1234.56, System.FT_IN) == "1,234.6"
    assert weight_text(100, System.MM) == "45.4"
    assert weight_text(10_000, System.MM, 0) == "4,536"
    assert (weight_unit(System.FT_IN), weight_unit(System.MM)) == ("lb", "kg")


def test_a_weight_as_a_number_for_whoever_counts_on() -> None:
    assert weight_number(100, System.FT_IN) == 100
    assert weight_number(100, System.MM) == pytest.approx(45.359237)
