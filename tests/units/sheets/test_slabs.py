import math
from dataclasses import replace

import pytest
import shapely

from gageline.part import Assembly, End, Face, Fitting, FittingKind, Join, Placement
from gageline.sheets.sight import TOP, look
from gageline.sheets.slabs import axis_of, section_shape, slabs_of_fitting, slabs_of_main
from gageline.steel import Section, find
from jobs import fitting_of, piece_of
from pieces import ONE_OF_EACH, at, drilled, hole, leaning_aside, leaning_plate, piece

COPED = 'copes = [{ end = "left", flange = "top", length = "4", depth = "1 1/2" }]\n'
ANGLED = COPED + '[[piece.angles]]\nend = "left"\nstock = "L4x3-1/2x5/16"\nrows = 3\n'


@pytest.mark.parametrize(
    ("stock", "count"),
    list(zip(ONE_OF_EACH, (3, 3, 2, 4, 4, 2, 1), strict=True)),
)
def test_every_profile_comes_apart_into_its_plates(stock: str, count: int) -> None:
    assert len(slabs_of_main(piece_of(stock=stock), 2)) == count


def test_flanges_and_web_of_a_beam_fill_its_depth_without_overlap() -> None:
    web, top, bottom = slabs_of_main(piece_of(), 2)
    assert web.shape.bounds == pytest.approx((0, 0.345, 120, 15.7 - 0.345), abs=1e-3)
    assert (top.low, top.high) == pytest.approx((15.7 - 0.345, 15.7), abs=1e-5)
    assert (bottom.low, bottom.high) == pytest.approx((0, 0.345), abs=1e-5)
    assert top.shape.bounds == pytest.approx((0, -2.75, 120, 2.75))


def test_a_cope_takes_flange_and_web() -> None:
    web, top, _ = slabs_of_main(piece_of(COPED), 2)
    assert top.shape.bounds[0] == pytest.approx(4)
    assert top.side is not None
    assert top.side.bounds[0] == pytest.approx(4)
    assert web.shape.bounds == pytest.approx((0, 0.345, 120, 15.7 - 0.345), abs=1e-3)


@pytest.mark.parametrize("axis", [1, 2])
def test_the_back_of_a_channel_and_the_heel_of_an_angle_are_one_face(axis: int) -> None:
    for stock in ("C8x11.5", "L6x4x1/2"):
        depth = {"C8x11.5": 8.0, "L6x4x1/2": 6.0}[stock]
        facing = slabs_of_main(piece_of(stock=stock), 2)[0]
        assert facing.shape.bounds[3] == pytest.approx(depth)
        slabs = slabs_of_main(piece_of(stock=stock), axis)
        assert all(slab.shape.area > 0 for slab in slabs)


def test_a_fitting_stands_where_it_is_placed() -> None:
    assembly = piece_of(ANGLED)
    fitting = fitting_of(assembly, "left near angle")
    # the short leg lies on the web, so that the angle's y runs along z
    assert axis_of(fitting.placement, 2) == 1
    assert axis_of(fitting.placement, 1) == 0
    out_leg, web_leg = slabs_of_fitting(fitting, 2)
    # 1/2 past the end, 3 1/2 in along the web; upper end 3 - 1 1/4 = 1 3/4 under the top, 8 1/2 long
    assert web_leg.shape.bounds == pytest.approx((-0.5, 15.7 - 10.25, 3.0, 15.7 - 1.75), abs=1e-3)
    assert (web_leg.low, web_leg.high) == pytest.approx((0.125, 0.4375), abs=1e-3)
    assert out_leg.axis == 0
    assert (out_leg.low, out_leg.high) == pytest.approx((-0.5, -0.1875), abs=1e-3)
    assert [bore.at[1] for bore in web_leg.bores] == pytest.approx([12.7, 9.7, 6.7], abs=1e-3)


def test_an_end_view_shows_the_coped_end_before_the_whole_section() -> None:
    front, rest = slabs_of_main(piece_of(COPED), 0, End.LEFT)
    assert (front.low, front.high, rest.high) == pytest.approx((0, 4, 120))
    assert front.shape.bounds[2] == pytest.approx(14.2)
    assert rest.shape.bounds[2] == pytest.approx(15.7)
    assert len(slabs_of_main(piece_of(COPED), 0, End.RIGHT)) == 1


