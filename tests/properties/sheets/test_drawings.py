"""Laws of the drawings: on every page of any piece no text on another and none outside the frame."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gageline.job import Job, JobFacts, default_practice
from gageline.part import Assembly, Part
from gageline.sheets import Page
from gageline.sheets.parts_list import parts_list
from gageline.sheets.piece_drawing import piece_drawings
from gageline.units import System
from pages import crowded, in_title_block, outside
from strategies import parts


def job_of_part(part: Part, system: System) -> Job:
    facts = JobFacts(name="random part", units=system)
    return Job(facts, default_practice(system), (Assembly(part, 2),))


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.data(), st.sampled_from(System))
def test_no_text_on_another_and_none_outside(data: st.DataObject, system: System) -> None:
    job = job_of_part(data.draw(parts(system=system)), system)
    for page in (*piece_drawings(job).pages, *parts_list(job).pages):
        assert isinstance(page, Page)
        assert crowded(page) == []
        assert outside(page) == []
        assert not in_title_block(page)
