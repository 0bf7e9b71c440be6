"""What every sheet of a job has in common: paper, frame, title block, care line, shop practice used."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.metadata import version

from gageline.job import Job
from gageline.sheets.boxes import line_height
from gageline.sheets.fonts import text_width
from gageline.sheets.scene import Anchor, Box, Group, Item, Level, Line, Page, Paper, Polygon, Sheet, Text
from gageline.sheets.style import BODY, FINE, HEADING, TITLE, Ink, Role, Weight
from gageline.sheets.wrap import wrap
from gageline.steel import HoleKind
from gageline.units import Length, System, write_length

__all__ = [
    "CARE",
    "Block",
    "Draft",
    "Heading",
    "bind",
    "bolt_text",
    "fitted",
    "large_paper",
    "paper_of",
    "paragraph",
    "practice_block",
    "practice_rows",
    "space",
    "title_block",
]

CARE = (
    "Strength of members and connections: not checked on this sheet. "
    "A licensed engineer answers for the design; local code governs."
)
"""The line of care on sheets that bear on safety."""

MARGIN = 10.0
"""mm of free paper around the frame."""
STRIP = 19.0
"""mm: height of the title block."""
_CARE_HEIGHT = 4.6
_INSET = 1.6
_LEAD = 1.2
_SHARES = (0.23, 0.27, 0.29, 0.21)
_LEAST = 5.0
_WRONG_LINES = 2
_HOLES = {
    HoleKind.STD: "standard",
    HoleKind.OVS: "oversize",
    HoleKind.SSL: "short slots",
    HoleKind.LSL: "long slots",
}


@dataclass(frozen=True, slots=True)
class Heading:
    """What the title block says of one page.

    Attributes:
        sheet: what kind of sheet it is ("Bench card").
        mark: the piece mark; empty on sheets of the whole job.
        quantity: how many pieces are wanted; 0 for none said.
        hand_of: the mark that the piece is the opposite hand of.
        detail: section and grade, or what else says what the page is about.
        scale: of the drawing, as text.
        care: the line of care under the frame; empty for none.
        system: the units of what is drawn; None for those of the job.
    """

    sheet: str
    mark: str = ""
    quantity: int = 0
    hand_of: str | None = None
    detail: str = ""
    scale: str = ""
    care: str = CARE
    system: System | None = None


@dataclass(frozen=True, slots=True)
class Draft:
    """A page before it knows its number.

    Attributes:
        heading: for its title block.
        items: what is drawn inside `space`, mm from the top left corner of the paper.
        landscape: the long side lies across.
        paper: which paper; None for the job's own.
    """

    heading: Heading
    items: tuple[Item, ...]
    landscape: bool = False
    paper: Paper | None = None


@dataclass(frozen=True, slots=True)
class Block:
    """Something set with its top left corner at (0, 0).

    Attributes:
        items: what to draw, mm.
        height: how much room it takes, mm.
    """

    items: tuple[Item, ...]
    height: float


def paper_of(job: Job) -> Paper:
    """The paper of a job: what it asks for, else letter for feet and inches and A4 for millimetres."""
    if job.facts.sheet:
        return Paper(job.facts.sheet)
    return Paper.LETTER if job.system is System.FT_IN else Paper.A4


def large_paper(job: Job) -> Paper:
    """The paper of a job's plans: twice the size of its cards."""
    return Paper.TABLOID if paper_of(job) is Paper.LETTER else Paper.A3


def space(job: Job, *, landscape: bool = False, paper: Paper | None = None) -> Box:
    """The room for drawing on a page: inside the frame, above the title block.

    Args:
        job: whose paper it is.
        landscape: the long side lies across.
        paper: which paper; None for the job's own.
    """
    width, height = (paper or paper_of(job)).size(landscape=landscape)
    return Box(MARGIN, MARGIN, width - MARGIN, height - MARGIN - _CARE_HEIGHT - STRIP)


