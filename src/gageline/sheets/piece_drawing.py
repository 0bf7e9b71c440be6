"""The piece drawing: views, end views, fittings, bill of material, notes and the practice used."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gageline.job import Job
from gageline.part import Assembly, End, Fitting, Placement
from gageline.sheets.end_panels import end_panel, section_panel, titled
from gageline.sheets.furniture import Block, Draft, Heading, bind, paragraph, practice_block, space
from gageline.sheets.notation import Scribe
from gageline.sheets.panels import Panel, pack, panel, under
from gageline.sheets.piece_words import bill_table, hole_lists, piece_notes
from gageline.sheets.scales import Scale, scales
from gageline.sheets.scene import Box, Item, Sheet
from gageline.sheets.sight import ELEVATION
from gageline.sheets.stick_views import sightings, stick_views
from gageline.sheets.style import FINE
from gageline.sheets.table import table_blocks
from gageline.sheets.weld_signs import weld_list
from gageline.takeoff import bill_of_piece

__all__ = ["piece_drawing", "piece_drawings"]

_INSET = 3.0
_WORDS = 112.0
_GAP = 5.0
_BETWEEN = 2.0
_LEAST = 40.0
"""mm: views need more height than this."""
_LARGEST = 4
_FITTING_WIDTH = 118.0
_FITTING_HEIGHT = 110.0
_SIZES = ((4, 62.0), (8, 46.0))
"""Largest scale of fittings, one to this, and mm for the steel of end views; the second to save a page."""
_CLEAR = 22.0
_CLEAR_ALONE = 14.0
"""mm of paper for the height of the steel, under which the words of a drawing go to the next page."""


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
    scribe = Scribe.of(job, assembly.main)
    room = _inside(space(job, landscape=True))
    blocks = _words(job, assembly, scribe, room.height)
    words = under(blocks, _BETWEEN)
    choice = scales(scribe.system, _LARGEST)
    views, together = _views(assembly, scribe, room, words.box.height, choice)
    first = len(views) - 1
    top = room.top + views[first][0].box.height + _GAP
    aside = room.right - words.box.width
    rooms = [(first, Box(room.left, top, aside - _GAP if together else room.right, room.bottom))]
    loose = () if together or words.box.height <= room.height else tuple(blocks)
    if not together and not loose:
        under_words = room.top + words.box.height + _GAP
        rooms += [
            (first + 1, replace(room, right=aside - _GAP)),
            (first + 1, Box(aside, under_words, room.right, room.bottom)),
        ]
    pages = _packed(assembly, scribe, choice, loose, rooms, room)
    for number, (panel_of_views, _) in enumerate(views):
        pages[number][:0] = [panel_of_views.at(room.left + panel_of_views.box.left, room.top)]
    if not loose:
        down = room.bottom - words.box.height if together else room.top
        pages[first if together else first + 1].append(words.at(aside, down))
    return [
        Draft(
            _heading(job, assembly, views[number][1] if number <= first else None),
            tuple(page),
            landscape=True,
        )
        for number, page in enumerate(pages)
    ]


def _views(
    assembly: Assembly, scribe: Scribe, room: Box, words: float, choice: Sequence[Scale]
) -> tuple[list[tuple[Panel, Scale]], bool]:
    """The views and their scale, page by page, and whether they share their page with the words."""
    seen = sightings(assembly, scribe)
    steel = max(one.picture.bounds[3] - one.picture.bounds[1] for one in seen)
    high = room.height - words - _GAP
    size = room.width, room.height
    if high > _LEAST:
        views, scale = stick_views(assembly, seen, scribe, (room.width, high), choice)
        clear = _CLEAR if assembly.fittings else _CLEAR_ALONE
        if views.box.height <= high and steel * scale.paper >= clear:
            return [(views, scale)], True
    alone, larger = stick_views(assembly, seen, scribe, size, choice)
    if high > _LEAST and views.box.height <= high and larger.one_to >= scale.one_to:
        return [(views, scale)], True
    if alone.box.height > room.height:
        return [stick_views(assembly, [one], scribe, size, choice) for one in seen], False
    return [(alone, larger)], False


def _packed(
    assembly: Assembly,
    scribe: Scribe,
    choice: tuple[Scale, ...],
    first: tuple[Panel, ...],
    rooms: Sequence[tuple[int, Box]],
    further: Box,
) -> list[list[Item]]:
    """What stands beside the views, drawn smaller only where that saves a page."""
    least = 1 + max(page for page, _ in rooms)
    best: list[list[Item]] = []
    for size in _SIZES:
        pages = pack([*first, *_panels(assembly, scribe, choice, size)], rooms, further)
        if not best or len(pages) < len(best):
            best = pages
        if len(best) == least:
            break
    return best


def _inside(room: Box) -> Box:
    return Box(room.left + _INSET, room.top + _INSET, room.right - _INSET, room.bottom - _INSET)


def _heading(job: Job, assembly: Assembly, scale: Scale | None) -> Heading:
    main = assembly.main
    return Heading(
        "Piece drawing",
        assembly.mark,
        assembly.quantity,
        assembly.hand_of,
        f"{main.stock.designation}  {main.grade}",
        f"Scale {scale.name}" if scale else "Scales under the views",
        system=Scribe.of(job, main).system,
    )


def _words(job: Job, assembly: Assembly, scribe: Scribe, height: float) -> list[Panel]:
    """Bill of material, welds, notes and practice, none higher than a page."""
    table = bill_table(bill_of_piece(assembly), scribe)
    notes = [note for note in piece_notes(job, assembly, scribe) if note]
    blocks = [
        *(Block((group,), high) for group, high in table_blocks(table, _WORDS, height, height)),
        *_hole_blocks(assembly, scribe, height),
        *weld_list(assembly, scribe, _WORDS, height),
        paragraph("Notes", "\n".join(notes), _WORDS, FINE),
        practice_block(job, _WORDS, FINE),
    ]
    return [panel(block.items, box=Box(0.0, 0.0, _WORDS, block.height)) for block in blocks]


def _hole_blocks(assembly: Assembly, scribe: Scribe, height: float) -> Iterator[Block]:
    """Lists of the holes that lie on no regular lines."""
    for part in dict.fromkeys([assembly.main, *(fitting.part for fitting in assembly.fittings)]):
        for table in hole_lists(part, scribe):
            yield from (Block((group,), high) for group, high in table_blocks(table, _WORDS, height, height))


def _panels(
    assembly: Assembly, scribe: Scribe, choice: tuple[Scale, ...], size: tuple[int, float]
) -> Iterator[Panel]:
    """The drawings beside the views: section, end views, fittings."""
    section = section_panel(assembly, scribe, choice)
    if section:
        yield section
    for end in End:
        view = end_panel(assembly, end, scribe, choice, size[1])
        if view:
            yield view
    for fitting in {fitting.part.mark: fitting for fitting in assembly.fittings}.values():
        smaller = tuple(scale for scale in choice if scale.one_to >= size[0])
        yield _fitting_panel(assembly, fitting, scribe, smaller)


def _fitting_panel(assembly: Assembly, fitting: Fitting, scribe: Scribe, choice: tuple[Scale, ...]) -> Panel:
    """A fitting by itself, laid as it is marked."""
    part = fitting.part
    alone = Assembly(part, 1)
    views, scale = stick_views(
        alone, sightings(alone, scribe), scribe, (_FITTING_WIDTH, _FITTING_HEIGHT), choice, detail=True
    )
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
