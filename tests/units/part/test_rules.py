from dataclasses import replace
from fractions import Fraction

import pytest

from gageline.part import (
    Clip,
    Cope,
    End,
    EndCut,
    Face,
    FlangeTrim,
    HoleGroup,
    Opening,
    Part,
    Severity,
    Side,
    check_part,
    face_range,
    faces_of,
)
from gageline.steel import HoleKind
from gageline.units import ZERO, System, parse_slope
from pieces import ONE_OF_EACH, at, drilled, hole, piece

TOP = (Cope(End.LEFT, Face.TOP, at("4in"), at("1 1/2"), at("1/2")),)


def messages(part: Part, system: System = System.FT_IN) -> list[str]:
    return [finding.text() for finding in check_part(part, system)]


def only(part: Part, system: System = System.FT_IN) -> str:
    (found,) = messages(part, system)
    return found


def with_hole(x: str, y: str, face: Face = Face.NEAR, stock: str = "W16X26", bolt: str = "3/4") -> Part:
    return piece(stock, "10'-0", groups=(drilled(face, hole(x, y), bolt=bolt),))


def with_copes(*copes: Cope) -> Part:
    return piece("W16X26", "10'-0", copes=copes)


# Every profile: a hole in the middle of the flat of every face says nothing.
@pytest.mark.parametrize("stock", ONE_OF_EACH)
def test_a_plain_part_of_every_profile_is_in_order(stock: str) -> None:
    part = piece(stock, "10'-0")
    for face in faces_of(part.stock):
        low, high = face_range(part.stock, face)
        flange_of_i = face in {Face.TOP, Face.BOTTOM} and stock[0] == "W"
        y = (high - at("1.25in")) if flange_of_i else (low + high) / 2
        small = replace(hole("5'-0", "0", "1/4"), y=y)
        assert messages(replace(part, groups=(drilled(face, small, bolt=""),))) == []


@pytest.mark.parametrize("stock", ONE_OF_EACH)
def test_a_hole_past_the_end_of_every_profile(stock: str) -> None:
    part = piece(stock, "10'-0")
    for face in faces_of(part.stock):
        low, high = face_range(part.stock, face)
        past = replace(hole("12'-0", "0"), y=(low + high) / 2)
        assert only(replace(part, groups=(drilled(face, past),))) == (
            "error: B1 web, hole at 12'-0\": lies outside the part, which is 10'-0\" long: "
            "move the hole or the cut"
        )


@pytest.mark.parametrize("stock", ONE_OF_EACH)
def test_a_hole_beside_every_face_in_millimetres(stock: str) -> None:
    part = piece(stock, "10'-0")
    for face in faces_of(part.stock):
        high = face_range(part.stock, face)[1]
        beside = replace(hole("5'-0", "0"), y=high + at("2in"))
        (found,) = messages(replace(part, groups=(drilled(face, beside),)), System.MM)
        assert found.startswith(
            f"error: B1 web, hole at 1524: lies outside the {face} face, which runs from "
        )


def test_holes_outside_say_where() -> None:
    assert only(with_hole("10'-3", "8")) == (
        "error: B1 web, hole at 10'-3\": lies outside the part, which is 10'-0\" long: "
        "move the hole or the cut"
    )
    assert messages(with_hole("3", "18"))[0].startswith(
        'error: B1 web, hole at 3": lies outside the near face, which runs from 0" to 1\'-3 45/64"'
    )
    assert only(with_hole("10'-3", "8"), System.MM) == (
        "error: B1 web, hole at 3124.2: lies outside the part, which is 3048 long: move the hole or the cut"
    )


def test_a_hole_through_a_cope() -> None:
    assert only(replace(with_hole("2", "15"), copes=TOP)) == (
        'error: B1 web, hole at 2": lies in what is cut away by a cope, an end cut or an opening: '
        "move the hole or the cut"
    )


def test_a_hole_that_breaks_through_the_edge() -> None:
    assert only(with_hole("1/4", "8")) == (
        'error: B1 web, hole at 1/4": breaks through the edge, which is 1/4" from its middle: '
        "move it into the steel"
    )
    assert only(with_hole("1/4", "8"), System.MM) == (
        "error: B1 web, hole at 6.4: breaks through the edge, which is 6.4 from its middle: "
        "move it into the steel"
    )


