"""Members of an elevation: what stands in the plane and what runs into it."""

import pytest

from frames import bays, demo_frame
from gageline.detail import Detailed, read_full
from gageline.sheets.elevation_members import Along, PlaneMember, cut_members, plane_members
from gageline.sheets.notation import Scribe
from gageline.units import Length, System

FEET = Scribe(System.FT_IN, Length.from_inches(1 / 16))

LINE_A = Along(0, 0.0)
LINE_B = Along(0, 222.0)


def frame() -> Detailed:
    detailed = demo_frame().detailed
    assert detailed is not None
    return detailed


def test_columns_and_beams_of_a_line_stand_in_its_plane() -> None:
    names = {one.name for one in plane_members(frame(), LINE_A, FEET)}
    assert names == {"P1", "P2", "P3", "G1"}


def test_a_column_under_a_girder_ends_with_its_plates() -> None:
    (post,) = (one for one in plane_members(frame(), LINE_A, FEET) if one.name == "P1")
    assert post.upright
    heights = sorted({z for plate in post.plates for _, z in plate})
    # base plate 3/4 from -6; cap plate 1/2 up to the underside of a W18x50, 18.0 in deep (AISC Table 1-1)
    assert heights == pytest.approx([-6, -5.25, 125.5, 126.0], abs=1e-3)
    us = [u for u, _ in post.corners]
    assert max(us) - min(us) == pytest.approx(6.0, abs=1e-3)  # HSS6x6
    assert sorted({z for _, z in post.corners}) == pytest.approx([-5.25, 125.5], abs=1e-3)


def test_a_beam_is_as_deep_as_its_section_and_ends_where_its_steel_does() -> None:
    (girder,) = (one for one in plane_members(frame(), LINE_A, FEET) if one.name == "G1")
    us, zs = zip(*girder.corners, strict=True)
    assert max(zs) == pytest.approx(144.0)
    assert max(zs) - min(zs) == pytest.approx(18.0)
    assert max(us) == pytest.approx(288 + 30)  # 2'-6 past grid line 2


def test_beams_that_run_into_the_plane_are_cut_with_their_marks() -> None:
    cut = cut_members(frame(), LINE_A, FEET)
    assert [(one.name, one.runs[0][0], one.at[0]) for one in cut] == [
        ("G2", "G2", 504.0),
        ("B1", "B1", 72.0),
        ("B2", "B2", 144.0),
        ("B8", "B1", 108.0),
        ("B7", "B7", 240.0),
    ]
    us, zs = zip(*cut[1].outline, strict=True)
    assert max(zs) == pytest.approx(144.0)
    # AISC Manual Table 1-1: W16x26 is 15.7 in deep and 5.50 wide
    assert (max(zs) - min(zs), max(us) - min(us)) == pytest.approx((15.7, 5.5), abs=1e-3)


def test_a_dropped_beam_says_its_top() -> None:
    (dropped,) = (one for one in cut_members(frame(), LINE_B, FEET) if one.name == "B4")
    assert "".join(text for text, _ in dropped.runs) == "B4 (+11'-9 3/4\")"
    assert dropped.at[1] == pytest.approx(144 - 2.25)


def test_each_shaft_of_a_spliced_column_stands_for_itself_and_says_its_joint() -> None:
    text = bays([240], [240], 0, levels=2).replace(
        'at = "1/A"\n', 'at = "1/A"\nsplices = [{ at = "15 ft" }]\n', 1
    )
    detailed = read_full(text).detailed
    assert detailed is not None
    column = next(name for name, splices in detailed.frame.splices.items() if splices)
    lower, upper = (one for one in plane_members(detailed, LINE_A, FEET) if one.name == column)
    assert [one.runs[0][0] for one in (lower, upper)] == [f"{column}.1", f"{column}.2"]
    assert lower.splice == ()
    assert "".join(words for words, _ in upper.splice) == "splice +19'-0\""  # 4'-0 over the level of 15'-0
    assert {z for _, z in upper.corners} & {z for _, z in lower.corners} == {19 * 12.0}


CANTILEVER = """
[job]
name = "cantilever"
[frame.grid]
x = { names = ["1", "2"], spacing = ["20'-0"] }
y = { names = ["A", "B"], spacing = ["24'-0"] }
[[frame.level]]
name = "Floor"
elevation = "12'-0"
[[frame.column]]
name = "C1"
at = "1/A"
stock = "W10x49"
base = "-0'-6"
top = "Floor"
[[frame.column]]
name = "C2"
at = "1/B"
stock = "W10x49"
base = "-0'-6"
under = "G1"
[[frame.column]]
name = "C3"
at = "2/A"
stock = "W10x49"
base = "-0'-6"
top = "Floor"
[[frame.member]]
name = "G1"
stock = "W24x76"
from = "1/A"
to = "1/B"
top = "Floor"
end = { overhang = "6'-0" }
[[frame.member]]
name = "B1"
stock = "W16x31"
from = "1/A"
to = "2/A"
top = "Floor"
"""


