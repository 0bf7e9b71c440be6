from dataclasses import replace

import pytest

from gageline.part import End, Face, FlangeTrim, Opening, Side
from gageline.sheets.notation import Scribe, long_point
from gageline.units import ZERO, Length, System
from jobs import job_of, piece_of
from pieces import at, drilled, hole, piece

FEET = Scribe(System.FT_IN, at("1/16"))
METRIC = Scribe(System.MM, Length.from_mm(1))


def test_a_reading_is_rounded_once_to_the_tape() -> None:
    assert FEET.tell(at("7 15/16") + Length(5)) == '7 15/16"'
    assert METRIC.tell(Length.from_mm(41755) / 10) == "4176"
    assert FEET.fine(at("21/32")) == '21/32"'


def test_the_writer_takes_units_and_tape_of_the_job() -> None:
    job = job_of('mark = "B1"\nstock = "IPE 300"\nlength = 3000', units="mm", practice="tape = 5")
    assert Scribe.of(job) == Scribe(System.MM, Length.from_mm(5))


def test_a_part_drawn_in_millimetres_is_written_in_them_from_end_to_end() -> None:
    job = job_of('mark = "M1"\nstock = "IPE 300"\nlength = "4200mm"')
    scribe = Scribe.of(job, job.piece("M1").main)
    lengths = (ZERO, Length.from_mm(127), Length.from_mm(4200), at("3"))
    assert [scribe.tell(length) for length in lengths] == ["0 mm", "127 mm", "4200 mm", "76 mm"]
    assert scribe.fine(Length.from_mm(22)) == "22 mm"
    inch = job_of('mark = "B1"\nstock = "W16x26"\nlength = "10\'-0"')
    assert Scribe.of(inch, inch.piece("B1").main) == FEET


@pytest.mark.parametrize(
    ("stock", "face", "holes", "said"),
    [
        ("W16X26", Face.TOP, (hole("9", "1 3/4"), hole("9", "-1 3/4")), '2 Ø13/16", gage 3 1/2"'),
        ("W16X26", Face.TOP, (hole("9", "1"), hole("9", "-2")), '2 Ø13/16", lines 2" far, 1" near'),
        ("W16X26", Face.NEAR, (hole("9", "12.7in"), hole("9", "9.7in")), '2 Ø13/16", 3", 6" down'),
        ("W16X26", Face.NEAR, (hole("9", "12.7in", "13/16", "1"),), '1 slots 13/16" x 1", 3" down'),
        ("C8X11.5", Face.TOP, (hole("9", "-1 1/4"),), '1 Ø13/16", 1 1/4" from back'),
        ("L6X4X1/2", Face.LEG_B, (hole("9", "2 1/2"),), '1 Ø13/16", gage 2 1/2" from heel'),
        ("HSS6X6X3/8", Face.NEAR, (hole("9", "3"),), '1 Ø13/16", 3" down, near wall only'),
        ("HSS6X6X3/8", Face.TOP, (hole("9", "0"),), '1 Ø13/16", on centre line, top wall only'),
    ],
)
def test_holes_are_called_out_as_the_trade_does(stock: str, face: Face, holes: tuple, said: str) -> None:  # type: ignore[type-arg] # of holes
    part = piece(stock)
    assert FEET.holes(drilled(face, *holes), part, rows=True) == said


def test_many_rows_are_said_as_first_last_and_pitch() -> None:
    assert FEET.run_of([at("3") * n for n in range(1, 6)]) == '3" to 1\'-3" at 3"'
    assert FEET.run_of([at("3"), at("6"), at("10")]) == '3", 6", 10"'


def test_cuts_in_words() -> None:
    coped = piece_of('copes = [{ end = "left", flange = "both", length = "5", depth = "2", radius = "3/4" }]')
    assert FEET.cope(coped.main.copes) == 'copes top and bottom 5" x 2", R 3/4"'
    assert FEET.cope(coped.main.copes[:1]) == 'top cope 5" x 2", R 3/4"'
    trim = FlangeTrim(End.LEFT, Face.BOTTOM, Side.NEAR, at("6"))
    assert FEET.trim(trim) == 'bottom flange cut flush, near side, 6"'
    opening = Opening(Face.NEAR, at("30"), at("7.7in"), at("14"), at("5"), at("1"))
    assert FEET.opening(opening, coped.main) == 'opening 1\'-2" x 5", R 1", middle 8" down'
    round_one = Opening(Face.NEAR, at("30"), at("7.7in"), at("6"), at("6"), at("3"))
    assert FEET.opening(round_one, coped.main) == 'opening Ø6", middle 8" down'


def test_ends_out_of_square() -> None:
    part = piece_of('right = { bevel = "3 1/2 in 12", long = "top" }').main
    assert list(FEET.end(part, End.RIGHT)) == ["cut 3 1/2 in 12, long at top", ""]
    assert next(iter(METRIC.end(part, End.RIGHT))) == "cut 16.3°, long at top"
    assert list(FEET.end(part, End.LEFT)) == ["", ""]


def test_a_slanting_end_of_an_angle_is_long_at_its_heel_or_toe() -> None:
    text = 'mark = "A1"\nstock = "L6x4x3/8"\nlength = "4\'-0"\n'
    text += 'left = { bevel = "2 in 12", long = "bottom", mitre = "1 in 12", long_side = "far" }'
    part = job_of(text).piece("A1").main
    assert list(FEET.end(part, End.LEFT)) == [
        "cut 2 in 12, long at heel",
        "cut 1 in 12, long at toe of leg B",
    ]


def test_what_was_given_in_millimetres_is_written_in_them_in_a_job_of_feet_and_inches() -> None:
    scribe = Scribe(System.FT_IN, Length.from_inches(0.0625))
    assert scribe.fine(Length.from_mm(22)) == "22 mm"
    assert scribe.fine(Length.from_inches(0.8125)) == '13/16"'
    assert Scribe(System.MM, Length.from_mm(1)).fine(Length.from_mm(22)) == "22"
    assert scribe.tell(Length.from_mm(90)) == "90 mm"
    assert scribe.tell(Length.from_mm(4200)) == "4200 mm"
    assert scribe.tell(Length.from_mm(254)) == '10"'


def test_tenths_of_a_millimetre_come_about_by_chance_in_a_job_of_feet_and_inches() -> None:
    assert FEET.tell(Length.from_mm(2833) / 10) == '11 1/8"'
    assert FEET.tell(Length.from_mm(567) / 2) == "283.5 mm"


def test_the_long_point_of_every_cut_is_named() -> None:
    corners = [(flat, high) for flat in (False, True) for high in (True, False)]
    named = [
        [long_point(flat=flat, high=high, is_angle=is_angle) for flat, high in corners]
        for is_angle in (False, True)
    ]
    assert named == [
        ["top", "bottom", "near side", "far side"],
        ["toe of leg A", "heel", "heel", "toe of leg B"],
    ]


def test_what_was_worked_out_is_told_in_the_units_of_the_job_and_sizes_as_they_are() -> None:
    job = job_of('mark = "M1"\nstock = "W16x26"\nlength = "4200.5mm"')
    scribe = Scribe.of(job, replace(job.assemblies[0].main, derived=True))
    assert scribe.tell(Length.from_mm(8401) / 2) == "13'-9 3/8\""
    assert scribe.fine(Length.from_mm(22)) == "22 mm"
