"""Labels that find their own place."""

from collections.abc import Sequence

import pytest
import shapely

from gageline.sheets import Box, Line, Polygon, Text, Weight
from gageline.sheets.placing import Board, Label, Spot, beside_line, placed_labels, round_about

FRAME = Box(0.0, 0.0, 100.0, 100.0)
EMPTY = Board(FRAME, (), ())


def label(*spots: Spot, text: str = "B1 W16X26", halves: tuple[Label, Label] | None = None) -> Label:
    return Label(((text, Weight.REGULAR),), spots, ((50.0, 50.0),), halves=halves)


def only_text(items: Sequence[object] | None) -> list[Text]:
    assert items is not None
    return [item for item in items if isinstance(item, Text)]


def test_cheapest_spot_is_taken() -> None:
    placed = placed_labels([label(Spot(20, 20, cost=2.0), Spot(70, 30, cost=1.0))], EMPTY)
    (text,) = only_text(placed)
    assert text.x + label().width / 2 == pytest.approx(70)


def test_second_label_of_one_place_stands_elsewhere() -> None:
    spots = (Spot(30, 30), Spot(30, 60, cost=1.0))
    one, two = only_text(placed_labels([label(*spots), label(*spots)], EMPTY))
    assert abs(one.y - two.y) == pytest.approx(30)


def test_solid_is_never_written_on() -> None:
    board = Board(FRAME, (shapely.box(20, 25, 40, 35),), ())
    (text,) = only_text(placed_labels([label(Spot(30, 30), Spot(60, 80, cost=9.0))], board))
    assert text.x > 40


def test_line_is_kept_off_where_another_spot_is_free() -> None:
    board = Board(FRAME, (), (shapely.LineString([(0, 30), (100, 30)]),))
    (text,) = only_text(placed_labels([label(Spot(30, 30), Spot(30, 60, cost=9.0))], board))
    assert text.y > 50


def test_label_without_a_spot_gets_a_leader_from_its_target() -> None:
    placed = placed_labels([label()], EMPTY)
    assert placed is not None
    (leader,) = [item for item in placed if isinstance(item, Line)]
    assert (leader.x1, leader.y1) == (50.0, 50.0)


def test_halves_stand_where_the_whole_does_not_fit() -> None:
    halves = (label(Spot(30, 30), text="B1"), label(Spot(30, 40), text="W16X26"))
    texts = only_text(placed_labels([label(halves=halves)], EMPTY))
    assert [text.text for text in texts] == ["B1", "W16X26"]


def test_the_first_half_is_read_first_where_both_ways_have_room() -> None:
    """The mark would rather stand where it comes after its section."""
    mark = label(Spot(60, 30), Spot(20, 30, cost=2.0), text="B1")
    section = label(Spot(40, 30), text="W16X26")
    one, two = only_text(placed_labels([label(halves=(mark, section))], EMPTY))
    assert [one.text, two.text] == ["B1", "W16X26"]
    assert one.x < two.x
    up = [Spot(30, 20, 90.0), Spot(30, 60, 90.0, cost=2.0)]  # read from below, where y is greater
    halves = label(*up, text="B1"), label(Spot(30, 40, 90.0), text="W16X26")
    one, two = only_text(placed_labels([label(halves=halves)], EMPTY))
    assert one.y > two.y


def test_line_under_a_label_is_broken_by_white() -> None:
    grid = tuple(shapely.LineString([(x, 0), (x, 100)]) for x in range(0, 101, 4))
    placed = placed_labels([label(Spot(30, 30))], Board(FRAME, (), grid))
    assert placed is not None
    assert isinstance(placed[-2], Polygon)
    assert isinstance(placed[-1], Text)


def test_no_room_at_all_is_said() -> None:
    board = Board(FRAME, (shapely.box(0, 0, 100, 100),), ())
    assert placed_labels([label(Spot(30, 30))], board) is None


def test_a_label_left_over_chooses_first_the_next_time() -> None:
    """Two clean places against three dear ones: who chooses first by that takes the other's only place."""
    solids = (shapely.box(0, 0, 100, 25), shapely.box(0, 35, 100, 100))  # room for one row of labels only
    grid = (shapely.LineString([(70, 25), (70, 35)]),)
    wide = label(Spot(20, 30), Spot(21, 30), text="C2B, place C3B")
    narrow = label(Spot(25, 30), Spot(70, 30, cost=1.0))
    texts = only_text(placed_labels([wide, narrow], Board(FRAME, solids, grid)))
    assert sorted(text.text for text in texts) == ["B1 W16X26", "C2B, place C3B"]


@pytest.mark.parametrize(
    ("start", "end", "rotation"),
    [
        ((0, 0), (50, 0), 0.0),
        ((50, 0), (0, 0), 0.0),
        ((0, 50), (0, 0), 90.0),
        ((0, 0), (0, 50), 90.0),
        ((0, 30), (30, 0), 45.0),
    ],
)
def test_text_along_a_line_reads_from_below_or_from_the_right(
    start: tuple[float, float], end: tuple[float, float], rotation: float
) -> None:
    assert {round(spot.rotation, 6) for spot in beside_line(start, end, 10, 3)} == {rotation}


def test_short_line_offers_no_place() -> None:
    assert beside_line((0, 0), (10, 0), 9.5, 3) == ()


def test_places_round_a_point_leave_it_free() -> None:
    assert all(abs(s.x) >= 5 + 1 or abs(s.y) >= 2 + 1 for s in round_about((0, 0), 10, 4))


def test_a_text_does_not_end_against_a_line() -> None:
    right = 30 + label().width / 2
    board = Board(FRAME, (), (shapely.LineString([(right + 0.9, 0), (right + 0.9, 100)]),))
    (text,) = only_text(placed_labels([label(Spot(30, 30), Spot(30 - 1, 60, cost=9.0))], board))
    assert text.y > 50
