"""Pages as SVG."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest

from gageline.errors import ValueProblem
from gageline.sheets import Circle, Group, Ink, Line, Page, Polygon, Role, Text, Weight, text_width, to_svg

NS = "{http://www.w3.org/2000/svg}"


def written(*items: Line | Circle | Text | Group | Polygon) -> ET.Element:
    return ET.fromstring(to_svg(Page(items, title="B4 <left> & right")))  # noqa: S314 our own text


def test_the_page_is_in_millimetres() -> None:
    root = written()
    assert (root.get("width"), root.get("height")) == ("215.9mm", "279.4mm")
    assert root.get("viewBox") == "0 0 215.9 279.4"
    assert root.findtext(f"{NS}title") == "B4 <left> & right"


def test_text_stays_text_with_its_place_and_its_length() -> None:
    text = Text(10, 20, "<18'-7 1/4\"> & up", 12, Weight.BOLD, rotation=90, ink=Ink.ACCENT)
    (element,) = written(Group((text,), dx=5)).iter(f"{NS}text")
    assert element.text == text.text
    assert (element.get("x"), element.get("y")) == ("15", "20")
    assert element.get("transform") == "rotate(-90 15 20)"
    assert element.get("font-weight") == "700"
    assert float(element.get("textLength", "")) == pytest.approx(
        text_width(text.text, 12, Weight.BOLD), abs=1e-3
    )


def test_the_family_is_named() -> None:
    (group,) = written().iter(f"{NS}g")
    assert group.get("font-family") == "'IBM Plex Sans Condensed', sans-serif"


def test_pens_and_fills() -> None:
    edge, fill = written(Line(0, 0, 5, 5, Role.HIDDEN), Circle(9, 9, 2, None, Ink.BLACK)).iter(f"{NS}path")
    assert (edge.get("d"), edge.get("stroke-dasharray"), edge.get("fill")) == ("M0 0L5 5", "2 1", "none")
    assert (fill.get("fill"), fill.get("stroke")) == ("#000000", None)


def test_a_character_that_cannot_be_printed_is_refused() -> None:
    with pytest.raises(ValueProblem, match="write Ø instead"):
        to_svg(Page((Text(0, 0, "⌀ 3/4"),)))
