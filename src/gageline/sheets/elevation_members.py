"""What stands on a grid line: shafts with their plates, beams in its plane, and those that run into it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from gageline.detail import Detailed, Line, Placed
from gageline.part import Fitting, FittingKind, bounds
from gageline.sheets.notation import Scribe
from gageline.sheets.placing import Run
from gageline.sheets.plan_labels import signed
from gageline.sheets.plan_members import steel_ends
from gageline.sheets.scene import Point
from gageline.sheets.slabs import section_shape
from gageline.sheets.style import Weight

__all__ = ["Along", "CutMember", "PlaneMember", "cut_members", "plane_members"]

_NEAR = 12.0  # inches from a grid line that a member may be and still stand on it
_LEAST = 1.0 / 32
_PLATES = frozenset({FittingKind.BASE_PLATE, FittingKind.CAP_PLATE})


@dataclass(frozen=True, slots=True)
class Along:
    """A grid line.

    Attributes:
        axis: along which it runs: 0 for x, 1 for y.
        at: where it crosses the other axis, inches.
    """

    axis: int
    at: float


@dataclass(frozen=True, slots=True)
class PlaneMember:
    """A beam in the plane of an elevation, or a shaft of a column.

    Attributes:
        name: of the member in the document.
        corners: of its outline, inches along the line and up, its foot first.
        runs: what it is called.
        place: which of the equal pieces it is, where it shares its mark with others.
        upright: a shaft of a column.
        plates: outlines of base and cap plates.
        splice: what is said of the joint at its foot, for a shaft that stands on another.
    """

    name: str
    corners: tuple[Point, ...]
    runs: tuple[Run, ...]
    place: str = ""
    upright: bool = False
    plates: tuple[tuple[Point, ...], ...] = ()
    splice: tuple[Run, ...] = ()

    @property
    def middle(self) -> float:
        """Half way along, inches."""
        us = [u for u, _ in self.corners]
        return (min(us) + max(us)) / 2


@dataclass(frozen=True, slots=True)
class CutMember:
    """A beam that runs into the plane or through it, cut there.

    Attributes:
        name: of the member in the document.
        at: the middle of its top, inches along the line and up.
        outline: of its section, inches along the line and up.
        openings: the hollow of its section.
        runs: what it is called.
    """

    name: str
    at: Point
    outline: tuple[Point, ...]
    openings: tuple[tuple[Point, ...], ...]
    runs: tuple[Run, ...]


def plane_members(detailed: Detailed, along: Along, scribe: Scribe) -> tuple[PlaneMember, ...]:
    """The columns and beams that stand on a grid line.

    Args:
        detailed: the frame.
        along: the grid line.
        scribe: writes in the units of the job.
    """
    pieces = _pieces(detailed)
    members: list[PlaneMember] = []
    for line in detailed.frame.lines.values():
        if line.name not in pieces or not _is_on(line, along):
            continue
        if line.is_column:
            members += _shafts(line, along.axis, pieces[line.name], scribe)
        else:
            members.append(_beam(line, along.axis, pieces[line.name][0].mark, detailed, scribe))
    return tuple(members)


def cut_members(detailed: Detailed, along: Along, scribe: Scribe) -> tuple[CutMember, ...]:
    """The beams that end at a grid line's plane or pass through it.

    Args:
        detailed: the frame.
        along: the grid line.
        scribe: writes in the units of the job.
    """
    pieces = _pieces(detailed)
    return tuple(
        _cut(line, along, pieces[line.name][0].mark, detailed, scribe)
        for line in detailed.frame.beams
        if line.name in pieces and not _is_on(line, along) and _meets(line, along)
    )


def _pieces(detailed: Detailed) -> dict[str, list[Placed]]:
    pieces: dict[str, list[Placed]] = {}
    for one in detailed.placed:
        pieces.setdefault(one.member, []).append(one)
    return pieces


def _is_on(line: Line, along: Along) -> bool:
    return all(abs(p[1 - along.axis] - along.at) <= _NEAR for p in (line.start, line.finish))


def _meets(line: Line, along: Along) -> bool:
    ends = line.start[1 - along.axis], line.finish[1 - along.axis]
    return min(ends) - _NEAR <= along.at <= max(ends) + _NEAR


def _shafts(line: Line, axis: int, placed: list[Placed], scribe: Scribe) -> Iterator[PlaneMember]:
    """The shafts of a column as their outlines in the plane, with the plates at their ends."""
    u = line.start[axis]
    seen = abs(line.ey[axis])  # 1 where the depth lies in the plane
    half = (line.stock.d.inches * seen + line.stock.bf.inches * (1 - seen)) / 2
    for number, one in enumerate(sorted(placed, key=_foot)):
        low = _foot(one)
        top = low + one.assembly.main.length.inches
        plates = (_plate(each, one, axis) for each in one.assembly.fittings if each.kind in _PLATES)
        splice: tuple[Run, ...] = ((f"splice {signed(low, scribe)}", Weight.REGULAR),) if number else ()
        corners = ((u - half, low), (u + half, low), (u + half, top), (u - half, top))
        yield PlaneMember(
            line.name, corners, _runs(one.mark, line), upright=True, plates=tuple(plates), splice=splice
        )


def _foot(one: Placed) -> float:
    return one.placement.origin[2].inches


def _plate(fitting: Fitting, one: Placed, axis: int) -> tuple[Point, ...]:
    """A plate at an end of a shaft as a rectangle in the plane."""
    xs, ys, zs = bounds(fitting)
    corners = [one.placement.point((x, y, z)) for x in xs for y in ys for z in zs]
    us, heights = [c[axis].inches for c in corners], [c[2].inches for c in corners]
    left, right, low, high = min(us), max(us), min(heights), max(heights)
    return (left, low), (right, low), (right, high), (left, high)


def _beam(line: Line, axis: int, mark: str, detailed: Detailed, scribe: Scribe) -> PlaneMember:
    """A beam as its outline in the plane, from end to end of its steel."""
    start, finish = steel_ends(line, detailed)
    z, w = (line.top_at((*end, 0.0)) for end in (start, finish))
    runs = (*_runs(mark, line), *_heights((z, w), detailed, scribe))
    deep, u, v = line.upright_depth(), start[axis], finish[axis]
    place = "" if line.name == mark else f"place {line.name}"
    return PlaneMember(line.name, ((u, z), (v, w), (v, w - deep), (u, z - deep)), runs, place)


def _cut(line: Line, along: Along, mark: str, detailed: Detailed, scribe: Scribe) -> CutMember:
    """The section of a beam where its line meets the plane, or at the end that is next to it."""
    across = 1 - along.axis
    a, b = line.start[across], line.finish[across]
    share = min(1.0, max(0.0, (along.at - a) / (b - a)))
    u = line.start[along.axis] + (line.finish[along.axis] - line.start[along.axis]) * share
    top = line.start[2] + (line.finish[2] - line.start[2]) * share
    shape = section_shape(line.stock)
    high = shape.bounds[2]
    way = 1.0 if line.ez[along.axis] >= 0 else -1.0

    def loop(points: Iterator[tuple[float, ...]]) -> tuple[Point, ...]:
        return tuple((u + way * z, top + y - high) for y, z in points)

    runs: tuple[Run, ...] = ((mark, Weight.BOLD), *_heights((top,), detailed, scribe))
    holes = tuple(loop(iter(ring.coords[:-1])) for ring in shape.interiors)
    return CutMember(line.name, (u, top), loop(iter(shape.exterior.coords[:-1])), holes, runs)


def _heights(tops: tuple[float, ...], detailed: Detailed, scribe: Scribe) -> tuple[Run, ...]:
    """Tops of steel that lie off every level."""
    levels = detailed.frame.levels.values()
    off = [one for one in dict.fromkeys(tops) if all(abs(one - level) >= _LEAST for level in levels)]
    words = " to ".join(dict.fromkeys(signed(one, scribe) for one in off))
    return ((f" ({words})", Weight.REGULAR),) if off else ()


def _runs(mark: str, line: Line) -> tuple[Run, ...]:
    return (mark, Weight.BOLD), (f" {line.stock.designation}", Weight.REGULAR)
