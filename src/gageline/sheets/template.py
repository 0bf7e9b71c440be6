"""Fitting cards: a full-size template of every angle and plate, to print, cut out and lay on the steel."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from shapely import Polygon as Shape
from shapely.geometry.base import BaseGeometry

from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.layout import bench_of, patterns
from gageline.part import Face, Part, faces_of
from gageline.sheets.boxes import line_height, text_box
from gageline.sheets.dimensions import running
from gageline.sheets.furniture import Draft, Heading, bind, fitted, space
from gageline.sheets.labels import Reading, Side, once
from gageline.sheets.notation import Scribe
from gageline.sheets.scale_bar import BAR_HEIGHT, scale_bar
from gageline.sheets.scene import Anchor, Box, Circle, Group, Item, Level, Point, Sheet, Text
from gageline.sheets.spread import Drilled, Spread, spread_out
from gageline.sheets.style import BODY, HEADING, Role, Weight
from gageline.sheets.table import Column, Table, table_blocks
from gageline.sheets.template_notes import ARM, beside_holes, clear_texts, obstacles
from gageline.sheets.tiling import Tile, tiles
from gageline.sheets.unfolded import face_name
from gageline.steel import Profile
from gageline.units import Length

__all__ = ["fitting_templates"]

_FLAT = frozenset({Profile.ANGLE, Profile.PLATE})
_LONGEST = Length.from_inches(24)
_HEAD = BAR_HEIGHT + 6.9
_INSET = 2.5
_SHIFTS = (0.0, 15.0, -15.0, 40.0, -40.0)
_IN = (1.0, 6.0, 12.0)  # mm from the edge, further in where the end is cut aslant
_WARNING = "Full size: print at 100 %, not fitted to the page. If the bar is not exact, do not use this card."


@dataclass(frozen=True, slots=True)
class Read:
    """What the tape reads at one hole."""

    face: Face
    along: str
    across: str
    size: str


def fitting_templates(job: Job) -> Sheet:
    """The templates of a job: every angle and plate that has holes and is no longer than 2 feet.

    Nothing is ever scaled: what is larger than the paper goes on several pages with match lines.

    Args:
        job: whose fittings they are.

    Returns:
        The pages; one that says so where there is nothing to draw.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    drafts = [draft for part, count in _wanted(job).items() for draft in _drafts(job, part, count)]
    if not drafts:
        room = space(job)
        words = "No fitting of this job needs a template."
        note = Text(room.left + 5, room.top + 5, words, HEADING, level=Level.TOP)
        drafts = [Draft(Heading("Fitting card"), (note,))]
    return bind(job, "fitting cards", drafts)


def _wanted(job: Job) -> dict[Part, int]:
    """Every part to draw, with how many are wanted in the whole job."""
    found: dict[Part, int] = {}
    for assembly in job.assemblies:
        for part in (assembly.main, *(fitting.part for fitting in assembly.fittings)):
            if part.profile in _FLAT and part.groups and part.length <= _LONGEST:
                found[part] = found.get(part, 0) + assembly.quantity
    return found


def _drafts(job: Job, part: Part, count: int) -> Iterator[Draft]:
    landscape, turned = min(
        ((wide, turn) for wide in (False, True) for turn in (False, True)),
        key=lambda way: len(_pages(job, spread_out(part, turned=way[1]), landscape=way[0])),
    )
    spread = spread_out(part, turned=turned)
    pages = _pages(job, spread, landscape=landscape)
    detail = f"{part.stock.designation} {part.grade}"
    system = Scribe.of(job, part).system
    heading = Heading("Fitting card", part.mark, count, None, detail, "Full size, scale 1:1", system=system)
    room = space(job, landscape=landscape)
    read = _readings(job, part)
    seams = [seam for tile in pages for seam in tile.seams()]
    notes = _notes(spread, read, seams)
    names = _edge_names(spread, notes or [], seams, Scribe.of(job, part))
    shown = [_notes_on(tile, spread, notes) for tile in pages]
    for tile, own in zip(pages, shown, strict=True):
        texts = [*(text for lines in own.values() for text in lines), *filter(tile.holds, names)]
        items: list[Item] = [*_head(room, tile), *_drawing(spread, tile), *map(tile.text, texts)]
        items += tile.match_lines([*_taken(spread), *(Shape(text_box(text)) for text in texts)])
        if len(pages) == 1:
            items += _dimensions(job, spread, tile, room, read)
        yield Draft(heading, tuple(items), landscape)
    if len({number for own in shown for number in own}) < len(read):
        high = room.height - 2 * _INSET
        for group, _ in table_blocks(_table(part, read), room.width - 2 * _INSET, high, high):
            yield Draft(heading, (replace(group, dx=room.left + _INSET, dy=room.top + _INSET),), landscape)


