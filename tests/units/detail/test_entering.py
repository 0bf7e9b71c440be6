from __future__ import annotations

from assembling import bay, detailed


def test_a_long_beam_swings_in_and_says_how() -> None:
    reasons = [one.decision for one in detailed(bay()).reasons["B1"]]
    assert "goes in turned in the plan" in reasons or "goes in tilted" in reasons


def test_a_short_beam_with_fitted_angles_cannot_be_swung_in() -> None:
    table = bay(beam="W16X26")
    table["grid"]["y"]["spacing"] = [48]  # type: ignore[index] # a table
    (found,) = [one for one in detailed(table).findings if one.code == "cannot-be-put-in"]
    # 47.6 in between webs; 8.25 in across the legs: 48.3 in corner to corner
    assert "in a gap of 3'-11 19/32\"" in found.message
    assert "ship the angles of one end loose" in found.remedy


def test_a_short_beam_on_plates_goes_in() -> None:
    table = bay(beam="W16X26", ends={"connection": "single plate"})
    table["grid"]["y"]["spacing"] = [48]  # type: ignore[index] # a table
    assert not [one for one in detailed(table).findings if one.code == "cannot-be-put-in"]
