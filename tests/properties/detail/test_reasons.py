"""Every number that a reason gives, worked again from the section tables and the practice alone."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assembling import bay, detailed, lengths, near
from gageline.detail import Detailed, Reason
from gageline.part import End
from gageline.steel import Section, bolt, find
from gageline.units import System

CONNECTIONS = ("double angles", "single angle", "single plate", "extended plate", "end plate")
SINGLE = {"single angle", "single plate", "extended plate"}
PLATES = {"single plate", "extended plate"}
SPAN = 180.0  # inches between the girders


def mm(value: float) -> float:
    return value / 25.4


@dataclass(frozen=True)
class Angle:
    """An angle in inches: the gages are those of its legs, the longer one outstanding."""

    name: str
    d: float
    t: float
    out: float
    web: float


@dataclass(frozen=True, kw_only=True)
class Trade:
    """What a shop works by, in inches whatever it measures in."""

    system: System
    beams: tuple[str, ...]
    girders: tuple[str, ...]
    reactions: tuple[int, ...]
    drops: tuple[str, ...]
    size: str
    force: str
    shear: float
    bearing: float | None
    wants: tuple[float, float, float, float]  # to be put in, to be tightened, to a fillet, half a socket
    angle: Angle
    usual: str  # angle, where another is taken for the bolts
    setback: float = 0.5
    clear: float = 0.5
    step: float = 0.5
    spread_step: float = 1 / 16
    outside_step: float = 1 / 8
    play: float = 0.25
    plate: float = 0.375
    plate_gage: float = 3.0
    end_gage: float = 5.5
    gage_step: float = 0.25
    edge: float = 1.5
    end_distance: float = 1.25
    pitch: float = 3.0
    closer: float = 2.25
    drop: float = 3.0
    row_step: float = 0.25
    radius: float = 0.5
    weld: float = 0.25
    plate_weld: float = 0.25
    hole: float = 0.8125
    least_edge: float = 1.0
    bolt_step: float = 0.25
    nut_and_threads: float = 1.0


FEET = Trade(
    system=System.FT_IN,
    beams=("W12X26", "W14X30", "W16X26", "W16X31", "W18X35", "W18X50", "W21X50"),
    girders=("W21X62", "W24X76", "W30X99"),
    reactions=(0, 20, 45, 80),
    drops=tuple(str(eighths / 8) for eighths in range(21)),
    size="3/4",
    force="kip",
    shear=17.9,
    bearing=87.8,
    wants=(0.75, 1.25, 0.75, 2.25 / 2),
    angle=Angle("L4X3-1/2X5/16", 4.0, 0.3125, 2.5, 2.0),
    usual="",
)
METRIC = Trade(
    system=System.MM,
    beams=("IPE 300", "IPE 360", "IPE 400", "IPE 450", "HEA 300"),
    girders=("IPE 500", "IPE 550", "IPE 600", "HEA 600"),
    reactions=(0, 90, 200, 380),
    drops=tuple(str(number * 3) for number in range(21)),
    size="M20",
    force="kN",
    shear=94.1,
    bearing=None,
    wants=(0.875, 1.375, 0.875, 1.25),  # of a 7/8 bolt, for the table has inch bolts only
    angle=Angle("L 120x80x10", mm(120), mm(10), mm(70), mm(45)),
    usual="L 100x100x10",
    setback=mm(10),
    clear=mm(12),
    step=mm(10),
    spread_step=mm(1),
    outside_step=mm(1),
    play=mm(6),
    plate=mm(10),
    plate_gage=mm(75),
    end_gage=mm(140),
    gage_step=mm(5),
    edge=mm(40),
    end_distance=mm(40),
    pitch=mm(70),
    closer=mm(60),
    drop=mm(75),
    row_step=mm(5),
    radius=mm(12),
    weld=mm(6),
    plate_weld=mm(7),  # five eighths of 10 mm
    hole=mm(22),
    least_edge=mm(26),
    bolt_step=mm(5),
    nut_and_threads=mm(18 + 2 * 2.5),
)
TRADES = st.sampled_from([FEET, METRIC])


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


def up(value: float, step: float) -> float:
    return math.ceil((value - 1e-6) / step) * step


def down(value: float, step: float) -> float:
    return math.floor((value + 1e-6) / step) * step


@dataclass(frozen=True)
class Given:
    """A bay that is asked for."""

    trade: Trade
    beam: str
    girder: str
    drop: str
    kind: str
    reaction: int

    @property
    def down(self) -> float:
        """The drop in inches."""
        return float(self.drop) if self.trade is FEET else mm(float(self.drop))

    def detailed(self) -> Detailed:
        ends: dict[str, object] = {"connection": self.kind, "bolt": self.trade.size}
        if self.reaction:
            ends["reaction"] = self.reaction
        table = bay(beam=self.beam, girder=self.girder, drop=self.drop, ends=ends)
        return detailed(table, self.trade.system)


class Worked:
    """One end of a level, square beam, worked by hand from its sections."""

    def __init__(self, asked: Given, pitch: float) -> None:
        self.asked, self.kind, self.t = asked, asked.kind, asked.trade
        self.beam, self.girder, self.drop = section(asked.beam), section(asked.girder), asked.down
        self.pitch = pitch
        self.bolt, t = bolt(self.t.size), self.t
        b, g, kind, drop = self.beam, self.girder, asked.kind, asked.down
        self.setback = t.plate if kind == "end plate" else t.setback
        kdet, kdes = (g.kdet or g.kdes or g.tf).inches, (g.kdes or g.tf).inches
        self.kdes, self.kdet = kdes, max(kdet, kdes)
        self.reach = (g.bf - g.tw).inches / 2
        outside = kind == "extended plate"
        if outside:
            self.setback = up(self.reach + t.clear, t.outside_step)
        self.coped = drop < self.kdet - 1e-9 and not outside
        self.wanted = max(self.kdet, kdes + t.clear) - drop
        self.depth = up(max(self.wanted, b.tf.inches + t.radius), t.step) if self.coped else 0.0
        self.long = up(self.reach + t.clear - self.setback, t.step)
        bottom = drop + b.d.inches
        self.below = bottom - g.d.inches
        self.under = self.below + self.kdet > 1e-9 and not outside
        self.need = self.below + max(self.kdet, kdes + t.clear)
        self.depth_below = up(max(self.need, b.tf.inches + t.radius), t.step) if self.under else 0.0
        beam_k = max((b.kdet or b.kdes or b.tf), (b.kdes or b.tf)).inches
        top = max(drop + (self.depth or beam_k), self.kdet)
        base = min(bottom - (self.depth_below or beam_k), g.d.inches - self.kdet)
        self.room, e = base - top, t.end_distance
        first = max(drop + t.drop, top + e)
        self.first = drop + up(first - drop, t.row_step) if first > drop + t.drop + 1e-9 else first
        left = b.d.inches - self.depth - self.depth_below
        flat = b.T.inches if b.T else b.d.inches - 2 * beam_k
        self.half = left / 2 if self.coped or self.under else flat / 2
        self.by_depth = max(1, math.ceil((self.half - 2 * e) / pitch - 1e-6) + 1)
        self.each = self.row()
        self.by_force = max(1, math.ceil(asked.reaction / self.each - 1e-9))
        rows = max(self.by_depth, self.by_force, 2)
        lowest = base - e - pitch * (min(rows, math.floor((self.room - 2 * e + 1e-6) / pitch) + 1) - 1)
        if lowest < self.first - 1e-6:  # raised to a step, or where only that fits
            even = drop + down(lowest - drop, t.row_step)
            self.first = even if even >= top + e - 1e-6 else lowest
        self.top = top
        self.most = math.floor((base - self.first - e + 1e-6) / pitch) + 1
        self.rows = min(rows, self.most)
        self.last = self.first + pitch * (self.rows - 1)
        self.long_material = pitch * (self.rows - 1) + 2 * e
        self.short = self.by_force > self.most or (self.most < 2 and kind != "end plate")
        self.web = up(b.tw.inches / 2, t.spread_step)
        self.spread = t.end_gage if kind == "end plate" else 2 * (t.angle.out + self.web)
        self.material = t.angle.t if "angle" in kind else t.plate
        self.gage = max(up(self.setback + t.edge, t.gage_step), t.plate_gage)
        self.grip = self.material + (b if kind in PLATES else g).tw.inches

    def row(self) -> float:
        """What a row of bolts carries, kip or kN."""
        t = self.t
        shear = t.shear * (1 if self.kind in SINGLE else 2)
        if t.bearing is None:
            return shear
        clear = 1.2 * (self.pitch - t.hole) / (2.4 * self.bolt.diameter.inches)  # AISC 360-22 J3.11a
        return min(shear, t.bearing * min(1.0, clear) * self.beam.tw.inches)

    def exact(self, *values: float) -> list[float]:
        """Numbers that are written as decimals in inches, and as lengths in millimetres."""
        return list(values) if self.t is METRIC else []

    def closer(self) -> list[float]:
        """What was too far apart: said with the room where it was too little for the reaction."""
        usual = Worked(self.asked, self.t.pitch)
        return [self.pitch, self.t.pitch, *([usual.room] if usual.by_force > usual.most else [])]

    def setback_reason(self) -> list[float]:
        if self.kind == "extended plate":
            return [self.setback, self.t.clear, self.reach, self.t.outside_step]
        return [self.setback] * (2 if self.kind == "end plate" else 1)

    def cope(self, depth: float, over: float, wanted: float) -> list[float]:
        t, beside = self.t, [abs(over)] if abs(over) > 1e-6 else []
        gone = self.beam.tf.inches + t.radius
        cut_off = [gone] if gone > wanted else []
        length = [self.reach, t.clear, self.setback, t.step]
        return [self.long, depth, *beside, self.kdes, t.clear, self.kdet, *cut_off, *length]

    def top_cope(self) -> list[float]:
        return self.cope(self.depth, self.drop, self.wanted)

    def bottom_cope(self) -> list[float]:
        return self.cope(self.depth_below, self.below, self.need)

    def rows_reason(self) -> list[float]:
        down, usual = self.first - self.drop, self.t.drop
        lower = [usual] if down > usual + 1e-6 else []
        return [self.pitch, down, self.long_material, self.half, self.room, *lower]

    def spread_reason(self) -> list[float]:
        if self.kind == "end plate":
            return [self.spread]
        off = self.spread / 2 if self.kind == "single angle" else self.spread
        return [off, self.t.angle.out, *self.exact(self.beam.tw.inches), self.web]

    def angle_reason(self) -> list[float]:
        return [self.t.angle.d, self.spread / 2 + self.t.least_edge]

    def plate_reason(self) -> list[float]:
        t = self.t
        return [self.gage, t.plate, self.setback, t.edge, self.setback + t.edge, t.gage_step, t.plate_gage]

    def weld(self) -> list[float]:
        t = self.t
        if self.kind == "end plate":
            return [t.weld, self.long_material - 2 * t.weld]
        return [t.plate_weld, t.plate]

    def bolts_go(self) -> list[float]:
        """What they want, then what they have: girder, beam, web leg, the two legs' bolts, own flanges."""
        t, b, g, legs = self.t, self.beam, self.girder, self.t.angle
        enter, tighten, fillet, socket = t.wants
        have = [enter, tighten, fillet]
        if not (self.kind in PLATES and self.gage - tighten >= self.reach):
            have += [self.first - g.tf.inches, g.d.inches - self.last - g.tf.inches]
            if self.kind not in PLATES:
                have.append(min(self.first - self.kdet, g.d.inches - self.kdet - self.last))
        if self.kind in PLATES:
            have.append(self.gage)
        elif self.kind == "end plate":
            have.append((self.spread - b.tw.inches) / 2 - t.weld)
        else:
            off = (self.spread - b.tw.inches) / 2 - legs.t
            have += [legs.web - legs.t, off - self.bolt.nut_height.inches - 0.25, socket]
        if not self.coped:
            have.append(self.first - self.drop - b.tf.inches)
        if not self.under:
            have.append(self.drop + b.d.inches - b.tf.inches - self.last)
        return have

    def bolts(self) -> list[float]:
        washer, add = self.bolt.washer.inches, self.t.nut_and_threads
        whole = self.grip + washer + add
        return [up(whole, self.t.bolt_step), *self.exact(self.grip, washer, add, whole)]

    def carried(self) -> list[float]:
        """What the girder says of it: 10 ft along, the first row under its top."""
        plate = [self.t.plate] if self.kind in PLATES else []
        return [*plate, 120.0, self.first, *([] if plate else [self.spread])]

    def cut(self) -> list[float]:
        face = self.girder.tw.inches / 2
        overall = SPAN - 2 * face - 2 * self.setback
        return [overall, SPAN, face, self.setback, face, self.setback]

    def goes_in(self) -> list[float]:
        gap = SPAN - self.girder.tw.inches
        high = self.long_material
        if self.kind in PLATES:
            long, wide, high = gap - 2 * self.setback, self.beam.bf.inches, self.beam.d.inches
        elif self.kind == "end plate":
            long, wide = gap, self.spread + 2 * self.t.end_distance
        else:
            legs = 1 if self.kind == "single angle" else 2
            long, wide = gap, legs * self.t.angle.d + self.beam.tw.inches
        ways = [wide, high] if self.kind == "extended plate" else [wide]  # girder flanges bar tilting
        least = math.hypot(long, min(ways))
        return [gap, long, wide, high, least, self.t.play]


