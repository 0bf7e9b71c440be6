"""Angled ends that share a cut: which pieces of a stick can stand back to back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from gageline.stock.records import End, Piece


@dataclass(frozen=True, slots=True)
class Turned:
    """A piece as it lies in the stick, its right end first if turned, its first cut shared or not."""

    piece: Piece
    turned: bool = False
    shares: bool = False

    @property
    def first(self) -> End:
        """The end that is cut first."""
        return self.piece.right if self.turned else self.piece.left

    @property
    def last(self) -> End:
        """The end that is cut last."""
        return self.piece.left if self.turned else self.piece.right


def end_key(piece: Piece, end: End) -> tuple[str, int, int, bool]:
    """Ends with one key have the same slope on the same face and may share a cut."""
    return end.plane, end.run.ticks, end.across.ticks, piece.turnable


def joins(before: Turned, after: Turned) -> bool:
    """Whether the last cut of one piece can be the first cut of the next.

    A piece that may be turned over brings its long point to either side; of pieces that may not, one
    long point must stand high and the other low, for then the two cuts are parallel.
    """
    last, first = before.last, after.first
    if not (last.angled and end_key(before.piece, last) == end_key(after.piece, first)):
        return False
    return before.piece.turnable or last.long_side != first.long_side


def arrange(pieces: Sequence[Piece]) -> tuple[Turned, ...]:
    """Put the pieces of one stick in order: longest first, equal ones together, angled ends back to back.

    Args:
        pieces: the pieces, one entry each.

    Returns:
        The pieces as they lie in the stick.
    """
    waiting = sorted(pieces, key=_order)
    row: list[Turned] = []
    while waiting:
        found = _partner(row[-1], waiting) if row else None
        if found is None:
            found = _opening(waiting)
        waiting.remove(found.piece)
        row.append(found)
    return tuple(row)


def _order(piece: Piece) -> tuple[int, tuple[str, int, int, bool], tuple[str, int, int, bool], str, str, str]:
    """Longest first; of one length by the ends, so that pieces cut alike lie alike whatever their marks."""
    ends = end_key(piece, piece.left), end_key(piece, piece.right)
    return (-piece.length.ticks, *ends, piece.left.long_side, piece.right.long_side, piece.mark)


def _ways(piece: Piece) -> list[Turned]:
    return [Turned(piece), Turned(piece, turned=True)] if piece.turnable else [Turned(piece)]


def _partner(before: Turned, waiting: list[Piece]) -> Turned | None:
    """The first piece waiting that shares the last cut, rather one whose other end finds a partner too."""
    found = [way for piece in waiting for way in _ways(piece) if joins(before, way)]
    if not found:
        return None
    best = max(found, key=lambda way: _follows(way, waiting))
    return Turned(best.piece, best.turned, shares=True)


def _follows(way: Turned, waiting: list[Piece]) -> bool:
    rest = list(waiting)
    rest.remove(way.piece)
    return any(joins(way, after) for piece in rest for after in _ways(piece))


def _opening(waiting: list[Piece]) -> Turned:
    """The longest piece that no other has to go before, turned so that its last cut can be shared."""
    longest = [w for p in waiting for w in _ways(p)]
    for way in longest:
        if not way.first.angled and _follows(way, waiting):
            return way
    for way in longest:
        if way.piece is waiting[0] and _follows(way, waiting):
            return way
    return Turned(waiting[0])
