"""From pieces and sticks of one steel to whole numbers and back.

Two questions come out of it. In the *safe* one a piece takes its length and every cut it could need, so
that any packing can be cut. In the *loose* one a piece takes the least it could, every angled end shared
with another, so that no real plan costs less. They are the same where there is nothing to share.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import reduce
from math import gcd

from gageline.stock.faults import may_use, usable
from gageline.stock.nesting import end_key
from gageline.stock.problem import DropValue, Problem, Stick
from gageline.stock.records import End, Held, Offer, Piece, Saw
from gageline.units import Length

_FINE = 60_000  # units in the longest stick; finer lengths are rounded to the safe side
_FINEST = 250_000  # the same where there are few kinds of pieces
_TABLE = 8_000_000  # units in the longest stick for all kinds together


@dataclass(frozen=True, slots=True)
class Reduced:
    """The two questions, and what their kinds stand for.

    Args:
        safe: pieces at their most, sticks at their least.
        near: pieces at their least, sticks shortened by two ends that share with none; what it gives
            nearly always can be cut.
        loose: pieces at their least, sticks at their most.
        kinds: the pieces of each kind, by mark.
        stocks: the sticks of each kind; a kind of sticks on the rack has one for each that is alike.
    """

    safe: Problem
    near: Problem
    loose: Problem
    kinds: tuple[tuple[Piece, ...], ...]
    stocks: tuple[tuple[Offer | Held, ...], ...]


def safe_ticks(piece: Piece, saw: Saw) -> int:
    """Length that a piece takes at most: one square cut, and a cut of its own for each angled end."""
    angled = [e for e in (piece.left, piece.right) if e.angled]
    return piece.length.ticks + saw.kerf.ticks + sum(e.kerf(saw.kerf).ticks for e in angled)


def loose_ticks(piece: Piece, saw: Saw, shared: Collection[End]) -> int:
    """Length that a piece takes at least: half of each cut that it can share with a neighbour."""
    twice = 2 * piece.length.ticks
    for end in (piece.left, piece.right):
        cut = end.kerf(saw.kerf).ticks
        if end in shared:
            twice += cut - end.run.ticks
        else:
            twice += 2 * cut if end.angled else cut
    return twice // 2


def reduced(
    pieces: Sequence[Piece], stocks: Sequence[Offer | Held], saw: Saw, heats: Mapping[str, str]
) -> Reduced:
    """Put pieces and sticks of one steel into whole numbers.

    Args:
        pieces: the pieces, all of one steel.
        stocks: the sticks of that steel.
        saw: the saw.
        heats: the heat chosen for each group that must come from one.

    Returns:
        The questions; the same whatever the order of the input.
    """
    usables = [s for s in stocks if usable(s, saw).ticks > 0 and (isinstance(s, Held) or s.limit != 0)]
    sticks = _alike(usables)
    ends: Counter[tuple[str, int, int, bool]] = (
        Counter()
    )  # pieces that have an end, for none nests with itself
    for piece in pieces:
        for end in {end_key(piece, e) for e in (piece.left, piece.right) if e.angled}:
            ends[end] += piece.quantity
    groups: dict[tuple[int, int, tuple[bool, ...], bool, tuple[End, ...]], list[Piece]] = {}
    for piece in pieces:
        if piece.quantity == 0:
            continue
        wide = safe_ticks(piece, saw)
        shared = [e for e in (piece.left, piece.right) if e.angled and ends[end_key(piece, e)] > 1]
        narrow = loose_ticks(piece, saw, shared)
        fits = tuple(_fits(piece, group[0], heats) for group in sticks)
        key = (wide, narrow, fits, piece.turnable, (piece.left, piece.right) if shared else ())
        groups.setdefault(key, []).append(piece)
    order = sorted(groups, key=lambda k: (-k[0], -k[1], k[2], min(p.mark for p in groups[k])))
    kinds = tuple(tuple(sorted(groups[k], key=lambda p: p.mark)) for k in order)
    rooms = [usable(group[0], saw).ticks + saw.kerf.ticks for group in sticks]
    ends_left = (saw.end_trim + saw.grip - saw.kerf).ticks
    unit = reduce(gcd, [n for k in order for n in k[:2]] + rooms + [ends_left, saw.keep.ticks], 0) or 1
    finest = min(_FINEST, max(_FINE, _TABLE // max(1, len(order))))
    if max(rooms) // unit > finest:
        unit = -(-max(rooms) // finest)
    question = _Question(
        tuple(sum(p.quantity for p in members) for members in kinds),
        tuple(tuple(g) for g in sticks),
        tuple(rooms),
        tuple(tuple(k[2][s] for k in order) for s in range(len(sticks))),
        unit,
    )
    safe = question.problem([-(-k[0] // unit) for k in order], saw, up=False)
    loose = question.problem([k[1] // unit for k in order], saw, up=True)
    alone = {(e.run, e.kerf(saw.kerf)) for k in order for e in k[4] if e.angled}
    less = sum((run + cut + saw.kerf).ticks for run, cut in alone)
    near = question.problem([-(-k[1] // unit) for k in order], saw, up=False, less=less)
    return Reduced(safe, near, loose, kinds, question.sticks)


@dataclass(frozen=True, slots=True)
class _Question:
    """What the safe and the loose question have in common."""

    demand: tuple[int, ...]
    sticks: tuple[tuple[Offer | Held, ...], ...]
    rooms: tuple[int, ...]
    fits: tuple[tuple[bool, ...], ...]
    unit: int

    def problem(self, lengths: list[int], saw: Saw, *, up: bool, less: int = 0) -> Problem:
        """The question with sticks shortened by `less` ticks and rounded up or down to whole units."""
        cut = [max(self.unit, r - less) for r in self.rooms]
        rooms = [-(-r // self.unit) if up else r // self.unit for r in cut]
        rows = zip(self.sticks, rooms, self.fits, strict=True)
        return Problem(
            tuple(lengths), self.demand, tuple(self._stick(g, r, f, saw, up=up) for g, r, f in rows)
        )

    def _stick(
        self, group: tuple[Offer | Held, ...], room: int, fits: tuple[bool, ...], saw: Saw, *, up: bool
    ) -> Stick:
        first = group[0]
        limit = len(group) if isinstance(first, Held) else _limit(group)
        drop = None
        if saw.drop_percent and first.cents:
            # the last cut is the drop's own; the ends that the saw could not use stay on it
            extra = (saw.end_trim + saw.grip - saw.kerf).ticks
            least = saw.keep.ticks - extra
            cents, ticks = drop_rate(first, saw)
            keep, more = (
                (least // self.unit, -(-extra // self.unit))
                if up
                else (-(-least // self.unit), extra // self.unit)
            )
            drop = DropValue(max(0, keep), more, (cents * self.unit, ticks))
        return Stick(room, first.cents, limit, () if all(fits) else fits, drop)


def drop_rate(stock: Offer | Held, saw: Saw) -> tuple[int, int]:
    """Cents, and the ticks of kept drop that they are credited for."""
    return saw.drop_percent * stock.cents, 100 * stock.length.ticks


def drop_credit(stock: Offer | Held, drop: Length, saw: Saw) -> int:
    """What a drop earns, in whole cents: nothing where it is too short to keep."""
    if drop < saw.keep or drop.ticks <= 0:
        return 0
    cents, ticks = drop_rate(stock, saw)
    return drop.ticks * cents // ticks


def _fits(piece: Piece, stock: Offer | Held, heats: Mapping[str, str]) -> bool:
    chosen = heats.get(piece.one_heat) if piece.one_heat is not None else None
    return may_use(piece, stock) and (piece.one_heat is None or stock.heat == chosen)


def _alike(stocks: Sequence[Offer | Held]) -> list[list[Offer | Held]]:
    """Sticks that make no difference to a plan, together and in a fixed order."""
    groups: dict[tuple[int, int, bool, bool, str, str], list[Offer | Held]] = {}
    for stock in stocks:
        bought = isinstance(stock, Offer)
        detail = f"{stock.arrives} {stock.limit}" if isinstance(stock, Offer) else ""
        key = (stock.length.ticks, stock.cents, bought, stock.certificate, str(stock.heat), detail)
        groups.setdefault(key, []).append(stock)
    ordered = [groups[key] for key in sorted(groups)]
    return [sorted(g, key=lambda s: s.mark if isinstance(s, Held) else "") for g in ordered]


def _limit(group: Sequence[Offer | Held]) -> int | None:
    limits = [s.limit for s in group if isinstance(s, Offer)]
    return None if None in limits else sum(n for n in limits if n is not None)
