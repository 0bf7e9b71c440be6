from dataclasses import replace

import pytest

from gageline.job import EndReadings, Stick
from gageline.layout.deciding import decide
from gageline.layout.ways import Choice
from gageline.part import End
from gageline.units import Length, System
from jobs import inches, piece_of
from sticks import ANGLES, corners, example_piece, example_stick

TAPE = inches("1/16")


@pytest.mark.parametrize(
    ("length", "choice", "ask", "made", "words"),
    [
        ("18'-8", Choice.TRIM, False, True, 'The stick is 3/4" longer than the piece'),
        (
            "18'-7 1/4",
            Choice.AS_IS,
            False,
            True,
            'Trimmed square it would be 1/2" too short. With the datum at',
        ),
        ("18'-6 7/8", Choice.AS_IS, True, True, 'loses 3/8" of its end distance, the least of all ways'),
        ("18'-6 1/4", Choice.SPLIT, True, False, "comes too near it: take another stick"),
    ],
)
def test_the_way_that_loses_least_is_taken(
    length: str, choice: Choice, ask: bool, made: bool, words: str
) -> None:
    decision = decide(example_piece(), example_stick(length), TAPE, System.FT_IN)
    assert (decision.chosen.way.choice, decision.ask, decision.can_be_made) == (choice, ask, made)
    assert words in decision.because


def test_the_right_end_is_held_where_only_that_keeps_within_the_design() -> None:
    """Short by 1/4 with the right end skewed: held at the left the right rows lose 1/4 and more."""
    stick = example_stick("18'-7").turned(end_for_end=True)
    decision = decide(example_piece(), stick, TAPE, System.FT_IN)
    assert (decision.chosen.way.choice, decision.chosen.way.held) == (Choice.HOLD, End.RIGHT)
    assert decision.because.endswith('Held at the right end, no connection loses more than 1/4" of its end '
                                     'distance; the design allows 1/4".')  # fmt: skip


def test_steel_in_the_way_is_said() -> None:
    long = Stick("B1", length=inches("18'-9"), left=example_stick().left)
    decision = decide(example_piece(), long, TAPE, System.FT_IN, saw_trim=inches("4"))
    assert "the steel meets the support" in decision.because
    assert not decision.can_be_made


def test_metric_reasons_have_their_unit() -> None:
    piece = example_piece(ANGLES)
    stick = Stick("B1", length=piece.main.length + Length.from_mm(5))
    assert decide(piece, stick, Length.from_mm(1), System.MM).because.startswith("The stick is 5 mm longer")


def test_a_loss_that_prints_as_the_allowance_is_within_it() -> None:
    """Short by 1/4 and 1/200: the tape tells no difference, and neither does the card."""
    decision = decide(example_piece(), Stick("B1", length=inches("223in") - Length(812)), TAPE, System.FT_IN)
    assert (decision.ask, decision.chosen.way.choice) == (False, Choice.AS_IS)
    more = decide(example_piece(), Stick("B1", length=inches("222.97in")), TAPE, System.FT_IN)
    assert not more.ask
    assert more.chosen.way.choice is Choice.SPLIT


@pytest.mark.parametrize(("length", "ask"), [("9'-11 15/16", False), ("9'-11 59/64", True)])
def test_a_piece_that_nothing_is_joined_to_may_be_a_sixteenth_short(length: str, ask: bool) -> None:
    """AISC 303, 6.4 (read): ±1/16 to 30 ft, ±1/8 over."""
    decision = decide(piece_of(), Stick("B1", length=inches(length)), TAPE, System.FT_IN)
    assert (decision.ask, decision.can_be_made) == (ask, True)
    said = 'it is 0.078" short at an end where no connection makes up for it; AISC 303 allows 1/16"'
    assert (said in decision.because) is ask


@pytest.mark.parametrize(("length", "ask"), [("39'-11 7/8", False), ("39'-11 55/64", True)])
def test_a_long_piece_may_be_an_eighth_short(length: str, ask: bool) -> None:
    piece = piece_of(length='"40\'"')
    assert decide(piece, Stick("B1", length=inches(length)), TAPE, System.FT_IN).ask is ask


def test_a_free_end_is_held_where_the_other_end_has_a_connection_to_make_up_for_it() -> None:
    piece = piece_of(ANGLES.replace("both", "left"))
    decision = decide(piece, Stick("B1", length=inches("9'-11 3/4")), TAPE, System.FT_IN)
    assert not decision.ask
    assert decision.chosen.way.words == "hold the right end"


def test_a_free_end_that_runs_past_is_cut_where_a_saw_can_and_else_asked_about() -> None:
    """A left end open by 1/4 wants 1/2 to be trimmed: 3/8 is too little for that and too much to leave."""
    left = example_stick().left
    most = decide(piece_of(), Stick("B1", length=inches("10'-0 3/8"), left=left), TAPE, System.FT_IN)
    assert not most.can_be_made
    assert "the steel runs past its place: cut it as near to its line as the saw can" in most.because
    some = decide(piece_of(), Stick("B1", length=inches("10'-0 1/8"), left=left), TAPE, System.FT_IN)
    assert (some.can_be_made, some.ask) == (True, True)
    assert 'it is 1/8" long at an end where no connection makes up for it' in some.because


def test_a_stick_of_forty_feet_is_trimmed_and_no_other_way_is_offered() -> None:
    decision = decide(piece_of(), Stick("B1", length=inches("40'")), TAPE, System.FT_IN)
    assert [option.possible for option in decision.options] == [True, False, False, False]


@pytest.mark.parametrize("length", ["18'-7 3/16", "18'-7 1/4", "18'-7 5/16"])
def test_a_square_stick_of_its_length_is_not_cut(length: str) -> None:
    square = corners("0", "0", "0", "-1/16")
    stick = Stick("B1", length=inches(length), left=square, right=square)
    decision = decide(example_piece(), stick, TAPE, System.FT_IN)
    assert decision.because == "It is square and of its length: there is nothing to cut."
    assert (decision.chosen.way.choice, decision.ask) == (Choice.AS_IS, False)
    half_read = decide(example_piece(), replace(stick, right=EndReadings()), TAPE, System.FT_IN)
    assert "what was not read of its ends is taken as square: nothing to cut" in half_read.because
    longer = decide(example_piece(), replace(stick, length=inches("18'-7 21/64")), TAPE, System.FT_IN)
    assert longer.chosen.way.choice is Choice.TRIM


def test_a_length_that_was_not_read_is_said() -> None:
    because = decide(example_piece(), Stick("B1"), TAPE, System.FT_IN).because
    assert because == "Its length was not read and is taken as drawn: there is nothing to cut."
