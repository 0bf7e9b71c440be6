"""Every number of the reasons of columns, splices, seats and beams on posts, worked again from tables."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from assembling import detailed, lengths, near
from by_hand import down, mm, section, up
from gageline.detail import Reason
from gageline.steel import Section
from gageline.units import System

Numbers = Callable[[], list[float]]


@dataclass(frozen=True, kw_only=True)
class Trade:
    """What a shop works by, in inches whatever it measures in."""

    system: System
    columns: tuple[str, ...]
    posts: tuple[str, ...]
    girders: tuple[str, ...]
    beams: tuple[str, ...]
    seat: str
    bolt: str
    beside: float = 3.0
    around: float = 1.0
    rod: float = 0.75
    hole: float = 1.3125  # AISC Manual Table 14-2, 3/4 in rod (from memory)
    grout: float = 1.5
    base: float = 0.75
    cap: float = 0.5
    edge: float = 1.25
    pitch: float = 3.0
    plate_step: float = 1.0
    half_step: float = 0.5
    gage_step: float = 0.25
    fine_step: float = 1 / 8
    thick: tuple[float, float] = (0.5, 0.75)
    setback: float = 0.5
    play: float = 1 / 16
    seat_leg: float = 0.375
    seat_gage: float = 2.5
    least_edge: float = 1.0
    stiffener: float = 0.375
    wants: tuple[float, float, float] = (0.75, 1.25, 0.75)  # to be put in, to be tightened, to a fillet
    add: tuple[float, float] = (5 / 32, 1.0)
    bolt_step: float = 0.25

    def inches(self, number: int) -> str:
        """So many inches as a document of these units gives it."""
        return f"{number} in"

    def exact(self, *values: float) -> list[float]:
        """Numbers that are written as decimals in inches, and as lengths in millimetres."""
        return list(values) if self.system is System.MM else []

    def room(self, beam: Section, before: list[float], off: float) -> list[float]:
        """What bolts want, then what they have: to the beam's web, to its fillet where it has one."""
        fillet = [off - beam.k1.inches] if beam.k1 else []
        return [*self.wants, *before, off - beam.tw.inches / 2, *fillet]

    def flange(self, beam: Section) -> float:
        """The gage of a beam's flange, wider for the wrench where the edge allows that."""
        usual = beam.gage.inches if beam.gage else up(beam.bf.inches / 2, self.gage_step)
        flat = beam.k1.inches + self.wants[2] if beam.k1 else 0.0
        wanted = up(2 * max(beam.tw.inches / 2 + self.wants[1], flat), self.gage_step)
        return max(usual, min(wanted, down(beam.bf.inches - 2 * self.least_edge, self.gage_step)))

    def gage(self, stock: Section) -> float:
        """The workable gage of a flange, half of it where the tables give none."""
        return stock.gage.inches if stock.gage else down(stock.bf.inches / 2, self.gage_step)


HOLLOW = ("HSS6X6X3/8", "HSS8X8X3/8")
FEET_COLUMNS, METRIC_COLUMNS = ("W8X31", "W10X49", "W12X65", "W14X90"), ("HEB 200", "HEB 260", "HEA 240")
FEET = Trade(
    system=System.FT_IN,
    columns=FEET_COLUMNS,
    posts=(*HOLLOW, *FEET_COLUMNS),
    girders=("W16X31", "W18X50", "W21X62"),
    beams=("W12X26", "W16X26", "W18X35"),
    seat=r"seat L6X4X3/8,",
    bolt="3/4",
)
METRIC = Trade(
    system=System.MM,
    columns=METRIC_COLUMNS,
    posts=(*HOLLOW, *METRIC_COLUMNS),
    girders=("IPE 400", "IPE 500", "HEA 300"),
    beams=("IPE 270", "IPE 300", "IPE 360"),
    seat=r"seat L 150x100x12,",
    bolt="M20",
    beside=mm(75),
    around=mm(25),
    rod=mm(20),
    hole=mm(32),
    grout=mm(40),
    base=mm(20),
    cap=mm(12),
    edge=mm(40),
    pitch=mm(70),
    plate_step=mm(10),
    half_step=mm(10),
    gage_step=mm(5),
    fine_step=mm(1),
    thick=(mm(12), mm(20)),
    setback=mm(10),
    play=mm(2),
    seat_leg=mm(12),
    seat_gage=mm(55),
    least_edge=mm(26),
    stiffener=mm(10),
    wants=(0.875, 1.375, 0.875),  # of a 7/8 bolt, for the table has inch bolts only
    add=(mm(4), mm(18 + 2 * 2.5)),
    bolt_step=mm(5),
)
TRADES = st.sampled_from([FEET, METRIC])