# AISC 360-22 Table J3.4: 1 in for a 3/4 in bolt; Table J3.4M: 26 mm for M20.
def test_edge_distance_of_table_j34() -> None:
    assert messages(with_hole("1", "8")) == []
    assert only(with_hole("15/16", "8")) == (
        'warning: B1 web, hole at 15/16": its edge distance 15/16" is less than 1" for a 3/4 bolt: '
        "move it away from the edge, or have the strength at the edge checked"
    )
    assert check_part(with_hole("15/16", "8"))[0].source == "ANSI/AISC 360-22 Table J3.4"
    metric = piece(
        "IPE 300", "3000mm", groups=(drilled(Face.NEAR, hole("25mm", "150mm", "22mm"), bolt="M20"),)
    )
    assert only(metric, System.MM) == (
        "warning: B1 web, hole at 25: its edge distance 25 is less than 26 for a M20 bolt: "
        "move it away from the edge, or have the strength at the edge checked"
    )


def test_edge_distance_is_measured_to_a_cope_too() -> None:
    # cope 1 1/2 down: its edge lies 14.2 above the bottom
    assert 'its edge distance 45/64"' in messages(replace(with_hole("2", "13 1/2"), copes=TOP))[0]


def test_a_hole_for_no_bolt_has_no_least_edge_distance() -> None:
    assert messages(with_hole("1/2", "8", bolt="")) == []


# Table J3.5 adds 3/4 d for a long slot that runs toward the edge: 1 + 9/16 for a 3/4 in bolt.
@pytest.mark.parametrize(("angle", "count"), [(0, 1), (90, 0)])
def test_a_long_slot_toward_the_edge_asks_for_more(angle: int, count: int) -> None:
    slot = replace(hole("1 1/2", "8", "13/16", "1 7/8"), angle=Fraction(angle))
    group = HoleGroup("web", Face.NEAR, (slot,), "3/4", HoleKind.LSL)
    found = messages(piece(groups=(group,)))
    assert len(found) == count
    assert all('less than 1 9/16" for a 3/4 bolt' in text for text in found)


def test_a_slot_breaks_through_the_edge_with_its_end() -> None:
    slot = hole("3/4", "8", "13/16", "1 7/8")
    assert "breaks through the edge" in messages(piece(groups=(drilled(Face.NEAR, slot),)))[0]
    upright = replace(slot, angle=Fraction(90))
    assert messages(piece(groups=(drilled(Face.NEAR, upright, bolt=""),))) == []


# W16X26: kdet = 1 1/16 (AISC Manual Table 1-1); a 13/16 hole clears it from 1.469 up to 14.231.
@pytest.mark.parametrize(("y", "count"), [("1 15/32", 0), ("1 7/16", 1), ("14 7/32", 0), ("14 1/4", 1)])
def test_a_hole_in_the_k_area(y: str, count: int) -> None:
    say = (
        'warning: B1 web, hole at 3": runs into the fillet, '
        "which reaches 1 1/16\" from the flange's outside: move it into the flat of the web"
    )
    assert messages(with_hole("3", y)) == [say] * count


def test_the_k_area_in_millimetres() -> None:
    assert only(with_hole("3", "1 7/16"), System.MM) == (
        "warning: B1 web, hole at 76.2: runs into the fillet, which reaches 27 from the flange's outside: "
        "move it into the flat of the web"
    )


def test_an_upright_slot_reaches_into_the_k_area() -> None:
    slot = hole("3", "1 3/4", "13/16", "1 7/8")
    assert messages(piece(groups=(drilled(Face.NEAR, slot),))) == []
    upright = replace(slot, angle=Fraction(90))
    assert "runs into the fillet" in messages(piece(groups=(drilled(Face.NEAR, upright),)))[0]


def test_a_channel_has_fillets_at_both_flanges_and_a_tee_at_one() -> None:
    assert "runs into the fillet" in messages(with_hole("3", "1 1/4", stock="C8X11.5"))[0]
    assert "runs into the fillet" in messages(with_hole("3", "6 3/4", stock="C8X11.5"))[0]
    assert messages(with_hole("3", "1 1/4", stock="WT8X18")) == []
    assert "runs into the fillet" in messages(with_hole("3", "6 3/4", stock="WT8X18"))[0]


# k1 of W16X26 is 3/4 (Table 1-1): a 13/16 hole needs a gage of 2 5/16.
@pytest.mark.parametrize(("y", "count"), [("1 3/16", 0), ("1 1/8", 1), ("-1 1/8", 1), ("0", 1)])
def test_a_flange_hole_in_the_fillet(y: str, count: int) -> None:
    say = (
        'warning: B1 web, hole at 3": runs into the web or its fillet, '
        'which reaches 3/4" out from the web: use a wider gage'
    )
    assert messages(with_hole("3", y, face=Face.TOP)) == [say] * count


