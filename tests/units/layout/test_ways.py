"""Where a piece comes to lie on a stick, each figure worked by hand."""

from dataclasses import replace

import pytest

from gageline.job import Corner, Stick
from gageline.layout.ways import Choice, Way, place, stick_length
from gageline.part import End, EndCut
from gageline.units import parse_slope
from jobs import inches, piece_of
from sticks import ANGLES, corners, example_piece, example_stick

TAPE = inches("1/16")
PIECE = example_piece()
STICK = example_stick()


def test_as_it_is_the_left_end_touches_and_all_shortness_is_at_the_right() -> None:
    placed = place(PIECE, STICK, Way(Choice.AS_IS), TAPE)
    assert placed.shift == inches("0")
    assert placed.left.short == (inches("1/4"), inches("1/4"), inches("0"), inches("0"))
    assert placed.right.short == (inches("3/8"),) * 4
    assert (placed.left.gap_least, placed.left.gap_most) == (inches("1/2"), inches("3/4"))
    assert (placed.right.gap_least, placed.right.gap_most) == (inches("7/8"), inches("7/8"))


def test_held_at_the_left_end_it_lies_as_it_is() -> None:
    held = place(PIECE, STICK, Way(Choice.HOLD, End.LEFT), TAPE)
    as_is = place(PIECE, STICK, Way(Choice.AS_IS), TAPE)
    assert (held.left, held.right, held.shift) == (as_is.left, as_is.right, as_is.shift)


def test_held_at_the_right_end_all_shortness_is_at_the_left() -> None:
    placed = place(PIECE, STICK, Way(Choice.HOLD, End.RIGHT), TAPE)
    assert placed.shift == -inches("3/8")
    assert placed.right.short == (inches("0"),) * 4
    assert (placed.left.least, placed.left.most) == (inches("3/8"), inches("5/8"))


def test_split_half_of_it_is_at_each_end() -> None:
    placed = place(PIECE, STICK, Way(Choice.SPLIT), TAPE)
    assert placed.shift == -inches("3/16")
    assert (placed.left.least, placed.left.most) == (inches("3/16"), inches("7/16"))
    assert placed.right.short == (inches("3/16"),) * 4


def test_trimmed_the_left_end_loses_what_is_open_and_what_the_saw_takes() -> None:
    """1/4 open and 1/4 for the saw; of 18'-8 then 1/4 is left to cut at the right."""
    placed = place(PIECE, example_stick("18'-8"), Way(Choice.TRIM), TAPE)
    assert (placed.left.trim, placed.right.trim, placed.spare) == (
        inches("1/2"),
        inches("1/4"),
        inches("1/4"),
    )
    assert placed.possible
    assert placed.origin == inches("1/2")
    assert placed.left.short == placed.right.short == (inches("0"),) * 4
    short = place(PIECE, STICK, Way(Choice.TRIM), TAPE)
    assert (short.spare, short.possible) == (-inches("7/8"), False)


def test_an_end_open_by_one_division_of_the_tape_is_square() -> None:
    stick = replace(STICK, left=corners("-1/16", "-1/16", "0", "0"), length=inches("18'-7 1/4"))
    assert place(PIECE, stick, Way(Choice.TRIM), TAPE).possible
    over = replace(stick, left=corners("-5/64", "-5/64", "0", "0"))
    assert not place(PIECE, over, Way(Choice.TRIM), TAPE).possible


def test_steel_that_runs_past_meets_the_support() -> None:
    """The angles stand 1/2 out: 9/16 long is 1/16 too much, 7/16 goes in."""
    touching = place(PIECE, Stick("B1", length=inches("18'-7 13/16")), Way(Choice.AS_IS), TAPE)
    assert touching.right.gap_least == -inches("1/16")
    assert (touching.right.touches, touching.left.touches, touching.possible) == (True, False, False)
    assert not place(PIECE, Stick("B1", length=inches("18'-7 11/16")), Way(Choice.AS_IS), TAPE).right.touches


