import re

import pytest

from gageline.errors import ValueProblem
from gageline.job import Corner, Edge, JobProblems, SquareGap, read_measurements
from gageline.units import Length, System, parse_length

WHOLE = """
[tolerances]
hole-place = "3/32"

[[measured]]
piece = "B1"
heat = "7K2214"
length = "18'-6 7/8"
along = "top near"
left = { top_near = "0", top_far = "-1/16", bottom_near = "-1/4", bottom_far = "-5/16", depth = "15 13/16" }
right = { web_gap = "1/8", web_blade = 12, web_long = "bottom", top_tilt = "-1/16" }
web_off = "1/8"
web_toward = "far"
camber = "1/2"
camber_way = "down"
sweep = "1/4"
steel_temperature = 95
tape_temperature = 60
worked = true
ordered = "40'"
ordered_camber = "3/4"

[[inspected]]
piece = "B1"
number = 2
by = "somebody"
date = 2026-11-25
compression = true
bearing = true
camber = "1"
readings = { overall = "18'-7 3/16", "left end square" = "1/16" }
"""


def test_a_whole_sheet_is_read() -> None:
    sheet = read_measurements(WHOLE, System.FT_IN)
    (stick,) = sheet.sticks
    assert (stick.piece, stick.heat, stick.along) == ("B1", "7K2214", Corner.TOP_NEAR)
    assert stick.length == parse_length("18'-6 7/8")
    assert stick.left.corners[1] == -parse_length("1/16")
    assert stick.right.web_gap == SquareGap(parse_length("1/8"), parse_length("12"), Edge.BOTTOM)
    assert stick.right.top_tilt == -parse_length("1/16")
    assert (stick.web_off, stick.camber) == (-parse_length("1/8"), -parse_length("1/2"))
    assert stick.sweep == parse_length("1/4")
    assert (stick.steel_temperature, stick.tape_temperature, stick.worked) == (95, 60, True)
    assert (stick.ordered, stick.ordered_camber) == (parse_length("40'"), parse_length("3/4"))
    (inspected,) = sheet.inspected
    assert (inspected.compression, inspected.bearing, inspected.camber) == (True, True, parse_length("1"))
    assert (inspected.number, inspected.by, inspected.date) == (2, "somebody", "2026-11-25")
    assert dict(inspected.readings)["overall"] == parse_length("18'-7 3/16")
    assert sheet.tolerances == (("hole-place", parse_length("3/32")),)
    assert sheet.stick("B1") is stick


def test_bare_numbers_are_in_the_units_of_the_job() -> None:
    sheet = read_measurements('[[measured]]\npiece = "M1"\nlength = 4990\n', System.MM)
    assert sheet.sticks[0].length == Length.from_mm(4990)
    assert sheet.sticks[0].left.depth is None


def test_temperatures_of_a_metric_job_are_celsius() -> None:
    text = '[[measured]]\npiece = "M1"\nsteel_temperature = 35\ntape_temperature = 20\n'
    (stick,) = read_measurements(text, System.MM).sticks
    assert (stick.steel_temperature, stick.tape_temperature) == (95, 68)


def test_a_stick_that_was_not_measured_is_named_with_those_that_were() -> None:
    sheet = read_measurements('[[measured]]\npiece = "B1"\n', System.FT_IN)
    with pytest.raises(ValueProblem, match='no stick was measured for piece "B2": the sheet has B1'):
        sheet.stick("B2")


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        ('lenght = "18\'"', 'line 3: measured 1 → lenght: there is no such key: did you mean "length"?'),
        ('left = { web_gap = "1/8" }', "web_gap, web_blade and web_long: give all three"),
        (
            'left = { top_near = 0, bottom_near = 0, web_gap = 1, web_blade = 12, web_long = "top" }',
            "has both corners and a square's gap: keep one way of measuring",
        ),
        ("left = { top_near = 0, bottom_far = 0 }", "two corners across from each other tell no plane"),
        ("steel_temperature = 60", "one temperature alone corrects nothing: give steel and tape"),
        ('tape_error = "1/8"', "the tape's error needs its length: give both or none"),
        ("steel_temperature = 900\ntape_temperature = 60", "steel_temperature: 900 is more than 200"),
        ('tape_error = "-2"\ntape_length = "10\'"', "tape_error: is more than 1 in 100 of tape_length"),
        ('along = "top near"', "along: says where no length was read: give the length"),
        (
            'left = { web_gap = "3 1/64", web_blade = 12, web_long = "top" }',
            "left: web_gap is more than a quarter of web_blade: check both, or cut the end first",
        ),
        (
            'right = { top_near = "-12", bottom_near = "1/64" }',
            "right: its corners are more than a foot apart: check the units",
        ),
        ('camber = "-1/2"', 'camber: "-1/2" is below zero'),
    ],
)
def test_what_cannot_be_is_said_with_its_place(lines: str, message: str) -> None:
    with pytest.raises(JobProblems, match=re.escape(message)):
        read_measurements(f'[[measured]]\npiece = "B1"\n{lines}\n', System.FT_IN)


def test_every_piece_that_the_job_has_not_is_said_at_once() -> None:
    text = '[[measured]]\npiece = "B11"\n[[inspected]]\npiece = "Z9"\n[[inspected]]\npiece = "B1"\n'
    with pytest.raises(JobProblems) as raised:
        read_measurements(text, System.FT_IN, ["B1", "B2"])
    assert str(raised.value).splitlines() == [
        'line 2: measured 1 → piece: the job has no piece "B11": did you mean "B1"?',
        'line 4: inspected 1 → piece: the job has no piece "Z9": it has B1, B2',
    ]
