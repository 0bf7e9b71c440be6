"""The stick at the saw, its readings worked out by hand."""

from __future__ import annotations

from gageline.sheets import saw_card, texts
from gageline.stock import End, Offer, Piece, Saw, Steel, plan_cuts
from jobs import inches, job_of

STEEL = Steel("HSS6X6X3/8", "A500-C")
JOB = job_of('mark = "A1"\nstock = "HSS6x6x3/8"\nlength = "5\'"')
KERF = inches("1/8")


def test_every_cut_has_its_stop_its_tape_and_what_is_left() -> None:
    piece = Piece("A1", STEEL, inches("5'"), 2)
    saw = Saw(KERF, inches("1/2"), keep=inches("24"))
    (section,) = plan_cuts([piece], [Offer(STEEL, inches("20'"), 40000)], saw).sections
    card = saw_card(JOB, section.sticks[0], {"A1": piece}, KERF)
    # trim 1/2 in, 60 in, kerf 1/8 in, 60 in, kerf: 240 - 1/2 - 60 - 1/8 = 179 3/8; less 60 and 1/8: 119 1/4
    assert [(cut.number, cut.mark, cut.length, cut.tape, cut.ends) for cut in card.cuts] == [
        (1, "A1", "5'-0\"", "5'-0 1/2\"", "square"),
        (2, "A1", "5'-0\"", "10'-0 5/8\"", "square"),
    ]
    assert [cut.rest for cut in card.cuts] == [inches("179 3/8"), inches("119 1/4")]
    assert card.drop == "9'-11 1/4\""
    assert card.length == "20'-0\""
    assert "drop 9'-11 1/4\"" in [text.text for text in texts(card.picture.items)]


def test_an_angled_end_is_said_and_takes_more_of_the_stick() -> None:
    piece = Piece("A1", STEEL, inches("5'"), right=End(inches("6"), inches("6"), "web", "high"))
    saw = Saw(KERF)
    (section,) = plan_cuts([piece], [Offer(STEEL, inches("20'"), 40000)], saw).sections
    card = saw_card(JOB, section.sticks[0], {"A1": piece}, KERF)
    assert "12 in 12" in card.cuts[0].ends
    # the blade at 45 degrees takes 1/8 of an inch times the root of 2 along the piece: 0.17678 in
    assert abs(card.cuts[0].rest.inches - (180 - 0.125 * 2**0.5)) < 0.0001
