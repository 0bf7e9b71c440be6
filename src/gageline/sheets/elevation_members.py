"""What stands on a grid line: shafts with their plates, beams in its plane, and those that run into it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from gageline.detail import Detailed, Line, Placed
from gageline.part import End, Fitting, FittingKind, bounds, extent_y
from gageline.sheets.card_ends import place_of
from gageline.sheets.notation import Scribe
from gageline.sheets.placing import Run
from gageline.sheets.plan_labels import signed
from gageline.sheets.scene import Point
from gageline.sheets.slabs import section_shape
from gageline.sheets.style import Weight
from gageline.units import ZERO

__all__ = ["Along", "CutMember", "PlaneMember", "cut_members", "plane_members"]

_NEAR = 12.0  # inches from a grid line that a member may be and still stand on it
_LEAST = 1.0 / 32
_PLATES = frozenset({FittingKind.BASE_PLATE, FittingKind.CAP_PLATE})
_FEET = FittingKind.BASE_PLATE, "under base plates", "column feet"
_TOPS = FittingKind.CAP_PLATE, "cap plate tops", "column tops"


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
        heights: where a column begins and ends, each with its name, inches.
        stations: along the line, to be dimensioned: the middle of a shaft, tips past work points; inches.
    """

    name: str
    corners: tuple[Point, ...]
    runs: tuple[Run, ...]
    place: str = ""
    upright: bool = False
    plates: tuple[tuple[Point, ...], ...] = ()
    splice: tuple[Run, ...] = ()
    heights: tuple[tuple[str, float], ...] = ()
    stations: tuple[float, ...] = ()

    @property
    def span(self) -> tuple[float, float]:
        """From where to where along the line it reaches, inches."""
        us = [u for u, _ in self.corners]
        return min(us), max(us)

    def between(self, low: float, high: float) -> PlaneMember:
        """As much of a beam as lies between two places along the line, inches."""
        (a, b, c, d), stations = self.corners, tuple(u for u in self.stations if low <= u <= high)
        top = [_on(a, b, min(max(u, low), high)) for u, _ in (a, b)]
        bottom = [_on(d, c, min(max(u, low), high)) for u, _ in (c, d)]
        return replace(self, corners=(*top, *bottom), stations=stations)


def _on(a: Point, b: Point, u: float) -> Point:
    """The point at a place along the line on the edge from a to b."""
    return u, a[1] + (b[1] - a[1]) * (u - a[0]) / (b[0] - a[0])


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
            members.append(_beam(line, along.axis, pieces[line.name][0], detailed, scribe))
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
    shafts = sorted(placed, key=lambda one: one.foot)
    for number, one in enumerate(shafts):
        low = one.foot
        top = low + one.assembly.main.length.inches
        plates = {
            each.kind: _plate(each, one, axis) for each in one.assembly.fittings if each.kind in _PLATES
        }
        splice: tuple[Run, ...] = ((f"splice {signed(low, scribe)}", Weight.REGULAR),) if number else ()
        heights = [_height(_FEET, low, plates, min)] if one is shafts[0] else []
        heights += [_height(_TOPS, top, plates, max)] if one is shafts[-1] else []
        yield PlaneMember(
            line.name,
            ((u - half, low), (u + half, low), (u + half, top), (u - half, top)),
            _runs(one.mark, line),
            upright=True,
            plates=tuple(plates.values()),
            splice=splice,
            heights=tuple(heights),
            stations=(u,),
        )


def _height(
    names: tuple[FittingKind, str, str],
    shaft: float,
    plates: dict[FittingKind, tuple[Point, ...]],
    furthest: Callable[[Iterable[float]], float],
) -> tuple[str, float]:
    """Where a column begins or ends: at the outside of its plate, else with its shaft."""
    kind, plated, bare = names
    if kind in plates:
        return plated, furthest(z for _, z in plates[kind])
    return bare, shaft


def _plate(fitting: Fitting, one: Placed, axis: int) -> tuple[Point, ...]:
    """A plate at an end of a shaft as a rectangle in the plane."""
    xs, ys, zs = bounds(fitting)
    corners = [one.placement.point((x, y, z)) for x in xs for y in ys for z in zs]
    us, heights = [c[axis].inches for c in corners], [c[2].inches for c in corners]
    left, right, low, high = min(us), max(us), min(heights), max(heights)
    return (left, low), (right, low), (right, high), (left, high)


def _beam(line: Line, axis: int, one: Placed, detailed: Detailed, scribe: Scribe) -> PlaneMember:
    """A beam as its outline in the plane, from end to end of its steel."""
    main = one.assembly.main
    low, high = extent_y(main.stock)
    around = ((End.LEFT, high), (End.RIGHT, high), (End.RIGHT, low), (End.LEFT, low))
    points = [one.placement.point((main.end_x(end, y, ZERO), y, ZERO)) for end, y in around]
    corners = tuple((point[axis].inches, point[2].inches) for point in points)
    runs = (*_runs(one.mark, line), *_heights((line.start[2], line.finish[2]), detailed, scribe))
    place = place_of(line.name, one.mark)
    return PlaneMember(line.name, corners, runs, place, stations=_tips(line, axis, corners))


def _tips(line: Line, axis: int, corners: tuple[Point, ...]) -> tuple[float, ...]:
    """Where the steel of a beam ends past its work points."""
    us, ends = [u for u, _ in corners], (line.start[axis], line.finish[axis])
    tips = []
    if min(us) < min(ends) - _LEAST:
        tips.append(min(us))
    if max(us) > max(ends) + _LEAST:
        tips.append(max(us))
    return tuple(tips)


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