def test_a_flange_hole_of_a_channel_over_its_web() -> None:
    assert "runs into the web or its fillet" in messages(with_hole("3", "-1/2", Face.TOP, "C8X11.5", ""))[0]


def test_hollow_sections_and_angles_have_no_fillet_to_avoid() -> None:
    assert messages(with_hole("3", "1 1/4", stock="HSS6X6X3/8")) == []
    assert messages(with_hole("3", "1 1/2", face=Face.LEG_A, stock="L6X4X1/2")) == []


def test_a_face_that_the_section_does_not_have() -> None:
    assert only(with_hole("3", "2", face=Face.LEG_A)) == (
        "error: B1 web: W16X26 has no face leg_a: use one of top, near, bottom, far"
    )


# AISC 360-22 J3.3: 2 2/3 d between centres, 2 in for a 3/4 in bolt.
def test_two_holes_too_near() -> None:
    assert messages(piece(groups=(drilled(Face.NEAR, hole("3", "8"), hole("5", "8")),))) == []
    near = piece(groups=(drilled(Face.NEAR, hole("3", "8"), hole("4 3/4", "8")),))
    assert only(near) == (
        'warning: B1 web, hole at 3": is 1 3/4" from the hole at 4 3/4" of web, '
        'less than 2 2/3 bolt diameters, 2": space them 3 diameters apart'
    )
    assert only(near, System.MM) == (
        "warning: B1 web, hole at 76.2: is 44.5 from the hole at 120.7 of web, "
        "less than 2 2/3 bolt diameters, 50.8: space them 3 diameters apart"
    )


def test_two_holes_of_different_groups_that_run_into_each_other() -> None:
    other = drilled(Face.NEAR, hole("3 1/2", "8"), name="stiffener")
    part = piece(groups=(drilled(Face.NEAR, hole("3", "8")), other))
    assert only(part) == (
        'error: B1 web, hole at 3": runs into the hole at 3 1/2" of stiffener, 1/2" away: move one'
    )


def test_slots_run_into_each_other_with_their_ends() -> None:
    one, two = hole("3", "8", "13/16", "2"), hole("4 3/4", "8", "13/16", "2")
    assert "runs into the hole at" in messages(piece(groups=(drilled(Face.NEAR, one, two, bolt=""),)))[0]
    stacked = [replace(slot, angle=Fraction(90)) for slot in (one, two)]
    assert messages(piece(groups=(drilled(Face.NEAR, *stacked, bolt=""),))) == []


def test_holes_on_two_faces_do_not_meet() -> None:
    part = piece("HSS6X6X3/8", groups=(drilled(Face.NEAR, hole("8", "3")), drilled(Face.FAR, hole("8", "3"))))
    assert messages(part) == []


def test_copes_that_are_in_order() -> None:
    assert messages(with_copes(*TOP)) == []


def test_a_cope_deeper_than_half() -> None:
    deep = replace(TOP[0], depth=at("8in"))
    assert only(with_copes(deep)) == (
        'warning: B1 left end, top cope: depth 8" is more than half of 1\'-3 45/64": '
        "lower the connection or reinforce the web, and have its strength checked"
    )
    assert only(with_copes(deep), System.MM) == (
        "warning: B1 left end, top cope: depth 203.2 is more than half of 398.8: "
        "lower the connection or reinforce the web, and have its strength checked"
    )


def test_a_cope_through_the_whole_depth() -> None:
    assert only(with_copes(replace(TOP[0], depth=at("16in")))) == (
        "error: B1 left end, top cope: depth 1'-4\" is not less than the section's 1'-3 45/64\": "
        "give a depth within the section"
    )


def test_a_cope_longer_than_the_part() -> None:
    assert only(with_copes(replace(TOP[0], length=at("10'-0")))) == (
        "error: B1 left end, top cope: length 10'-0\" is not less than the part's 10'-0\": "
        "give a length within the part"
    )


def test_a_sharp_corner() -> None:
    assert only(with_copes(replace(TOP[0], radius=ZERO))) == (
        "warning: B1 left end, top cope: the re-entrant corner has no radius: "
        'give a radius, commonly 1/2", or drill the corner'
    )


def test_a_radius_larger_than_its_cope() -> None:
    assert only(with_copes(replace(TOP[0], radius=at("2in")))) == (
        'error: B1 left end, top cope: radius 2" is more than its length 4" or depth 1 1/2": '
        "give a smaller radius"
    )


