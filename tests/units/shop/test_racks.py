from __future__ import annotations

import csv
import io
from importlib.resources import files

import pytest

from gageline.errors import GagelineError, ValueProblem
from gageline.job import JobProblems
from gageline.shop.jobs import Conflict
from gageline.shop.models import Person, RackText, Stick, Where
from gageline.shop.racks import (
    LARGEST_RACK,
    Brought,
    rack_text,
    save_rack,
    sticks_csv,
    whole_rack,
    yard_system,
)
from gageline.shop.sticks import HELD, held_tables, part_of, save_stick
from gageline.stock import read_rack
from gageline.units import System

DEMO = (files("gageline") / "demo" / "rack.toml").read_bytes()
SMALL = b"""\
# my saw
[saw]
kerf = "1/8" # of the blade

[[held]]
mark = "R1"
stock = "W12x26"
length = 240
heat = "H1"

[[buy]]
stock = "W12x26"
lengths = "40'"
per_pound = 0.9
"""


def _brought(person: Person, content: bytes) -> Brought:
    found = save_rack(person, content, None)
    assert isinstance(found, Brought)
    return found


def test_the_demo_rack_comes_in_and_goes_out_unchanged_in_meaning(owner: Person) -> None:
    brought = _brought(owner, DEMO)
    assert set(brought.added) == {"R1", "R2", "R3", "R4"}
    out = whole_rack(rack_text()[1], (held for _, held in held_tables()))
    before, after = read_rack(DEMO.decode()), read_rack(out)
    assert set(after.sticks) == set(before.sticks)
    assert (after.saw, after.sheets, after.burner, after.wishes) == (
        before.saw, before.sheets, before.burner, before.wishes,
    )  # fmt: skip
    again = _brought(owner, out.encode())
    assert (again.added, again.changed) == ((), ())


def test_comments_stay_and_sticks_go_to_the_yard(owner: Person) -> None:
    _brought(owner, SMALL)
    number, text = rack_text()
    assert number == 1
    assert "# my saw" in text
    assert "# of the blade" in text
    assert "held" not in text
    assert Stick.objects.get().heat == "H1"


def test_the_same_mark_changes_the_stick_that_is_there(owner: Person) -> None:
    _brought(owner, SMALL)
    brought = _brought(owner, SMALL.replace(b'"H1"', b'"H2"'))
    assert (brought.added, brought.changed) == ((), ("R1",))
    stick = Stick.objects.get()
    assert (stick.heat, stick.current) == ("H2", 2)
    Stick.objects.update(where=Where.SAW)
    with pytest.raises(JobProblems, match='held "R1": is at the saw'):
        save_rack(owner, SMALL, None)


def test_sticks_that_were_cut_already_stay_in_the_text(owner: Person) -> None:
    _brought(owner, SMALL + b'[[done]]\nstick = "R1"\npieces = "B1"\n')
    assert Stick.objects.count() == 0
    rack = read_rack(rack_text()[1])
    assert [(one.stick, one.pieces) for one in rack.done] == [("R1", ("B1",))]


def test_everything_that_is_wrong_is_said_at_once_and_nothing_is_changed(owner: Person) -> None:
    with pytest.raises(JobProblems) as wrong:
        save_rack(owner, SMALL.replace(b'"1/8"', b'"wide"').replace(b"= 240", b'= "long"'), None)
    assert len(wrong.value.problems) == 2
    assert (RackText.objects.count(), Stick.objects.count()) == (0, 0)


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"\xff\xfe", "not UTF-8 text"),
        (b"#" * (LARGEST_RACK + 1), "larger than 500 kB"),
        (b"[saw", "line 1"),
        (b"a = " + b"[" * 3000, "nested|TOML|line"),
    ],
)
def test_what_is_no_rack_document_is_refused(owner: Person, content: bytes, said: str) -> None:
    with pytest.raises(GagelineError, match=said):
        save_rack(owner, content, None)
    assert RackText.objects.count() == 0


def test_two_people_who_type_the_facts_are_both_shown(owner: Person) -> None:
    _brought(owner, SMALL)
    other = b'[saw]\nkerf = "1/4"\n'
    found = save_rack(owner, other, 0)
    assert isinstance(found, Conflict)
    assert (found.number, found.mine) == (1, {"text": other.decode()})
    assert "# my saw" in (found.theirs or {})["text"]
    assert isinstance(save_rack(owner, other, found.number), Brought)


def test_the_units_of_the_rack_are_those_of_the_yard(owner: Person) -> None:
    assert yard_system() is System.FT_IN
    _brought(owner, b'[rack]\nunits = "mm"\n[saw]\nkerf = 3\n')
    assert yard_system() is System.MM


def test_the_units_stay_while_there_are_sticks(owner: Person) -> None:
    _brought(owner, SMALL)
    with pytest.raises(
        ValueProblem, match='in mm and the sticks in the yard are kept in ft-in: give units = "ft-in"'
    ):
        save_rack(owner, b'[rack]\nunits = "mm"\n[saw]\nkerf = 3\n', None)


def test_no_cell_of_the_spreadsheet_is_a_formula(owner: Person) -> None:
    table = {"mark": "R1", "stock": "W12x26", "length": "20'", "heat": '=HYPERLINK("http://x.example")'}
    save_stick(owner, None, table, 0, System.FT_IN)
    header, row = csv.reader(io.StringIO(sticks_csv()))
    assert header[0] == "mark"
    assert row[4] == '\'=HYPERLINK("http://x.example")'
    assert not any(cell.startswith(("=", "+", "-", "@")) for cell in row)
    assert part_of(Stick.objects.get(), HELD)["heat"] == table["heat"]


def test_a_stick_that_can_only_be_bought_is_no_stick_of_the_yard(owner: Person) -> None:
    with pytest.raises((JobProblems, ValueProblem)):
        save_stick(owner, None, {"stock": "W12x26", "lengths": "20'", "each": 3}, 0, System.FT_IN)
