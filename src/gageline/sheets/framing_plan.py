"""Framing plans: one level after another, cut into parts where one sheet cannot hold it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from gageline.detail import Detailed, FullJob, Opening
from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.sheets.furniture import Draft, Heading, bind, large_paper, paper_of, space
from gageline.sheets.labels import Side
from gageline.sheets.notation import Scribe
from gageline.sheets.placing import Board, Label, placed_labels
from gageline.sheets.plan_labels import beam_labels, column_label
from gageline.sheets.plan_members import PlanBeam, PlanLevel, plan_levels
from gageline.sheets.plan_picture import Picture, picture_of
from gageline.sheets.plan_regions import Grid, Region, halves, inside, line_at, neighbours, regions_of, seen
from gageline.sheets.plan_sides import Edge, Edging, edging, match_line
from gageline.sheets.plan_signs import PlanView
from gageline.sheets.plan_stations import edges_of, skewed_ends
from gageline.sheets.plan_strip import StripFacts, side_strip
from gageline.sheets.scales import Scale, plan_scales
from gageline.sheets.scene import Box, Group, Item, Line, Paper, Sheet

__all__ = ["ERECTION_CARE", "framing_plans", "job_frame"]

ERECTION_CARE = (
    "Erection needs a qualified person, who answers for stability while steel goes up; "
    "no hoisting line is let go before two bolts a connection are wrench-tight (29 CFR 1926.756(a)(1))."
)
"""The line of care on sheets that steel is put up by."""

_STRIP = 62.0  # mm: column of legend and notes
_MARGIN = 9.0  # mm between the frame and what stands round it
_INSET = 3.0
_SAME = 1.0 / 32  # inches
_SMALL = 16  # members that a sheet of the job's own paper can show
_OVER = 5.0  # mm past the grid line that a part was cut at


@dataclass(frozen=True, slots=True)
class _Part:
    """A part of a level's plan on its way to paper."""

    job: Job
    level: PlanLevel
    regions: list[Region]
    number: int
    openings: tuple[Opening, ...]
    grid: Grid

    @property
    def region(self) -> Region:
        return self.regions[self.number]

    def shown(self, over: float) -> Region:
        """What the sheet shows, so many inches past the grid lines that the part was cut at."""
        return seen(self.region, self.level.beams, self.grid, over)

    @property
    def beams(self) -> tuple[PlanBeam, ...]:
        """Those that are labelled: in the part, or on a grid line that it was cut at."""
        return inside(self.shown(_SAME), self.level.beams)


def job_frame(full: FullJob) -> Detailed:
    """The frame of a job.

    Raises:
        ValueProblem: the job has none.
    """
    if full.detailed is None:
        raise ValueProblem(
            f'job "{full.job.facts.name}" has no frame: give [frame] with its grid, columns and members'
        )
    return full.detailed


def framing_plans(full: FullJob) -> Sheet:
    """The framing plans of a job, level by level from the lowest, with the openings of its floors.

    Args:
        full: a job with a frame.

    Raises:
        ValueProblem: a job without a frame, a text with a character that the font lacks, or members so
            close together that no sheet can show them.
    """
    detailed = job_frame(full)
    grid = (detailed.frame.grid_x, detailed.frame.grid_y)
    drafts: list[Draft] = []
    for level in plan_levels(detailed):
        here = tuple(one for one in detailed.frame.openings if abs(one.elevation - level.elevation) < _SAME)
        drafts += _level_drafts(full.job, level, here, grid)
    return bind(full.job, "framing plans", drafts, detailed.wrong)


