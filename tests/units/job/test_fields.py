from __future__ import annotations

from fractions import Fraction

import pytest

from gageline.job import JobDocument, JobProblems, read_document
from gageline.job.fields import Entry, Mark, SlopeText, Turn
from gageline.units import parse_slope
from jobs import inches, job_of, mm, piece_of


class Sample(Entry):
    mark: Mark = "B1"
    bevel: SlopeText = parse_slope("0 in 12")
    turn: Turn = Fraction(0)


def test_bare_numbers_are_in_the_units_of_the_job() -> None:
    assert piece_of(length="120").main.length == inches("120")
    assert piece_of(length="120.5").main.length == inches("120.5")
    assert piece_of(length="1200.5", units="mm").main.length == mm(1200) + mm(1) / 2
    assert piece_of(length='"4\'-0"', units="mm").main.length == inches("48")
    assert piece_of(length='"1200mm"').main.length == mm(1200)


def test_200_feet_is_the_longest_in_both_units() -> None:
    assert piece_of(length='"200\'"').main.length == mm(60960)
    with pytest.raises(JobProblems, match=r"60960.1 is longer than 60960 mm: check the units"):
        piece_of(length="60960.1", units="mm")


def test_blanks_around_text_are_left_out() -> None:
    assert Sample(mark=" B1 ").mark == "B1"


@pytest.mark.parametrize(
    ("typed", "written"),
    [
        ("3 in 12", "3 in 12"),
        ("3 7/16 in 12", "3 7/16 in 12"),
        ("14 in 12", "1'-2 in 12"),
        ("16.5°", "16.5°"),
        ("1 in 7", "8.130102°"),
    ],
)
def test_slopes_are_written_so_that_they_read_back(typed: str, written: str) -> None:
    sample = Sample.model_validate({"bevel": typed})
    text = sample.model_dump(mode="json")["bevel"]
    assert Sample.model_validate({"bevel": text}).bevel == sample.bevel
    if "7" not in typed or typed.startswith("3"):
        assert text == written


@pytest.mark.parametrize(("typed", "written"), [("along", "along"), (90, "across"), (-22.5, -22.5)])
def test_turns_of_slots(typed: object, written: object) -> None:
    assert Sample.model_validate({"turn": typed}).model_dump(mode="json")["turn"] == written


def test_running_dimensions_are_rising() -> None:
    with pytest.raises(
        JobProblems, match='running dimension 6" is not beyond 6": give all from one start, rising'
    ):
        piece_of('holes = [{ x = ["6", "6"] }]')


def test_limits_in_messages_are_in_the_units_of_the_job() -> None:
    with pytest.raises(JobProblems, match=r"pitch: 0.3 is less than 0.4 mm: check the units"):
        piece_of("holes = [{ pitch = 0.3 }]", units="mm")
    with pytest.raises(JobProblems, match=r'pitch: 0.001 is less than 1/64": check the units'):
        piece_of("holes = [{ pitch = 0.001 }]")


def test_rows_of_the_template_start_at_zero_or_more() -> None:
    with pytest.raises(JobProblems, match='template_rows: -3" is below zero: give zero or more'):
        job_of('mark = "B1"', practice="template_rows = [-3, 0, 3]")


def test_nothing_of_a_document_changes_once_it_is_read() -> None:
    document = read_document('[job]\nname = "t"\n[[piece]]\nmark = "B1"\n')
    assert isinstance(document, JobDocument)
    with pytest.raises(ValueError, match="frozen"):
        document.job.name = "other"  # type: ignore[misc] # that is what is tried


@pytest.mark.parametrize("tape", ['"1/3"', '"3/64"', '"1mm"', "2"])
def test_a_tape_in_inches_has_halves_of_halves(tape: str) -> None:
    with pytest.raises(JobProblems, match=r"no division of a tape: give 1/8, 1/16, 1/32 or 1/64"):
        piece_of(practice=f"tape = {tape}")


@pytest.mark.parametrize("tape", ["0.75", "12", '"1/16in"'])
def test_a_tape_in_millimetres_has_tenths(tape: str) -> None:
    with pytest.raises(JobProblems, match=r"no division of a tape: give 0.5, 1, 2 or 5"):
        piece_of(length="1000", practice=f"tape = {tape}", units="mm")
