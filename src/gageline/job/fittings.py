"""The tables of a piece that say what is joined to it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from gageline.job.features import BothEnds, Count, HoleSize, Text
from gageline.job.fields import Entry, LengthText, Mark, PositiveLength, SignedLength
from gageline.steel import HoleKind
from gageline.units import ZERO

__all__ = ["AnglesEntry", "EndPlateEntry", "PlateEntry", "StiffenerEntry"]

Sides = Literal["both", "near", "far"]


class FittingEntry(Entry):
    """What every fitting may say."""

    mark: Mark | None = Field(None, description="of the fitting; given out in order when left out")
    grade: Text | None = Field(None, description="usual grade of that material when left out")
    weld: PositiveLength | None = Field(None, description="leg of its shop fillet weld; practice weld")


class AnglesEntry(FittingEntry, HoleSize):
    """Connection angles at an end: a pair, or one on the near or far side of the web."""

    end: BothEnds
    sides: Sides = "both"
    stock: Text
    web_leg: Literal["long", "short"] = Field("short", description="the leg that lies against the web")
    to_web: Literal["bolted", "welded"] = "bolted"
    out: Literal["bolted", "welded"] = Field("bolted", description="how the other leg is joined in the field")
    rows: Count
    pitch: PositiveLength | None = Field(None, description="between rows; practice pitch")
    drop: PositiveLength | None = Field(None, description="top of steel to the first row; practice drop")
    end_distance: PositiveLength | None = Field(
        None, description="top of the angle to its first row; practice end_distance"
    )
    length: PositiveLength | None = Field(None, description="of the angle; from rows and end distances")
    web_gage: PositiveLength | None = Field(None, description="heel to the holes of the web leg")
    out_gage: PositiveLength | None = Field(None, description="heel to the holes of the outstanding leg")
    out_hole: HoleKind | None = Field(
        None, description="kind of hole in the outstanding leg; as the others when left out"
    )
    projection: LengthText | None = Field(
        None, description="of the heel past the end of the steel; practice projection"
    )


class PlateEntry(FittingEntry, HoleSize):
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
    drop: SignedLength | None = Field(None, description="across: top edge to its first row; practice drop")
    offset: SignedLength = Field(ZERO, description="along: from the middle of the face to the plate's middle")
    rows: Count
    pitch: PositiveLength | None = None
    end_distance: PositiveLength | None = None
    gage: PositiveLength | None = Field(None, description="face to the line of holes; half the width")


class EndPlateEntry(FittingEntry, HoleSize):
    """A plate across an end: end plate, base plate or cap plate."""

    end: BothEnds
    thickness: PositiveLength
    width: PositiveLength
    length: PositiveLength = Field(description="its height, along the section's depth")
    drop: SignedLength | None = Field(
        None, description="top of steel down to its top edge, minus above; centred when left out"
    )
    rows: Annotated[int, Field(strict=True, ge=0, le=60)] = 0
    columns: Count = 2
    pitch: PositiveLength | None = None
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
    clip: LengthText | None = Field(None, description="of the inner corners, to clear the fillet")
