"""Plates from sheets: every plan is verified by the checker; perfect packings are known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from gageline.errors import ValueProblem
from gageline.stock import Effort, Progress, Steel
from gageline.stock.check_plates import check_plates
from gageline.stock.plates import Burner, Laid, Plate, PlatePlan, Sheet, plan_plates
from gageline.units import ZERO, Length
from plates import cut_apart

PLATE = Steel("PL1/2", "A36")
SHEET = Sheet(PLATE, Length.from_inches(120), Length.from_inches(60), 50000)
SHEAR = Burner(ZERO, shear=True)
PLASMA = Burner(Length.from_inches(0.125), trim=Length.from_inches(0.5))


def inches(value: float) -> Length:
    return Length.from_inches(value)


def checked(
    plates: Sequence[Plate], sheets: Sequence[Sheet], burner: Burner, seconds: float = 5.0
) -> PlatePlan:
    plan = plan_plates(plates, sheets, burner, Effort(seconds))
    assert check_plates(plan, plates, sheets, burner) == []
    return plan


def apart(seed: int, count: int) -> list[Plate]:
    """A sheet of 120 x 60 in cut apart: a perfect packing is known."""
    boxes = cut_apart(seed, count)
    return [Plate(f"P{k}", PLATE, inches(box.along), inches(box.across)) for k, box in enumerate(boxes)]


@pytest.mark.parametrize("shear", [True, False])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_known_perfect_packings(seed: int, *, shear: bool) -> None:
    plan = checked(apart(seed, 12), [SHEET], Burner(ZERO, shear=shear))
    assert plan.proven
    assert plan.cents == SHEET.cents
    assert plan.yield_ == 1.0


def test_many_sheets_cut_apart() -> None:
    plates = [replace(p, mark=f"{p.mark}-{seed}") for seed in range(6) for p in apart(seed, 8)]
    plan = checked(plates, [SHEET], SHEAR, 20.0)
    assert plan.bound == 6 * SHEET.cents
    assert len(plan.sheets) <= 7
    # all sheets but the last are nearly full: what is left is left in one place
    assert sum(p.along.ticks * p.across.ticks for s in plan.sheets[:6] for p in s.pieces) > 0.95 * 6 * (
        SHEET.length.ticks * SHEET.width.ticks
    )


def test_kerf_and_trim_are_kept() -> None:
    # two of 59.4 in and the kerf fit between the trims of 120 in; of 59.5 in only one does
    assert len(checked([Plate("P1", PLATE, inches(59.4), inches(59), 2)], [SHEET], PLASMA).sheets) == 1
    assert len(checked([Plate("P1", PLATE, inches(59.5), inches(59), 2)], [SHEET], PLASMA).sheets) == 2


def test_grain_forbids_turning() -> None:
    tall = Plate("P1", PLATE, inches(50), inches(115))
    assert len(checked([tall], [SHEET], SHEAR).sheets) == 1
    with pytest.raises(
        ValueProblem, match=r'plate "P1", 4\'-2" x 9\'-7", fits no sheet: order a larger sheet'
    ):
        plan_plates([replace(tall, grain=True)], [SHEET], SHEAR)


def test_large_pieces_need_a_sheet_each() -> None:
    plan = checked([Plate("P1", PLATE, inches(70), inches(40), 3)], [SHEET], SHEAR)
    assert plan.bound == 3 * SHEET.cents
    assert plan.proven


def test_the_last_sheet_is_as_cheap_as_can_be() -> None:
    small = replace(SHEET, length=inches(60), cents=27000)
    plan = checked([Plate("P1", PLATE, inches(60), inches(60), 3)], [SHEET, small], SHEAR)
    assert plan.cents == 77000
    assert plan.proven


def test_the_order_counts_sheets_by_size() -> None:
    small = replace(SHEET, length=inches(60), cents=27000)
    plan = checked([Plate("P1", PLATE, inches(60), inches(60), 5)], [small, SHEET], SHEAR)
    assert plan.order() == ((SHEET, 2), (small, 1))


def test_a_pinwheel_needs_free_cuts() -> None:
    # four 6 x 4 around a 2 x 2 fill 10 x 10, but no cut goes from edge to edge
    square = Sheet(PLATE, inches(10), inches(10), 100)
    plates = [Plate("P1", PLATE, inches(6), inches(4), 4), Plate("P2", PLATE, inches(2), inches(2))]
    at = [("P1", 0, 0, 6, 4), ("P1", 6, 0, 4, 6), ("P1", 4, 6, 6, 4), ("P1", 0, 4, 4, 6), ("P2", 4, 4, 2, 2)]
    pieces = tuple(Laid(m, *(inches(n) for n in numbers)) for m, *numbers in at)
    sample = checked(plates, [square], Burner(ZERO))
    pinwheel = replace(sample, sheets=(replace(sample.sheets[0], pieces=pieces),), bound=100)
    assert check_plates(pinwheel, plates, [square], Burner(ZERO)) == []
    assert check_plates(pinwheel, plates, [square], SHEAR) == [
        "sheet 1: the pieces cannot be cut from edge to edge"
    ]


def test_the_checker_finds_faults() -> None:
    plates = [Plate("P1", PLATE, inches(40), inches(30), 2)]
    plan = checked(plates, [SHEET], PLASMA)
    one, other = plan.sheets[0].pieces
    moved = replace(plan, sheets=(replace(plan.sheets[0], pieces=(one, replace(other, x=one.x, y=one.y))),))
    assert check_plates(moved, plates, [SHEET], PLASMA) == ["sheet 1: P1 and P1 are closer than a kerf"]
    off = replace(plan, sheets=(replace(plan.sheets[0], pieces=(one, replace(other, x=inches(100)))),))
    assert "sheet 1: P1 lies beyond the edge" in check_plates(off, plates, [SHEET], PLASMA)
    assert check_plates(plan, [replace(plates[0], quantity=3)], [SHEET], PLASMA) == ["P1: 2 cut, 3 wanted"]


def test_too_few_sheets() -> None:
    with pytest.raises(
        ValueProblem, match="PL1/2 A36: the sheets there are do not hold all 2 plates: raise a limit"
    ):
        plan_plates([Plate("P1", PLATE, inches(120), inches(60), 2)], [replace(SHEET, limit=1)], SHEAR)


def test_one_mark_on_two_plates_is_refused() -> None:
    plates = [Plate("P1", PLATE, inches(40), inches(30)), Plate("P1", PLATE, inches(20), inches(30))]
    with pytest.raises(
        ValueProblem,
        match='PL1/2 A36: plate "P1" stands there 2 times: add up the quantities, or give each its own mark',
    ):
        plan_plates(plates, [SHEET], SHEAR)


def test_no_plate_wanted_is_refused() -> None:
    with pytest.raises(ValueProblem, match="PL1/2 A36: no plate is wanted: give a quantity"):
        plan_plates([Plate("P1", PLATE, inches(40), inches(30), 0)], [SHEET], SHEAR)


def test_two_lots_of_equal_sheets_are_there_together() -> None:
    lot = replace(SHEET, limit=1)
    plan = checked([Plate("P1", PLATE, inches(120), inches(60), 2)], [lot, lot], SHEAR)
    assert len(plan.sheets) == 2
    assert check_plates(plan, [Plate("P1", PLATE, inches(120), inches(60), 2)], [lot], SHEAR) == [
        f"2 sheets of {lot.length.ticks} x {lot.width.ticks} ticks are not there"
    ]


def test_the_order_of_input_does_not_matter() -> None:
    plates = apart(4, 8)
    other = replace(SHEET, length=inches(90), cents=40000)
    one, again = checked(plates, [SHEET, other], SHEAR), checked(plates[::-1], [other, SHEET], SHEAR)
    assert one.sheets == again.sheets


def test_progress_is_told_by_steel_and_a_stop_keeps_the_best_plan() -> None:
    plates = [replace(p, mark=f"{p.mark}-{seed}") for seed in range(6) for p in apart(seed, 8)]
    told: list[tuple[Steel, Progress]] = []
    effort = Effort(60.0, lambda: bool(told), lambda steel, progress: told.append((steel, progress)))
    plan = plan_plates(plates, [SHEET], SHEAR, effort)
    assert check_plates(plan, plates, [SHEET], SHEAR) == []
    assert [(steel, p.stage, p.bound) for steel, p in told] == [(PLATE, "sheets", 6 * SHEET.cents)]


def test_all_faults_come_at_once() -> None:
    plates = [Plate("P1", PLATE, inches(200), inches(20)), Plate("P2", PLATE, ZERO, inches(20))]
    with pytest.raises(
        ValueProblem, match=r'(?s)price 0 cents.*"P1".*fits no sheet.*"P2".*sizes must be above'
    ):
        plan_plates(plates, [replace(SHEET, cents=0)], SHEAR)
