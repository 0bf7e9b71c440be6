import pytest

from gageline.part import End
from gageline.sheets import Box, Polygon, Side, extent, texts
from gageline.sheets.lining import Lining, plain_scale
from gageline.sheets.long_view import bevel_triangle, long_view, overall_lengths, row_room
from gageline.sheets.measured import Row, measure
from gageline.sheets.notation import Scribe
from gageline.sheets.sight import ELEVATION
from gageline.sheets.stick_views import picture_of
from gageline.units import Slope, System, parse_slope
from jobs import piece_of
from pieces import at

FEET = Scribe(System.FT_IN, at("1/16"))
ANGLES = '[[piece.angles]]\nend = "both"\nstock = "L4x3-1/2x5/16"\nrows = 3\nprojection = "1/2"\n'


def test_angles_past_both_ends_give_an_out_to_out() -> None:
    # common practice, no source: angles 1/2" past each end of 1'-4 1/2" of steel make 1'-5 1/2" out to out
    piece = piece_of(ANGLES, length='"1\'-4 1/2"')
    assert overall_lengths(piece, FEET) == [
        (0.0, 16.5, "1'-4 1/2\""),
        (-0.5, 17.0, "1'-5 1/2\" out to out"),
    ]
    assert len(overall_lengths(piece_of(), FEET)) == 1


def test_a_view_stays_between_its_limits_and_says_everything_once() -> None:
    piece = piece_of(ANGLES)
    picture = picture_of(piece, ELEVATION)
    lining = Lining(picture, plain_scale(picture.bounds[0], picture.bounds[2], 35, 1.5))
    measured = measure(piece, ELEVATION, FEET)
    made = long_view(lining, measured, "Near side", (0, 250), notes=Side.ABOVE, depth='15 11/16"')
    said = [text.text for text in texts(made.items)]
    assert said.count("Near side") == 1
    mark = piece.fittings[0].part.mark
    assert said.count(f"{mark} near and far side") == 2
    assert said.count('15 11/16"') == 1
    assert made.box.left >= 0
    assert made.box.right <= 250


def test_many_rows_reach_further_out() -> None:
    picture = picture_of(piece_of(), ELEVATION)
    few = [Row(12.0, 1.0, '3"')]
    many = [Row(15.0 - n * 0.2, 1.0, f'{n}"') for n in range(20)]
    assert row_room(picture, [], 1.0) == 0
    assert row_room(picture, many, 1.0) > row_room(picture, few, 1.0) > 4


@pytest.mark.parametrize(
    ("slope", "end", "box"),
    [
        (parse_slope("6 in 12"), End.RIGHT, Box(0, 0, 4, 8)),
        (-parse_slope("6 in 12"), End.RIGHT, Box(0, -8, 4, 0)),
        (parse_slope("6 in 12"), End.LEFT, Box(-4, 0, 0, 8)),
        (parse_slope("12 in 6"), End.RIGHT, Box(0, 0, 8, 4)),
    ],
)
def test_the_triangle_leans_as_the_end_does(slope: Slope, end: End, box: Box) -> None:
    items = tuple(bevel_triangle(slope, end, (0, 0), ("6", "12")))
    triangle = next(item for item in items if isinstance(item, Polygon))
    assert extent((triangle,)) == box
    assert [text.text for text in texts(items)] == ["6", "12"]
