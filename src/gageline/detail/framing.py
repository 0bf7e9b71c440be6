"""From the frame's tables to lines in space: grid, levels, points, columns, members."""

from __future__ import annotations

import difflib
import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from functools import partial
from itertools import accumulate, pairwise
from typing import Literal, TypeVar

from shapely import Polygon

from gageline.detail.line import Frame, Line, Opening
from gageline.detail.space import Vec, along, cross, dot, minus, sideways, turned, unit
from gageline.errors import ValueProblem
from gageline.job import (
    ColumnEntry,
    FrameEntry,
    GridEntry,
    GridLinesEntry,
    LevelEntry,
    MemberEntry,
    Note,
    OpeningInFrameEntry,
    Path,
    PlaceEntry,
    PointEntry,
    say,
    stock_named,
)
from gageline.steel import Profile, Section
from gageline.units import Length, System, Unit, parse_length

__all__ = ["frame_of"]

_BEAMS = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.BOX})
_COLUMNS = frozenset({Profile.I_SHAPE, Profile.BOX})
_SHORTEST = 6.0  # inches between the work points of a member
_SPLICE_ABOVE = 48.0  # inches over its level where the document says nothing (common practice, no source)
_PAST = 1 / 16  # inches that a place may lie past the end of its member
_STEEPEST = 1.0  # rise over run of a beam
Table = ColumnEntry | MemberEntry
Made = TypeVar("Made")


class _Stuck(Exception):
    """What this member is placed by has a problem of its own, which is said already."""


