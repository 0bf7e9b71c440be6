"""The packet of a job: everything that goes to the steel, in the order it is used."""

from __future__ import annotations

from gageline.detail import Detailed, FullJob
from gageline.job import Job
from gageline.layout import Layout
from gageline.sheets.bench_card import bench_cards
from gageline.sheets.column_schedule import column_schedule
from gageline.sheets.field_bolts import field_bolt_list
from gageline.sheets.framing_plan import framing_plans
from gageline.sheets.grid_elevation import grid_elevations
from gageline.sheets.parts_list import parts_list
from gageline.sheets.piece_drawing import piece_drawings
from gageline.sheets.reasons_table import reasons_table
from gageline.sheets.scene import Sheet
from gageline.sheets.template import fitting_templates

__all__ = ["frame_packet", "packet"]


def packet(job: Job, layouts: tuple[Layout, ...], detailed: Detailed | None = None) -> Sheet:
    """Bench cards, piece drawings, fitting templates and the parts list, as one sheet of many pages.

    Args:
        job: what is printed; leave out pieces with errors first, by `gageline.job.checked`.
        layouts: how each of its pieces is laid out, in the order of the job.
        detailed: the job's frame, None where it has none.
    """
    sheets = [bench_cards(job, layouts), piece_drawings(job)]
    if any(assembly.fittings for assembly in job.assemblies):
        sheets.append(fitting_templates(job))
    sheets.append(parts_list(job, detailed))
    return _bound(sheets, job)


def frame_packet(full: FullJob) -> Sheet:
    """Framing plans, elevations, column schedule, field bolts and the reasons, as one sheet of many pages.

    Args:
        full: a job with a frame.

    Raises:
        ValueProblem: a job without a frame, a text with a character that the font lacks, or members so
            close together that no sheet can show them.
    """
    drawn = (framing_plans, grid_elevations, column_schedule, field_bolt_list, reasons_table)
    return _bound([draw(full) for draw in drawn], full.job)


def _bound(sheets: list[Sheet], job: Job) -> Sheet:
    return Sheet(tuple(page for sheet in sheets for page in sheet.pages), job.facts.name)
