from __future__ import annotations

from gageline.detail import Reason


def test_a_reason_is_one_line_with_its_source() -> None:
    reason = Reason('setback 1/2"', "the shop's practice", "common practice, no source", "start")
    assert reason.text() == "start: setback 1/2\", because the shop's practice (common practice, no source)"


def test_a_reason_of_the_whole_piece_names_no_end() -> None:
    assert Reason("cut 10'-0\" long", "geometry", "frame").text().startswith("cut 10'-0\" long, because")
