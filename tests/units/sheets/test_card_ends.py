"""Ends as the frame names them, and as the card of their piece calls them."""

from dataclasses import replace

import pytest

from frames import demo_frame
from gageline.detail import Detailed, Reason
from gageline.detail.likeness import Lie
from gageline.part import End, Finding, Severity
from gageline.sheets.card_ends import called, ends_by_card, findings_by_card, place_of, reasons_by_card


@pytest.fixture
def frame() -> Detailed:
    """The demo's, where B8 is the same piece as B1; B8 is turned end for end here."""
    detailed = demo_frame().detailed
    assert detailed is not None
    turned = [
        replace(one, lie=Lie(end_for_end=True)) if one.member == "B8" else one for one in detailed.placed
    ]
    return replace(detailed, placed=tuple(turned))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("start of B4", "start of B4 (left end)"),
        ("holes for the end of B3, 6'-0\" from it", "holes for the end of B3 (right end), 6'-0\" from it"),
        ("start of B8", "start of B8 (right end of B1)"),
        ("end of B8 and start of G1", "end of B8 (left end of B1) and start of G1 (left end)"),
        ("B4 start", "B4 start (left end)"),
        ("B8 end, B4 end", "B8 end (left end of B1), B4 end (right end)"),
        ("a B4 end plate", "a B4 end plate"),
        ("B4 ends here", "B4 ends here"),
        ("end of B42", "end of B42"),
        ("end of B4-72", "end of B4-72"),
        ("the end of the steel", "the end of the steel"),
    ],
)
def test_an_end_is_told_in_the_words_of_its_card_too(frame: Detailed, text: str, said: str) -> None:
    assert ends_by_card(frame)(text) == said


def test_the_end_called_is_the_other_where_the_piece_is_turned(frame: Detailed) -> None:
    placed = {one.member: one for one in frame.placed}
    assert called(placed["B1"], End.LEFT) is End.LEFT
    assert called(placed["B8"], End.LEFT) is End.RIGHT


def test_a_job_without_a_frame_is_left_alone() -> None:
    assert ends_by_card(None)("start of B4") == "start of B4"


def test_findings_and_reasons_tell_it(frame: Detailed) -> None:
    finding = Finding("far", Severity.WARNING, "start of B4", "is far from the end of G3", "move it")
    (told,) = findings_by_card([finding], frame)
    assert told.text() == "warning: start of B4 (left end): is far from the end of G3 (right end): move it"
    (reason,) = reasons_by_card([Reason("a hole for the end of B8", "why", "rule", "start")], frame)
    assert (reason.end, reason.decision) == ("start (left end)", "a hole for the end of B8 (left end of B1)")


@pytest.mark.parametrize(
    ("name", "mark", "place"),
    [
        ("B8", "B1", "place B8"),
        ("B1", "B1", ""),
        ("p1", "P1", ""),
        ("P1", "P1.2", ""),
        ("P1", "P12", "place P1"),
    ],
)
def test_a_place_is_told_where_the_mark_does_not(name: str, mark: str, place: str) -> None:
    assert place_of(name, mark) == place
