from dataclasses import replace

import pytest

from gageline.errors import ValueProblem
from gageline.job import Edge, EndReadings, SquareGap, Stick
from gageline.quality.plausible import check_readings, slips_of
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
        ordered=Length.from_mm(6000),
    )
    with pytest.raises(ValueProblem) as raised:
        check_readings(PART, wrong, System.MM)
    told = [line.split(" is more")[0] for line in str(raised.value).splitlines()]
    assert told == [
        "A1 left end top width 500 mm", "A1 left end bottom tilt -60 mm", "A1 web off centre 40 mm",
        "A1 camber -400 mm", "A1 sweep 400 mm",
    ]  # fmt: skip


def test_a_bow_of_a_twentieth_is_the_most() -> None:
    long = Stick("A1", length=inches("20'"), ordered=inches("20'"), camber=inches("12"))
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


@pytest.mark.parametrize(
    ("length", "ordered", "said"),
    [
        ("15'", None, ""),
        ("5'", None, ""),
        ("60'", None, ""),  # cut from a long stick
        ("121'", None, "length 121'-0\" is more than 110'-0\" off the 10'-0\" of the piece: check the "),
        (
            "4'",
            None,
            "length 4'-0\" is more than 5'-0\" off the 10'-0\" of the piece: check the reading, or give ",
        ),
        ("40'", "40'", ""),
        (
            "4'",
            "40'",
            "length 4'-0\" is more than 20'-0\" off the 40'-0\" that was ordered: check the reading",
        ),
    ],
)
def test_a_length_is_held_to_what_was_ordered(length: str, ordered: str | None, said: str) -> None:
    read = Stick("A1", length=inches(length), ordered=inches(ordered) if ordered else None)
    found = slips_of(PART, read, System.FT_IN)
    assert [one.path for one in found] == ([("length",)] if said else [])
    assert all(one.text.startswith(said) for one in found)


def test_a_square_that_stands_open_too_far_is_refused_at_its_field() -> None:
    gap = SquareGap(inches("3 1/8"), inches("12"), Edge.TOP)
    read = Stick("A1", right=EndReadings(flange_gap=gap, web_gap=replace(gap, gap=inches("3"))))
    (found,) = slips_of(PART, read, System.FT_IN)
    assert found.path == ("right", "flange_gap")
    assert found.text == (
        'right end flange gap 3 1/8" is more than 1 in 4 of its blade of 1\'-0": '
        "check the reading, or cut the end first"
    )


def test_a_blade_is_that_of_a_square() -> None:
    read = Stick("A1", left=EndReadings(web_gap=SquareGap(inches("1/8"), inches("12'"), Edge.TOP)))
    (found,) = slips_of(PART, read, System.FT_IN)
    assert found.path == ("left", "web_blade")
    assert found.text.startswith("left end web blade 12'-0\" is longer than any square's, 4'-0\" at the most")


def test_corners_are_held_to_a_quarter_of_the_way_across() -> None:
    """Legs 6 and 4: 1 1/2 from top to bottom, 1 from near to far."""
    corners = (inches("0"), inches("1"), inches("-1 1/2"), None)
    assert slips_of(PART, Stick("A1", left=EndReadings(corners)), System.FT_IN) == ()
    wrong = (inches("0"), inches("1 1/64"), inches("-1 33/64"), None)
    found = slips_of(PART, Stick("A1", left=EndReadings(wrong)), System.FT_IN)
    assert [one.path for one in found] == [("left", "bottom_near"), ("left", "top_far")]
    assert found[0].text == (
        'left end bottom near -1 33/64" is 1 33/64" off the corner across, more than 1 1/2": '
        "check the reading, or cut the end first"
    )
