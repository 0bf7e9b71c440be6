"""Finished pieces judged: what is read in what order, and good, rework or ask."""

import re

import pytest

from gageline.errors import ValueProblem
from gageline.job import Inspected, Practice
from gageline.layout import Layout, lay_out
from gageline.quality.fabrication import Rules
from gageline.quality.inspection import Outcome, Report, blank_report, inspect, records_of
from gageline.quality.items import items_of
from gageline.quality.spread import Act
from gageline.units import System
from jobs import inches, piece_of
from sticks import ANGLES, example_piece

US = Rules(metric=False)
COPED = 'copes = [{ end = "left", flange = "top", length = "4", depth = "1 1/2" }]'
LAYOUT = lay_out(example_piece(COPED + ANGLES), Practice(), System.FT_IN)
WELDED = lay_out(example_piece(ANGLES + 'to_web = "welded"\n'), Practice(), System.FT_IN)


def read(layout: Layout = LAYOUT, **readings: str) -> Report:
    found = tuple((name.replace("_", " "), inches(value)) for name, value in readings.items())
    return inspect(layout, Inspected("B1", 1, "", "", found), US)


def outcome(report: Report, name: str) -> Outcome:
    return next(row.outcome for row in report.rows if row.item.name == name)


@pytest.mark.parametrize(
    ("name", "value", "result"),
    [
        ("overall", "18'-7 5/16", Outcome.GOOD),
        ("overall", "18'-7 21/64", Outcome.REWORK),
        ("overall", "18'-7 11/64", Outcome.ASK),
        ("left end square", "15/64", Outcome.GOOD),
        ("left end square", "1/4", Outcome.REWORK),
        ("left top cope depth", "1 5/8", Outcome.ASK),
        ("left top cope depth", "1 3/8", Outcome.REWORK),
        ("left top cope radius", "3/8", Outcome.REWORK),
        ("left top cope radius", "3/4", Outcome.GOOD),
        ("left near angle first row down", "3 1/8", Outcome.REWORK),
        ("left end, for the angles: hole", "27/32", Outcome.GOOD),
        ("left end, for the angles: hole", "55/64", Outcome.ASK),
        ("left end, for the angles: hole", "51/64", Outcome.REWORK),
        ("left end, for the angles: first row from top edge", "3 3/32", Outcome.ASK),
    ],
)
def test_each_reading_has_its_outcome(name: str, value: str, result: Outcome) -> None:
    report = inspect(LAYOUT, Inspected("B1", 1, "", "", ((name, inches(value)),)), US)
    assert outcome(report, name) is result
    assert report.outcome is result
    assert not report.complete


def test_remedies_are_those_of_the_trade() -> None:
    report = inspect(
        LAYOUT,
        Inspected("B1", 1, "", "", (("left end, for the angles: from left end", inches("1 5/8")),)),
        US,
    )
    (finding,) = report.findings(System.FT_IN)
    assert "ream within the oversize rules or slot with the engineer's word" in finding.remedy
    assert "weld up and redrill only with approval" in finding.remedy
    assert finding.source == "no rule held in AISC 303 (common practice, no source)"


def test_a_gap_over_a_sixteenth_wants_a_larger_leg() -> None:
    """AWS D1.1, 7.21.1: gap 1/16, the leg stays 1/4; gap 1/8, the leg is 1/4 + 1/8."""
    small = read(WELDED, left_near_angle_weld_gap="1/16", left_near_angle_weld_leg="1/4")
    assert small.outcome is Outcome.GOOD
    wide = read(WELDED, left_near_angle_weld_gap="1/8", left_near_angle_weld_leg="1/4")
    assert outcome(wide, "left near angle weld leg") is Outcome.REWORK
    (finding,) = wide.findings(System.FT_IN)
    assert 'out by 0.125"' in finding.message
    assert finding.remedy == "add weld metal to the leg"
    full = read(WELDED, left_near_angle_weld_gap="1/8", left_near_angle_weld_leg="3/8")
    assert full.outcome is Outcome.GOOD
    open_ = read(WELDED, left_near_angle_weld_gap="13/64")
    assert open_.outcome is Outcome.ASK


