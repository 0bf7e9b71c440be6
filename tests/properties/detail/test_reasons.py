"""Every number that a reason gives, worked again from the section tables and the practice alone."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from assembling import bay, detailed, lengths, near
from by_hand import down, mm, section, up
from gageline.detail import Detailed, Reason
from gageline.part import End
from gageline.steel import bolt
from gageline.units import System

CONNECTIONS = ("double angles", "single angle", "single plate", "extended plate", "end plate")
SINGLE = {"single angle", "single plate", "extended plate"}
PLATES = {"single plate", "extended plate"}
SPAN = 180.0  # inches between the girders


@dataclass(frozen=True)
class Angle:
    """An angle in inches: the gages are those of its legs, the longer one outstanding."""

    name: str
    d: float
    web_leg: float
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
    off: float = 1 / 16  # material on a beam off the face
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
    angle=Angle("L4X3-1/2X5/16", 4.0, 3.5, 0.3125, 2.5, 2.0),
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
    angle=Angle("L 120x80x10", mm(120), mm(80), mm(10), mm(70), mm(45)),
    usual="L 100x100x10",
    setback=mm(10),
    clear=mm(12),
    step=mm(10),
    spread_step=mm(1),
    outside_step=mm(1),
    off=mm(2),
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


@dataclass(frozen=True)
class Given:
    """A bay that is asked for."""

    trade: Trade
    beam: str
    girder: str
    drop: str
    kind: str
    reaction: int
    shift: int = 0
    slope: int = 0

    @property
    def skew(self) -> float:
        """In the plan, radians."""
        return math.atan2(self.shift, SPAN)

    @property
    def made(self) -> str:
        """The connection: what is askew gets a plate in the plane of its web."""
        return self.kind if self.kind in PLATES or not self.shift else "single plate"

    @property
    def down(self) -> float:
        """The drop in inches."""
        return float(self.drop) if self.trade is FEET else mm(float(self.drop))

    def detailed(self) -> Detailed:
        ends: dict[str, object] = {"connection": self.made, "bolt": self.trade.size}
        if self.reaction:
            ends["reaction"] = self.reaction
        table: dict[str, Any] = bay(beam=self.beam, girder=self.girder, drop=self.drop, ends=ends)
        _, far, beam = table["member"]
        beam["to"]["at"] = f"{120 + self.shift} in"
        if self.slope:
            beam["rise"] = f"{self.slope} in 12"
            far["top"] = f"{144 + self.slope / 12 * SPAN / math.cos(self.skew)} in"
        return detailed(table, self.trade.system)


class Worked:
    """One end of a beam, worked by hand from its sections.

    Elevations are inches under the top of the girder, `t` is along the beam in the plan from the face into
    the span, `x` along its slope from where its top of steel meets the face.
    """

    def __init__(self, asked: Given, pitch: float, rise: float) -> None:
        self.asked, self.kind, self.t = asked, asked.made, asked.trade
        self.beam, self.girder = section(asked.beam), section(asked.girder)
        self.pitch, self.rise, self.skew = pitch, rise, asked.skew
        self.bolt, t = bolt(self.t.size), self.t
        b, g, kind = self.beam, self.girder, self.kind
        self.sin, self.cos, self.steep = math.sin(self.skew), math.cos(self.skew), 1 / math.hypot(1.0, rise)
        self.off = g.tw.inches / 2 / self.cos  # from the work point to the face
        self.drop = asked.down - rise * self.off
        self.setback = t.plate + t.off if kind == "end plate" else t.setback
        kdet, kdes = (g.kdet or g.kdes or g.tf).inches, (g.kdes or g.tf).inches
        self.kdes, self.kdet = kdes, max(kdet, kdes)
        self.reach = (g.bf - g.tw).inches / 2
        self.outside = kind == "extended plate"
        if self.outside:
            self.setback = up(self.reach + t.clear, t.outside_step)
        self.steel = self.setback / self.cos  # along the beam
        self.work_copes()
        self.gage = self.bolts_off()
        self.work_rows()
        self.web = up(b.tw.inches / 2, t.spread_step)
        self.spread = t.end_gage if kind == "end plate" else 2 * (t.angle.out + self.web)
        self.material = t.angle.t if "angle" in kind else t.plate
        self.grip = self.material + (b if kind in PLATES else g).tw.inches

    def work_rows(self) -> None:
        """Where the rows go, and how many."""
        t, b, g, pitch = self.t, self.beam, self.girder, self.pitch
        beam_k = max((b.kdet or b.kdes or b.tf), (b.kdes or b.tf)).inches
        far = {"single plate": 2 * self.gage, "extended plate": 2 * self.gage, "end plate": self.steel}
        span = [self.steel, far.get(self.kind, t.angle.web_leg)]
        web = [self.drop - self.rise * at for at in span]
        top = max(max(web) + (self.depth or beam_k) / self.steep, self.kdet)
        left = b.d.inches - (self.depth_below or beam_k)
        base = min(min(web) + left / self.steep, g.d.inches - self.kdet)
        self.room, e = base - top, t.end_distance
        first = max(self.drop + t.drop, top + e)
        lowered = first > self.drop + t.drop + 1e-6
        self.first = self.drop + up(first - self.drop, t.row_step) if lowered else first
        left = b.d.inches - self.depth - self.depth_below
        flat = b.T.inches if b.T else b.d.inches - 2 * beam_k
        self.half = left / 2 if self.coped or self.under else flat / 2
        self.by_depth = max(1, math.ceil((self.half - 2 * e) / pitch - 1e-6) + 1)
        self.each = self.row()
        self.by_force = max(1, math.ceil(self.asked.reaction / self.each - 1e-9))
        rows = max(self.by_depth, self.by_force, 2)
        lowest = base - e - pitch * (min(rows, math.floor((self.room - 2 * e + 1e-6) / pitch) + 1) - 1)
        self.raised = lowest < self.first - 1e-6
        if self.raised:  # to a step, or where only that fits
            even = self.drop + down(lowest - self.drop, t.row_step)
            self.first = even if even >= top + e - 1e-6 else lowest
        self.top = top
        self.most = math.floor((base - self.first - e + 1e-6) / pitch) + 1
        self.rows = min(rows, self.most)
        self.last = self.first + pitch * (self.rows - 1)
        self.long_material = pitch * (self.rows - 1) + 2 * e
        self.short = self.by_force > self.most or (self.most < 2 and self.kind != "end plate")

    def work_copes(self) -> None:
        """Where the girder's flanges are in the way, and what is cut away for them."""
        t, b, half = self.t, self.beam, self.beam.bf.inches / 2
        clear = self.reach + t.clear
        runs = [-half * self.sin / self.cos, (clear + half * self.sin) / self.cos]
        self.wanted = max(self.kdet, self.kdes + t.clear)
        gone = b.tf.inches + t.radius
        self.over = max(self.rise * at for at in runs) - self.drop
        self.coped = self.over + self.kdet > 1e-9 and not self.outside
        self.asked_depth = (self.over + self.wanted) * self.steep
        self.depth = up(max(self.asked_depth, gone), t.step) if self.coped else 0.0
        bottoms = [self.drop + b.d.inches / self.steep - self.rise * at for at in runs]
        self.below = max(bottoms) - self.girder.d.inches
        self.under = self.below + self.kdet > 1e-9 and not self.outside
        self.asked_below = (self.below + self.wanted) * self.steep
        self.depth_below = up(max(self.asked_below, gone), t.step) if self.under else 0.0
        # the furthest corner of a plumb end: the lower one where the beam falls, of the flange where askew
        low = min(0.0, -b.d.inches * self.rise)
        self.furthest = (self.setback - half * self.sin) / self.cos / self.steep + low
        self.cleared = (clear + half * self.sin) / self.cos

    def long(self, levels: tuple[float, float]) -> float:
        """A cope's length from the furthest point of the end, by the elevations that it goes through."""
        rises = [(self.drop - level) * self.rise for level in levels]
        return up((self.cleared + max(rises)) * self.steep - self.furthest, self.t.step)

    def bolts_off(self) -> float:
        """From the face along the beam to the bolts of a plate, with what is said of it."""
        t, b = self.t, self.beam
        edge = self.steel + t.edge
        self.wrench = 0.0
        if self.skew:
            out = b.tw.inches / 2 + t.plate + self.bolt.nut_height.inches + 0.25
            self.wrench = (t.wants[1] + out * self.sin) / self.cos
        self.most_off = down(self.steel + 12 * b.tw.inches, t.gage_step)
        return max(up(max(edge, self.wrench), t.gage_step), min(t.plate_gage, self.most_off))

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
        usual, wants = Worked(self.asked, self.t.pitch, self.rise), self.t.wants[1]
        short = [usual.room] if usual.by_force > usual.most else []
        tight = [] if short else [gap for gap in usual.to_own_flanges() if gap < wants][:1]
        return [self.pitch, self.t.pitch, *short, *(value for gap in tight for value in (gap, wants))]

    def setback_reason(self) -> list[float]:
        if self.kind == "extended plate":
            return [self.setback, self.t.clear, self.reach, self.t.outside_step]
        t = self.t
        if self.kind == "end plate":
            return [self.setback, t.plate, t.off]
        return [self.setback] if self.kind == "single plate" else [self.setback, t.off]

    def cope(self, sizes: tuple[float, float], over: float, wanted: float) -> list[float]:
        t, beside = self.t, [abs(over)] if abs(over) > 1e-6 else []
        gone = self.beam.tf.inches + t.radius
        cut_off = [gone] if gone > wanted else []
        length = [self.reach, t.clear, self.setback, t.step]
        return [*sizes, *beside, self.kdes, t.clear, self.kdet, *cut_off, *length]

    def top_cope(self) -> list[float]:
        long = self.long((0.0, self.wanted))
        return self.cope((long, self.depth), self.over, self.asked_depth)

    def bottom_cope(self) -> list[float]:
        under = self.girder.d.inches
        long = self.long((under, under - self.wanted))
        return self.cope((long, self.depth_below), self.below, self.asked_below)

    def rows_reason(self) -> list[float]:
        down, usual = self.first - self.drop, self.t.drop
        lower = [usual] if down > usual + 1e-6 and not self.raised else []
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
        edge = self.steel + t.edge
        beside = [self.wrench] if self.wrench > edge else []
        most = [self.most_off] if self.gage < t.plate_gage else []
        said = [self.steel, t.edge, edge, *beside, t.gage_step, t.plate_gage, *most]
        return [self.gage, t.plate, *said]

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
        if not (self.kind in PLATES and self.gage * self.cos - tighten >= self.reach):
            have += [self.first - g.tf.inches, g.d.inches - self.last - g.tf.inches]
            if self.kind not in PLATES:
                have.append(min(self.first - self.kdet, g.d.inches - self.kdet - self.last))
        if self.kind in PLATES:
            out = b.tw.inches / 2 + t.plate + self.bolt.nut_height.inches + 0.25
            have.append(self.gage * self.cos - out * self.sin)
        elif self.kind == "end plate":
            have.append((self.spread - b.tw.inches) / 2 - t.weld)
        else:
            off = (self.spread - b.tw.inches) / 2 - legs.t
            have += [legs.web - legs.t, off - self.bolt.nut_height.inches - 0.25, socket]
        return have + self.to_own_flanges()

    def to_own_flanges(self) -> list[float]:
        """From the upper and lower row to the flanges of the beam that are not coped."""
        b, t = self.beam, self.t
        gage = 0.0 if self.kind == "end plate" else self.gage if self.kind in PLATES else t.angle.web
        web = [self.drop - self.rise * at for at in (0.0, 2 * gage)]
        upper = self.first - max(web) - b.tf.inches / self.steep
        lower = min(web) + (b.d - b.tf).inches / self.steep - self.last
        return [*([] if self.coped else [upper]), *([] if self.under else [lower])]

    def bolts(self) -> list[float]:
        washer, add = self.bolt.washer.inches, self.t.nut_and_threads
        whole = self.grip + washer + add
        return [up(whole, self.t.bolt_step), *self.exact(self.grip, washer, add, whole)]

    def carried(self) -> list[float]:
        """What the girder says of it: how far along it is, and how far under the top its first row."""
        plate = [self.t.plate] if self.kind in PLATES else []
        return [*plate, 120.0 + self.off * self.sin, self.first, *([] if plate else [self.spread])]

    def cut(self, other: Worked) -> list[float]:
        run = SPAN / self.cos / self.steep
        corners = [one.off / self.steep + one.furthest for one in (self, other)]
        ends = [
            [one.off, one.setback, *([abs(corner)] if self.skew or self.rise else [])]
            for one, corner in zip((self, other), corners, strict=True)
        ]
        return [run - sum(corners), run, *ends[0], *ends[1]]

    def goes_in(self, other: Worked) -> list[float]:
        gap = (SPAN - self.girder.tw.inches) / self.cos
        high = max(self.long_material, other.long_material)
        if self.kind in PLATES:
            long, wide, high = gap - 2 * self.steel, self.beam.bf.inches, self.beam.d.inches
        elif self.kind == "end plate":
            long, wide = gap - 2 * self.t.off, self.spread + 2 * self.t.end_distance
        else:
            legs = 1 if self.kind == "single angle" else 2
            long, wide = gap - 2 * self.t.off, legs * self.t.angle.d + self.beam.tw.inches
        ways = [wide, high] if self.kind == "extended plate" else [wide]  # girder flanges bar tilting
        least = math.hypot(long, min(ways))
        return [gap, long, wide, high, least, self.t.play]


