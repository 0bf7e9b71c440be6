import pytest

from gageline.errors import GagelineError
from gageline.sheets import Box, Line, extent
from gageline.sheets.panels import Panel, pack, panel, under


def block(width: float, height: float) -> Panel:
    return panel([Line(5, 5, 5 + width, 5 + height)], "block")


PAGE = Box(0, 0, 100, 50)


def test_panels_stand_side_by_side_then_in_a_new_row_then_on_a_new_page() -> None:
    pages = pack([block(40, 20)] * 5, [(0, PAGE)], PAGE)
    places = [[(extent((item,)).left, extent((item,)).top) for item in page] for page in pages]
    assert places == [[(0, 0), (47, 0), (0, 25), (47, 25)], [(0, 0)]]


def test_a_small_panel_fills_a_room_that_others_left() -> None:
    rooms = [(0, Box(0, 0, 100, 10)), (1, PAGE)]
    pages = pack([block(40, 20), block(40, 8)], rooms, PAGE)
    assert [len(page) for page in pages] == [1, 1]


def test_a_panel_larger_than_a_page_is_refused() -> None:
    with pytest.raises(GagelineError, match='drawing "block" needs 120 x 20 mm and a page has 100 x 50 mm'):
        pack([block(120, 20)], [], PAGE)


def test_panels_under_each_other_keep_their_x() -> None:
    both = under([block(40, 20), block(10, 5)], 3)
    assert (both.box.left, both.box.right) == (5, 45)
    assert both.box.height == pytest.approx(28)
