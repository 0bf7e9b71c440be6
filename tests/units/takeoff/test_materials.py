from dataclasses import replace

import pytest

from frames import bays, demo_frame
from gageline.detail import read_full
from gageline.job import Job, read_job
from gageline.steel import find
from gageline.takeoff import bill_of_piece, bolts_of_job, parts_of_job
from gageline.units import parse_length

TEXT = """
[job]
name = "two beams"

[[piece]]
mark = "B10"
quantity = 3
stock = "W16x26"
length = "10'"
[[piece.angles]]
end = "both"
stock = "L4x3-1/2x5/16"
rows = 3

[[piece]]
mark = "B2"
stock = "W16x26"
length = "5'"
[[piece.angles]]
end = "left"
stock = "L4x3-1/2x5/16"
to_web = "welded"
rows = 3
weld = "3/16"
"""


@pytest.fixture
def job() -> Job:
    return read_job(TEXT)


def test_a_plain_piece_weighs_its_table_weight(job: Job) -> None:
    bill = bill_of_piece(job.piece("B10"))
    # AISC v15: W16X26 has 7.68 in2; six 13/16 holes in a 1/4 web are taken out
    expected = (7.68 * 120 - 6 * 0.7854 * (13 / 16) ** 2 * 0.25) * 490 / 1728
    assert bill.lines[0].weight == pytest.approx(expected, rel=2e-3)
    assert bill.mass.weight == pytest.approx(sum(line.total_weight for line in bill.lines), rel=1e-9)


def test_equal_fittings_are_counted_together(job: Job) -> None:
    lines = bill_of_piece(job.piece("B10")).lines
    assert [(line.mark, line.quantity, line.length) for line in lines] == [
        ("B10", 1, parse_length("10'")),
        (lines[1].mark, 4, parse_length("8 1/2")),
    ]
    assert lines[1].designation == find("L4x3-1/2x5/16").designation


def test_the_job_counts_every_piece(job: Job) -> None:
    lines = parts_of_job(bill_of_piece(assembly) for assembly in job.assemblies)
    assert [(line.mark, line.quantity) for line in lines[:2]] == [("B2", 1), ("B10", 3)]
    assert sorted(line.quantity for line in lines[2:]) == [2, 12]


def test_welds_are_summed_by_size(job: Job) -> None:
    (weld,) = bill_of_piece(job.piece("B2")).welds
    assert weld.size == parse_length("3/16")
    assert weld.length > parse_length("8 1/2") * 2


def test_bolts_by_size_and_place(job: Job) -> None:
    lines = bolts_of_job(job)
    assert [(line.field, line.bolt, line.quantity) for line in lines] == [
        (False, "3/4", 18),
        (True, "3/4", 42),
    ]
    assert lines[0].grip == parse_length("1/4") + parse_length("5/16") * 2
    assert lines[1].grip is None
    assert lines[0].grade == "A325-N"


def test_the_job_without_bolts_has_none() -> None:
    text = '[job]\nname = "n"\n[[piece]]\nmark = "A"\nstock = "PL1/2x6"\nlength = "8"\n'
    assert bolts_of_job(read_job(text)) == ()


@pytest.mark.parametrize("units", ["ft-in", "mm"])
def test_the_field_bolts_of_a_frame_are_counted_once(units: str) -> None:
    full = read_full(bays([240, 240], [240], 2, units=units))
    assert full.detailed is not None
    lines = bolts_of_job(full.job, full.detailed)
    assert sum(line.quantity for line in lines if line.field) == sum(
        site.count for site in full.detailed.field_bolts
    )
    assert [line for line in lines if not line.field] == list(bolts_of_job(full.job))
    assert not any(bolts.field for piece in full.job.assemblies for bolts in piece.bolts)


def test_field_bolts_of_a_frame_go_with_the_piece_that_is_put_in() -> None:
    full = demo_frame()
    assert full.detailed is not None
    # B1 and its equal B8, each with 6 bolts at either end; those of G3, which carries them, are not theirs
    beams = replace(full.job, assemblies=(full.job.piece("B1"),))
    assert sum(line.quantity for line in bolts_of_job(beams, full.detailed) if line.field) == 24
    girder = replace(full.job, assemblies=(full.job.piece("G3"),))
    assert sum(line.quantity for line in bolts_of_job(girder, full.detailed) if line.field) == 16
