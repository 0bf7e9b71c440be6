"""What all sheets of a frame keep to."""

from collections.abc import Callable

import pytest

from frames import demo_frame
from gageline.detail import FullJob, read_full
from gageline.errors import ValueProblem
from gageline.sheets import (
    Page,
    Sheet,
    column_schedule,
    field_bolt_list,
    framing_plans,
    grid_elevations,
    reasons_table,
)
from pages import all_texts, crowded, in_title_block, outside

MAKERS = (framing_plans, column_schedule, grid_elevations, field_bolt_list, reasons_table)
Maker = Callable[[FullJob], Sheet]


@pytest.mark.parametrize("maker", MAKERS)
def test_sheets_of_the_demo_are_in_order(maker: Maker) -> None:
    for page in maker(demo_frame()).pages:
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
    assert any("Erection needs a qualified person" in text for text in all_texts(maker(demo_frame())))
