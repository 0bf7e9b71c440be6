"""Signs of the plan: connections at the ends of members, columns to scale, and the legend of both."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gageline.sheets.boxes import line_height
from gageline.sheets.furniture import Block
from gageline.sheets.plan_members import BEARING, FREE, PlanColumn
from gageline.sheets.plan_regions import Region
from gageline.sheets.scene import Circle, Group, Item, Level, Line, Point, Polygon, Text
from gageline.sheets.style import FINE, Ink, Role
from gageline.sheets.wrap import wrap

__all__ = [
    "OPENING",
    "SIGN_WORDS",
    "PlanView",
    "column_sign",
    "end_sign",
    "free_end",
    "left_end",
    "legend",
    "set_off",
]

SIGN_WORDS = {
    "double angles": "double angles",
    "single angle": "single angle",
    "single plate": "single plate",
    "extended plate": "extended single plate",
    "end plate": "shear end plate",
    "seat": "seat angle with top clip",
    BEARING: "bears on a column",
}
"""Connection -> what the legend says of its sign."""

OPENING = "opening"
"""Stands with the connections of a sheet where a floor of it has an opening."""
_HALF = 1.7
_DOT, _DOT_AT = 0.75, 5.2  # mm: of a left end, past the widest sign of a connection
_LEAST_COLUMN = 2.4  # mm: a column smaller on paper cannot be read
_OFF = {
    "double angles": 0.9,
    "single angle": 0.9,
    "single plate": 1.7,
    "extended plate": 3.4,
    "end plate": 1.2,
    "seat": 2.0,
}


@dataclass(frozen=True, slots=True)
class PlanView:
    """A part of a plan on paper.

    Attributes:
        region: which part, inches.
        scale: paper for one inch, mm.
        left: paper x of its left edge, mm.
        bottom: paper y of its lower edge, mm.
    """

    region: Region
    scale: float
    left: float
    bottom: float

    def at(self, point: Point) -> Point:
        """The paper point of a point of the plan, mm."""
        return self.x(point[0]), self.y(point[1])

    def x(self, inches: float) -> float:
        """Paper x of a place along the plan, mm."""
        return self.left + (inches - self.region.left) * self.scale

    def y(self, inches: float) -> float:
        """Paper y of a place up the plan, mm."""
        return self.bottom - (inches - self.region.low) * self.scale


def set_off(kind: str) -> float:
    """How far from the support a member's line begins, mm."""
    return _OFF.get(kind, 0.0)


def end_sign(kind: str, at: Point, inward: Point) -> list[Item]:
    """The sign of a connection.

    Args:
        kind: of the connection.
        at: where the end meets its support, paper mm.
        inward: unit direction on paper from the support into the member.
    """
    ux, uy = inward

    def to(u: float, v: float) -> Point:
        return at[0] + ux * u - uy * v, at[1] + uy * u + ux * v

    def bar(u: float, low: float, high: float) -> Line:
        return Line(*to(u, low), *to(u, high), Role.CUT)

    if kind == "double angles":
        return [bar(0.9, -_HALF, _HALF)]
    if kind == "single angle":
        return [bar(0.9, 0.0, _HALF)]
    if kind == "single plate":
        return [Circle(*to(0.9, 0.0), 0.8, Role.FRAME, Ink.WHITE)]
    if kind == "extended plate":
        stem = Line(*to(0.0, 0.0), *to(1.8, 0.0), Role.FRAME)
        return [stem, Circle(*to(2.6, 0.0), 0.8, Role.FRAME, Ink.WHITE)]
    if kind == "end plate":
        corners = ((0.4, -_HALF), (1.2, -_HALF), (1.2, _HALF), (0.4, _HALF))
        return [Polygon(tuple(to(u, v) for u, v in corners), None, Ink.BLACK)]
    if kind == "seat":
        return [Polygon((to(0.2, 0.0), to(2.0, -1.3), to(2.0, 1.3)), None, Ink.BLACK)]
    if kind == BEARING:
        corners = ((-1.9, -1.9), (1.9, -1.9), (1.9, 1.9), (-1.9, 1.9))
        return [Polygon(tuple(to(u, v) for u, v in corners), Role.FRAME)]
    return []


def column_sign(column: PlanColumn, view: PlanView) -> list[Item]:
    """A column cut through, to scale as it is turned; dashed where it ends under the steel."""
    stock = column.stock
    d, b = stock.d.inches * view.scale, stock.bf.inches * view.scale
    grow = max(1.0, _LEAST_COLUMN / max(d, b))
    d, b = d * grow / 2, b * grow / 2
    dx, dy = column.depth
    x, y = view.at(column.at)

    def to(along: float, across: float) -> Point:
        return x + dx * along - dy * across, y - dy * along - dx * across

    role = Role.HIDDEN if column.below else Role.FRAME
    if column.is_box:
        wall = stock.tw.inches * view.scale * grow
        outer = tuple(to(u, v) for u, v in ((-d, -b), (d, -b), (d, b), (-d, b)))
        inner = tuple(to(u, v) for u, v in _ring(d - wall, b - wall))
        return [Polygon(outer, role, None if column.below else Ink.BLACK, openings=(inner,))]
    flange, web = stock.tf.inches * view.scale * grow, stock.tw.inches * view.scale * grow / 2
    half = [(d, b), (d, -b), (d - flange, -b), (d - flange, -web)]
    back = [(-u, v) for u, v in reversed(half)]
    corners = [*half, *back, *((u, -v) for u, v in reversed(back)), *((u, -v) for u, v in reversed(half))]
    return [Polygon(tuple(to(u, v) for u, v in corners), role, None if column.below else Ink.BLACK)]