def test_copes_that_meet() -> None:
    top = replace(TOP[0], depth=at("7 3/4"))
    bottom = replace(top, edge=Face.BOTTOM, depth=at("8in"))
    assert messages(with_copes(top, bottom))[0] == (
        "error: B1 left end, top cope: meets the bottom cope: together 1'-3 3/4\" of 1'-3 45/64\": "
        "leave web between them"
    )
    left = replace(TOP[0], length=at("5'-0"))
    assert only(with_copes(left, replace(left, end=End.RIGHT))) == (
        "error: B1 left end, top cope: meets the cope of the right end: leave flange between them"
    )
    assert only(with_copes(TOP[0], TOP[0])) == (
        "error: B1 left end, top cope: is given twice: keep one of them"
    )


def test_end_cuts_that_cross() -> None:
    steep = parse_slope("12 in 12")
    part = piece("W16X26", "2'-0", left=EndCut(bevel=steep), right=EndCut(bevel=steep))
    assert only(part) == (
        'error: B1: the end cuts leave 0" of the 2\'-0" on one edge: give a longer part or smaller bevels'
    )


@pytest.mark.parametrize(
    ("stock", "flange", "side"),
    [
        ("HSS6X6X3/8", Face.TOP, Side.NEAR),
        ("WT8X18", Face.BOTTOM, Side.NEAR),
        ("C8X11.5", Face.TOP, Side.NEAR),
        ("L6X4X1/2", Face.BOTTOM, Side.FAR),
    ],
)
def test_a_trim_where_there_is_no_flange(stock: str, flange: Face, side: Side) -> None:
    trim = FlangeTrim(End.LEFT, flange, side, at("6in"))
    assert only(piece(stock, trims=(trim,))) == (
        f"error: B1 left end, {flange} trim: {stock} has no {flange} flange to cut on the {side} side: "
        "leave the trim out or give the other flange or side"
    )


@pytest.mark.parametrize(
    ("stock", "side"), [("W16X26", Side.NEAR), ("WT8X18", Side.FAR), ("C8X11.5", Side.FAR)]
)
def test_a_trim_of_a_flange(stock: str, side: Side) -> None:
    assert messages(piece(stock, trims=(FlangeTrim(End.LEFT, Face.TOP, side, at("6in")),))) == []


def clipped(*clips: tuple[End, Face, str, str]) -> Part:
    """A plate 10 wide and 1'-0 long with corners clipped: end, edge, along, across."""
    cuts = tuple(Clip(end, edge, at(along), at(across)) for end, edge, along, across in clips)
    return piece("PL1/2X10", "1'-0", clips=cuts)


def test_clips_that_run_into_one_another_or_past_the_plate() -> None:
    assert only(clipped((End.LEFT, Face.TOP, "5", "6"), (End.LEFT, Face.BOTTOM, "5", "6"))) == (
        "error: B1 left end, top clip: runs into the clip at the left end, bottom edge: "
        "make one of them smaller"
    )
    assert only(clipped((End.LEFT, Face.TOP, "7", "4"), (End.RIGHT, Face.TOP, "7", "4"))) == (
        "error: B1 left end, top clip: runs into the clip at the right end, top edge: "
        "make one of them smaller"
    )
    assert only(clipped((End.LEFT, Face.TOP, "13", "4"))) == (
        'error: B1 left end, top clip: 1\'-1" along and 4" across is more than the plate, 1\'-0" by 10": '
        "give a clip within the plate"
    )


def test_clips_may_make_a_point() -> None:
    assert messages(clipped((End.LEFT, Face.TOP, "6", "5"), (End.LEFT, Face.BOTTOM, "6", "5"))) == []
    assert messages(clipped((End.LEFT, Face.TOP, "6", "5"), (End.RIGHT, Face.TOP, "6", "5"))) == []


def test_only_a_plate_has_corners_to_clip() -> None:
    clips = (Clip(End.LEFT, Face.TOP, at("1in"), at("1in")),)
    assert messages(piece("PL1/2X8", clips=clips)) == []
    assert only(piece("W16X26", clips=clips)) == (
        "error: B1: W16X26 has no corners to clip, only a plate has: leave the clips out or cope the end"
    )


def opening(x: str, y: str, length: str, depth: str, radius: str = "1") -> Opening:
    return Opening(Face.NEAR, at(x), at(y), at(length), at(depth), at(radius))


def test_an_opening_in_order() -> None:
    assert messages(piece(openings=(opening("60", "8", "6", "4"),))) == []


def test_an_opening_with_sharp_corners() -> None:
    assert only(piece(openings=(opening("60", "8", "6", "4", "0"),))) == (
        'warning: B1 opening 1: its corners have no radius: give a corner radius, commonly 1/2" or more'
    )


