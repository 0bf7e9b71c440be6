"""Bolts as lists print them."""

from dataclasses import replace

import pytest

from frames import demo_frame
from gageline.job import Job
from gageline.part import BoltSet
from gageline.sheets import Page, bolt_rows, parts_list
from gageline.units import Length, write_length
from jobs import job_of
from pages import all_texts, outside

BEAM = 'mark = "B1"\nquantity = 1\nstock = "W16x26"\nlength = "10\'-0"\n'


def job(*grips: float) -> Job:
    plain = job_of(BEAM)
    piece = plain.assemblies[0]
    bolts = tuple(BoltSet((), "3/4", 4, Length.from_inches(grip), field=False) for grip in grips)
    return replace(plain, assemblies=(replace(piece, bolts=bolts),))


def test_bolts_that_read_the_same_are_one_line() -> None:
    # both print as 55/64 in; neither is a whole 64th
    (row,) = bolt_rows(job(0.8594, 0.8601))
    assert (row.quantity, row.grip) == (8, '55/64"')


def test_bolts_of_one_printed_grip_and_two_lengths_are_told_apart_by_them() -> None:
    # RCSC Table C-2.2: 1 in to the grip of a 3/4 in bolt, 5/32 in a washer, next 1/4 in: 2 in up to 27/32
    edge = 27 / 32
    short, long = bolt_rows(job(edge - 0.001, edge + 0.001))
    assert (short.grip, long.grip) == ('27/32"', '27/32"')
    assert (short.length, long.length) == ('2"', '2 1/4"')


def test_the_length_is_by_the_grip() -> None:
    # 1 + 5/32 + 1 = 2 5/32, next quarter
    (row,) = bolt_rows(job(1.0))
    assert row.length == '2 1/4"'
    sheet = parts_list(job(1.0))
    assert any(text.startswith("Lengths of bolts are from under the head") for text in all_texts(sheet))
    for page in sheet.pages:
        assert isinstance(page, Page)
        assert outside(page) == []


def test_a_grip_that_is_not_known_gives_no_length() -> None:
    plate = '[[piece.plates]]\non = "near"\nx = "2\'-0"\nthickness = "3/8"\nwidth = "4"\nrows = 3\n'
    (row,) = bolt_rows(job_of(BEAM + plate))
    assert (row.field, row.grip, row.length) == (True, "", "")


@pytest.mark.parametrize("with_frame", [True, False])
def test_the_list_of_a_frame_says_where_its_field_bolts_are(*, with_frame: bool) -> None:
    framed = demo_frame().job
    found = " ".join(all_texts(parts_list(framed if with_frame else replace(framed, frame=None))))
    assert ("the sheets of the frame list them connection by connection." in found) is with_frame


def test_rows_of_a_frame_read_as_its_field_bolt_list() -> None:
    full = demo_frame()
    assert full.detailed is not None
    wanted: dict[str, int] = {}
    for site in full.detailed.field_bolts:
        text = write_length(site.length, full.job.system)
        wanted[text] = wanted.get(text, 0) + site.count
    found: dict[str, int] = {}
    for row in bolt_rows(full.job, full.detailed):
        if row.field:
            found[row.length] = found.get(row.length, 0) + row.quantity
    assert found == wanted