KINDS: tuple[tuple[str, Callable[[Worked], list[float]]], ...] = (
    (r"cut .* long", Worked.cut),
    (r"meets the", lambda _: []),
    (r"(plate|end plate) welded", Worked.weld),
    (r"(double angles|single angle|single plate|extended plate|end plate)$", lambda _: []),
    (r".* with (3/4|M20) bolts at", Worked.closer),
    (r"setback", Worked.setback_reason),
    (r"top cope", Worked.top_cope),
    (r"bottom cope", Worked.bottom_cope),
    (r"(L4X3-1/2X5/16|L 120x80x10), outstanding leg", Worked.angle_reason),
    (r"bolts .* off the face", Worked.plate_reason),
    (r"bolts spread|bolts \S+ (1/2\"|mm) apart|bolts .* off$", Worked.spread_reason),
    (r"\d+ rows? at", Worked.rows_reason),
    (r"bolts (can be put in|have too little)", Worked.bolts_go),
    (r"field bolts", Worked.bolts),
    (r"goes in|cannot be swung in", Worked.goes_in),
)


def worked(reason: Reason, one: Worked) -> list[float]:
    for pattern, numbers in KINDS:
        if re.match(pattern, reason.decision):
            return numbers(one)
    raise AssertionError(f"no test works out: {reason.text()}")