def test_an_opening_whose_radius_is_too_large() -> None:
    assert only(piece(openings=(opening("60", "8", "6", "4", "2 1/2"),))) == (
        'error: B1 opening 1: corner radius 2 1/2" is more than half of its size: give a smaller radius'
    )


def test_an_opening_past_the_edge() -> None:
    assert only(piece(openings=(opening("60", "14", "6", "4"),))) == (
        "error: B1 opening 1: runs past the edge of the steel: move it or make it smaller"
    )
    assert "past the edge" in messages(piece(openings=(opening("4", "13 1/2", "6", "2"),), copes=TOP))[0]


def test_openings_that_meet() -> None:
    assert only(piece(openings=(opening("60", "8", "6", "4"), opening("64", "8", "6", "4")))) == (
        "error: B1 opening 1: runs into another opening: move one of them"
    )


def test_a_hole_in_an_opening() -> None:
    part = replace(with_hole("60", "8"), openings=(opening("60", "8", "6", "4"),))
    assert "lies in what is cut away" in messages(part)[0]


def test_errors_come_first() -> None:
    part = replace(with_hole("10'-3", "8"), copes=(replace(TOP[0], radius=ZERO),))
    assert [finding.severity for finding in check_part(part)] == [Severity.ERROR, Severity.WARNING]
    assert [finding.code for finding in check_part(part)] == ["hole-outside", "cope-sharp"]


@pytest.mark.parametrize(
    ("part", "message"),
    [
        (
            with_copes(replace(TOP[0], depth=at("400mm"))),
            (
                "error: B1 left end, top cope: depth 400 is not less than the section's 398.8: "
                "give a depth within the section"
            ),
        ),
        (
            with_copes(replace(TOP[0], length=at("3100mm"))),
            (
                "error: B1 left end, top cope: length 3100 is not less than the part's 3048: "
                "give a length within the part"
            ),
        ),
        (
            with_copes(replace(TOP[0], radius=at("50mm"))),
            (
                "error: B1 left end, top cope: radius 50 is more than its length 101.6 or depth 38.1: "
                "give a smaller radius"
            ),
        ),
        (
            piece(openings=(opening("60", "8", "6", "4", "2 1/2"),)),
            "error: B1 opening 1: corner radius 63.5 is more than half of its size: give a smaller radius",
        ),
        (
            with_hole("3", "1", face=Face.TOP),
            (
                "warning: B1 web, hole at 76.2: runs into the web or its fillet, "
                "which reaches 19.1 out from the web: "
                "use a wider gage"
            ),
        ),
        (
            piece(
                groups=(drilled(Face.NEAR, hole("3", "8")), drilled(Face.NEAR, hole("3 1/2", "8"), name="b"))
            ),
            "error: B1 web, hole at 76.2: runs into the hole at 88.9 of b, 12.7 away: move one",
        ),
    ],
    ids=["cope-through", "cope-long", "cope-radius", "opening-radius", "flange-fillet", "overlap"],
)
def test_messages_in_millimetres(part: Part, message: str) -> None:
    assert only(part, System.MM) == message


def test_copes_that_meet_and_ends_that_cross_in_millimetres() -> None:
    deep = replace(TOP[0], depth=at("200mm"))
    assert messages(with_copes(deep, replace(deep, edge=Face.BOTTOM)), System.MM)[0] == (
        "error: B1 left end, top cope: meets the bottom cope: together 400 of 398.8: leave web between them"
    )
    steep = EndCut(bevel=parse_slope("12 in 12"))
    short = piece("W16X26", "600mm", left=steep, right=steep)
    assert only(short, System.MM).startswith("error: B1: the end cuts leave 0 of the 600 on one edge")


@pytest.mark.parametrize(
    ("face", "ys", "row"),
    [
        (Face.NEAR, ("8", "5"), "row 2, "),
        (Face.NEAR, ("8", "8"), ""),
        (Face.TOP, ("1 3/4", "-1 3/4"), "far row, "),
    ],
)
def test_the_row_of_a_hole_is_named_where_there_are_more(face: Face, ys: tuple[str, str], row: str) -> None:
    part = piece("W16X26", "10'-0", groups=(drilled(face, hole("3", ys[0]), hole("11'", ys[1])),))
    assert only(part).startswith(f"error: B1 web, {row}hole at 11'-0\": lies outside the part")


def test_rows_of_an_angle_are_counted_from_the_heel() -> None:
    group = drilled(Face.LEG_B, hole("3", "1 1/2"), hole("11'", "2 1/2"), bolt="")
    assert "web, row 2, hole at 11'-0\"" in only(piece("L4X4X3/8", "10'-0", groups=(group,)))
