import re
from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.units import Length, Unit, parse_length

EIGHTEEN_SEVEN = Length.from_inches(Fraction(893, 4))


@pytest.mark.parametrize(
    "text",
    [
        "18-7 1/4",
        "18'-7 1/4\"",
        "18' 7 1/4\"",
        "18' 7.25\"",
        "18'7.25",
        "18′-7¼″",
        "18’ 7 ¼”",
        "223.25in",
        "223.25",
        '223 1/4"',
        "223-1/4",
        "18 ft 7 1/4 in",
        "18'-7-1/4\"",
        "18'-7 1⁄4''",
        " 18' - 7 1/4\" ",
        "18 feet 7.25 inches",
        "5670.55mm",
        "5670.55 MM",
        "567.055 cm",
        "5.67055m",
        "18.6041666666666666667'",
    ],
)
def test_every_way_of_writing_one_length(text: str) -> None:
    assert parse_length(text) == EIGHTEEN_SEVEN


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("7/8", Fraction(7, 8)),
        ("1 1/2", Fraction(3, 2)),
        ("1-1/2", Fraction(3, 2)),
        ("5'", 60),
        ("5'-0", 60),
        ("5'-0\"", 60),
        ("18-7", 223),
        ("0", 0),
        ("-3/4", Fraction(-3, 4)),
        ("- 1'-6", -18),
        ("1½", Fraction(3, 2)),
        (".5", Fraction(1, 2)),
        ("½", Fraction(1, 2)),
        ("12", 12),
        ("1/2'", 6),
        ("0-0 1/2", Fraction(1, 2)),
        ('15/16"', Fraction(15, 16)),
        ("1/256", Fraction(1, 256)),
        ("3 1/2'", 42),
        ("9/8", Fraction(9, 8)),
    ],
)
def test_ways_of_writing_inches(text: str, inches: Fraction | int) -> None:
    assert parse_length(text) == Length.from_inches(inches)


@pytest.mark.parametrize(("text", "mm"), [("5670", 5670), ("12.5", 12.5), ("5670mm", 5670), ('1"', 25.4)])
def test_a_bare_number_in_a_metric_job_is_millimetres(text: str, mm: float) -> None:
    assert parse_length(text, Unit.MM) == Length.from_mm(Fraction(str(mm)))


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "abc",
        "18-",
        "1/0",
        "1//2",
        "1.5 1/2",
        "18' 7' 3",
        "--1",
        "5 kg",
        "1e3",
        "nan",
        "inf",
        "18-13",
        "7 - 7/4",
        "1 2 3",
        "'",
        '"',
        "½½",
        "5mm mm",
        "0x10",
        "9" * 80,
        "1/2/3",
    ],
)
def test_what_is_no_length(text: str) -> None:
    with pytest.raises(ValueProblem, match=r"is not a length: write it like 18'-7 1/4\""):
        parse_length(text)


@pytest.mark.parametrize("text", ["1/2", "1 1/2", "12-6"[:0] + "3/4"])
def test_a_bare_fraction_in_a_metric_job_is_refused(text: str) -> None:
    with pytest.raises(ValueProblem, match="is not a length: write it like 5670, 5670mm"):
        parse_length(text, Unit.MM)


@pytest.mark.parametrize(
    ("text", "unit", "point"),
    [("4820,5", Unit.MM, "4820.5"), ("-62,5 mm", Unit.INCH, "62.5 mm"), ('3,25"', Unit.INCH, '3.25"')],
)
def test_a_decimal_comma_is_named(text: str, unit: Unit, point: str) -> None:
    with pytest.raises(ValueProblem, match=f"is not a length: write a decimal point, {re.escape(point)}$"):
        parse_length(text, unit)
