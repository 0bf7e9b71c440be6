"""The picture of a stick, checked against places worked out by hand."""

from __future__ import annotations

import pytest

from gageline.sheets import Polygon, leaves, texts
from gageline.sheets.notation import Scribe
from gageline.sheets.stick_picture import lying, runs_of, scale_of, stick_picture
from gageline.stock import End, Offer, Piece, Saw, Steel, StickPlan, plan_cuts
from gageline.units import Length, System
from jobs import inches

STEEL = Steel("HSS6X6X3/8", "A500-C")
SLANT = End(inches("6"), inches("6"), "web", "high")
SCRIBE = Scribe(System.FT_IN, inches("1/16"))


def cut(*pieces: Piece, keep: str = "24") -> StickPlan:
    saw = Saw(inches("1/8"), inches("1/2"), keep=inches(keep))
    plan = plan_cuts(pieces, [Offer(STEEL, inches("20'"), 40000)], saw)
    return plan.sections[0].sticks[0]


def drawn(stick: StickPlan, *pieces: Piece) -> tuple[list[Polygon], list[str]]:
    row = lying(stick, {piece.mark: piece for piece in pieces})
    block = stick_picture(stick, row, SCRIBE, 200.0, scale_of([stick], 200.0))
    shapes = [item for item, _, _ in leaves(block.items) if isinstance(item, Polygon)]
    return shapes, [text.text for text in texts(block.items)]


def test_places_and_readings_by_hand() -> None:
    piece = Piece("A1", STEEL, inches("5'"), 2)
    shapes, said = drawn(cut(piece), piece)
    # 20 ft on 200 mm: a foot is 10 mm; trim 1/2 in, 60 in, kerf 1/8 in, 60 in, kerf, drop 119 1/4 in
    xs = [sorted({x for x, _ in shape.points}) for shape in shapes[1:4]]
    assert xs[0] == pytest.approx([0.5 / 1.2, 60.5 / 1.2])
    assert xs[1] == pytest.approx([60.625 / 1.2, 120.625 / 1.2])
    assert xs[2] == pytest.approx([120.75 / 1.2, 200.0])
    assert said.count("A1") == 2
    for reading in ('1/2"', "5'-0 1/2\"", "10'-0 5/8\"", "drop 9'-11 1/4\""):
        assert reading in said


def test_shared_cuts_are_parallel() -> None:
    piece = Piece("A1", STEEL, inches("4'"), 2, right=SLANT)
    stick = cut(piece)
    first, second = lying(stick, {"A1": piece})
    assert second.placed.shares
    assert first.last_up != second.first_up
    before, after = drawn(stick, piece)[0][1:3]
    # the last side of the one leans as the first side of the other
    assert before.points[1][0] - before.points[2][0] == pytest.approx(after.points[0][0] - after.points[3][0])
    assert abs(before.points[1][0] - before.points[2][0]) == pytest.approx(5.0)


def test_equal_pieces_next_to_one_another_are_one_run() -> None:
    long, short = Piece("A1", STEEL, inches("4'"), 2), Piece("A2", STEEL, inches("2'"), 3)
    row = lying(cut(long, short), {"A1": long, "A2": short})
    assert [(run.mark, run.number, len(run.pieces)) for run in runs_of(row)] == [("A1", 1, 2), ("A2", 3, 3)]


def test_marks_that_find_no_room_stand_above_with_their_number() -> None:
    piece = Piece("clip-angle-7", STEEL, inches("3"), 60)
    _, said = drawn(cut(piece), piece)
    assert "clip-angle-7 x 60" in said
    assert len([text for text in said if text.endswith('"')]) < 10


def test_scrap_is_not_named_a_drop() -> None:
    piece = Piece("A1", STEEL, inches("18'"))
    assert not [text for text in drawn(cut(piece), piece)[1] if text.startswith("drop")]
    assert scale_of([], 100.0) == 100.0 / Length(1).mm
