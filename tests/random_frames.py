"""Random frames for laws of detailing, in both unit systems, all of them invented."""

from __future__ import annotations

import math
from dataclasses import dataclass

from hypothesis import strategies as st

from gageline.units import System

__all__ = ["RandomFrame", "bays", "knots", "tongues"]

CONNECTIONS = ("double angles", "single angle", "single plate", "end plate", "extended plate")
COLUMN_KINDS = (*CONNECTIONS, "seat")
PLATES = ("single plate", "extended plate", None)
TURNS = st.sampled_from([0, 90, 180, 270])  # a skewed arm meets a face of the column askew
Table = dict[str, object]


@dataclass(frozen=True)
class RandomFrame:
    """A frame's tables and the units that their bare numbers are in."""

    tables: Table
    system: System


@dataclass(frozen=True)
class Kit:
    """What frames are made of in one unit system.

    Args:
        system: of the job.
        inch: what a number of inches is taken times.
        step: of drops.
        girders: their sections.
        beams: theirs.
        columns: theirs.
        thick: an angle whose legs are staggered.
    """

    system: System
    inch: int
    step: float
    girders: tuple[str, ...]
    beams: tuple[str, ...]
    columns: tuple[str, ...]
    thick: str

    def attached(self) -> st.SearchStrategy[Table]:
        """How angles are joined, where the document says so."""
        joins = {name: st.sampled_from(["bolted", "welded"]) for name in ("to_beam", "to_support")}
        return st.fixed_dictionaries({}, optional={**joins, "angle": st.just(self.thick)})

    def drop(self, draw: st.DrawFn) -> str:
        """Up to 3 in."""
        return str(draw(st.integers(0, 24)) * self.step)


HOLLOW = ("HSS8X4X1/4", "HSS10X6X3/8")
CLOSED = (*HOLLOW, "HSS6X4X1/4", "HSS4X4X1/4", "HSS12X8X1/2", "HSS6X6X3/8")
KITS = (
    Kit(
        System.FT_IN,
        1,
        1 / 8,
        ("W16X31", "W18X50", "W21X62", "W24X76", "W30X99", "C15X33.9", "HSS16X8X3/8"),
        (
            "W8X18",
            "W10X22",
            "W12X26",
            "W14X30",
            "W16X26",
            "W18X35",
            "W21X50",
            "C12X20.7",
            "C10X15.3",
            *HOLLOW,
        ),
        ("W8X31", "W10X49", "W12X65", "W14X90", "HSS8X8X3/8", "HSS6X6X3/8"),
        "L4x3-1/2x1/2",
    ),
    Kit(
        System.MM,
        25,
        3,
        ("IPE 400", "IPE 500", "IPE 600", "HEA 400", "UPN 380", "HSS16X8X3/8"),
        ("IPE 200", "IPE 240", "IPE 300", "IPE 360", "IPE 450", "HEA 240", "UPN 300", "UPE 240", *HOLLOW),
        ("HEB 200", "HEB 260", "HEA 240", "HEB 340", "HSS8X8X3/8", "HSS6X6X3/8"),
        "L 100x100x12",
    ),
)


def _girder(stock: str, number: int, row: str) -> Table:
    ends = {"from": f"1/{row}", "to": f"2/{row}", "top": "Floor", "ends": {"connection": "free"}}
    return {"name": f"G{number}", "stock": stock, **ends}


@st.composite
def bays(draw: st.DrawFn) -> RandomFrame:
    """Two girders side by side and beams between them, square and level or skewed and sloped."""
    kit = draw(st.sampled_from(KITS))
    inch = kit.inch
    span = draw(st.integers(60, 300))
    skewed = draw(st.booleans())
    along = [draw(st.integers(40, 60))]
    along.append(along[0] + draw(st.integers(50, 90)))
    most = int(span * math.tan(math.radians(44))) if skewed else 0
    members = [_girder(draw(st.sampled_from(kit.girders)), number, row) for number, row in enumerate("AB", 1)]
    rise = draw(st.sampled_from([0, 0, 1, 2, 3, 6])) if span <= 140 else 0
    shift = draw(st.integers(-min(most, 30), most)) if skewed else 0
    for number, at in enumerate(along, 1):
        beam: Table = {
            "name": f"B{number}",
            "stock": draw(st.sampled_from(kit.beams)),
            "from": {"on": "G1", "at": at * inch},
            "to": {"on": "G2", "at": (at + shift) * inch},
            "top": "Floor",
            "drop": kit.drop(draw),
        }
        if rise:
            beam["rise"] = f"{rise} in 12"
        if shift == 0 and not rise:
            kind: Table = {"connection": draw(st.sampled_from(CONNECTIONS))}
            beam["ends"] = kind | draw(kit.attached())
        members.append(beam)
    members[1]["top"] = str((120 + rise * math.hypot(span, shift) / 12) * inch)
    tables: Table = {
        "grid": {
            "x": {"names": ["1", "2"], "spacing": [max(320, along[1] + abs(shift) + 60) * inch]},
            "y": {"names": ["A", "B"], "spacing": [span * inch]},
        },
        "level": [{"name": "Floor", "elevation": 120 * inch}],
        "member": members,
    }
    return RandomFrame(tables, kit.system)


