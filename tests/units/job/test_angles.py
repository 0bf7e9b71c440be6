from __future__ import annotations

import pytest

from gageline.job import JobProblems
from gageline.part import Assembly, BoltSet, Face, Join, bounds, face_point
from gageline.steel import HoleKind
from gageline.units import Length
from jobs import fitting_of, inches, mm, piece_of, section_of

ANGLES = '[[piece.angles]]\nend = "{end}"\nstock = "L4x3-1/2x5/16"\nrows = 3\n'


def with_angles(more: str = "", end: str = "both", **given: str) -> Assembly:
    return piece_of(ANGLES.format(end=end) + more, **given)


def test_steel_of_16_and_a_half_with_half_inch_projections_measures_17_and_a_half_out_to_out() -> None:
    """Common practice, no source: 1'-4 1/2" of steel and 1/2" past each end make 1'-5 1/2"."""
    piece = with_angles('projection = "1/2"\n', length='"1\'-4 1/2"')
    left = bounds(fitting_of(piece, "left near angle"))[0][0]
    right = bounds(fitting_of(piece, "right near angle"))[0][1]
    assert right - left == inches("1'-5 1/2")


def test_rows_three_down_at_three_read_3_6_9_on_web_and_angle() -> None:
    """Common practice, no source: drop 3", pitch 3" put the rows 3, 6 and 9 down from the top."""
    piece = with_angles()
    top = section_of(piece).d
    group = next(group for group in piece.main.groups if group.name == "left end, for the angles")
    assert [top - hole.y for hole in group.holes] == [inches("3"), inches("6"), inches("9")]
    angle = fitting_of(piece, "left near angle")
    for hole_group in angle.part.groups:
        heights = sorted(
            (top - angle.placement.point((hole.x, Length(0), Length(0)))[1] for hole in hole_group.holes),
        )
        assert heights == [inches("3"), inches("6"), inches("9")]


def test_the_angle_lies_on_the_web_with_its_heel_past_the_end() -> None:
    piece = with_angles()
    d, tw = section_of(piece).d, section_of(piece).tw
    (x0, x1), (y0, y1), (z0, z1) = bounds(fitting_of(piece, "left near angle"))
    assert (x0, x1) == (inches("-1/2"), inches("3"))  # the 3 1/2 leg lies on the web
    assert (y0, y1) == (d - inches("10 1/4"), d - inches("1 3/4"))  # 8 1/2 long
    near, _ = tw.parts(2)
    assert (z0, z1) == (near, near + inches("4"))


def test_bolt_holes_of_web_and_angle_fall_on_one_line() -> None:
    piece = with_angles('web_gage = "2"\n')
    group = next(group for group in piece.main.groups if group.name.startswith("right"))
    angle = fitting_of(piece, "right far angle")
    on_web = next(group for group in angle.part.groups if group.name == "web leg")
    places = {
        angle.placement.point(face_point(angle.part.stock, on_web.face, hole.x, hole.y))[:2]
        for hole in on_web.holes
    }
    assert {(hole.x, hole.y) for hole in group.holes} == places
    assert {hole.x for hole in group.holes} == {inches("10'-0") - inches("1 1/2")}


def test_bolts_through_the_web_know_their_grip() -> None:
    piece = with_angles(end="left")
    names = ("left near angle", "left far angle")
    grip = section_of(piece).tw + inches("5/16") * 2
    assert piece.bolts == (
        BoltSet(names, "3/4", 3, grip, field=False),
        BoltSet(names, "3/4", 6, None, field=True),
    )


def test_one_sided_angles_grip_one_thickness_and_mark_their_own_face() -> None:
    piece = with_angles('sides = "far"\n', end="left")
    assert piece.bolts[0].grip == section_of(piece).tw + inches("5/16")
    assert [(group.name, group.face) for group in piece.main.groups] == [
        ("left end, for the angles", Face.FAR)
    ]


def test_welded_angles_take_a_weld_along_toe_top_and_bottom_and_no_holes_in_the_web() -> None:
    piece = with_angles('to_web = "welded"\nweld = "3/16"\nout_hole = "SSL"\n', end="left")
    weld = piece.welds[0]
    assert (weld.fitting, weld.size, weld.runs) == ("left near angle", inches("3/16"), 1)
    assert weld.length == inches("8 1/2") + inches("3") * 2  # the 3 1/2 leg less 1/2 past the end
    assert weld.where == "toe, top and bottom of the web leg"
    assert not piece.main.groups
    angle = fitting_of(piece, "left near angle")
    assert angle.join is Join.WELDED
    assert [group.kind for group in angle.part.groups] == [HoleKind.SSL]


