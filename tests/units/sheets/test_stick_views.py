import pytest

from gageline.errors import GagelineError
from gageline.sheets import texts
from gageline.sheets.notation import Scribe
from gageline.sheets.scales import scales
from gageline.sheets.sight import ELEVATION
from gageline.sheets.stick_views import picture_of, sightings, stick_views
from gageline.units import System
from jobs import piece_of
from pieces import at

FEET = Scribe(System.FT_IN, at("1/16"))
CHOICE = scales(System.FT_IN, 4)


@pytest.mark.parametrize(
    ("stock", "names"),
    [
        ("W16x26", ["Top", "Near side"]),
        ("HSS6x6x3/8", ["Near side"]),
        ("L4x3x1/4", ['4" leg', '3" leg']),
        ("PL1/2x8", [""]),
    ],
)
def test_a_piece_gets_the_views_it_needs(stock: str, names: list[str]) -> None:
    assert [one.name for one in sightings(piece_of(stock=stock), FEET)] == names


def test_the_largest_scale_with_room_is_taken() -> None:
    piece = piece_of()
    seen = sightings(piece, FEET)
    large, scale = stick_views(piece, seen, FEET, (250, 150), CHOICE)
    small, smaller = stick_views(piece, seen, FEET, (250, 90), CHOICE)
    assert scale.one_to < smaller.one_to
    assert large.box.height <= 150
    assert small.box.height <= 90


def test_a_fitting_is_drawn_unbroken_where_that_can_be() -> None:
    piece = piece_of(stock="PL1/2x4", length='"2\'-0"')
    seen = sightings(piece, FEET)
    _, broken = stick_views(piece, seen, FEET, (120, 90), CHOICE)
    _, whole = stick_views(piece, seen, FEET, (120, 90), CHOICE, detail=True)
    assert (broken.one_to, whole.one_to) == (4, 8)


def test_the_bevel_stands_beside_its_end() -> None:
    piece = piece_of('right = { bevel = "3 1/2 in 12", long = "top" }')
    views, _ = stick_views(piece, sightings(piece, FEET), FEET, (250, 150), CHOICE)
    said = [text.text for text in texts(views.items)]
    assert "3 1/2" in said
    assert "12" in said
    assert "cut 3 1/2 in 12, long at top" in said


def test_paper_too_small_is_refused() -> None:
    piece = piece_of()
    with pytest.raises(GagelineError, match="piece B1 cannot be drawn on this paper"):
        stick_views(piece, sightings(piece, FEET), FEET, (50, 10), CHOICE)


def test_the_picture_holds_the_fittings() -> None:
    piece = piece_of(
        '[[piece.angles]]\nend = "left"\nstock = "L4x3-1/2x5/16"\nrows = 3\nprojection = "1/2"\n'
    )
    assert picture_of(piece, ELEVATION).bounds == pytest.approx((-0.5, 0, 120, 15.7), abs=1e-3)
