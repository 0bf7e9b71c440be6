from __future__ import annotations

import csv
import io

import pytest

from gageline.errors import ValueProblem
from gageline.shop.engine import full_of, job_of
from gageline.shop.jobs import current_text, import_job
from gageline.shop.models import Job, Person
from gageline.shop.prints import PRINTS, parts_csv, printed, prints_of, safe_cell


@pytest.mark.parametrize("name", [name for name, one in PRINTS.items() if not one.framed])
def test_every_print_is_a_pdf(name: str, job: Job) -> None:
    assert printed(full_of(current_text(job)), name).startswith(b"%PDF")


@pytest.mark.parametrize("name", [name for name, one in PRINTS.items() if one.framed])
def test_every_print_of_a_frame_is_a_pdf(name: str, framed: Job, job: Job) -> None:
    full = full_of(current_text(framed))
    assert name in prints_of(full)
    assert printed(full, name).startswith(b"%PDF")
    alone = full_of(current_text(job))
    assert name not in prints_of(alone)
    with pytest.raises(ValueProblem, match="has no frame"):
        printed(alone, name)


def test_a_piece_with_an_error_is_left_out_and_never_printed_alone(owner: Person) -> None:
    hole = 'holes = [{ from = "left", x = "1/4", rows = 2 }]'
    bad = f"""[job]\nname = "Invented"\n[[piece]]\nmark = "X1"\nstock = "W12x26"\nlength = "9'"\n{hole}\n"""
    full = full_of(current_text(import_job(owner, bad.encode())))
    with pytest.raises(ValueProblem, match=r"every piece has an error \(X1\)"):
        printed(full, "cards")


@pytest.mark.parametrize("value", ["=1+1", "+1", "-2", "@SUM(A1)", "\t=1", " =cmd|'/c x'!A1", "\r=1"])
def test_no_cell_is_a_formula(value: str) -> None:
    # OWASP, CSV injection: cells that begin with = + - @ tab or carriage return; from memory
    assert safe_cell(value) == f"'{value}"


def test_plain_cells_stay_and_the_table_reads_back(job: Job) -> None:
    assert safe_cell("B1") == "B1"
    rows = list(csv.DictReader(io.StringIO(parts_csv(job_of(current_text(job))))))
    assert {row["mark"]: row["quantity"] for row in rows}["B1"] == "2"


def test_weights_are_in_the_units_of_the_job(owner: Person) -> None:
    # EN 10365: IPE 300 weighs 42.2 kg/m
    piece = b'[[piece]]\nmark = "B1"\nstock = "IPE 300"\nlength = "6000"\n'
    text = b'[job]\nname = "Invented"\nunits = "mm"\n' + piece
    (row,) = csv.DictReader(io.StringIO(parts_csv(job_of(current_text(import_job(owner, text))))))
    assert float(row["weight each kg"]) == pytest.approx(6 * 42.2, rel=0.01)
