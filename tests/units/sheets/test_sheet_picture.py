import pytest

from gageline.sheets import Polygon, leaves, texts
from gageline.sheets.notation import Scribe
from gageline.sheets.sheet_picture import sheet_picture
from gageline.stock import Laid, Sheet, SheetPlan, Steel
from gageline.units import System
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
