from __future__ import annotations

from fractions import Fraction

import pytest

from gageline.job import JobProblems
from gageline.job.locating import columns, where_along
from gageline.part import Face, HoleGroup
from gageline.units import Length, System
from jobs import inches, piece_of, section_of


def group_of(lines: str, stock: str = "W16x26", length: str = '"10\'-0"') -> HoleGroup:
    return piece_of(f"[[piece.holes]]\n{lines}", stock=stock, length=length).main.groups[-1]


def xs(group: HoleGroup) -> list[Length]:
    return sorted({hole.x for hole in group.holes})


def ys(group: HoleGroup) -> list[Length]:
    return sorted({hole.y for hole in group.holes})


def test_a_member_of_16_and_a_half_has_its_centre_at_8_and_a_quarter() -> None:
    """Common practice, no source: 1'-4 1/2" has its centre at 8 1/4", 4" about it are 6 1/4" and 10 1/4"."""
    both = group_of('from = "centre"\ncolumns = 2\nspacing = "4"\n', length='"1\'-4 1/2"')
    assert xs(both) == [inches("6 1/4"), inches("10 1/4")]
    assert xs(group_of('from = "centre"\n', length='"1\'-4 1/2"')) == [inches("8 1/4")]


def test_columns_from_the_left_the_right_and_the_centre() -> None:
    lines = 'x = "6"\ncolumns = 2\nspacing = "3"\n'
    assert xs(group_of(lines)) == [inches("6"), inches("9")]
    assert xs(group_of(lines + 'from = "right"\n')) == [inches("111"), inches("114")]
    assert xs(group_of(lines + 'from = "centre"\n')) == [inches("64.5"), inches("67.5")]


def test_columns_from_another_group() -> None:
    group = group_of('name = "a"\nx = "2\'"\n[[piece.holes]]\nfrom = "a"\nx = ["3", "7"]\n')
    assert xs(group) == [inches("27"), inches("31")]


def test_running_dimensions_are_taken_as_they_are() -> None:
    assert xs(group_of('x = ["1\'-6", "6\'", "9\'"]\nfrom = "right"\n')) == [
        inches("12"),
        inches("48"),
        inches("102"),
    ]


def test_rows_from_top_bottom_and_middle() -> None:
    d = section_of(piece_of()).d
    assert ys(group_of('rows = 2\ndown = "4"\n')) == [d - inches("7"), d - inches("4")]
    assert ys(group_of('rows = 2\nup = "4"\npitch = "5"\n')) == [inches("4"), inches("9")]
    low, high = ys(group_of('rows = 2\noffset = "1"\n'))
    assert high - low == inches("3")
    assert abs((low + high - d - inches("2")).ticks) <= 1
    assert ys(group_of('down = ["3", "5", "10"]\n')) == [d - inches(text) for text in ("10", "5", "3")]


def test_rows_on_flanges_by_gage() -> None:
    """AISC Manual Table 1-1: the workable gage of W16X26 is 3 1/2 in."""
    assert ys(group_of('face = "top"\n')) == [inches("-1 3/4"), inches("1 3/4")]
    assert ys(group_of('face = "bottom"\ngage = "3"\noffset = "1/4"\n')) == [
        inches("-1 1/4"),
        inches("1 3/4"),
    ]


def test_rows_from_heel_and_back() -> None:
    angle = group_of('heel = "2"\nface = "leg_b"\n', stock="L4x3x1/4")
    assert angle.face is Face.LEG_B
    assert ys(angle) == [inches("2")]
    channel = group_of('face = "top"\nback = "1 3/4"\n', stock="C12x20.7")
    assert ys(channel) == [inches("-1 3/4")]


@pytest.mark.parametrize(
    ("stock", "lines", "message"),
    [
        ("C12x20.7", 'face = "top"', "C12X20.7 has no usual gage: give back"),
        (
            "C12x20.7",
            'face = "top"\nrows = 1\noffset = 1',
            "no middle line: measure from the back of the web",
        ),
        ("L4x3x1/4", 'offset = "1"', "an angle's leg has no middle line: measure from the heel"),
        ("W16x26", 'back = "1"', "back is for a channel's flange: give down, up or offset"),
        (
            "PL1/2x8",
            'x = "1"',
            "rows are placed by one of down, up, offset, heel and back, none given: give one",
        ),
    ],
)
def test_rows_that_this_section_has_not(stock: str, lines: str, message: str) -> None:
    with pytest.raises(JobProblems, match=message):
        group_of(lines, stock=stock)


def test_an_unknown_start_names_those_there_are() -> None:
    with pytest.raises(
        ValueError, match='"end" is no end and no group before this one: use one of left, right, centre, a'
    ):
        columns("end", (Length(0),), Length(1), {"a": Length(0)})


def test_places_in_words_that_a_mirror_can_turn() -> None:
    tape = inches("1/16")
    assert where_along("left", inches("6"), tape, System.FT_IN) == '6" from left'
    assert where_along("centre", inches("6"), tape, System.FT_IN) == '6" right of the centre'
    assert where_along("centre", Length(0), tape, System.MM) == "at the centre"


def test_places_in_words_are_what_the_tape_shows() -> None:
    tape = inches("1/16")
    assert where_along("left", inches("2 43/64"), tape, System.FT_IN) == '2 11/16" from left'
    assert where_along("centre", -inches("8 21/64"), tape, System.FT_IN) == '8 5/16" left of the centre'
    assert where_along("right", inches("100 mm"), tape, System.FT_IN) == "100 mm from right"
    assert (
        where_along("left", Length.from_mm(Fraction(7054, 100)), Length.from_mm(1), System.MM)
        == "71 from left"
    )
