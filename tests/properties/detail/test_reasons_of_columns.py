"""Every number of the reasons of columns, splices, seats and beams on posts, worked again from tables."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assembling import detailed, lengths, near
from gageline.detail import Reason
from gageline.steel import Section, find
from gageline.units import System

W_COLUMNS = ("W8X31", "W10X49", "W12X65", "W14X90")
POSTS = ("HSS6X6X3/8", "HSS8X8X3/8", *W_COLUMNS)
GIRDERS = ("W16X31", "W18X50", "W21X62")
BEAMS = ("W12X26", "W16X26", "W18X35")
ROD, GROUT, EDGE = 0.75, 1.5, 1.25
RODS = {"rod": ROD, "hole": 1.3125}  # AISC Manual Table 14-2, 3/4 in rod (from memory)
Numbers = Callable[[], list[float]]


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


def up(value: float, step: float) -> float:
    return math.ceil((value - 1e-6) / step) * step


def down(value: float, step: float) -> float:
    return math.floor((value + 1e-6) / step) * step


def agrees(reasons: tuple[Reason, ...], known: dict[str, list[float]]) -> None:
    """Every reason is known, and gives the numbers that it should."""
    for reason in reasons:
        text = re.sub(r"(W|HSS|L|PL)\d\S*|3/4 x|a 3/4 bolt", "", f"{reason.decision}; {reason.because}")
        (want,) = [numbers for pattern, numbers in known.items() if re.match(pattern, reason.decision)]
        have = lengths(text)
        assert len(have) == len(want), (reason.text(), have, want)
        assert all(abs(a - b) <= near(System.FT_IN) for a, b in zip(have, want, strict=True)), (
            reason.text(),
            have,
            want,
        )


def base_reasons(column: Section) -> dict[str, list[float]]:
    long, wide = up(column.d.inches + 6, 1), up(column.bf.inches + 6, 1)
    out = up(0.75 + GROUT + 2.5 * ROD, 0.5)
    return {
        r"base plate": [0.75, wide, long, column.bf.inches, column.d.inches, 3.0],
        r"holes .* anchor rods": [RODS["hole"], ROD, out, 0.75, GROUT],
        r"rods .* into the concrete": [up(12 * ROD, 1), out + up(12 * ROD, 1)],
    }


@given(
    stock=st.sampled_from(W_COLUMNS),
    base=st.integers(-24, 24),
    height=st.integers(240, 480),
    splice=st.one_of(st.none(), st.integers(60, 180)),
)
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_columns_and_their_splices(stock: str, base: int, height: int, splice: int | None) -> None:
    top = base + height
    table: dict[str, object] = {"name": "P", "at": "1/A", "stock": stock, "base": base, "top": top}
    if splice is not None:
        table["splices"] = [{"at": base, "above": splice}]
    result = detailed({"grid": {"x": {"names": ["1"]}, "y": {"names": ["A"]}}, "column": [table]})
    column = section(stock)
    known = base_reasons(column)
    if splice is None:
        agrees(result.reasons["P"], known | {r"shaft": [height - 0.75, base, top, 0.75]})
        return
    joint = base + splice
    thick = 0.5 if column.tf.inches < 0.75 else 0.75
    gage = (column.gage or column.bf / 2).inches
    wide = min(down(column.bf.inches, 0.5), up(gage + 2 * EDGE, 0.5))
    long = 2 * (EDGE + 3 + EDGE + EDGE / 2)
    plates = [thick, wide, long, 3.0, gage, EDGE, EDGE * 1.5]
    lower = {r"shaft 1 of 2": [splice - 0.75, base, joint, 0.75], r"splice plates": plates}
    agrees(result.reasons["P.1"], known | lower)
    agrees(result.reasons["P.2"], {r"shaft 2 of 2": [top - joint, joint, top]})


@given(post=st.sampled_from(POSTS), girder=st.sampled_from(GIRDERS), span=st.integers(120, 360))
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_girder_over_two_posts(post: str, girder: str, span: int) -> None:
    bears = {"connection": "bearing"}
    beam = {"name": "G", "stock": girder, "from": "1/A", "to": "2/A", "top": 144, "ends": bears}
    columns = [{"name": f"P{n}", "at": f"{n}/A", "stock": post, "base": 0, "under": "G"} for n in (1, 2)]
    grid = {"x": {"names": ["1", "2"], "spacing": [span]}, "y": {"names": ["A"]}}
    result = detailed({"grid": grid, "column": columns, "member": [beam]})
    column, section_ = section(post), section(girder)
    # a post that is not turned has its depth along x, as the girder
    pitch, gage = down(column.d.inches + 2 * EDGE, 0.5), (section_.gage or section_.bf / 2).inches
    past = pitch / 2 + EDGE
    apart = column.d.inches - column.tf.inches
    over = {
        r"cut .* long": [span + 2 * past, span, past, past],
        r"4 holes over column": [pitch, gage],
        r"2 pairs of stiffeners": [apart],
    }
    agrees(result.reasons["G"], over)
    top = 144 - section_.d.inches
    long, wide = pitch + 2 * EDGE, max(gage + 2 * EDGE, up(column.bf.inches + 1, 1))
    cap = [0.5, wide, long, column.bf.inches, column.d.inches, pitch, gage]
    shaft = {r"shaft": [top - 1.25, 0.0, top, 0.75, 0.5], r"cap plate": cap}
    agrees(result.reasons["P1"], base_reasons(column) | shaft)


@given(beam=st.sampled_from(BEAMS), post=st.sampled_from(POSTS), span=st.integers(120, 360))
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_beam_on_a_seat(beam: str, post: str, span: int) -> None:
    seat, free = {"connection": "seat"}, {"connection": "free"}
    member = {"name": "B", "stock": beam, "from": "1/A", "to": "2/A", "top": 144, "start": seat, "end": free}
    column = {"name": "P", "at": "1/A", "stock": post, "base": 0, "top": 240}
    grid = {"x": {"names": ["1", "2"], "spacing": [span]}, "y": {"names": ["A"]}}
    result = detailed({"grid": grid, "column": [column], "member": [member]})
    own, carrying = section(beam), section(post)
    gage = (own.gage or own.bf / 2).inches
    least, face = gage + 2 * EDGE, carrying.bf.inches
    long = max(min(up(own.bf.inches, 0.5), down(face, 1 / 8)), least)
    half = carrying.d.inches / 2
    known = {
        r"cut .* long": [span - half - 0.5, span, half, 0.5],
        r"(meets the|seat$|top clip)": [],
        r"setback": [0.5],
        r"seat L6X4X3/8,": [long, gage, own.bf.inches, EDGE, least, face],
        r"field bolts": [up(0.375 + own.tf.inches + 5 / 32 + 1, 0.25)],
    }
    agrees(result.reasons["B"], known)
