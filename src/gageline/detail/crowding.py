"""Steel of one member that is in the way of another's: fittings, flanges and webs as blocks in space."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from shapely import STRtree, box

from gageline.detail.blocks import Block, blocks_of
from gageline.detail.detailed import Placed
from gageline.detail.site import Site
from gageline.detail.supports import Supports
from gageline.part import Finding, FittingKind, Severity

__all__ = ["in_the_way"]

_TOUCH = 0.005  # inches that blocks may lie in each other: what roundings leave of faces that touch
_ANY = 1e-9  # of a cross product that is no direction
Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Steel:
    """A block with what it belongs to.

    Args:
        member: of the frame.
        piece: own name of the piece.
        fitting: its name, empty for the main part.
        kind: of the fitting.
        block: in space.
    """

    member: str
    piece: str
    fitting: str
    kind: FittingKind | None
    block: Block

    @property
    def name(self) -> str:
        """In words."""
        return f"{self.piece} {self.fitting}".strip()


def in_the_way(placed: Iterable[Placed], supports: Supports) -> Iterator[tuple[tuple[str, str], Finding]]:
    """Steel that would stand where other steel stands: the own names of two pieces, and the finding.

    What a member and its own support have to do with each other is worked out with their connection, and
    is not looked at here.

    Args:
        placed: every piece where it stands.
        supports: what carries what.
    """
    steel = [one for piece in placed for one in _steel_of(piece)]
    if not steel:
        return
    joined = {frozenset((site.member.name, site.support.name)) for site in supports.sites}
    joined |= {frozenset((bearing.member.name, bearing.column.name)) for bearing in supports.bearings}
    pairs = [(a, b) for a, b in _near(steel) if _apart(steel[a], steel[b], joined)]
    depths = _overlaps([(steel[a].block, steel[b].block) for a, b in pairs])
    clashes: dict[tuple[str, str], dict[tuple[str, str], tuple[_Steel, _Steel]]] = defaultdict(dict)
    for (a, b), deep in zip(pairs, depths, strict=True):
        if deep > _TOUCH:
            one, two = steel[a], steel[b]
            clashes[one.piece, two.piece].setdefault((one.name, two.name), (one, two))
    passing = {frozenset((site.member.name, site.support.name)): site for site in supports.through}
    for pieces, found in clashes.items():
        first, *others = found.values()
        site = passing.get(frozenset(steel.member for steel in first))
        yield pieces, _through(site) if site else _finding([first, *others])


def _steel_of(piece: Placed) -> Iterator[_Steel]:
    name = piece.assembly.mark
    for block in blocks_of(piece.assembly.main, piece.placement):
        yield _Steel(piece.member, name, "", None, block)
    for fitting in piece.assembly.fittings:
        for block in blocks_of(fitting.part, fitting.placement.then(piece.placement)):
            yield _Steel(piece.member, name, fitting.name, fitting.kind, block)


def _near(steel: Sequence[_Steel]) -> Iterator[tuple[int, int]]:
    """Blocks whose upright hulls overlap, each two once."""
    lows = np.array([one.block.low for one in steel])
    highs = np.array([one.block.high for one in steel])
    hulls = box(lows[:, 0], lows[:, 1], highs[:, 0], highs[:, 1])
    first, second = STRtree(hulls).query(hulls)
    level = (lows[first, 2] < highs[second, 2]) & (lows[second, 2] < highs[first, 2])
    keep = (first < second) & level
    yield from zip(first[keep].tolist(), second[keep].tolist(), strict=True)


def _apart(one: _Steel, two: _Steel, joined: set[frozenset[str]]) -> bool:
    """Whether two blocks have nothing to do with each other by the connection they are part of."""
    if one.piece == two.piece:
        return bool(one.fitting and two.fitting and one.fitting != two.fitting)
    if one.member == two.member:
        return False
    both_main = not one.fitting and not two.fitting
    return not both_main or frozenset((one.member, two.member)) not in joined


def _overlaps(pairs: Sequence[tuple[Block, Block]]) -> Floats:
    """How deep each two blocks lie in each other, inches; negative where a plane parts them.

    Source: the separating axis theorem for boxes (S. Gottschalk, M. C. Lin, D. Manocha, 1996).
    """
    if not pairs:
        return np.zeros(0)
    ones, twos = ([pair[n] for pair in pairs] for n in (0, 1))
    away = np.array([b.centre for b in twos]) - np.array([a.centre for a in ones])
    axes_a, axes_b = np.array([a.axes for a in ones]), np.array([b.axes for b in twos])
    halves_a, halves_b = np.array([a.halves for a in ones]), np.array([b.halves for b in twos])
    edges = np.cross(axes_a[:, :, None, :], axes_b[:, None, :, :]).reshape(len(pairs), 9, 3)
    ways = np.concatenate([axes_a, axes_b, edges], axis=1)
    size = np.linalg.norm(ways, axis=2)
    usable = size > _ANY
    ways = ways / np.where(usable, size, 1.0)[:, :, None]
    reach = sum(
        (np.abs(np.einsum("nkc,nac->nka", ways, axes)) * halves[:, None, :]).sum(axis=2)
        for axes, halves in ((axes_a, halves_a), (axes_b, halves_b))
    )
    deep = reach - np.abs(np.einsum("nkc,nc->nk", ways, away))
    least: Floats = np.where(usable, deep, np.inf).min(axis=1)
    return least


def _through(site: Site) -> Finding:
    """A beam that goes on past a column as an overhang, through it and not over it."""
    beam, column = site.member.name, site.support.name
    return Finding(
        "in-the-way",
        Severity.ERROR,
        beam,
        f"its overhang goes on past {column} and through it",
        f'let {column} end under it with under = "{beam}", or take the overhang out, so that the '
        f"{site.word} is joined to {column}",
    )


def _finding(clashes: list[tuple[_Steel, _Steel]]) -> Finding:
    """What two pieces have in one place."""
    one, two = clashes[0]
    kinds = {steel.kind for pair in clashes for steel in pair}
    remedy = (
        "use an extended plate, which keeps the beam outside the stiffeners, or let one plate be both "
        "and enter it as drawn"
        if FittingKind.STIFFENER in kinds
        else "set them apart, turn or cope one, or choose another connection for one of them"
    )
    more = f", and {len(clashes) - 1} more of the two" if len(clashes) > 1 else ""
    return Finding(
        "in-the-way",
        Severity.ERROR,
        one.member,
        f"{one.name} and {two.name} would stand in one place{more}",
        remedy,
    )
