"""The cutting sheets: what to order, every stick with its cuts to tick off, every sheet of plates."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import groupby
from math import inf

from gageline.job import Job
from gageline.sheets.boxes import line_height
from gageline.sheets.cutting_summary import drop_marks, heat_of, scribe_of, summary_parts
from gageline.sheets.flow import Part, flow, room_of
from gageline.sheets.furniture import Block, Heading, bind, fitted
from gageline.sheets.notation import Scribe, long_point
from gageline.sheets.scene import Anchor, Group, Item, Level, Polygon, Sheet, Text
from gageline.sheets.sheet_picture import sheet_picture
from gageline.sheets.stick_picture import Run, lying, runs_of, scale_of, stick_picture
from gageline.sheets.style import BODY, HEADING, Ink, Role, Weight
from gageline.sheets.table import Column, Table, table_blocks
from gageline.stock import (
    Burner,
    End,
    Held,
    Piece,
    PlatePlan,
    PlateQuestion,
    SectionPlan,
    ShearCut,
    SheetPlan,
    ShopPlan,
    StickPlan,
    shear_cuts,
)
from gageline.units import Slope

__all__ = ["cutting_sheet", "ends_of"]

_CARE = (
    "Before the first cut check section, grade and heat number against the stick. "
    "Write the heat number on every piece and every drop."
)
_BOX = 4.2
_CELL = 62.0
_RIGHT = Anchor.RIGHT
_NAME = 80
_SCALE = "Lengths to scale"


def cutting_sheet(jobs: Sequence[Job], plan: ShopPlan) -> Sheet:
    """The cutting sheets of jobs: summary and order list, then stick by stick, then sheet by sheet.

    Args:
        jobs: at least one; the paper, units and tape are those of the first.
        plan: the cutting plan of all of them.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    job = _together(jobs)
    scribe = Scribe.of(job)
    width, _ = room_of(job)
    heading = Heading("Cutting sheets", detail="summary and order", care=_CARE)
    drafts = list(flow(job, heading, list(summary_parts(plan, scribe, width))))
    of_mark = {piece.mark: piece for piece in plan.question.pieces}
    drops = drop_marks(plan)
    sticks = [part for section in plan.cuts.sections for part in _section(job, section, of_mark, drops)]
    if sticks:
        drafts += flow(
            job, Heading("Cutting sheet", detail="stick by stick", scale=_SCALE, care=_CARE), sticks
        )
    plates = [
        part
        for asked, laid in zip(plan.question.plates, plan.plates, strict=True)
        for part in _plates(job, asked, laid, plan.question.rack.burner)
    ]
    if plates:
        drafts += flow(
            job, Heading("Plate layout", detail="sheet by sheet", scale=_SCALE, care=_CARE), plates
        )
    return bind(job, "cutting sheets", drafts)


def _together(jobs: Sequence[Job]) -> Job:
    """One job that stands for several in the title block."""
    first = jobs[0]
    if len(jobs) == 1:
        return first
    names = ", ".join(job.facts.name for job in jobs)
    numbers = ", ".join(job.facts.number for job in jobs if job.facts.number)
    names, numbers = (t if len(t) <= _NAME else f"{t[: _NAME - 1]}…" for t in (names, numbers))
    facts = first.facts.model_copy(update={"name": names, "number": numbers, "place": ""})
    return replace(first, facts=facts)


def _section(
    job: Job, section: SectionPlan, of_mark: Mapping[str, Piece], drops: Mapping[tuple[str, int], str]
) -> Iterator[Part]:
    width, _ = room_of(job)
    scribe = Scribe.of(job)
    scale = scale_of(section.sticks, width)
    for alike in _alike(section.sticks):
        row = lying(alike[0], of_mark)
        names = [drops.get((str(section.steel), stick.number), "") for stick in alike]
        cells = _cells(alike, names, width)
        own = scribe_of(alike[0], scribe)
        mark = names[0] if len(alike) == 1 else ""
        picture = _stacked(cells, stick_picture(alike[0], row, own, width, scale, mark), 2.0)
        name = f"{section.steel}, {_numbers(alike)}"
        titles = f"{name}: {_length(alike[0], scribe)}", f"{name}: cuts"
        unit = "" if own.system is scribe.system else ", mm"
        yield from _with_table(job, titles, picture, _cuts(runs_of(row), own, unit))


