"""What is inspected on a piece, and in what order."""

from gageline.job import Practice
from gageline.layout import lay_out
from gageline.quality.fabrication import Rules
from gageline.quality.items import items_of
from gageline.units import System
from jobs import inches, piece_of
from sticks import ANGLES, example_piece

US = Rules(metric=False)
COPED = 'copes = [{ end = "left", flange = "top", length = "4", depth = "1 1/2" }]'
LAYOUT = lay_out(example_piece(COPED + ANGLES), Practice(), System.FT_IN)


def test_one_walks_around_the_piece_once() -> None:
    stations = [item.station for item in items_of(LAYOUT, US)]
    walked = [place for number, place in enumerate(stations) if not number or stations[number - 1] != place]
    assert walked == ["along it", "left end", "near face", "right end", "along it"]
    names = [item.name for item in items_of(LAYOUT, US)]
    assert len(set(names)) == len(names)
    assert names[:7] == [
        "overall", "camber", "sweep", "left end square", "left top cope length", "left top cope depth",
        "left top cope radius",
    ]  # fmt: skip


def test_the_far_side_is_walked_back() -> None:
    far = '[[piece.holes]]\nface = "far"\nx = "{}"\nname = "{}"\n'
    lines = far.format("2'", "one") + far.format("8'", "two")
    items = items_of(lay_out(piece_of(lines), Practice(), System.FT_IN), US)
    assert [item.name for item in items if item.name.endswith("from left end")] == [
        "two: from left end", "one: from left end",
    ]  # fmt: skip


def test_what_is_wanted_is_the_geometry_of_record() -> None:
    wanted = {item.name: item.wanted for item in items_of(LAYOUT, US)}
    assert wanted["overall"] == inches("18'-7 1/4")
    assert wanted["out to out"] == inches("18'-8 1/4")
    assert wanted["left near angle past the end"] == inches("1/2")
    assert wanted["left near angle first row down"] == inches("3")
    assert wanted["right end, for the angles: from left end"] == inches("18'-5 3/4")
    assert wanted["right end, for the angles: first to last across"] == inches("6")
    assert wanted["right end, for the angles: hole"] == inches("13/16")


def test_slots_fittings_in_between_and_angles_are_on_the_sheet() -> None:
    slot = '[[piece.holes]]\nname = "slot"\nx = "2\'"\nhole = "LSL"\n'
    stiffener = '[[piece.stiffeners]]\nx = "5\'"\nthickness = "3/8"\n'
    names = [
        item.name for item in items_of(lay_out(piece_of(slot + stiffener), Practice(), System.FT_IN), US)
    ]
    assert "slot: slot length" in names
    assert any("stiffener" in name and name.endswith("gap") for name in names)
    leg = piece_of('[[piece.holes]]\nface = "leg_a"\nx = "2\'"\nheel = "2"\nname = "leg"\n', stock="L4X4X1/4")
    on_leg = [item.name for item in items_of(lay_out(leg, Practice(), System.FT_IN), US)]
    assert "leg: first row from heel" in on_leg


def test_a_cambered_beam_wants_its_camber() -> None:
    rules = Rules(metric=False, camber=inches("3/4"))
    wanted = {item.name: item.wanted for item in items_of(LAYOUT, rules)}
    assert (wanted["camber"], wanted["sweep"]) == (inches("3/4"), inches("0"))
