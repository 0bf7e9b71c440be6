"""Every number that a reason gives, worked again from the section tables and the practice alone."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assembling import NEAR, bay, detailed, lengths
from gageline.detail import Detailed, Reason
from gageline.part import End
from gageline.steel import Section, bolt, find

BEAMS = ("W12X26", "W14X30", "W16X26", "W16X31", "W18X35", "W18X50", "W21X50")
GIRDERS = ("W21X62", "W24X76", "W30X99")
CONNECTIONS = ("double angles", "single angle", "single plate", "extended plate", "end plate")
SINGLE = {"single angle", "single plate", "extended plate"}
PLATES = {"single plate", "extended plate"}
WELD = 0.25  # leg of the shop's usual fillet
SPAN = 180.0  # inches between the girders
ANGLE = {"d": 4.0, "bf": 3.5, "t": 0.3125, "out": 2.5}  # L4x3-1/2x5/16 and the gage of its 4 in leg
BOLT = bolt("3/4")


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


def up(value: float, step: float) -> float:
    return math.ceil((value - 1e-6) / step) * step


def down(value: float, step: float) -> float:
    return math.floor((value + 1e-6) / step) * step


class Worked:
    """One end of a level, square beam, worked by hand from its sections."""

    def __init__(
        self, beam: str, girder: str, drop: float, kind: str, reaction: int, pitch: float = 3.0
    ) -> None:
        self.beam, self.girder, self.drop, self.kind = section(beam), section(girder), drop, kind
        self.given = (beam, girder, drop, kind, reaction)
        self.reaction, self.pitch = reaction, pitch
        b, g = self.beam, self.girder
        self.setback = 0.375 if kind == "end plate" else 0.5
        kdet, kdes = (g.kdet or g.tf).inches, (g.kdes or g.tf).inches
        self.kdes, self.kdet = kdes, max(kdet, kdes)
        self.reach = (g.bf - g.tw).inches / 2
        outside = kind == "extended plate"
        if outside:
            self.setback = up(self.reach + 0.5, 1 / 8)
        self.coped = drop < self.kdet - 1e-9 and not outside
        wanted = max(self.kdet, kdes + 0.5) - drop
        self.depth = up(max(wanted, b.tf.inches + 0.5), 0.5) if self.coped else 0.0
        self.long = up(self.reach + 0.5 - self.setback, 0.5)
        bottom = drop + b.d.inches
        self.below = bottom - g.d.inches
        under = self.below + self.kdet > 1e-9 and not outside
        need = self.below + max(self.kdet, kdes + 0.5)
        self.depth_below = up(max(need, b.tf.inches + 0.5), 0.5) if under else 0.0
        beam_k = max((b.kdet or b.tf), (b.kdes or b.tf)).inches
        top = max(drop + (self.depth or beam_k), self.kdet)
        base = min(bottom - (self.depth_below or beam_k), g.d.inches - self.kdet)
        self.room = base - top
        first = max(drop + 3.0, top + 1.25)
        self.first = drop + up(first - drop, 0.25) if first > drop + 3.0 + 1e-9 else first
        left = b.d.inches - self.depth - self.depth_below
        half = left / 2 if self.coped or under else (b.T or b.d).inches / 2
        self.half = half
        self.by_depth = max(1, math.ceil((half - 2.5) / pitch - 1e-6) + 1)
        shear = 17.9 * (1 if kind in SINGLE else 2)
        tearing = min(1.0, 1.2 * (pitch - 0.8125) / 1.8)  # AISC 360-22 J3.11a, 3/4 bolts in standard holes
        self.each = min(shear, 87.8 * tearing * b.tw.inches)
        self.by_force = max(1, math.ceil(reaction / self.each - 1e-9))
        wanted = max(self.by_depth, self.by_force, 2)
        lowest = base - 1.25 - pitch * (min(wanted, math.floor((self.room - 2.5 + 1e-6) / pitch) + 1) - 1)
        if lowest < self.first - 1e-6:  # raised to a quarter of an inch, or where only that fits
            even = drop + down(lowest - drop, 0.25)
            self.first = even if even >= top + 1.25 - 1e-6 else lowest
        self.most = math.floor((base - self.first - 1.25 + 1e-6) / pitch) + 1
        self.rows = min(wanted, self.most)
        self.long_material = pitch * (self.rows - 1) + 2.5
        self.short = self.by_force > self.most or (self.most < 2 and kind != "end plate")
        self.web = up(b.tw.inches / 2, 1 / 16)
        self.spread = 5.5 if kind == "end plate" else 2 * (ANGLE["out"] + self.web)
        self.material = ANGLE["t"] if "angle" in kind else 0.375
        self.gage = max(up(self.setback + 1.5, 0.25), 3.0)
        ply = b.tw.inches if kind in PLATES else g.tw.inches
        self.grip = self.material + ply

    def closer(self) -> list[float]:
        """What was too far apart: said with the room where it was too little for the reaction."""
        usual = Worked(*self.given)
        return [self.pitch, 3.0, *([usual.room] if usual.by_force > usual.most else [])]

    def setback_reason(self) -> list[float]:
        if self.kind == "extended plate":
            return [self.setback, 0.5, self.reach, 1 / 8]
        return [self.setback] * (2 if self.kind == "end plate" else 1)

    def cope_reason(self) -> list[float]:
        over = [self.drop] if self.drop else []
        return [self.long, self.depth, *over, self.kdes, 0.5, self.kdet, self.reach, 0.5, 0.5]

    def bottom_cope(self) -> list[float]:
        over = [abs(self.below)] if abs(self.below) > 1e-6 else []
        return [self.long, self.depth_below, *over, self.kdes, 0.5, self.kdet, self.reach, 0.5, 0.5]

    def rows_reason(self) -> list[float]:
        return [self.pitch, self.first - self.drop, self.long_material, self.half, self.room]

    def spread_reason(self) -> list[float]:
        if self.kind == "single angle":
            return [self.spread / 2, ANGLE["out"], self.web]
        return [5.5] if self.kind == "end plate" else [self.spread, ANGLE["out"], self.web]

    def angle_reason(self) -> list[float]:
        return [ANGLE["d"], self.spread / 2 + 1.0]

    def plate_reason(self) -> list[float]:
        return [self.gage, 0.375, self.setback, 1.5, self.setback + 1.5, 3.0]

    def weld(self) -> list[float]:
        return [WELD, self.long_material - 2 * WELD] if self.kind == "end plate" else [0.25, 0.375]

    def top_room(self) -> list[float]:
        return [self.first - self.girder.tf.inches, 1.25]

    def bottom_room(self) -> list[float]:
        last = self.first + self.pitch * (self.rows - 1)
        return [self.girder.d.inches - last - self.girder.tf.inches, 1.25]

    def legs(self) -> list[float]:
        aside = self.spread / 2 - self.beam.tw.inches / 2 - ANGLE["t"]
        return [aside - BOLT.nut_height.inches - 0.25, 2.25 / 2]

    def bolts(self) -> list[float]:
        return [up(self.grip + 5 / 32 + 1, 0.25)]

    def carried(self) -> list[float]:
        """What the girder says of it: 10 ft along, the first row under its top."""
        spread = [] if self.kind in PLATES else [self.spread]
        return [*([0.375] if self.kind in PLATES else []), 120.0, self.first, *spread]

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
            long, wide = gap, self.spread + 2.5
        else:
            legs = 1 if self.kind == "single angle" else 2
            long, wide = gap, legs * ANGLE["d"] + self.beam.tw.inches
        least = min(math.hypot(long, wide), math.hypot(long, high))
        return [gap, long, wide, high, least, 0.25]


KINDS: tuple[tuple[str, Callable[[Worked], list[float]]], ...] = (
    (r"cut .* long", Worked.cut),
    (r"meets the", lambda _: []),
    (r"(plate|end plate) welded", Worked.weld),
    (r"(double angles|single angle|single plate|extended plate|end plate)$", lambda _: []),
    (r".* with 3/4 bolts at", Worked.closer),
    (r"setback", Worked.setback_reason),
    (r"top cope", Worked.cope_reason),
    (r"bottom cope", Worked.bottom_cope),
    (r"L4X3-1/2X5/16, outstanding leg", Worked.angle_reason),
    (r"bolts .* off the face", Worked.plate_reason),
    (r"bolts spread|bolts 5 1/2\" apart|bolts .* off$", Worked.spread_reason),
    (r"\d+ rows? at", Worked.rows_reason),
    (r"first row to the support's top", Worked.top_room),
    (r"last row to the support's bottom", Worked.bottom_room),
    (r"bolts of the outstanding leg", Worked.legs),
    (r"field bolts", Worked.bolts),
    (r"goes in|cannot be swung in", Worked.goes_in),
)


def worked(reason: Reason, one: Worked) -> list[float]:
    for pattern, numbers in KINDS:
        if re.match(pattern, reason.decision):
            return numbers(one)
    raise AssertionError(f"no test works out: {reason.text()}")


def said(reason: Reason) -> list[float]:
    """The lengths of a reason in the order in which it gives them; designations are no lengths."""
    text = f"{reason.decision}; {reason.because}".replace("rounded up to 1/2 in", "")
    return lengths(re.sub(r"L4X3-1/2X5/16|PL\S+|3/4 x|a 3/4 bolt", "", text))


def taken(result: Detailed, usual: Worked) -> float:
    """The pitch of the rows: three diameters where only they are enough for the reaction or for two rows."""
    pitch = result.joints["B1", End.LEFT].choice.pitch.inches
    assert pitch == 3.0 or (pitch == 2.25 and usual.short)
    return pitch


@given(
    beam=st.sampled_from(BEAMS),
    girder=st.sampled_from(GIRDERS),
    drop=st.integers(0, 20).map(lambda eighths: eighths / 8),
    kind=st.sampled_from(CONNECTIONS),
    reaction=st.sampled_from([0, 20, 45, 80]),
)
@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
def test_every_number_of_every_reason(beam: str, girder: str, drop: float, kind: str, reaction: int) -> None:
    ends: dict[str, object] = {"connection": kind, "bolt": "3/4"} | (
        {"reaction": reaction} if reaction else {}
    )
    result: Detailed = detailed(bay(beam=beam, girder=girder, drop=str(drop), ends=ends))
    pitch = taken(result, Worked(beam, girder, drop, kind, reaction))
    one = Worked(beam, girder, drop, kind, reaction, pitch)
    for reason in result.reasons["B1"]:
        have, want = said(reason), worked(reason, one)
        assert len(have) == len(want), (reason.text(), have, want)
        assert all(abs(a - b) <= NEAR for a, b in zip(have, want, strict=True)), (reason.text(), have, want)
    for reason in result.reasons["G1"][1:]:
        have, want = said(reason), one.carried()
        assert len(have) == len(want), (reason.text(), have, want)
        assert all(abs(a - b) <= NEAR for a, b in zip(have, want, strict=True)), (reason.text(), have, want)


@given(
    reaction=st.sampled_from([0, 20, 45, 80]), beam=st.sampled_from(BEAMS), girder=st.sampled_from(GIRDERS)
)
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_counts_and_forces_of_the_rows(reaction: int, beam: str, girder: str) -> None:
    given = {"connection": "double angles", "bolt": "3/4"}
    result = detailed(
        bay(beam=beam, girder=girder, ends=given | ({"reaction": reaction} if reaction else {}))
    )
    pitch = taken(result, Worked(beam, girder, 0.0, "double angles", reaction))
    one = Worked(beam, girder, 0.0, "double angles", reaction, pitch)
    texts = [reason for reason in result.reasons["B1"] if re.match(r"\d+ rows", reason.decision)]
    assert len(texts) == 2
    for reason in texts:
        assert reason.decision.startswith(f"{one.rows} rows")
        if reaction:
            assert f"asks for {one.by_force} at {one.each:.1f} kip a row;" in reason.because
        else:
            assert f"no reaction is typed at this end, a row carries {one.each:.1f} kip;" in reason.because
        assert f"asks for {one.by_depth}; {one.most} row" in reason.because