def agrees(reasons: tuple[Reason, ...], known: dict[str, list[float]], system: System) -> None:
    """Every reason is known, and gives the numbers that it should."""
    for reason in reasons:
        text = re.sub(
            r"(W|HSS|L|PL)\d\S*|3/4 x|an? (3/4|7/8) bolt", "", f"{reason.decision}; {reason.because}"
        )
        (want,) = [numbers for pattern, numbers in known.items() if re.match(pattern, reason.decision)]
        have = lengths(text)
        assert len(have) == len(want), (reason.text(), have, want)
        assert all(abs(a - b) <= near(system) for a, b in zip(have, want, strict=True)), (
            reason.text(),
            have,
            want,
        )


def base_reasons(column: Section, t: Trade) -> dict[str, list[float]]:
    d, bf, deep = column.d.inches, column.bf.inches, up(12 * t.rod, t.plate_step)
    long, wide = up(d + 2 * t.beside, t.plate_step), up(bf + 2 * t.beside, t.plate_step)
    out = up(t.base + t.grout + 2.5 * t.rod, t.half_step)
    square = 0 < abs(long - wide) <= t.around + 1e-6
    side = max(long, wide)
    plate = [t.base, side, side] if square else [t.base, wide, long]
    return {
        r"base plate": [*plate, bf, d, t.beside, *([t.around] if square else [])],
        r"holes .* anchor rods": [t.hole, t.rod, out, t.base, t.grout],
        r"rods .* into the concrete": [deep, out + deep],
    }


@given(
    data=st.data(),
    t=TRADES,
    base=st.integers(-24, 24),
    height=st.integers(240, 480),
    splice=st.one_of(st.none(), st.integers(60, 180)),
)
@settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck))
def test_columns_and_their_splices(
    data: st.DataObject, t: Trade, base: int, height: int, splice: int | None
) -> None:
    stock, top = data.draw(st.sampled_from(t.columns)), base + height
    places: dict[str, object] = {"base": t.inches(base), "top": t.inches(top)}
    table: dict[str, object] = {"name": "P", "at": "1/A", "stock": stock} | places
    if splice is not None:
        table["splices"] = [{"at": t.inches(base), "above": t.inches(splice)}]
    frame: dict[str, object] = {"grid": {"x": {"names": ["1"]}, "y": {"names": ["A"]}}, "column": [table]}
    result = detailed(frame, t.system)
    column = section(stock)
    known = base_reasons(column, t)
    if splice is None:
        agrees(result.reasons["P"], known | {r"shaft": [height - t.base, base, top, t.base]}, t.system)
        return
    joint = base + splice
    thick = t.thick[0] if column.tf.inches < t.thick[1] - 1e-9 else t.thick[1]
    gage = t.gage(column)
    wide = min(down(column.bf.inches, t.half_step), up(gage + 2 * t.edge, t.half_step))
    long = 2 * (t.edge + t.pitch + t.edge + t.edge / 2)
    plates = [thick, wide, long, t.pitch, gage, t.edge, t.edge * 1.5]
    lower = {r"shaft 1 of 2": [splice - t.base, base, joint, t.base], r"splice plates": plates}
    agrees(result.reasons["P.1"], known | lower, t.system)
    agrees(result.reasons["P.2"], {r"shaft 2 of 2": [top - joint, joint, top]}, t.system)


