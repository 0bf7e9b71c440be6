"""Pages, groups and papers."""

from __future__ import annotations

import pytest

from gageline.sheets import Box, Circle, Group, Line, Page, Paper, leaves


@pytest.mark.parametrize(
    ("paper", "landscape", "size"),
    [
        (Paper.LETTER, False, (215.9, 279.4)),
        (Paper.LETTER, True, (279.4, 215.9)),
        (Paper.A4, False, (210.0, 297.0)),
        (Paper.A4, True, (297.0, 210.0)),
    ],
)
def test_papers_have_their_sizes(paper: Paper, landscape: bool, size: tuple[float, float]) -> None:
    page = Page((), paper, landscape)
    assert (page.width, page.height) == size


def test_the_frame_is_the_paper_inside_its_margins() -> None:
    frame = Page((), Paper.A4, margin=12).frame
    assert frame == Box(12, 12, 198, 285)
    assert (frame.width, frame.height) == (186, 273)


def test_leaves_add_the_shifts_of_nested_groups_and_keep_the_order() -> None:
    first, second, third = Line(0, 0, 1, 1), Circle(5, 5, 2), Line(2, 2, 3, 3)
    nested = Group((second,), dx=3, dy=-1)
    items = (first, Group((nested, third), dx=10, dy=20), first)
    assert list(leaves(items)) == [(first, 0, 0), (second, 13, 19), (third, 10, 20), (first, 0, 0)]
