"""Members of an elevation: what stands in the plane and what runs into it."""

import pytest

from frames import bays, demo_frame
from gageline.detail import Detailed, read_full
from gageline.sheets.elevation_members import Along, cut_members, plane_members
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
