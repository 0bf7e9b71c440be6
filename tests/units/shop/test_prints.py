from __future__ import annotations

import csv
import io

import pytest

from gageline.shop.engine import job_of
from gageline.shop.jobs import current_text
from gageline.shop.models import Job
from gageline.shop.prints import PRINTS, parts_csv, printed, safe_cell


@pytest.mark.parametrize("name", list(PRINTS))
def test_every_print_is_a_pdf(name: str, job: Job) -> None:
    assert printed(job_of(current_text(job)), name).startswith(b"%PDF")


@pytest.mark.parametrize("value", ["=1+1", "+1", "-2", "@SUM(A1)", "\t=1", " =cmd|'/c x'!A1", "\r=1"])
def test_no_cell_is_a_formula(value: str) -> None:
    # OWASP, CSV injection: cells that begin with = + - @ tab or carriage return; from memory
    assert safe_cell(value) == f"'{value}"


def test_plain_cells_stay_and_the_table_reads_back(job: Job) -> None:
    assert safe_cell("B1") == "B1"
    rows = list(csv.DictReader(io.StringIO(parts_csv(job_of(current_text(job))))))
    assert {row["mark"]: row["quantity"] for row in rows}["B1"] == "2"
