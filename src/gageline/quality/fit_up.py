"""The joints of a piece as a shop makes them, and the piece between its supports."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from gageline.part import Assembly, End, FittingKind, Join
from gageline.quality.bolted import Hold
from gageline.quality.drilled import bolted_of
from gageline.quality.joint import Joint
from gageline.quality.mill import astm_a6, en_10034
from gageline.quality.spread import Spread
from gageline.steel import Measure, Plate, Profile

__all__ = ["Span", "hold_of", "joints_of", "span_of"]

_REACH = frozenset({FittingKind.ANGLE, FittingKind.PLATE, FittingKind.END_PLATE})  # they reach a support


@dataclass(frozen=True, slots=True)
class Span:
    """The piece between its supports: how much out-to-out may be off, and how much it is.

    Args:
        long: how much longer it may be before it will not go in, in.
        short: how much shorter before shims or field bolts no longer make up for it, in.
        sigma: standard deviation of out-to-out less the distance between the supports, in.
        off: what it is known to be off, in.
    """

    long: float
    short: float
    sigma: float
    off: float = 0.0


def joints_of(
    assembly: Assembly,
    spread: Spread,
    *,
    slotted_support: bool = False,
    free: bool = True,
    web_off: float | None = None,
) -> tuple[Joint, ...]:
    """The bolted joints of a piece as a shop makes them, see `bolted_of`.

    Args:
        assembly: the piece.
        spread: of the shop.
        slotted_support: the supports have horizontal short slots.
        free: the piece can be shifted on its supports.
        web_off: what was read of the web off the middle of the flanges, in; None for anything permitted.
    """
    hold = hold_of(assembly, free=free, web_off=web_off)
    return tuple(one.joint(spread, hold, slotted=slotted_support) for one in bolted_of(assembly))


def hold_of(assembly: Assembly, *, free: bool, web_off: float | None) -> Hold:
    """How a piece is held at its supports, with what the mill is permitted for its web."""
    stock = assembly.main.stock
    if isinstance(stock, Plate) or stock.profile is not Profile.I_SHAPE:
        return Hold(free, web_off, 0.0)
    limit = astm_a6.web_off(stock) if stock.system is Measure.US else en_10034.web_off(stock)
    return Hold(free, web_off, limit.over.inches if limit and limit.over else 0.0)


def span_of(
    assembly: Assembly, spread: Spread, *, long: float = 1 / 8, short: float = 1 / 4, off: float = 0.0
) -> Span | None:
    """The piece between its supports; None where no fittings at both ends reach them.

    Args:
        assembly: the piece.
        spread: of the shop.
        long: how much longer than drawn it may be, in (common practice, no source).
        short: how much shorter, in (common practice, no source).
        off: what out-to-out is known to be off, in.
    """
    ends = [[one for one in assembly.fittings if one.end is end and one.kind in _REACH] for end in End]
    if not all(ends):
        return None
    squares = spread.supports**2
    for fittings in ends:
        bolted = any(one.join is Join.BOLTED for one in fittings)
        squares += spread.setting**2 + (spread.tape**2 if bolted else 0.0)
    return Span(long, short, sqrt(squares), off)
