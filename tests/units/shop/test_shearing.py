from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.sheets import Scribe
from gageline.shop.shearing import CutLine, cut_line, freed
from gageline.stock import (
    Burner,
    Effort,
    Laid,
    Plate,
    ShearCut,
    Sheet,
    SheetPlan,
    Steel,
    plan_plates,
    shear_cuts,
)
from gageline.units import ZERO, Length, System
from jobs import inches

STEEL = Steel("PL1/2", "A572-50")
SHEET = Sheet(STEEL, inches("8'"), inches("4'"), 100)
SHEAR = Burner(ZERO, shear=True)


def laid(mark: str, x: str, y: str, along: str, across: str) -> Laid:
    return Laid(mark, *(inches(text) for text in (x, y, along, across)))


def _loose(piece: Laid, cuts: list[ShearCut], kerf: Length) -> bool:
    """Whether each side of a plate is an edge of its sheet or lies at a cut that runs all along it."""
    for across, low, high, start, stop, end in (
        (True, piece.x, piece.x + piece.along, piece.y, piece.y + piece.across, SHEET.length),
        (False, piece.y, piece.y + piece.across, piece.x, piece.x + piece.along, SHEET.width),
    ):
        ran = {cut.at for cut in cuts if cut.across is across and cut.start <= start and cut.stop >= stop}
        if (low != ZERO and low - kerf not in ran) or (high != end and high not in ran):
            return False
    return True


def test_plates_stand_in_the_order_that_they_come_free() -> None:
    pieces = (
        laid("a", "0", "0", "2'", "1'"),
        laid("b", "0", "1'", "2'", "3'"),
        laid("c", "2'", "0", "3'", "4'"),
    )
    told = [
        (piece.mark, [cut.number for cut in cuts])
        for piece, cuts in freed(SheetPlan(1, SHEET, pieces), SHEAR)
    ]
    assert told == [("c", [1, 2]), ("a", [3]), ("b", [])]


def test_a_burned_sheet_has_no_cuts_from_edge_to_edge() -> None:
    pieces = (laid("b", "2'", "0", "1'", "1'"), laid("a", "0", "0", "2'", "1'"))
    told = freed(SheetPlan(1, SHEET, pieces), Burner(inches("1/8")))
    assert [(piece.mark, cuts) for piece, cuts in told] == [("a", ()), ("b", ())]


def test_a_sheet_that_is_one_plate_is_free_without_a_cut() -> None:
    whole = laid("a", "0", "0", "8'", "4'")
    assert freed(SheetPlan(1, SHEET, (whole,)), SHEAR) == ((whole, ()),)


@settings(max_examples=40, deadline=None)
@given(
    sizes=st.lists(
        st.tuples(st.integers(2, 30), st.integers(2, 30), st.integers(1, 3)), min_size=1, max_size=5
    ),
    kerf=st.sampled_from(["0", "1/8"]),
    trim=st.sampled_from(["0", "1/2"]),
)
def test_every_plate_is_loose_after_its_cuts_and_not_before(
    sizes: list[tuple[int, int, int]], kerf: str, trim: str
) -> None:
    plates = [
        Plate(f"p{k}", STEEL, inches(str(long)), inches(str(wide)), many)
        for k, (long, wide, many) in enumerate(sizes)
    ]
    burner = Burner(inches(kerf), inches(trim), shear=True)
    for sheet in plan_plates(plates, [SHEET], burner, Effort(0.1)).sheets:
        told = freed(sheet, burner)
        assert sorted(map(repr, sheet.pieces)) == sorted(repr(piece) for piece, _ in told)
        made: list[ShearCut] = []
        for piece, cuts in told:
            if cuts:
                assert not _loose(piece, made, burner.kerf)
            made += cuts
            assert _loose(piece, made, burner.kerf)
        assert tuple(made) == shear_cuts(sheet, burner)


@pytest.mark.parametrize(
    ("system", "tape", "across", "shaved"),
    [
        (
            System.FT_IN,
            "1/16",
            CutLine(2, "3'-0\"", "across the sheet", '5\'-0" along, from 0" to 4\'-0" up'),
            CutLine(1, "", "along the sheet", '1/2" up, from 0" to 2\'-0" along'),
        ),
        (
            System.MM,
            "1 mm",
            CutLine(2, "914 mm", "across the sheet", "1524 mm along, from 0 mm to 1219 mm up"),
            CutLine(1, "", "along the sheet", "13 mm up, from 0 mm to 610 mm along"),
        ),
    ],
)
def test_a_cut_in_words(system: System, tape: str, across: CutLine, shaved: CutLine) -> None:
    scribe = Scribe(system, inches(tape))
    assert cut_line(ShearCut(2, True, inches("5'"), ZERO, inches("4'"), inches("3'")), scribe) == across
    assert cut_line(ShearCut(1, False, inches("1/2"), ZERO, inches("2'"), ZERO), scribe) == shaved
