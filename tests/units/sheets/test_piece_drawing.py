from importlib.resources import files

import pytest

from gageline.job import Job, read_job
from gageline.sheets import Page, to_dxf, to_pdf
from gageline.sheets.piece_drawing import piece_drawing, piece_drawings
from pages import crowded, in_title_block, outside, page_texts


@pytest.fixture(scope="module", params=["mezzanine.toml", "metric.toml"])
def demo(request: pytest.FixtureRequest) -> Job:
    return read_job((files("gageline") / "demo" / request.param).read_text(encoding="utf-8"))


def test_no_text_of_a_demo_piece_touches_another_or_leaves_the_frame(demo: Job) -> None:
    for page in piece_drawings(demo).pages:
        assert isinstance(page, Page)
        assert crowded(page) == [], page.title
        assert outside(page) == [], page.title
        assert not in_title_block(page), page.title


def test_every_piece_is_drawn_with_its_mark_weight_and_the_practice(demo: Job) -> None:
    for assembly in demo.assemblies:
        drafts = piece_drawing(demo, assembly)
        assert all(draft.heading.mark == assembly.mark for draft in drafts)
    for texts in page_texts(piece_drawings(demo)):
        assert any("not checked" in text for text in texts)
    said = {text for texts in page_texts(piece_drawings(demo)) for text in texts}
    assert "Shop practice where nothing else is said:" in said
    for assembly in demo.assemblies:
        for fitting in assembly.fittings:
            assert any(text.startswith(f"{fitting.part.mark}: ") for text in said)


def test_both_hands_say_so(demo: Job) -> None:
    hands = {assembly.mark: assembly.hand_of for assembly in demo.assemblies if assembly.hand_of}
    said = [text for texts in page_texts(piece_drawings(demo)) for text in texts]
    for mark, original in hands.items():
        assert f"Opposite hand of {original}" in said
        assert f"{mark}: drawn as made, the opposite hand of {original}." in said


def test_the_pages_go_to_files(demo: Job) -> None:
    sheet = piece_drawings(demo)
    page = sheet.pages[0]
    assert isinstance(page, Page)
    assert to_pdf(sheet).startswith(b"%PDF")
    assert "ENTITIES" in to_dxf(page)
