"""The bolts that are put in at the site, and holes that nothing is bolted to: both from where holes meet."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from gageline.detail.bolting import FieldBolts, field_bolts_of
from gageline.detail.mating import Pile, Ply
from gageline.detail.space import Vec
from gageline.part import Finding, FittingKind, Severity
from gageline.steel import bolt
from gageline.units import Length

__all__ = ["Meeting", "site_bolts", "unmet_holes"]


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two pieces that are joined at a place.

    Args:
        name: of the connection: `start of B4`, `G1 on P2`.
        piece: own name of the piece that is put in.
        support: own name of the piece that carries it.
        point: where they meet, inches.
        second: it shares bolts that are counted with another connection.
    """

    name: str
    piece: str
    support: str
    point: Vec
    second: bool = False


def site_bolts(piles: Iterable[Pile], meetings: Sequence[Meeting]) -> tuple[FieldBolts, ...]:
    """The field bolts of a frame, counted hole by hole and named for the connection they belong to.

    Args:
        piles: every hole of the frame, with those it meets.
        meetings: the connections of the frame, in the order of the list.

    Returns:
        By connection and grip; holes that meet without a connection of the frame come last.
    """
    counts: Counter[tuple[Meeting, str, Length]] = Counter()
    for pile in piles:
        if len(pile.pieces) > 1 and pile.bolt:
            counts[_meeting(pile, meetings), pile.bolt, pile.grip] += 1
    order = {meeting: number for number, meeting in enumerate(meetings)}
    rows = sorted(counts.items(), key=lambda row: (order.get(row[0][0], len(order)), row[0][2]))
    return tuple(
        field_bolts_of(meeting.name, (meeting.piece, meeting.support), bolt(size), count, grip)
        for (meeting, size, grip), count in rows
    )


def _meeting(pile: Pile, meetings: Sequence[Meeting]) -> Meeting:
    """The connection nearest to the bolt of those between its pieces; of shared bolts the one that counts."""
    pieces, place = set(pile.pieces), pile.plies[0].point
    known = [one for one in meetings if {one.piece, one.support} <= pieces]
    if not known:
        support, piece = pile.pieces[0], pile.pieces[-1]
        return Meeting(f"{piece} to {support}", piece, support, (0.0, 0.0, 0.0))
    shared = len(pieces) > 2
    return min(known, key=lambda one: (shared and one.second, math.dist(one.point, place)))


def unmet_holes(piles: Iterable[Pile]) -> Iterator[Finding]:
    """A finding for every group of holes that meets no hole of another piece and none of its own.

    Base plates are left out: the frame's rods come up through them.

    Args:
        piles: every hole of the frame, with those it meets.
    """
    alone: dict[tuple[str, str, str], list[Ply]] = {}
    for pile in piles:
        ply = pile.plies[0]
        if len(pile.plies) == 1 and ply.group.mates and ply.kind is not FittingKind.BASE_PLATE:
            alone.setdefault((ply.piece, ply.fitting, ply.group.name), []).append(ply)
    for (piece, fitting, group), plies in alone.items():
        count = len(plies)
        where = f"{fitting}, {group}" if fitting else group
        said = f"1 hole ({where}) meets" if count == 1 else f"{count} holes ({where}) meet"
        yield Finding(
            "holes-meet-nothing",
            Severity.WARNING,
            piece,
            f"{said} no hole of another piece",
            "make the holes of what is bolted there agree; leave it so where it is no part of this frame",
        )
