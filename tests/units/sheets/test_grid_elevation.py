"""Elevations along grid lines."""

import pytest

from frames import bays, demo_frame
from gageline.detail import read_full
from gageline.errors import ValueProblem
from gageline.sheets import Line, Page, Polygon, Role, grid_elevations, leaves
from gageline.sheets.elevation_members import PlaneMember
from gageline.sheets.grid_elevation import _Plane, _stretch
from pages import all_texts, page_texts


def test_elevation_of_one_line() -> None:
    (page,) = page_texts(grid_elevations(demo_frame(), ["A"]))
    for wanted in (
        "G1",
        "G2",
        "P1",
        "P3",
        "Mezzanine, column tops +12'-0\"",
        'Slab, under base plates −6"',
        "12'-6\"",
    ):
        assert wanted in page
    assert "G3" not in page
    # twice: B8 is like B1 and stands beside it
    assert page.count("B1") == 2


def test_every_base_plate_and_cut_beam_is_drawn() -> None:
    (page,) = grid_elevations(demo_frame(), ["B"]).pages
    assert isinstance(page, Page)
    black = [item for item, _, _ in leaves(page.items) if isinstance(item, Polygon) and item.fill == "black"]
    # base plates of three columns; G2, B1, B2, B3, B4, B5, B6, B7 and B8
    assert len(black) == 3 + 9


def test_all_lines_with_members_are_drawn_in_the_order_of_the_grid() -> None:
    details = [
        next(text for text in page if text.startswith("Grid line"))
        for page in page_texts(grid_elevations(demo_frame()))
    ]
    assert details == [f"Grid line {name}" for name in ("1", "2", "3", "A", "B", "C")]


def test_unknown_grid_line_is_refused() -> None:
    with pytest.raises(ValueProblem, match='"Q" is no grid line of the frame: use one of 1, 2, 3, A, B, C'):
        grid_elevations(demo_frame(), ["Q"])


def test_a_long_line_is_drawn_in_stretches_that_leave_nothing_out() -> None:
    first, second = page_texts(grid_elevations(read_full(bays([660] * 11, [200], 0)), ["A"]))
    assert "Grid line A, part 1 of 2" in first
    assert (first + second).count(" W21X62") == 11
    # the match line lies on grid line 6: its column and bubble are on both sheets
    assert (first.count(" W10X49"), second.count(" W10X49")) == (6, 7)
    assert "6" in first
    assert "6" in second
    assert "Match line, see part 2" in first
    assert "Match line, see part 1" in second


def test_a_part_between_two_others_has_a_match_line_at_either_side() -> None:
    pages = page_texts(grid_elevations(read_full(bays([400] * 24, [200], 1, units="mm")), ["A"]))
    assert len(pages) > 2
    for n, page in enumerate(pages, 1):
        seen = {text for text in page if text.startswith("Match line")}
        assert seen == {f"Match line, see part {m}" for m in (n - 1, n + 1) if 1 <= m <= len(pages)}


def test_one_bay_with_too_many_beams_is_not_cut_into_single_columns() -> None:
    (page,) = page_texts(grid_elevations(read_full(bays([200], [160], 36)), ["A"]))
    assert "Grid line A" in page


def test_beams_too_close_for_their_marks_are_cut_without_them() -> None:
    found = all_texts(grid_elevations(read_full(bays([200], [160], 36)), ["A"]))
    words = "A beam that runs into this plane is drawn as its section, solid black; its mark is on"
    assert any(text.startswith(words) for text in found)
    assert "GL11A" in found


def test_the_joint_of_a_spliced_column_is_drawn_across_it_with_its_height() -> None:
    text = bays([240], [240], 0, levels=2)
    spliced = text.replace('at = "1/A"\n', 'at = "1/A"\nsplices = [{ at = "15 ft" }]\n', 1)
    plain, joined = (grid_elevations(read_full(one), ["A"]) for one in (text, spliced))
    (words,) = page_texts(joined)
    assert "splice +19'-0\"" in words

    def across(page: Page) -> int:
        strokes = [item for item, _, _ in leaves(page.items) if isinstance(item, Line)]
        return sum(one.role is Role.OUTLINE and one.y1 == one.y2 for one in strokes)

    (before,), (after,) = plain.pages, joined.pages
    assert isinstance(before, Page)
    assert isinstance(after, Page)
    assert across(after) == across(before) + 1


def test_the_place_of_a_short_beam_stands_in_it_and_needs_no_leader() -> None:
    sheet = grid_elevations(read_full(bays([120] * 9, [240], 0)), ["A"])
    found = all_texts(sheet)
    assert {f"place GL1{n}A" for n in range(2, 10)} <= set(found)
    assert sum(text == "GL11A" for text in found) == 9


def test_heights_of_feet_levels_and_tops_are_told_at_the_left_and_over_the_lowest_at_the_right() -> None:
    (page,) = page_texts(grid_elevations(demo_frame(), ["1"]))
    for wanted in (
        "Mezzanine, column tops +12'-0\"", "cap plate tops +10'-6\"", 'Slab, under base plates −6"',
        "12'-6\"", "11'-0\"",
    ):  # fmt: skip
        assert wanted in page
    (metric,) = page_texts(grid_elevations(read_full(bays([240], [240], 0, units="mm")), ["A"]))
    assert "L0, under base plates ±0" in metric
    assert "L1, column tops +4267" in metric
    assert "4267" in metric


def test_an_overhang_is_dimensioned_along_the_line() -> None:
    (page,) = page_texts(grid_elevations(demo_frame(), ["A"]))
    assert "2'-6\"" in page
    (plain,) = page_texts(grid_elevations(demo_frame(), ["1"]))
    assert plain.count("18'-6\"") == 1  # no chain but the grid's where all stands on it


def test_a_beam_that_passes_a_match_line_is_drawn_as_far_as_to_it() -> None:
    def beam(name: str, start: float, end: float) -> PlaneMember:
        return PlaneMember(name, ((start, 144.0), (end, 144.0), (end, 126.0), (start, 126.0)), ())

    plane = _Plane(
        demo_frame().job,
        "A",
        (beam("long", 0.0, 700.0), beam("tip", 0.0, 305.0), beam("far", 306.0, 700.0)),
        (),
        (),
        (),
    )
    first, second = _stretch(plane, None, 300.0), _stretch(plane, 300.0, None)
    assert {one.name: one.span for one in first.members} == {"long": (0.0, 300.0), "tip": (0.0, 305.0)}
    assert {one.name: one.span for one in second.members} == {"long": (300.0, 700.0), "far": (306.0, 700.0)}
