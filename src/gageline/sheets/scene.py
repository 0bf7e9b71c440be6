"""The drawing itself: what stands where on the paper, before any file format.

Coordinates are paper millimetres from the top left corner of the page, x to the right, y **down**.
Angles are degrees counter-clockwise as the reader sees them, from the right of the paper.
Only the size of text is in points.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from gageline.sheets.style import BODY, Hatch, Ink, Role, Weight

__all__ = [
    "Anchor",
    "Arc",
    "Box",
    "Circle",
    "Group",
    "Item",
    "Level",
    "Line",
    "Page",
    "Paper",
    "Point",
    "Polygon",
    "Polyline",
    "Sheet",
    "Text",
    "Typeset",
    "leaves",
]

Point = tuple[float, float]
"""(x, y) in paper mm, y down."""


class Anchor(StrEnum):
    """Which point of a text along its line of writing lies at its x, y."""

    LEFT = "left"
    CENTRE = "centre"
    RIGHT = "right"


class Level(StrEnum):
    """Which height of a text lies at its x, y."""

    TOP = "top"
    MIDDLE = "middle"
    BASELINE = "baseline"
    BOTTOM = "bottom"


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle of paper, in mm.

    Attributes:
        left: its left edge.
        top: its upper edge (the smaller y).
        right: its right edge.
        bottom: its lower edge.
    """

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """From left to right, mm."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom, mm."""
        return self.bottom - self.top


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line from (x1, y1) to (x2, y2)."""

    x1: float
    y1: float
    x2: float
    y2: float
    role: Role = Role.OUTLINE


@dataclass(frozen=True, slots=True)
class Polyline:
    """A line through several points, open at its ends."""

    points: tuple[Point, ...]
    role: Role = Role.OUTLINE


@dataclass(frozen=True, slots=True)
class Polygon:
    """A closed shape, perhaps with openings in it.

    Attributes:
        points: its corners, not repeating the first.
        role: the pen of its edge; None for no edge.
        fill: what it is filled with; None for nothing.
        hatch: the lines that fill it; None for none.
        openings: closed shapes cut out of fill and hatching, drawn with the same pen.
    """

    points: tuple[Point, ...]
    role: Role | None = Role.OUTLINE
    fill: Ink | None = None
    hatch: Hatch | None = None
    openings: tuple[tuple[Point, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Circle:
    """A full circle about (x, y)."""

    x: float
    y: float
    radius: float
    role: Role | None = Role.OUTLINE
    fill: Ink | None = None


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle about (x, y), counter-clockwise from `start` to `end` degrees."""

    x: float
    y: float
    radius: float
    start: float
    end: float
    role: Role = Role.OUTLINE


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text.

    Attributes:
        x: the anchor point, mm.
        y: the anchor point, mm.
        text: what it says; one line, only characters that the font has.
        size: points.
        weight: regular or bold.
        anchor: which point along the line of writing is at x, y.
        level: which height of the text is at x, y (middle = half the height of the capitals).
        rotation: degrees counter-clockwise about x, y; 90 reads from the bottom to the top.
        ink: what it is printed in.
    """

    x: float
    y: float
    text: str
    size: float = BODY
    weight: Weight = Weight.REGULAR
    anchor: Anchor = Anchor.LEFT
    level: Level = Level.BASELINE
    rotation: float = 0.0
    ink: Ink = Ink.BLACK


@dataclass(frozen=True, slots=True)
class Group:
    """Items that belong together, shifted as one by (dx, dy).

    Attributes:
        items: what is in it, drawn in this order.
        dx: shift to the right, mm.
        dy: shift down, mm.
        name: what it is, for whoever reads the SVG; may be empty.
    """

    items: tuple[Item, ...]
    dx: float = 0.0
    dy: float = 0.0
    name: str = ""


Item = Line | Polyline | Polygon | Circle | Arc | Text | Group
"""Anything that can stand on a page."""


class Paper(StrEnum):
    """The papers of the shop's printer, and the larger ones that plans are printed on."""

    LETTER = "letter"
    A4 = "a4"
    TABLOID = "tabloid"
    A3 = "a3"

    def size(self, *, landscape: bool = False) -> tuple[float, float]:
        """Width and height in mm (ISO 216; 8 1/2 by 11 in for letter, 11 by 17 in for tabloid)."""
        short, long = {
            Paper.LETTER: (215.9, 279.4),
            Paper.A4: (210.0, 297.0),
            Paper.TABLOID: (279.4, 431.8),
            Paper.A3: (297.0, 420.0),
        }[self]
        return (long, short) if landscape else (short, long)


@dataclass(frozen=True, slots=True)
class Page:
    """A drawn page.

    Attributes:
        items: what is drawn, in this order, in mm from the top left corner of the paper.
        paper: which paper.
        landscape: the long side lies across.
        margin: free edge on all four sides, mm; most printers need 6.
        title: what the page is, for the reader of the file.
    """

    items: tuple[Item, ...]
    paper: Paper = Paper.LETTER
    landscape: bool = False
    margin: float = 10.0
    title: str = ""

    @property
    def width(self) -> float:
        """Width of the paper, mm."""
        return self.paper.size(landscape=self.landscape)[0]

    @property
    def height(self) -> float:
        """Height of the paper, mm."""
        return self.paper.size(landscape=self.landscape)[1]

    @property
    def frame(self) -> Box:
        """The paper inside the margins."""
        return Box(self.margin, self.margin, self.width - self.margin, self.height - self.margin)


@dataclass(frozen=True, slots=True)
class Typeset:
    """A run of pages written in typst markup (calculations with formulas); only PDF can hold it.

    Attributes:
        source: typst markup, trusted and complete; data in it must be escaped (`pdf.literal`).
        paper: which paper.
        landscape: the long side lies across.
        margin: free edge on all four sides, mm.
        title: what the pages are.
        foot: text at the foot of every page, beside its number of all pages.
    """

    source: str
    paper: Paper = Paper.LETTER
    landscape: bool = False
    margin: float = 15.0
    title: str = ""
    foot: str = ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """Pages that go together into one file.

    Attributes:
        pages: the pages in their order.
        title: the title of the file.
    """

    pages: tuple[Page | Typeset, ...]
    title: str = ""


Leaf = Line | Polyline | Polygon | Circle | Arc | Text
"""Anything that is drawn itself, which a group is not."""


def leaves(items: tuple[Item, ...], dx: float = 0.0, dy: float = 0.0) -> Iterator[tuple[Leaf, float, float]]:
    """Walk through everything that is drawn, groups opened.

    Args:
        items: what is on the page.
        dx: shift of these items to the right, mm.
        dy: shift of these items down, mm.

    Yields:
        (item, dx, dy): the item and its whole shift in mm.
    """
    for item in items:
        if isinstance(item, Group):
            yield from leaves(item.items, dx + item.dx, dy + item.dy)
        else:
            yield item, dx, dy
