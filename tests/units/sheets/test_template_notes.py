from shapely import Polygon, box

from gageline.sheets import Text, text_box
from gageline.sheets.template_notes import beside_holes, clear_texts, obstacles


def test_a_note_stands_beside_its_hole_on_the_steel() -> None:
    holes = [((30.0, 30.0), 10.0)]
    (note,) = beside_holes(holes, [("end 3", "heel 2", "13/16")], box(0, 0, 100, 100)) or []
    assert [text.text for text in note] == ["end 3", "heel 2", "13/16"]
    assert all(text.x > 40 and text.y > 40 for text in note)


def test_a_note_moves_to_the_corner_that_is_free() -> None:
    (note,) = beside_holes([((80.0, 80.0), 10.0)], [("end 3",)], box(0, 0, 100, 100)) or []
    assert note[0].x < 70


def test_no_room_for_one_is_no_notes_at_all() -> None:
    holes = [((12.0, 12.0), 10.0), ((60.0, 60.0), 10.0)]
    assert (
        beside_holes(holes, [("end 3 1/2 from here and further on still",), ("end 6",)], box(0, 0, 75, 75))
        is None
    )


def test_a_text_takes_the_first_place_that_is_clear_or_is_left_out() -> None:
    first, second = Text(10, 10, "heel"), Text(10, 40, "heel")
    wall = obstacles([[(0.0, 9.0), (100.0, 9.0)]], [])
    assert clear_texts([[first, second]], wall) == [second]
    assert clear_texts([[first]], wall) == []
    assert clear_texts([[second], [second]], []) == [second]
    assert Polygon(text_box(second)).area > 0


def test_a_hole_keeps_texts_off_its_cross() -> None:
    near = Text(33.0, 30.0, "x")
    assert clear_texts([[near]], obstacles([], [((20.0, 30.0), 10.0)])) == []
