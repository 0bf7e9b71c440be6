"""Field bolts from where holes meet."""

from collections import Counter

from assembling import bay, detailed
from frames import bays, demo_frame
from gageline.detail import Detailed, read_full
from gageline.detail.mating import piles_of
from gageline.detail.site_bolts import Meeting, site_bolts, unmet_holes
from gageline.part import Severity
from gageline.units import Length

PLAY = Length.from_inches(1 / 16)


def rows(result: Detailed) -> list[tuple[str, int]]:
    return [(one.connection, one.count) for one in result.field_bolts]


def test_every_hole_that_meets_another_piece_has_its_bolt() -> None:
    full = demo_frame()
    assert full.detailed is not None
    met = [pile for pile in piles_of(full.detailed.placed, PLAY) if len(pile.pieces) > 1]
    assert sum(one.count for one in full.detailed.field_bolts) == len(met) == 142


def test_bolts_through_two_beams_stand_with_the_one_that_keeps_the_holes() -> None:
    full = demo_frame()
    assert full.detailed is not None
    found = [(one.connection, one.count) for one in full.detailed.field_bolts if one.support == "G3"]
    assert found[:2] == [("end of B1", 2), ("end of B1", 4)]
    assert "start of B3" not in [name for name, _ in found]


def test_angles_on_the_support_take_one_bolt_a_row_through_the_beam() -> None:
    """Welded to the girders and bolted to the web of the beam: 3 rows, one bolt each, not one a leg."""
    result = detailed(bay(ends={"to_support": "welded", "to_beam": "bolted"}))
    assert rows(result) == [("start of B1", 3), ("end of B1", 3)]


def test_holes_that_meet_without_a_connection_are_listed_too() -> None:
    result = detailed(bay())
    (start, *_), named = site_bolts(piles_of(result.placed, PLAY), []), result.field_bolts
    assert (start.connection, start.piece, start.support) == ("B1 to G1", "B1", "G1")
    assert start.count == named[0].count


def test_the_nearest_connection_of_the_two_pieces_counts_the_bolt() -> None:
    result = detailed(bay())
    far, near = (Meeting(name, "B1", "G1", (x, 0.0, 0.0)) for name, x in (("far", 1e6), ("near", 0.0)))
    names = [one.connection for one in site_bolts(piles_of(result.placed, PLAY), [far, near])]
    assert names == ["near", "B1 to G2"]


def test_bolts_are_counted_by_hand_in_a_frame_of_bays() -> None:
    """Grid of 2 x 2 columns; what comes in pairs is told in pairs."""
    full = read_full(bays([240], [240], 1))
    assert full.detailed is not None
    by_support: Counter[str] = Counter()
    for one in full.detailed.field_bolts:
        by_support[one.support] += one.count
    assert by_support["C1A"] == by_support["C2A"] == by_support["C1B"] == by_support["C2B"]
    assert not list(unmet_holes(piles_of(full.detailed.placed, PLAY)))


def test_holes_that_meet_nothing_are_a_finding() -> None:
    """A cap plate with holes that nothing bears on."""
    full = demo_frame()
    text = bays([240], [240], 0).replace(
        'name = "C1A"', 'name = "C1A"\ncap_plate = { pitch = "4", gage = "4", diameter = "13/16" }'
    )
    result = read_full(text).detailed
    assert result is not None
    (found,) = [one for one in result.findings if one.code == "holes-meet-nothing"]
    assert found.severity is Severity.WARNING
    assert found.subject == "C1A"
    assert found.message == "4 holes (right cap plate, bolt holes) meet no hole of another piece"
    assert found.remedy.startswith("make the holes of what is bolted there agree")
    assert found in result.said["C1A"]
    assert full.detailed is not None
    assert not [one for one in full.detailed.findings if one.code == "holes-meet-nothing"]
