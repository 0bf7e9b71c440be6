"""The sheets of the demo frame: plans, elevations, column schedule, field bolts and reasons."""

from collections.abc import Callable
from importlib.resources import files

import pytest

from frames import bays
from gageline.detail import FullJob, read_full
from gageline.errors import ValueProblem
from gageline.sheets import Page, Paper, Sheet
from gageline.sheets.column_schedule import column_schedule, grid_point
from gageline.sheets.field_bolts import field_bolt_list
from gageline.sheets.framing_plan import Opening, framing_plans
from gageline.sheets.grid_elevation import grid_elevations
from gageline.sheets.reasons_table import reasons_table
from pages import crowded, in_title_block, outside, page_texts

DEMO = read_full(files("gageline.demo").joinpath("mezzanine-frame.toml").read_text("utf-8"))
MAKERS = (framing_plans, column_schedule, grid_elevations, field_bolt_list, reasons_table)
Maker = Callable[[FullJob], Sheet]


def words(sheet: Sheet) -> list[str]:
    return [text for page in page_texts(sheet) for text in page]


@pytest.mark.parametrize("maker", MAKERS)
def test_sheets_of_the_demo_are_in_order(maker: Maker) -> None:
    for page in maker(DEMO).pages:
        assert isinstance(page, Page)
        assert crowded(page) == []
        assert outside(page) == []
        assert not in_title_block(page)


@pytest.mark.parametrize("maker", MAKERS)
def test_job_without_a_frame_is_refused(maker: Maker) -> None:
    piece = '[[piece]]\nmark = "B1"\nstock = "W16x26"\nlength = "10\'-0"\n'
    none = read_full(f'[job]\nname = "pieces only"\n{piece}')
    with pytest.raises(ValueProblem, match='job "pieces only" has no frame: give'):
        maker(none)


@pytest.mark.parametrize("maker", MAKERS[:4])
def test_sheets_that_steel_is_put_up_by_ask_for_a_qualified_person(maker: Maker) -> None:
    assert any("Erection needs a qualified person" in text for text in words(maker(DEMO)))


def test_plan_says_marks_drops_slope_skew_and_places() -> None:
    found = words(framing_plans(DEMO))
    for wanted in ("G3", ' (−2 1/4")', "slope 1/4 in 12", "skew 4 5/16 in 12", "place B8", '(−2 5/8")'):
        assert wanted in found


def test_opening_is_named_on_its_own_level_only() -> None:
    corners = ((146.0, 80.0), (238.0, 80.0), (238.0, 154.0), (146.0, 154.0))
    assert "stair" in words(framing_plans(DEMO, [Opening("Mezzanine", corners, "stair")]))
    assert "stair" not in words(framing_plans(DEMO, [Opening("Slab", corners, "stair")]))


def test_sixty_members_stand_on_one_large_sheet_and_more_on_several() -> None:
    few = framing_plans(read_full(bays([288] * 4, [240] * 2, 4)))
    assert [page.paper for page in few.pages] == [Paper.TABLOID]
    many = framing_plans(read_full(bays([288] * 5, [240] * 2, 4)))
    assert len(many.pages) == 2
    assert "Match line, see part 2" in words(many)


def test_metric_plans_are_on_a3() -> None:
    sheet = framing_plans(read_full(bays([288] * 4, [240], 3, units="mm")))
    assert {page.paper for page in sheet.pages} == {Paper.A3}


def test_column_schedule_has_a_row_for_each_column() -> None:
    found = words(column_schedule(DEMO))
    for wanted in ("1/A", "2/A (P2)", "3/B", "W8X31 A992", "90°", "+12'-0\"", '−6"'):
        assert wanted in found
    # Under the girder: 12'-0" less its depth, 18.0 in (AISC Manual Table 1-1, W18X50).
    assert found.count("+10'-6\"") == 2


def test_place_off_the_grid_says_how_far() -> None:
    assert DEMO.detailed is not None
    assert grid_point(288.0, 222.0, DEMO.detailed, DEMO.job) == "2/B"
    assert grid_point(291.0, 222.0, DEMO.detailed, DEMO.job) == '2/B x +3"'


def test_elevation_of_one_line() -> None:
    (page,) = page_texts(grid_elevations(DEMO, ["A"]))
    for wanted in ("G1", "G2", "P1", "P3", "Mezzanine +12'-0\"", 'Slab −6"', "12'-6\""):
        assert wanted in page
    assert "G3" not in page


def test_unknown_grid_line_is_refused() -> None:
    with pytest.raises(ValueProblem, match='"Q" is no grid line of the frame: use one of 1, 2, 3, A, B, C'):
        grid_elevations(DEMO, ["Q"])


def test_field_bolts_are_all_counted() -> None:
    assert DEMO.detailed is not None
    total = sum(bolts.count for bolts in DEMO.detailed.field_bolts)
    assert words(field_bolt_list(DEMO)).count(str(total)) >= 2


def test_bolts_stand_with_the_mark_of_their_piece() -> None:
    found = words(field_bolt_list(DEMO))
    assert found[found.index("start of B8") - 1] == "B1"
    assert found[found.index("G1 on P2") - 1] == "G1"


def test_reasons_of_one_piece_only() -> None:
    assert DEMO.detailed is not None
    found = words(reasons_table(DEMO, frozenset({"G2"})))
    whole = "".join(found).replace(" ", "")
    for reason in DEMO.detailed.reasons["G2"]:
        for text in (reason.decision, reason.because, reason.source):
            assert text.replace(" ", "") in whole
    assert "G3" not in found
