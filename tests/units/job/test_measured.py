import pytest

from gageline.job import Corner, Edge, EndReadings, SquareGap, Stick
from gageline.part import End
from gageline.units import Length

INCH = Length.from_inches(1)
LEFT = EndReadings(
    (INCH, INCH * 2, INCH * 3, INCH * 4),
    web_gap=SquareGap(INCH, INCH * 12, Edge.TOP),
    flange_gap=SquareGap(INCH, INCH * 6, Edge.NEAR),
    top_width=INCH * 6,
    bottom_width=INCH * 7,
    top_tilt=INCH / 8,
    bottom_tilt=INCH / 4,
)
STICK = Stick("B1", left=LEFT, along=Corner.TOP_NEAR, web_off=INCH, camber=-INCH, sweep=INCH * 2)


def test_a_corner_knows_its_edge_and_its_side() -> None:
    assert [corner for corner in Corner if corner.is_top] == [Corner.TOP_NEAR, Corner.TOP_FAR]
    assert [corner for corner in Corner if corner.is_near] == [Corner.TOP_NEAR, Corner.BOTTOM_NEAR]
    assert Corner.of(top=False, near=False) is Corner.BOTTOM_FAR
    assert LEFT.corner(Corner.BOTTOM_NEAR) == INCH * 3


def test_rolled_half_over_the_top_near_corner_becomes_the_bottom_far_one() -> None:
    rolled = STICK.turned(upside_down=True)
    assert rolled.left.corners == (INCH * 4, INCH * 3, INCH * 2, INCH)
    assert rolled.along is Corner.BOTTOM_FAR
    assert (rolled.camber, rolled.web_off, rolled.sweep) == (INCH, -INCH, -INCH * 2)
    assert (rolled.left.top_width, rolled.left.bottom_width) == (INCH * 7, INCH * 6)
    assert rolled.left.web_gap == SquareGap(INCH, INCH * 12, Edge.BOTTOM)
    assert rolled.left.flange_gap == SquareGap(INCH, INCH * 6, Edge.FAR)
    assert (rolled.left.top_tilt, rolled.left.bottom_tilt) == (INCH / 4, INCH / 8)


def test_end_for_end_and_upside_down_keeps_the_near_side_near() -> None:
    turned = STICK.turned(upside_down=True, end_for_end=True)
    assert turned.right.corners == (INCH * 3, INCH * 4, INCH, INCH * 2)
    assert turned.left == EndReadings()
    assert (turned.camber, turned.web_off, turned.sweep) == (INCH, INCH, INCH * 2)
    assert turned.right.top_tilt == -INCH / 4
    assert turned.right.flange_gap == LEFT.flange_gap


@pytest.mark.parametrize("upside_down", [False, True])
@pytest.mark.parametrize("end_for_end", [False, True])
def test_turned_twice_the_same_way_it_lies_as_before(upside_down: bool, end_for_end: bool) -> None:
    once = STICK.turned(upside_down=upside_down, end_for_end=end_for_end)
    assert once.turned(upside_down=upside_down, end_for_end=end_for_end) == STICK


def test_readings_are_found_by_end_and_nothing_read_is_known() -> None:
    assert STICK.at(End.LEFT) is LEFT
    assert not STICK.at(End.RIGHT).square_read
    assert LEFT.square_read
    assert EndReadings(flange_gap=LEFT.flange_gap).square_read
