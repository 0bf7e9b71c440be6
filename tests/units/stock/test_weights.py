import pytest

from gageline.stock import Effort, Weights, answer, ask, read_rack, weigh_plan, weigh_plates, weigh_section
from jobs import job_of

RACK = """
[saw]
kerf = 0
[[buy]]
stock = "HSS6x6x3/8"
lengths = "20'"
each = 400
[[sheet]]
thickness = "1/2"
grade = "A572-50"
length = 48
width = 48
each = 90
"""
POST = 'mark = "D2"\nquantity = 5\nstock = "HSS6x6x3/8"\nlength = 49\n'
BEVELS = 'left = { bevel = "30°", long = "top" }\nright = { bevel = "30°", long = "top" }\n'
PLATE = 'mark = "P1"\nstock = "PL1/2x12"\nlength = 24\n'


def test_sums() -> None:
    assert Weights(10, 6, 3) + Weights(1, 1, 0) == Weights(11, 7, 3)
    assert Weights(10, 6, 3).scrap == 1


def test_plates_by_hand() -> None:
    plan = answer(ask([job_of(PLATE)], read_rack(RACK)), Effort(2.0))
    (asked,), (plates,) = plan.question.plates, plan.plates
    # 1/2 in of steel weighs 20.4 lb/ft2 (AISC Manual, Table 1-20 gives 20.4, from memory)
    weights = weigh_plates(plates, asked.thickness)
    assert weights.taken == pytest.approx(16 * 20.4, rel=2e-3)
    assert weights.pieces == pytest.approx(2 * 20.4, rel=2e-3)
    assert weigh_plan(plan) == weights


def test_nested_angled_ends_count_once() -> None:
    plan = answer(ask([job_of(POST + BEVELS)], read_rack(RACK)), Effort(2.0))
    (section,) = plan.cuts.sections
    weights = weigh_section(section, plan.question.blanks)
    assert len(section.sticks) == 1  # 5 x 49 in are more than the stick; nested they go in
    assert weights.pieces <= weights.taken
    assert section.yield_ <= 1
