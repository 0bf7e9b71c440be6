"""What stands on each framing plan: the levels of a frame with their beams and columns."""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass
from math import hypot

from gageline.detail import Detailed, Line, Placed
from gageline.job import ColumnEntry, MemberEntry
from gageline.part import End
from gageline.sheets.scene import Point
from gageline.steel import Profile, Section

__all__ = ["BEARING", "FREE", "PlanBeam", "PlanColumn", "PlanLevel", "plan_levels"]

BEARING = "bearing"
FREE = "free"
_WHOLE = "the whole frame"
_UNDER = 12.0  # inches under the deepest beam that a column may end and still be of that level


@dataclass(frozen=True, slots=True)
class PlanBeam:
    """A beam as a plan shows it, in inches, x to the right and y up the plan.

    Attributes:
        name: of the member in the document.
        mark: of its piece.
        stock: its section.
        start: where its steel begins.
        finish: where its steel ends.
        work: its work points, where dimensions are taken to.
        kinds: the connection at start and end.
        drops: elevation of its top over the level at start and end.
        slope: rise over run from start to end.
        skews: degrees from square at start and end.
        offset: sideways from its line, to the left positive.
        turned: its piece's left end, where its mark is written, is at the finish.
    """

    name: str
    mark: str
    stock: Section
    start: Point
    finish: Point
    work: tuple[Point, Point]
    kinds: tuple[str, str]
    drops: tuple[float, float]
    slope: float
    skews: tuple[float, float]
    offset: float
    turned: bool = False

    @property
    def middle(self) -> Point:
        """Half way along."""
        return (self.start[0] + self.finish[0]) / 2, (self.start[1] + self.finish[1]) / 2


@dataclass(frozen=True, slots=True)
class PlanColumn:
    """A column as a plan shows it.

    Attributes:
        name: of the column in the document.
        mark: of its piece, of the shaft at this level.
        stock: its section.
        at: its middle, inches.
        depth: direction of its depth.
        below: it ends under the steel of this level.
    """

    name: str
    mark: str
    stock: Section
    at: Point
    depth: Point
    below: bool

    @property
    def is_box(self) -> bool:
        """Whether it is hollow."""
        return self.stock.profile is Profile.BOX


@dataclass(frozen=True, slots=True)
class PlanLevel:
    """A level with what stands on its plan.

    Attributes:
        name: of the level.
        elevation: tops of steel are shown from it, inches.
        beams: in the order of the document.
        columns: those that carry or pass through it.
        bearings: where beams lie on columns, other than at their ends.
    """

    name: str
    elevation: float
    beams: tuple[PlanBeam, ...]
    columns: tuple[PlanColumn, ...]
    bearings: tuple[Point, ...]


def plan_levels(detailed: Detailed) -> tuple[PlanLevel, ...]:
    """The levels of a frame that have beams, from the lowest up.

    A beam belongs to the level that its top is given by, or to that of the beam it is placed under;
    one given by an elevation to the nearest level.

    Args:
        detailed: the frame.
    """
    frame = detailed.frame
    held: dict[str, list[Line]] = defaultdict(list)
    placed: dict[str, list[Placed]] = defaultdict(list)
    for one in detailed.placed:
        placed[one.member].append(one)
    for line in frame.beams:
        if line.name in placed:
            held[_level_of(line, detailed)].append(line)
    levels = dict(frame.levels)
    if _WHOLE in held:
        tops = Counter(round(line.start[2], 3) for line in held[_WHOLE])
        levels[_WHOLE] = tops.most_common(1)[0][0]
    return tuple(
        _plan_level(name, levels[name], held[name], placed, detailed)
        for name in sorted(held, key=lambda one: levels[one])
    )


def _level_of(line: Line, detailed: Detailed) -> str:
    frame, entry = detailed.frame, line.entry
    if not frame.levels or not isinstance(entry, MemberEntry):
        return _WHOLE
    if entry.below in frame.lines:
        return _level_of(frame.lines[entry.below], detailed)
    if entry.top in frame.levels:
        return str(entry.top)
    return min(frame.levels, key=lambda name: abs(frame.levels[name] - line.start[2]))


def _plan_level(
    name: str,
    elevation: float,
    lines: list[Line],
    placed: dict[str, list[Placed]],
    detailed: Detailed,
) -> PlanLevel:
    beams = tuple(_beam(line, placed[line.name][0], elevation, detailed) for line in lines)
    lowest = min(min(line.start[2], line.finish[2]) - line.upright_depth() for line in lines)
    names = {line.name for line in lines}
    over = [b for b in detailed.supports.bearings if b.member.name in names]
    carrying = {b.column.name for b in over}
    columns = tuple(
        _column(line, placed[line.name], elevation, lowest)
        for line in detailed.frame.columns
        if line.name in placed
        and line.start[2] < lowest
        and (line.finish[2] > lowest - _UNDER or line.name in carrying)
    )
    between = tuple((b.column.start[0], b.column.start[1]) for b in over if _is_passed(b.member, b.end))
    return PlanLevel(name, elevation, beams, columns, between)


def _is_passed(line: Line, end: End | None) -> bool:
    """Whether a beam goes on past the column that it bears on."""
    return end is None or _overhang(line, end) > 0


def _overhang(line: Line, end: End) -> float:
    entry = line.entry
    if not isinstance(entry, MemberEntry):
        return 0.0
    over = entry.joint("start" if end is End.LEFT else "end").overhang
    return over.inches if over else 0.0


def _beam(line: Line, piece: Placed, elevation: float, detailed: Detailed) -> PlanBeam:
    ends = [_end(line, end, detailed) for end in End]
    entry = line.entry
    offset = entry.offset.inches if isinstance(entry, MemberEntry) and entry.offset else 0.0
    return PlanBeam(
        line.name,
        piece.mark,
        line.stock,
        ends[0][0],
        ends[1][0],
        (ends[0][1], ends[1][1]),
        (ends[0][2], ends[1][2]),
        (line.start[2] - elevation, line.finish[2] - elevation),
        line.slope,
        (ends[0][3], ends[1][3]),
        offset,
        piece.lie.end_for_end,
    )


def _end(line: Line, end: End, detailed: Detailed) -> tuple[Point, Point, str, float]:
    """Where the steel ends, where dimensions are taken to, the connection, and the skew of an end."""
    x, y, _ = line.start if end is End.LEFT else line.finish
    ux, uy, _ = line.plan
    way = -1.0 if end is End.LEFT else 1.0
    joint = detailed.joints.get((line.name, end))
    if joint is not None:
        site = joint.site
        return (site.point[0], site.point[1]), (x, y), joint.kind, site.skew
    over = _overhang(line, end)
    tip = (x + way * over * ux, y + way * over * uy)
    bears = any(b.member.name == line.name and b.end is end for b in detailed.supports.bearings)
    return tip, tip, BEARING if bears and not over else FREE, 0.0


def _column(line: Line, shafts: list[Placed], elevation: float, lowest: float) -> PlanColumn:
    dx, dy, _ = line.ey
    size = hypot(dx, dy) or 1.0
    # The shaft of this level is the highest that starts under it.
    under = (one for one in shafts if one.foot < elevation)
    mark = max(under, key=lambda one: one.foot, default=shafts[0]).mark
    at = (line.start[0], line.start[1])
    entry = line.entry
    below = line.finish[2] <= lowest + 1.0 or (isinstance(entry, ColumnEntry) and entry.under is not None)
    return PlanColumn(line.name, mark, line.stock, at, (dx / size, dy / size), below)
