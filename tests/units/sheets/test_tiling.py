from itertools import pairwise

import pytest
from shapely import box

from gageline.sheets import Line, Polyline, Role, Text
from gageline.sheets.tiling import LEEWAY, OVERLAP, tiles


def test_a_drawing_that_fits_is_one_page_with_room_left_and_above() -> None:
    (tile,) = tiles((100, 150), (190, 200), (11, 28))
    assert tile.name == ""
    assert tile.at((0, 0)) == (11 + LEEWAY, 28 + LEEWAY)
    assert list(tile.match_lines([])) == []


def test_neighbours_share_the_overlap_and_cover_everything_at_full_size() -> None:
    pages = tiles((400, 150), (190, 200), (11, 28))
    assert [page.name for page in pages] == [f"row 1 of 1, column {n} of 3" for n in (1, 2, 3)]
    for one, two in pairwise(pages):
        assert one.left + one.width - two.left == pytest.approx(OVERLAP)
    assert pages[-1].left + pages[-1].width == pytest.approx(400)
    a, b = pages[1].at((180, 20)), pages[1].at((210, 60))
    assert (b[0] - a[0], b[1] - a[1]) == pytest.approx((30, 40))


def test_both_pages_draw_the_same_match_line_and_crosses() -> None:
    one, two = tiles((300, 150), (190, 200), (11, 28))
    seam = one.seams()[0]
    assert seam.equals(two.seams()[0])
    crosses = []
    for page in (one, two):
        off = page.paper[0] - page.left, page.paper[1] - page.top
        lines = [item for item in page.match_lines([]) if isinstance(item, Line)]
        crosses.append({(round(line.x1 - off[0], 6), round(line.y1 - off[1], 6)) for line in lines})
    assert crosses[0] == crosses[1]
    assert len(crosses[0]) == 4


def test_words_at_the_seam_avoid_what_stands_there() -> None:
    one, _ = tiles((300, 150), (190, 200), (11, 28))
    (words,) = [item for item in one.match_lines([]) if isinstance(item, Text)]
    assert words.text == "joins column 2 here"
    x = one.seams()[0].coords[0][0]
    (moved,) = [item for item in one.match_lines([box(x - 8, 70, x + 8, 80)]) if isinstance(item, Text)]
    assert moved.y != words.y


def test_a_line_is_cut_at_the_edge_of_the_page_and_not_moved() -> None:
    one, two = tiles((300, 150), (190, 200), (11, 28))
    (run,) = one.line([(0, 40), (300, 40)], Role.OUTLINE)
    assert isinstance(run, Polyline)
    assert run.points == (one.at((0, 40)), one.at((one.width, 40)))
    (rest,) = two.line([(0, 40), (300, 40)], Role.OUTLINE)
    assert isinstance(rest, Polyline)
    assert rest.points[0] == pytest.approx(two.at((two.left, 40)))


def test_a_match_line_goes_through_no_hole_where_it_can() -> None:
    size, window, corner = (220.0, 150.0), (190.0, 200.0), (11.0, 28.0)
    (plain,) = {seam.coords[0][0] for page in tiles(size, window, corner) for seam in page.seams()}
    holes = [((40.0, 55.0), 15.0), ((plain, 55.0), 15.0), ((180.0, 55.0), 15.0)]
    one, two = tiles(size, window, corner, holes)
    (seam,) = {line.coords[0][0] for page in (one, two) for line in page.seams()}
    assert all(abs(seam - x) > reach for (x, _), reach in holes)
    assert one.left + one.width - two.left == pytest.approx(OVERLAP)
    assert max(one.width, two.width) <= window[0]
    assert all(any(page.shows(middle, reach) for page in (one, two)) for middle, reach in holes)


def test_a_match_line_stays_where_holes_are_everywhere() -> None:
    holes = [((float(x), 55.0), 15.0) for x in range(0, 220, 20)]
    usual = tiles((220.0, 150.0), (190.0, 200.0), (11.0, 28.0))
    assert tiles((220.0, 150.0), (190.0, 200.0), (11.0, 28.0), holes) == usual