def bind(job: Job, title: str, drafts: Sequence[Draft], wrong: tuple[str, ...] = ()) -> Sheet:
    """Pages with frame, title block and care line, numbered through.

    Args:
        job: what the sheets are of.
        title: of the file.
        drafts: the pages in their order.
        wrong: the marks of pieces with errors that the pages show.

    Raises:
        ValueProblem: a text of the job with a character that the font lacks.
    """
    pages = tuple(_page(job, draft, f"{n} of {len(drafts)}", wrong) for n, draft in enumerate(drafts, 1))
    return Sheet(pages, f"{job.facts.name}: {title}")


def _page(job: Job, draft: Draft, number: str, wrong: tuple[str, ...]) -> Page:
    room = space(job, landscape=draft.landscape, paper=draft.paper)
    block = title_block(job, draft.heading, room.width, f"Sheet {number}", wrong)
    bottom = room.bottom + block.height
    corners = ((room.left, room.top), (room.right, room.top), (room.right, bottom), (room.left, bottom))
    items: list[Item] = [
        Group(draft.items, name="drawing"),
        Polygon(corners, Role.FRAME),
        Group(block.items, room.left, room.bottom, "title block"),
    ]
    if draft.heading.care:
        care = fitted(draft.heading.care, room.width, FINE)
        items.append(Text(room.left, bottom + 1.0, care.text, care.size, level=Level.TOP))
    mark = f"{draft.heading.mark} " if draft.heading.mark else ""
    title = f"{mark}{draft.heading.sheet.lower()}, sheet {number}"
    return Page(tuple(items), draft.paper or paper_of(job), draft.landscape, MARGIN, title)


def title_block(job: Job, heading: Heading, width: float, number: str, wrong: tuple[str, ...] = ()) -> Block:
    """The strip at the foot of a page: piece, sheet, job and who made it.

    Args:
        job: its facts are shown.
        heading: of the page.
        width: of the strip, mm.
        number: which sheet of how many, as text.
        wrong: the marks of pieces with errors that the page shows.
    """
    items: list[Item] = [Line(0, 0, width, 0, Role.FRAME)]
    left = 0.0
    columns = (
        [*_piece(heading), *_errors(wrong, width * _SHARES[0] - 2 * _INSET)],
        _sheet(heading),
        _job(job, width * _SHARES[2] - 2 * _INSET),
        _maker(job, number, heading.system or job.system),
    )
    for share, lines in zip(_SHARES, columns, strict=True):
        if left:
            items.append(Line(left, 0, left, STRIP, Role.FRAME))
        items += _column(lines, left + _INSET, share * width - 2 * _INSET)
        left += share * width
    return Block(tuple(items), STRIP)


def _column(lines: Iterable[Text], left: float, width: float) -> Iterator[Text]:
    y = 1.3
    for line in lines:
        small = fitted(line.text, width, line.size, line.weight)
        yield Text(left, y, small.text, small.size, line.weight, level=Level.TOP)
        y += line_height(line.size) * _LEAD


def _line(text: str, size: float = FINE, weight: Weight = Weight.REGULAR) -> Text:
    return Text(0, 0, text, size, weight)


def _piece(heading: Heading) -> list[Text]:
    lines = [_line(heading.mark, TITLE, Weight.BOLD)] if heading.mark else []
    if heading.quantity:
        lines.append(_line(f"{heading.quantity} wanted", BODY))
    if heading.hand_of:
        lines.append(_line(f"Opposite hand of {heading.hand_of}", BODY))
    return lines


def _errors(wrong: tuple[str, ...], width: float) -> list[Text]:
    if not wrong:
        return []
    marks = wrap(", ".join(wrong), width, FINE)
    more = ["…"] if len(marks) > _WRONG_LINES else []
    return [
        _line("Do not build: errors in", BODY, Weight.BOLD),
        *(_line(text) for text in [*marks[:_WRONG_LINES], *more]),
    ]


def _sheet(heading: Heading) -> list[Text]:
    lines = [_line(heading.sheet, HEADING, Weight.BOLD)]
    return [*lines, *(_line(text, BODY) for text in (heading.detail, heading.scale) if text)]


