"""The joints of a piece, as the odds see them: shop bolts of its fittings, field bolts to its supports."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import sqrt

from gageline.part import Assembly, End, Face, Fitting, Hole, HoleGroup, Join, face_point, normal
from gageline.quality.joint import BoltPlace, Joint, Lot
from gageline.quality.mill import astm_a6, en_10034
from gageline.quality.spread import Spread
from gageline.steel import HoleKind, Measure, Plate, Profile, bolt, hole_size
from gageline.units import Length

__all__ = ["Span", "joints_of", "span_of"]

_SAME = Length.from_inches(1) / 64  # holes closer than this are one hole through two plies
_TWO = sqrt(2)


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


@dataclass(frozen=True, slots=True)
class _Drilled:
    """A hole of a fitting where it lies in the piece."""

    place: tuple[Length, Length, Length]
    hole: Hole
    group: HoleGroup
    runs_up: bool


def joints_of(
    assembly: Assembly,
    spread: Spread,
    *,
    slotted_support: bool = False,
    free: bool = True,
    web_off: float | None = None,
) -> tuple[Joint, ...]:
    """The bolted joints of a piece.

    A fitting bolted to the web is shifted on it until its bolts enter; so is the whole piece on each
    support. Each fitting is judged against the web by itself, also where two share their bolts. The
    holes of a support are taken as those of the fittings' own kind, marked and drilled alike, for the
    job document does not hold the support.

    Args:
        assembly: the piece.
        spread: of the shop.
        slotted_support: the supports have horizontal short slots.
        free: the piece can be shifted on its supports; where something else holds it, the web off the
            middle of the flanges is felt.
        web_off: what was read of that, in; None to take it as anything that the mill is permitted.
    """
    hold = _Hold(free, web_off, _permitted_web_off(assembly))
    shop = (_shop(assembly, fitting, spread) for fitting in assembly.fittings)
    field = (_field(assembly, end, spread, hold, slotted=slotted_support) for end in End)
    bare = (_bare(group, spread) for group in assembly.main.groups if _is_bare(assembly, group))
    return tuple(joint for found in (shop, field, bare) for joint in found if joint is not None)


@dataclass(frozen=True, slots=True)
class _Hold:
    """Whether the piece can be shifted on its supports, and how far its web may be off."""

    free: bool
    web_off: float | None
    permitted: float


def _permitted_web_off(assembly: Assembly) -> float:
    stock = assembly.main.stock
    if isinstance(stock, Plate) or stock.profile is not Profile.I_SHAPE:
        return 0.0
    limit = astm_a6.web_off(stock) if stock.system is Measure.US else en_10034.web_off(stock)
    return limit.over.inches if limit and limit.over else 0.0


def span_of(
    assembly: Assembly, spread: Spread, *, long: float = 1 / 8, short: float = 1 / 4, off: float = 0.0
) -> Span | None:
    """The piece between its supports; None where it has no fittings at both ends to reach them.

    Args:
        assembly: the piece.
        spread: of the shop.
        long: how much longer than drawn it may be, in (common practice, no source).
        short: how much shorter, in (common practice, no source).
        off: what out-to-out is known to be off, in.
    """
    ends = [[one for one in assembly.fittings if one.end is end] for end in End]
    if not all(ends):
        return None
    squares = spread.supports**2
    for fittings in ends:
        bolted = any(one.join is Join.BOLTED for one in fittings)
        squares += spread.setting**2 + (spread.tape**2 if bolted else 0.0)
    return Span(long, short, sqrt(squares), off)


def _drilled(fitting: Fitting) -> Iterator[_Drilled]:
    """The holes of a fitting in the space of the piece, with the way their slots run."""
    stock = fitting.part.stock
    for group in fitting.part.groups:
        for hole in group.holes:
            place = fitting.placement.point(face_point(stock, group.face, hole.x, hole.y))
            along = fitting.placement.ex
            upright = abs(along[1]) > 0.5
            yield _Drilled(place, hole, group, hole.is_slot and upright == (hole.angle == 0))


def _looks(fitting: Fitting, face: Face) -> tuple[float, float, float]:
    x, y, z = normal(face)
    return fitting.placement.turn((float(x), float(y), float(z)))


def _play(hole: Hole, other_width: Length, other_length: Length, bolt_size: str) -> tuple[float, float]:
    """How far two holes may be apart, and how much further along their slots, in."""
    size = bolt(bolt_size).diameter
    clear = ((hole.width + other_width) / 2 - size).inches
    slot = ((hole.length - hole.width + other_length - other_width) / 2).inches
    return clear, slot


def _shop(assembly: Assembly, fitting: Fitting, spread: Spread) -> Joint | None:
    """A fitting bolted to the web, hole by hole with the holes of the web that it lies on."""
    if fitting.join is not Join.BOLTED or fitting.on is None:
        return None
    web = [
        (face_point(assembly.main.stock, group.face, hole.x, hole.y), hole, group)
        for group in assembly.main.groups
        for hole in group.holes
    ]
    bolts = []
    for drilled in _drilled(fitting):
        for (x, y, _), hole, group in web:
            apart = max(abs(x - drilled.place[0]), abs(y - drilled.place[1]))
            if apart <= _SAME and group.bolt and abs(_looks(fitting, drilled.group.face)[2]) > 0.5:
                clear, slot = _play(drilled.hole, hole.width, hole.length, group.bolt)
                upright = drilled.runs_up or (hole.is_slot and hole.angle != 0)
                bolts.append(BoltPlace(x.inches, y.inches, clear, 0.0 if upright else slot))
    if not bolts:
        return None
    lot = Lot(_TWO * spread.tape, _TWO * spread.gage)
    turn = _TWO * spread.square
    return Joint(f"{fitting.name} to the web", tuple(bolts), (lot,), _TWO * spread.hole, turn)


def _field(assembly: Assembly, end: End, spread: Spread, hold: _Hold, *, slotted: bool) -> Joint | None:
    """The fittings of one end to their support: across is along z, up is y."""
    bolts: list[BoltPlace] = []
    lots: list[Lot] = []
    for fitting in assembly.fittings:
        if fitting.end is not end:
            continue
        here = []
        for drilled in _drilled(fitting):
            if drilled.group.bolt and abs(_looks(fitting, drilled.group.face)[0]) > 0.5:
                kind = HoleKind.SSL if slotted else HoleKind.STD
                other = hole_size(bolt(drilled.group.bolt), kind)
                clear, slot = _play(drilled.hole, other.width, other.length, drilled.group.bolt)
                # A slot that runs up is taken as round, on the safe side.
                own = ((drilled.hole.length - drilled.hole.width) / 2).inches if drilled.runs_up else 0.0
                z, y = drilled.place[2].inches, drilled.place[1].inches
                here.append(BoltPlace(z, y, clear, slot - own, len(lots)))
        if here:
            bolts.extend(here)
            lots.append(_set(fitting, spread, hold.web_off or 0.0))
    if not bolts:
        return None
    mill = hold.permitted if hold.web_off is None else 0.0
    name = f"{end} end to its support"
    return Joint(
        name, tuple(bolts), tuple(lots), _TWO * spread.hole, spread.square, mill, hold.free, field=True
    )


def _set(fitting: Fitting, spread: Spread, web_off: float) -> Lot:
    """A fitting that was set to its lines in the shop."""
    across = 0.0 if fitting.on is not None and fitting.join is Join.BOLTED else spread.setting
    return Lot(across, spread.setting, spread.square, web_off)


def _is_bare(assembly: Assembly, group: HoleGroup) -> bool:
    """Whether a group of the main part's web mates with something that is not in this piece."""
    if not (group.mates and group.bolt) or group.face not in {Face.NEAR, Face.FAR, Face.FACE}:
        return False
    first = group.holes[0]
    x, y, _ = face_point(assembly.main.stock, group.face, first.x, first.y)
    return not any(
        max(abs(x - drilled.place[0]), abs(y - drilled.place[1])) <= _SAME
        for fitting in assembly.fittings
        for drilled in _drilled(fitting)
    )


def _bare(group: HoleGroup, spread: Spread) -> Joint:
    other = hole_size(bolt(group.bolt), HoleKind.STD)
    bolts = []
    for hole in group.holes:
        clear, slot = _play(hole, other.width, other.length, group.bolt)
        bolts.append(BoltPlace(hole.x.inches, hole.y.inches, clear, slot if hole.angle == 0 else 0.0))
    lot = Lot(_TWO * spread.tape, _TWO * spread.gage)
    return Joint(group.name, tuple(bolts), (lot,), _TWO * spread.hole, _TWO * spread.square, field=True)
