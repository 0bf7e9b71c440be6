"""Members of a frame as what is checked."""

from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from gageline.part import End
from gageline.strength import (
    Bolted,
    Connection,
    Fillet,
    Kind,
    Method,
    SupportFace,
    bolt_steel,
    check_connection,
    connections_of,
    hand_down,
)
from gageline.strength.framed import Subject, subjects_of_frame
from gageline.units import System
from jobs import inches

LOADS = [{"case": "dead", "uniform": "1 kip/ft"}]


def subject(name: str = "B1", frame: dict[str, Any] | None = None, **beam: Any) -> Subject:
    result = detailed(frame or bay(**beam))
    subjects = subjects_of_frame(result, hand_down(result, System.FT_IN), Method.LRFD)
    return next(one for one in subjects if one.assembly.mark == name)


def ends(one: Subject) -> list[Connection]:
    steel = bolt_steel("A325-N")
    drawn = connections_of(one.assembly, steel, inches("1/4"), one.supports, one.carried, one.known)
    assert not [end.why for end in drawn if end.connection is None]
    return [end.connection for end in drawn if end.connection is not None]


def test_an_end_knows_what_carries_it_and_what_it_carries() -> None:
    """15 ft at 1 kip/ft dead: 1.4 7.5 = 10.5 kips."""
    one = subject(loads=LOADS)
    assert one.supports[End.LEFT].section == "W21X62"
    assert one.supports[End.LEFT].face is SupportFace.GIRDER_WEB
    assert pytest.approx(10.5) == one.demands[End.LEFT].V
    assert one.span is not None
    assert (one.span.length, len(one.span.loads)) == (180.0, 1)


def test_without_loads_half_of_the_largest_uniform_load_is_taken() -> None:
    one = subject()
    assert one.span is None
    assert one.demands[End.LEFT].load.startswith("none given")


def test_a_hollow_beam_of_no_suggested_reaction_does_not_stop_the_others() -> None:
    one = subject(beam="HSS8X4X1/4")
    assert one.demands == {}
    assert subject("G1", beam="HSS8X4X1/4").assembly.mark == "G1"


def test_a_plate_on_the_girder_is_checked_with_the_beam() -> None:
    left, right = ends(subject(ends={"connection": "single plate"}))
    assert left.kind is Kind.SINGLE_PLATE
    assert left.beam is not None
    assert left.beam.section == "W18X50"
    assert isinstance(left.to_beam, Bolted)
    assert (left.to_beam.gage, left.setback) == (3.0, 0.5)
    assert isinstance(left.to_support, Fillet)
    assert left.drop == right.drop
    girder = subject("G1", ends={"connection": "single plate"})
    assert girder.known == frozenset({"far plate"})
    assert not ends(girder)


def test_angles_welded_to_the_girder_are_read_from_it() -> None:
    left, right = ends(subject(start={"connection": "double angles", "to_support": "welded"}))
    assert (left.kind, right.kind) == (Kind.DOUBLE_ANGLES, Kind.DOUBLE_ANGLES)
    assert isinstance(left.to_support, Fillet)
    assert isinstance(left.to_beam, Bolted)
    assert isinstance(right.to_support, Bolted)
    assert (left.setback, left.play) == (0.5, 0.0)
    assert right.setback == 0.4375  # to the angles, which keep play at the face
    assert left.drop == pytest.approx(right.drop)


def test_a_seat_is_read_from_its_column() -> None:
    frame: dict[str, Any] = bay(loads=LOADS)
    frame["column"] = [{"name": "P", "at": "1/A", "stock": "W10X49", "base": "0", "top": "20'-0", "turn": 0}]
    frame["member"][0]["start"] = {"connection": "seat"}
    frame["member"][0].pop("ends")
    frame["member"][0]["end"] = {"connection": "free"}
    (seat,) = ends(subject("G1", frame))
    assert seat.kind is Kind.SEAT
    assert (seat.fitting.leg, seat.fitting.out, seat.fitting.t) == (6.0, 4.0, 0.375)
    assert seat.setback == 0.5
    assert seat.support is not None
    assert seat.support.face is SupportFace.COLUMN_FLANGE


def test_a_skewed_end_has_a_plate_that_leans() -> None:
    """B1 goes 60 in aside on its way over 180 in: 18.4 degrees."""
    one = subject(to={"on": "G2", "at": 180}, loads=LOADS)
    left, right = ends(one)
    assert left.kind is right.kind is Kind.SINGLE_PLATE
    assert left.skew == right.skew == pytest.approx(18.435, abs=0.01)
    assert isinstance(left.to_beam, Bolted)
    assert left.to_beam.rows >= 2
    assert left.to_beam.columns == 1


