from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.units import (
    Length,
    System,
    counted,
    exact_text,
    feet_inches,
    inches_text,
    is_metric,
    millimetres,
    write_length,
)


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (Fraction(893, 4), "18'-7 1/4\""),
        (60, "5'-0\""),
        (132.375, "11'-0 3/8\""),
        (Fraction(7, 8), '7/8"'),
        (0, '0"'),
        (12, "1'-0\""),
        (Fraction(-3, 4), '-3/4"'),
        (Fraction(191, 16), '11 15/16"'),
        (-18, "-1'-6\""),
        (1.04, '1 1/16"'),
        (11.99, "1'-0\""),
        (-0.01, '0"'),
    ],
)
def test_feet_inches(inches: float | Fraction, text: str) -> None:
    assert feet_inches(Length.from_inches(inches)) == text


def test_ties_go_away_from_zero() -> None:
    tie = Length.from_inches(Fraction(1, 32))
    assert feet_inches(tie, 16) == '1/16"'
    assert feet_inches(-tie, 16) == '-1/16"'
    assert feet_inches(tie, 64) == '1/32"'


def test_inches_without_feet() -> None:
    assert inches_text(Length.from_inches(223.25)) == '223 1/4"'
    assert inches_text(Length.from_inches(-0.5)) == '-1/2"'


@pytest.mark.parametrize(
    ("mm", "text"), [("5670", "5670"), ("12.50", "12.5"), ("-3.04", "-3"), ("0.05", "0.1"), ("100", "100")]
)
def test_millimetres(mm: str, text: str) -> None:
    assert millimetres(Length.from_mm(Fraction(mm))) == text


def test_the_job_says_which_units() -> None:
    length = Length.from_inches(24)
    assert write_length(length, System.FT_IN) == "2'-0\""
    assert write_length(length, System.MM) == "609.6"


def test_exact_text() -> None:
    assert exact_text(Length.from_inches(Fraction(893, 4))) == "18'-7 1/4\""
    assert exact_text(Length.from_inches(Fraction(3, 256))) == '3/256"'
    assert exact_text(Length(1)) == "0.00015625 mm"
    assert exact_text(Length.from_mm(5670), System.MM) == "5670 mm"


@pytest.mark.parametrize("denominator", [0, 3, 128, -16])
def test_an_odd_denominator_is_refused(denominator: int) -> None:
    with pytest.raises(ValueProblem, match=f"denominator {denominator} of an inch fraction is not one of"):
        feet_inches(Length(0), denominator)


def test_only_what_was_given_in_millimetres_is_metric() -> None:
    assert is_metric(Length.from_mm(90))
    assert is_metric(Length.from_mm(Fraction(25, 2)))
    assert not is_metric(Length.from_mm(Fraction(71, 10)))  # as likely by chance, from a slope
    assert not is_metric(Length.from_mm(254))
    assert not is_metric(Length.from_inches(15.7))
    assert not is_metric(Length.from_inches(Fraction(1, 64)))


def test_counts_in_words() -> None:
    assert [counted(n, "piece") for n in (0, 1, 2)] == ["0 pieces", "1 piece", "2 pieces"]
