from __future__ import annotations

import re
import xml.etree.ElementTree as ET

from gageline.sheets import Block, Ink, Polygon, Role, Text, piece_drawings
from gageline.shop.engine import card_of, job_of, layout_of
from gageline.shop.jobs import current_text
from gageline.shop.models import Job
from gageline.shop.pictures import block_svg, cuts_svg, page_svg, qr_svg, solid_page, step_svg, stick_svg


def test_pictures_are_svg_with_text_and_nothing_that_the_policy_forbids(demo: Job) -> None:
    text = current_text(demo)
    layout = layout_of(text, "B1")
    pictures = [stick_svg(layout.main, 'B1 "<unfolded>"'), *page_svg(piece_drawings(job_of(text)))]
    for picture in pictures:
        root = ET.fromstring(picture)  # noqa: S314 -- our own
        assert root.attrib["role"] == "img"
        assert "style=" not in picture
        assert "<script" not in picture
        assert len(root.findall(".//{http://www.w3.org/2000/svg}text")) > 5


def test_a_step_shows_its_own_readings_and_the_datum(demo: Job) -> None:
    text = current_text(demo)
    layout = layout_of(text, "B1")
    shown = 0
    for task in card_of(text, "B1").bench:
        assert task.step is not None
        picture = step_svg(layout, task.step)
        if not picture:
            continue
        shown += 1
        assert "along from the left end" in picture
        for reading in task.step.readings:
            assert reading.length_text.replace('"', "&quot;") in picture or reading.length_text in picture
    assert shown > 5


def test_a_block_of_the_sheets_is_cut_to_what_is_on_it() -> None:
    svg = block_svg(Block((Text(30.0, 40.0, "B1 <b>"),), 50.0), 'Stick "1" <b>')
    assert 'aria-label="Stick  1   b "' in svg
    assert "B1 &lt;b&gt;" in svg
    left, top, width, height = map(float, re.findall(r'viewBox="([^"]+)"', svg)[0].split())
    assert left < 30 < left + width < 60
    assert top < 40 < top + height < 60


def test_each_piece_of_a_stick_has_the_number_of_its_cut() -> None:
    def box(left: float, fill: Ink | None) -> Polygon:
        corners = ((left, 0.0), (left + 10.0, 0.0), (left + 10.0, 5.0), (left, 5.0))
        return Polygon(corners, Role.OUTLINE, fill)

    items = (box(0.0, None), box(0.0, Ink.WHITE), box(10.0, Ink.WHITE), box(20.0, Ink.WHITE))
    svg = cuts_svg(Block(items, 5.0), "Stick 1", 2)
    assert re.findall(r'data-cut="(\d)" d="M(\d+)', svg) == [("1", "0"), ("2", "10")]
    assert svg.count('fill="#ffffff"') == 3  # the last one, the drop, has no number
    assert svg.replace(' data-cut="1"', "").replace(' data-cut="2"', "") == block_svg(
        Block(items, 5.0), "Stick 1"
    )


def test_the_body_stands_alone(demo: Job) -> None:
    page = solid_page(job_of(current_text(demo)).piece("B1"))
    assert "B1 in space" in page
    assert ' src="' not in page.split("<script>")[0]


def test_a_code_is_a_picture() -> None:
    assert ET.fromstring(qr_svg("http://localhost/piece/1/")).tag.endswith("svg")  # noqa: S314 -- our own