WHOLE: tuple[tuple[str, Callable[[Worked, Worked], list[float]]], ...] = (
    (r"cut .* long", Worked.cut),
    (r"goes in|cannot be swung in", Worked.goes_in),
)
KINDS: tuple[tuple[str, Callable[[Worked], list[float]]], ...] = (
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
)


def worked(reason: Reason, ends: tuple[Worked, Worked]) -> list[float]:
    for pattern, both in WHOLE:
        if re.match(pattern, reason.decision):
            return both(*ends)
    for pattern, numbers in KINDS:
        if re.match(pattern, reason.decision):
            return numbers(ends[reason.end == "end"])
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


def taken(result: Detailed, asked: Given, end: End) -> Worked:
    """The end as it was taken: with closer rows only where the usual ones are too few or have no room."""
    trade, choice = asked.trade, result.joints["B1", end].choice
    rise = asked.slope / 12 * (1 if end is End.LEFT else -1)
    usual = Worked(asked, trade.pitch, rise)
    assert choice.size == usual.bolt
    if abs(choice.pitch.inches - trade.pitch) < 1e-9:
        return usual
    assert choice.pitch.inches == pytest.approx(trade.closer)
    assert usual.short or min(usual.to_own_flanges()) < trade.wants[1]
    return Worked(asked, choice.pitch.inches, rise)