def _ring(a: float, b: float) -> tuple[Point, ...]:
    return (-a, -b), (a, -b), (a, b), (-a, b)


def legend(kinds: Sequence[str], width: float) -> Block:
    """What the signs of a sheet stand for.

    Args:
        kinds: the connections on it, and `OPENING` where a floor has one.
        width: of the block, mm.
    """
    rows = [(_sample(kind), words) for kind, words in SIGN_WORDS.items() if kind in kinds]
    rows.append(
        ([Line(1.0, 0.0, 11.0, 0.0, Role.OUTLINE)], "member; all ends are shear connections, none moment")
    )
    dotted: list[Item] = [Line(1.0, 0.0, 11.0, 0.0, Role.OUTLINE), left_end((1.0, 0.0), (1.0, 0.0))]
    rows.append((dotted, "left end of its piece on the card, where its mark is written"))
    if OPENING in kinds:
        rows.append((_crossed(), "opening in the floor"))
    if FREE in kinds:
        rows.append((_cantilever(), "free end of a cantilever"))
    rows += [
        (_shape(below=False), "column through this level, to scale, web as it stands"),
        (_shape(below=True), "column that ends under this steel"),
        (_arrow(), "slope: the arrow points down"),
    ]
    items: list[Item] = []
    y, step = 0.0, line_height(FINE) * 1.15
    for sample, words in rows:
        lines = wrap(words, width - 15.0, FINE)
        items.append(Group(tuple(sample), 0.0, y + step / 2))
        items += [Text(14.0, y + n * step, line, FINE, level=Level.TOP) for n, line in enumerate(lines)]
        y += max(len(lines) * step, 4.2) + 0.7
    return Block(tuple(items), y)


def _sample(kind: str) -> list[Item]:
    support: list[Item] = [Line(2.0, -2.2, 2.0, 2.2, Role.OUTLINE)]
    if kind == BEARING:
        return [Line(0.5, 0.0, 11.0, 0.0, Role.OUTLINE), *end_sign(kind, (3.0, 0.0), (1.0, 0.0))]
    line = Line(2.0 + set_off(kind), 0.0, 11.0, 0.0, Role.OUTLINE)
    return [*support, line, *end_sign(kind, (2.0, 0.0), (1.0, 0.0))]


def _cantilever() -> list[Item]:
    return [Line(1.0, 0.0, 9.0, 0.0, Role.OUTLINE), *free_end((9.0, 0.0), (-1.0, 0.0))]


def free_end(at: Point, inward: Point) -> Iterator[Item]:
    """A short stroke across the free end of a cantilever."""
    ux, uy = inward
    yield Line(at[0] - uy * 1.2, at[1] + ux * 1.2, at[0] + uy * 1.2, at[1] - ux * 1.2, Role.FRAME)


def left_end(at: Point, inward: Point) -> Circle:
    """A dot on a member's line by the end that the card of its piece calls the left one."""
    return Circle(at[0] + inward[0] * _DOT_AT, at[1] + inward[1] * _DOT_AT, _DOT, None, Ink.BLACK)


def _crossed() -> list[Item]:
    corners = ((3.0, -2.0), (9.0, -2.0), (9.0, 2.0), (3.0, 2.0))
    return [
        Polygon(corners, Role.THIN),
        Line(*corners[0], *corners[2], Role.THIN),
        Line(*corners[1], *corners[3], Role.THIN),
    ]


def _shape(*, below: bool) -> list[Item]:
    if below:  # the dashes are too long for the outline of a small W
        return [Polygon(((3.5, -2.0), (8.5, -2.0), (8.5, 2.0), (3.5, 2.0)), Role.HIDDEN)]
    corners = (
        (4.0, -1.8), (8.0, -1.8), (8.0, -1.2), (6.2, -1.2), (6.2, 1.2), (8.0, 1.2),
        (8.0, 1.8), (4.0, 1.8), (4.0, 1.2), (5.8, 1.2), (5.8, -1.2), (4.0, -1.2),
    )  # fmt: skip
    return [Polygon(corners, Role.FRAME, Ink.BLACK)]


def _arrow() -> list[Item]:
    head = Polygon(((8.0, 0.0), (5.0, -1.0), (5.0, 1.0)), None, Ink.BLACK)
    return [Line(1.0, 0.0, 11.0, 0.0, Role.OUTLINE), head]
