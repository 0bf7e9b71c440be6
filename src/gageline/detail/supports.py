"""What supports each end of a member, found from the geometry alone."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from gageline.detail.line import Frame, Line
from gageline.detail.site import FaceKind, Site, face_plane, joint_of, web_offset
from gageline.detail.space import Vec, along, cross, dot, line_crossing, minus, sideways, unit
from gageline.job import MemberEntry, Note, say
from gageline.part import End, Face, extent_z
from gageline.steel import Profile
from gageline.units import Length, System

__all__ = ["Bearing", "Supports", "find_supports"]

_CELL = 120.0  # inches: members are looked up by squares of the plan
_EDGE = 1 / 16  # inches that a work point may lie past the outline of its support
_LEAST_SHARED = 3.0  # inches of depth that a beam and its support have in common at the least
_SHUT = 0.26  # sine of the least angle in the plan between a member and its support, 15 degrees
_TOUCH = 0.26  # inches between a column's top and the steel that bears on it
_NEAR_LOST = 24.0  # inches in the plan from an end to a column that could not be placed
_LYING = frozenset({Face.TOP, Face.BOTTOM})
_SIDES = (Face.TOP, Face.NEAR, Face.BOTTOM, Face.FAR)


@dataclass(frozen=True, slots=True)
class Bearing:
    """A member that passes over the top of a column, or ends on it.

    Args:
        member: the member.
        column: under it.
        run: from the member's start work point to the column's middle, in the plan, inches.
        end: the end that bears there, None in between.
    """

    member: Line
    column: Line
    run: float
    end: End | None


@dataclass(frozen=True, slots=True)
class Supports:
    """What carries what.

    Args:
        sites: ends of members that frame into the side of something.
        bearings: members on top of columns.
        free: ends that nothing supports because the document says so.
        through: ends whose overhang goes on through a column, which would carry them at its side.
    """

    sites: tuple[Site, ...]
    bearings: tuple[Bearing, ...]
    free: tuple[tuple[Line, End], ...]
    through: tuple[Site, ...] = ()


class _Squares:
    """Members by the squares of the plan that they pass through."""

    def __init__(self, lines: tuple[Line, ...]) -> None:
        self.held: dict[tuple[int, int], dict[str, Line]] = defaultdict(dict)
        for line in lines:
            before, after = (hung_over(line, end) for end in End)
            start = along(line.start, line.ex, -before)
            away = minus(along(line.finish, line.ex, after), start)
            steps = max(1, math.ceil(math.hypot(away[0], away[1]) / (_CELL / 2)))
            for step in range(steps + 1):
                self.held[_square(along(start, away, step / steps))][line.name] = line

    def near(self, point: Vec) -> Iterator[Line]:
        """Members that may pass a point."""
        i, j = _square(point)
        found: dict[str, Line] = {}
        for square in ((i + a, j + b) for a in (-1, 0, 1) for b in (-1, 0, 1)):
            found |= self.held.get(square, {})
        yield from found.values()


def hung_over(line: Line, end: End) -> float:
    """How far a member goes on past its work point as a cantilever, inches."""
    over = joint_of(line, end).overhang
    return over.inches if over else 0.0


def _square(point: Vec) -> tuple[int, int]:
    return math.floor(point[0] / _CELL), math.floor(point[1] / _CELL)


def find_supports(frame: Frame, system: System) -> tuple[Supports, list[Note]]:
    """What supports every end of every beam, and notes of those that reach nothing.

    Args:
        frame: every member where it stands.
        system: the units that messages are written in.
    """
    squares = _Squares(tuple(frame.lines.values()))
    notes: list[Note] = []
    sites: list[Site] = []
    bearings: list[Bearing] = []
    free: list[tuple[Line, End]] = []
    through: list[Site] = []
    for beam in frame.beams:
        over = list(_passed(beam, squares))
        bearings.extend(over)
        for end in End:
            joint = joint_of(beam, end)
            site = None if joint.connection == "bearing" else _site(beam, end, squares)
            if joint.overhang or joint.connection == "free":
                free.append((beam, end))
                through.extend([site] if joint.overhang and site and site.support.is_column else [])
            elif site is not None:
                sites.append(site)
            elif not any(one.end is end for one in over) and not _may_be_lost(frame, beam, end):
                word = "start" if end is End.LEFT else "end"
                notes.append(((*beam.path, word), _nothing_there(beam, end, squares, system)))
    notes.extend(_in_one_place(frame, squares))
    return Supports(tuple(sites), tuple(bearings), tuple(free), tuple(through)), notes


def _may_be_lost(frame: Frame, beam: Line, end: End) -> bool:
    """Whether what would carry an end may be among the members that could not be placed.

    Those have problems that are said already; that nothing is there would only follow from them.
    """
    point = work_point(beam, end)
    return any(place is None or math.dist(place[:2], point[:2]) < _NEAR_LOST for place in frame.lost)


def work_point(line: Line, end: End) -> Vec:
    """The work point of an end."""
    return line.start if end is End.LEFT else line.finish


def entered(line: Line, end: End) -> Vec:
    """The place of an end as the document gives it, before it is set off sideways."""
    entry = line.entry
    off = entry.offset.inches if isinstance(entry, MemberEntry) and entry.offset else 0.0
    return along(work_point(line, end), sideways(line.plan), -off)


def _reaches(beam: Line, end: End, other: Line) -> bool:
    """Whether an end lies within the outline of a member, before or after it is set off sideways."""
    return _inside(entered(beam, end), other) or _inside(work_point(beam, end), other)


def _inside(point: Vec, other: Line) -> bool:
    """Whether a point of the plan lies within the outline of a member."""
    away = minus(point, other.start)
    across = dot(away, other.ez)
    if other.is_column:
        deep, wide = other.stock.d.inches / 2 + _EDGE, other.stock.bf.inches / 2 + _EDGE
        return abs(dot(away, other.ey)) <= deep and abs(across) <= wide
    low, high = (side.inches for side in extent_z(other.stock))
    return low - _EDGE <= across <= high + _EDGE


def _passed(beam: Line, squares: _Squares) -> Iterator[Bearing]:
    """Columns whose tops a beam lies on."""
    run = math.hypot(*minus(beam.finish, beam.start)[:2])
    seen: set[str] = set()
    steps = max(1, math.ceil(run / _CELL))
    for step in range(steps + 1):
        for column in squares.near(along(beam.start, beam.plan, run * step / steps)):
            if not column.is_column or column.name in seen:
                continue
            seen.add(column.name)
            at = beam.plan_distance(column.finish)
            end = next((one for one in End if _reaches(beam, one, column)), None)
            aside = abs(dot(minus(column.finish, beam.start), sideways(beam.plan)))
            under = beam.top_at(column.finish) - beam.upright_depth()
            if (
                (end is not None or 0.0 < at < run)
                and aside < beam.stock.bf.inches / 2
                and abs(under - column.finish[2]) < _TOUCH
            ):
                yield Bearing(beam, column, at, end)


def _site(beam: Line, end: End, squares: _Squares) -> Site | None:
    """The face that an end meets: one that half of its depth meets, columns before beams, the nearest."""
    point = work_point(beam, end)
    found: list[tuple[bool, bool, float, Site]] = []
    for other in squares.near(point):
        if other.name == beam.name:
            continue
        site = _column_site(beam, end, other) if other.is_column else _girder_site(beam, end, other)
        if site is not None:
            slight = _shared_depth(site) < beam.upright_depth() / 2
            found.append((slight, not other.is_column, math.dist(site.point[:2], point[:2]), site))
    return min(found, key=lambda item: item[:3])[3] if found else None


def _shared_depth(site: Site) -> float:
    """How much of a beam's depth its support has beside it, inches."""
    top = site.point[2]
    return min(top, site.support_top) - max(top - site.member.upright_depth(), site.support_bottom)


