from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.job.joining import field_bolts, grade_of, plate_stock, rows_down, web_face
from gageline.part import BoltSet, Face, Side
from gageline.units import Length, System
from jobs import inches


def test_rows_run_down_from_the_first() -> None:
    assert rows_down(inches("1 1/4"), 3, inches("3")) == (inches("1 1/4"), inches("4 1/4"), inches("7 1/4"))
    assert rows_down(inches("1"), 0, inches("3")) == ()


def test_field_bolts_are_none_without_a_size_or_a_hole() -> None:
    assert field_bolts(("p",), "3/4", 3) == (BoltSet(("p",), "3/4", 3, None, field=True),)
    assert field_bolts(("p",), "", 3) == ()
    assert field_bolts(("p",), "3/4", 0) == ()


def test_plates_are_named_in_the_units_of_the_job() -> None:
    assert plate_stock(inches("3/8"), inches("4"), System.FT_IN).designation == "PL3/8X4"
    plate = plate_stock(Length.from_mm(10), Length.from_mm(120), System.MM)
    assert plate.designation == "PL 10x120"
    assert grade_of(plate, "S355") == "S355"
    assert grade_of(plate_stock(inches("3/8"), inches("4"), System.FT_IN), None) == "A572-50"
    with pytest.raises(ValueProblem, match="thickness"):
        plate_stock(inches("4"), inches("3/8"), System.FT_IN)


def test_faces_of_a_web() -> None:
    assert [web_face(side) for side in Side] == [Face.NEAR, Face.FAR]
