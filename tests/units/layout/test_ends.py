"""Plane of an end against closed forms; the corner that reaches furthest, all four in turn."""

from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.job import Corner, Edge, EndReadings, SquareGap
from gageline.layout.ends import fit_end
from jobs import inches
from sticks import corners

DEEP, WIDE = inches("16"), inches("6")


@pytest.mark.parametrize("number", range(4))
def test_each_corner_in_turn_is_the_one_that_reaches_furthest(number: int) -> None:
    read = ["-1/4"] * 4
    read[number] = "1/8"
    plane = fit_end(corners(*read), DEEP, WIDE)
    assert plane.high is tuple(Corner)[number]
    assert plane.back(plane.high) == inches("0")
    assert plane.out_of_square == inches("3/8")
    assert plane.place == f"{plane.high} corner"
    # One corner 3/8 out of the plane of the three others: a quarter of it for each.
    assert plane.warp == inches("3/32")


def test_the_plane_of_four_corners_is_that_of_least_squares() -> None:
    # By hand: top mean 3/16, bottom mean 0; near mean 5/16, far mean -1/8; warp (1/2 + 1/8 - 1/8 - 1/8)/4.
    plane = fit_end(corners("1/2", "-1/8", "1/8", "-1/8"), DEEP, WIDE)
    assert plane.web_lean == inches("3/16")
    assert plane.flange_lean == inches("7/16")
    assert plane.warp == inches("3/32")


def test_three_corners_give_the_fourth() -> None:
    plane = fit_end(corners("1/4", "1/8", "0", None), DEEP, WIDE)
    assert plane.retreats == (inches("0"), inches("1/8"), inches("1/4"), inches("3/8"))
    assert (plane.web_lean, plane.flange_lean) == (inches("1/4"), inches("1/8"))


def test_two_corners_on_one_edge_leave_the_other_way_square() -> None:
    assert fit_end(corners("1/4", None, "0", None), DEEP, WIDE).place == "top edge"
    assert fit_end(corners(None, None, "0", "1/4"), DEEP, WIDE).place == "far side"
    assert fit_end(corners(None, "0", None, "1/4"), DEEP, WIDE).place == "bottom edge"
    assert fit_end(corners("0", "-1/4", None, None), DEEP, WIDE).place == "near side"


def test_one_corner_alone_is_a_square_end() -> None:
    plane = fit_end(corners("1/4", None, None, None), DEEP, WIDE)
    assert (plane.place, plane.out_of_square, plane.assumed) == ("square", inches("0"), False)


def test_two_corners_across_from_each_other_are_refused() -> None:
    with pytest.raises(ValueProblem, match=r"top near and bottom far lie across .* read a third"):
        fit_end(corners("1/4", None, None, "0"), DEEP, WIDE)


def test_a_square_is_carried_from_its_blade_to_the_whole_depth() -> None:
    # 1/8 at the tip of a 12 in blade is 1/6 over 16 in.
    read = EndReadings(web_gap=SquareGap(inches("1/8"), inches("12"), Edge.BOTTOM))
    plane = fit_end(read, DEEP, WIDE)
    assert plane.web_lean.inches == pytest.approx(-1 / 6, abs=1e-5)
    assert plane.place == "bottom edge"
    both = EndReadings(
        web_gap=SquareGap(inches("1/8"), inches("16"), Edge.TOP),
        flange_gap=SquareGap(inches("1/16"), inches("6"), Edge.FAR),
    )
    plane = fit_end(both, DEEP, WIDE)
    assert plane.high is Corner.TOP_FAR
    assert plane.out_of_square == inches("3/16")


def test_nothing_read_is_square_and_marked_so() -> None:
    plane = fit_end(EndReadings(), DEEP, WIDE)
    assert (plane.place, plane.assumed, plane.warp) == ("square", True, inches("0"))


def test_between_its_corners_an_end_stands_back_in_proportion() -> None:
    plane = fit_end(corners("-1/4", "-1/4", "0", "0"), DEEP, WIDE)
    assert plane.back_at(Fraction(1), Fraction(1, 2)) == inches("1/4")
    assert plane.back_at(Fraction(1, 4), Fraction(0)) == inches("1/16")


def test_a_square_stands_open_along_the_worst_edge_and_not_from_corner_to_corner() -> None:
    """1/8 across the depth and 1/16 across the flange are 3/16 from corner to corner."""
    plane = fit_end(corners("0", "-1/16", "-1/8", "-3/16"), inches("12"), inches("6"))
    assert (plane.square_gap, plane.out_of_square) == (inches("1/8"), inches("3/16"))