def every_number(result: Detailed, asked: Given) -> None:
    """The numbers of all reasons of the beam, and of what its start has on the girder."""
    one, two = (taken(result, asked, end) for end in End)
    for reason in result.reasons["B1"]:
        agree(reason, worked(reason, (one, two)), asked.trade.system)
        if reason.decision.startswith("meets"):
            askew = f"at a skew of {math.degrees(asked.skew):.2f} degrees"
            assert (askew if asked.shift else "face square") in reason.because
            assert (f"sloping {asked.slope} in 12" in reason.because) is bool(asked.slope)
    for reason in result.reasons["G1"][1:]:
        agree(reason, one.carried(), asked.trade.system)


def given_by(data: st.DataObject, trade: Trade, kind: str, shift: int = 0, slope: int = 0) -> Given:
    beam, girder = data.draw(st.sampled_from(trade.beams)), data.draw(st.sampled_from(trade.girders))
    drop, reaction = data.draw(st.sampled_from(trade.drops)), data.draw(st.sampled_from(trade.reactions))
    return Given(trade, beam, girder, drop, kind, reaction, shift, slope)


@given(data=st.data(), trade=TRADES, kind=st.sampled_from(CONNECTIONS))
@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
def test_every_number_of_every_reason(data: st.DataObject, trade: Trade, kind: str) -> None:
    asked = given_by(data, trade, kind)
    every_number(asked.detailed(), asked)


