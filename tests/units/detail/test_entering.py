from __future__ import annotations

from typing import Any

from assembling import bay, detailed
from gageline.detail import Detailed
from gageline.part import End


def short(span: object = "48 in", **keys: Any) -> Detailed:
    """The beam B1 between girders so far apart."""
    table = bay(**{"beam": "W16X26"} | keys)
    table["grid"]["y"]["spacing"] = [span]  # type: ignore[index] # a table
    return detailed(table)


def stuck(result: Detailed) -> list[str]:
    return [one.text() for one in result.findings if one.code == "cannot-be-put-in"]


def test_a_long_beam_swings_in_and_says_how() -> None:
    reasons = [one.decision for one in detailed(bay()).reasons["B1"]]
    assert "goes in turned in the plan" in reasons


def test_a_short_beam_whose_angles_are_given_cannot_be_swung_in() -> None:
    (found,) = stuck(short(ends={"connection": "double angles"}))
    # 47.6 in between webs less 1/16 twice; 8.25 in across the legs: 48.2 in corner to corner
    assert "needs 4'-0 3/16\" turned in the plan in a gap of 3'-11 19/32\"" in found
    assert "ship the angles of one end loose" in found


def test_flanges_of_girders_over_both_ends_bar_tilting() -> None:
    # end plates 8 in wide and 5 1/2 in high: tilted they would need less
    result = short(ends={"connection": "end plate", "rows": 2})
    (found,) = stuck(result)
    assert "turned in the plan" in found
    assert "tilted" not in found
    assert found.endswith("cut the beam short and shim one end plate, or use a single plate at one end")


def test_a_hollow_beam_that_cannot_go_in_with_end_plates_gets_tongues() -> None:
    result = short(beam="HSS8X4X1/4")
    assert not stuck(result)
    assert [result.joints["B1", end].kind for end in End] == ["single plate", "single plate"]


def test_a_hollow_beam_between_end_plates_that_are_given_is_shimmed() -> None:
    (found,) = stuck(short(beam="HSS8X4X1/4", ends={"connection": "end plate"}))
    assert found.endswith("cut the beam short and shim one end plate, or use a single plate at one end")


def test_a_short_wide_hollow_beam_does_not_turn_between_flanges_behind_its_tongues() -> None:
    # W30X90 24 in apart: 23 17/32 between webs, (10.4 - 0.47)/2 of flange at each; caps 1/8 off those and
    # 4 - 1/8 + 3/8 wide to each side: 13.28 long and 8 3/4 wide, 15.9 corner to corner and 9.93 of flanges
    keys = {"beam": "HSS12X8X1/2", "girder": "W30X90", "ends": {"connection": "single plate"}}
    result = short("24 in", **keys)
    (found,) = stuck(result)
    assert found == (
        "warning: B1: the finished beam needs 2'-1 53/64\" turned in the plan in a gap of 1'-11 17/32\": "
        "use an extended plate, whose tongue and cap stay outside the flanges, or use a narrower beam"
    )
    (reason,) = [one for one in result.reasons["B1"] if one.decision == "cannot be swung in"]
    assert reason.because.startswith(
        'the gap is 1\'-11 17/32", flanges take 9 15/16" of it, the beam is 1\'-1 9/32" long, 8 3/4" wide '
        "and 1'-0\" high between its tongues; turned in the plan it needs 2'-1 53/64\""
    )
    assert not stuck(short("10'-0", **keys))


def test_plates_outside_the_flanges_let_a_beam_be_tilted() -> None:
    result = short("10'-0", ends={"connection": "extended plate"})
    (reason,) = [one for one in result.reasons["B1"] if one.decision.startswith("goes in")]
    assert not stuck(result)
    assert reason.decision == "goes in turned in the plan"  # 5 1/2 in wide, 15 in high


def test_between_a_columns_flanges_at_one_end_and_under_a_girders_at_the_other() -> None:
    angles = {"connection": "double angles"}
    table = bay(beam="W12X26", girder="W21X62")
    table["column"] = [{"name": "P", "at": "1/A", "stock": "W12X65", "base": 0, "top": "240 in"}]
    member = {"name": "B2", "stock": "W12X26", "from": "1/A", "to": {"on": "G2", "at": 0}, "top": "Floor"}
    free = {"connection": "free"}
    table["member"] = [
        {"name": "G2", "stock": "W21X62", "from": {"point": "1/B", "x": "-60 in"}, "to": "2/B",
         "top": "Floor", "ends": free},
        member | {"to": {"on": "G2", "at": "60 in"}, "ends": angles},
    ]  # fmt: skip
    (found,) = stuck(detailed(table))
    assert "can be neither turned in the plan nor tilted" in found


def test_a_short_beam_on_plates_goes_in() -> None:
    assert not stuck(short(ends={"connection": "single plate"}))