def _job(job: Job, width: float) -> list[Text]:
    facts = job.facts
    name = wrap(facts.name, width, BODY, Weight.BOLD)
    lines = [_line(text, BODY, Weight.BOLD) for text in name[:2]]
    if len(name) > 2:
        lines = [_line(facts.name, BODY, Weight.BOLD)]
    rest = [f"Job {facts.number}" if facts.number else "", facts.place]
    return [*lines, *(_line(text) for text in rest if text)]


def _maker(job: Job, number: str, system: System) -> list[Text]:
    facts = job.facts
    units = "feet and inches" if system is System.FT_IN else "millimetres"
    date = facts.date.isoformat() if facts.date else ""
    made = f"Made by {facts.made_by}" if facts.made_by else ""
    lines = [_line(number, BODY, Weight.BOLD)]
    if said := ", ".join(text for text in (made, date) if text):
        lines.append(_line(said))
    return [*lines, _line(f"Units: {units}"), _line(f"Gageline {_version()}")]


@cache
def _version() -> str:
    return version("gageline")


def fitted(text: str, width: float, size: float, weight: Weight = Weight.REGULAR) -> Text:
    """A line of text made as small as it must be for a width, and cut off where even that is too wide.

    Args:
        text: one line.
        width: for it, mm.
        size: points it should have.
        weight: regular or bold.

    Returns:
        The text at (0, 0).
    """
    wide = text_width(text, size, weight)
    small = max(_LEAST, min(size, size * width / wide)) if wide else size
    while text_width(text, small, weight) > width + 1e-6 and len(text) > 1:
        text = text.removesuffix("…")[:-1] + "…"
    return Text(0, 0, text, small, weight)


def bolt_text(size: str) -> str:
    """A bolt size as drawings write it: inches with their mark, M sizes as they are."""
    return f'{size}"' if size[:1].isdigit() else size


def practice_rows(job: Job) -> tuple[tuple[str, str], ...]:
    """The shop practice that a job is made by, as (name, value), lengths in its units."""

    def say(length: Length) -> str:
        return write_length(length, job.system, 64)

    practice = job.practice
    return (
        ("tape", say(practice.tape)),
        ("bolts", f"{bolt_text(practice.bolt)} {practice.bolt_grade}"),
        ("holes", _HOLES[practice.hole]),
        ("cope radius", say(practice.cope_radius)),
        ("opening radius", say(practice.opening_radius)),
        ("first row down", say(practice.drop)),
        ("pitch", say(practice.pitch)),
        ("end distance", say(practice.end_distance)),
        ("angle projection", say(practice.projection)),
        ("fillet weld", say(practice.weld)),
        ("hole template rows", ", ".join(map(say, practice.template_rows))),
        ("template gage lines", str(practice.template_gages)),
        ("finish", practice.finish),
    )


def practice_block(job: Job, width: float, size: float = FINE) -> Block:
    """The shop practice used, as a paragraph: what holds where the drawing says nothing else.

    Args:
        job: whose practice it is.
        width: of the paragraph, mm.
        size: points.
    """
    values = "; ".join(f"{name} {value}" for name, value in practice_rows(job))
    return paragraph("Shop practice where nothing else is said:", values + ".", width, size)


def paragraph(heading: str, text: str, width: float, size: float = FINE) -> Block:
    """A bold heading over lines of text as wide as its column.

    Args:
        heading: one line; empty for none.
        text: what to set.
        width: of the column, mm.
        size: points.
    """
    lines = [(heading, Weight.BOLD)] if heading else []
    lines += [(line, Weight.REGULAR) for line in wrap(text, width, size)]
    step = line_height(size) * _LEAD
    items = tuple(
        Text(0, n * step, line, size, weight, Anchor.LEFT, Level.TOP, 0.0, Ink.BLACK)
        for n, (line, weight) in enumerate(lines)
    )
    return Block(items, len(lines) * step)