@given(
    data=st.data(),
    trade=TRADES,
    kind=st.sampled_from(CONNECTIONS),
    shift=st.integers(0, 110),
    slope=st.sampled_from([0, 1, 2, 3]),
)
@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
def test_every_number_of_ends_that_are_askew_or_slope(
    data: st.DataObject, trade: Trade, kind: str, shift: int, slope: int
) -> None:
    asked = given_by(data, trade, kind, shift, slope)
    result = asked.detailed()
    assume(all(joint.kind == asked.made for joint in result.joints.values()))  # else it is a finding
    every_number(result, asked)


@given(data=st.data(), trade=TRADES)
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
def test_counts_and_forces_of_the_rows(data: st.DataObject, trade: Trade) -> None:
    beam, girder = data.draw(st.sampled_from(trade.beams)), data.draw(st.sampled_from(trade.girders))
    asked = Given(trade, beam, girder, "0", "double angles", data.draw(st.sampled_from(trade.reactions)))
    result = asked.detailed()
    one, unit = taken(result, asked, End.LEFT), trade.force
    texts = [reason for reason in result.reasons["B1"] if re.match(r"\d+ rows", reason.decision)]
    assert len(texts) == 2
    for reason in texts:
        assert reason.decision.startswith(f"{one.rows} rows")
        if asked.reaction:
            assert f"asks for {one.by_force} at {one.each:.1f} {unit} a row;" in reason.because
        else:
            assert f"no reaction is typed at this end, a row carries {one.each:.1f} {unit};" in reason.because
        assert f"asks for {one.by_depth}; {one.most} row" in reason.because