@given(data=st.data(), t=TRADES, span=st.integers(120, 360))
@settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_girder_over_two_posts(data: st.DataObject, t: Trade, span: int) -> None:
    post, girder = data.draw(st.sampled_from(t.posts)), data.draw(st.sampled_from(t.girders))
    bears = {"connection": "bearing"}
    high = {"top": t.inches(144), "ends": bears}
    beam = {"name": "G", "stock": girder, "from": "1/A", "to": "2/A"} | high
    columns = [
        {"name": f"P{n}", "at": f"{n}/A", "stock": post, "base": t.inches(0), "under": "G"} for n in (1, 2)
    ]
    grid: dict[str, object] = {"x": {"names": ["1", "2"], "spacing": [t.inches(span)]}, "y": {"names": ["A"]}}
    result = detailed({"grid": grid, "column": columns, "member": [beam]}, t.system)
    column, section_ = section(post), section(girder)
    # a post that is not turned has its depth along x, as the girder
    under = max(column.d.inches, column.d.inches - column.tf.inches + t.stiffener)
    pitch, gage = up(under + 2 * max(t.edge, t.wants[1]), t.half_step), t.flange(section_)
    past = pitch / 2 + t.edge
    apart = column.d.inches - column.tf.inches
    over = {
        r"cut .* long": [span + 2 * past, span, past, past],
        r"4 holes over column": [pitch, gage],
        r"2 pairs of stiffeners": [apart],
        r"bolts (can be put in|have too little)": t.room(
            section_,
            [pitch / 2 - column.d.inches / 2, (pitch - apart - t.stiffener) / 2],
            gage / 2,
        ),
    }
    agrees(result.reasons["G"], over, t.system)
    top = 144 - section_.d.inches
    long = pitch + 2 * t.edge
    wide = max(gage + 2 * t.edge, up(column.bf.inches + t.around, t.plate_step))
    cap = [t.cap, wide, long, column.bf.inches, column.d.inches, pitch, gage]
    shaft = {r"shaft": [top - t.base - t.cap, 0.0, top, t.base, t.cap], r"cap plate": cap}
    agrees(result.reasons["P1"], base_reasons(column, t) | shaft, t.system)


@given(data=st.data(), t=TRADES, span=st.integers(120, 360))
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_beam_on_a_seat(data: st.DataObject, t: Trade, span: int) -> None:
    beam, post = data.draw(st.sampled_from(t.beams)), data.draw(st.sampled_from(t.posts))
    seat, free = {"connection": "seat"}, {"connection": "free"}
    places = {"from": "1/A", "to": "2/A", "top": t.inches(144), "start": seat, "end": free}
    stands = {"at": "1/A", "stock": post, "base": t.inches(0), "top": t.inches(240)}
    grid: dict[str, object] = {"x": {"names": ["1", "2"], "spacing": [t.inches(span)]}, "y": {"names": ["A"]}}
    frame: dict[str, object] = {
        "grid": grid,
        "column": [{"name": "P"} | stands],
        "member": [{"name": "B", "stock": beam} | places],
    }
    result = detailed(frame, t.system)
    (choice,) = [joint.choice for joint in result.joints.values()]
    assume((choice.kind, choice.size.size) == ("seat", t.bolt))  # else it has no room, which is said
    own, carrying = section(beam), section(post)
    gage = t.flange(own)
    least, face = gage + 2 * t.edge, carrying.bf.inches
    long = max(min(up(own.bf.inches, t.half_step), down(face, t.fine_step)), least)
    half, grip = carrying.d.inches / 2, t.seat_leg + own.tf.inches
    whole = grip + sum(t.add)
    known = {
        r"cut .* long": [span - half - t.setback, span, half, t.setback],
        r"(meets the|seat$|top clip)": [],
        r"setback": [t.setback, t.play],
        r"bolts (can be put in|have too little)": [*t.room(own, [], gage / 2), t.seat_gage - t.seat_leg],
        t.seat: [long, gage, own.bf.inches, t.edge, least, face],
        r"field bolts": [up(whole, t.bolt_step), *t.exact(grip, *t.add, whole)],
    }
    agrees(result.reasons["B"], known, t.system)
