import math
from dataclasses import replace
from fractions import Fraction

import pytest

from gageline.layout.mark import Bench, MarkKind
from gageline.layout.seats import overall, seat_of
from gageline.part import End, EndCut, Face, Fitting, FittingKind, Join, Placement, extent_y
from gageline.units import Slope, System
from pieces import at, clip_angle, drilled, hole, piece

DEPTH = extent_y(piece().stock)[1]
MAIN = piece()  # W16X26, 10'-0, 15.7 deep, web 1/4, flanges 0.345
BENCH = Bench(MAIN, at("1/16"), System.FT_IN)


def stiffener(width: str = "2 1/2", low: str = "0.345", length: str = "15.01") -> Fitting:
    """A plate standing across the near side of the web, its middle at 4'-0."""
    plate = piece(f"PL3/8X{width}", f"{length}in", "s1")
    stand = Placement((at("4'") + at("3/16"), at(f"{low}in"), at("1/8")), (0, 1, 0), (0, 0, 1))
    return Fitting("near stiffener", FittingKind.STIFFENER, plate, stand, Face.NEAR, None, Join.WELDED)


def end_plate(drop: str = "1") -> Fitting:
    """A plate 1/2 x 8 x 1'-6 across the left end, its height along the depth; drop is above the top."""
    plate = piece("PL1/2X8", "1'-6", "e1", groups=(drilled(Face.FACE, hole("3", "2"), hole("3", "6")),))
    stand = Placement((at("0"), DEPTH + at(drop), at("4")), (0, -1, 0), (0, 0, -1))
    return Fitting("left end plate", FittingKind.END_PLATE, plate, stand, None, End.LEFT, Join.WELDED)


def test_an_angle_has_its_projection_drop_first_row_and_two_edges_on_the_web() -> None:
    row = drilled(Face.LEG_A, hole("1 1/2", "2"), hole("7 1/2", "2"))
    seat = seat_of(BENCH, clip_angle(MAIN, holes=(row,)))
    assert seat.projection == at("1/2")
    assert seat.drop == at("3.7in")  # 15.7 less 3 less 9
    assert seat.rise == at("3")
    assert seat.first_row == at("5.2in")
    assert [(mark.face, mark.kind) for mark in seat.lines] == [(Face.NEAR, MarkKind.EDGE_LINE)] * 3
    assert [mark.x.text for mark in seat.lines if mark.runs_across] == ['3 1/2"']
    assert [mark.y.text for mark in seat.lines if not mark.runs_across] == ['3 11/16"', "1'-0 11/16\""]
    assert seat.on_fitting == ()


def test_an_angle_short_of_the_right_end_projects_less_than_nothing() -> None:
    angle = replace(
        clip_angle(MAIN),
        end=End.RIGHT,
        placement=Placement((at("9'-6"), at("3"), at("1/8")), (0, 1, 0), (1, 0, 0)),
    )
    assert seat_of(BENCH, angle).projection == -at("2")


def test_a_stiffener_between_the_flanges_has_its_two_faces_struck_and_no_edge() -> None:
    seat = seat_of(BENCH, stiffener())
    assert [mark.x.text for mark in seat.lines] == ["3'-11 13/16\"", "4'-0 3/16\""]
    assert all(mark.runs_across for mark in seat.lines)
    assert seat.projection is None


def test_a_part_depth_stiffener_has_its_lower_edge_struck_too() -> None:
    seat = seat_of(BENCH, stiffener(low="7.355", length="8"))
    assert [mark.y.text for mark in seat.lines if not mark.runs_across] == ['8 3/8"']


def test_a_plate_on_the_top_flange_is_struck_from_the_middle_of_the_flange() -> None:
    plate = piece("PL3/8X3", "6", "p1")
    stand = Placement((at("4'"), DEPTH, at("3/16")), (1, 0, 0), (0, 1, 0))
    fitting = Fitting("top plate", FittingKind.PLATE, plate, stand, Face.TOP, None, Join.WELDED)
    seat = seat_of(BENCH, fitting)
    assert [mark.x.text for mark in seat.lines if mark.runs_across] == ["4'-0\"", "4'-6\""]
    assert [mark.y.text for mark in seat.lines if not mark.runs_across] == ['3/16" near', '3/16" far']
    assert seat.drop is None


def test_a_plate_lying_along_the_web_has_no_first_row_to_drop_to() -> None:
    plate = piece("PL3/8X4-1/2", "8 1/2", "p1", groups=(drilled(Face.FACE, hole("1 1/4", "3")),))
    stand = Placement((at("4'"), at("7"), at("1/8")), (1, 0, 0), (0, 0, 1))
    lying = Fitting("near plate", FittingKind.PLATE, plate, stand, Face.NEAR, None, Join.WELDED)
    standing = replace(lying, placement=Placement((at("4'"), at("7"), at("1/8")), (0, 1, 0), (0, 0, 1)))
    assert seat_of(BENCH, lying).first_row is None
    assert seat_of(BENCH, standing).first_row == at("7.45in")  # 15.7 less 7 less 1 1/4


