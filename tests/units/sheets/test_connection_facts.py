"""The data of connections in words."""

from __future__ import annotations

from dataclasses import replace

from connections import EXAMPLES, bolts
from gageline.sheets.connection_facts import facts_of
from gageline.strength import Connection, Fillet, Fitting, Material, Tongue
from gageline.units import System

ROWS = '3 rows of 0.75 bolts at 3", group 120-N, standard holes, end distance 1 1/4"'


def said(connection: Connection, system: System = System.FT_IN) -> dict[str, str]:
    return dict(facts_of(connection, system))


def test_a_coped_beam_on_double_angles() -> None:
    found = said(EXAMPLES["II.A-4"])
    assert found == {
        "Beam": 'W18X50, A992 (Fy 50 ksi), top cope 4" long, 2" deep',
        "Setback": '1/2", and 1/4" that the beam may be short',
        "Fitting": '2L5X3-1/2X1/4, 8 1/2" long, A572-50 (Fy 50 ksi)',
        "To the beam": f'{ROWS}, edge 1 3/8"',
        "To the support": f'{ROWS}, edge 2"',
        "Support": "W21X62, girder web 0.400 in thick, A992",
    }


def test_uneven_pitches_and_columns_are_said() -> None:
    joint = replace(bolts(3, 3.0, 1.5), uneven=(3.0, 4.0), columns=2, between=3.0)
    text = said(replace(EXAMPLES["II.A-18"], to_beam=joint))["To the beam"]
    assert text.startswith('3 rows in 2 columns 3" apart of 0.75 bolts at 3", 4",')


def test_slip_critical_bolts_are_called_so() -> None:
    joint = replace(bolts(3, 3.0, 1.5), surface="B")
    text = said(replace(EXAMPLES["II.A-18"], to_beam=joint))["To the beam"]
    assert "group 120-N, slip-critical, faying surfaces of class B, standard holes" in text


def test_a_seat_has_no_joint_with_the_beam_and_welds_have_their_metal() -> None:
    found = said(EXAMPLES["II.A-16"])
    assert "To the beam" not in found
    assert found["To the support"] == 'fillet weld 5/16", 70 ksi'


def test_what_is_not_known_is_said() -> None:
    found = said(replace(EXAMPLES["II.A-18"], beam=None, support=None, skew=20.0))
    assert "Beam" not in found
    assert found["Support"] == "not known"
    assert found["Skew"] == "20.0 degrees in the plan"


def test_beams_on_both_sides_and_millimetres() -> None:
    example = EXAMPLES["II.A-1A"]
    assert example.support is not None
    both = replace(example, support=replace(example.support, opposite=10.0, opposite_rows=3))
    found = said(both, System.MM)
    side = "beams on both sides, the other one with 44 kN in 3 rows"
    assert found["Support"] == f"W14X90, column flange 18 mm thick, A992, {side}"
    assert found["Setback"] == "12.7 mm, and 6.4 mm that the beam may be short"


def test_a_hollow_beam_on_a_tongue() -> None:
    plate = Fitting("PL3/8X4-3/8", Material("A36", 36.0, 58.0), 0.375, 5.5, 4.375)
    tongue = Tongue("HSS6X4X1/4", plate, replace(plate, name="PL3/8X4-3/4"), Fillet(0.25), 1.25, 1.875)
    found = said(replace(EXAMPLES["II.A-18"], beam=None, tongue=tongue))
    assert found["Beam"] == "HSS6X4X1/4, its end closed"
    assert found["Tongue"] == (
        'PL3/8X4-3/8, 5 1/2" long, A36 (Fy 36 ksi), fillet weld 1/4" to PL3/8X4-3/4, 1 7/8" from the bolts'
    )
    assert found["Setback"] == '1/2" to the tongue, and 1/4" that the beam may be short'