def test_a_sloped_end_is_read_plumb() -> None:
    """A fall of 1 in 12 leans the angles as seen from the beam; setback and rows stay as made."""
    level = ends(subject(loads=LOADS))[0]
    sloped = ends(subject(loads=LOADS, fall="1 in 12"))[0]
    assert sloped.setback == pytest.approx(level.setback, abs=0.01)
    assert isinstance(sloped.to_beam, Bolted)
    assert isinstance(level.to_beam, Bolted)
    assert sloped.to_beam.gage == level.to_beam.gage
    assert sloped.to_beam.pitch == level.to_beam.pitch
    assert sloped.drop >= 0


def back_to_back(one: dict[str, Any], two: dict[str, Any], at: float = 120.0) -> list[Connection]:
    """The ends of B1 and B2 on the two faces of G2's web."""
    frame: dict[str, Any] = bay(ends=one)
    frame["grid"]["y"] = {"names": ["A", "B", "C"], "spacing": [180, 180]}
    third = dict(frame["member"][0], name="G3") | {"from": "1/C", "to": "2/C"}
    beam = dict(frame["member"][2], name="B2", ends=two)
    beam |= {"from": {"on": "G2", "at": at}, "to": {"on": "G3", "at": at}}
    frame["member"] += [third, beam]
    return [ends(subject("B1", frame))[1], ends(subject("B2", frame))[0]]


WELDED = {"connection": "double angles", "to_support": "welded", "rows": 4}
PLATE = {"connection": "single plate", "rows": 4}


@pytest.mark.parametrize(("one", "two"), [(WELDED, WELDED), (PLATE, PLATE), (WELDED, PLATE)])
def test_connections_welded_to_both_faces_of_one_web_share_its_thickness(
    one: dict[str, Any], two: dict[str, Any]
) -> None:
    """Equation 9-7 for welds opposite each other: 6.19 D/F_u, twice that of Equation 9-6."""
    for connection in back_to_back(one, two):
        assert connection.support is not None
        assert connection.support.sides == 2
        verdict = check_connection(connection, Method.LRFD)
        beside = next(c for c in verdict.checks if c.title.startswith("support beside the weld"))
        weld = next(c for c in verdict.checks if c.title.startswith("weld to the support"))
        assert isinstance(connection.to_support, Fillet)
        D, F_u, t = 16 * connection.to_support.leg, 65.0, connection.support.t
        assert beside.capacity / weld.capacity == pytest.approx(t / (6.19 * D / F_u), rel=1e-3)


def test_the_ends_at_one_beam_alone_are_on_one_face() -> None:
    far = back_to_back(WELDED, WELDED, at=60.0)
    bolted = back_to_back(WELDED, {"connection": "double angles", "rows": 4})
    for connection in (*far, *bolted):
        assert connection.support is not None
        assert connection.support.sides == 1
        assert connection.support.both_faces is False


@pytest.mark.parametrize("at", ["120 in", "150 in"])
def test_a_tongue_is_read_with_the_plate_that_it_is_bolted_to(at: str) -> None:
    """3 in to the bolts, 1 7/8 on to the cap; the tongue as long as the plate, 1 1/4 to its first row."""
    frame = bay(beam="HSS8X4X1/4", girder="HSS16X8X3/8", to={"on": "G2", "at": at})
    for end in ends(subject(frame=frame)):
        assert end.tongue is not None
        assert end.beam is None
        assert (end.tongue.section, end.tongue.weld.leg) == ("HSS8X4X1/4", 0.25)
        assert (end.tongue.edge_top, end.tongue.to_cap) == pytest.approx((1.25, 1.875), abs=0.05)
        assert (end.tongue.plate.t, end.tongue.plate.length) == (0.375, 5.5)
        assert (end.tongue.cap.length, end.tongue.cap.leg) == (8.0, 4.75)
        assert end.setback == pytest.approx(0.5, abs=0.2)
        assert isinstance(end.to_beam, Bolted)
        assert (end.to_beam.rows, end.to_beam.other.along) == (2, 0.8125)


def test_a_tongue_on_a_slope_is_read_as_it_stands() -> None:
    frame = bay(beam="HSS8X4X1/4", girder="HSS16X8X3/8", rise="2 in 12")
    frame["member"][1]["top"] = str(144 + 30)  # type: ignore[index] # a list
    for end in ends(subject(frame=frame)):
        assert end.tongue is not None
        assert (end.tongue.edge_top, end.tongue.to_cap, end.setback) == pytest.approx(
            (1.25, 1.875, 0.5), abs=1e-4
        )
