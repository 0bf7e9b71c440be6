"""The shop's practice of detailing: clearances and roundings that turn a frame into pieces."""

from __future__ import annotations

from dataclasses import dataclass, replace

from pydantic import Field

from gageline.job.fields import Entry, LengthText, PositiveLength, StockText
from gageline.units import Length, System

__all__ = ["FramePractice", "FramePracticeEntry", "frame_practice"]

_INCH = Length.from_inches(1)


class FramePracticeEntry(Entry):
    """The shop's own clearances; what is left out is Gageline's default for the job's units."""

    setback: PositiveLength | None = Field(None, description="end of the steel to the face it meets")
    play: LengthText | None = Field(
        None, description="angles and end plates on a beam, to the face they meet"
    )
    cope_clearance: LengthText | None = Field(None, description="over the fillet, and past the flange")
    cope_step: PositiveLength | None = Field(None, description="copes are rounded up to this")
    spread_step: PositiveLength | None = Field(None, description="half webs are rounded up to this")
    entering: LengthText | None = Field(None, description="clearance at each side when steel is entered")
    angle: StockText | None = Field(None, description="connection angle")
    welded_angle: StockText | None = Field(None, description="connection angle with a welded web leg")
    seat_angle: StockText | None = None
    clip_angle: StockText | None = Field(None, description="top clip over a seat")
    plate: PositiveLength | None = Field(None, description="thickness of single plates")
    plate_gage: PositiveLength | None = Field(None, description="face to the bolts of a single plate")
    end_plate: PositiveLength | None = Field(None, description="thickness of end plates")
    end_gage: PositiveLength | None = Field(None, description="between columns of bolts of an end plate")
    stiffener: PositiveLength | None = Field(None, description="thickness of stiffeners over a column")
    edge: PositiveLength | None = Field(
        None, description="bolt line to the edge of a plate or the beam's end"
    )


@dataclass(frozen=True, slots=True)
class FramePractice:
    """What the shop does where the frame says nothing; common practice, no source, unless said.

    Args:
        setback: from the end of the steel to the face that it meets (Design Examples v16 use 1/2 in).
        play: that angles and end plates on a beam stay off the face they meet, so that it goes in between
            (1/16 in in older handbooks, from memory).
        cope_clearance: of a cope over the supporting fillet as designed, and past the flange's edge.
        cope_step: cope lengths and depths are rounded up to it.
        spread_step: half of a web is rounded up to it for the outstanding legs (Design Examples v16).
        entering: kept at each side of steel that is entered between other steel.
        angle: connection angle with bolted web leg, its longer leg outstanding.
        welded_angle: the same with welded web leg.
        seat_angle: its longer leg on the support.
        clip_angle: holds the top flange over a seat.
        plate: thickness of single plates.
        plate_gage: from the face to the bolts of a single plate.
        end_plate: thickness of end plates.
        end_gage: between the columns of bolts of an end plate.
        stiffener: thickness of stiffeners over a column.
        edge: bolt line to the end of the beam's web and to the edge of a plate (2 bolt diameters).
    """

    setback: Length = _INCH / 2
    play: Length = _INCH / 16
    cope_clearance: Length = _INCH / 2
    cope_step: Length = _INCH / 2
    spread_step: Length = _INCH / 16
    entering: Length = _INCH / 8
    angle: str = "L4x3-1/2x5/16"
    welded_angle: str = "L4x3x5/16"
    seat_angle: str = "L6x4x3/8"
    clip_angle: str = "L4x4x1/4"
    plate: Length = _INCH * 3 / 8
    plate_gage: Length = _INCH * 3
    end_plate: Length = _INCH * 3 / 8
    end_gage: Length = _INCH * 11 / 2
    stiffener: Length = _INCH * 3 / 8
    edge: Length = _INCH * 3 / 2


def frame_practice(entry: FramePracticeEntry, system: System) -> FramePractice:
    """The practice of detailing: what the document gives, else the default for the job's units.

    Args:
        entry: the document's table.
        system: the job's units.
    """
    mm = Length.from_mm
    default = FramePractice()
    if system is System.MM:
        default = FramePractice(
            setback=mm(10), play=mm(2), cope_clearance=mm(12), cope_step=mm(10), spread_step=mm(1),
            entering=mm(3), angle="L 100x100x10", welded_angle="L 100x100x10", seat_angle="L 150x100x12",
            clip_angle="L 100x100x8", plate=mm(10), plate_gage=mm(75), end_plate=mm(10), end_gage=mm(140),
            stiffener=mm(10), edge=mm(40),
        )  # fmt: skip
    names = FramePracticeEntry.model_fields
    given = {name: value for name in names if (value := getattr(entry, name)) is not None}
    return replace(default, **given)
