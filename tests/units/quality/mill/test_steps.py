from fractions import Fraction
from math import inf

import pytest

from gageline.quality.mill.steps import Step, each_further, inch, step_of
from jobs import inches

TABLE = (Step(2, Fraction(1), Fraction(2)), Step(inf, Fraction(3), Fraction(4)))


def test_a_size_on_a_boundary_belongs_to_the_smaller_line() -> None:
    assert step_of(TABLE, Fraction(2)) is TABLE[0]
    assert step_of(TABLE, Fraction(201, 100)) is TABLE[1]


@pytest.mark.parametrize(
    ("length", "count"), [("29'", 0), ("30'", 0), ("30'-0 1/64", 1), ("35'", 1), ("35'-0 1/64", 2)]
)
def test_each_further_stretch_or_fraction_counts(length: str, count: int) -> None:
    assert each_further(inches(length), inches("30'"), inches("5'")) == count


def test_fractions_are_those_of_the_standard() -> None:
    assert inch("1 3/64") == Fraction(67, 64)
