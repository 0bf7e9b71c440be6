"""In which order a sheet is sheared: every cut goes from edge to edge of what is then in the shear."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from gageline.errors import ValueProblem
from gageline.stock.plates import Burner, Laid, SheetPlan
from gageline.units import ZERO, Length


@dataclass(frozen=True, slots=True)
class ShearCut:
    """One cut of a sheet, or of a part of it that earlier cuts have left.

    Args:
        number: its place in the order, from 1.
        across: whether it runs across the sheet's length; else it runs along it.
        at: where the cut begins to take, from the sheet's first end if across, else from its lower edge;
            a kerf lies beyond it.
        start: where the cut begins, from the sheet's lower edge if across, else from its first end.
        stop: where it ends, from the same edge.
        width: of what comes off at the first end or lower edge, zero where an edge is only shaved: what the
            stop of the shear is set to.
        frees: marks of the pieces that have their size with this cut.
    """

    number: int
    across: bool
    at: Length
    start: Length
    stop: Length
    width: Length
    frees: tuple[str, ...] = ()


_Corner = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class _Panel:
    """What is in the shear: from one corner of the sheet to another, with the pieces to come from it."""

    low: _Corner
    high: _Corner
    pieces: tuple[Laid, ...]


def shear_cuts(plan: SheetPlan, burner: Burner) -> tuple[ShearCut, ...]:
    """The cuts of a sheet in the order that a shear makes them: strips first, then each strip.

    Args:
        plan: the sheet and the pieces on it.
        burner: how plates are cut; its kerf is zero for a shear.

    Returns:
        The cuts; none for a sheet that is one piece, or for no pieces.

    Raises:
        ValueProblem: pieces that no cut from edge to edge takes apart.
    """
    if not plan.pieces:
        return ()
    whole = _Panel((ZERO, ZERO), (plan.sheet.length, plan.sheet.width), plan.pieces)
    cuts = _part(whole, burner.kerf)
    return tuple(replace(cut, number=number) for number, cut in enumerate(cuts, 1))


def _part(panel: _Panel, kerf: Length) -> list[ShearCut]:
    """The fewest cuts, first across or first along, that give every piece of a panel its size."""
    ways = []
    for axis in (0, 1):
        strips = _strips(panel, axis)
        if len(strips) > 1 or not _fills(panel, axis):
            ways.append(_sever(panel, axis, strips, kerf))
    if not ways and len(panel.pieces) > 1:
        marks = ", ".join(piece.mark for piece in panel.pieces)
        raise ValueProblem(f"{marks}: no cut from edge to edge takes these apart: burn this sheet")
    return min(ways, key=len, default=[])


def _sever(panel: _Panel, axis: int, strips: Sequence[tuple[Laid, ...]], kerf: Length) -> list[ShearCut]:
    """The cuts of one direction through a panel, waste between strips included, then those of each strip."""
    cuts: list[ShearCut] = []
    rest: list[ShearCut] = []
    sides = panel.low[1 - axis], panel.high[1 - axis]

    def cut(begin: Length, at: Length) -> None:
        cuts.append(ShearCut(0, axis == 0, at, *sides, max(at - begin, ZERO)))

    begin = panel.low[axis]
    for strip in strips:
        low = min(_corners(piece)[0][axis] for piece in strip)
        high = max(_corners(piece)[1][axis] for piece in strip)
        if low > begin:
            cut(begin, low - kerf)
        if high < panel.high[axis]:
            cut(low, high)
        ends = ((low, sides[0]), (high, sides[1])), ((sides[0], low), (sides[1], high))
        own = _part(_Panel(*ends[axis], strip), kerf)
        if not own:
            cuts[-1] = replace(cuts[-1], frees=(*cuts[-1].frees, strip[0].mark))
        rest += own
        begin = high + kerf
    return cuts + rest


def _corners(piece: Laid) -> tuple[_Corner, _Corner]:
    return (piece.x, piece.y), (piece.x + piece.along, piece.y + piece.across)


def _fills(panel: _Panel, axis: int) -> bool:
    """Whether the pieces of a panel reach from one side of it to the other."""
    corners = [_corners(piece) for piece in panel.pieces]
    low, high = min(low[axis] for low, _ in corners), max(high[axis] for _, high in corners)
    return low == panel.low[axis] and high == panel.high[axis]


def _strips(panel: _Panel, axis: int) -> list[tuple[Laid, ...]]:
    """Pieces of a panel in groups that a cut from edge to edge takes apart."""
    strips: list[list[Laid]] = []
    reach = panel.low[axis]
    for piece in sorted(panel.pieces, key=lambda p: (_corners(p)[0][axis], _corners(p)[0][1 - axis])):
        low, high = _corners(piece)[0][axis], _corners(piece)[1][axis]
        if not strips or low >= reach:
            strips.append([])
        strips[-1].append(piece)
        reach = max(reach, high)
    return [tuple(strip) for strip in strips]