def _girder_site(beam: Line, end: End, girder: Line) -> Site | None:
    point, inward = work_point(beam, end), _inward(beam, end)
    if abs(cross(inward, girder.plan)[2]) < _SHUT:
        return None
    ahead = line_crossing(point, inward, girder.start, sideways(girder.plan))
    if ahead is None or not _reaches(beam, end, girder):
        return None
    crossing = along(point, inward, ahead)
    run = math.hypot(*minus(girder.finish, girder.start)[:2])
    before, after = (hung_over(girder, one) for one in End)
    if not -before - 1.0 < girder.plan_distance(crossing) < run + after + 1.0:
        return None
    top, girder_top = beam.top_at(crossing), girder.top_at(crossing)
    shared = min(top, girder_top) - max(top - beam.upright_depth(), girder_top - girder.upright_depth())
    if shared < _LEAST_SHARED:
        return None
    face = Face.NEAR if dot(inward, girder.ez) > 0 else Face.FAR
    box = girder.stock.profile is Profile.BOX
    return _on_face(beam, end, girder, face, FaceKind.WALL if box else FaceKind.GIRDER_WEB)


def _column_site(beam: Line, end: End, column: Line) -> Site | None:
    point, inward = work_point(beam, end), _inward(beam, end)
    away = minus(column.start, point)
    aside = abs(dot(away, sideways(inward)))
    size = max(column.stock.d, column.stock.bf).inches
    if aside > size / 2 or not _reaches(beam, end, column):
        return None
    top = beam.top_at(point)
    shared = min(top, column.finish[2]) - max(top - beam.upright_depth(), column.start[2])
    if shared < _LEAST_SHARED:
        return None
    face = max(_SIDES, key=lambda one: round(dot(face_plane(column, one)[1], inward), 9))
    if column.stock.profile is Profile.BOX:
        kind = FaceKind.WALL
    else:
        kind = FaceKind.COLUMN_FLANGE if face in _LYING else FaceKind.COLUMN_WEB
    return _on_face(beam, end, column, face, kind)


