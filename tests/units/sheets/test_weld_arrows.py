"""Welding symbols on the elevation: where they point, and that they touch nothing."""

import shapely

from assembling import bay, detailed
from gageline.part import Assembly, bounds
from gageline.sheets import Box, Circle, Item, Line, Polygon, text_box, texts
from gageline.sheets.lining import Lining, plain_scale
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import leaves
from gageline.sheets.sight import ELEVATION
from gageline.sheets.stick_views import picture_of
from gageline.sheets.weld_arrows import weld_arrows
from gageline.units import System
from jobs import piece_of
from pieces import at

FEET = Scribe(System.FT_IN, at("1/16"))
ACROSS = '[[piece.plates]]\non = "{0}"\nx = "5\'-0"\nthickness = "3/8"\nwidth = "4"\nrows = 3\n'
ALONG = f'{ACROSS.format("near")}runs = "along"\noffset = 0\n'
STIFFENERS = '[[piece.stiffeners]]\nx = "5\'-0"\nthickness = "3/8"\n'
END_PLATE = '[[piece.end_plates]]\nend = "left"\nthickness = "1/2"\nwidth = "8"\nlength = "1\'-6"\n'
SCALE = 3.0  # mm for one inch


def lining_of(piece: Assembly) -> Lining:
    picture = picture_of(piece, ELEVATION)
    return Lining(picture, plain_scale(picture.bounds[0], picture.bounds[2], 20.0, SCALE))


def arrows(piece: Assembly, more: tuple[Item, ...] = ()) -> tuple[Item, ...]:
    lining = lining_of(piece)
    box = Box(0.0, -10.0, 420.0, lining.height + 10.0)
    return tuple(weld_arrows(piece, lining, [*lining.items(), *more], box, FEET))


def tips(items: tuple[Item, ...]) -> list[tuple[float, float]]:
    """Where the arrows point: the first of two lines of each symbol begins there."""
    return [(line.x1, line.y1) for line in [i for i in items if isinstance(i, Line)][::2]]


def test_the_arrow_points_at_an_edge_of_a_plate_that_stands_across() -> None:
    piece = piece_of(ACROSS.format("near"))
    (tip,) = tips(arrows(piece))
    lining = lining_of(piece)
    (left, right), (low, high), _ = bounds(piece.fittings[0])
    assert tip[0] in {lining.x(left.inches), lining.x(right.inches)}
    assert lining.y(high.inches) < tip[1] < lining.y(low.inches)
    assert [text.text for text in texts(arrows(piece))] == ['1/4"', '1/4"']


def test_of_a_plate_that_lies_along_it_points_at_a_long_edge() -> None:
    piece = piece_of(ALONG)
    (tip,) = tips(arrows(piece))
    _, (_, high), _ = bounds(piece.fittings[0])
    assert tip[1] == lining_of(piece).y(high.inches)
    elbow = next(line for line in arrows(piece) if isinstance(line, Line))
    assert abs(elbow.y2 - tip[1]) >= 5  # never along the edge


def test_the_two_welds_of_a_stiffener_have_a_symbol_each_and_the_far_one_none() -> None:
    found = tips(arrows(piece_of(STIFFENERS)))
    assert len(found) == 2
    assert abs(found[0][1] - found[1][1]) > 10


def test_a_plate_out_of_sight_is_left_to_the_list() -> None:
    assert arrows(piece_of(ACROSS.format("far"))) == ()


def test_an_end_plate_has_the_circle_of_all_around_at_the_joint() -> None:
    piece = piece_of(END_PLATE)
    found = arrows(piece)
    assert sum(isinstance(item, Circle) for item in found) == 1
    assert [x for x, _ in tips(found)] == [lining_of(piece).x(0.0)]


def test_no_symbol_lies_on_a_line_or_a_text() -> None:
    piece = piece_of(ACROSS.format("near") + STIFFENERS.replace("5'", "6'") + END_PLATE)
    signs = [shapely.Polygon(text_box(text)) for text in texts(arrows(piece))]
    signs += [
        shapely.Polygon(item.points) for item in arrows(piece) if isinstance(item, Polygon) and item.role
    ]
    lines = [
        shapely.LineString([(i.x1, i.y1), (i.x2, i.y2)])
        for i, _, _ in leaves(tuple(lining_of(piece).items()))
        if isinstance(i, Line)
    ]
    assert len(signs) > 8
    assert not shapely.STRtree(lines).query(signs, predicate="intersects").size


def test_where_no_room_is_clear_there_is_no_symbol() -> None:
    piece = piece_of(ACROSS.format("near"))
    hatched = tuple(Line(0.0, y * 2.0 - 20.0, 420.0, y * 2.0 - 20.0) for y in range(60))
    assert arrows(piece, hatched) == ()


def test_the_arrow_of_a_tongue_comes_over_it_to_its_cap() -> None:
    pieces = detailed(bay(beam="HSS8X4X1/4", girder="HSS16X8X3/8")).assemblies
    piece = next(one for one in pieces if one.mark == "B1")
    picture = picture_of(piece, ELEVATION)
    lining = Lining(picture, plain_scale(picture.bounds[0], picture.bounds[2], 20.0, 2 * SCALE))
    box = Box(-40.0, -10.0, 840.0, lining.height + 10.0)
    heads = [one for one in weld_arrows(piece, lining, lining.items(), box, FEET) if isinstance(one, Polygon)]
    points = {round(one.points[0][0], 6) for one in heads if one.fill is not None}
    assert points == {round(lining.x(0.0), 6), round(lining.x(-0.375), 6)}
