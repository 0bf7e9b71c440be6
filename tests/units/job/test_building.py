from __future__ import annotations

import pytest

from gageline.job import JobProblems
from gageline.steel import Measure
from jobs import inches, job_of, piece_of

HAND = 'mark = "B2"\nas_hand_of = "B1"\nquantity = 3\n'
BEAM = 'mark = "B1"\nstock = "W16x26"\nlength = 120\nfinish = "primer"\n'


def test_a_piece_has_the_usual_grade_and_the_finish_of_the_shop() -> None:
    piece = piece_of(practice='finish = "galvanized"')
    assert (piece.main.grade, piece.finish, piece.quantity) == ("A992", "galvanized", 1)
    assert piece_of('grade = "A36"\nfinish = "bare"\nquantity = 7\n').main.grade == "A36"


def test_the_opposite_hand_has_its_own_quantity_and_finish() -> None:
    job = job_of(BEAM, HAND, HAND.replace("B2", "B3") + 'finish = "bare"\n')
    assert [(piece.mark, piece.quantity, piece.finish, piece.hand_of) for piece in job.assemblies] == [
        ("B1", 1, "primer", None),
        ("B2", 3, "primer", "B1"),
        ("B3", 3, "bare", "B1"),
    ]


def test_a_hand_may_stand_before_its_piece_and_the_order_is_kept() -> None:
    assert [piece.mark for piece in job_of(HAND, BEAM).assemblies] == ["B2", "B1"]


def test_the_hand_of_a_piece_with_problems_is_not_blamed_for_them() -> None:
    with pytest.raises(JobProblems) as refused:
        job_of(BEAM.replace("W16x26", "W16x27"), HAND)
    assert len(refused.value.problems) == 1


def test_practice_of_the_shop_fills_in_what_the_drawing_leaves_out() -> None:
    lines = '[[piece.angles]]\nend = "left"\nstock = "L4x3-1/2x5/16"\nrows = 2\n'
    practice = 'drop = 4\npitch = 4\nend_distance = "1 1/2"\nprojection = "3/4"\nbolt = "7/8"\nhole = "OVS"'
    piece = piece_of(lines, practice=practice)
    assert piece.fittings[0].part.length == inches("7")
    assert piece.main.groups[0].bolt == "7/8"
    assert piece.main.groups[0].kind == "OVS"
    assert min(point[0] for point in [piece.fittings[0].placement.origin]) == inches("-3/4")


def test_european_stock_is_found_in_a_job_in_feet_and_plates_in_its_own_units() -> None:
    assert piece_of(stock="IPE 300").main.stock.designation == "IPE 300"
    plate = piece_of(stock="PL12x200", length="900", units="mm").main.stock
    assert (plate.designation, plate.system) == ("PL 12x200", Measure.EU)


def test_a_group_is_not_called_as_the_holes_of_a_fitting_are() -> None:
    lines = 'holes = [{ name = "left end, for the angles" }]\n[[piece.angles]]\nend = "left"\n'
    with pytest.raises(JobProblems, match="is what a fitting's holes are called: rename it"):
        piece_of(lines + 'stock = "L4x3-1/2x5/16"\nrows = 2\n')
