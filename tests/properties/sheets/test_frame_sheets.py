"""Laws of the sheets of a frame: no text on another and none outside the frame of the paper."""

from collections import Counter

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from frames import bays
from gageline.detail import read_full
from gageline.sheets import Page, Sheet, texts
from gageline.sheets.column_schedule import column_schedule
from gageline.sheets.field_bolts import field_bolt_list
from gageline.sheets.framing_plan import framing_plans
from gageline.sheets.grid_elevation import grid_elevations
from gageline.sheets.plan_regions import MOST
from gageline.sheets.reasons_table import reasons_table
from pages import crowded, in_title_block, outside

SPACINGS = st.lists(st.integers(168, 420), min_size=1, max_size=4)


def wrong(sheet: Sheet) -> list[object]:
    """What is wrong with the pages of a sheet."""
    pages = [page for page in sheet.pages if isinstance(page, Page)]
    return [
        found for page in pages for found in (crowded(page), outside(page), in_title_block(page)) if found
    ]


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    SPACINGS,
    st.lists(st.integers(168, 420), min_size=1, max_size=3),
    st.integers(0, 4),
    st.sampled_from(["ft-in", "mm"]),
    st.lists(st.sampled_from([0, 1, 2.25, 3]), max_size=3),
    st.sampled_from([0.0, 0.0, 12.0, 20.0]),
    st.integers(1, 2),
)
def test_no_text_on_another_and_none_outside(
    xs: list[int], ys: list[int], infill: int, units: str, drops: list[float], skew: float, levels: int
) -> None:
    full = read_full(bays(xs, ys, infill, units=units, drops=drops, skew=skew, levels=levels))
    assert full.detailed is not None
    plans = framing_plans(full)
    for sheet in (plans, grid_elevations(full), column_schedule(full), field_bolt_list(full)):
        assert wrong(sheet) == []
    if len(full.detailed.reasons) < 20:
        assert wrong(reasons_table(full)) == []
    # Every beam is named on the plans, whatever parts they are cut into, by its mark, set in bold; twice only
    # where a plan was cut at its grid line. No sheet is empty, and none names more than 60.
    marks = {one.member: one.mark for one in full.detailed.placed}
    wanted = Counter(marks[line.name] for line in full.detailed.frame.beams)
    sheets = [
        Counter(text.text for text in texts(page.items) if text.text in wanted)
        for page in plans.pages
        if isinstance(page, Page)
    ]
    written = sum(sheets, Counter())
    assert wanted <= written
    assert wanted == written or len(sheets) > levels
    assert all(0 < sheet.total() <= MOST for sheet in sheets)