@dataclass(slots=True)
class _Framing:
    """The frame's tables on their way to lines."""

    entry: FrameEntry
    system: System
    notes: list[Note] = field(default_factory=list)
    tables: dict[str, tuple[Path, Table]] = field(default_factory=dict)
    points: dict[str, PlaceEntry] = field(default_factory=dict)
    levels: dict[str, float] = field(default_factory=dict)
    grid: tuple[dict[str, float], dict[str, float]] = field(default_factory=lambda: ({}, {}))
    lines: dict[str, Line] = field(default_factory=dict)
    failed: set[str] = field(default_factory=set)
    waiting: list[str] = field(default_factory=list)

    def said(self, path: Path, make: Callable[[], Made]) -> Made | None:
        """What is made of a table, or None with what is wrong with it noted."""
        try:
            return make()
        except ValueProblem as wrong:
            self.notes.append((path, str(wrong)))
        except _Stuck:
            pass
        return None

    def line(self, name: str) -> Line:
        """The line of a member, placed now if it is not yet."""
        if name not in self.tables:
            raise ValueProblem(
                f'"{name}" names no member or column of the frame: {nearest(name, self.tables)}'
            )
        if name in self.waiting:
            round_trip = " → ".join([*self.waiting[self.waiting.index(name) :], name])
            raise ValueProblem(
                f"members are placed by each other in a circle, {round_trip}: place one by a point"
            )
        if name in self.failed:
            raise _Stuck
        if name not in self.lines:
            here, table = self.tables[name]
            self.waiting.append(name)
            try:
                if isinstance(table, ColumnEntry):
                    self.lines[name] = self._column(table, here)
                else:
                    self.lines[name] = self._beam(table, here)
            except (ValueProblem, _Stuck):
                self.failed.add(name)
                raise
            finally:
                self.waiting.pop()
        return self.lines[name]

    def _beam(self, table: MemberEntry, path: Path) -> Line:
        stock = self._section(table.stock, _BEAMS, "a beam")
        one, two = self._place(table.from_), self._place(table.to)
        away = minus(two, one)
        flat = (away[0], away[1], 0.0)
        run = (flat[0] ** 2 + flat[1] ** 2) ** 0.5
        if run < _SHORTEST:
            raise ValueProblem(
                f"from and to are {self._say(run)} apart: give places {self._say(_SHORTEST)} apart or more"
            )
        aside = sideways(unit(flat))
        if table.offset is not None:
            one, two = (along(place, aside, table.offset.inches) for place in (one, two))
        top = self._top(table, one)
        rise = self._rise(table)
        start = (one[0], one[1], top)
        finish = (two[0], two[1], top + rise * run)
        ey = cross(aside, unit(minus(finish, start)))
        return Line(table.name, stock, table, path, start, finish, unit((-ey[0], -ey[1], -ey[2])))

    def _rise(self, table: MemberEntry) -> float:
        if table.rise is not None and table.fall is not None:
            raise ValueProblem("rise and fall are both given: leave out one")
        up = float(table.rise.ratio) if table.rise else 0.0
        rise = up - (float(table.fall.ratio) if table.fall else 0.0)
        if abs(rise) > _STEEPEST:
            raise ValueProblem(
                f"a slope of {abs(rise) * 12:g} in 12 is steeper than 12 in 12: enter it as drawn"
            )
        return rise

    def _top(self, table: MemberEntry, one: Vec) -> float:
        drop = table.drop.inches if table.drop else 0.0
        if (table.top is None) == (table.below is None):
            raise ValueProblem("its top of steel is needed once: give top, or below and drop")
        if table.below is not None:
            other = self.line(table.below)
            if other.is_column:
                raise ValueProblem(f'"{table.below}" is a column: name a beam, or give top')
            return other.top_at(one) - drop
        return self._level(table.top or "") - drop

    def _column(self, table: ColumnEntry, path: Path) -> Line:
        stock = self._section(table.stock, _COLUMNS, "a column")
        x, y, _ = self._place(table.at)
        base = self._level(table.base)
        if (table.top is None) == (table.under is None):
            raise ValueProblem("its top is needed once: give top, or under and the member that bears on it")
        if table.under is not None:
            beam = self.line(table.under)
            if beam.is_column:
                raise ValueProblem(f'"{table.under}" is a column: name a beam, or give top')
            self._passes_over(beam, (x, y, 0.0), stock)
            top = beam.top_at((x, y, 0.0)) - beam.upright_depth()
        else:
            top = self._level(table.top or "") - (table.top_drop.inches if table.top_drop else 0.0)
        cap = table.cap_plate
        if cap is not None and (cap.pitch is None) != (cap.gage is None):
            raise ValueProblem("cap_plate gives one of pitch and gage: holes want both, give both or neither")
        if top - base < _SHORTEST:
            raise ValueProblem(
                f"its top, {self._say(top)}, is not above its base, {self._say(base)}: change base or top"
            )
        return Line(table.name, stock, table, path, (x, y, base), (x, y, top), turned(float(table.turn)))

    def _passes_over(self, beam: Line, at: Vec, column: Section) -> None:
        """Refuse a column that the beam it is under does not pass over."""
        along_it, run = beam.plan_distance(at), math.hypot(*minus(beam.finish, beam.start)[:2])
        aside = abs(dot(minus(at, beam.start), sideways(beam.plan)))
        past = max(-along_it, along_it - run)
        if aside >= beam.stock.bf.inches / 2:
            raise ValueProblem(
                f'"{beam.name}" does not pass over it: its middle is {self._say(aside)} beside it: move the '
                "column under it, or give top"
            )
        if past > column.d.inches:
            raise ValueProblem(
                f'"{beam.name}" does not reach over it: it ends {self._say(past)} before it: move the column '
                "under it, lengthen the beam, or give top"
            )

    def lost(self, name: str) -> Vec | None:
        """Where a member that could not be placed would stand; None of a beam, or where that is wrong too."""
        _, table = self.tables[name]
        if not isinstance(table, ColumnEntry):
            return None
        try:
            return self._place(table.at)
        except (ValueProblem, _Stuck):
            return None

    def splices(self, line: Line, table: ColumnEntry) -> tuple[float, ...]:
        """The elevations of a column's splices, rising."""
        found: list[float] = []
        for splice in table.splices:
            above = _SPLICE_ABOVE if splice.above is None else splice.above.inches
            found.append(self._level(splice.at) + above)
        found.sort()
        for lower, upper in pairwise(found):
            if upper - lower < _SHORTEST:
                raise ValueProblem(
                    f"two splices are {self._say(upper - lower)} apart: a shaft between them wants "
                    f"{self._say(_SHORTEST)} at the least"
                )
        low, high = line.start[2] + _SHORTEST, line.finish[2] - _SHORTEST
        for z in found:
            if not low < z < high:
                raise ValueProblem(
                    f"a splice at {self._say(z)} is not between base and top, {self._say(line.start[2])} and "
                    f"{self._say(line.finish[2])}: change at or above"
                )
        return tuple(found)

    def opening(self, table: OpeningInFrameEntry) -> Opening:
        """An opening, its corners in the plan at the elevation of its level."""
        level = self._level(table.level)
        corners = [self._place(place)[:2] for place in table.corners]
        if len(corners) < 2:
            raise ValueProblem("an opening goes around an area: give two opposite corners, or all of them")
        if len(corners) == 2:
            (x1, y1), (x2, y2) = corners
            corners = [(x1, y1), (x2, y1), (x2, y2), (x1, y2)]
        shape = Polygon(corners)
        if not shape.is_valid or shape.area < _SHORTEST**2:
            raise ValueProblem(
                "its corners do not go around an area: give two opposite corners that differ in x and y, "
                "or each corner after the one beside it"
            )
        return Opening(table.name, level, tuple((x, y, level) for x, y in corners))

    def _section(self, text: str, profiles: frozenset[Profile], what: str) -> Section:
        stock = stock_named(text, self.system)
        if not isinstance(stock, Section) or stock.profile not in profiles:
            kinds = "W, S, C or rectangular HSS" if profiles is _BEAMS else "W or rectangular HSS"
            raise ValueProblem(f"{stock.designation} is no section for {what} of a frame: use {kinds}")
        return stock

    def _level(self, text: str) -> float:
        if text in self.levels:
            return self.levels[text]
        try:
            return parse_signed(text, self.system)
        except ValueProblem:
            hint = nearest(text, self.levels)
            raise ValueProblem(f'"{text}" is neither a level nor an elevation: {hint}') from None

    def _place(self, place: PlaceEntry) -> Vec:
        given = [name for name in ("point", "on", "between") if getattr(place, name) is not None]
        if len(given) != 1:
            raise ValueProblem("a place is given by one of point, on and between: give one")
        column = place.on is not None and self.line(place.on).is_column
        if column and place.at:
            raise ValueProblem(
                f'at {self._say(place.at.inches)} on "{place.on}" means nothing, a column stands in one '
                "place: leave at out, and give x and y for a place beside it"
            )
        if not column and (place.at is None) != (given[0] == "point"):
            raise ValueProblem("at goes with on or between: give the distance from their start")
        x, y, z = self._spot(place)
        return (x + (place.x.inches if place.x else 0.0), y + (place.y.inches if place.y else 0.0), z)

    def _spot(self, place: PlaceEntry) -> Vec:
        at = place.at.inches if place.at else 0.0
        if place.on is not None:
            line = self.line(place.on)
            if line.is_column:
                return line.start
            self._on(line, at)
            return along(line.start, line.plan, at)
        if place.between is not None:
            one, two = (self._named(name) for name in place.between)
            if one == two:
                raise ValueProblem("the two points of between are one: name two")
            apart = math.dist(one, two)
            if not -_PAST <= at <= apart + _PAST:
                names = " and ".join(f'"{name}"' for name in place.between)
                raise ValueProblem(
                    f"at {self._say(at)} is not between {names}: give at from 0 to {self._say(apart)}, or a "
                    "point farther off"
                )
            return along(one, unit(minus(two, one)), at)
        return self._named(place.point or "")

    def _on(self, line: Line, at: float) -> None:
        """Raise what is wrong with a place that is not on its member, overhangs included."""
        run = dot(minus(line.finish, line.start), line.plan)
        first, last = (self._overhang(line, which) for which in ("start", "end"))
        if not -first - _PAST <= at <= run + last + _PAST:
            reach = f"{self._say(-first)} to {self._say(run + last)}" if first else self._say(run + last)
            limit = f"give at as {reach}" if first else f"give at up to {reach}"
            raise ValueProblem(
                f'at {self._say(at)} is not on "{line.name}": {limit}, or lengthen "{line.name}"'
            )

    def _overhang(self, line: Line, which: Literal["start", "end"]) -> float:
        hang = line.entry.joint(which).overhang if isinstance(line.entry, MemberEntry) else None
        return hang.inches if hang else 0.0

    def _named(self, name: str) -> Vec:
        if name in self.points:
            place = self.points[name]
            step = f"point {name}"
            if step in self.waiting:
                raise ValueProblem(f'point "{name}" is placed by itself: place it by a crossing')
            self.waiting.append(step)
            try:
                return self._place(place)
            finally:
                self.waiting.pop()
        one, _, two = name.partition("/")
        xs, ys = self.grid
        if one in xs and two in ys:
            return (xs[one], ys[two], 0.0)
        if two in xs and one in ys:
            return (xs[two], ys[one], 0.0)
        crossings = {f"{x}/{y}": 0 for x in xs for y in ys}
        known: Iterable[str] = [*self.points, *crossings]
        raise ValueProblem(f'"{name}" is no point and no crossing of the grid: {nearest(name, known)}')

    def _say(self, inches: float) -> str:
        return say(Length.from_inches(inches), self.system)