def beam(
    draw: st.DrawFn, kit: Kit, name: str, start: object, end: object, kinds: tuple[str | None, ...]
) -> Table:
    """A level beam between two places, its top up to 3 in down."""
    kind = draw(st.sampled_from(kinds))
    ends: Table = {"connection": kind} if kind else {}
    if kind in {"double angles", "single angle"}:
        ends |= draw(kit.attached())
    return {
        "name": name,
        "stock": draw(st.sampled_from(kit.beams)),
        "from": start,
        "to": end,
        "top": "Floor",
        "drop": kit.drop(draw),
        "ends": ends,
    }


@st.composite
def knots(draw: st.DrawFn) -> RandomFrame:
    """Beams on both sides of one girder, and a column with beams on all four sides."""
    kit = draw(st.sampled_from(KITS))
    inch = kit.inch
    at = draw(st.integers(50, 90)) * inch
    there = at + draw(st.sampled_from([0, 0, 30])) * inch
    column = draw(st.sampled_from(kit.columns))
    free = {"connection": "free"}
    girder = draw(st.sampled_from(kit.girders))
    kinds = ("double angles", "single plate", "end plate")
    members = [_girder(girder, number, row) for number, row in enumerate("ABC", 1)]
    members += [
        beam(draw, kit, "B1", {"on": "G1", "at": at}, {"on": "G2", "at": at}, kinds),
        beam(draw, kit, "B2", {"on": "G2", "at": there}, {"on": "G3", "at": there}, kinds),
    ]
    arms = {"east": (90, 0), "west": (-90, 0), "north": (0, 90), "south": (0, -90)}
    for name, (x, y) in arms.items():
        if draw(st.booleans()):
            skew = draw(st.sampled_from([0, 0, draw(st.integers(-85, 85))]))
            aside = ((skew if y else 0) + x) * inch, ((skew if x else 0) + y) * inch
            tip = {"point": "3/C", "x": aside[0], "y": aside[1]}
            arm = beam(draw, kit, name, "3/C", tip, PLATES if skew else COLUMN_KINDS)
            members.append(arm | {"end": free})
    tables: Table = {
        "grid": {
            "x": {"names": ["1", "2", "3"], "spacing": [150 * inch, 200 * inch]},
            "y": {"names": ["A", "B", "C"], "spacing": [120 * inch, 140 * inch]},
        },
        "level": [{"name": "Floor", "elevation": 120 * inch}],
        "column": [
            {
                "name": "P",
                "at": "3/C",
                "stock": column,
                "base": "0",
                "top": str(150 * inch),
                "turn": draw(TURNS),
            }
        ],
        "member": members,
    }
    return RandomFrame(tables, kit.system)


@st.composite
def tongues(draw: st.DrawFn) -> RandomFrame:
    """A hollow column with hollow arms, square, askew and sloped, and a hollow beam between two girders."""
    kit = draw(st.sampled_from(KITS))
    inch = kit.inch
    free = {"connection": "free"}
    column = draw(st.sampled_from(kit.columns))
    shift = draw(st.one_of(st.just(0), st.integers(-90, 90)))
    members = [_girder(draw(st.sampled_from(kit.girders)), number, row) for number, row in enumerate("AB", 1)]
    between: Table = {
        "name": "B1",
        "stock": draw(st.sampled_from(CLOSED)),
        "from": {"on": "G1", "at": 160 * inch},
        "to": {"on": "G2", "at": (160 + shift) * inch},
        "top": "Floor",
        "drop": kit.drop(draw),
        "ends": draw(st.sampled_from([{}, {"connection": "single plate"}, {"connection": "extended plate"}])),
    }
    arms = {"east": (90, 0), "west": (-90, 0), "north": (0, 90), "south": (0, -90)}
    for name, (x, y) in arms.items():
        if draw(st.booleans()):
            skew = draw(st.sampled_from([0, draw(st.integers(-89, 89))]))
            aside = ((skew if y else 0) + x) * inch, ((skew if x else 0) + y) * inch
            arm: Table = {
                "name": name,
                "stock": draw(st.sampled_from(CLOSED)),
                "from": "3/C",
                "to": {"point": "3/C", "x": aside[0], "y": aside[1]},
                "top": "Floor",
                "drop": kit.drop(draw),
                "end": free,
                "start": draw(st.sampled_from([{}, {"connection": "single plate"}])),
            }
            rise = draw(st.sampled_from([0, 0, 2, 6]))
            members.append(arm | ({"rise": f"{rise} in 12"} if rise else {}))
    spacing = [320 * inch, 200 * inch]
    tables: Table = {
        "grid": {
            "x": {"names": ["1", "2", "3"], "spacing": spacing},
            "y": {"names": ["A", "B", "C"], "spacing": [draw(st.integers(100, 160)) * inch, 140 * inch]},
        },
        "level": [{"name": "Floor", "elevation": 120 * inch}],
        "column": [
            {"name": "P", "at": "3/C", "stock": column, "base": "0", "top": 170 * inch, "turn": draw(TURNS)}
        ],
        "member": [*members, between],
    }
    return RandomFrame(tables, kit.system)
