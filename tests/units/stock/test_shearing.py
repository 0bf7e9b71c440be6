"""A sheet cut by a shear: played with the printed cuts alone, it falls into its pieces."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.errors import ValueProblem
from gageline.stock import Burner, Effort, Laid, Plate, Sheet, SheetPlan, Steel, plan_plates, shear_cuts
from gageline.stock.shearing import ShearCut
from gageline.units import ZERO, Length
from jobs import inches

STEEL = Steel("PL1/2", "A572-50")
SHEET = Sheet(STEEL, inches("8'"), inches("4'"), 100)
SHEAR = Burner(ZERO, shear=True)

Rectangle = tuple[Length, Length, Length, Length]


def laid(mark: str, x: str, y: str, along: str, across: str) -> Laid:
    return Laid(mark, *(inches(text) for text in (x, y, along, across)))


def sheared(sheet: Sheet, cuts: tuple[ShearCut, ...], kerf: Length) -> list[Rectangle]:
    """What lies on the floor after the cuts, each made on the one part that it crosses from edge to edge."""
    parts: list[Rectangle] = [(ZERO, ZERO, sheet.length, sheet.width)]
    for cut in cuts:
        low, side = (0, 1) if cut.across else (1, 0)
        (whole,) = [
            p
            for p in parts
            if p[low] - kerf < cut.at < p[low + 2] and (p[side], p[side + 2]) == (cut.start, cut.stop)
        ]
        assert max(cut.at - whole[low], ZERO) == cut.width
        first, rest = list(whole), list(whole)
        first[low + 2] = max(cut.at, whole[low])
        rest[low] = min(cut.at + kerf, whole[low + 2])
        parts.remove(whole)
        parts += [(first[0], first[1], first[2], first[3]), (rest[0], rest[1], rest[2], rest[3])]
    return parts


def test_strips_come_off_first_and_then_each_strip() -> None:
    pieces = (
        laid("a", "0", "0", "2'", "1'"),
        laid("b", "0", "1'", "2'", "3'"),
        laid("c", "2'", "0", "3'", "4'"),
    )
    cuts = shear_cuts(SheetPlan(1, SHEET, pieces), SHEAR)
    assert cuts == (
        ShearCut(1, across=True, at=inches("2'"), start=ZERO, stop=inches("4'"), width=inches("2'")),
        ShearCut(2, True, inches("5'"), ZERO, inches("4'"), inches("3'"), ("c",)),
        ShearCut(3, False, inches("1'"), ZERO, inches("2'"), inches("1'"), ("a", "b")),
    )


def test_margins_and_what_lies_between_are_cut_away() -> None:
    cuts = shear_cuts(SheetPlan(1, SHEET, (laid("a", "1", "1", "2'", "1'"),)), SHEAR)
    assert [(c.across, c.at, c.width) for c in cuts] == [
        (True, inches("1"), inches("1")),
        (True, inches("25"), inches("24")),
        (False, inches("1"), inches("1")),
        (False, inches("13"), inches("12")),
    ]
    assert [c.frees for c in cuts] == [(), (), (), ("a",)]


def test_the_direction_with_fewer_cuts_comes_first() -> None:
    row = tuple(laid(mark, x, "0", "1'", "1'") for mark, x in (("a", "0"), ("b", "1'"), ("c", "2'")))
    cuts = shear_cuts(SheetPlan(1, SHEET, row), SHEAR)
    assert [(c.across, c.frees) for c in cuts] == [
        (False, ()),
        (True, ("a",)),
        (True, ("b",)),
        (True, ("c",)),
    ]


def test_a_sheet_that_is_one_piece_is_not_cut() -> None:
    assert shear_cuts(SheetPlan(1, SHEET, (laid("a", "0", "0", "8'", "4'"),)), SHEAR) == ()
    assert shear_cuts(SheetPlan(1, SHEET, ()), SHEAR) == ()


def test_a_wheel_of_pieces_is_refused() -> None:
    wheel = (
        laid("a", "0", "0", "2'", "1'"),
        laid("b", "2'", "0", "1'", "2'"),
        laid("c", "1'", "2'", "2'", "1'"),
        laid("d", "0", "1'", "1'", "2'"),
    )
    sheet = Sheet(STEEL, inches("3'"), inches("3'"), 100)
    said = "a, b, c, d: no cut from edge to edge takes these apart: burn this sheet"
    with pytest.raises(ValueProblem, match=said):
        shear_cuts(SheetPlan(1, sheet, wheel), SHEAR)


@settings(max_examples=30, deadline=None)
@given(
    sizes=st.lists(
        st.tuples(st.integers(2, 30), st.integers(2, 30), st.integers(1, 3)), min_size=1, max_size=5
    ),
    kerf=st.sampled_from(["0", "1/8"]),
    trim=st.sampled_from(["0", "1/2"]),
)
def test_the_cuts_alone_give_the_pieces(sizes: list[tuple[int, int, int]], kerf: str, trim: str) -> None:
    plates = [
        Plate(f"p{k}", STEEL, inches(str(long)), inches(str(wide)), many)
        for k, (long, wide, many) in enumerate(sizes)
    ]
    burner = Burner(inches(kerf), inches(trim), shear=True)
    for sheet in plan_plates(plates, [SHEET], burner, Effort(0.1)).sheets:
        cuts = shear_cuts(sheet, burner)
        assert [cut.number for cut in cuts] == list(range(1, len(cuts) + 1))
        floor = sheared(SHEET, cuts, burner.kerf)
        for piece in sheet.pieces:
            floor.remove((piece.x, piece.y, piece.x + piece.along, piece.y + piece.across))
        freed = sorted(mark for cut in cuts for mark in cut.frees)
        assert freed == sorted(piece.mark for piece in sheet.pieces)
