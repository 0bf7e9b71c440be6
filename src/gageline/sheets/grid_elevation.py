"""Elevations along grid lines: columns, beams with their depth, levels and tops of steel."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import inf

import shapely
from shapely.geometry.base import BaseGeometry

from gageline.detail import Detailed, FullJob
from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.sheets.boxes import line_height
from gageline.sheets.dimensions import Dimensions, running
from gageline.sheets.elevation_members import Along, CutMember, PlaneMember, cut_members, plane_members
from gageline.sheets.fonts import text_width
from gageline.sheets.framing_plan import ERECTION_CARE, job_frame
from gageline.sheets.furniture import Draft, Heading, bind, large_paper, paper_of, space
from gageline.sheets.labels import Reading, Side
from gageline.sheets.notation import Scribe
from gageline.sheets.placing import Board, Label, Run, Spot, beside_line, placed_labels, round_about
from gageline.sheets.plan_labels import signed
from gageline.sheets.plan_regions import Region
from gageline.sheets.plan_sides import Edge, Edging, edging, grid_line, match_line
from gageline.sheets.plan_signs import PlanView
from gageline.sheets.scales import plan_scales
from gageline.sheets.scene import Box, Group, Item, Paper, Point, Polygon, Sheet, Text
from gageline.sheets.scene import Level as Height
from gageline.sheets.scene import Line as Stroke
from gageline.sheets.style import FINE, Ink, Role, Weight
from gageline.units import Length

__all__ = ["grid_elevations"]

_MARGIN = 8.0
_INSET = 3.0
_JOINT = 1.4  # mm that the line of a splice reaches past the column on both sides
_NOTE = 4.5  # mm for the line of notes under the drawing
_SMALL = 8
_SAME = 1.0 / 32  # inches
_PAST = 12.0  # inches past a match line that are not worth a sheet of their own
_CUT = 2.0  # what a beam that is drawn on both sheets costs
_BESIDE = 3.0  # what a match line off the columns costs
_WORDS = (
    "A beam that runs into this plane is drawn as its section, solid black, with its mark beside it. "
    "Heights in brackets: tops of steel that lie off every level. Heights at the right: over the dot."
)
_WORDS_OF_MANY = (
    "A beam that runs into this plane is drawn as its section, solid black; its mark is on the framing plan. "
    "Heights in brackets: tops of steel that lie off every level. Heights at the right: over the dot."
)


@dataclass(frozen=True, slots=True)
class _Plane:
    """What stands on a grid line, or on a stretch of it.

    A stretch is numbered, and knows where along the line the ones before and after it begin.
    """

    job: Job
    name: str
    members: tuple[PlaneMember, ...]
    cuts: tuple[CutMember, ...]
    grid: tuple[tuple[str, float], ...]
    levels: tuple[tuple[str, float], ...]
    named: bool = True  # the beams that run into it have their marks
    part: int = 1
    before: float | None = None
    after: float | None = None

    @property
    def heights(self) -> dict[float, list[str]]:
        """The levels that are seen, then where columns begin and end: names by height, inches."""
        region = self.region
        named = [(name, z) for name, z in self.levels if region.low <= z <= region.high]
        named += [one for member in self.members for one in member.heights]
        found: dict[float, list[str]] = {}
        for name, z in named:
            at = next((other for other in found if abs(other - z) < _SAME), z)
            found.setdefault(at, [])
            if name not in found[at]:
                found[at].append(name)
        return found

    @property
    def stations(self) -> tuple[float, ...]:
        """Middles of columns and tips of beams past their work points, along the line, inches."""
        return tuple(u for member in self.members for u in member.stations)

    @property
    def region(self) -> Region:
        points = [p for member in self.members for p in member.corners]
        points += [p for member in self.members for plate in member.plates for p in plate]
        us, zs = [u for u, _ in points], [z for _, z in points]
        us += [u for u in (self.before, self.after) if u is not None]
        own = [z for _, z in self.levels if min(zs) - 12 <= z <= max(zs) + 12]
        return Region(min(us) - 12, min([*zs, *own]) - 6, max(us) + 12, max([*zs, *own]) + 6)


def grid_elevations(full: FullJob, names: Sequence[str] = ()) -> Sheet:
    """Elevations along the grid lines that members stand on.

    Args:
        full: a job with a frame.
        names: of the grid lines wanted, in their order; empty for all.

    Raises:
        ValueProblem: a job without a frame, a name of no grid line, a text with a character that the font
            lacks, or members so close together that no sheet can show them.
    """
    detailed = job_frame(full)
    known = [*detailed.frame.grid_x, *detailed.frame.grid_y]
    drafts: list[Draft] = []
    for name in names or known:
        if name not in known:
            raise ValueProblem(f'"{name}" is no grid line of the frame: use one of {", ".join(known)}')
        plane = _plane(full.job, detailed, name)
        stretches = _stretches(plane) if plane.members else []
        for stretch, drawn in stretches:
            drafts.append(_draft(stretch, drawn, len(stretches)))
    return bind(full.job, "grid elevations", drafts, detailed.wrong)


def _plane(job: Job, detailed: Detailed, name: str) -> _Plane:
    """Everything that stands on a grid line."""
    frame = detailed.frame
    along = Along(1, frame.grid_x[name]) if name in frame.grid_x else Along(0, frame.grid_y[name])
    across = frame.grid_x if along.axis == 0 else frame.grid_y
    members = plane_members(detailed, along, Scribe.of(job))
    cuts = cut_members(detailed, along, Scribe.of(job))
    return _Plane(job, name, members, cuts, tuple(across.items()), tuple(frame.levels.items()))


_Drawn = tuple[list[Item], str, Paper]


def _stretches(plane: _Plane) -> list[tuple[_Plane, _Drawn]]:
    """A plane in as many stretches as it takes to write on all of its members."""
    papers = [large_paper(plane.job)]
    if len(plane.members) <= _SMALL:
        papers.insert(0, paper_of(plane.job))
    for paper in papers:
        drawn = _on_paper(plane, paper)
        if drawn is not None:
            return [(plane, (*drawn, paper))]
    halves = _halves(plane)
    if halves is None and plane.named and plane.cuts:
        return _stretches(replace(plane, named=False))
    if halves is None:
        raise ValueProblem(
            f'the elevation on grid line "{plane.name}" has {len(plane.members)} members too close together '
            "to be labelled on any sheet: give some of them a grid line of their own"
        )
    first = _stretches(halves[0])
    return [*first, *_stretches(replace(halves[1], part=plane.part + len(first)))]


def _halves(plane: _Plane) -> tuple[_Plane, _Plane] | None:
    """A plane cut in two at a column, or at the end of a beam, where few beams are cut and both have as many.

    None where it cannot be cut into smaller ones that all have a beam.
    """
    best: tuple[float, _Plane, _Plane] | None = None
    axes = {u for member in plane.members if member.upright for u in member.stations}
    ends = {u for member in plane.members if not member.upright for u in member.span}
    most, beamless = len(plane.members), all(member.upright for member in plane.members)
    for at in sorted(axes | ends):
        two = _stretch(plane, plane.before, at), _stretch(plane, at, plane.after)
        counts = [len(half.members) for half in two]
        bare = any(all(member.upright for member in half.members) for half in two) and not beamless
        if bare or not all(0 < count < most for count in counts):
            continue
        beams = [sum(not member.upright for member in half.members) for half in two]
        cut = sum(beams) - sum(not member.upright for member in plane.members)
        cost = abs(counts[0] - counts[1]) + _CUT * cut + (0.0 if at in axes else _BESIDE)
        if best is None or cost < best[0]:
            best = cost, *two
    return best and best[1:]


def _stretch(plane: _Plane, before: float | None, after: float | None) -> _Plane:
    """What is seen of a plane between two match lines: columns on them, and beams as far as to them.

    A beam that ends a little past a match line is seen whole, and on that side only.
    """
    low, high = (-inf if before is None else before), (inf if after is None else after)
    members = []
    for member in plane.members:
        least = 0.0 if member.upright else _PAST
        start, end = member.span
        if start < high - least and end > low + least:
            ends = low if start < low - least else -inf, high if end > high + least else inf
            members.append(member if member.upright else member.between(*ends))
    cuts = tuple(cut for cut in plane.cuts if low - _PAST <= cut.at[0] <= high + _PAST)
    return replace(plane, members=tuple(members), cuts=cuts, before=before, after=after)


def _draft(plane: _Plane, drawn: _Drawn, many: int) -> Draft:
    items, scale, paper = drawn
    part = f", part {plane.part} of {many}" if many > 1 else ""
    heading = Heading("Elevation", detail=f"Grid line {plane.name}{part}", scale=scale, care=ERECTION_CARE)
    return Draft(heading, tuple(items), landscape=True, paper=paper)


def _on_paper(plane: _Plane, paper: Paper) -> tuple[list[Item], str] | None:
    """The plane at the largest scale at which it fits; None where it or its labels do not."""
    room = space(plane.job, landscape=True, paper=paper)
    free = Box(room.left + _INSET, room.top + _INSET, room.right - _INSET, room.bottom - _INSET - _NOTE)
    region = plane.region
    for scale in plan_scales(plane.job.system):
        k = scale.paper
        width, height = (region.right - region.left) * k, (region.high - region.low) * k
        try:
            sides = _sides(plane, PlanView(region, k, 0.0, height))
        except ValueProblem:
            continue
        left, above, right = (side.depth + _MARGIN for side in sides)
        across, up = width + left + right, height + above + _MARGIN
        if across > free.width or up > free.height:
            continue
        view = PlanView(
            region,
            k,
            free.left + left + (free.width - across) / 2,
            free.top + above + height + (free.height - up) / 2,
        )
        drawn = _drawn(plane, view)
        if drawn is None:
            return None
        words = _WORDS if plane.named else _WORDS_OF_MANY
        note = Text(free.left, free.bottom + 0.6, words, FINE, level=Height.TOP)
        return [*drawn, note], scale.name
    return None


def _frame(view: PlanView) -> Box:
    region = view.region
    return Box(
        view.x(region.left) - _MARGIN,
        view.y(region.high) - _MARGIN,
        view.x(region.right) + _MARGIN,
        view.y(region.low) + _MARGIN,
    )


def _sides(plane: _Plane, view: PlanView) -> tuple[Dimensions, Edging, Dimensions]:
    """Heights at the left, the grid and what lies off it above, heights from the lowest at the right."""
    frame, region, scribe = _frame(view), view.region, Scribe.of(plane.job)
    limits = (frame.top, frame.bottom)
    marks = [
        Reading(view.y(z), f"{', '.join(names)} {signed(z, scribe)}") for z, names in plane.heights.items()
    ]
    left = running(marks, Side.LEFT, frame.left, limits, size=FINE)
    grid = tuple((name, u) for name, u in plane.grid if region.left <= u <= region.right)
    off = tuple(u for u in plane.stations if all(abs(u - at) > _SAME for _, at in grid))
    above = edging(
        Edge(Side.ABOVE, grid, off, bubbles=True),
        frame.top,
        view.x(0.0),
        view.scale,
        (frame.left, frame.right),
        scribe,
    )
    lowest = min(plane.heights, default=0.0)
    readings = [
        Reading(view.y(z), scribe.tell(Length.from_inches(z - lowest))) for z in plane.heights if z > lowest
    ]
    right = running(readings, Side.RIGHT, frame.right, limits, size=FINE, datum=view.y(lowest))
    return left, above, right


def _drawn(plane: _Plane, view: PlanView) -> list[Item] | None:
    """Lines and labels of the plane; None where a label finds no room."""
    frame, region = _frame(view), view.region
    thin: list[Stroke] = [
        grid_line(frame.top, frame.bottom, view.x(u), upright=True)
        for _, u in plane.grid
        if region.left <= u <= region.right
    ]
    thin += [
        grid_line(frame.left, frame.right, view.y(z), upright=False)
        for _, z in plane.levels
        if region.low <= z <= region.high
    ]
    steel: list[Item] = []
    strokes: list[BaseGeometry] = [shapely.LineString([(t.x1, t.y1), (t.x2, t.y2)]) for t in thin]
    for member in plane.members:
        corners = tuple(view.at(corner) for corner in member.corners)
        steel.append(Polygon(corners, Role.OUTLINE))
        strokes.append(shapely.Polygon(corners).exterior)
        plates = [tuple(view.at(corner) for corner in plate) for plate in member.plates]
        steel += [Polygon(plate, Role.FRAME, Ink.BLACK) for plate in plates]
        strokes += [shapely.Polygon(plate).exterior for plate in plates]
        if member.splice:
            joint = _joint(member, view)
            steel.append(joint)
            strokes.append(shapely.LineString([(joint.x1, joint.y1), (joint.x2, joint.y2)]))
    cuts = [_section(cut, view) for cut in plane.cuts]
    matches = _match_lines(plane, view)
    strokes += [shapely.LineString([(line.x1, line.y1), (line.x2, line.y2)]) for line, _, _ in matches]
    solids = (*(shapely.Polygon(cut.points) for cut in cuts), *(room for _, _, room in matches))
    board = Board(frame, solids, tuple(strokes))
    labels = [_label(member, view) for member in plane.members]
    labels += [_splice_label(member, view) for member in plane.members if member.splice]
    labels += [_cut_label(cut, view) for cut in plane.cuts if plane.named]
    placed = placed_labels(labels, board)
    if placed is None:
        return None
    sides = _sides(plane, view)
    return [
        *thin,
        *steel,
        *cuts,
        *(item for line, words, _ in matches for item in (line, *words)),
        Group(tuple(placed), name="labels"),
        *(Group(side.items, name="dimensions") for side in sides),
    ]


def _match_lines(plane: _Plane, view: PlanView) -> list[tuple[Stroke, tuple[Item, ...], BaseGeometry]]:
    """Where the plane goes on on other sheets: line, words, and the room that they take."""
    beyond = (Side.LEFT, plane.before, plane.part - 1), (Side.RIGHT, plane.after, plane.part + 1)
    return [match_line(side, view.x(at), [part], _frame(view)) for side, at, part in beyond if at is not None]


def _joint(member: PlaneMember, view: PlanView) -> Stroke:
    """The line between a shaft and the one that it stands on, drawn past both."""
    (left, y), (right, _) = view.at(member.corners[0]), view.at(member.corners[1])
    return Stroke(left - _JOINT, y, right + _JOINT, y, Role.OUTLINE)


def _splice_label(member: PlaneMember, view: PlanView) -> Label:
    """How high the joint at the foot of a shaft is, beside the end of its line."""
    joint = _joint(member, view)
    width = sum(text_width(text, FINE, weight) for text, weight in member.splice)
    off = width / 2 + 1.6
    spots = tuple(
        Spot(x, joint.y1 + down, 0.0, abs(down) + dear)
        for down in (0.0, -2.0, 2.0, -4.0, 4.0, -6.0, 6.0)
        for x, dear in ((joint.x2 + off, 0.0), (joint.x1 - off, 0.5))
    )
    return Label(member.splice, spots, ((joint.x2, joint.y1), (joint.x1, joint.y1)))


def _section(cut: CutMember, view: PlanView) -> Polygon:
    """The section of a beam that runs into the plane."""
    openings = tuple(tuple(view.at(p) for p in ring) for ring in cut.openings)
    return Polygon(tuple(view.at(p) for p in cut.outline), Role.THIN, Ink.BLACK, openings=openings)


def _cut_label(cut: CutMember, view: PlanView) -> Label:
    """The mark of a beam that runs into the plane, under it or beside it."""
    points = [view.at(p) for p in cut.outline]
    low = max(y for _, y in points)
    x, top = view.at(cut.at)
    width = sum(text_width(text, FINE, weight) for text, weight in cut.runs)
    # Never over it, where the beams in the plane have theirs.
    spots = tuple(s for s in round_about((x, low), width, line_height(FINE), 0.8, 6) if s.y > top)
    return Label(cut.runs, spots, ((x, low), (x, (low + top) / 2), (x, top)))


def _label(member: PlaneMember, view: PlanView) -> Label:
    """Mark and section of a member: in the beam or over it, beside the column."""
    if not member.place:
        return _beside(member, member.runs, view)
    place = f", {member.place}"
    halves = (_beside(member, member.runs, view), _beside(member, ((member.place, Weight.REGULAR),), view))
    return replace(_beside(member, (*member.runs, (place, Weight.REGULAR)), view), halves=halves)


def _beside(member: PlaneMember, runs: tuple[Run, ...], view: PlanView) -> Label:
    corners = [view.at(corner) for corner in member.corners]
    width = sum(text_width(text, FINE, weight) for text, weight in runs)
    spots = tuple(_spots(member, corners, width))
    a, b = (corners[0], corners[3]) if member.upright else (corners[0], corners[1])
    targets = tuple(
        (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share) for share in (0.5, 0.35, 0.65, 0.2, 0.8)
    )
    return Label(runs, spots, targets)


def _spots(member: PlaneMember, corners: list[Point], width: float) -> Iterator[Spot]:
    height = line_height(FINE)
    if member.upright:
        yield from beside_line(corners[0], corners[3], width, height)
        yield from beside_line(corners[1], corners[2], width, height)
    else:
        yield from beside_line(corners[0], corners[1], width, height)
        yield from beside_line(corners[3], corners[2], width, height)
