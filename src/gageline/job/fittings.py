"""The tables of a piece that say what is joined to it."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Literal

from pydantic import Field

from gageline.job.features import BothEnds, HoleSize
from gageline.job.fields import (
    Count,
    Entry,
    GradeText,
    LengthText,
    Mark,
    PositiveLength,
    SignedLength,
    StockText,
    Text,
    Turn,
)
from gageline.job.forces import ForceText
from gageline.steel import HoleKind

__all__ = ["AnglesEntry", "EndPlateEntry", "PlateEntry", "StiffenerEntry"]

Sides = Literal["both", "near", "far"]


class FittingEntry(Entry):
    """What every fitting may say."""

    mark: Mark | None = Field(None, description="of the fitting; given out in order when left out")
    grade: GradeText | None = Field(None, description="usual grade of that material when left out")
    weld: PositiveLength | None = Field(None, description="leg of its shop fillet weld; practice weld")


class FittingHoleSize(HoleSize):
    """Holes of a fitting: its slots lie across it, which is across the reaction that runs along it."""

    turn: Turn = Field(
        Fraction(90), description="a slot's long axis: across the fitting, along it, or degrees from along"
    )


class AnglesEntry(FittingEntry, FittingHoleSize):
    """Connection angles at an end: a pair, or one on the near or far side of the web."""

    end: BothEnds
    sides: Sides = "both"
    stock: StockText
    web_leg: Literal["long", "short"] = Field("short", description="the leg that lies against the web")
    to_web: Literal["bolted", "welded"] = "bolted"
    out: Literal["bolted", "welded"] = Field("bolted", description="how the other leg is joined in the field")
    rows: Count | None = Field(None, description="of bolts; needed where a leg is bolted")
    pitch: PositiveLength | None = Field(None, description="between rows; practice pitch")
    drop: PositiveLength | None = Field(None, description="top of steel to the first row; practice drop")
    end_distance: PositiveLength | None = Field(
        None, description="top of the angle to its first row; practice end_distance"
    )
    length: PositiveLength | None = Field(
        None, description="of the angle; from rows and end distances when left out"
    )
    web_gage: PositiveLength | None = Field(
        None, description="heel to the holes of the web leg; the usual gage"
    )
    out_gage: PositiveLength | None = Field(
        None, description="heel to the holes of the outstanding leg; the usual gage"
    )
    out_hole: HoleKind | None = Field(
        None, description="kind of hole in the outstanding leg; as the others when left out"
    )
    projection: LengthText | None = Field(
        None, description="of the heel past the end of the steel; practice projection"
    )
    stagger: LengthText | None = Field(
        None, description="how much lower the rows of the outstanding leg are than those of the web leg"
    )


class PlateEntry(FittingEntry, FittingHoleSize):
    """A single plate standing on a face, for a beam that frames in."""

    on: Literal["top", "near", "bottom", "far"] = "near"
    runs: Literal["across", "along"] | None = Field(
        None,
        description="its length runs across the face or along the part; across on a web, along on a flange",
    )
    thickness: PositiveLength
    width: PositiveLength = Field(description="how far it stands out from the face")
    length: PositiveLength | None = Field(None, description="from rows and end distances when left out")
    from_: Text = Field("left", alias="from", description="left, right or centre")
    x: SignedLength = Field(description="to the plate's middle")
    drop: SignedLength | None = Field(
        None, description="across a web: top edge to its first row; practice drop"
    )
    offset: SignedLength | None = Field(
        None, description="elsewhere: from the middle of the face to the plate's middle"
    )
    rows: Count
    pitch: PositiveLength | None = Field(None, description="between rows; practice pitch")
    end_distance: PositiveLength | None = Field(
        None, description="end of the plate to its first row; practice end_distance"
    )
    gage: PositiveLength | None = Field(None, description="face to the line of holes; half the width")
    reaction: ForceText | None = Field(None, description="of the beam that it carries")


class EndPlateEntry(FittingEntry, FittingHoleSize):
    """A plate across an end: end plate, base plate or cap plate."""

    end: BothEnds
    thickness: PositiveLength
    width: PositiveLength
    length: PositiveLength = Field(description="its height, along the section's depth")
    drop: SignedLength | None = Field(
        None, description="top of steel down to its top edge, minus above; centred when left out"
    )
    rows: Annotated[int, Field(strict=True, ge=0, le=60)] = Field(0, description="of holes; 0 for none")
    columns: Annotated[int, Field(strict=True, ge=1, le=60)] = Field(2, description="of holes")
    pitch: PositiveLength | None = Field(None, description="between rows; practice pitch")
    gage: PositiveLength | None = Field(None, description="between the columns of holes")
    end_distance: PositiveLength | None = Field(
        None, description="top edge to the first row; the rows are centred when left out"
    )


class StiffenerEntry(FittingEntry):
    """Plates that stand on the web between the flanges."""

    sides: Sides = "both"
    thickness: PositiveLength
    width: PositiveLength | None = Field(None, description="from the web out; to the flange's edge")
    length: PositiveLength | None = Field(None, description="between the flanges; the clear depth")
    from_: Text = Field("left", alias="from", description="left, right or centre")
    x: SignedLength = Field(description="to the stiffener's middle")
    clip: LengthText | None = Field(
        None, description="of the inner corners; enough to clear the fillet when left out"
    )
