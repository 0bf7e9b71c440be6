"""When two pieces are the same steel: by their geometry, not by how it was written down."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Iterator
from dataclasses import dataclass

from gageline.part import (
    SAME,
    Assembly,
    End,
    Face,
    Hole,
    HoleGroup,
    Part,
    Placement,
    Point,
    extent_y,
    extent_z,
    face_point,
    pair_off,
)
from gageline.steel import Profile
from gageline.units import ZERO

__all__ = ["Lie", "Likeness", "likeness_of"]

_WEBS = frozenset({Face.NEAR, Face.FAR})
_ALIKE = frozenset({Profile.I_SHAPE, Profile.BOX})
Spot = tuple[Hashable, int, int, int]
Signs = tuple[int, int, int]
_AS_IT_LIES: Signs = (1, 1, 1)
_TURNS: dict[bool, tuple[Signs, ...]] = {
    True: (_AS_IT_LIES, (-1, 1, -1), (1, -1, -1), (-1, -1, 1)),  # alike on both sides of the web
    False: (_AS_IT_LIES, (-1, -1, 1)),
}
_MIRRORED: dict[bool, tuple[Signs, ...]] = {
    True: ((1, 1, -1), (-1, 1, 1), (1, -1, 1), (-1, -1, -1)),
    False: ((-1, 1, 1), (1, -1, 1)),
}


@dataclass(frozen=True, slots=True)
class Lie:
    """How a piece lies where an equal one that was made first would lie as its card shows it.

    Args:
        end_for_end: its left end is where the other's right end is.
        half_turn: it is turned half round about its length.
    """

    end_for_end: bool = False
    half_turn: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class Likeness:
    """A piece as what it is: a key that equal pieces share, and points that must fall together.

    Args:
        key: section, grade, kinds and counts of everything.
        size: what a coordinate is taken from when the piece is turned: length, depth and zero, in ticks.
        spots: points in the piece's space with what is there, in ticks.
        alike: whether the section is alike on both sides of its web.
    """

    key: Hashable
    size: tuple[int, int, int]
    spots: tuple[Spot, ...]
    alike: bool

    def turns(self) -> Iterator[tuple[Lie, Likeness]]:
        """The piece as it lies, then as it looks turned end for end and turned over, with the turn."""
        return ((Lie(signs[0] < 0, signs[1] < 0), self._seen(signs)) for signs in _TURNS[self.alike])

    def mirrored(self) -> Iterator[Likeness]:
        """The opposite hand of the piece, in every way it can lie."""
        return (self._seen(signs) for signs in _MIRRORED[self.alike])

    def _seen(self, signs: Signs) -> Likeness:
        if signs == _AS_IT_LIES:
            return self
        spots = []
        for what, *place in self.spots:
            x, y, z = (
                value if sign > 0 else size - value
                for value, sign, size in zip(place, signs, self.size, strict=True)
            )
            spots.append((what, x, y, z))
        return Likeness(self.key, self.size, tuple(spots), self.alike)

    def same(self, other: Likeness) -> bool:
        """Whether two pieces are the same steel within the exactness of `Length`."""
        if self.key != other.key or len(self.spots) != len(other.spots):
            return False
        others = _by_what(other.spots)
        return all(pair_off(spots, others[what], _close) for what, spots in _by_what(self.spots).items())


def likeness_of(assembly: Assembly) -> Likeness:
    """What makes a piece itself: geometry, fittings, bolts, welds, grade and finish; no marks, no names."""
    main = assembly.main
    spots = list(_spots(main, None, "main"))
    for fitting in assembly.fittings:
        what = (fitting.kind, fitting.join, fitting.part.stock.designation, fitting.part.grade)
        spots.extend(_spots(fitting.part, fitting.placement, what))
    key = (
        main.stock.designation,
        main.grade,
        assembly.finish,
        tuple(sorted((c.length.ticks, c.depth.ticks, c.radius.ticks) for c in main.copes)),
        tuple(sorted((t.length.ticks, t.keep.ticks) for t in main.trims)),
        tuple(sorted((w.size.ticks, w.length.ticks, w.runs) for w in assembly.welds)),
        tuple(sorted((b.bolt, b.count, b.grip.ticks if b.grip else 0, b.field) for b in assembly.bolts)),
        tuple(sorted(repr(spot[0]) for spot in spots)),
    )
    size = (main.length.ticks, extent_y(main.stock)[1].ticks, 0)
    return Likeness(key, size, tuple(spots), main.profile in _ALIKE)


def _by_what(spots: tuple[Spot, ...]) -> dict[Hashable, list[Spot]]:
    found: dict[Hashable, list[Spot]] = defaultdict(list)
    for spot in spots:
        found[spot[0]].append(spot)
    return found


def _close(one: Spot, other: Spot) -> bool:
    return all(abs(p - q) <= SAME for p, q in zip(one[1:], other[1:], strict=True))


def _spots(part: Part, stands: Placement | None, what: Hashable) -> Iterator[Spot]:
    """The corners, the back, the cuts and the holes of a part where they lie in the piece."""

    def spot(name: Hashable, point: Point) -> Spot:
        x, y, z = stands.point(point) if stands else point
        return ((what, name), x.ticks, y.ticks, z.ticks)

    for end in End:
        for y in extent_y(part.stock):
            for z in extent_z(part.stock):
                yield spot("corner", (part.end_x(end, y, z), y, z))
        if stands and part.profile in {Profile.ANGLE, Profile.CHANNEL}:
            yield spot("back", (part.end_x(end, ZERO, ZERO), ZERO, ZERO))
    for cope in part.copes:
        x = cope.length if cope.end is End.LEFT else part.length - cope.length
        y = part.stock.d - cope.depth if cope.edge is Face.TOP else cope.depth  # type: ignore[union-attr] # sections only
        yield spot("cope", (x, y, ZERO))
    for trim in part.trims:
        x = trim.length if trim.end is End.LEFT else part.length - trim.length
        near = part.stock.bf if trim.side == "near" else -part.stock.bf  # type: ignore[union-attr] # sections only
        y = part.stock.d if trim.flange is Face.TOP else ZERO  # type: ignore[union-attr] # sections only
        yield spot("trim", (x, y, near))
    for group in part.groups:
        for hole in group.holes:
            yield spot(*_hole(part, group, hole))


def _hole(part: Part, group: HoleGroup, hole: Hole) -> tuple[Hashable, Point]:
    """A hole by its middle; through a web it is the same from both sides."""
    size = (hole.width.ticks, hole.length.ticks, group.bolt, str(group.kind))
    if group.face in _WEBS and part.profile is not Profile.BOX:
        return ("web", *size), (hole.x, hole.y, ZERO)
    if group.face is Face.FACE:
        low, high = extent_z(part.stock)
        return ("plate", *size), (hole.x, hole.y, low + (high - low) / 2)
    return ("hole", *size), face_point(part.stock, group.face, hole.x, hole.y)