def parse_signed(text: str, system: System) -> float:
    """An elevation, which may be below zero, in inches."""
    unit_ = Unit.MM if system is System.MM else Unit.INCH
    clean = text.strip()
    if clean.startswith(("-", "−")):
        return -parse_length(clean[1:].strip(), unit_).inches
    return parse_length(clean, unit_).inches


def nearest(name: str, known: Iterable[str]) -> str:
    """What to say of a name that is not known."""
    names = list(known)
    close = difflib.get_close_matches(name, names, n=1, cutoff=0.5)
    if close:
        return f'did you mean "{close[0]}"?'
    return f"use one of {', '.join(names[:12])}" if names else "none is given yet"


def _grid(grid: GridEntry | None, notes: list[Note]) -> tuple[dict[str, float], dict[str, float]]:
    def lines(way: str, entry: GridLinesEntry) -> dict[str, float]:
        if len(entry.spacing) != len(entry.names) - 1:
            message = (
                f"{len(entry.names)} names want {len(entry.names) - 1} spacings, not {len(entry.spacing)}: "
                "give one from each line to the next"
            )
            notes.append((("frame", "grid", way, "spacing"), message))
            return {}
        if len(set(entry.names)) != len(entry.names):
            notes.append((("frame", "grid", way, "names"), "two lines have one name: name each line once"))
        start = entry.start.inches if entry.start else 0.0
        stands = accumulate((spacing.inches for spacing in entry.spacing), initial=start)
        return dict(zip(entry.names, stands, strict=True))

    if grid is None:
        return {}, {}
    xs, ys = lines("x", grid.x), lines("y", grid.y)
    notes.extend(
        (("frame", "grid", "y", "names"), f'"{name}" is a line of x and of y: name each line once')
        for name in sorted(set(xs) & set(ys))
    )
    return xs, ys


