from decimal import Decimal
from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.units import ZERO, Length


def test_an_inch_and_a_millimetre_are_whole_ticks() -> None:
    assert Length.from_inches(1) == Length.from_mm(Decimal("25.4"))
    assert Length.from_inches(Fraction(1, 256)).ticks == 635
    assert Length.from_mm(Decimal("0.01")).ticks == 64


def test_arithmetic_is_exact() -> None:
    inch = Length.from_inches(1)
    third = inch.parts(3)
    assert sum(part.ticks for part in third) == inch.ticks
    assert Length.from_inches(16.5) / 2 == Length.from_inches(8.25)
    assert inch * 3 - inch == 2 * inch
    assert abs(-inch) == inch
    assert inch * Fraction(1, 2) == Length.from_inches(0.5)
    assert Length.from_inches(6).ratio(Length.from_inches(12)) == Fraction(1, 2)
    assert not ZERO
    assert inch


def test_ten_thousand_sixteenths_do_not_drift() -> None:
    total = ZERO
    for _ in range(10_000):
        total += Length.from_inches(Fraction(1, 16))
    assert total == Length.from_inches(625)


def test_lengths_compare_and_hash_by_value() -> None:
    assert sorted([Length(3), Length(1), Length(2)]) == [Length(1), Length(2), Length(3)]
    assert len({Length.from_inches(1), Length.from_mm(25.4)}) == 1


def test_a_length_is_not_a_number() -> None:
    with pytest.raises(TypeError):
        Length(1) + 1  # type: ignore[operator]  # the point of the test
    with pytest.raises(TypeError):
        Length(1) * 1.5  # type: ignore[operator]  # a float would drift
    with pytest.raises(TypeError):
        Length(1) - 1  # type: ignore[operator]  # the point of the test
    with pytest.raises(TypeError):
        Length(1) / 1.5  # type: ignore[operator]  # a float would drift


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_a_length_is_finite(value: float) -> None:
    with pytest.raises(ValueProblem, match="in is not a number: give a finite length"):
        Length.from_inches(value)


def test_no_parts_are_refused() -> None:
    with pytest.raises(ValueProblem, match="parts 0 of a length: give 1 or more"):
        Length(5).parts(0)


def test_nothing_is_divided_by_no_length() -> None:
    with pytest.raises(ValueProblem, match="length 0 cannot divide a length"):
        Length(5).ratio(ZERO)
