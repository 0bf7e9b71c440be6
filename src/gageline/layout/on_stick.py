"""The readings for one stick: the steel as it came, beside the steel as drawn."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from gageline.job import Corner, Stick
from gageline.layout.long_tape import LongTape, tape_of
from gageline.layout.mark import Mark, MarkKind
from gageline.layout.reading import Datum, Reading, Scale, across
from gageline.layout.result import Layout
from gageline.layout.seats import Seat
from gageline.layout.turning import Laid, camber_lean, lay_down
from gageline.layout.ways import Choice, Placed, Way, place
from gageline.part import End, Face, Part, bounds, extent_y, extent_z
from gageline.steel import Plate, Profile
from gageline.units import ZERO, Length, System, round_to

__all__ = ["SeatOnStick", "StickLayout", "StickReading", "lay_out_on", "tape_from"]

_FLAT = frozenset({Face.TOP, Face.BOTTOM, Face.LEG_B})
_MIDDLED = frozenset({Profile.I_SHAPE, Profile.TEE, Profile.BOX, Profile.TUBE})


@dataclass(frozen=True, slots=True)
class StickReading:
    """One reading as drawn and as it is on this stick.

    Args:
        face: the face it is read on.
        kind: what is struck or punched.
        for_: the feature.
        nominal: the reading on steel as drawn.
        actual: the reading on this stick.
        why: what changed it; empty where it is the same.
    """

    face: Face
    kind: MarkKind
    for_: str
    nominal: Reading
    actual: Reading
    why: str

    @property
    def changed(self) -> bool:
        """Whether the tape is held to another place than on steel as drawn."""
        return self.nominal.tape != self.actual.tape or self.nominal.from_ is not self.actual.from_


@dataclass(frozen=True, slots=True)
class SeatOnStick:
    """How a fitting comes to sit on this stick.

    Args:
        seat: as drawn.
        projection: past the steel at the level of the fitting, least and most; None in between.
        rise: from the bottom edge of this stick up to its lowest edge.
        web_off: how far it stands off the middle of the flanges, above zero toward the near side.
        plumb: how far its upper end leans off a square held to the top flange, over its own height;
            zero where no tilt was read.
    """

    seat: Seat
    projection: tuple[Length, Length] | None
    rise: Length
    web_off: Length
    plumb: Length


@dataclass(frozen=True, slots=True)
class StickLayout:
    """A piece laid out on the stick that came.

    Args:
        layout: on steel as drawn.
        laid: the stick as it lies, turned where that brings its camber up.
        placed: where the piece lies on it.
        held: the face that rows are held from.
        readings: every reading along and across, as drawn and on this stick, in the order of work.
        seats: of the fittings.
        depth_over: how much deeper the stick is than its section, at the left and at the right end.
        lean: how far its camber leans each end from top to bottom; zero where none was read.
        tape: the correction of long readings.
    """

    layout: Layout
    laid: Laid
    placed: Placed
    held: Face
    readings: tuple[StickReading, ...]
    seats: tuple[SeatOnStick, ...]
    depth_over: tuple[Length, Length]
    lean: Length
    tape: LongTape

    @property
    def stick(self) -> Stick:
        """The stick as it lies."""
        return self.laid.stick

    @property
    def datum(self) -> str:
        """Where the running tape is hooked, in words."""
        left = self.placed.left
        if left.trim:
            return "left end, after the trim"
        return "left end" if left.plane.place == "square" else f"left end, {left.plane.place}"

    @property
    def changed(self) -> tuple[StickReading, ...]:
        """The readings that are not those of steel as drawn."""
        return tuple(reading for reading in self.readings if reading.changed)


def lay_out_on(layout: Layout, stick: Stick, way: Way, held: Face = Face.TOP) -> StickLayout:
    """Lay a piece out on a stick as it came.

    Rows keep their distance from the face they are held from; the other edge's readings take up what
    the stick is deeper or shallower. Gage lines on flanges keep their distance from the web.

    Args:
        layout: of the piece on steel as drawn.
        stick: as measured in the yard.
        way: what is done about its ends.
        held: `Face.TOP` to hold rows from the top of steel, `Face.BOTTOM` from the bottom.
    """
    part = layout.main.part
    laid = lay_down(stick, part.stock)
    placed = place(layout.assembly, laid.stick, way, layout.tape)
    tape = tape_of(laid.stick)
    over = _depth_over(laid.stick, part)
    steel = _Steel(part, laid.stick, placed, held, tape, over, layout.tape, layout.system)
    low, high = extent_y(part.stock)
    camber = laid.stick.camber or ZERO
    return StickLayout(
        layout=layout,
        laid=laid,
        placed=placed,
        held=held,
        readings=tuple(dict.fromkeys(_readings(layout.main.marks, steel))),
        seats=tuple(_seat(steel, seat) for seat in layout.seats),
        depth_over=over,
        lean=camber_lean(camber, placed.length, high - low),
        tape=tape,
    )


def tape_from(on: StickLayout, x: Length, end: End, corner: Corner) -> Length:
    """What a tape reads that is hooked at any corner of the stick as it came, instead of at the datum.

    Args:
        on: the piece on the stick.
        x: of the mark, from the piece's left end as drawn.
        end: the end the tape is hooked at.
        corner: the corner of that end.
    """
    placed = on.placed
    place_on_stick = placed.origin + x
    back = placed.fit(end).plane.back(corner)
    true = place_on_stick - back if end is End.LEFT else placed.length - back - place_on_stick
    return on.tape.reading(true)


@dataclass(frozen=True, slots=True)
class _Steel:
    """The stick as the readings see it."""

    part: Part
    stick: Stick
    placed: Placed
    held: Face
    tape: LongTape
    over: tuple[Length, Length]
    step: Length
    system: System

    def over_at(self, x: Length) -> Length:
        """How much deeper the stick is at a place along the piece."""
        left, right = self.over
        return left + (right - left) * x.ratio(self.part.length)

    def lengthwise(self) -> Scale:
        """The running tape from the datum."""
        return Scale(-self.placed.shift, 1, Datum.LEFT_END, Datum.PAST_LEFT)

    def crosswise(self, face: Face, x: Length) -> tuple[Scale, Scale]:
        """The two tapes across a face, their edges where this stick has them."""
        first, back = across(self.part.stock, face)
        if isinstance(self.part.stock, Plate) or face in _FLAT:
            return first, _moved(back, self.edge_over(face, x))
        over = self.over_at(x)
        if self.held is Face.TOP or first.ahead is not Datum.TOP_EDGE:
            return first, _moved(back, over)
        return _moved(first, over), back

    def edge_over(self, face: Face, x: Length) -> Length:
        """How much further the edge across lies on a flange, a leg or a plate."""
        stock = self.part.stock
        far, near = extent_z(stock)
        if isinstance(stock, Plate):
            return self.over_at(x)
        ends = self.stick.left, self.stick.right
        reads = [end.top_width if face is Face.TOP else end.bottom_width for end in ends]
        widths = [width for width in reads if width is not None]
        over = sum(widths, ZERO) / len(widths) - (near - far) if widths else ZERO
        if stock.profile not in _MIDDLED:
            return over
        return over / 2 - (self.stick.web_off or ZERO)


def _moved(scale: Scale, out: Length) -> Scale:
    """A tape whose edge lies further out."""
    return replace(scale, zero=scale.zero - out * scale.sign)


def _depth_over(stick: Stick, part: Part) -> tuple[Length, Length]:
    low, high = extent_y(part.stock)
    left, right = (
        None if read.depth is None else read.depth - (high - low) for read in (stick.left, stick.right)
    )
    # One end read alone stands for both: a stick is rolled in one pass.
    first = left if left is not None else right
    second = right if right is not None else left
    return first or ZERO, second or ZERO


def _readings(marks: Iterable[Mark], steel: _Steel) -> Iterable[StickReading]:
    """The readings of every mark, each pattern moved as one."""
    mates = {group.name for group in steel.part.groups if group.mates}
    shared: dict[tuple[Face, str], Mark] = {}
    every = tuple(marks)
    for mark in every:
        if mark.kind is MarkKind.HOLE and mark.for_.removesuffix(", other wall") in mates:
            shared.setdefault((mark.face, mark.for_), mark)
    given = {f"{end} end" for end in End if steel.placed.fit(end).as_came}
    for mark in every:
        if mark.kind is MarkKind.CUT_LINE and mark.for_ in given:
            continue  # the end is used as it came: no line is struck
        reference = shared.get((mark.face, mark.for_), mark)
        yield from _mark_readings(mark, reference, steel)


def _mark_readings(mark: Mark, reference: Mark, steel: _Steel) -> Iterable[StickReading]:
    spot = mark.spot
    x, y = spot.at
    point = mark.to is None
    if point or mark.runs_across:
        actual = _read(steel.lengthwise(), x, reference.spot.at[0], steel)
        yield StickReading(mark.face, mark.kind, mark.for_, spot.x, actual, _why_along(steel, spot.x, actual))
    if point or not mark.runs_across:
        first, back = steel.crosswise(mark.face, x)
        for scale, nominal in ((first, spot.y), (back, spot.y_back)):
            actual = _read(scale, y, reference.spot.at[1], steel, long=False)
            why = _why_across(steel, mark.face, x, nominal, actual)
            yield StickReading(mark.face, mark.kind, mark.for_, nominal, actual, why)


def _read(scale: Scale, at: Length, reference: Length, steel: _Steel, *, long: bool = True) -> Reading:
    """A reading moved with the reference of its pattern, which is rounded to the tape once."""
    start = scale.measure(reference)
    true = steel.tape.reading(start) if long else start
    return scale.reading(at, round_to(true, steel.step) - start, steel.system)


def _why_along(steel: _Steel, nominal: Reading, actual: Reading) -> str:
    if nominal.tape == actual.tape and nominal.from_ is actual.from_:
        return ""
    reasons = []
    if steel.placed.shift:
        reasons.append(_SHIFTED[steel.placed.way.choice])
    if round_to(steel.tape.reading(actual.true), steel.step) != round_to(actual.true, steel.step):
        reasons.append(steel.tape.why)
    return "; ".join(reasons) or "rounding to the tape"


_SHIFTED = {
    Choice.TRIM: "trimmed",
    Choice.AS_IS: "",
    Choice.HOLD: "held from the right end",
    Choice.SPLIT: "length split between the ends",
}


def _why_across(steel: _Steel, face: Face, x: Length, nominal: Reading, actual: Reading) -> str:
    if nominal.tape == actual.tape and nominal.from_ is actual.from_:
        return ""
    if face in _FLAT:
        return "width and web off centre" if steel.stick.web_off else "width as it came"
    return "deeper than drawn" if steel.over_at(x) > ZERO else "shallower than drawn"


def _seat(steel: _Steel, seat: Seat) -> SeatOnStick:
    fitting, stick = seat.fitting, steel.stick
    (low, high), (far, near) = extent_y(steel.part.stock), extent_z(steel.part.stock)
    under, above = bounds(fitting)[1]
    if seat.drop is None:
        above = high
    projection = None
    if seat.projection is not None and fitting.end is not None:
        fit = steel.placed.fit(fitting.end)
        levels = (under - low, above - low)
        shorts = [fit.short_at(level.ratio(high - low), Fraction(1, 2)) for level in levels]
        projection = seat.projection + min(shorts), seat.projection + max(shorts)
    read = stick.at(fitting.end or End.LEFT)
    width = read.top_width or near - far
    plumb = read.top_tilt * (above - under).ratio(width) if read.top_tilt else ZERO
    over = steel.over_at(ZERO if fitting.end is End.LEFT else steel.part.length)
    return SeatOnStick(
        seat, projection, seat.rise + (over if steel.held is Face.TOP else ZERO), stick.web_off or ZERO, plumb
    )