def test_an_end_plate_carries_the_outline_of_the_beam() -> None:
    seat = seat_of(BENCH, end_plate())
    assert seat.lines == ()
    assert seat.drop == -at("1")
    assert seat.first_row == at("2")
    edges = [mark for mark in seat.on_fitting if mark.kind is MarkKind.EDGE_LINE]
    assert [mark.x.text for mark in edges if mark.runs_across] == ['1"', "1'-4 11/16\""]
    assert [mark.y.text for mark in edges if not mark.runs_across] == ['1 1/4"', '6 3/4"']
    (web,) = (mark for mark in seat.on_fitting if mark.kind is MarkKind.CENTRE_LINE)
    assert [spot.y.text for spot in web.spots] == ['4"', '4"']
    assert {mark.for_ for mark in seat.on_fitting} == {"B1 outline", "B1 web line"}


def test_a_line_that_falls_on_the_edge_of_the_plate_is_not_struck() -> None:
    # W16X26 is 5.50 wide: on a plate 5 1/2 wide both flange edges are the plate's own
    plate = piece("PL1/2X5-1/2", "1'-6", "e1")
    stand = Placement((at("0"), DEPTH + at("1"), at("2 3/4")), (0, -1, 0), (0, 0, -1))
    hair = replace(end_plate(), part=plate, placement=stand)
    off = replace(hair, placement=replace(stand, origin=(at("0"), DEPTH + at("1"), at("2.76in"))))
    for fitting in (hair, off):
        edges = [mark for mark in seat_of(BENCH, fitting).on_fitting if mark.kind is MarkKind.EDGE_LINE]
        assert [mark.x.text for mark in edges if mark.runs_across] == ['1"', "1'-4 11/16\""]
        assert [mark.y.text for mark in edges if not mark.runs_across] == []


def test_a_channel_leaves_the_back_of_its_web_on_the_plate() -> None:
    channel = piece("C12X20.7")
    plate = piece("PL1/2X6", "1'-2", "e1")
    stand = Placement((at("0"), at("13"), at("1 1/2")), (0, -1, 0), (0, 0, -1))
    seat = seat_of(
        Bench(channel, at("1/16"), System.FT_IN), replace(end_plate(), part=plate, placement=stand)
    )
    (web,) = (mark for mark in seat.on_fitting if mark.kind is MarkKind.CENTRE_LINE)
    edges = [
        mark.y.text for mark in seat.on_fitting if mark.kind is MarkKind.EDGE_LINE and not mark.runs_across
    ]
    # the flanges are 2.94 wide (AISC Manual Table 1-5)
    assert (web.y.text, edges) == ('4 1/2"', ['1 9/16"', '4 1/2"'])


def test_a_round_pipe_leaves_its_two_middle_lines_on_the_plate() -> None:
    pipe = piece("HSS6.000X0.250")
    plate = piece("PL3/4X12", "1'-0", "b1")
    stand = Placement((at("0"), at("9"), at("6")), (0, -1, 0), (0, 0, -1))
    seat = seat_of(Bench(pipe, at("1/16"), System.FT_IN), replace(end_plate(), part=plate, placement=stand))
    assert {mark.kind for mark in seat.on_fitting} == {MarkKind.CENTRE_LINE}
    assert [mark.x.text for mark in seat.on_fitting if mark.runs_across] == ['6"']
    assert [mark.y.text for mark in seat.on_fitting if not mark.runs_across] == ['6"']


def test_out_to_out_is_over_everything() -> None:
    assert overall(MAIN, ()) == (at("0"), at("10'"))
    assert overall(MAIN, (clip_angle(MAIN), end_plate())) == (-at("1/2"), at("10'"))


def test_the_outline_of_a_sloped_end_is_struck_where_it_lies_on_the_plate() -> None:
    # 6 in 12: the plate stands plumb, 15.7 deep is 15.7 1.118 = 17.55 on it; it was 15.7/1.118 = 14.04 before
    sloped = replace(MAIN, left=EndCut(Slope(Fraction(-1, 2))))
    scale = math.hypot(1.0, 0.5)
    down, toward = (-0.5 / scale, -1.0 / scale, 0.0), (0.0, 0.0, -1.0)
    high = sloped.end_x(End.LEFT, DEPTH, at("0")).inches
    top = (high + 0.25 / scale, DEPTH.inches + 0.5 / scale, 4.0)  # half an inch over the top, along the cut
    origin = (at(f"{top[0]:.6f}in"), at(f"{top[1]:.6f}in"), at("4"))
    plate = replace(end_plate().part, length=at("19"))
    fitting = replace(end_plate(), part=plate, placement=Placement(origin, down, toward))
    seat = seat_of(Bench(sloped, at("1/16"), System.FT_IN), fitting)
    edges = [
        mark.x.true.inches for mark in seat.on_fitting if mark.runs_across and mark.kind is MarkKind.EDGE_LINE
    ]
    assert edges == pytest.approx([0.5, 0.5 + 15.7 * scale], abs=1e-3)
