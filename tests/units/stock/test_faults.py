"""Bad input is refused in one go, in words that say what to do."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from gageline.errors import ValueProblem
from gageline.stock import End, Held, Offer, Piece, Saw, Steel, plan_cuts
from gageline.stock.faults import find_faults
from gageline.units import ZERO, Length

BEAM = Steel("W12X26", "A992")
SAW = Saw(Length.from_inches(0.125))
LONG = Offer(BEAM, Length.from_inches(480), 30000)


def inches(value: float) -> Length:
    return Length.from_inches(value)


PIECE = Piece("B1", BEAM, inches(100))


def test_a_piece_longer_than_any_stick() -> None:
    (fault,) = find_faults([replace(PIECE, length=inches(500))], [LONG], SAW)
    assert fault == (
        'W12X26 A992: piece "B1", 41\'-8", is longer than any stick: the longest gives 40\'-0" after trims '
        "and grip: order a longer stick, or splice the piece if the engineer allows"
    )


def test_no_stick_of_the_steel() -> None:
    pieces = [PIECE, replace(PIECE, mark="B2")]
    (fault,) = find_faults(pieces, [replace(LONG, steel=Steel("W8X10"))], SAW)
    assert fault == (
        'W12X26 A992: there is no stick of this steel for "B1", "B2": order some, or add what is on the rack'
    )


def test_lengths_between_two_divisions_are_said_as_a_tape_reads() -> None:
    (fault,) = find_faults([replace(PIECE, length=Length.from_mm(12701.3))], [LONG], SAW)
    assert fault.startswith('W12X26 A992: piece "B1", 41\'-8 3/64", is longer than any stick')


def test_negative_stock_and_price() -> None:
    faults = find_faults([], [replace(LONG, limit=-2, cents=-5)], SAW)
    assert "a price of -5 cents is negative" in faults[0]
    assert "a stock of -2 is negative: give zero or more" in faults[1]


def test_negative_kerf() -> None:
    (fault,) = find_faults([], [], replace(SAW, kerf=inches(-0.125)))
    assert fault == 'saw: kerf -1/8" is negative: give zero or more'


def test_grip_longer_than_the_stick() -> None:
    (fault,) = find_faults([], [LONG], replace(SAW, grip=inches(480)))
    assert "the grip 40'-0\" is as long as the stick: take the stick off the list" in fault


def test_trims_leave_nothing() -> None:
    (fault,) = find_faults([], [LONG], replace(SAW, start_trim=inches(240), end_trim=inches(240)))
    assert "trims and grip leave nothing of it" in fault


def test_contradictory_heats() -> None:
    pieces = [
        replace(PIECE, heat="H1", one_heat="frame"),
        replace(PIECE, mark="B2", heat="H2", one_heat="frame"),
    ]
    (fault,) = find_faults(pieces, [replace(LONG, heat="H1"), replace(LONG, heat="H2")], SAW)
    assert fault == (
        'pieces of group "frame" must come from one heat, but "B1" asks for heat H1 and "B2" asks for heat H2'
        ": ask for one heat"
    )


def test_one_heat_over_two_steels() -> None:
    pieces = [
        replace(PIECE, one_heat="frame"),
        replace(PIECE, mark="B2", steel=Steel("W8X10"), one_heat="frame"),
    ]
    stocks = [replace(LONG, heat="H1"), replace(LONG, heat="H1", steel=Steel("W8X10"))]
    (fault,) = find_faults(pieces, stocks, SAW)
    assert "are of different steels (W12X26 A992, W8X10): give each steel its own group" in fault


@pytest.mark.parametrize(
    ("piece", "wish"),
    [
        (replace(PIECE, heat="H9"), "heat H9"),
        (replace(PIECE, one_heat="frame"), "one known heat"),
        (replace(PIECE, certificate=True), "a certificate"),
        (replace(PIECE, needed=date(2026, 1, 1)), "arrival by 2026-01-01"),
    ],
)
def test_no_stick_grants_the_wish(piece: Piece, wish: str) -> None:
    (fault,) = find_faults([piece], [replace(LONG, arrives=date(2026, 2, 1))], SAW)
    assert f"no stick long enough has {wish}: order one that has" in fault


def test_pieces_that_cannot_be() -> None:
    faults = find_faults(
        [
            replace(PIECE, quantity=-1),
            replace(PIECE, length=ZERO),
            replace(PIECE, mark="B3", left=End(inches(3))),
            replace(PIECE, mark="B4", left=End(inches(100), inches(12))),
            replace(PIECE, mark="B5", right=End(inches(-1), inches(12))),
        ],
        [LONG],
        SAW,
    )
    said = "\n".join(faults)
    assert "a quantity of -1 is negative" in said
    assert "the mark stands twice" in said
    assert 'length 0" must be more than zero' in said
    assert "the angled left end needs the depth or width that it crosses" in said
    assert "run 8'-4\" of the left end is as long as the piece" in said
    assert 'run -1" of the right end is negative' in said


def test_drops_and_setups_that_cannot_be() -> None:
    faults = find_faults(
        [], [], replace(SAW, drop_percent=120, grip=inches(6), keep=inches(6), most_setups=0)
    )
    assert "a drop credited at 120 percent" in faults[0]
    assert 'shortest drop kept 6" is not longer than end trim and grip 6"' in faults[1]
    assert "at most 0 set-ups: give 1 or more" in faults[2]


def test_marks_on_the_rack_and_missing_price() -> None:
    rack = [Held("R1", BEAM, inches(100)), Held("R1", BEAM, inches(120)), Held("R2", BEAM, ZERO)]
    said = "\n".join(find_faults([], [*rack, replace(LONG, cents=0)], SAW))
    assert "the mark stands on two sticks" in said
    assert "the length must be more than zero" in said
    assert "a stick to buy has no price" in said


def test_all_faults_come_at_once() -> None:
    pieces = [replace(PIECE, length=inches(500)), replace(PIECE, mark="B2", steel=Steel("W8X10"))]
    with pytest.raises(ValueProblem, match=r"(?s)longer than any stick.*\n.*no stick of this steel"):
        plan_cuts(pieces, [LONG], SAW)
