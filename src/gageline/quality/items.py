"""What to inspect on a piece, in the order one walks around it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from gageline.layout import Bench, Layout, Pattern, Seat, patterns
from gageline.part import Assembly, End, Face, extent_y, face_thickness
from gageline.quality.fabrication import Rules
from gageline.quality.limits import Limit
from gageline.quality.spread import Act
from gageline.units import ZERO, Length

__all__ = ["Item", "Remedy", "items_of"]


class Remedy(NamedTuple):
    """What puts a reading right.

    Attributes:
        text: in the trade's words.
        ask: whether the engineer must be asked first.
    """

    text: str
    ask: bool


@dataclass(frozen=True, slots=True)
class Item:
    """One thing to read on a finished piece.

    Args:
        name: on the sheet, and the key of its reading; unique in its piece.
        station: where one stands when reading it.
        tool: what is taken in hand.
        wanted: what it should be.
        limit: what is allowed; None where none is held.
        over: what to do when it reads too much.
        under: what to do when it reads too little.
        act: the act whose spread its error tells; None for none.
        per: what the error is divided by for that, in (the depth that a square was held to), else 1.
    """

    name: str
    station: str
    tool: str
    wanted: Length
    limit: Limit | None
    over: Remedy
    under: Remedy
    act: Act | None = None
    per: float = 1.0

    @property
    def taped(self) -> bool:
        """Whether it is read with the tape, to its divisions."""
        return self.tool == _TAPE

    @property
    def bow(self) -> bool:
        """Whether it is read from a string along the piece."""
        return self.tool == _STRING

    @property
    def signed(self) -> bool:
        """Whether it can read below zero: a bow, or a fitting that stands back or above."""
        return self.wanted < ZERO or self.bow or self.act is Act.SETTING


_SHIM = "shim it at the support, or set the fittings further out"
_LONG = Remedy("cut it back, or set the fittings further in", ask=False)
_SHORT = Remedy(_SHIM, ask=True)
_SQUARE = Remedy("grind it square, or check that the gap at the support is acceptable", ask=False)
_HOLE_OFF = Remedy(
    "ream within the oversize rules or slot with the engineer's word, or replace the fitting; weld up and "
    "redrill only with approval",
    ask=True,
)
_HOLE_BIG = Remedy("judge it as oversize, with the engineer's word and hardened washers", ask=True)
_HOLE_SMALL = Remedy("ream it to size", ask=False)
_BOW = Remedy("straighten it by press or heat; camber up may stay in a beam", ask=False)
_SWEEP = Remedy("straighten it by press or heat", ask=False)
_COPE_BIG = Remedy("ask whether the web left is enough; reinforce where it is not", ask=True)
_COPE_SMALL = Remedy("cut it to its line", ask=False)
_GOUGE = Remedy("fill it with weld metal and grind it flush", ask=False)
_RADIUS = Remedy("grind the corner to a smooth radius, no notch left", ask=False)
_MOVE = Remedy("take it off and set it again, or slot its holes with the engineer's word", ask=False)
_LEG = Remedy("add weld metal to the leg", ask=False)
_BIG_LEG = Remedy("leave it, unless it distorts the piece", ask=False)
_GAP = Remedy("clamp it closer; a gap over the limit needs a backing or a new fitting", ask=True)
_NONE = Remedy("none needed", ask=False)
_TAPE, _SQUARE_TOOL, _GAUGE, _STRING = "tape", "square and feeler", "hole gauge", "string"


def items_of(layout: Layout, rules: Rules) -> tuple[Item, ...]:
    """What to inspect on a piece: overall, left end, near side, right end, far side, flanges, out-to-out.

    Args:
        layout: of the piece.
        rules: that it is inspected by.
    """
    assembly, part = layout.assembly, layout.main.part
    bench = Bench(part, layout.tape, layout.system)
    found = patterns(bench)
    items = [
        Item("overall", "along it", _TAPE, part.length, rules.length(part.length), _LONG, _SHORT),
        Item("camber", "along it", _STRING, rules.camber, rules.bow(part, sideways=False), _BOW, _BOW),
        Item("sweep", "along it", _STRING, ZERO, rules.bow(part, sideways=True), _SWEEP, _SWEEP),
        *_end(layout, End.LEFT, rules),
        *_faces(found, _NEAR, rules, backwards=False),
        *_end(layout, End.RIGHT, rules),
        *_faces(found, _FAR, rules, backwards=True),
        *_faces(found, _FLANGES, rules, backwards=False),
        *_between(layout, rules),
    ]
    if assembly.fittings:
        out = layout.out_to_out
        items.append(Item("out to out", "along it", _TAPE, out, rules.length(out), _LONG, _SHORT))
    return tuple(items)


_NEAR = frozenset({Face.NEAR, Face.LEG_A, Face.FACE})
_FAR = frozenset({Face.FAR})
_FLANGES = frozenset({Face.TOP, Face.BOTTOM, Face.LEG_B})
_STATIONS = {Face.LEG_A: "leg A", Face.LEG_B: "leg B", Face.FACE: "marked face"}


def _end(layout: Layout, end: End, rules: Rules) -> Iterator[Item]:
    part, station = layout.main.part, f"{end} end"
    if part.cut(end).square:
        low, high = extent_y(part.stock)
        deep = (high - low).inches
        yield Item(
            f"{end} end square",
            station,
            _SQUARE_TOOL,
            ZERO,
            rules.square(part),
            _SQUARE,
            _SQUARE,
            Act.SQUARE,
            deep,
        )
    for cope in part.copes:
        if cope.end is end:
            name = f"{end} {cope.edge} cope"
            limit = rules.cope()
            yield Item(f"{name} length", station, _TAPE, cope.length, limit, _COPE_BIG, _COPE_SMALL)
            yield Item(f"{name} depth", station, _TAPE, cope.depth, limit, _COPE_BIG, _COPE_SMALL)
            yield Item(
                f"{name} radius",
                station,
                "radius gauge",
                cope.radius,
                rules.cope_radius(cope.radius),
                _NONE,
                _RADIUS,
            )
            yield Item(f"{name} gouge", station, "straightedge", ZERO, rules.gouge(), _GOUGE, _NONE)
    for seat in layout.seats:
        if seat.fitting.end is end:
            yield from _fitting(layout.assembly, seat, station, rules)


def _fitting(assembly: Assembly, seat: Seat, station: str, rules: Rules) -> Iterator[Item]:
    fitting, limit = seat.fitting, rules.fitting()
    if seat.projection is not None and fitting.on is not None:
        name = f"{fitting.name} past the end"
        yield Item(name, station, _TAPE, seat.projection, limit, _MOVE, _MOVE, Act.SETTING)
    drop = seat.first_row if seat.first_row is not None else seat.drop
    if drop is not None:
        what = "first row down" if seat.first_row is not None else "top down"
        yield Item(f"{fitting.name} {what}", station, _TAPE, drop, limit, _MOVE, _MOVE, Act.SETTING)
    for number, weld in enumerate((one for one in assembly.welds if one.fitting == fitting.name), 1):
        which = "" if number == 1 else f" {number}"
        name = f"{fitting.name} weld{which}"
        yield Item(f"{name} leg", station, "weld gauge", weld.size, rules.weld_leg(), _BIG_LEG, _LEG)
        face = fitting.part.stock
        thick = (
            face_thickness(face, next(iter(fitting.part.groups)).face) if fitting.part.groups else weld.size
        )
        yield Item(f"{name} gap", station, "feeler", ZERO, rules.weld_gap(thick), _GAP, _NONE)


def _between(layout: Layout, rules: Rules) -> Iterator[Item]:
    for seat in layout.seats:
        if seat.fitting.end is None:
            yield from _fitting(layout.assembly, seat, "along it", rules)


def _faces(
    found: tuple[Pattern, ...], faces: frozenset[Face], rules: Rules, *, backwards: bool
) -> Iterator[Item]:
    """The patterns of some faces in the order one comes by them."""
    here = [pattern for pattern in found if pattern.face in faces]
    for pattern in sorted(here, key=lambda one: one.spots[0].at[0], reverse=backwards):
        yield from _pattern(pattern, rules)


def _pattern(pattern: Pattern, rules: Rules) -> Iterator[Item]:
    name, station = pattern.name, _STATIONS.get(pattern.face, f"{pattern.face} face")
    limit = rules.hole_place()
    x, row = pattern.columns[0].x, pattern.rows[0]
    yield Item(f"{name}: from left end", station, _TAPE, x.true, limit, _HOLE_OFF, _HOLE_OFF, Act.TAPE)
    where = f"{name}: first row from {row.from_.split(',')[0]}"
    yield Item(where, station, _TAPE, row.true, limit, _HOLE_OFF, _HOLE_OFF, Act.GAGE)
    for axis, word in ((0, "along"), (1, "across")):
        places = [spot.at[axis] for spot in pattern.spots]
        reach = max(places) - min(places)
        if reach:
            # Two holes are wrong here, each by punch and drill.
            yield Item(
                f"{name}: first to last {word}", station, _TAPE, reach, rules.spacing(), _HOLE_OFF, _HOLE_OFF,
                Act.DRILL, 2**0.5,
            )  # fmt: skip
    hole = pattern.group.holes[0]
    yield Item(f"{name}: hole", station, _GAUGE, hole.width, rules.hole(), _HOLE_BIG, _HOLE_SMALL)
    if hole.is_slot:
        yield Item(f"{name}: slot length", station, _GAUGE, hole.length, rules.hole(), _HOLE_BIG, _HOLE_SMALL)