def _on_face(beam: Line, end: End, support: Line, face: Face, kind: FaceKind) -> Site | None:
    on, out = face_plane(support, face)
    level = unit((out[0], out[1], 0.0))
    middle = along(work_point(beam, end), beam.ez, web_offset(beam.stock))
    ahead = line_crossing(middle, beam.plan, on, level)
    if ahead is None:
        return None
    x, y, _ = along(middle, beam.plan, ahead)
    return Site(beam, end, support, face, kind, (x, y, beam.top_at((x, y, 0.0))), level)


def _inward(beam: Line, end: End) -> Vec:
    x, y, _ = beam.plan
    return (x, y, 0.0) if end is End.LEFT else (-x, -y, 0.0)


def _nothing_there(beam: Line, end: End, squares: _Squares, system: System) -> str:
    """What is near an end that reaches nothing, and why it is not reached where it is at hand."""
    point = work_point(beam, end)
    if joint_of(beam, end).connection == "bearing":
        return _bears_on_nothing(beam, end, squares, system)
    near = sorted(
        (_gap(point, other), other.name, other) for other in squares.near(point) if other.name != beam.name
    )
    remedy = 'move it there, or give overhang or connection = "free"'
    if not near:
        return (
            f"nothing supports it and no member is within {say(Length.from_inches(_CELL), system)}: {remedy}"
        )
    here = sorted((one for one in near if one[0] < 1.0), key=lambda one: not one[2].is_column)
    for _, name, other in here:
        if _ends_together(beam, end, other):
            return (
                f'nothing supports it; "{name}" ends there too and nothing stands under the two: '
                f"put a column there, or {remedy}"
            )
        if why := _why_not(beam, end, other, system):
            return f'nothing supports it; "{name}" is there, but {why}: change one of them, or {remedy}'
    some = [f'"{name}", {say(Length.from_inches(gap), system)} away' for gap, name, _ in near[:3]]
    nearest = f"the nearest is {some[0]}" if len(some) == 1 else f"the nearest are {'; '.join(some)}"
    return f"nothing supports it; {nearest}, in the plan: {remedy}, or check the tops of steel"


