"""The ends of a stick as they are: the plane of each, and the corner that reaches furthest."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.job import Corner, Edge, EndReadings, SquareGap
from gageline.units import ZERO, Length

__all__ = ["EndPlane", "fit_end"]

_SAME = Length.from_inches(1) / 64  # corners closer than this touch together
_CORNERS = tuple(Corner)


@dataclass(frozen=True, slots=True)
class EndPlane:
    """One end of a stick: how far each corner stands back from a square line at the furthest one.

    Args:
        retreats: by corner in the order of `Corner`; zero at the furthest.
        web_lean: how far the top edge runs out past the bottom edge; below zero where the bottom does.
        flange_lean: how far the near side runs out past the far side.
        warp: how far the four corners lie off one plane, each by so much; zero where fewer were read.
        assumed: nothing was read, and the end is taken as square.
    """

    retreats: tuple[Length, Length, Length, Length]
    web_lean: Length
    flange_lean: Length
    warp: Length
    assumed: bool

    @property
    def high(self) -> Corner:
        """The corner that reaches furthest, which touches first and which the tape is hooked at."""
        return _CORNERS[self.retreats.index(min(self.retreats))]

    @property
    def out_of_square(self) -> Length:
        """From the furthest corner back to the shortest."""
        return max(self.retreats)

    @property
    def square_gap(self) -> Length:
        """The widest that a square stands open which is held along any of the four edges of the end."""
        tn, tf, bn, bf = self.retreats
        return max(abs(tn - bn), abs(tf - bf), abs(tn - tf), abs(bn - bf))

    @property
    def place(self) -> str:
        """Where the end reaches furthest, in words: a corner, an edge, a side, or all round."""
        touching = {corner for corner, back in zip(_CORNERS, self.retreats, strict=True) if back < _SAME}
        if len(touching) == len(_CORNERS):
            return "square"
        for word, there in (
            ("top edge", {c for c in Corner if c.is_top}),
            ("bottom edge", {c for c in Corner if not c.is_top}),
            ("near side", {c for c in Corner if c.is_near}),
            ("far side", {c for c in Corner if not c.is_near}),
        ):
            if touching == there:
                return word
        return f"{self.high} corner"

    def back(self, corner: Corner) -> Length:
        """How far a corner stands back from the furthest one."""
        return self.retreats[_CORNERS.index(corner)]

    def back_at(self, up: Fraction, across: Fraction) -> Length:
        """How far the end stands back at a place between its corners.

        Args:
            up: from the bottom edge (0) to the top edge (1).
            across: from the far side (0) to the near side (1).
        """
        tn, tf, bn, bf = self.retreats
        top = tf + (tn - tf) * across
        bottom = bf + (bn - bf) * across
        return bottom + (top - bottom) * up


def fit_end(read: EndReadings, depth: Length, width: Length) -> EndPlane:
    """The plane of an end from its corners' offsets or from the square's gaps.

    With four corners the plane is the one of least squares, whose slopes are the differences of the
    means of opposite edges; the corners themselves decide which one touches first. With three the
    plane is exact; with two on one edge or side the end is taken as square the other way.

    Args:
        read: what was read at the end.
        depth: of the section there.
        width: of its flanges.

    Raises:
        ValueProblem: when only two corners across from each other were read.
    """
    if any(corner is not None for corner in read.corners):
        return _from_corners(read.corners)
    top = _lean(read.web_gap, depth, Edge.TOP)
    near = _lean(read.flange_gap, width, Edge.NEAR)
    offsets = [(top if corner.is_top else ZERO) + (near if corner.is_near else ZERO) for corner in _CORNERS]
    return _plane(offsets, top, near, ZERO, assumed=not read.square_read)


def _lean(gap: SquareGap | None, reach: Length, ahead: Edge) -> Length:
    """The gap at the tip of the blade carried to the full reach of the end."""
    if gap is None:
        return ZERO
    lean = gap.gap * reach.ratio(gap.blade)
    return lean if gap.long is ahead else -lean


def _plane(
    offsets: list[Length], web_lean: Length, flange_lean: Length, warp: Length, *, assumed: bool = False
) -> EndPlane:
    furthest = max(offsets)
    tn, tf, bn, bf = (furthest - offset for offset in offsets)
    return EndPlane((tn, tf, bn, bf), web_lean, flange_lean, warp, assumed)


def _from_corners(read: tuple[Length | None, ...]) -> EndPlane:
    tn, tf, bn, bf = read
    if tn is not None and tf is not None and bn is not None and bf is not None:
        web = (tn + tf - bn - bf) / 2
        flange = (tn + bn - tf - bf) / 2
        return _plane([tn, tf, bn, bf], web, flange, abs(tn - tf - bn + bf) / 4)
    known = [corner for corner, offset in zip(_CORNERS, read, strict=True) if offset is not None]
    if len(known) == 2 and known[0].is_top != known[1].is_top and known[0].is_near != known[1].is_near:
        raise ValueProblem(
            f"corners {known[0]} and {known[1]} lie across from each other and tell no plane: read a third"
        )
    web = _difference(tn, bn) if tn is not None and bn is not None else _difference(tf, bf)
    flange = _difference(tn, tf) if tn is not None and tf is not None else _difference(bn, bf)
    first = known[0]
    start = read[_CORNERS.index(first)] or ZERO
    offsets = [
        start
        + web * (int(corner.is_top) - int(first.is_top))
        + flange * (int(corner.is_near) - int(first.is_near))
        for corner in _CORNERS
    ]
    return _plane(offsets, web, flange, ZERO)


def _difference(one: Length | None, other: Length | None) -> Length:
    return one - other if one is not None and other is not None else ZERO