def _level_drafts(job: Job, level: PlanLevel, openings: tuple[Opening, ...], grid: Grid) -> list[Draft]:
    """The plan of a level; parts whose labels find no room are cut in two until all have it."""
    regions = regions_of(_whole(level, grid), level.beams, grid)
    # Parts that had room are tried again only when all have it, for then their numbers are the last ones.
    roomy: set[Region] = set()
    while True:
        parts = [_Part(job, level, regions, number, openings, grid) for number in range(len(regions))]
        tried = {part.number: _draft(part) for part in parts if part.region not in roomy}
        crowded = [number for number, draft in tried.items() if draft is None]
        if not crowded:
            drafts = [tried.get(part.number) or _draft(part) for part in parts]
            crowded = [number for number, draft in enumerate(drafts) if draft is None]
            if not crowded:
                return [draft for draft in drafts if draft is not None]
        roomy |= {regions[number] for number in tried if number not in crowded}
        for number in reversed(crowded):
            two = halves(regions[number], level.beams, grid)
            if two is None:
                raise ValueProblem(
                    f'the plan of level "{level.name}" has {len(level.beams)} members too close together to '
                    "be labelled on any sheet: give some of them a level of their own"
                )
            regions[number : number + 1] = two


def _whole(level: PlanLevel, grid: Grid) -> Region:
    """What a level's plan shows: its members, and the grid lines that pass between them."""
    points = [p for beam in level.beams for p in (beam.start, beam.finish, *beam.work)]
    points += [column.at for column in level.columns]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    # A hair more than the outermost lines, so that every middle is inside.
    xs += [x for x in grid[0].values() if min(xs) - 1 <= x <= max(xs) + 1]
    ys += [y for y in grid[1].values() if min(ys) - 1 <= y <= max(ys) + 1]
    return Region(min(xs) - 6, min(ys) - 6, max(xs) + 6, max(ys) + 6)


def _draft(part: _Part) -> Draft | None:
    papers = [large_paper(part.job)]
    if len(part.beams) <= _SMALL:
        papers.insert(0, paper_of(part.job))
    for paper in papers:
        drawn = _on_paper(part, paper)
        if drawn is not None:
            items, scale = drawn
            many = f", part {part.number + 1} of {len(part.regions)}" if len(part.regions) > 1 else ""
            detail = f"Level {part.level.name}{many}"
            heading = Heading("Framing plan", detail=detail, scale=scale.name, care=ERECTION_CARE)
            return Draft(heading, tuple(items), landscape=True, paper=paper)
    return None


def _on_paper(part: _Part, paper: Paper) -> tuple[list[Item], Scale] | None:
    """The part at the largest scale that its paper allows; None where its labels find no room."""
    room = space(part.job, landscape=True, paper=paper)
    strip = Box(room.right - _STRIP - _INSET, room.top + _INSET, room.right - _INSET, room.bottom - _INSET)
    free = Box(room.left + _INSET, room.top + _INSET, strip.left - 2.0, room.bottom - _INSET)
    facts = StripFacts(part.level, part.beams, part.regions, part.number, bool(part.openings), _lines(part))
    column = side_strip(facts, part.job, _STRIP)
    if column.height > strip.height:
        return None
    for scale in plan_scales(part.job.system):
        region = part.shown(_OVER / scale.paper)
        edges = edges_of(region, part.beams, part.grid)
        view = _fitted_view(edges, part, region, scale, free)
        if view is None:
            continue
        drawn = _drawn(part, view, edges)
        return (
            None if drawn is None else ([*drawn, Group(column.items, strip.left, strip.top, "legend")], scale)
        )
    return None


def _lines(part: _Part) -> Grid:
    """The grid lines that the part's sheet shows."""
    region, (xs, ys) = part.shown(_SAME), part.grid
    return (
        {name: at for name, at in xs.items() if region.left <= at <= region.right},
        {name: at for name, at in ys.items() if region.low <= at <= region.high},
    )