def _bears_on_nothing(beam: Line, end: End, squares: _Squares, system: System) -> str:
    """Why an end that should bear on a column does not."""
    site, point = _site(beam, end, squares), work_point(beam, end)
    under = say(Length.from_inches(beam.top_at(point) - beam.upright_depth()), system)
    near = sorted((_gap(point, other), other.name) for other in squares.near(point) if other.is_column)
    beside = ""
    if site:
        beside = f', but only the side of "{site.support.name}" is there'
    elif near:
        gap, name = near[0]
        beside = f', the nearest is "{name}", {say(Length.from_inches(gap), system)} away'
    other = "leave connection out" if site else "choose another connection"
    return (
        f'nothing supports it; connection = "bearing" wants a column to end under it, at {under}{beside}: '
        f'put one there with under = "{beam.name}", or {other}'
    )


def _ends_together(beam: Line, end: End, other: Line) -> bool:
    """Whether a member ends where an end does, in line with it."""
    if other.is_column or abs(cross(_inward(beam, end), other.plan)[2]) >= _SHUT:
        return False
    point = work_point(beam, end)
    return min(math.dist(point[:2], work_point(other, one)[:2]) for one in End) < 1.0


def _why_not(beam: Line, end: End, other: Line, system: System) -> str:
    """Why a member that an end comes to does not carry it."""
    if not other.is_column and abs(cross(_inward(beam, end), other.plan)[2]) < _SHUT:
        return "the two meet at less than 15 degrees"
    point = work_point(beam, end)
    top = beam.top_at(point)
    low, high = (
        (other.start[2], other.finish[2])
        if other.is_column
        else (other.top_at(point) - other.upright_depth(), other.top_at(point))
    )
    base = top - beam.upright_depth()
    if min(top, high) - max(base, low) >= _LEAST_SHARED:
        return ""
    texts = (say(Length.from_inches(z), system) for z in (base, top, low, high))
    return "this end is from {} to {} in height and that from {} to {}".format(*texts)


def _gap(point: Vec, other: Line) -> float:
    """The distance in the plan from a point to a member's line, inches."""
    if other.is_column:
        return math.dist(point[:2], other.start[:2])
    run = math.hypot(*minus(other.finish, other.start)[:2])
    foot = along(other.start, other.plan, min(max(other.plan_distance(point), 0.0), run))
    return math.dist(point[:2], foot[:2])


def _in_one_place(frame: Frame, squares: _Squares) -> Iterator[Note]:
    """Members that lie in one another."""
    order = {name: number for number, name in enumerate(frame.lines)}
    for line in frame.lines.values():
        middle = along(line.start, minus(line.finish, line.start), 0.5)
        for other in squares.near(middle):
            if order[other.name] < order[line.name] and _coincide(line, other):
                yield (
                    line.path,
                    f'"{line.name}" and "{other.name}" stand in one place: move one or take it out',
                )


def _coincide(one: Line, two: Line) -> bool:
    if one.is_column and two.is_column:
        apart = math.dist(one.start[:2], two.start[:2])
        shared = min(one.finish[2], two.finish[2]) - max(one.start[2], two.start[2])
        return apart < min(one.stock.bf, two.stock.bf).inches / 2 and shared > 1.0
    if one.is_column or two.is_column or abs(cross(one.plan, two.plan)[2]) > 0.01:
        return False
    aside = abs(dot(minus(two.start, one.start), sideways(one.plan)))
    ends = sorted(one.plan_distance(point) for point in (two.start, two.finish))
    run = math.hypot(*minus(one.finish, one.start)[:2])
    lap = min(ends[1], run) - max(ends[0], 0.0)
    if aside > 0.5 or lap < 12.0:
        return False
    top, other = one.start[2], two.top_at(one.start)
    return min(top, other) > max(top - one.depth, other - two.depth)
