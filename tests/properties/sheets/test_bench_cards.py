"""Laws of the bench card: no two texts touch, nothing leaves the frame, every reading is printed."""

from __future__ import annotations

from typing import Literal

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, STRtree
from shapely import Polygon as Shape

from gageline.job import Job, JobFacts, default_practice
from gageline.layout import MarkKind, lay_out
from gageline.part import Assembly, Part
from gageline.sheets import Line, Page, Polyline, Sheet, bench_cards, extent, leaves, text_box, texts
from gageline.units import System
from strategies import parts

PAPERS: tuple[Literal["letter", "a4"], ...] = ("letter", "a4")


def job_of(part: Part, system: System, paper: Literal["letter", "a4"]) -> Job:
    facts = JobFacts(name="Trial", units=system, sheet=paper)
    return Job(facts, default_practice(system), (Assembly(part, 2),))


def pages_of(sheet: Sheet) -> list[Page]:
    return [page for page in sheet.pages if isinstance(page, Page)]


def check_clear(page: Page) -> None:
    """No text on another, none outside the frame, no line of the drawing through one."""
    found = list(texts(page.items))
    boxes = [Shape(text_box(text)) for text in found]
    tree = STRtree(boxes)
    for a, b in tree.query(boxes, predicate="intersects").T:
        assert a == b or boxes[a].intersection(boxes[b]).area < 1e-6, (found[a], found[b])
    around, frame = extent(tuple(found)), page.frame
    assert frame.left <= around.left
    assert around.right <= frame.right
    assert frame.top <= around.top
    assert around.bottom <= frame.bottom
    lines = []
    for item, dx, dy in leaves(page.items):
        if isinstance(item, Polyline):
            lines.append(LineString([(x + dx, y + dy) for x, y in item.points]))
        elif isinstance(item, Line):
            lines.append(LineString([(item.x1 + dx, item.y1 + dy), (item.x2 + dx, item.y2 + dy)]))
    inner = [box.buffer(-0.45) for box in boxes]
    for line, box in STRtree(inner).query(lines, predicate="intersects").T:
        raise AssertionError(f"a line runs through {found[box].text!r}: {lines[line]}")


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(System).flatmap(lambda s: st.tuples(st.just(s), parts(system=s))), st.sampled_from(PAPERS)
)
def test_every_reading_is_printed_clear_of_every_other_text(
    drawn: tuple[System, Part], paper: Literal["letter", "a4"]
) -> None:
    system, part = drawn
    job = job_of(part, system, paper)
    layout = lay_out(job.assemblies[0], job.practice, system)
    sheet = bench_cards(job, [layout])
    said = {text.text for page in pages_of(sheet) for text in texts(page.items)}
    for page in pages_of(sheet):
        check_clear(page)
    for step in layout.main.steps:
        assert f" {step.number} " in said
        assert {reading.text for reading in step.readings} <= said
    for mark in layout.main.marks:
        if mark.kind is MarkKind.HOLE:
            assert {mark.x.text, mark.y.text} <= said
    assert all(len(list(texts(page.items))) > 6 for page in pages_of(sheet))
