"""Connections of published examples, for tests: AISC Design Examples, version 16.0 (2023)."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace

from gageline.strength import (
    Beam,
    Bolted,
    Check,
    Connection,
    Fillet,
    Fitting,
    Holes,
    Kind,
    Material,
    Notch,
    Step,
    Support,
    SupportFace,
    Verdict,
)
from gageline.strength.aisc360.j3_bolts import Hole

__all__ = ["EXAMPLES", "bolts", "check_named", "of_step", "worked_out"]

A992 = Material("A992", 50.0, 65.0)
A572 = Material("A572-50", 50.0, 65.0)
GIRDER = Support("W21X62", A992, SupportFace.GIRDER_WEB, 0.400)
COLUMN = Support("W14X90", A992, SupportFace.COLUMN_FLANGE, 0.710)
W18X50 = Beam("W18X50", A992, 18.0, 0.355, 7.50, 0.570, 0.972)
W18X35 = Beam("W18X35", A992, 17.7, 0.300, 6.00, 0.425, 0.827, top=Notch(4.0, 2.0))
W36X231 = Beam("W36X231", A992, 36.5, 0.760, 16.5, 1.26, 2.21)
_HOLE = {0.75: 13 / 16, 0.875: 15 / 16}


def bolts(rows: int, gage: float, side: float, d: float = 0.75) -> Bolted:
    """Bolts of the examples: group 120-N at 3 in, 1 1/4 in from the ends, standard holes."""
    holes = Holes(Hole.STANDARD, _HOLE[d], _HOLE[d])
    return Bolted(f"{d:g}", d, "120", "N", rows, 3.0, gage, 1.25, 1.25, side, holes, holes)


_A1 = Connection(
    "II.A-1A", Kind.DOUBLE_ANGLES, W36X231, Fitting("2L5X3-1/2X5/16", A572, 0.3125, 23.5, 3.5, 5.0),
    bolts(8, 2.125, 1.375), bolts(8, 3.0, 2.0), 0.5, 6.0, 226.0, support=COLUMN,
)  # fmt: skip
_A2 = replace(
    _A1,
    name="II.A-2A",
    fitting=Fitting("2L4X3-1/2X3/8", A572, 0.375, 23.5, 3.5, 4.0),
    to_support=Fillet(5 / 16),
)
_A2B = Connection(
    "II.A-2B", Kind.DOUBLE_ANGLES, W18X50, Fitting("2L4X3-1/2X1/2", A572, 0.5, 14.5, 3.5, 4.0),
    Fillet(3 / 16), bolts(5, (5.5 - 0.355) / 2, 4.0 - (5.5 - 0.355) / 2, 0.875),
    0.5, 1.75, 75.0, 60.0, COLUMN,
)  # fmt: skip
_A3 = replace(
    _A2,
    name="II.A-3",
    fitting=Fitting("2L4X3-1/2X5/16", A572, 0.3125, 24.0, 3.5, 4.0),
    to_beam=Fillet(3 / 16),
    to_support=Fillet(1 / 4),
)
_A4 = Connection(
    "II.A-4", Kind.DOUBLE_ANGLES, replace(W18X50, top=Notch(4.0, 2.0)),
    Fitting("2L5X3-1/2X1/4", A572, 0.25, 8.5, 3.5, 5.0),
    bolts(3, 2.125, 1.375), bolts(3, 3.0, 2.0), 0.5, 0.0, 60.0, support=GIRDER,
)  # fmt: skip
_A5 = replace(
    _A4,
    name="II.A-5",
    fitting=Fitting("2L4X3-1/2X1/4", A572, 0.25, 8.5, 3.5, 4.0),
    to_beam=Fillet(3 / 16),
    to_support=bolts(3, 2.5, 1.5),
    drop=3 / 8,
)
_A6 = replace(
    _A5, name="II.A-6", beam=Beam("W21X62", A992, 21.0, 0.400, 8.24, 0.615, 1.12, top=Notch(9.0, 8.0))
)
_A11A = Connection(
    "II.A-11A", Kind.END_PLATE, replace(W18X50, top=Notch(4.5, 1.25)),
    Fitting("PL1/4X6", A572, 0.25, 8.5, 6.0),
    Fillet(3 / 16), bolts(3, 1.75, 1.25), 0.25, 1.0, 60.0, support=GIRDER,
)  # fmt: skip
_A11B = Connection(
    "II.A-11B", Kind.END_PLATE, W18X50, Fitting("PL1/2X8-1/2", A572, 0.5, 14.5, 8.5),
    Fillet(3 / 16), bolts(5, 2.75, 1.5, 0.875),
    0.5, 1.75, 75.0, 60.0, COLUMN,
)  # fmt: skip
_A18 = Connection(
    "II.A-18", Kind.SINGLE_PLATE, W18X35, Fitting("PL1/4X4-1/2", A572, 0.25, 11.5, 4.5),
    bolts(4, 3.0, 1.5), Fillet(3 / 16), 0.5, 0.25, 39.8, support=GIRDER,
)  # fmt: skip
_A28A = Connection(
    "II.A-28A", Kind.SINGLE_ANGLE, W18X35, Fitting("L4X3X3/8", A572, 0.375, 11.5, 4.0, 3.0),
    bolts(4, 2.5, 1.5), bolts(4, 1.75, 1.25), 0.5, 0.0, 39.8, support=GIRDER,
)  # fmt: skip
_A16 = Connection(
    "II.A-16", Kind.SEAT, Beam("W14X38", A992, 14.1, 0.310, 6.77, 0.515, 0.915),
    Fitting("L7X4X5/8", Material("A36", 36.0, 58.0), 0.625, 6.0, 7.0, 4.0),
    bolts(1, 2.75, 1.5), Fillet(5 / 16), 0.5, 0.0, 40.0, support=COLUMN,
)  # fmt: skip

EXAMPLES = {one.name: one for one in (_A1, _A2, _A2B, _A3, _A4, _A5, _A6, _A11A, _A11B, _A16, _A18, _A28A)}
"""By the name of the example. II.A-6 has the fittings of II.A-5, for its own are not read."""


def check_named(verdict: Verdict, title: str) -> Check:
    """The check of a title."""
    return next(check for check in verdict.checks if check.title == title)


def of_step(check: Check, symbol: str) -> float:
    """The value of a line of a check's working."""
    return next(step.value for step in check.steps if step.symbol == symbol)


_WORDS: dict[str, Callable[..., float]] = {
    "sqrt": math.sqrt,
    "min": min,
    "max": max,
    "ln": math.log,
    "sin": lambda degrees: math.sin(math.radians(degrees)),
}


def worked_out(line: Step) -> float:
    """A line of working worked out again from its own text."""
    text = line.written(repr).replace("×", "*").replace("^", "**")
    assert not set(re.findall(r"[^\W\d_]\w*", re.sub(r"\de[+-]?\d", "", text))) - set(_WORDS), text
    return float(eval(text, {"__builtins__": {}}, _WORDS))  # noqa: S307, the text is this program's own
