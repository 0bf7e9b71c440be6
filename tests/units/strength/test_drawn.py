from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.part import End
from gageline.strength import Bolted, Connection, Drawn, Fillet, Kind, bolt_steel, connections_of
from gageline.strength.aisc360.j3_bolts import Hole
from jobs import inches, piece_of

STEEL = bolt_steel("A325-N")
ANGLES = """
copes = [{ end = "both", length = "4", depth = "1 1/2" }]
angles = [{ end = "both", stock = "L4x3-1/2x5/16", rows = 3 }]
"""
THREE_COLUMNS = """
[[piece.end_plates]]
end = "left"
thickness = "3/8"
width = 9
length = 9
rows = 3
columns = 3
gage = 3
"""


def drawn(lines: str, **given: str) -> tuple[Drawn, ...]:
    return connections_of(piece_of(lines, **given), STEEL, inches("1/4"))


def only(lines: str) -> Connection:
    connection = drawn(lines)[0].connection
    assert connection is not None
    return connection


def test_double_angles_are_read_with_every_distance() -> None:
    left, right = drawn(ANGLES)
    assert (left.name, left.end, right.end) == ("B1 left", End.LEFT, End.RIGHT)
    found = left.connection
    assert found is not None
    assert found.beam is not None
    assert found.beam.top is not None
    assert found.kind is Kind.DOUBLE_ANGLES
    assert (found.setback, found.drop, found.beam.top.d_c) == (0.5, 0.25, 1.5)
    joint = found.to_beam
    assert isinstance(joint, Bolted)
    assert (joint.rows, joint.pitch, joint.gage, joint.edge_side) == (3, 3.0, 2.0, 1.5)
    assert (joint.edge_top, joint.edge_bottom, joint.holes.along) == (1.25, 1.25, 0.8125)
    out = found.to_support
    assert isinstance(out, Bolted)
    assert (out.gage, out.edge_side) == (2.5, 1.5)
    assert (found.fitting.leg, found.fitting.out, found.fitting.length) == (3.5, 4.0, 8.5)


def test_both_ends_of_a_symmetric_piece_are_the_same_connection() -> None:
    left, right = drawn(ANGLES)
    assert left.connection is not None
    assert right.connection is not None
    assert left.connection.to_support == right.connection.to_support
    assert left.connection.drop == right.connection.drop


def test_welded_legs_have_the_weld_of_the_drawing() -> None:
    found = only(
        'angles = [{ end = "left", stock = "L4x3x5/16", rows = 3, to_web = "welded", weld = "3/16" }]'
    )
    assert found.to_beam == Fillet(3 / 16)
    assert isinstance(found.to_support, Bolted)


def test_slots_in_the_outstanding_leg_lie_along_the_part_unless_turned() -> None:
    found = only('angles = [{ end = "left", stock = "L4x3x5/16", rows = 3, hole = "SSL", turn = "across" }]')
    assert isinstance(found.to_support, Bolted)
    assert found.to_support.holes.kind is Hole.SHORT_PERPENDICULAR
    assert found.to_support.holes.along < found.to_support.holes.across


def test_a_single_angle_and_an_end_plate() -> None:
    angle = only('angles = [{ end = "left", sides = "far", stock = "L4x3-1/2x3/8", rows = 3 }]')
    assert angle.kind is Kind.SINGLE_ANGLE
    plate = only(
        'end_plates = [{ end = "left", thickness = "3/8", width = "6 1/2", length = "9", rows = 3, '
        'gage = "3 1/2", drop = "1 1/2", end_distance = "1 1/4" }]'
    )
    assert plate.kind is Kind.END_PLATE
    assert isinstance(plate.to_support, Bolted)
    assert (plate.to_support.gage, plate.to_support.edge_side) == (1.75, 1.5)
    assert (plate.to_support.edge_top, plate.to_support.edge_bottom) == (1.25, 1.75)
    assert (plate.setback, plate.drop) == (0.375, 1.5)


def test_a_plate_on_a_girder_carries_a_beam_that_is_not_known() -> None:
    (found,) = drawn('plates = [{ x = "3\'-0", thickness = "3/8", width = "4 1/2", rows = 3, gage = "3" }]')
    assert found.end is None
    assert found.connection is not None
    assert found.connection.beam is None
    assert found.connection.kind is Kind.SINGLE_PLATE
    assert found.connection.support is not None
    assert found.connection.support.face == "girder web"


def test_plates_on_both_faces_of_a_web_share_its_thickness() -> None:
    """A drawn girder does not say what stands on the other side, but its own plates do."""
    plate = '{ on = "ON", x = "X", thickness = "3/8", width = "4 1/2", rows = 3, gage = "3" }'

    def both(*places: tuple[str, str]) -> list[bool | None]:
        lines = ", ".join(plate.replace("ON", on).replace("X", x) for on, x in places)
        found = [one.connection for one in drawn(f"plates = [{lines}]")]
        return [one.support.both_faces for one in found if one is not None and one.support is not None]

    assert both(("near", "3'-0"), ("far", "3'-0")) == [True, True]
    assert both(("near", "3'-0"), ("far", "5'-0")) == [None, None]


@pytest.mark.parametrize(
    ("lines", "why"),
    [
        (
            'angles = [{ end = "left", stock = "L4x3x5/16", rows = 3, diameter = "7/8" }]',
            "for no bolt of a table",
        ),
        (THREE_COLUMNS, "3 columns of bolts in an end plate are not covered"),
        (
            'end_plates = [{ end = "left", thickness = "3/8", width = "9", length = "9" }]',
            "has no holes for bolts",
        ),
    ],
)
def test_what_cannot_be_read_says_why(lines: str, why: str) -> None:
    (found,) = drawn(lines)
    assert found.connection is None
    assert why in found.why


@pytest.mark.parametrize(
    ("text", "group", "threads"),
    [
        ("A325-N", "120", "N"),
        ("ASTM A490-X", "150", "X"),
        ("F1852", "120", "N"),
        ("a307", "A307", "N"),
        ("A325M-X", "120", "X"),
        ("8.8", "8.8", "N"),
        ("10.9-X", "10.9", "X"),
    ],
)
def test_grades_of_bolts(text: str, group: str, threads: str) -> None:
    found = bolt_steel(text)
    assert (found.group, found.threads) == (group, threads)


def test_a_grade_of_no_table_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r'bolt grade "5\.6" is not in Table J3\.2'):
        bolt_steel("5.6")
