"""The numbers of the reasons of a hollow beam on tongues, worked again from section tables and practice.

Those of its rows, of what was tried, of the room for the wrench and of how it goes in are not worked here.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assembling import bay, detailed, lengths, near
from by_hand import down, mm, section, up
from gageline.part import End
from gageline.steel import Section, bolt
from gageline.units import System

SPAN = 180.0  # inches between the middles of the girders


@dataclass(frozen=True, kw_only=True)
class Trade:
    """What a shop works by, in inches whatever it measures in."""

    system: System
    setback: float = 0.5
    edge: float = 1.5
    plate: float = 0.375
    cap: float = 0.375
    weld: float = 0.25
    weld_step: float = 1 / 16
    entering: float = 0.125
    shelf: float = 0.125
    gage: float = 3.0
    gage_step: float = 0.25
    cap_step: float = 0.125
    wide_step: float = 0.25
    thick_step: float = 0.125
    bolt_step: float = 0.25


FEET = Trade(system=System.FT_IN)
METRIC = Trade(
    system=System.MM, setback=mm(10), edge=mm(40), plate=mm(10), cap=mm(10), weld=mm(6), weld_step=mm(1),
    entering=mm(3), shelf=mm(3), gage=mm(75), gage_step=mm(5), cap_step=mm(1), wide_step=mm(5),
    thick_step=mm(2), bolt_step=mm(5),
)  # fmt: skip
ADD = {"3/4": (5 / 32, 1.0), "M20": (mm(4), mm(18 + 2 * 2.5)), "M16": (mm(4), mm(14.8 + 2 * 2))}
TIGHTEN = {"3/4": 1.25, "M20": 1.375, "M16": 1.25}  # of the next inch bolt that is larger all round
BEAMS = ("HSS8X4X1/4", "HSS10X6X3/8", "HSS12X8X1/2", "HSS6X4X1/4")
GIRDERS = ("HSS16X8X3/8", "HSS20X8X1/2")


def worked(
    t: Trade, beam: Section, girder: Section, shift: float, size: str
) -> dict[str, list[float] | None]:
    """The lengths of each reason in their order, by how its decision begins; None of one not worked."""
    skew = math.atan(abs(shift) / SPAN)
    sine, level, d_b = math.sin(skew), math.cos(skew), bolt(size).diameter.inches
    half, edge = d_b / 2 + 1 / 16, max(t.edge, 2 * d_b)
    thick = min(t.plate, down(half, t.thick_step))
    tip = (t.setback + thick / 2 * sine) / level
    wrench = 0.0
    if shift:
        out = thick / 2 + t.plate + bolt(size).nut_height.inches + 0.25
        wrench = (TIGHTEN[size] + out * sine) / level
    gage = max(up(max(tip + edge, wrench), t.gage_step), t.gage)
    weld = up(thick * 5 / 8, t.weld_step)
    wide = up(beam.bf.inches + 2 * (t.weld + t.shelf), t.wide_step)
    beside = edge + weld + t.entering
    corner = (t.setback + wide / 2 * sine) / level - gage
    to_cap = up(max(beside, corner), t.cap_step)
    reach = gage + to_cap
    pushed = [wide / 2, t.setback] if to_cap > up(beside, t.cap_step) + 1e-9 else []
    high = down(beam.d.inches, t.cap_step)
    face = girder.bf.inches / 2
    run, off = SPAN / level, face / level
    steel = reach + t.cap
    corner_of = beam.corner.inches if beam.corner else 0.0
    grip = thick + t.plate
    add = ADD[size]
    whole = grip + sum(add)
    exact = [grip, *add, whole] if t.system is System.MM else []
    wants = [wrench] if wrench > tip + edge else []
    cut = run - 2 * off - 2 * steel
    return {
        r"cut .* long": [cut, run, off, steel, off, steel],
        r"meets the": [],
        r"single plate|bolts can|bolts have|\d+ rows?|goes in|cannot": None,
        r"setback": [t.setback],
        r"bolts .* off the face": [gage, t.plate, tip, edge, tip + edge, *wants, t.gage_step, t.gage],
        r"tongue .* thick,": [thick, reach - tip, tip, reach, half],
        r"end cap .* past the bolts": [
            to_cap, reach, edge, weld, t.entering, beside, *pushed, t.cap_step,
        ],
        r"end cap .* thick,": [
            t.cap, wide, high, beam.bf.inches, t.weld + t.shelf, t.wide_step, beam.d.inches,
        ],
        r"plate welded": [up(t.plate * 5 / 8, t.weld_step), t.plate],
        r"end cap welded": [t.weld, high - 2 * corner_of],
        r"tongue welded": [weld, thick],
        r"field bolts": [up(whole, t.bolt_step), *exact],
    }  # fmt: skip


@given(
    t=st.sampled_from([FEET, METRIC]),
    beam=st.sampled_from(BEAMS),
    girder=st.sampled_from(GIRDERS),
    shift=st.one_of(st.just(0), st.integers(-150, 150)),
)
@settings(max_examples=120, deadline=None, suppress_health_check=list(HealthCheck))
def test_the_numbers_of_a_tongue(t: Trade, beam: str, girder: str, shift: int) -> None:
    table = bay(beam=beam, girder=girder)
    table["grid"]["x"]["spacing"] = ["600 in"]  # type: ignore[index] # a table
    for name, at in (("from", 250), ("to", 250 + shift)):
        table["member"][2][name]["at"] = f"{at} in"  # type: ignore[index] # a list
    result = detailed(table, t.system)
    joint = result.joints["B1", End.LEFT]
    assert joint.tongue is not None
    known = worked(t, section(beam), section(girder), shift, joint.choice.size.size)
    for reason in result.reasons["B1"]:
        (want,) = [numbers for pattern, numbers in known.items() if re.match(pattern, reason.decision)]
        if want is None:
            continue
        text = re.sub(
            r"HSS\S+|PL\S+|(3/4|5/8) x|half a bolt and 1/16", "", f"{reason.decision}; {reason.because}"
        )
        have = lengths(text)
        assert len(have) == len(want), (reason.text(), have, want)
        assert all(abs(a - b) <= near(t.system) for a, b in zip(have, want, strict=True)), (
            reason.text(),
            have,
            want,
        )