@pytest.mark.parametrize("name", ONE_OF_EACH)
def test_the_cross_section_has_the_tables_area(name: str) -> None:
    stock = find(name)
    area = stock.area if isinstance(stock, Section) else 0.5 * 8
    assert section_shape(stock).area == pytest.approx(area, rel=0.02)


def test_a_plate_that_leans_is_seen_leaning() -> None:
    """A plumb end plate 1/2 thick and 10 high on a slope of 6 in 12 lies 4.47 along the beam."""
    scale = math.hypot(1.0, 0.5)
    plate = piece("PL1/2X8", "10", "e1")
    stand = Placement((at("0"), at("10"), at("4")), (-0.5 / scale, -1.0 / scale, 0.0), (0.0, 0.0, -1.0))
    fitting = Fitting("left end plate", FittingKind.END_PLATE, plate, stand, None, End.LEFT, Join.WELDED)
    (slab,) = slabs_of_fitting(fitting, 2)
    assert slab.side is not None
    low_x, low_y, high_x, high_y = slab.side.bounds
    assert high_x - low_x == pytest.approx(10 * 0.5 / scale + 0.5 / scale, abs=1e-6)
    assert high_y - low_y == pytest.approx(10 / scale + 0.25 / scale, abs=1e-6)
    assert slab.side.area == pytest.approx(5.0)
    square = replace(fitting, placement=Placement(stand.origin, (0.0, -1.0, 0.0), (0.0, 0.0, -1.0)))
    assert slabs_of_fitting(square, 2)[0].side is None


def test_a_plate_that_leans_to_the_near_side_is_seen_leaning_from_the_top() -> None:
    """5 long and 3/8 thick at 3 in 4: over 5 x 0.6 and 3/8 x 0.8 of the face."""
    (slab,) = slabs_of_fitting(leaning_aside(Face.TOP, 1), 1)
    assert slab.side is not None
    low_x, low_z, high_x, high_z = slab.side.bounds
    assert high_x - low_x == pytest.approx(9)
    assert high_z - low_z == pytest.approx(5 * 0.6 + 0.375 * 0.8)
    column = Assembly(piece("HSS6X6X3/8"), 1, (leaning_aside(Face.TOP, 1),))
    seen = look([*slabs_of_main(column, 1), slab], TOP).visible
    assert seen.intersects(shapely.Point(60, -low_z))
    assert seen.intersects(shapely.Point(60, -high_z))


def test_the_middles_of_holes_run_through_a_plate_that_leans_where_it_is_seen() -> None:
    """A hole 3 out along 3 in 4 stands 3 x 0.6 to the side; 3/8 of steel covers 3/8 x 0.8 there."""
    fitting = leaning_aside(Face.TOP, 1)
    holed = replace(fitting, part=replace(fitting.part, groups=(drilled(Face.FACE, hole("3", "2")),)))
    (slab,) = slabs_of_fitting(holed, 1)
    ((low, high),) = slab.axes
    assert (low[0], high[0]) == pytest.approx((62, 62))
    assert sorted(abs(z) for z in (low[1], high[1])) == pytest.approx([1.8, 1.8 + 0.375 * 0.8])
    picture = look([*slabs_of_main(Assembly(piece("HSS6X6X3/8"), 1), 1), slab], TOP)
    (axis,) = picture.axes
    assert sorted(v for _, v in axis) == pytest.approx([-1.8 - 0.3, -1.8])


def test_nothing_is_drawn_beside_a_plate_that_leans_along() -> None:
    beam = Assembly(piece(), 1, (leaning_plate(-1),))
    (plate,) = slabs_of_fitting(beam.fittings[0], 1)
    assert plate.side is not None
    steel = [shapely.transform(plate.side, lambda spots: spots * (1, -1)), shapely.box(0, -2.75, 120, 2.75)]
    picture = look([*slabs_of_main(beam, 1), plate], TOP)
    drawn = shapely.union(picture.visible, picture.hidden)
    assert drawn.within(shapely.union_all(steel).buffer(1e-3))
