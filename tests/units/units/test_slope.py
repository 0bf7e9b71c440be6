from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.units import SQUARE, Length, Slope, System, parse_slope


# Angles of bevels in 12: plane geometry, check against the table of tangents.
@pytest.mark.parametrize(
    ("rise", "degrees"), [(1, 4.764), (3, 14.036), (5, 22.620), (6, 26.565), (9, 36.870), (12, 45.0)]
)
def test_bevels_in_12(rise: int, degrees: float) -> None:
    slope = parse_slope(f"{rise} in 12")
    assert slope.degrees == pytest.approx(degrees, abs=5e-4)
    assert slope.rise_in_12 == Length.from_inches(rise)
    assert slope.over(Length.from_inches(6)) == Length.from_inches(Fraction(rise, 2))


def test_sixteen_degrees_is_3_7_16_in_12() -> None:
    assert parse_slope("16°").bevel_text() == "3 7/16 in 12"
    assert parse_slope("3 7/16 in 12").degrees == pytest.approx(15.98, abs=0.01)


def test_the_larger_side_is_12() -> None:
    assert parse_slope("12 in 5").bevel_text() == "12 in 5"
    assert parse_slope("60 deg").bevel_text() == "12 in 6 15/16"


def test_a_job_in_millimetres_has_its_bevels_in_degrees() -> None:
    assert parse_slope("3 in 12").text(System.FT_IN) == "3 in 12"
    assert (-parse_slope("3 in 12")).text(System.MM) == "14.0°"


def test_forms() -> None:
    assert parse_slope("3:12") == parse_slope("3/12") == parse_slope('3" in 12"') == Slope(Fraction(1, 4))
    assert -parse_slope("3:12") == Slope(Fraction(-1, 4))
    assert not SQUARE
    assert parse_slope("0 in 12") == SQUARE


@pytest.mark.parametrize("text", ["", "steep", "3 in", "3 in 0", "-1 in 12", "°", "x in 12"])
def test_what_is_no_bevel(text: str) -> None:
    with pytest.raises(
        ValueProblem, match=r"is not a bevel: write it like 3 in 12, 3 7/16 in 12, 1:20 or 16\.5°"
    ):
        parse_slope(text)


def test_too_steep() -> None:
    with pytest.raises(ValueProblem, match="angle 85° from square is over 80°"):
        parse_slope("85°")
    with pytest.raises(ValueProblem, match="from square is over 80°"):
        parse_slope("12 in 1")
