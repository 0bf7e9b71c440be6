import pytest
import shapely
import shapely.affinity

from gageline.part import End
from gageline.sheets.sight import BOTTOM, ELEVATION, TOP, end_of, look
from gageline.sheets.slabs import Bore, Slab

PLATE = Slab(2, shapely.box(0, 0, 10, 4), -1, 0, (Bore((5, 2), 1, 1, (1, 0)),))


def behind(slab: Slab, bores: tuple[Bore, ...] = ()) -> Slab:
    return Slab(2, slab.shape, -3, -2, bores)


def test_a_plate_seen_on_its_face() -> None:
    picture = look([PLATE], ELEVATION)
    assert picture.bounds == (0, 0, 10, 4)
    assert picture.visible.length == pytest.approx(28)
    assert picture.hidden.length == 0
    assert [(s.bore.at, s.hidden) for s in picture.bores] == [((5, 2), False)]


def test_a_plate_seen_on_its_edge_shows_the_middle_of_its_hole() -> None:
    picture = look([PLATE], TOP)
    assert picture.bounds == (0, 0, 10, 1)
    assert picture.axes == (((5, 1), (5, 0)),)
    assert picture.bores == ()


def test_steel_behind_is_hidden_and_what_stands_past_it_is_not() -> None:
    far = Slab(2, shapely.box(8, 1, 14, 3), -3, -2)
    picture = look([PLATE, far], ELEVATION)
    assert picture.hidden.length == pytest.approx(2 + 2 + 2)
    assert picture.bounds == (0, 0, 14, 4)


def test_a_hole_through_two_plies_is_drawn_once_and_in_sight() -> None:
    picture = look([behind(PLATE, PLATE.bores), PLATE], ELEVATION)
    assert [s.hidden for s in picture.bores] == [False]


def test_a_hole_behind_steel_is_hidden() -> None:
    cover = Slab(2, shapely.box(0, 0, 10, 4), 1, 2)
    assert [s.hidden for s in look([PLATE, cover], ELEVATION).bores] == [True]


def test_a_step_in_a_flange_shows_on_the_side_it_faces() -> None:
    notched = shapely.Polygon([(0, -2), (10, -2), (10, 2), (3, 2), (3, 0), (0, 0)])
    flange = Slab(1, notched, 0, 0.5)
    near = look([flange], ELEVATION)
    assert near.visible.length == pytest.approx(2 * 10 + 3 * 0.5)
    far = look([Slab(1, shapely.affinity.scale(notched, 1, -1, origin=(0, 0)), 0, 0.5)], ELEVATION)
    assert far.visible.length == pytest.approx(2 * 10 + 2 * 0.5)
    assert far.hidden.length == pytest.approx(0.5)


def test_chords_of_an_arc_make_no_edges() -> None:
    disc = shapely.Point(5, 0).buffer(2, quad_segs=24)
    assert look([Slab(1, disc, 0, 1)], ELEVATION).visible.length == pytest.approx(2 * 4 + 2, abs=0.01)


def test_third_angle_keeps_the_near_side_beside_the_elevation() -> None:
    near = Slab(1, shapely.box(0, 1, 4, 3), 0, 0.5)
    assert look([near], TOP).bounds == (0, -3, 4, -1)
    assert look([near], BOTTOM).bounds == (0, 1, 4, 3)
    assert look([near], end_of(End.LEFT)).bounds == (1, 0, 3, 0.5)
    assert look([near], end_of(End.RIGHT)).bounds == (-3, 0, -1, 0.5)
