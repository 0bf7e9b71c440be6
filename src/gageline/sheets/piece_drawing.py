"""The piece drawing: views, end views, fittings, bill of material, notes and the practice used."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.job import Job
from gageline.part import Assembly, End, Fitting, Placement
from gageline.sheets.end_panels import end_panel, section_panel, titled
from gageline.sheets.furniture import Draft, Heading, bind, paragraph, practice_block, space
from gageline.sheets.notation import Scribe
from gageline.sheets.panels import Panel, pack, panel, under
from gageline.sheets.piece_words import bill_table, piece_notes
from gageline.sheets.scales import Scale, scales
from gageline.sheets.scene import Box, Item, Sheet
from gageline.sheets.sight import ELEVATION
from gageline.sheets.stick_views import sightings, stick_views
from gageline.sheets.style import FINE
from gageline.sheets.table import table_blocks
from gageline.takeoff import PieceBill, bill_of_piece

__all__ = ["piece_drawing", "piece_drawings"]

_INSET = 3.0
_WORDS = 112.0
_GAP = 5.0
_LARGEST = 4
_FITTING_ROOM = (118.0, 90.0)


def piece_drawings(job: Job) -> Sheet:
    """The drawings of all pieces of a job, in its order.

    Args:
        job: the job.

    Raises:
        ValueProblem: a text with a character that the font lacks, or a part without a body.
        GagelineError: a piece that does not go on the paper at any scale.
    """
    drafts = [draft for assembly in job.assemblies for draft in piece_drawing(job, assembly)]
    return bind(job, "piece drawings", drafts)


def piece_drawing(job: Job, assembly: Assembly) -> list[Draft]:
    """The pages of one piece, to be bound with others.

    Args:
        job: that the piece belongs to.
        assembly: the piece.

    Raises:
        ValueProblem: a text with a character that the font lacks, or a part without a body.
        GagelineError: a piece that does not go on the paper at any scale.
    """
    scribe = Scribe.of(job)
    room = _inside(space(job, landscape=True))
    words = _words(job, assembly, scribe)
    high = room.height - words.box.height - _GAP
    choice = scales(job.system, _LARGEST)
    views, scale = stick_views(assembly, sightings(assembly, scribe), scribe, (room.width, high), choice)
    items: list[Item] = [views.at(room.left + views.box.left, room.top)]
    top = room.top + views.box.height + _GAP
    beside = Box(room.left, top, room.right - words.box.width - _GAP, room.bottom)
    items.append(words.at(room.right - words.box.width, room.bottom - words.box.height))
    panels = list(_panels(assembly, scribe, choice))
    pages = pack(panels, [beside], room)
    pages[0] = items + pages[0]
    return [
        Draft(_heading(assembly, scale if number == 0 else None), tuple(page), landscape=True)
        for number, page in enumerate(pages)
    ]


def _inside(room: Box) -> Box:
    return Box(room.left + _INSET, room.top + _INSET, room.right - _INSET, room.bottom - _INSET)


def _heading(assembly: Assembly, scale: Scale | None) -> Heading:
    main = assembly.main
    return Heading(
        "Piece drawing",
        assembly.mark,
        assembly.quantity,
        assembly.hand_of,
        f"{main.stock.designation}  {main.grade}",
        f"Scale {scale.name}" if scale else "Scales under the views",
    )


def _words(job: Job, assembly: Assembly, scribe: Scribe) -> Panel:
    """Bill of material, notes and practice, one under the other."""
    bill: PieceBill = bill_of_piece(assembly)
    ((table, height),) = table_blocks(bill_table(bill, job.system), _WORDS, 1e4, 1e4)
    notes = [note for note in piece_notes(job, assembly, scribe) if note]
    blocks = [
        paragraph("Notes", "\n".join(notes), _WORDS, FINE),
        practice_block(job, _WORDS, FINE),
    ]
    return under(
        [
            panel(table.items, "bill of material", Box(0.0, 0.0, _WORDS, height)),
            *(panel(block.items, box=Box(0.0, 0.0, _WORDS, block.height)) for block in blocks),
        ],
        2.0,
    )


def _panels(assembly: Assembly, scribe: Scribe, choice: tuple[Scale, ...]) -> Iterator[Panel]:
    """The drawings beside the views: section, end views, fittings."""
    section = section_panel(assembly, scribe, choice)
    if section:
        yield section
    for end in End:
        view = end_panel(assembly, end, scribe, choice)
        if view:
            yield view
    for fitting in {fitting.part.mark: fitting for fitting in assembly.fittings}.values():
        yield _fitting_panel(assembly, fitting, scribe, choice)


def _fitting_panel(assembly: Assembly, fitting: Fitting, scribe: Scribe, choice: tuple[Scale, ...]) -> Panel:
    """A fitting by itself, laid as it is marked."""
    part = fitting.part
    alone = Assembly(part, 1)
    views, scale = stick_views(alone, sightings(alone, scribe), scribe, _FITTING_ROOM, choice)
    count = sum(1 for other in assembly.fittings if other.part == part)
    size = f"{part.stock.designation} x {scribe.tell(part.length)}, {part.grade}"
    name = f"{part.mark}: {count} on each piece, {size}"
    return titled(views.items, name, f"{_lie(fitting.placement)}{scale.name}")


def _lie(placement: Placement) -> str:
    """Which end of a fitting is up on the piece as it is drawn."""
    up = placement.ex[ELEVATION.v[0]]
    if abs(up) < 0.5:
        return ""
    return "upper end at the right, " if up > 0 else "upper end at the left, "