def _notes_on(
    tile: Tile, spread: Spread, notes: list[tuple[Text, ...]] | None
) -> dict[int, tuple[Text, ...]]:
    """The notes that a page shows with their whole holes, by the number of the hole."""
    return {
        drilled.number: lines
        for drilled, lines in zip(spread.holes, notes or (), strict=False)
        if tile.shows(drilled.at, drilled.reach) and all(map(tile.holds, lines))
    }


def _pages(job: Job, spread: Spread, *, landscape: bool) -> list[Tile]:
    room = space(job, landscape=landscape)
    window = room.width - 2, room.height - _HEAD - 1.5
    holes = [(one.at, one.reach + ARM) for one in spread.holes]
    return tiles(spread.size, window, (room.left + 1, room.top + _HEAD), holes)


def _head(room: Box, tile: Tile) -> Iterator[Item]:
    words = _WARNING
    if tile.name:
        words = f"{tile.name.capitalize()}: lap the pages at the match lines. Print at 100 %, check the bar."
    line = fitted(words, room.width - 2 * _INSET, BODY, Weight.BOLD)
    yield replace(line, x=room.left + _INSET, y=room.top + 1.0, level=Level.TOP)
    yield Group(tuple(scale_bar()), room.left + _INSET, room.top + line_height(BODY) + 2.0)


def _drawing(spread: Spread, tile: Tile) -> Iterator[Item]:
    for ring in spread.outlines:
        yield from tile.line(ring, Role.OUTLINE)
    for drilled in spread.holes:
        yield from _hole(drilled, tile)


def _hole(drilled: Drilled, tile: Tile) -> Iterator[Item]:
    """Circle or slot at true size, a cross through its centre, and the number in a quarter of it."""
    radius = drilled.hole.width.mm / 2
    (x, y), (dx, dy) = drilled.at, drilled.half
    if not drilled.hole.is_slot and tile.shows(drilled.at, radius):
        yield Circle(*tile.at(drilled.at), radius, Role.OUTLINE)
    else:
        yield from tile.line(drilled.rim(), Role.OUTLINE)
    across, down = radius + ARM + abs(dx), radius + ARM + abs(dy)
    yield from tile.line([(x - across, y), (x + across, y)], Role.MARK)
    yield from tile.line([(x, y - down), (x, y + down)], Role.MARK)
    if drilled.hole.is_slot:
        for sign in (1, -1):
            ex, ey = x + sign * dx, y + sign * dy
            yield from tile.line([(ex - 2, ey - 2), (ex + 2, ey + 2)], Role.THIN)
            yield from tile.line([(ex - 2, ey + 2), (ex + 2, ey - 2)], Role.THIN)
    if tile.shows(drilled.at, radius):
        px, py = tile.at((x + radius * 0.45, y - radius * 0.45))
        yield Text(px, py, str(drilled.number), BODY, anchor=Anchor.CENTRE, level=Level.MIDDLE)


def _taken(spread: Spread) -> list[BaseGeometry]:
    return obstacles([*spread.outlines, *spread.folds], [(one.at, one.reach) for one in spread.holes])


def _notes(spread: Spread, read: list[Read], seams: Sequence[BaseGeometry]) -> list[tuple[Text, ...]] | None:
    """What the tape reads at each hole and its size, beside it; None where one has no room."""
    edge = "heel" if spread.part.profile is Profile.ANGLE else "top"
    lines = [(f"end {one.along}", f"{edge} {one.across}", one.size) for one in read]
    return beside_holes([(one.at, one.reach) for one in spread.holes], lines, spread.steel, seams)


