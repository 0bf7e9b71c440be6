"""Which holes of a frame lie on one line and are bolted together, found from where the pieces stand."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components
from scipy.spatial import KDTree

from gageline.detail.detailed import Placed
from gageline.detail.space import Vec, along, dot, vec_of
from gageline.part import HERE, FittingKind, HoleGroup, Part, Placement, face_point, face_thickness, normal
from gageline.units import ZERO, Length

__all__ = ["Pile", "Ply", "met_by", "piles_of"]

_OFF = 1 / 32  # inches that two holes may be off one line: what roundings leave, and no bolt feels
_ROUNDED = 1 / 32  # inches that two plies may stand apart besides their play
_LEAN = 1000.0  # makes a lean of axes weigh as inches


@dataclass(frozen=True, slots=True)
class Ply:
    """Steel with a hole in it where it stands in the frame.

    Args:
        piece: own name of the piece, its assembly's mark where it is placed.
        fitting: name of its fitting, empty for the main part.
        kind: of the fitting.
        group: the holes it is one of.
        thickness: of the steel.
        point: on the marked face, inches.
        axis: of the hole, the same one for both its directions.
        low: where the steel begins along the axis, inches.
        high: where it ends.
    """

    piece: str
    fitting: str
    kind: FittingKind | None
    group: HoleGroup
    thickness: Length
    point: Vec
    axis: Vec
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Pile:
    """Plies that one bolt goes through, or one ply alone.

    Args:
        plies: along the bolt.
    """

    plies: tuple[Ply, ...]

    @property
    def pieces(self) -> tuple[str, ...]:
        """Own names of the pieces it joins, in the order of the frame's pieces."""
        return tuple(dict.fromkeys(ply.piece for ply in self.plies))

    @property
    def grip(self) -> Length:
        """The steel between head and nut."""
        return sum((ply.thickness for ply in self.plies), ZERO)

    @property
    def bolt(self) -> str:
        """The size that its holes are for; empty where none of them is for a bolt."""
        return next((ply.group.bolt for ply in self.plies if ply.group.bolt), "")


def piles_of(placed: Iterable[Placed], play: Length) -> tuple[Pile, ...]:
    """Every hole of a frame once, with all others that lie on its line and whose steel touches.

    Args:
        placed: every piece where it stands.
        play: that connection material stays off the faces it meets.
    """
    apart = play.inches + _ROUNDED
    plies = [ply for piece in placed for ply in _plies(piece)]
    if not plies:
        return ()
    feet = np.array(
        [
            (*along(one.point, one.axis, -dot(one.point, one.axis)), *np.multiply(one.axis, _LEAN))
            for one in plies
        ]
    )
    touching = [
        (a, b)
        for a, b in KDTree(feet).query_pairs(_OFF)
        if max(plies[a].low, plies[b].low) <= min(plies[a].high, plies[b].high) + apart
    ]
    ends = np.array(touching, dtype=int).reshape(-1, 2)
    graph = coo_array((np.ones(len(ends)), (ends[:, 0], ends[:, 1])), shape=(len(plies), len(plies)))
    _, groups = connected_components(graph, directed=False)
    piles: dict[int, list[Ply]] = {}
    for group, ply in zip(groups.tolist(), plies, strict=True):
        piles.setdefault(group, []).append(ply)
    return tuple(Pile(tuple(pile)) for pile in piles.values())


def met_by(piles: Iterable[Pile], marks: Mapping[str, str]) -> dict[str, dict[tuple[str, str], str]]:
    """The holes of each piece mark that meet holes of other pieces, with the bolt that goes through.

    Args:
        piles: every hole of the frame, with those it meets.
        marks: of the pieces, by their own names.

    Returns:
        By mark: fitting (empty for the main part) and group, and the bolt's size.
    """
    met: dict[str, dict[tuple[str, str], str]] = {mark: {} for mark in marks.values()}
    for pile in piles:
        if len(pile.pieces) > 1:
            for ply in pile.plies:
                met[marks[ply.piece]][ply.fitting, ply.group.name] = pile.bolt
    return met


def _plies(piece: Placed) -> Iterator[Ply]:
    name = piece.assembly.mark
    parts: list[tuple[Part, Placement, str, FittingKind | None]] = [(piece.assembly.main, HERE, "", None)]
    parts += [(one.part, one.placement, one.name, one.kind) for one in piece.assembly.fittings]
    for part, placement, fitting, kind in parts:
        stands = placement.then(piece.placement)
        for group in part.groups:
            x, y, z = normal(group.face)
            out = stands.turn((float(x), float(y), float(z)))
            ahead = next(value for value in out if abs(value) > 1e-6) > 0
            axis = out if ahead else (-out[0], -out[1], -out[2])
            thickness = face_thickness(part.stock, group.face)
            for hole in group.holes:
                point = vec_of(stands.point(face_point(part.stock, group.face, hole.x, hole.y)))
                at = dot(point, axis)
                low, high = sorted((at, at - thickness.inches if ahead else at + thickness.inches))
                yield Ply(name, fitting, kind, group, thickness, point, axis, low, high)