def said(reason: Reason) -> list[float]:
    """The lengths of a reason in the order in which it gives them, inches; designations are no lengths."""
    text = f"{reason.decision}; {reason.because}"
    return lengths(re.sub(r"L4X3-1/2X5/16|PL\S+|3/4 x|a (3/4|7/8) bolt", "", text))


def agree(reason: Reason, want: list[float], system: System) -> None:
    """The numbers of a reason are those, to what its text is rounded to."""
    have = said(reason)
    assert len(have) == len(want), (reason.text(), have, want)
    assert all(abs(a - b) <= near(system) for a, b in zip(have, want, strict=True)), (
        reason.text(),
        have,
        want,
    )


def taken(result: Detailed, asked: Given) -> Worked:
    """The end as it was taken: with closer rows only where the usual ones are too few."""
    trade = asked.trade
    pitch = result.joints["B1", End.LEFT].choice.pitch.inches
    usual = Worked(asked, trade.pitch)
    if abs(pitch - trade.pitch) < 1e-9:
        return usual
    assert pitch == pytest.approx(trade.closer)
    assert usual.short
    return Worked(asked, pitch)


@given(data=st.data(), trade=TRADES, kind=st.sampled_from(CONNECTIONS))
@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
def test_every_number_of_every_reason(data: st.DataObject, trade: Trade, kind: str) -> None:
    beam, girder = data.draw(st.sampled_from(trade.beams)), data.draw(st.sampled_from(trade.girders))
    drop, reaction = data.draw(st.sampled_from(trade.drops)), data.draw(st.sampled_from(trade.reactions))
    asked = Given(trade, beam, girder, drop, kind, reaction)
    result = asked.detailed()
    one = taken(result, asked)
    for reason in result.reasons["B1"]:
        agree(reason, worked(reason, one), trade.system)
    for reason in result.reasons["G1"][1:]:
        agree(reason, one.carried(), trade.system)


@given(data=st.data(), trade=TRADES)
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
def test_counts_and_forces_of_the_rows(data: st.DataObject, trade: Trade) -> None:
    beam, girder = data.draw(st.sampled_from(trade.beams)), data.draw(st.sampled_from(trade.girders))
    asked = Given(trade, beam, girder, "0", "double angles", data.draw(st.sampled_from(trade.reactions)))
    result = asked.detailed()
    one, unit = taken(result, asked), trade.force
    texts = [reason for reason in result.reasons["B1"] if re.match(r"\d+ rows", reason.decision)]
    assert len(texts) == 2
    for reason in texts:
        assert reason.decision.startswith(f"{one.rows} rows")
        if asked.reaction:
            assert f"asks for {one.by_force} at {one.each:.1f} {unit} a row;" in reason.because
        else:
            assert f"no reaction is typed at this end, a row carries {one.each:.1f} {unit};" in reason.because
        assert f"asks for {one.by_depth}; {one.most} row" in reason.because
