"""What is printed of a job: packet, drawings, parts list, and its parts for a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable

from gageline.job import Job
from gageline.layout import lay_out
from gageline.sheets import Sheet, bench_cards, fitting_templates, parts_list, piece_drawings, to_pdf
from gageline.takeoff import bill_of_piece, parts_of_job
from gageline.units import System, write_length

__all__ = ["PRINTS", "parts_csv", "printed", "safe_cell"]

_RISKY = ("=", "+", "-", "@", "\t", "\r")


def _cards(job: Job) -> Sheet:
    return bench_cards(job, tuple(lay_out(piece, job.practice, job.system) for piece in job.assemblies))


def _packet(job: Job) -> Sheet:
    sheets = (_cards(job), piece_drawings(job), fitting_templates(job), parts_list(job))
    return Sheet(tuple(page for sheet in sheets for page in sheet.pages), job.facts.name)


PRINTS: dict[str, tuple[str, Callable[[Job], Sheet]]] = {
    "packet": ("Packet: cards, drawings, templates, parts", _packet),
    "cards": ("Bench cards", _cards),
    "drawings": ("Drawings", piece_drawings),
    "parts": ("Parts list", parts_list),
}
"""Name in the address -> what it is called, and how it is drawn."""


def printed(job: Job, name: str) -> bytes:
    """A print of a job as PDF.

    Args:
        job: what is printed.
        name: one of PRINTS.
    """
    return to_pdf(PRINTS[name][1](job))


def safe_cell(value: str) -> str:
    """A cell that no spreadsheet takes for a formula: an apostrophe stands before what could be one."""
    return f"'{value}" if value.lstrip().startswith(_RISKY) or value.startswith(_RISKY) else value


def parts_csv(job: Job) -> str:
    """The parts of a job as comma-separated values, weights in lb.

    Source: RFC 4180.
    """
    out = io.StringIO(newline="")
    table = csv.writer(out)
    table.writerow(("mark", "quantity", "stock", "grade", "length", "weight each lb", "weight total lb"))
    for line in parts_of_job(bill_of_piece(assembly) for assembly in job.assemblies):
        length = write_length(line.length, job.system, 64) + (" mm" if job.system is System.MM else "")
        texts = (line.mark, str(line.quantity), line.designation, line.grade, length)
        numbers = (f"{line.weight:.1f}", f"{line.total_weight:.1f}")
        table.writerow((*map(safe_cell, texts), *numbers))
    return out.getvalue()
