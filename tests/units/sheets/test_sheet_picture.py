import pytest

from gageline.sheets import Polygon, leaves, texts
from gageline.sheets.notation import Scribe
from gageline.sheets.sheet_picture import sheet_picture
from gageline.stock import Burner, Laid, Sheet, SheetPlan, Steel, shear_cuts
from gageline.units import ZERO, System
from jobs import inches

SHEET = Sheet(Steel("PL1/2", "A572-50"), inches("8'"), inches("4'"), 100)


def _flat(shape: Polygon) -> list[float]:
    return [number for point in shape.points for number in point]


def test_pieces_stand_to_scale_from_the_lower_left_corner() -> None:
    laid = Laid("b1", inches("1'"), inches("0"), inches("2'"), inches("1'"))
    block = sheet_picture(SheetPlan(1, SHEET, (laid,)), Scribe(System.FT_IN, inches("1/16")), 176.0)
    shapes = [item for item, _, _ in leaves(block.items) if isinstance(item, Polygon) and item.role]
    whole, piece = shapes[:2]
    # 8 ft on 160 mm: a foot is 20 mm
    assert _flat(whole) == pytest.approx([0, 0, 160, 0, 160, 80, 0, 80])
    assert _flat(piece) == pytest.approx([20, 60, 60, 60, 60, 80, 20, 80])
    said = [text.text for text in texts(block.items)]
    assert {"b1", "8'-0\"", "4'-0\""} <= set(said)


def test_a_piece_too_small_for_its_mark_goes_without() -> None:
    laid = Laid("a-very-long-mark", inches("1"), inches("1"), inches("1"), inches("1"))
    block = sheet_picture(SheetPlan(1, SHEET, (laid,)), Scribe(System.FT_IN, inches("1/16")), 176.0)
    assert "a-very-long-mark" not in [text.text for text in texts(block.items)]


def test_cuts_of_a_shear_are_numbered_and_hide_no_mark() -> None:
    pieces = [Laid(f"b{n}", inches(f"{n}'"), inches("0"), inches("1'"), inches("1'")) for n in range(3)]
    plan = SheetPlan(1, SHEET, tuple(pieces))
    cuts = shear_cuts(plan, Burner(ZERO, shear=True))
    said = texts(sheet_picture(plan, Scribe(System.FT_IN, inches("1/16")), 176.0, cuts).items)
    places = {text.text: (text.x, text.y) for text in said}
    assert {"1", "2", "3", "4"} <= set(places)
    near = [(n, b) for n in "1234" for b in ("b0", "b1", "b2") if _apart(places[n], places[b]) < 3.0]
    assert near == []


def _apart(one: tuple[float, float], other: tuple[float, float]) -> float:
    return max(abs(one[0] - other[0]), abs(one[1] - other[1]))
