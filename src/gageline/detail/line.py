"""Members of the frame where they stand: a line in space with a section on it."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from gageline.detail.space import UP, Vec, along, cross, dot, inverse, minus, placement_of, unit
from gageline.job import ColumnEntry, MemberEntry, Path
from gageline.part import Placement
from gageline.steel import Section

__all__ = ["Frame", "Line", "Opening"]


@dataclass(frozen=True, slots=True)
class Line:
    """A member of the frame before it is detailed.

    Args:
        name: of the member in the document.
        stock: its section.
        entry: its table in the document.
        path: of that table.
        start: work point at its start, on the top of steel of a beam, at the foot of a column; inches.
        finish: the same at its end.
        ey: direction in which the section's depth is measured.
    """

    name: str
    stock: Section
    entry: MemberEntry | ColumnEntry
    path: Path
    start: Vec
    finish: Vec
    ey: Vec

    @property
    def is_column(self) -> bool:
        """Whether it stands upright."""
        return isinstance(self.entry, ColumnEntry)

    @property
    def ex(self) -> Vec:
        """Direction from start to end."""
        return unit(minus(self.finish, self.start))

    @property
    def ez(self) -> Vec:
        """Direction of the near side."""
        return cross(self.ex, self.ey)

    @property
    def run(self) -> float:
        """Length between the work points, inches."""
        away = minus(self.finish, self.start)
        return math.sqrt(dot(away, away))

    @property
    def plan(self) -> Vec:
        """Direction of a beam in the plan."""
        x, y, _ = self.ex
        return unit((x, y, 0.0))

    @property
    def slope(self) -> float:
        """Rise of a beam over its run in the plan."""
        away = minus(self.finish, self.start)
        return away[2] / math.hypot(away[0], away[1])

    @property
    def depth(self) -> float:
        """Of the section, inches."""
        return self.stock.d.inches

    @property
    def space(self) -> Placement:
        """The space of the member: x from its start work point, y up from its underside."""
        if self.is_column:
            return placement_of(along(self.start, self.ey, -self.depth / 2), self.ex, self.ey)
        return placement_of(along(self.start, self.ey, -self.depth), self.ex, self.ey)

    def plan_distance(self, point: Vec) -> float:
        """How far along the plan from the start a point lies, inches."""
        return dot(minus(point, self.start), self.plan)

    def top_at(self, point: Vec) -> float:
        """Elevation of a beam's top of steel beside a point of the plan, inches."""
        return self.start[2] + self.slope * self.plan_distance(point)

    def upright_depth(self) -> float:
        """Depth of a beam measured plumb, inches."""
        return self.depth / dot(self.ey, UP)

    def local(self, point: Vec) -> Vec:
        """A point in the member's space, inches."""
        return inverse(self.space, point)

    def moved(self, start: Vec, finish: Vec) -> Line:
        """The same member between other work points."""
        return replace(self, start=start, finish=finish)


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening in a floor.

    Args:
        name: of the opening.
        elevation: of its level, inches.
        corners: one after the other, x and y in the plan, inches; z is the elevation.
    """

    name: str
    elevation: float
    corners: tuple[Vec, ...]


@dataclass(frozen=True, slots=True)
class Frame:
    """Every member where it stands, supporting ones before those that are placed by them.

    Args:
        lines: members by name, in the order in which they can be placed.
        levels: elevations by name, inches.
        grid_x: grid lines across x by name: their x, inches.
        grid_y: grid lines across y by name: their y, inches.
        splices: elevations of the splices of columns by name, rising, inches.
        openings: in its floors.
        lost: where members that could not be placed would stand; None where not even that is known.
    """

    lines: dict[str, Line]
    levels: dict[str, float]
    grid_x: dict[str, float]
    grid_y: dict[str, float]
    splices: dict[str, tuple[float, ...]]
    openings: tuple[Opening, ...] = ()
    lost: tuple[Vec | None, ...] = ()

    @property
    def columns(self) -> tuple[Line, ...]:
        """The columns."""
        return tuple(line for line in self.lines.values() if line.is_column)

    @property
    def beams(self) -> tuple[Line, ...]:
        """All that is not a column."""
        return tuple(line for line in self.lines.values() if not line.is_column)
