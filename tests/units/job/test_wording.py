from __future__ import annotations

import datetime as dt

import pytest

from gageline.job.wording import printable, say, say_finely, shown
from gageline.units import Length, System
from jobs import inches, mm


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (True, "true"),
        (3, "3"),
        (-0.0, "-0.0"),
        (10**400, "a number of very many digits"),
        ("x" * 61, '"' + "x" * 60 + '..."'),
        ("a\x00b", '"a\\u0000b"'),
        (dt.date(2026, 11, 25), "2026-11-25"),
        (dt.time(7, 30), "07:30:00"),
        ({}, "a table"),
        ([[[]]], "a list"),
        (None, "a value"),
    ],
)
def test_values_as_they_stand_in_a_document(value: object, text: str) -> None:
    assert shown(value) == text


def test_signs_that_a_sheet_can_show() -> None:
    assert all(printable(sign) for sign in "aß×′½ \u00a0")
    assert not any(printable(sign) for sign in "\n\t\x7f\u2028\u202e\ufffe")


def test_lengths_as_a_tape_shows_them() -> None:
    assert say(inches("1'-3 1/64"), System.FT_IN) == "1'-3 1/64\""
    assert say(Length.from_inches(15.01), System.FT_IN) == "1'-3 1/64\""
    assert say(mm(1500), System.MM) == "1500 mm"


def test_a_thousandth_is_not_written_as_nothing() -> None:
    assert say_finely(inches("1") / 1000, System.FT_IN) == '0.001"'
    assert say_finely(mm(1) / 50, System.MM) == "0.02 mm"
