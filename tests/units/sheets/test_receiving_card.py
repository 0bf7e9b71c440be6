import re
from dataclasses import replace

import pytest

from gageline.errors import ValueProblem
from gageline.job import EndReadings, Job, Stick
from gageline.layout import Choice, Way, decide, lay_out, lay_out_on
from gageline.part import Face
from gageline.quality import odds_of, receive
from gageline.sheets import Page, ReceivingCard, Sheet, receiving_cards
from gageline.units import Length
from jobs import inches, job_of
from pages import crowded, in_title_block, outside, page_texts
from sticks import ANGLES, example_stick

FT_IN = job_of(f'mark = "B1"\nstock = "W16x26"\nlength = "18\'-7 1/4"\n{ANGLES}')
METRIC = job_of(
    'mark = "M1"\nstock = "IPE 300"\nlength = 5000\n[[piece.angles]]\nend = "both"\nstock = "L100x65x9"\n'
    'rows = 3\nout_gage = 60\nto_web = "welded"\n',
    units="mm",
)


def card(
    job: Job, stick: Stick, way: Way | None = None, held: Face = Face.TOP, *, odds: bool = False
) -> Sheet:
    piece = job.assemblies[0]
    decision = decide(piece, stick, job.practice.tape, job.system)
    on = lay_out_on(lay_out(piece, job.practice, job.system), stick, way or decision.chosen.way, held)
    told = odds_of(piece, count=1000) if odds else None
    return receiving_cards(job, [ReceivingCard(on, receive(piece.main, on.stick), decision, told)])


def words(sheet: Sheet) -> str:
    return " ".join(text for page in page_texts(sheet) for text in page)


METRIC_STICK = Stick(
    "M1", "H9", Length.from_mm(4990), None,
    EndReadings((Length.from_mm(3), Length.from_mm(2), Length(0), Length(0)), top_tilt=Length.from_mm(1)),
    camber=-Length.from_mm(6), web_off=Length.from_mm(4),
)  # fmt: skip


@pytest.mark.parametrize(
    ("job", "stick"),
    [
        (FT_IN, example_stick()),
        (
            FT_IN,
            replace(example_stick(), steel_temperature=95.0, tape_temperature=60.0, web_off=-inches("1/8")),
        ),
        (FT_IN, Stick("B1")),
        (METRIC, METRIC_STICK),
    ],
    ids=["example", "hot", "nothing read", "metric"],
)
def test_nothing_touches_and_nothing_leaves_the_page(job: Job, stick: Stick) -> None:
    for page in card(job, stick, odds=True).pages:
        assert isinstance(page, Page)
        assert not crowded(page)
        assert not outside(page)
        assert not in_title_block(page)


def test_the_card_of_the_example_stick_says_what_to_do() -> None:
    text = words(card(FT_IN, example_stick(), odds=True))
    for said in (
        "Ask the engineer first, then lay it out so: as it is",
        "Its natural camber is up as it lies: leave it so.",
        "Hook the tape at the left end, at the bottom edge",
        'The stick is 1/8" deeper: that shows at the bottom flange.',
        "ask the engineer before it is drilled",
        "heat 7K2214",
        "ask first",
        'no, 7/8" lacking',
        "deeper than drawn",
        'out by 0.005"',
        "not read",
        "nominal",
        "Odds that it bolts up without reaming",
        "an assumption of Gageline",
    ):
        assert said in text


def test_readings_stand_beside_the_nominal_ones() -> None:
    (rows,) = [
        page for page in page_texts(card(FT_IN, example_stick(), Way(Choice.SPLIT))) if "18'-5 3/4\"" in page
    ]
    assert rows[rows.index("18'-5 3/4\"") + 1] == "18'-5 9/16\""
    text = words(card(FT_IN, example_stick(), Way(Choice.SPLIT)))
    assert "The advice was: as it is. It was laid otherwise by choice." in text


