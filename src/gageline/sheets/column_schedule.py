"""The column schedule: where each column stands, what it is, and how it starts, is spliced and ends."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from gageline.detail import Detailed, FullJob, Line, Placed
from gageline.job import ColumnEntry, Job
from gageline.part import Fitting, FittingKind
from gageline.sheets.flow import Part, flow, room_of
from gageline.sheets.framing_plan import ERECTION_CARE, job_frame
from gageline.sheets.furniture import Heading, bind, paragraph
from gageline.sheets.notation import Scribe
from gageline.sheets.plan_labels import signed
from gageline.sheets.scene import Sheet
from gageline.sheets.style import FINE, Weight
from gageline.sheets.table import Column, Table
from gageline.units import counted

__all__ = ["column_schedule", "grid_point"]

_ON = 1.0 / 32  # inches
_HALF_ROUND = 180.0
_NOTE = (
    "Base is the underside of the base plate, top the upper side of the cap plate or the end of the shaft. "
    "Turn is the direction from the flange that the card calls the bottom one to the top one, "
    "counter-clockwise from the direction of x: columns of one mark may stand turned half round. At least "
    "four anchor rods hold every column (29 CFR 1926.755(a), from memory); their spacing is along the "
    "column's depth by across it; their setting is the concrete's, their size the engineer's."
)


def column_schedule(full: FullJob) -> Sheet:
    """The columns of a frame, one row a shaft, in the order of the document.

    Args:
        full: a job with a frame.

    Raises:
        ValueProblem: a job without a frame, or a text with a character that the font lacks.
    """
    detailed = job_frame(full)
    rows = tuple(_rows(full.job, detailed))
    columns = (
        Column("Grid point", wraps=False), Column("Mark", weight=Weight.BOLD, wraps=False),
        Column("Section", wraps=False), Column("Turn", wraps=False), Column("Base", wraps=False),
        Column("Top", wraps=False), Column("Shaft", wraps=False), Column("Base plate"),
        Column("Anchor rods"), Column("Cap plate"), Column("Splices at"),
    )  # fmt: skip
    width, _ = room_of(full.job, landscape=True)
    parts = [Part("Columns", Table(columns, rows, FINE)), Part("", paragraph("Notes", _NOTE, width, FINE))]
    heading = Heading("Column schedule", detail=counted(len(rows), "shaft"), care=ERECTION_CARE)
    drafts = list(flow(full.job, heading, parts, landscape=True))
    return bind(full.job, "column schedule", drafts, detailed.wrong)


def grid_point(x: float, y: float, detailed: Detailed, job: Job) -> str:
    """A place of the plan by the grid: the nearest crossing, and how far off it where it is off.

    Args:
        x: inches.
        y: inches.
        detailed: with the grid.
        job: whose units are written.
    """
    grid = detailed.frame
    scribe = Scribe.of(job)
    if not grid.grid_x or not grid.grid_y:
        return f"{signed(x, scribe)}, {signed(y, scribe)}"
    names = [_nearest(x, grid.grid_x), _nearest(y, grid.grid_y)]
    point = "/".join(names)
    off = (x - grid.grid_x[names[0]], y - grid.grid_y[names[1]])
    words = [f"{axis} {signed(way, scribe)}" for axis, way in zip("xy", off, strict=True) if abs(way) > _ON]
    return f"{point} {', '.join(words)}".strip()


def _nearest(at: float, lines: Mapping[str, float]) -> str:
    return min(lines, key=lambda name: abs(lines[name] - at))


def _rows(job: Job, detailed: Detailed) -> Iterator[tuple[str, ...]]:
    for line in detailed.frame.columns:
        shafts = [one for one in detailed.placed if one.member == line.name]
        for number, shaft in enumerate(shafts):
            yield _row(job, detailed, line, shaft, first=number == 0, last=number == len(shafts) - 1)


def _row(
    job: Job, detailed: Detailed, line: Line, shaft: Placed, *, first: bool, last: bool
) -> tuple[str, ...]:
    scribe, entry = Scribe.of(job), line.entry
    main = shaft.assembly.main
    turn = float(entry.turn) if isinstance(entry, ColumnEntry) else 0.0
    turn = (turn + (_HALF_ROUND if shaft.lie.half_turn else 0.0)) % 360
    foot = shaft.foot
    head = foot + main.length.inches
    splices = detailed.frame.splices.get(line.name, ())
    place = grid_point(line.start[0], line.start[1], detailed, job)
    return (
        place if line.name == shaft.mark or not first else f"{place} ({line.name})",
        shaft.mark,
        f"{main.stock.designation} {main.grade}",
        f"{turn:g}°",
        signed(line.start[2] if first else foot, scribe),
        signed(line.finish[2] if last else head, scribe),
        scribe.tell(main.length),
        _plate(shaft.assembly.fittings, FittingKind.BASE_PLATE, scribe),
        _rods(line.name, detailed, scribe) if first else "",
        _plate(shaft.assembly.fittings, FittingKind.CAP_PLATE, scribe),
        ", ".join(signed(z, scribe) for z in splices),
    )


def _plate(fittings: tuple[Fitting, ...], kind: FittingKind, scribe: Scribe) -> str:
    """A plate at an end of the shaft: stock, size and holes."""
    for fitting in fittings:
        if fitting.kind is kind:
            part = fitting.part
            holes = [hole for group in part.groups for hole in group.holes]
            words = f"{part.mark} {part.stock.designation} x {scribe.tell(part.length)}"
            return f"{words}, {counted(len(holes), 'hole')} {scribe.hole_size(holes[0])}" if holes else words
    return ""


def _rods(column: str, detailed: Detailed, scribe: Scribe) -> str:
    """The anchor rods of a column: how many, how thick, how long, where, and how far they stand out."""
    for rods in detailed.anchor_rods:
        if rods.column == column:
            fine = scribe.fine
            return (
                f"{rods.count} rods Ø{fine(rods.diameter)} x {fine(rods.length)}, {fine(rods.pitch)} by "
                f"{fine(rods.gage)} apart, {fine(rods.projection)} over the concrete"
            )
    return ""
