from dataclasses import replace

import pytest

from gageline.errors import ValueProblem
from gageline.job import EndReadings, Stick
from gageline.quality.plausible import check_readings
from gageline.units import Length, System
from jobs import inches, piece_of

PART = piece_of(stock="L6x4x1/2").main


def stick(**readings: Length) -> Stick:
    return Stick("A1", left=EndReadings(**readings))  # type: ignore[arg-type] # lengths by their names


def test_a_leg_taken_for_the_other_is_refused() -> None:
    said = r'A1 left end depth 4" is more than 1 1/2" off the 6" of L6X4X1/2: check the reading'
    with pytest.raises(ValueProblem, match=said):
        check_readings(PART, stick(depth=inches("4")), System.FT_IN)


@pytest.mark.parametrize("depth", ["4 1/2", "7 1/2", "6"])
def test_what_is_a_quarter_off_is_left_to_the_standard(depth: str) -> None:
    check_readings(PART, stick(depth=inches(depth), bottom_width=inches("5")), System.FT_IN)


def test_everything_that_cannot_be_is_said_at_once_in_the_units_of_the_job() -> None:
    wrong = replace(
        stick(top_width=Length.from_mm(500), bottom_tilt=-Length.from_mm(60)),
        web_off=Length.from_mm(40),
        camber=-Length.from_mm(400),
        sweep=Length.from_mm(400),
        length=Length.from_mm(6000),
    )
    with pytest.raises(ValueProblem) as raised:
        check_readings(PART, wrong, System.MM)
    told = [line.split(" is more")[0] for line in str(raised.value).splitlines()]
    assert told == [
        "A1 left end top width 500 mm", "A1 left end bottom tilt -60 mm", "A1 web off centre 40 mm",
        "A1 camber -400 mm", "A1 sweep 400 mm",
    ]  # fmt: skip


def test_a_bow_of_a_twentieth_is_the_most() -> None:
    long = Stick("A1", length=inches("20'"), camber=inches("12"))
    check_readings(PART, long, System.FT_IN)
    with pytest.raises(
        ValueProblem, match=r'camber 1\'-0 1/64" is more than 1\'-0" and no L6X4X1/2 comes so'
    ):
        check_readings(PART, replace(long, camber=inches("12 1/64")), System.FT_IN)


def test_a_flat_bar_has_one_width() -> None:
    bar = piece_of(stock="PL1/2x6").main
    check_readings(bar, stick(depth=inches("6 1/8")), System.FT_IN)
    with pytest.raises(ValueProblem, match="left end depth 8"):
        check_readings(bar, stick(depth=inches("8")), System.FT_IN)