def test_lengths_are_in_the_divisions_of_the_tape() -> None:
    """A tape of 1/16: no 32nds and 64ths but in the limits, which are exact."""
    text = words(card(FT_IN, replace(example_stick("18'-6 13/16"), web_off=inches("3/64"))))
    assert not re.findall(r"(?<!±)(?<!\+)(?<!-)\b\d+/(?:32|64)\b", text)
    assert 'The stick is 1/8" deeper' in text


def test_what_was_not_read_is_marked_as_nominal() -> None:
    text = words(card(FT_IN, Stick("B1")))
    assert text.count("taken as square: not read") == 2
    assert "none read" in text
    assert "Rows are held" not in text


def test_other_conditions_are_told() -> None:
    twisted = replace(
        example_stick(),
        camber=-inches("1/2"), worked=True,
        left=EndReadings((inches("0"), inches("1/4"), inches("1/4"), inches("0")), depth=inches("15.575in")),
        right=EndReadings(depth=inches("15.45in")),
        tape_error=inches("1/8"), tape_length=inches("100'"),
    )  # fmt: skip
    text = words(card(FT_IN, twisted, held=Face.BOTTOM))
    for said in (
        "cannot be turned over",
        'The left end is twisted 1/8" off one plane.',
        'Rows are held from the bottom of steel. The stick is 1/8" and 1/4" shallower',
        "that shows at the top flange.",
        "the bottom edge further out, until load takes it out.",
        "Long readings are corrected: tape long by its calibration.",
    ):
        assert said in text


def test_the_corner_that_reaches_furthest_has_a_dot() -> None:
    square = words(card(FT_IN, Stick("B1", left=EndReadings((Length(0),) * 4))))
    assert "Left end from outside" in square


def test_a_heat_number_that_no_font_can_print_is_refused() -> None:
    stick = replace(example_stick(), heat="\U0001f525")
    with pytest.raises(ValueProblem, match="which IBM Plex Sans Condensed cannot print"):
        card(FT_IN, stick)


def test_a_trimmed_stick_is_hooked_after_the_trim_and_its_lines_are_told_once() -> None:
    text = words(card(FT_IN, replace(example_stick("20'"), left=EndReadings(top_tilt=-inches("1/8"))), None))
    assert "Hook the tape at the left end; strike" in text
    assert text.count("top, near, bottom, far") == 2
    skewed = words(card(FT_IN, example_stick("20'")))
    assert "Hook the tape at the left end, after the trim; strike" in skewed


def test_a_fitting_leans_to_the_side_that_the_flange_is_high_at() -> None:
    """Rows of 3: an angle 8 1/2 long on a flange 5 1/2 wide leans 1/8 x 8.5 / 5.5 = 0.193."""
    for tilt, side in ((inches("1/8"), "near"), (-inches("1/8"), "far")):
        text = words(card(FT_IN, Stick("B1", left=EndReadings(top_tilt=tilt))))
        assert f'3/16" {side}' in text


@pytest.mark.parametrize(
    ("stock", "left", "right", "said"),
    [
        ("W16x26", "15.825in", "15.575in", '1/8" deeper at the left end and 1/8" shallower at the right'),
        ("L6x4x1/2", "6 1/8", "6 1/8", 'from the heel. The stick is 1/8" deeper: that shows at the toe.'),
        ("PL1/2x6", "6 1/16", "6 1/16", '1/16" deeper: that shows at the bottom edge.'),
    ],
)  # fmt: skip
def test_what_a_stick_is_deeper_is_said_where_it_shows(stock: str, left: str, right: str, said: str) -> None:
    job = job_of(f'mark = "B1"\nstock = "{stock}"\nlength = "10\'"')
    ends = [EndReadings(depth=inches(depth)) for depth in (left, right)]
    stick = Stick("B1", "", None, None, ends[0], ends[1])
    assert said in words(card(job, stick))
