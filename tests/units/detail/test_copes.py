from __future__ import annotations

from assembling import bay, detailed
from gageline.detail import Joint
from gageline.part import End, Face
from gageline.units import parse_length


def joint(**keys: object) -> Joint:
    return detailed(bay(**keys)).joints["B1", End.LEFT]  # type: ignore[arg-type] # keys of the beam


def test_a_beam_under_the_fillet_needs_no_cope() -> None:
    # W21X62: kdet 1 5/16
    assert not joint(drop="1 5/16").notches.copes
    assert joint(drop="1 1/4").notches.depth(Face.TOP) == parse_length("1 1/2")


def test_a_beam_as_deep_as_its_girder_is_coped_at_both_flanges() -> None:
    # W18X50 in W18X50: kdes 0.972 + 1/2 = 1.472, rounded up to 1 1/2
    notches = joint(girder="W18X50").notches
    assert notches.depth(Face.TOP) == notches.depth(Face.BOTTOM) == parse_length("1 1/2")


def test_a_deep_beam_in_a_shallow_girder_is_a_finding() -> None:
    found = joint(beam="W24X55", girder="W12X26", ends={"connection": "double angles"}).findings
    assert {"cope-beyond-method", "support-shallower"} <= {one.code for one in found}
    (shallow,) = [one for one in found if one.code == "support-shallower"]
    assert "G1 W12X26 is too shallow for this beam" in shallow.message


def test_an_extended_plate_needs_no_cope() -> None:
    extended = joint(ends={"connection": "extended plate"})
    assert not extended.notches.copes
    # half flange of W21X62 less half web 3.92, and 1/2 clear, up to the next 1/8
    assert extended.choice.setback == parse_length("4 1/2")


def test_flanges_are_trimmed_to_enter_between_those_of_a_column() -> None:
    column = {"name": "P", "at": {"point": "1/A", "x": 60}, "stock": "W8X31", "base": "0", "top": "Floor"}
    keys = {
        "from": {"point": "1/A", "x": 60},
        "to": {"on": "G2", "at": 60},
        "start": {"connection": "single plate"},
    }
    table = bay(column=column, **keys)  # type: ignore[arg-type] # keys of the beam
    table["member"] = [m for m in table["member"] if m["name"] != "G1"]  # type: ignore[attr-defined] # a list
    trims = detailed(table).joints["B1", End.LEFT].notches.trims
    assert len(trims) == 4
    # W8X31: 8 - 2 x 0.435 = 7.13 between flanges, less 2 x 1/8, less the web 0.355, halved: 3.26, down to 1/8
    assert {trim.keep for trim in trims} == {parse_length("3 1/4")}
