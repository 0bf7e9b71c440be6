"""A piece that is being detailed: its main part where it stands, and what is added to it."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from gageline.detail.reason import Reason
from gageline.detail.space import Vec, inverse, relative
from gageline.job import HoleMaker, Joined
from gageline.part import (
    Assembly,
    BoltSet,
    Cope,
    End,
    Face,
    Finding,
    Fitting,
    FlangeTrim,
    HoleGroup,
    Part,
    Placement,
    Weld,
    in_order,
)
from gageline.units import Length, round_to

__all__ = ["AnchorRods", "Carrier", "Served"]

_SAME = 4  # ticks: holes this near are one hole
_LYING = frozenset({Face.TOP, Face.BOTTOM})


@dataclass(frozen=True, slots=True)
class AnchorRods:
    """The rods that hold a column's base plate.

    Args:
        column: member that they hold.
        diameter: of a rod.
        count: how many.
        hole: in the base plate.
        projection: over the concrete.
        embedment: in the concrete.
        pitch: between rods along the column's depth.
        gage: between rods across it.
    """

    column: str
    diameter: Length
    count: int
    hole: Length
    projection: Length
    embedment: Length
    pitch: Length
    gage: Length

    @property
    def length(self) -> Length:
        """Overall, to the end of its embedment."""
        return self.projection + self.embedment


@dataclass(frozen=True, slots=True)
class Served:
    """A fitting that a piece carries for the end of another member.

    Args:
        piece: own name of the carrying piece, its assembly's mark where it is placed.
        fitting: name of the fitting in that piece.
        member: that it is for.
        end: of that member.
    """

    piece: str
    fitting: str
    member: str
    end: End


@dataclass(slots=True)
class Carrier:
    """A piece on its way from the frame to the shop.

    Args:
        member: the member of the frame that it is, or is a shaft of.
        part: the main part, cut to length.
        placement: where it lies in space.
        copes: what is cut off it so far; likewise the rest.
        trims: of its flanges.
        groups: its holes.
        fittings: what is put on it.
        welds: of its fittings.
        bolts: that go through it.
        reasons: of every decision about it.
        findings: what there is to say about it.
        rods: anchor rods under it; None where there are none.
    """

    member: str
    part: Part
    placement: Placement
    copes: list[Cope] = field(default_factory=list)
    trims: list[FlangeTrim] = field(default_factory=list)
    groups: list[HoleGroup] = field(default_factory=list)
    fittings: list[Fitting] = field(default_factory=list)
    welds: list[Weld] = field(default_factory=list)
    bolts: list[BoltSet] = field(default_factory=list)
    reasons: list[Reason] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    rods: AnchorRods | None = None

    def local(self, point: Vec) -> Vec:
        """A point of space in the part's space, inches."""
        return inverse(self.placement, point)

    def seen(self, placement: Placement) -> Placement:
        """A placing in space as seen from the part."""
        return relative(placement, self.placement)

    def join(self, joined: Joined) -> None:
        """Add what a table of fittings makes."""
        self.fittings.extend(joined.fittings)
        self.welds.extend(joined.welds)
        self.bolts.extend(joined.bolts)
        self.groups.extend(joined.groups)

    def drill(
        self, name: str, face: Face, points: tuple[Vec, ...], maker: HoleMaker, division: Length
    ) -> None:
        """Holes on a face at points of space; a hole that is there already is not made twice.

        Args:
            name: of the group that they make.
            face: of the part.
            points: in space, inches.
            maker: of the holes.
            division: the finest of the tape; a spacing that roundings left beside a whole number of it is
                put on it.
        """
        taken = {
            (hole.x.ticks, hole.y.ticks)
            for group in self.groups
            if group.face is face
            for hole in group.holes
        }
        places: list[tuple[Length, Length]] = []
        for point in points:
            x, y, z = (Length.from_inches(value) for value in self.local(point))
            across = z if face in _LYING else y
            if not any(abs(x.ticks - a) <= _SAME and abs(across.ticks - b) <= _SAME for a, b in taken):
                places.append((x, across))
        if places:
            first, holes = places[0], []
            for place in places:
                x, across = (a + _even(b - a, division) for a, b in zip(first, place, strict=True))
                holes.append(maker.at(x, across))
            self.groups.append(
                HoleGroup(self._free(name), face, in_order(tuple(holes)), maker.bolt, maker.kind)
            )

    def _free(self, name: str) -> str:
        names = {group.name for group in self.groups}
        number = 2
        chosen = name
        while chosen in names:
            chosen, number = f"{name}, {number}", number + 1
        return chosen

    def free_fitting(self, name: str) -> str:
        """A name that no fitting of the piece has yet."""
        names = {fitting.name for fitting in self.fittings}
        number = 2
        chosen = name
        while chosen in names:
            chosen, number = f"{name}, {number}", number + 1
        return chosen

    def assembly(self, finish: str) -> Assembly:
        """The piece with everything added, its features in an order that does not depend on the frame's."""
        main = replace(
            self.part,
            copes=tuple(sorted(self.copes, key=lambda cope: (cope.end, cope.edge))),
            trims=tuple(sorted(self.trims, key=lambda trim: (trim.end, trim.flange, trim.side))),
            groups=tuple(sorted(self.groups, key=_place_of)),
        )
        return Assembly(main, 1, tuple(self.fittings), tuple(self.welds), tuple(self.bolts), finish)


def _even(step: Length, division: Length) -> Length:
    """A spacing, put on a whole number of divisions where it is one but for the rounding of its ends."""
    whole = round_to(step, division)
    return whole if abs(whole - step).ticks <= _SAME else step


def _place_of(group: HoleGroup) -> tuple[Length, str, Length]:
    return group.holes[0].x, group.face, group.holes[0].y
