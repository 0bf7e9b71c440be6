"""What is printed of a job: packet, drawings, lists, frame, checks; and its parts for a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from dataclasses import dataclass

from gageline.detail import FullJob, checked_full
from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.layout import Layout, lay_out
from gageline.quality import blank_report
from gageline.sheets import (
    Scribe,
    Sheet,
    bench_cards,
    check_sheet,
    column_schedule,
    field_bolt_list,
    frame_packet,
    framing_plans,
    grid_elevations,
    inspection_sheets,
    packet,
    parts_list,
    piece_drawings,
    reasons_table,
    to_pdf,
)
from gageline.shop.engine import rules_for
from gageline.strength import check_strength
from gageline.takeoff import bill_of_piece, parts_of_job, weight_text, weight_unit
from gageline.units import System

__all__ = ["PRINTS", "Print", "parts_csv", "printed", "prints_of", "safe_cell"]

_RISKY = ("=", "+", "-", "@", "\t", "\r")


@dataclass(frozen=True, slots=True)
class Print:
    """Something that can be printed of a job.

    Args:
        title: what it is called.
        draw: its sheet, of the job whose pieces have no errors.
        framed: whether it is of the frame, and so only of jobs that have one.
    """

    title: str
    draw: Callable[[FullJob], Sheet]
    framed: bool = False


def _layouts(job: Job) -> tuple[Layout, ...]:
    return tuple(lay_out(piece, job.practice, job.system) for piece in job.assemblies)


def _inspection(full: FullJob) -> Sheet:
    own = full.job.practice.tolerances
    reports = [blank_report(layout, rules_for(layout, full), own) for layout in _layouts(full.job)]
    return inspection_sheets(full.job, reports)


PRINTS: dict[str, Print] = {
    "packet": Print(
        "Packet: cards, drawings, templates, parts", lambda f: packet(f.job, _layouts(f.job), f.detailed)
    ),
    "cards": Print("Bench cards", lambda f: bench_cards(f.job, _layouts(f.job))),
    "drawings": Print("Drawings", lambda f: piece_drawings(f.job)),
    "parts": Print("Parts list", lambda f: parts_list(f.job, f.detailed)),
    "checks": Print("Check sheet", lambda f: check_sheet(f.job, check_strength(f.job, None, f.detailed))),
    "inspection": Print("Inspection sheets, blank", _inspection),
    "frame": Print("Frame: everything of it", frame_packet, framed=True),
    "plans": Print("Framing plans", framing_plans, framed=True),
    "elevations": Print("Elevations", grid_elevations, framed=True),
    "columns": Print("Column schedule", column_schedule, framed=True),
    "bolts": Print("Field bolts", field_bolt_list, framed=True),
    "reasons": Print("Reasons", reasons_table, framed=True),
}
"""Name in the address -> what it is called, and how it is drawn."""


def prints_of(full: FullJob) -> dict[str, Print]:
    """What can be printed of a job: sheets of the frame only where it has one."""
    return {name: one for name, one in PRINTS.items() if full.detailed is not None or not one.framed}


def printed(full: FullJob, name: str) -> bytes:
    """A print of a job as PDF.

    Sheets of pieces leave out pieces with an error; the checks and the sheets of the frame are of all.

    Args:
        full: what is printed.
        name: one of PRINTS.

    Raises:
        ValueProblem: when every piece has an error, or a sheet of the frame is asked of a job without one.
    """
    one = PRINTS[name]
    if one.framed or name == "checks":
        return to_pdf(one.draw(full))
    sound = checked_full(full)
    if not sound.job.assemblies:
        raise ValueProblem(
            f"every piece has an error ({', '.join(sound.wrong[:20])}): put them right and print then"
        )
    return to_pdf(one.draw(FullJob(sound.job, full.detailed)))


def safe_cell(value: str) -> str:
    """A cell that no spreadsheet takes for a formula: an apostrophe stands before what could be one."""
    return f"'{value}" if value.lstrip().startswith(_RISKY) or value.startswith(_RISKY) else value


def parts_csv(job: Job) -> str:
    """The parts of a job as comma-separated values, weights in lb, or in kg where the job is in mm.

    Source: RFC 4180.
    """
    out = io.StringIO(newline="")
    table = csv.writer(out)
    unit = weight_unit(job.system)
    head = ("mark", "quantity", "stock", "grade", "length", f"weight each {unit}", f"weight total {unit}")
    table.writerow(head)
    for line in parts_of_job(bill_of_piece(assembly) for assembly in job.assemblies):
        length = Scribe.of(job).tell(line.length) + (" mm" if job.system is System.MM else "")
        texts = (line.mark, str(line.quantity), line.designation, line.grade, length)
        weights = (weight_text(one, job.system).replace(",", "") for one in (line.weight, line.total_weight))
        table.writerow((*map(safe_cell, texts), *weights))
    return out.getvalue()