def _edge_names(
    spread: Spread, notes: list[tuple[Text, ...]], seams: Sequence[BaseGeometry], scribe: Scribe
) -> list[Text]:
    """The left end on every face, and the heel, where there is room."""
    profile, turned = spread.part.profile, spread.turned
    wanted = []
    short = Length.from_mm(min(at[turned] for ring in spread.outlines for at in ring))
    # A mitre leaves this face short of the point that the tape is hooked at.
    where = f", {scribe.tell(short)} in from the long point" if short >= scribe.tape / 2 else ""
    for face, (x, y) in spread.starts:
        words = "Left end" if profile is Profile.PLATE else f"{face_name(profile, face)}, left end"
        wanted.append(
            [
                _along(said, (x, y), level=not turned, shift=shift, off=off)
                for said in dict.fromkeys((f"{words}{where}", words))
                for off in _IN
                for shift in _SHIFTS
            ]
        )
    for (x1, y1), (x2, y2) in spread.folds:
        middle = (x1 + x2) / 2, (y1 + y2) / 2
        wanted.append([_along("Heel", middle, level=turned, shift=shift) for shift in _SHIFTS])
    taken = [*_taken(spread), *seams, *(Shape(text_box(text)) for lines in notes for text in lines)]
    return clear_texts(wanted, taken)


def _along(words: str, point: Point, *, level: bool, shift: float, off: float = _IN[0]) -> Text:
    """Words beside an upright line (reading up it) or below a level one, at a point of it."""
    x, y = point
    if level:
        return Text(x + off, y + shift, words, BODY, Weight.BOLD, Anchor.CENTRE, Level.TOP, 90.0)
    return Text(x + shift, y + off, words, BODY, Weight.BOLD, Anchor.CENTRE, Level.TOP)


def _readings(job: Job, part: Part) -> list[Read]:
    """Of each hole in the order of its number."""
    bench = bench_of(part, job.practice.tape, job.system)
    rows = []
    for pattern in sorted(patterns(bench), key=lambda one: faces_of(part.stock).index(one.face)):
        for hole, spot in zip(pattern.group.holes, pattern.spots, strict=True):
            size = bench.exact(hole.width)
            if hole.is_slot:
                size += f" x {bench.exact(hole.length)} slot"
            rows.append(Read(pattern.face, spot.x.text, spot.y.text, size))
    return rows


def _table(part: Part, read: list[Read]) -> Table:
    across = "From the heel" if part.profile is Profile.ANGLE else "From the top edge"
    columns = (
        Column("Hole", Anchor.CENTRE, Weight.BOLD), Column("On"), Column("From the left end"),
        Column(across), Column("Size"),
    )  # fmt: skip
    rows = tuple(
        (str(number), face_name(part.profile, one.face), one.along, one.across, one.size)
        for number, one in enumerate(read, 1)
    )
    return Table(columns, rows)


def _dimensions(job: Job, spread: Spread, tile: Tile, room: Box, read: list[Read]) -> Iterator[Item]:
    """Running readings beside the drawing, on the sides where the page has room for them."""
    bench = bench_of(spread.part, job.practice.tape, job.system)
    places = [tile.at(drilled.at) for drilled in spread.holes]
    x, y = tile.paper
    along, across = (1, 0) if spread.turned else (0, 1)
    overall = Reading(tile.paper[along] + spread.size[along], bench.x(spread.part.length).text, Weight.BOLD)
    sides: dict[int, list[Reading]] = {along: [overall], across: []}
    for place, one in zip(places, read, strict=True):
        sides[along].append(Reading(place[along], one.along))
        sides[across].append(Reading(place[across], one.across))
    for labels, side, base, limits, depth in (
        (sides[0], Side.ABOVE, y, (x, x + spread.size[0]), y - room.top - _HEAD),
        (sides[1], Side.LEFT, x, (y, y + spread.size[1]), x - room.left - 1.0),
    ):
        try:
            yield from running(once(labels), side, base, limits, depth=depth).items
        except ValueProblem:
            # The readings stand beside the holes or in the table as well; the steel fills this page.
            continue
