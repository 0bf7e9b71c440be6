"""The reasons table: nothing left out, equal reasons once."""

from frames import demo_frame
from gageline.detail import Detailed
from gageline.sheets import reasons_by_card, reasons_table
from pages import all_texts


def frame() -> Detailed:
    detailed = demo_frame().detailed
    assert detailed is not None
    return detailed


def run_on(marks: frozenset[str] | None = None) -> str:
    """Everything that the table says, without the blanks at which it was wrapped."""
    return "".join(all_texts(reasons_table(demo_frame(), marks))).replace(" ", "")


def test_every_decision_with_its_rule_and_source_is_there() -> None:
    whole, detailed = run_on(), frame()
    for reasons in detailed.reasons.values():
        for reason in reasons_by_card(reasons, detailed):
            for text in (reason.decision, reason.because, reason.source):
                assert text.replace(" ", "") in whole


def test_reasons_of_one_piece_only() -> None:
    whole = run_on(frozenset({"G2"}))
    for reason in frame().reasons["G2"]:
        assert reason.because.replace(" ", "") in whole
    assert "G3" not in whole
    assert "Reasons that several pieces have" not in all_texts(reasons_table(demo_frame(), frozenset({"G2"})))


def test_equal_reasons_of_several_pieces_stand_once_with_their_pieces() -> None:
    cut = "cut 18'-4 5/8\" long between the furthest points"
    have = [mark for mark, reasons in frame().reasons.items() if any(r.decision == cut for r in reasons)]
    assert have == ["B1", "B2", "B7"]
    whole = run_on()
    assert whole.count(cut.replace(" ", "")) == 1
    assert "B1,B2,B7" in whole


def test_a_reason_of_both_ends_stands_once() -> None:
    decision = '4 rows at 3", the first 3" down, material 11 1/2" long'
    assert [r.end for r in frame().reasons["G3"] if r.decision == decision] == ["start", "end"]
    found = all_texts(reasons_table(demo_frame(), frozenset({"G3"})))
    assert run_on(frozenset({"G3"})).count(decision.replace(" ", "")) == 1
    assert "both" in found


def test_sources_are_numbered_and_listed_once() -> None:
    found = all_texts(reasons_table(demo_frame()))
    listed = found[found.index("Sources") :]
    sources = {reason.source for reasons in frame().reasons.values() for reason in reasons}
    assert "geometry of the frame" in listed
    assert [text for text in listed if text.isdigit()] == [str(n + 1) for n in range(len(sources))]
    assert found.count("geometry of the frame") == 1


def test_ends_are_told_in_the_words_of_the_cards_too() -> None:
    found = all_texts(reasons_table(demo_frame(), frozenset({"B4"})))
    assert "start (left end)" in found
    assert not {"start", "end"} & set(found)