def test_angles_welded_both_ways_have_no_holes() -> None:
    piece = piece_of(
        '[[piece.angles]]\nend = "left"\nstock = "L4x3-1/2x5/16"\nlength = "6"\n'
        'to_web = "welded"\nout = "welded"\n'
    )
    assert all(not fitting.part.groups for fitting in piece.fittings)
    assert not piece.bolts


def test_angles_stand_on_a_channel_a_tube_and_a_tee() -> None:
    channel = with_angles(stock="C12x20.7", end="left")
    web = section_of(channel).tw
    assert bounds(fitting_of(channel, "left near angle"))[2][0] == Length(0)
    assert bounds(fitting_of(channel, "left far angle"))[2][1] == -web
    tube = with_angles('to_web = "welded"\n', stock="HSS8x4x1/4", end="left")
    assert bounds(fitting_of(tube, "left near angle"))[2][0] == inches("2")
    tee = with_angles(stock="WT8x18", end="left")
    _, far_web = section_of(tee).tw.parts(2)
    assert bounds(fitting_of(tee, "left far angle"))[2][1] == -far_web


def test_a_symmetric_pattern_has_no_hands_and_one_mark() -> None:
    piece = with_angles()
    assert len({fitting.part for fitting in piece.fittings}) == 1


def test_a_longer_end_makes_true_hands_with_two_marks() -> None:
    piece = with_angles('length = "10"\n')
    marks = {fitting.name: fitting.part.mark for fitting in piece.fittings}
    assert marks["left near angle"] == marks["right far angle"]
    assert marks["left far angle"] == marks["right near angle"]
    assert marks["left near angle"] != marks["left far angle"]


def test_metric_angles_in_metric_practice() -> None:
    piece = piece_of(
        '[[piece.angles]]\nend = "left"\nstock = "L 100x100x10"\nrows = 3\nweb_gage = 55\nout_gage = 50\n',
        stock="IPE 300",
        length="4200",
        units="mm",
    )
    x, y, _ = bounds(fitting_of(piece, "left near angle"))
    assert x == (mm(-10), mm(90))
    assert y == (mm(300 - 75 - 140 - 40), mm(300 - 75 + 40))
    assert {hole.x for hole in piece.main.groups[0].holes} == {mm(45)}


def test_one_leg_welded_and_out_gage_is_refused() -> None:
    with pytest.raises(JobProblems, match="out_gage is given for a leg that is welded: leave it out"):
        with_angles('out = "welded"\nout_gage = "2"\n', end="left")


def test_both_legs_welded_needs_a_length() -> None:
    with pytest.raises(JobProblems, match="both legs are welded: give length, and leave out rows"):
        with_angles('out = "welded"\nto_web = "welded"\n', end="left")


def test_bolts_through_a_tube_are_refused() -> None:
    with pytest.raises(JobProblems, match='is hollow and takes no bolts through it: give to_web = "welded"'):
        with_angles(stock="HSS8x4x1/4", end="left")


def test_a_stagger_lowers_the_rows_of_the_outstanding_leg_only() -> None:
    piece = with_angles('stagger = "1 1/2"\n')
    top = section_of(piece).d
    angle = fitting_of(piece, "left near angle")
    heights = {
        group.name: sorted(
            top - angle.placement.point((hole.x, Length(0), Length(0)))[1] for hole in group.holes
        )
        for group in angle.part.groups
    }
    assert heights["web leg"] == [inches("3"), inches("6"), inches("9")]
    assert heights["outstanding leg"] == [inches("4 1/2"), inches("7 1/2"), inches("10 1/2")]
    assert angle.part.length == inches("10")  # 1 1/4 past the first row above and the last one below


def test_a_stagger_of_a_welded_leg_is_refused() -> None:
    with pytest.raises(JobProblems, match="stagger is given, but one leg is welded: leave it out"):
        with_angles('stagger = "1 1/2"\nout = "welded"\n')


def test_slots_of_angles_and_of_the_web_behind_them_lie_across_the_reaction() -> None:
    """AISC 360-22 J3.3: slots of a bearing joint lie square to the load, so across a plumb angle."""
    piece = with_angles('hole = "SSL"\n')
    angles = {hole.angle for fit in piece.fittings for group in fit.part.groups for hole in group.holes}
    assert angles == {90}
    assert {hole.angle for group in piece.main.groups for hole in group.holes} == {0}


def test_slots_told_to_lie_along_the_angle_lie_upright_in_the_web_too() -> None:
    piece = with_angles('hole = "SSL"\nturn = "along"\n')
    assert {hole.angle for group in piece.main.groups for hole in group.holes} == {90}
    assert {
        hole.angle for group in fitting_of(piece, "left near angle").part.groups for hole in group.holes
    } == {0}
