"""The column beside a plan: level, tops of steel, legend, notes, and the key plan of its parts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from gageline.job import Job
from gageline.sheets.boxes import line_height
from gageline.sheets.furniture import Block, fitted, paragraph
from gageline.sheets.notation import Scribe
from gageline.sheets.plan_labels import signed
from gageline.sheets.plan_members import BEARING, PlanBeam, PlanLevel
from gageline.sheets.plan_regions import Grid, Region
from gageline.sheets.plan_signs import OPENING, legend
from gageline.sheets.plan_stations import is_skewed
from gageline.sheets.scene import Anchor, Group, Item, Level, Polygon, Text
from gageline.sheets.style import FINE, HEADING, Hatch, Role, Weight

__all__ = ["StripFacts", "side_strip"]

_BETWEEN = 2.6
_KEY = 34.0  # mm: the most that a key plan is high
_NOTES = (
    "A piece mark stands with its section along the member; where equal pieces share a mark, place "
    "names the member. Spacings go to work points: the middle of webs and columns."
)
_SKEWED = (
    " Where a member runs askew to the grid, each of its ends says how far its work point lies from the "
    "grid line named, square to that line."
)


@dataclass(frozen=True, slots=True)
class StripFacts:
    """What the column is about.

    Attributes:
        level: of the plan.
        beams: labelled on this part.
        regions: all parts of the level.
        number: which of them this is.
        openings: whether the floor has some.
        grid: the lines across x and across y that the sheet shows.
    """

    level: PlanLevel
    beams: tuple[PlanBeam, ...]
    regions: list[Region]
    number: int
    openings: bool = False
    grid: Grid = ({}, {})


def side_strip(facts: StripFacts, job: Job, width: float) -> Block:
    """The column, its top left corner at (0, 0).

    Args:
        facts: of the part.
        job: whose plan it is.
        width: mm.
    """
    items: list[Item] = []
    y = 0.0
    for block in _blocks(facts, job, width):
        items.append(Group(block.items, 0.0, y))
        y += block.height + _BETWEEN
    return Block(tuple(items), y - _BETWEEN)


def _blocks(facts: StripFacts, job: Job, width: float) -> Iterator[Block]:
    level = facts.level
    name = fitted(f"Level {level.name}", width, HEADING, Weight.BOLD)
    yield Block((replace(name, level=Level.TOP),), line_height(HEADING))
    if len(facts.regions) > 1:
        lines = _lines_shown(facts.grid)
        where = f"Grid lines {lines}. " if lines else ""
        words = f"{where}A grid line at a match line is on both sheets, with the members on it."
        yield paragraph(f"Part {facts.number + 1} of {len(facts.regions)}", words, width)
    top = signed(level.elevation, Scribe.of(job))
    yield paragraph(
        "Tops of steel",
        f"All at {top}, unless a height in brackets says otherwise: how far over (+) or under (−) that. "
        "Columns: see the column schedule.",
        width,
    )
    kinds = {kind for beam in facts.beams for kind in beam.kinds}
    if level.bearings:
        kinds.add(BEARING)
    if facts.openings:
        kinds.add(OPENING)
    yield Block((Text(0, 0, "Signs", FINE, Weight.BOLD, level=Level.TOP),), 4.0)
    yield legend(tuple(kinds), width)
    skewed = _SKEWED if any(is_skewed(beam) for beam in facts.beams) else ""
    yield paragraph("Notes", f"{_NOTES}{skewed}", width)
    if len(facts.regions) > 1:
        yield _key(facts, width)


def _lines_shown(grid: Grid) -> str:
    """The grid lines of a sheet in words: `1 to 4 and A to C`."""
    runs = []
    for lines in grid:
        names = sorted(lines, key=lines.__getitem__)
        if names:
            runs.append(names[0] if len(names) == 1 else f"{names[0]} to {names[-1]}")
    return " and ".join(runs)


def _key(facts: StripFacts, width: float) -> Block:
    """All parts of the level small, this one hatched."""
    regions = facts.regions
    left, low = min(r.left for r in regions), min(r.low for r in regions)
    right, high = max(r.right for r in regions), max(r.high for r in regions)
    k = min(width / (right - left), _KEY / (high - low))
    items: list[Item] = [Text(0, 0, "Parts of this level", FINE, Weight.BOLD, level=Level.TOP)]
    for n, region in enumerate(regions):
        x1, x2 = (region.left - left) * k, (region.right - left) * k
        y1, y2 = 4.6 + (high - region.high) * k, 4.6 + (high - region.low) * k
        corners = ((x1, y1), (x2, y1), (x2, y2), (x1, y2))
        hatch = Hatch(spacing=1.8) if n == facts.number else None
        items.append(Polygon(corners, Role.FRAME, hatch=hatch))
        if n != facts.number:
            at = ((x1 + x2) / 2, (y1 + y2) / 2)
            items.append(Text(*at, str(n + 1), FINE, Weight.BOLD, Anchor.CENTRE, Level.MIDDLE))
    return Block(tuple(items), 4.6 + (high - low) * k)
