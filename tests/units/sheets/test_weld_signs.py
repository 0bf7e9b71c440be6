from gageline.sheets import Circle, Group, Polygon, Text, text_box, texts
from gageline.sheets.boxes import extent
from gageline.sheets.notation import Scribe
from gageline.sheets.weld_signs import SIGN_HALF, weld_list, weld_sign
from gageline.units import System
from jobs import piece_of
from pieces import at

FEET = Scribe(System.FT_IN, at("1/16"))
PLATE = '[[piece.plates]]\non = "near"\nx = "{0}"\nthickness = "3/8"\nwidth = "4"\nrows = 3\n'


def triangles(items: tuple[object, ...]) -> list[Polygon]:
    return [item for item in items if isinstance(item, Polygon) and item.role is not None]


def test_a_fillet_on_both_sides_has_two_triangles_and_two_sizes() -> None:
    items = tuple(weld_sign('1/4"', (4, 12), (10, 10), both=True, around=False))
    assert len(triangles(items)) == 2
    assert [text.text for text in texts(items)] == ['1/4"', '1/4"']
    assert not [item for item in items if isinstance(item, Circle)]


def test_the_upright_leg_of_the_triangle_is_at_the_left_under_the_line() -> None:
    items = tuple(weld_sign("6", (4, 12), (10, 10), both=False, around=True))
    (triangle,) = triangles(items)
    (x0, y0), (x1, y1), (x2, y2) = triangle.points
    assert x0 == x1 < x2
    assert y0 == y2 == 10 < y1
    assert [item for item in items if isinstance(item, Circle)]


def test_equal_welds_stand_in_one_line() -> None:
    beam = piece_of(PLATE.format("2'-0") + PLATE.format("4'-0"))
    (block,) = weld_list(beam, FEET, 110, 100)
    said = [text.text for text in texts(block.items)]
    assert 'both sides of the plate: 2 x 8 1/2", on 2 fittings' in said
    assert said.count(beam.fittings[0].part.mark) == 1


def test_the_arrow_stands_clear_of_a_long_mark() -> None:
    beam = piece_of(PLATE.format("2'-0") + 'mark = "GUSSET-7"\n')
    (block,) = weld_list(beam, FEET, 110, 100)
    (row,) = (item for item in block.items if isinstance(item, Group))
    (mark,) = (item for item in row.items if isinstance(item, Text) and item.text == "GUSSET-7")
    sign = tuple(item for item in row.items if item is not mark)
    assert extent(sign).left > extent((mark,)).right
    assert extent(sign).right <= 110


def test_a_long_list_goes_on_under_a_new_head() -> None:
    plates = "".join(PLATE.format(f"{n}'-0").replace("3/8", f"{n}/8") for n in range(2, 9))
    blocks = weld_list(piece_of(plates), FEET, 110, 26)
    assert [len([t for t in texts(block.items) if t.text == "Shop welds"]) for block in blocks] == [1, 1, 1]
    assert all(block.height <= 26 for block in blocks)


def test_nothing_welded_no_list() -> None:
    assert weld_list(piece_of(), FEET, 110, 100) == []


def test_sizes_stand_clear_of_the_reference_line() -> None:
    items = list(weld_sign('1/4"', (0.0, 5.0), (6.0, 3.0), both=True, around=False))
    for item in items:
        if isinstance(item, Text):
            ys = [y for _, y in text_box(item)]
            assert min(ys) >= 3.3 or max(ys) <= 2.7
            assert min(ys) >= 3.0 - SIGN_HALF
            assert max(ys) <= 3.0 + SIGN_HALF
