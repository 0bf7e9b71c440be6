from __future__ import annotations

import pytest

from assembling import bay, detailed, plays
from frames import demo_frame
from gageline.detail import Placed, detail_frame
from gageline.job import FrameEntry, default_practice
from gageline.part import End, Face, Fitting, FittingKind, Join
from gageline.steel import Section
from gageline.units import System, parse_length


def pieces(**keys: object) -> tuple[Placed, Placed]:
    result = detailed(bay(**keys))  # type: ignore[arg-type] # keys of the beam
    return result.member("B1"), result.member("G1")


def left(placed: Placed) -> list[Fitting]:
    return [fitting for fitting in placed.assembly.fittings if fitting.end is End.LEFT]


def test_double_angles_hang_at_both_sides_of_the_web() -> None:
    beam, girder = pieces()
    angles = left(beam)
    assert [fitting.name for fitting in angles] == ["left near angle", "left far angle"]
    assert {fitting.part.length for fitting in angles} == {parse_length("8 1/2")}
    web = [group for group in beam.assembly.main.groups if group.name.startswith("left")]
    # gage of the 3 1/2 in leg, 2, and play 1/16, less the setback 1/2
    assert {hole.x for group in web for hole in group.holes} == {parse_length("1 9/16")}
    assert [group.name for group in girder.assembly.main.groups] == ["near, for a beam"]


@pytest.mark.parametrize(("practice", "play"), [({}, "1/16"), ({"play": "0"}, "0"), ({"play": "1/8"}, "1/8")])
@pytest.mark.parametrize("connection", ["double angles", "single angle", "end plate"])
def test_material_on_a_beam_keeps_play_at_the_face(
    practice: dict[str, str], play: str, connection: str
) -> None:
    result = detailed(bay(ends={"connection": connection}) | {"practice": practice})
    said = [reason.because for reason in result.reasons["B1"] if reason.decision.startswith("setback")]
    assert said
    assert all((f'{play}" off the face, for play' in text) is (play != "0") for text in said)
    found = plays(result, "B1")
    assert len(found) == (4 if connection == "double angles" else 2)
    assert all(off == pytest.approx(parse_length(play).inches, abs=1e-6) for off, _ in found)


def test_what_is_welded_to_the_support_keeps_no_play() -> None:
    assert not detailed(bay(ends={"to_support": "welded"})).joints["B1", End.LEFT].choice.play
    assert not detailed(bay(ends={"connection": "single plate"})).joints["B1", End.LEFT].choice.play


def test_play_is_less_than_the_setback() -> None:
    table = bay() | {"practice": {"play": "1/2"}}
    entry = FrameEntry.model_validate(table, context={"system": System.FT_IN})
    _, ((path, note), *others) = detail_frame(entry, default_practice(System.FT_IN), System.FT_IN)
    assert path == ("practice", "play")
    assert note == (
        'play of 1/2" is not less than the setback of 1/2": angles would not reach past the end of the '
        "steel; give less play or more setback"
    )
    assert not others


@pytest.mark.parametrize("side", ["near", "far"])
def test_a_single_angle_drills_one_line(side: str) -> None:
    beam, girder = pieces(ends={"connection": "single angle", "side": side})
    assert [fitting.name for fitting in left(beam)] == [f"left {side} angle"]
    holes = [hole for group in girder.assembly.main.groups for hole in group.holes]
    assert len({hole.x for hole in holes}) == 1


def test_angles_welded_to_the_beam_have_no_holes_in_the_web() -> None:
    beam, girder = pieces(ends={"to_beam": "welded"})
    assert not beam.assembly.main.groups
    assert {fitting.join for fitting in left(beam)} == {Join.WELDED}
    assert girder.assembly.main.groups


def test_angles_welded_to_the_support_go_with_it_and_strip_the_bottom_flange() -> None:
    beam, girder = pieces(ends={"to_support": "welded"})
    assert not left(beam)
    assert not girder.assembly.main.groups
    assert [fitting.kind for fitting in girder.assembly.fittings] == [FittingKind.ANGLE] * 2
    trims = [trim for trim in beam.assembly.main.trims if trim.end is End.LEFT]
    assert {trim.flange for trim in trims} == {Face.BOTTOM}
    assert len(trims) == 2


def test_welded_welded_angles_drill_nothing() -> None:
    beam, girder = pieces(ends={"to_beam": "welded", "to_support": "welded"})
    assert len(left(beam)) == 2
    assert not beam.assembly.main.groups
    assert not girder.assembly.main.groups


def test_a_single_plate_is_welded_to_the_girder() -> None:
    beam, girder = pieces(ends={"connection": "single plate"})
    (plate,) = girder.assembly.fittings
    # bolts 3 in off the web, 1 1/2 to the edge; 3 rows
    assert plate.part.stock.designation == "PL3/8X4-1/2"
    assert plate.part.length == parse_length("8 1/2")
    assert girder.assembly.welds[0].size == parse_length("1/4")  # 5/8 of 3/8, up to 1/16
    assert not left(beam)


def test_a_skewed_plate_is_mitred_at_its_root() -> None:
    _, girder = pieces(to={"on": "G2", "at": 210})
    (plate,) = girder.assembly.fittings
    assert abs(float(plate.part.left.mitre.ratio)) == pytest.approx(0.5)
    assert plate.part.right.square


def test_an_end_plate_lies_on_the_web() -> None:
    beam, girder = pieces(ends={"connection": "end plate"})
    (plate,) = left(beam)
    assert plate.part.stock.designation == "PL3/8X8"
    assert len(girder.assembly.main.groups[0].holes) == 6


def test_a_girder_says_what_its_holes_are_for() -> None:
    result = detailed(bay())
    (reason,) = [one for one in result.reasons["G1"] if "holes" in one.decision]
    assert reason.decision == "6 holes for the start of B1, 10'-0\" from the work point of its start"
    assert (
        reason.because == '3 rows of its double angles, the first 3 1/4" under the top of G1, spread 5 3/8"'
    )


def test_bolts_spread_exactly_as_said_where_half_of_the_web_is_no_whole_tick() -> None:
    beam, girder = pieces(beam="W18X50")  # web 0.355 in, 57709 ticks
    assert isinstance(beam.assembly.main.stock, Section)
    assert beam.assembly.main.stock.tw.ticks % 2
    (group,) = girder.assembly.main.groups
    xs = sorted({hole.x for hole in group.holes})
    assert xs[1] - xs[0] == parse_length("5 3/8")
    near, far = (fitting.part.groups for fitting in left(beam))
    assert {hole.y for group in near for hole in group.holes} == {
        hole.y for group in far for hole in group.holes
    }


def test_a_column_says_from_where_its_holes_are_counted() -> None:
    reasons = demo_frame().detailed.reasons["P4"]  # type: ignore[union-attr] # it has a frame
    (holes,) = [one.decision for one in reasons if "holes for the" in one.decision]
    # the shaft is 12'-5 1/4" long over a base plate of 3/4", the first row 3" down
    assert holes == "8 holes for the start of G3, the first row 12'-3\" above the underside of its base plate"


@pytest.mark.parametrize(
    ("beam", "where", "both"),
    [("HSS8X4X1/4", "outside of both walls", False), ("W16X26", "both sides of the web", True)],
)
def test_nobody_welds_an_end_plate_inside_a_hollow_beam(beam: str, where: str, both: bool) -> None:
    result = detailed(bay(beam=beam, ends={"connection": "end plate"}))
    welds = result.member("B1").assembly.welds
    assert {(weld.runs, weld.where, weld.both_sides) for weld in welds} == {(2, where, both)}