def _once(items: Iterable[tuple[Path, str]], notes: list[Note]) -> None:
    """Capitals make no difference: the names of members become marks, which are painted in them."""
    seen: dict[str, str] = {}
    for path, name in items:
        other = seen.get(name.casefold())
        if other is not None:
            twice = "is used twice" if other == name else f'and "{other}" are alike when painted in capitals'
            notes.append(((*path, "name"), f'"{name}" {twice}: give each a name of its own'))
        seen.setdefault(name.casefold(), name)


def frame_of(entry: FrameEntry, system: System) -> tuple[Frame, list[Note]]:
    """The frame of its tables, as far as they are right, and what is wrong with them.

    Args:
        entry: the frame's tables.
        system: the job's units.

    Returns:
        The members that could be placed, and notes of path and message.
    """
    notes: list[Note] = []
    levels: list[LevelEntry] = list(entry.levels)
    points: list[PointEntry] = list(entry.points)
    tables: list[tuple[Path, Table]] = [
        *((("frame", "column", n), column) for n, column in enumerate(entry.columns)),
        *((("frame", "member", n), member) for n, member in enumerate(entry.members)),
    ]
    _once(((path, table.name) for path, table in tables), notes)
    _once(((("frame", "level", n), level.name) for n, level in enumerate(levels)), notes)
    _once(((("frame", "point", n), point.name) for n, point in enumerate(points)), notes)
    _once(((("frame", "opening", n), opening.name) for n, opening in enumerate(entry.openings)), notes)
    framing = _Framing(
        entry,
        system,
        notes,
        {table.name: (path, table) for path, table in reversed(tables)},
        {point.name: point.at for point in points},
        {level.name: level.elevation.inches for level in levels},
        _grid(entry.grid, notes),
    )
    for path, table in tables:
        framing.said(path, partial(framing.line, table.name))
    splices: dict[str, tuple[float, ...]] = {}
    for line in framing.lines.values():
        if isinstance(line.entry, ColumnEntry) and line.entry.splices:
            found = framing.said((*line.path, "splices"), partial(framing.splices, line, line.entry))
            splices[line.name] = found or ()
    openings = [
        framing.said(("frame", "opening", n), partial(framing.opening, table))
        for n, table in enumerate(entry.openings)
    ]
    return Frame(
        framing.lines,
        framing.levels,
        *framing.grid,
        splices,
        tuple(one for one in openings if one),
        tuple(framing.lost(name) for name in sorted(framing.failed)),
    ), notes