def _fitted_view(
    edges: Sequence[Edge], part: _Part, region: Region, scale: Scale, free: Box
) -> PlanView | None:
    """Where what is shown of the part lies on the paper at a scale; None where it does not fit."""
    k = scale.paper
    width, height = (region.right - region.left) * k, (region.high - region.low) * k
    if width + 2 * _MARGIN > free.width or height + 2 * _MARGIN > free.height:
        return None
    trial = PlanView(region, k, 0.0, height)
    try:
        depth = {edge.side: _side(edge, trial, Scribe.of(part.job)).depth + _MARGIN for edge in edges}
    except ValueProblem:
        return None
    across = width + depth[Side.LEFT] + depth[Side.RIGHT]
    up = height + depth[Side.ABOVE] + depth[Side.BELOW]
    if across > free.width or up > free.height:
        return None
    left = free.left + depth[Side.LEFT] + (free.width - across) / 2
    bottom = free.top + depth[Side.ABOVE] + height + (free.height - up) / 2
    return PlanView(region, k, left, bottom)


def _side(edge: Edge, view: PlanView, scribe: Scribe) -> Edging:
    box = _frame(view)
    if edge.side in {Side.ABOVE, Side.BELOW}:
        base = box.top if edge.side is Side.ABOVE else box.bottom
        return edging(edge, base, view.x(0.0), view.scale, (box.left, box.right), scribe)
    base = box.left if edge.side is Side.LEFT else box.right
    return edging(edge, base, view.y(0.0), -view.scale, (box.top, box.bottom), scribe)


def _frame(view: PlanView) -> Box:
    """The plan with the margin that its labels may stand in, paper mm."""
    region = view.region
    return Box(
        view.x(region.left) - _MARGIN,
        view.y(region.high) - _MARGIN,
        view.x(region.right) + _MARGIN,
        view.y(region.low) + _MARGIN,
    )


def _drawn(part: _Part, view: PlanView, edges: Sequence[Edge]) -> list[Item] | None:
    """Lines, signs and labels of the part; None where a label finds no room."""
    frame = _frame(view)
    openings = tuple((tuple((x, y) for x, y, _ in one.corners), one.name) for one in part.openings)
    picture: Picture = picture_of(part.level, view, frame, part.grid, openings)
    own = {beam.name for beam in part.beams}
    labels: list[Label] = []
    for beam, line in picture.lines:
        if beam.name in own:
            ends = skewed_ends(beam, part.grid, Scribe.of(part.job))
            labels += beam_labels(beam, line, Scribe.of(part.job), ends)
    labels += [column_label(c, view) for c in part.level.columns if view.region.holds(c.at)]
    labels += picture.labels
    matches = _match_lines(part, view, frame)
    heavy = (shapely.LineString([(line.x1, line.y1), (line.x2, line.y2)]) for line, _, _ in matches)
    solids = (room for _, _, room in matches)
    board = Board(frame, (*picture.solids, *solids), (*picture.strokes, *heavy))
    placed = placed_labels(labels, board)
    if placed is None:
        return None
    sides = [_side(edge, view, Scribe.of(part.job)) for edge in edges]
    return [
        *picture.items,
        *(item for line, words, _ in matches for item in (line, *words)),
        Group(tuple(placed), name="labels"),
        *(Group(side.items, name="dimensions") for side in sides),
    ]


def _match_lines(
    part: _Part, view: PlanView, frame: Box
) -> list[tuple[Line, tuple[Item, ...], BaseGeometry]]:
    """Where the plan goes on on other sheets: line, words, and the room that they take."""
    region = view.region
    places = {
        Side.LEFT: view.x(region.left), Side.RIGHT: view.x(region.right),
        Side.ABOVE: view.y(region.high), Side.BELOW: view.y(region.low),
    }  # fmt: skip
    own, (xs, ys) = part.region, part.grid
    cut_at = {
        Side.LEFT: line_at(own.left, xs), Side.RIGHT: line_at(own.right, xs),
        Side.ABOVE: line_at(own.high, ys), Side.BELOW: line_at(own.low, ys),
    }  # fmt: skip
    return [
        match_line(side, places[side], [n + 1 for n in others], frame, cut_at[side])
        for side, others in neighbours(part.number, part.regions).items()
    ]