def _with_table(job: Job, titles: tuple[str, str], picture: Block, table: Table) -> Iterator[Part]:
    """A picture and its table under one title if they go on one page, else each under its own."""
    width, height = room_of(job)
    ((group, deep),) = table_blocks(table, width, inf, inf)
    whole = _stacked(picture, Block((group,), deep), 2.0)
    if whole.height + 2 * line_height(HEADING) <= height:
        yield Part(titles[0], whole)
    else:
        yield Part(titles[0], picture)
        yield Part(titles[1], table)


def _alike(sticks: Sequence[StickPlan]) -> Iterator[list[StickPlan]]:
    """Sticks next to one another with the same cuts, so that one picture does for all."""
    for _, same in groupby(sticks, key=lambda s: (s.stock.length, s.pieces, s.done)):
        yield list(same)


def _numbers(alike: Sequence[StickPlan]) -> str:
    first, last = alike[0], alike[-1]
    return f"stick {first.number}" if first is last else f"sticks {first.number} to {last.number}, alike"


def _length(stick: StickPlan, scribe: Scribe) -> str:
    return f"{scribe.tell(stick.stock.length)}{', cut already' if stick.done else ''}"


def _cells(alike: Sequence[StickPlan], drops: Sequence[str], width: float) -> Block:
    """A box to tick for each stick, with where it comes from, its heat and the mark of its drop."""
    columns = max(1, int(width // _CELL))
    wide = width / columns
    step = max(_BOX, line_height(BODY)) + 1.4
    items: list[Item] = []
    for place, (stick, drop) in enumerate(zip(alike, drops, strict=True)):
        x, y = place % columns * wide, place // columns * step
        corners = ((x, y), (x + _BOX, y), (x + _BOX, y + _BOX), (x, y + _BOX))
        items.append(Polygon(corners, Role.FRAME, Ink.WHITE))
        words = fitted(_cell(stick, drop), wide - _BOX - 3.0, BODY)
        items.append(Text(x + _BOX + 1.2, y + _BOX / 2, words.text, words.size, level=Level.MIDDLE))
    rows = -(-len(alike) // columns)
    return Block(tuple(items), rows * step)


def _cell(stick: StickPlan, drop: str) -> str:
    source = f"rack {stick.stock.mark}" if isinstance(stick.stock, Held) else "bought"
    mark = f", drop {drop}" if drop else ""
    return f"{stick.number}: {source}, heat {heat_of(stick)}{mark}"


def _stacked(upper: Block, lower: Block, between: float) -> Block:
    top = upper.height + between
    return Block((*upper.items, Group(lower.items, 0.0, top)), top + lower.height)


def _cuts(runs: Sequence[Run], scribe: Scribe, unit: str) -> Table:
    """The order of cuts: what to set, and where the tape reads from the stick's first end.

    The first cut trims the stick's end, at the angle of the first piece.
    """
    columns = (
        Column("Done", ticks=True),
        Column("Cut", wraps=False),
        Column("Piece", weight=Weight.BOLD),
        Column("No.", _RIGHT),
        Column(f"Set to length{unit}", _RIGHT, Weight.BOLD, wraps=False),
        Column(f"Tape from the first end of the stick{unit}"),
        Column("Ends"),
    )
    first = runs[0].pieces[0]
    rows = [_cut(run, scribe) for run in runs]
    if first.placed.start:
        angled = "angled, as the first end below" if first.first.angled else "square"
        rows.insert(0, ("", "trim", "", "", "", scribe.tell(first.placed.start), angled))
    return Table(columns, tuple(rows))


def _cut(run: Run, scribe: Scribe) -> tuple[str, ...]:
    many = len(run.pieces)
    cuts = str(run.number) if many == 1 else f"{run.number} to {run.number + many - 1}"
    length = scribe.tell(run.pieces[0].placed.length)
    readings = ", ".join(scribe.tell(one.placed.stop) for one in run.pieces)
    return "", cuts, run.mark, str(many), length, readings, ends_of(run, scribe)


def ends_of(run: Run, scribe: Scribe) -> str:
    """How the two ends of a piece are cut, as the picture shows them."""
    one = run.pieces[0]
    ways = [
        _angle(name, end, scribe, up=up, is_angle=one.is_angle)
        for name, end, up in (("first", one.first, one.first_up), ("last", one.last, one.last_up))
        if end.angled
    ]
    if one.placed.shares:
        ways.append("first end is the cut before")
    if one.placed.turned:
        ways.append("right end first")
    return "; ".join(ways) or "square"


def _angle(name: str, end: End, scribe: Scribe, *, up: bool, is_angle: bool) -> str:
    slope = Slope(end.run.ratio(end.across))
    longer = long_point(flat=end.plane == "flange", high=up, is_angle=is_angle)
    return f"{name} end {scribe.bevel(slope, longer)}"


def _plates(job: Job, asked: PlateQuestion, plan: PlatePlan, burner: Burner) -> Iterator[Part]:
    width, _ = room_of(job)
    scribe = Scribe.of(job)
    for sheet in plan.sheets:
        size = f"{scribe.tell(sheet.sheet.width)} x {scribe.tell(sheet.sheet.length)}"
        heat = f"heat {sheet.sheet.heat}" if sheet.sheet.heat else "heat ____________"
        name = f"{asked.steel}, sheet {sheet.number}"
        titles = f"{name}: {size}, {heat}", f"{name}: plates"
        cuts = shear_cuts(sheet, burner) if burner.shear else ()
        picture = sheet_picture(sheet, scribe, width, cuts)
        yield from _with_table(job, titles, picture, _places(sheet, scribe))
        if cuts:
            yield Part(f"{name}: cuts of the shear, in their order", _sheared(cuts, scribe))


def _sheared(cuts: Sequence[ShearCut], scribe: Scribe) -> Table:
    """The cuts of a shear: what to set the stop to, and where the cut lies on the whole sheet."""
    columns = (
        Column("Done", ticks=True),
        Column("Cut", _RIGHT),
        Column("Runs"),
        Column("Set to", _RIGHT, Weight.BOLD),
        Column("Lies at", wraps=False),
        Column("From", _RIGHT),
        Column("To", _RIGHT),
        Column("Gives", weight=Weight.BOLD),
    )
    rows = tuple(
        (
            "",
            str(cut.number),
            "across" if cut.across else "along",
            scribe.tell(cut.width) if cut.width else "shave",
            f"{scribe.tell(cut.at)} {'along' if cut.across else 'up'}",
            scribe.tell(cut.start),
            scribe.tell(cut.stop),
            _gives(cut.frees),
        )
        for cut in cuts
    )
    return Table(columns, rows)


def _gives(marks: Sequence[str]) -> str:
    counts = Counter(marks)
    return ", ".join(mark if many == 1 else f"{mark} ({many})" for mark, many in counts.items())


def _places(sheet: SheetPlan, scribe: Scribe) -> Table:
    """Where each plate lies: its lower left corner from the sheet's, and its sizes as it lies."""
    columns = (
        Column("Done", ticks=True),
        Column("Piece", weight=Weight.BOLD),
        Column("Along", _RIGHT),
        Column("Up", _RIGHT),
        Column("Size along", _RIGHT),
        Column("Size up", _RIGHT),
    )
    ordered = sorted(sheet.pieces, key=lambda p: (p.x, p.y))
    rows = tuple(
        ("", p.mark, scribe.fine(p.x), scribe.fine(p.y), scribe.fine(p.along), scribe.fine(p.across))
        for p in ordered
    )
    return Table(columns, rows)
