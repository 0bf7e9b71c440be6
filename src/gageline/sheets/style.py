"""How Gageline's sheets look: line roles, inks, text sizes and hatchings, in one place.

Meaning never hangs on colour alone: the lines to strike are also the widest on the sheet, so a photocopy
and a colour-blind reader see the same drawing.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

__all__ = [
    "BODY",
    "FINE",
    "HEADING",
    "HEX",
    "MM_PER_PT",
    "STROKES",
    "TITLE",
    "Hatch",
    "Ink",
    "Role",
    "Stroke",
    "Weight",
]

MM_PER_PT = 25.4 / 72
"""Millimetres in a typographic point."""

BODY = 10.0
"""Points: the smallest size on a bench card."""
FINE = 8.0
"""Points: footnotes, title strips and notes that nobody reads at the steel."""
HEADING = 12.0
"""Points: headings of parts of a sheet."""
TITLE = 18.0
"""Points: the piece mark."""


class Weight(StrEnum):
    """The two weights of the one family."""

    REGULAR = "regular"
    BOLD = "bold"


class Ink(StrEnum):
    """What a shape or a text is printed in."""

    BLACK = "black"
    ACCENT = "accent"
    GREY = "grey"
    PALE = "pale"
    WHITE = "white"


HEX = {
    Ink.BLACK: "#000000",
    # Dark raspberry: 7.9:1 against white, copies as dark grey, and its blue part tells it from black
    # for red-blind and green-blind readers.
    Ink.ACCENT: "#a3006d",
    Ink.GREY: "#595959",
    Ink.PALE: "#ececec",
    Ink.WHITE: "#ffffff",
}
"""Ink -> sRGB."""


class Role(StrEnum):
    """What a line stands for; its width, dashes and ink follow from that."""

    OUTLINE = "outline"
    THIN = "thin"
    HIDDEN = "hidden"
    CENTRE = "centre"
    DIMENSION = "dimension"
    MARK = "mark"
    CUT = "cut"
    BREAK = "break"
    FRAME = "frame"
    RULE = "rule"
    NEIGHBOUR = "neighbour"


@dataclass(frozen=True, slots=True)
class Stroke:
    """The pen of a role.

    Attributes:
        width: line width, mm.
        ink: what it is printed in.
        dash: lengths of dash, space, dash, ... in mm; empty for a full line.
    """

    width: float
    ink: Ink = Ink.BLACK
    dash: tuple[float, ...] = ()


STROKES = {
    Role.OUTLINE: Stroke(0.45),
    Role.THIN: Stroke(0.18),
    Role.HIDDEN: Stroke(0.25, dash=(2.0, 1.0)),
    Role.CENTRE: Stroke(0.18, dash=(6.0, 1.2, 1.2, 1.2)),
    Role.DIMENSION: Stroke(0.18),
    Role.MARK: Stroke(0.7, Ink.ACCENT),
    Role.CUT: Stroke(0.6),
    Role.BREAK: Stroke(0.25),
    Role.FRAME: Stroke(0.35),
    Role.RULE: Stroke(0.13, Ink.GREY),
    Role.NEIGHBOUR: Stroke(0.25, dash=(5.0, 1.0, 1.0, 1.0, 1.0, 1.0)),
}
"""Role -> pen."""


@dataclass(frozen=True, slots=True)
class Hatch:
    """Parallel lines that fill a polygon.

    Attributes:
        angle: degrees counter-clockwise from the right of the paper.
        spacing: distance between lines, mm.
        role: the pen.
        crossed: a second set of lines at right angles.
    """

    angle: float = 45.0
    spacing: float = 1.5
    role: Role = Role.THIN
    crossed: bool = False
