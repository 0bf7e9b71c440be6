"""Framing plans: what they say, and how they are cut into parts."""

import pytest

from frames import bays, demo_frame
from gageline.detail import read_full
from gageline.sheets import Paper, framing_plans
from pages import all_texts, page_texts


def test_plan_says_marks_drops_slope_skew_and_places() -> None:
    found = all_texts(framing_plans(demo_frame()))
    for wanted in ("G3", "slope 1/4 in 12", "skew 4 5/16 in 12", "place B8", '(−2 5/8")'):
        assert wanted in found
    assert any('(−2 1/4")' in text for text in found)


def test_ends_of_a_skewed_member_say_where_they_are_and_no_chain_does() -> None:
    found = all_texts(framing_plans(demo_frame()))
    # B5 stands on G3 16'-0 and on G5 21'-0 from grid line 1; grid line 2 is at 24'-0
    assert "8'-0\" from 2" in found
    assert "3'-0\" from 2" in found
    assert "1'-0\"" not in found
    assert any("askew" in text for text in found)


def test_a_plan_without_skew_has_no_note_on_it() -> None:
    assert not any("askew" in text for text in all_texts(framing_plans(read_full(bays([288], [240], 2)))))


def test_opening_of_the_frame_is_crossed_and_named_on_the_plan_of_its_level_only() -> None:
    text = bays([288], [240], 0, levels=2)
    text += '[[frame.opening]]\nname = "hatch"\nlevel = "L2"\n'
    text += (
        "corners = [{ point = '1/A', x = '5 ft', y = '5 ft' }, { point = '2/B', x = '-8 ft', y = '-6 ft' }]\n"
    )
    low, high = page_texts(framing_plans(read_full(text)))
    assert "hatch" not in low
    assert "hatch" in high
    assert ("opening in the floor" in low, "opening in the floor" in high) == (False, True)
    assert "Stair" in all_texts(framing_plans(demo_frame()))


def test_sixty_members_stand_on_one_large_sheet_and_more_on_several() -> None:
    few = framing_plans(read_full(bays([288] * 4, [240] * 2, 4)))
    assert [page.paper for page in few.pages] == [Paper.TABLOID]
    many = framing_plans(read_full(bays([288] * 5, [240] * 2, 4)))
    assert len(many.pages) == 2
    one, two = page_texts(many)
    assert "Match line at grid line 3, see part 2" in one
    assert "Match line at grid line 3, see part 1" in two
    assert "Grid lines 1 to 3 and A to C." in " ".join(one)
    assert "Grid lines 3 to 6 and A to C." in " ".join(two)
    assert {"1", "2", "3"} <= set(one)
    assert {"3", "4", "5", "6"} <= set(two)


def test_mark_and_section_of_a_girder_stand_together_where_they_have_room() -> None:
    found = all_texts(framing_plans(demo_frame()))
    assert " W21X62" in found
    assert "W21X62" not in found  # a section that is broken from its mark starts without a space


def test_metric_plans_are_on_a3() -> None:
    sheet = framing_plans(read_full(bays([288] * 4, [240], 3, units="mm")))
    assert {page.paper for page in sheet.pages} == {Paper.A3}


def test_each_floor_has_its_plan_from_the_lowest_up() -> None:
    pages = page_texts(framing_plans(read_full(bays([240], [200], 1, levels=2))))
    assert [sum(f"Level L{n}" in page for page in pages) for n in (1, 2)] == [1, 1]
    assert "Level L1" in pages[0]
    assert "All at +14'-0\", unless a height in" in " ".join(pages[0])


@pytest.mark.parametrize("units", ["ft-in", "mm"])
def test_a_floor_of_skewed_members_stands_on_one_sheet(units: str) -> None:
    full = read_full(bays([300] * 3, [240] * 2, 4, units=units, skew=36))
    assert len(framing_plans(full).pages) == 1
