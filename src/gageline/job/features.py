"""The tables of a piece that say what is cut into it."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from pydantic import Field

from gageline.job.fields import (
    BoltText,
    Count,
    Entry,
    Flag,
    LengthText,
    PositiveLength,
    RowLengths,
    SignedLength,
    SlopeText,
    SomeLengths,
    StockText,
    Text,
    Turn,
)
from gageline.job.forces import ForceText
from gageline.steel import HoleKind, Profile, Stock
from gageline.units import SQUARE, ZERO

__all__ = [
    "BothEnds",
    "ClipEntry",
    "CopeEntry",
    "EndEntry",
    "HoleSize",
    "HolesEntry",
    "OpeningEntry",
    "TrimEntry",
    "without_face",
]

BothEnds = Literal["left", "right", "both"]
SupportFaceName = Literal["girder web", "column flange", "column web", "wall"]
_WITH_WEB = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_HAVE: dict[str, frozenset[Profile]] = {
    "girder web": _WITH_WEB,
    "column flange": frozenset({Profile.I_SHAPE}),
    "column web": _WITH_WEB,
    "wall": frozenset({Profile.BOX, Profile.TUBE}),
}
FaceName = Literal["top", "near", "bottom", "far", "leg_a", "leg_b", "face"]


class EndEntry(Entry):
    """How an end is cut, and what it carries on what; all of it may be left out."""

    bevel: SlopeText = Field(SQUARE, description="lean in the web plane, 3 in 12")
    long: Literal["top", "bottom"] = Field("top", description="the edge that reaches further, of a bevel")
    mitre: SlopeText = Field(SQUARE, description="lean in the flange plane, 3 in 12")
    long_side: Literal["near", "far"] = Field("near", description="the side that reaches further, of a mitre")
    reaction: ForceText | None = Field(
        None, description="what the end must carry, by the method of [strength]"
    )
    axial: ForceText | None = Field(None, description="what pulls it off its support, by that method")
    support: StockText | None = Field(None, description="section that it stands on, where that is known")
    face: SupportFaceName = Field("girder web", description="of the support")


def without_face(stock: Stock, face: str) -> str:
    """Why nothing can stand on a face of some stock; empty where it has one.

    Args:
        stock: of the support.
        face: as the document names it.
    """
    if stock.profile in _HAVE[face]:
        return ""
    known = " or ".join(sorted(profile.value for profile in _HAVE[face]))
    return f"{stock.designation} is no {known}, it has no {face}: name another section or face"


class CopeEntry(Entry):
    """A cope: a flange and the web behind it cut away at an end."""

    end: BothEnds
    flange: Literal["top", "bottom", "both"] = "top"
    length: PositiveLength
    depth: PositiveLength
    radius: LengthText | None = Field(None, description="of the re-entrant corner; practice cope_radius")


class TrimEntry(Entry):
    """A flange cut back at an end on one side or both, the web left whole."""

    end: BothEnds
    flange: Literal["top", "bottom", "both"]
    side: Literal["near", "far", "both"] = "both"
    length: PositiveLength
    keep: LengthText = Field(ZERO, description="how far the flange still stands out from the web")


class ClipEntry(Entry):
    """A corner of a plate snipped off straight."""

    end: BothEnds
    edge: Literal["top", "bottom", "both"]
    along: PositiveLength
    across: PositiveLength


class HoleSize(Entry):
    """What size of hole: for a bolt, or a plain diameter."""

    bolt: BoltText | None = Field(None, description="bolt size; practice bolt when no diameter is given")
    hole: HoleKind | None = Field(None, description="STD, OVS, SSL or LSL; practice hole")
    diameter: PositiveLength | None = Field(None, description="a plain hole for no bolt of a table")
    slot: PositiveLength | None = Field(None, description="overall length of a slot of that diameter")
    turn: Turn = Field(
        Fraction(0), description="a slot's long axis: along the part, across it, or degrees from along"
    )


class HolesEntry(HoleSize):
    """A group of holes on one face: columns along the part, rows across the face."""

    name: Text | None = Field(None, description="what the card calls it")
    face: FaceName | None = Field(None, description="near web, upright leg or plate face when left out")
    columns: Count = 1
    spacing: PositiveLength | None = Field(None, description="between columns, along the part")
    rows: Count | None = None
    pitch: PositiveLength | None = Field(None, description="between rows; practice pitch")
    gage: PositiveLength | None = Field(None, description="two rows this far apart about the middle")
    from_: Text = Field("left", alias="from", description="left, right, centre or the name of another group")
    x: SomeLengths = Field((ZERO,), description="to the nearest column, or running dimensions of all")
    down: RowLengths | None = Field(None, description="from the top edge to the first row, or of all rows")
    up: RowLengths | None = Field(None, description="from the bottom edge to the lowest row, or of all rows")
    offset: SignedLength | None = Field(
        None, description="from the middle of the face to the pattern's middle"
    )
    heel: RowLengths | None = Field(None, description="from an angle's heel")
    back: RowLengths | None = Field(None, description="from the back of a channel's web, on a flange")
    mates: Flag = Field(default=True, description="whether another piece bolts to it")
    through: Flag = Field(default=False, description="through both walls of a hollow section")


class OpeningEntry(Entry):
    """An opening in a web, wall or plate."""

    face: FaceName | None = None
    diameter: PositiveLength | None = Field(None, description="of a round opening")
    length: PositiveLength | None = Field(None, description="of a rectangular one, along the part")
    depth: PositiveLength | None = Field(None, description="of a rectangular one, across the part")
    radius: LengthText | None = Field(None, description="of its corners; practice opening_radius")
    from_: Text = Field("left", alias="from", description="left, right or centre")
    x: SignedLength = Field(ZERO, description="to its middle")
    down: SignedLength | None = Field(None, description="from the top edge to its middle")
    up: SignedLength | None = Field(None, description="from the bottom edge to its middle")
    offset: SignedLength | None = Field(None, description="from the middle of the face to its middle")
    through: Flag = Field(default=False, description="through both walls of a hollow section")
