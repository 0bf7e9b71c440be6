"""The stick that a part is cut from, before anything is cut into it."""

from __future__ import annotations

from functools import cache

import numpy as np
from manifold3d import CrossSection, FillRule, Manifold
from numpy.typing import NDArray

from gageline.errors import ValueProblem
from gageline.part import End, Part, extent_y, extent_z
from gageline.solid.fillets import as_rolled
from gageline.steel import Plate, Profile, Section, Stock
from gageline.units import ZERO

__all__ = ["cross_section", "stick"]

Points = NDArray[np.float64]

_FINE = 24  # chords to a quarter of a tube: it then stands out 0.0004 of its radius past the true circle
_TURNED = frozenset({Profile.CHANNEL, Profile.ANGLE})  # drawn toward the reader, kept behind the web


def cross_section(stock: Stock) -> tuple[Points, ...]:
    """The outline of a section with its fillets, where the part has it.

    Args:
        stock: the section or plate.

    Returns:
        Closed lines of points (y, z) in inches, shape (n, 2): the outer line and, of a hollow
        section, the inner one.
    """
    high = extent_y(stock)[1].inches
    if isinstance(stock, Plate):
        up, aside = high / 2, -stock.thickness.inches / 2
    else:
        up, aside = _rise(stock.profile, high), 0.0
    turn = -1.0 if stock.profile in _TURNED else 1.0
    return tuple(np.column_stack([y + up, turn * z + aside]) for z, y in (loop.T for loop in _loops(stock)))


def _loops(stock: Stock) -> tuple[Points, ...]:
    """The outline as the tables draw it: (z, y) about its own origin."""
    if isinstance(stock, Section):
        rolled = as_rolled(stock)
        loops = rolled.outline(_FINE) if stock.profile is Profile.TUBE else rolled.outline()
    else:
        loops = stock.outline()
    return tuple(np.array(loop) for loop in loops)


def _rise(profile: Profile, high: float) -> float:
    """How far the outline of a section is lifted so that its bottom is at y = 0."""
    if profile is Profile.ANGLE:
        return 0.0
    return high if profile is Profile.TEE else high / 2


@cache
def _unit(stock: Stock) -> Manifold:
    """One inch of a section, upright as it is extruded: y, z, x."""
    loops = cross_section(stock)
    return Manifold.extrude(CrossSection(list(loops), FillRule.EvenOdd), 1.0)


def stick(part: Part) -> Manifold:
    """A part between its end cuts, with nothing else cut into it, in inches in its own space.

    Raises:
        ValueProblem: when its end cuts cross.
    """
    corners = [(y, z) for y in extent_y(part.stock) for z in extent_z(part.stock)]
    if any(part.end_x(End.RIGHT, y, z) <= part.end_x(End.LEFT, y, z) for y, z in corners):
        raise ValueProblem(f"part {part.mark} has end cuts that cross: give a longer part or smaller bevels")
    length = part.length.inches
    if part.left.square and part.right.square:
        return _unit(part.stock).transform([[0, 0, length, 0], [1, 0, 0, 0], [0, 1, 0, 0]])

    def between_cuts(upright: Points) -> Points:
        y, z, along = upright.T
        left, right = (_cut_plane(part, end, y, z) for end in End)
        return np.column_stack([y, z, left + along * (right - left)])

    return _unit(part.stock).warp_batch(between_cuts).transform([[0, 0, 1, 0], [1, 0, 0, 0], [0, 1, 0, 0]])


def _cut_plane(part: Part, end: End, y: Points, z: Points) -> Points:
    """Where the cut of an end lies at points of the section, in inches."""
    cut = part.cut(end)
    lean = float(cut.bevel.ratio) * y + float(cut.mitre.ratio) * z
    start = part.end_x(end, ZERO, ZERO).inches
    return start - lean if end is End.LEFT else start + lean
