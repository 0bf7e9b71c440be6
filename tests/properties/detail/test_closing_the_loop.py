"""Random bays, detailed and assembled in space: no clash, holes concentric, gaps and work points right."""

from __future__ import annotations

import math

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assembling import detailed, gaps, off_line, overlaps, worst_mate
from gageline.detail import Detailed
from gageline.part import Severity

EXACT = 1e-6  # inches, for members that meet at right angles
TICK = 1 / 162560  # inches: the step of `Length`
STEP = 4 * TICK  # for the others: placings and holes are each rounded to whole steps
GIRDERS = ("W16X31", "W18X50", "W21X62", "W24X76", "W30X99", "C15X33.9", "HSS16X8X3/8")
CONNECTIONS = ("double angles", "single angle", "single plate", "end plate", "extended plate")
COLUMN_KINDS = (*CONNECTIONS, "seat")
PLATES = ("single plate", "extended plate", None)
COLUMNS = ("W8X31", "W10X49", "W12X65", "W14X90", "HSS8X8X3/8", "HSS6X6X3/8")
TURNS = st.sampled_from([0, 90, 180, 270])  # a skewed arm meets a face of the column askew
ATTACHED = st.fixed_dictionaries(
    {},
    optional={name: st.sampled_from(["bolted", "welded"]) for name in ("to_beam", "to_support")}
    | {"angle": st.just("L4x3-1/2x1/2")},  # whose legs are staggered
)
BEAMS = (
    "W8X18",
    "W10X22",
    "W12X26",
    "W14X30",
    "W16X26",
    "W18X35",
    "W21X50",
    "C12X20.7",
    "C10X15.3",
    "HSS8X4X1/4",
    "HSS10X6X3/8",
)


@st.composite
def bays(draw: st.DrawFn) -> dict[str, object]:
    """Two girders side by side and beams between them, square and level or skewed and sloped."""
    eighth = st.integers(0, 24).map(lambda n: n / 8)
    span = draw(st.integers(60, 300))
    skewed = draw(st.booleans())
    along = [draw(st.integers(40, 60))]
    along.append(along[0] + draw(st.integers(50, 90)))
    most = int(span * math.tan(math.radians(44))) if skewed else 0
    members: list[dict[str, object]] = [
        {
            "name": f"G{number}",
            "stock": draw(st.sampled_from(GIRDERS)),
            "from": f"1/{row}",
            "to": f"2/{row}",
            "top": "Floor",
            "ends": {"connection": "free"},
        }
        for number, row in enumerate("AB", 1)
    ]
    rise = draw(st.sampled_from([0, 0, 1, 2, 3, 6])) if span <= 140 else 0
    shift = draw(st.integers(-min(most, 30), most)) if skewed else 0
    for number, at in enumerate(along, 1):
        beam: dict[str, object] = {
            "name": f"B{number}",
            "stock": draw(st.sampled_from(BEAMS)),
            "from": {"on": "G1", "at": at},
            "to": {"on": "G2", "at": at + shift},
            "top": "Floor",
            "drop": str(draw(eighth)),
        }
        if rise:
            beam["rise"] = f"{rise} in 12"
        if shift == 0 and not rise:
            beam["ends"] = {"connection": draw(st.sampled_from(CONNECTIONS))} | draw(ATTACHED)
        members.append(beam)
    members[1]["top"] = str(120 + rise * math.hypot(span, shift) / 12)
    return {
        "grid": {
            "x": {"names": ["1", "2"], "spacing": [max(320, along[1] + abs(shift) + 60)]},
            "y": {"names": ["A", "B"], "spacing": [span]},
        },
        "level": [{"name": "Floor", "elevation": 120}],
        "member": members,
    }


def goes_together(result: Detailed) -> None:
    """Nothing clashes unsaid, every field hole meets its mate, gaps and work points are the frame's."""
    said = [one for one in result.findings if one.code == "in-the-way"]
    for one, two, _ in overlaps(result):
        assert any(
            one.split(" ")[0] in found.message and two.split(" ")[0] in found.message for found in said
        )
    assert not said or overlaps(result, 0)
    wrong = {one.subject for one in result.findings if one.severity is Severity.ERROR}
    for (member, _), joint in result.joints.items():
        assert joint.kind != "free" or f"{member} {joint.site.word}" in wrong
    for line in result.frame.beams:
        sites = [joint.site for (member, _), joint in result.joints.items() if member == line.name]
        exact = all(site.square and not site.slope for site in sites)
        shared = any(line.name in {one.one[0], one.two[0]} for one in result.shared)
        least = EXACT + (2 * TICK if shared else 0.0) if exact else STEP
        assert worst_mate(result, line.name) <= least
        assert off_line(result, line.name) <= least
        assert all(abs(gap - wanted) <= least for gap, wanted in gaps(result, line.name))


@given(bays())
@settings(max_examples=120, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_bay_goes_together(frame: dict[str, object]) -> None:
    goes_together(detailed(frame))


def beam(
    draw: st.DrawFn, name: str, start: object, end: object, kinds: tuple[str | None, ...]
) -> dict[str, object]:
    """A level beam between two places, its top up to 3 in down."""
    drop = draw(st.integers(0, 24)) / 8
    kind = draw(st.sampled_from(kinds))
    ends = {"connection": kind} if kind else {}
    if kind in {"double angles", "single angle"}:
        ends |= draw(ATTACHED)
    return {
        "name": name,
        "stock": draw(st.sampled_from(BEAMS)),
        "from": start,
        "to": end,
        "top": "Floor",
        "drop": str(drop),
        "ends": ends,
    }


@st.composite
def knots(draw: st.DrawFn) -> dict[str, object]:
    """Beams on both sides of one girder, and a column with beams on all four sides."""
    at = draw(st.integers(50, 90))
    there = at + draw(st.sampled_from([0, 0, 30]))
    column = draw(st.sampled_from(COLUMNS))
    free = {"connection": "free"}
    girder = {"stock": draw(st.sampled_from(GIRDERS)), "top": "Floor", "ends": free}
    kinds = ("double angles", "single plate", "end plate")
    members: list[dict[str, object]] = [
        {"name": f"G{n}", **girder, "from": f"1/{row}", "to": f"2/{row}"} for n, row in enumerate("ABC", 1)
    ]
    members += [
        beam(draw, "B1", {"on": "G1", "at": at}, {"on": "G2", "at": at}, kinds),
        beam(draw, "B2", {"on": "G2", "at": there}, {"on": "G3", "at": there}, kinds),
    ]
    arms = {"east": (90, 0), "west": (-90, 0), "north": (0, 90), "south": (0, -90)}
    for name, (x, y) in arms.items():
        if draw(st.booleans()):
            skew = draw(st.sampled_from([0, 0, draw(st.integers(-85, 85))]))
            tip = {"point": "3/C", "x": x + (skew if y else 0), "y": y + (skew if x else 0)}
            arm = beam(draw, name, "3/C", tip, PLATES if skew else COLUMN_KINDS)
            members.append(arm | {"end": free})
    return {
        "grid": {
            "x": {"names": ["1", "2", "3"], "spacing": [150, 200]},
            "y": {"names": ["A", "B", "C"], "spacing": [120, 140]},
        },
        "level": [{"name": "Floor", "elevation": 120}],
        "column": [
            {"name": "P", "at": "3/C", "stock": column, "base": "0", "top": "150", "turn": draw(TURNS)}
        ],
        "member": members,
    }


@given(knots())
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
def test_beams_around_a_girder_and_a_column_go_together(frame: dict[str, object]) -> None:
    goes_together(detailed(frame))