def cantilever() -> Detailed:
    detailed = read_full(CANTILEVER).detailed
    assert detailed is not None
    return detailed


def test_a_beam_at_the_web_of_a_column_is_drawn_to_its_steel_outside_the_flanges() -> None:
    (girder,) = (one for one in plane_members(cantilever(), Along(1, 0.0), FEET) if one.name == "G1")
    # AISC Manual Table 1-1: the flange of a W10x49 is 10.0 in wide, its edge 5 in from the grid line
    assert min(u for u, _ in girder.corners) > 5.0
    (beam,) = (one for one in plane_members(cantilever(), Along(0, 0.0), FEET) if one.name == "B1")
    # and 10.0 in deep: at the flange the end is the setback of 1/2 in off it
    assert sorted({u for u, _ in beam.corners}) == pytest.approx([5.5, 234.5], abs=1e-3)


def test_a_tip_past_its_column_is_dimensioned_and_ends_at_columns_are_not() -> None:
    members = {one.name: one for one in plane_members(cantilever(), Along(1, 0.0), FEET)}
    assert members["G1"].stations == pytest.approx((24 * 12 + 72,), abs=1e-3)
    assert members["C1"].stations == pytest.approx((0.0,))
    (beam,) = (one for one in plane_members(cantilever(), Along(0, 0.0), FEET) if one.name == "B1")
    assert beam.stations == ()


def test_columns_say_where_they_begin_and_end_with_their_plates() -> None:
    members = {one.name: one for one in plane_members(cantilever(), Along(1, 0.0), FEET)}
    assert members["G1"].heights == ()
    names, heights = zip(*members["C1"].heights, strict=True)
    assert names == ("under base plates", "column tops")
    assert heights == pytest.approx((-6.0, 144.0), abs=1e-3)
    names, heights = zip(*members["C2"].heights, strict=True)
    assert names == ("under base plates", "cap plate tops")
    # AISC Manual Table 1-1: a W24x76 is 23.9 in deep
    assert heights == pytest.approx((-6.0, 144.0 - 23.9), abs=1e-3)


def test_a_spliced_column_says_its_foot_and_its_top_once() -> None:
    text = bays([240], [240], 0, levels=2).replace(
        'at = "1/A"\n', 'at = "1/A"\nsplices = [{ at = "15 ft" }]\n', 1
    )
    detailed = read_full(text).detailed
    assert detailed is not None
    lower, upper = (one for one in plane_members(detailed, LINE_A, FEET) if one.name == "C1A")
    assert [name for name, _ in lower.heights] == ["under base plates"]
    assert [name for name, _ in upper.heights] == ["column tops"]


def test_a_sloping_beam_with_plumb_ends_is_drawn_with_them() -> None:
    text = CANTILEVER.replace('end = { overhang = "6\'-0" }', 'rise = "1 in 12"').replace(
        'under = "G1"', 'top = "14\'-0"'
    )
    detailed = read_full(text).detailed
    assert detailed is not None
    (girder,) = (one for one in plane_members(detailed, Along(1, 0.0), FEET) if one.name == "G1")
    (a, b), (c, d) = girder.corners[0], girder.corners[3]
    assert a == pytest.approx(c, abs=0.02)
    assert b - d == pytest.approx(23.9 * (1 + (1 / 12) ** 2) ** 0.5, abs=0.02)


def test_a_beam_past_a_match_line_is_cut_off_on_its_own_slope() -> None:
    corners = ((0.0, 100.0), (100.0, 150.0), (100.0, 140.0), (0.0, 90.0))
    whole = PlaneMember("B1", corners, (), stations=(0.0, 100.0))
    part = whole.between(20.0, 200.0)
    assert part.span == (20.0, 100.0)
    assert part.corners == ((20.0, 110.0), (100.0, 150.0), (100.0, 140.0), (20.0, 100.0))
    assert part.stations == (100.0,)
    turned = PlaneMember("B1", (corners[1], corners[0], corners[3], corners[2]), ())
    assert turned.between(20.0, 200.0).corners == (
        (100.0, 150.0),
        (20.0, 110.0),
        (20.0, 100.0),
        (100.0, 140.0),
    )
    assert whole.between(-5.0, 105.0) == whole
