"""The job document: what a person writes, checked key by key."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, ValidationInfo, field_validator

from gageline.errors import ValueProblem
from gageline.job.features import ClipEntry, CopeEntry, EndEntry, HolesEntry, OpeningEntry, TrimEntry
from gageline.job.fields import (
    BoltText,
    Date,
    Entry,
    GradeText,
    LengthText,
    Line,
    Mark,
    PieceLength,
    PositiveLength,
    RowLengths,
    StockText,
    TapeLength,
    Text,
)
from gageline.job.fittings import AnglesEntry, EndPlateEntry, PlateEntry, StiffenerEntry
from gageline.job.frame import FrameEntry
from gageline.job.loading import LoadEntry, SpanEntry, StrengthEntry
from gageline.steel import HoleKind
from gageline.units import System

__all__ = ["JobDocument", "JobFacts", "PieceEntry", "PracticeEntry"]

_MOST_PIECES = 20_000
_MOST_NOTES = 40
Quantity = Annotated[int, Field(strict=True, ge=1, le=9999)]


class JobFacts(Entry):
    """What the job is."""

    name: Text
    number: Text = Field("", description="the shop's own number of the job")
    place: Text = Field("", description="where it will stand")
    made_by: Text = Field("", description="who typed it in")
    date: Date | None = Field(None, description="of the drawing or the document, as 2026-11-25")
    units: System = Field(
        System.FT_IN, description="ft-in or mm: how bare numbers are read and lengths written"
    )
    sheet: Literal["letter", "a4"] | None = Field(None, description="paper; letter for ft-in, a4 for mm")
    notes: Annotated[tuple[Line, ...], Field(max_length=_MOST_NOTES)] = Field(
        (), description="printed on every sheet"
    )


class PracticeEntry(Entry):
    """The shop's own defaults; what is left out is Gageline's default for the job's units."""

    tape: TapeLength | None = Field(None, description="smallest division of the tape")
    bolt: BoltText | None = Field(None, description="size of the bolts that holes are for")
    bolt_grade: Text | None = Field(
        None, description="of the bolts, printed on the sheets; A325-SC or A325-SC-B for slip-critical ones"
    )
    hole: HoleKind | None = Field(None, description="kind of hole for a bolt")
    cope_radius: LengthText | None = Field(None, description="of the re-entrant corner of a cope")
    drop: PositiveLength | None = Field(None, description="top of steel down to the first row of holes")
    pitch: PositiveLength | None = Field(None, description="between rows of holes")
    end_distance: PositiveLength | None = Field(
        None, description="end of an angle or plate to its first hole"
    )
    projection: LengthText | None = Field(None, description="of connection angles past the end of the steel")
    weld: PositiveLength | None = Field(None, description="leg of a shop fillet weld")
    template_rows: RowLengths | None = Field(None, description="rows of the hole template from its stop")
    template_gages: Annotated[int, Field(strict=True, ge=1, le=12)] | None = Field(
        None, description="gage lines that can be set on the template"
    )
    opening_radius: LengthText | None = Field(None, description="of the corners of an opening")
    finish: Text | None = Field(None, description="of pieces")
    tolerance_class: Annotated[int, Field(strict=True, ge=1, le=2)] | None = Field(
        None, description="of EN 1090-2, for finished pieces of metric jobs"
    )
    tolerances: dict[str, LengthText] | None = Field(
        None, description="limits of the shop's own, by the code of the rule"
    )


class PieceEntry(Entry):
    """One piece as drawn, or the opposite hand of another."""

    mark: Mark = Field(description="what is painted on the piece")
    quantity: Quantity = Field(1, description="how many are wanted")
    as_hand_of: Mark | None = Field(
        None, description="the mark of the piece that this is the mirror image of"
    )
    stock: StockText | None = Field(None, description="W16x26, HSS6x6x3/8, L4x3x1/4, IPE 300, PL1/2x8 ...")
    grade: GradeText | None = Field(None, description="usual grade of that section when left out")
    finish: Text | None = Field(None, description="paint or galvanizing; practice finish")
    length: PieceLength | None = Field(None, description="overall, between the furthest points of the ends")
    left: EndEntry = EndEntry()
    right: EndEntry = EndEntry()
    copes: tuple[CopeEntry, ...] = ()
    trims: tuple[TrimEntry, ...] = ()
    clips: tuple[ClipEntry, ...] = ()
    holes: tuple[HolesEntry, ...] = ()
    openings: tuple[OpeningEntry, ...] = ()
    angles: tuple[AnglesEntry, ...] = ()
    plates: tuple[PlateEntry, ...] = ()
    end_plates: tuple[EndPlateEntry, ...] = ()
    base_plates: tuple[EndPlateEntry, ...] = ()
    cap_plates: tuple[EndPlateEntry, ...] = ()
    stiffeners: tuple[StiffenerEntry, ...] = ()
    loads: tuple[LoadEntry, ...] = ()
    span: SpanEntry = SpanEntry()


class JobDocument(Entry):
    """A whole job document."""

    job: JobFacts
    practice: PracticeEntry = PracticeEntry()
    strength: StrengthEntry = StrengthEntry()
    frame: FrameEntry | None = Field(None, description="what stands where; the pieces follow from it")
    pieces: Annotated[
        tuple[PieceEntry, ...], Field(alias="piece", max_length=_MOST_PIECES, validate_default=True)
    ] = ()

    @field_validator("pieces")
    @classmethod
    def _something_to_make(
        cls, pieces: tuple[PieceEntry, ...], info: ValidationInfo
    ) -> tuple[PieceEntry, ...]:
        """Pieces as drawn, a frame, or both; a frame that is refused says so itself."""
        if not pieces and info.data.get("frame", FrameEntry()) is None:
            raise ValueProblem("is missing: write a [[piece]] table for each")
        return pieces
