"""Blanks of jobs: quantities, ends as the saw cuts them, marks unique over jobs."""

from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.job import Job, read_job
from gageline.stock import SQUARE_END, Blank, End, blanks_of
from gageline.units import parse_length
from jobs import inches, job_of

BEAM = 'mark = "B1"\nquantity = 3\nstock = "W16x26"\nlength = "10\'-0"\n'
ANGLES = '[[piece.angles]]\nend = "both"\nstock = "L4x3-1/2x5/16"\nrows = 3\n'


def numbered(number: str) -> Job:
    return read_job(f'[job]\nname = "test"\nnumber = "{number}"\n[[piece]]\n{BEAM}')


def blank_of(lines: str) -> Blank:
    (blank,) = blanks_of([job_of(f'mark = "B1"\nlength = "10\'-0"\n{lines}')])
    return blank


def test_fittings_are_counted_over_all_pieces() -> None:
    second = BEAM.replace("B1", "B2").replace("3\n", "2\n", 1) + ANGLES
    found = {blank.mark: blank.quantity for blank in blanks_of([job_of(BEAM + ANGLES, second)])}
    beams = {"B1": 3, "B2": 2}
    assert {mark: n for mark, n in found.items() if mark in beams} == beams
    # four angles on each of five beams, whatever marks they share
    assert sum(n for mark, n in found.items() if mark not in beams) == 20


def test_a_bevel_runs_across_the_depth() -> None:
    blank = blank_of('stock = "W12x26"\nright = { bevel = "3 in 12", long = "top" }')
    # W12x26 is 12.2 in deep (AISC Manual, Table 1-1): 3 in 12 over that is 3.05 in
    assert blank.left == SQUARE_END
    assert blank.right.across.inches == pytest.approx(12.2, abs=0.01)
    assert blank.right.run.inches == pytest.approx(3.05, abs=0.01)
    assert (blank.right.plane, blank.right.long_side) == ("web", "high")


def test_a_mitre_runs_across_the_flange() -> None:
    blank = blank_of('stock = "HSS6x6x3/8"\nleft = { mitre = "45°", long_side = "far" }')
    assert blank.left == End(inches("6"), inches("6"), "flange", "low")


def test_an_end_angled_both_ways_is_sawn_square() -> None:
    both = '{ bevel = "3 in 12", long = "top", mitre = "10°", long_side = "near" }'
    blank = blank_of(f'stock = "W12x26"\nright = {both}')
    assert blank.by_hand
    assert blank.right == SQUARE_END
    assert blank.length == parse_length("10'-0")


@pytest.mark.parametrize(("stock", "turnable"), [("W12x26", True), ("C12x20.7", False), ("L3x3x3/8", False)])
def test_which_shapes_may_be_turned(stock: str, *, turnable: bool) -> None:
    assert blank_of(f'stock = "{stock}"').turnable is turnable


def test_marks_of_several_jobs_are_kept_apart() -> None:
    assert [blank.mark for blank in blanks_of([numbered("2604"), numbered("2605")])] == ["2604 B1", "2605 B1"]
    assert [blank.mark for blank in blanks_of([numbered("7"), numbered("7")])] == ["1 B1", "2 B1"]
    assert [blank.mark for blank in blanks_of([numbered("7")])] == ["B1"]


def test_no_piece_to_cut() -> None:
    with pytest.raises(ValueProblem, match="there is no piece to cut: give a job that has pieces"):
        blanks_of([])
