"""Parts as rectangular blocks in space: legs, webs, flanges, walls and plates."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from gageline.detail.space import Vec, vec_of
from gageline.part import End, Face, Part, Placement, Side, extent_y, extent_z
from gageline.steel import Plate, Profile, Section
from gageline.units import SQUARE, Length

__all__ = ["Block", "blocks_of"]

_STRIPS = 4
Range = tuple[float, float]
Ranges = tuple[Range, Range, Range]


@dataclass(frozen=True, slots=True)
class Block:
    """A rectangular block in space.

    Args:
        centre: inches.
        axes: its three directions.
        halves: half of its size along each, inches.
    """

    centre: Vec
    axes: tuple[Vec, Vec, Vec]
    halves: Vec

    @property
    def low(self) -> Vec:
        """The lowest coordinates of its upright hull, inches."""
        return self._corner(-1.0)

    @property
    def high(self) -> Vec:
        """The highest coordinates of its upright hull, inches."""
        return self._corner(1.0)

    def _corner(self, sign: float) -> Vec:
        x, y, z = (
            self.centre[n]
            + sign * sum(abs(axis[n]) * half for axis, half in zip(self.axes, self.halves, strict=True))
            for n in range(3)
        )
        return (x, y, z)


def blocks_of(part: Part, stands: Placement) -> Iterator[Block]:
    """The blocks of a part where it stands; mitred ends are left out, copes and trims are taken off.

    Args:
        part: the part.
        stands: where, in space.
    """
    for x, y, z in _ranges(part):
        if x[1] > x[0] and y[1] > y[0] and z[1] > z[0]:
            yield _block((x, y, z), stands)


def _block(ranges: tuple[Range, Range, Range], stands: Placement) -> Block:
    x, y, z = ((low + high) / 2 for low, high in ranges)
    moved, origin = stands.turn((x, y, z)), vec_of(stands.origin)
    centre = (moved[0] + origin[0], moved[1] + origin[1], moved[2] + origin[2])
    half_x, half_y, half_z = ((high - low) / 2 for low, high in ranges)
    return Block(centre, (stands.ex, stands.ey, stands.ez), (half_x, half_y, half_z))


def _ranges(part: Part) -> Iterator[Ranges]:
    stock = part.stock
    y, z = _inches(extent_y(stock)), _inches(extent_z(stock))
    if isinstance(stock, Plate):
        yield _ends(part, y, z), y, z
    elif stock.profile is Profile.BOX:
        yield from ((_ends(part, y, strip), y, strip) for strip in _strips(part, z))
    elif stock.profile is Profile.ANGLE:
        legs = ((y, (-stock.tw.inches, 0.0)), ((0.0, stock.tw.inches), z))
        yield from ((_ends(part, *leg), *leg) for leg in legs)
    else:
        yield from _web(part, stock)
        thick = stock.tf.inches
        for flange, high in ((Face.TOP, y[1]), (Face.BOTTOM, thick)):
            for side in Side:
                for strip in _strips(part, _flange_z(stock, side)):
                    yield _flange_x(part, flange, side, strip), (high - thick, high), strip


def _strips(part: Part, z: Range) -> tuple[Range, ...]:
    """A flange in strips along the part where an end is mitred, so that each has its own length."""
    count = 1 if all(part.cut(end).mitre == SQUARE for end in End) else _STRIPS
    edges = [z[0] + (z[1] - z[0]) * n / count for n in range(count + 1)]
    return tuple(pairwise(edges))


def _ends(part: Part, y: Range, z: Range) -> Range:
    """From end to end, without what a bevel or a mitre leaves on one side only."""
    corners = [(Length.from_inches(a), Length.from_inches(b)) for a in y for b in z]
    return (
        max(part.end_x(End.LEFT, *corner).inches for corner in corners),
        min(part.end_x(End.RIGHT, *corner).inches for corner in corners),
    )


def _web(part: Part, stock: Section) -> Iterator[Ranges]:
    """The web: whole between the copes, and what they leave at the ends."""
    near = 0.0 if stock.profile is Profile.CHANNEL else stock.tw.inches / 2
    y, z = (0.0, stock.d.inches), (near - stock.tw.inches, near)
    x = _ends(part, y, z)
    left, right = (_coped(part, end) for end in End)
    long = (part.length.inches - right[0]) if right[0] else x[1]
    yield (left[0] or x[0], long), y, z
    if left[0]:
        yield (x[0], left[0]), (left[1], stock.d.inches - left[2]), z
    if right[0]:
        yield (long, x[1]), (right[1], stock.d.inches - right[2]), z


def _coped(part: Part, end: End) -> Vec:
    """The longest cope of an end, and how deep its bottom and top are coped, inches."""
    depth = {cope.edge: cope.depth.inches for cope in part.copes if cope.end is end}
    long = max((cope.length.inches for cope in part.copes if cope.end is end), default=0.0)
    return long, depth.get(Face.BOTTOM, 0.0), depth.get(Face.TOP, 0.0)


def _flange_x(part: Part, flange: Face, side: Side, strip: Range) -> Range:
    """Where a strip of one side of a flange is left between copes and trims."""
    cut = {
        end: max(
            [
                *(cope.length.inches for cope in part.copes if (cope.end, cope.edge) == (end, flange)),
                *(
                    trim.length.inches
                    for trim in part.trims
                    if (trim.end, trim.flange, trim.side) == (end, flange, side)
                ),
            ],
            default=0.0,
        )
        for end in End
    }
    depth = part.stock.d.inches if isinstance(part.stock, Section) and flange is Face.TOP else 0.0
    x = _ends(part, (depth, depth), strip)
    low = cut[End.LEFT] or x[0]
    return low, part.length.inches - cut[End.RIGHT] if cut[End.RIGHT] else x[1]


def _flange_z(stock: Section, side: Side) -> Range:
    low, high = _inches(extent_z(stock))
    middle = 0.0 if stock.profile is not Profile.CHANNEL else high
    return (middle, high) if side is Side.NEAR else (low, middle)


def _inches(pair: tuple[Length, Length]) -> Range:
    return pair[0].inches, pair[1].inches