def test_a_blank_sheet_has_every_row_and_no_reading() -> None:
    blank = blank_report(LAYOUT, US)
    assert len(blank.rows) == len(items_of(LAYOUT, US))
    assert (blank.outcome, blank.inspected, blank.complete) == (Outcome.NOT_READ, None, False)
    assert not blank.findings(System.FT_IN)


def test_what_no_limit_is_held_for_is_not_checked() -> None:
    plate = lay_out(piece_of(stock="PL1/2X9"), Practice(), System.FT_IN)
    assert read(plate, camber="1").outcome is Outcome.NOT_JUDGED


def test_the_shops_own_limits_count() -> None:
    loose = {"aisc303-length": inches("1/4")}
    inspected = Inspected("B1", 1, "", "", (("overall", inches("18'-7 1/2")),))
    assert inspect(LAYOUT, inspected, US, loose).outcome is Outcome.GOOD
    assert blank_report(LAYOUT, US, loose).rows[0].judgement.limit is not None


def test_a_reading_that_is_not_on_the_sheet_is_refused_with_the_nearest() -> None:
    said = re.escape('"left end sqare" is not read on piece B1: did you mean "left end square"?')
    with pytest.raises(ValueProblem, match=said):
        read(left_end_sqare="0")
    with pytest.raises(ValueProblem, match="use the names that its blank sheet prints"):
        read(zzz="0")


def test_errors_are_gathered_by_the_act_that_made_them() -> None:
    """A square off 1/8 over 15.7 is 0.00796 in an inch; 6 in read 5 31/32 is 1/32 over root 2."""
    names = {
        "left end square": "1/8",
        "left end, for the angles: from left end": "1 9/16",
        "left end, for the angles: first row from top edge": "2 63/64",
        "left end, for the angles: first to last across": "5 31/32",
        "left near angle past the end": "17/32",
        "overall": "18'-7",
    }
    found = tuple((name, inches(value)) for name, value in names.items())
    report = inspect(LAYOUT, Inspected("B1", 1, "", "", found), US)
    records = records_of([report, report])
    assert records[Act.SQUARE] == pytest.approx((0.125 / 15.7,) * 2, abs=1e-5)
    assert records[Act.TAPE] == (1 / 16, 1 / 16)
    assert records[Act.GAGE] == (-1 / 64, -1 / 64)
    assert records[Act.DRILL] == pytest.approx((-1 / 32 / 2**0.5,) * 2)
    assert records[Act.SETTING] == (1 / 32, 1 / 32)
    assert set(records) == {Act.SQUARE, Act.TAPE, Act.GAGE, Act.DRILL, Act.SETTING}


def test_what_cannot_be_below_zero_is_refused_and_a_bow_is_not() -> None:
    with pytest.raises(ValueProblem) as raised:
        read(LAYOUT, left_end_square="-1/16", overall="-1")
    assert str(raised.value).splitlines() == [
        f'"{name}" of piece B1 is below zero: read how far it is open or off, without a sign'
        for name in ("overall", "left end square")
    ]
    assert read(LAYOUT, camber="-1/8", sweep="-1/8").outcome is Outcome.GOOD


@pytest.mark.parametrize(
    ("name", "value", "most", "wanted"),
    [
        ("overall", "13'-11 3/8", "4'-7 13/16\"", "18'-7 1/4\""),
        ("left top cope depth", "13 9/16", "1'-0\"", '1 1/2"'),
        ("left end, for the angles: hole", "4 7/8", '4"', '13/16"'),
        ("left end square", "4 1/16", '4"', '0"'),
        ("camber", "-11 3/16", '11 5/32"', '0"'),
    ],
)
def test_a_reading_that_cannot_be_is_refused_with_its_limit(
    name: str, value: str, most: str, wanted: str
) -> None:
    """A quarter of the length or a foot by the tape, 4 in by a gauge, a twentieth of the length for a bow."""
    said = (
        f'"{name}" of piece B1 is .*, more than {re.escape(most)} off the {re.escape(wanted)} that is wanted'
    )
    with pytest.raises(ValueProblem, match=f"{said}: check the reading, and its unit"):
        inspect(LAYOUT, Inspected("B1", 1, "", "", ((name, inches(value)),)), US)