def test_end_distances_lose_what_the_steel_is_short_at_their_row() -> None:
    """Rows 3, 6 and 9 down of 15.7: the top one loses 1/4 x 12.7/15.7 = 0.2022 of its 1 1/2 in."""
    placed = place(PIECE, STICK, Way(Choice.AS_IS), TAPE)
    left, right = placed.edgings
    assert (left.drawn, right.drawn) == (inches("1 1/2"), inches("1 1/2"))
    assert left.lost.inches == pytest.approx(0.25 * 12.7 / 15.7, abs=1e-5)
    assert left.left_over.inches == pytest.approx(1.5 - 0.25 * 12.7 / 15.7, abs=1e-5)
    assert (right.lost, right.left_over) == (inches("3/8"), inches("1 1/8"))
    # AISC 360 Table J3.4: 1 in for a 3/4 bolt.
    assert left.limit == inches("1")
    assert not right.refused
    assert (placed.possible, placed.within_design, placed.worst) == (True, False, inches("3/8"))


def test_a_hole_nearer_than_the_standard_allows_is_refused() -> None:
    """Short by 9/16 leaves 15/16 at the right: less than 1 in."""
    placed = place(PIECE, example_stick("18'-6 11/16"), Way(Choice.AS_IS), TAPE)
    assert placed.edgings[1].left_over == inches("15/16")
    assert (placed.edgings[1].refused, placed.possible) == (True, False)


def test_a_hole_without_a_bolt_must_stay_on_the_steel() -> None:
    vent = piece_of('[[piece.holes]]\nface = "near"\nx = "1/8"\ndown = "6"\ndiameter = "1/16"\n')
    for length, possible in (("9'-11 7/8", True), ("9'-11 55/64", False)):
        placed = place(vent, Stick("B1", length=inches(length)), Way(Choice.HOLD, End.RIGHT), TAPE)
        assert placed.possible is possible


def test_a_coped_corner_counts_where_the_cope_leaves_the_end() -> None:
    """1 1/2 coped off 15.7: the top of what is left stands back 1/4 x 14.2/15.7."""
    coped = example_piece(
        'copes = [{ end = "left", flange = "top", length = "4", depth = "1 1/2" }]' + ANGLES
    )
    placed = place(coped, STICK, Way(Choice.AS_IS), TAPE)
    assert placed.left.most.inches == pytest.approx(0.25 * 14.2 / 15.7, abs=1e-5)


def test_a_bevelled_end_is_cut_anyway_and_runs_nowhere_past() -> None:
    piece = example_piece()
    bevelled = replace(piece, main=replace(piece.main, right=EndCut(parse_slope("3 in 12"))))
    placed = place(bevelled, Stick("B1", length=inches("18'-8")), Way(Choice.AS_IS), TAPE)
    assert placed.right.short == (inches("0"),) * 4
    assert not placed.right.as_came


def test_welded_fittings_lose_the_steel_behind_them() -> None:
    welded = example_piece(ANGLES + 'to_web = "welded"\n')
    placed = place(welded, STICK, Way(Choice.AS_IS), TAPE)
    assert not placed.edgings
    assert (placed.worst, placed.within_design) == (inches("3/8"), False)


def test_a_bare_piece_has_no_gap_and_no_loss() -> None:
    placed = place(piece_of(), Stick("B1"), Way(Choice.SPLIT), TAPE)
    assert (placed.left.gap_least, placed.left.gap_most, placed.within_design) == (None, None, True)


def test_a_length_read_along_one_edge_is_carried_to_the_furthest_points() -> None:
    """Along the top edge the left end stands back 1/4: overall is 1/4 more."""
    stick = replace(STICK, along=Corner.TOP_FAR)
    assert stick_length(stick, PIECE.main) == inches("18'-7 1/8")
    assert stick_length(Stick("B1"), PIECE.main) == inches("18'-7 1/4")


def test_ways_have_names() -> None:
    assert Way(Choice.HOLD, End.RIGHT).words == "hold the right end"
    assert Way(Choice.SPLIT).words == "split the difference"
