"""The job document: what a person writes, checked key by key."""

from __future__ import annotations

import datetime as dt
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from gageline.job.features import (
    ClipEntry,
    CopeEntry,
    EndEntry,
    HolesEntry,
    OpeningEntry,
    Text,
    TrimEntry,
)
from gageline.job.fields import Entry, LengthText, Mark, PositiveLength, PositiveLengths, listed
from gageline.job.fittings import AnglesEntry, EndPlateEntry, PlateEntry, StiffenerEntry
from gageline.steel import HoleKind
from gageline.units import System

__all__ = ["JobDocument", "JobFacts", "PieceEntry", "PracticeEntry"]

_MOST_PIECES = 20_000
Line = Annotated[str, Field(max_length=200)]
Quantity = Annotated[int, Field(strict=True, ge=1, le=9999)]


class JobFacts(Entry):
    """What the job is."""

    name: Annotated[str, Field(min_length=1, max_length=80)]
    number: Text = ""
    place: Text = Field("", description="where it will stand")
    made_by: Text = ""
    date: dt.date | None = None
    units: System = Field(
        System.FT_IN, description="ft-in or mm: how bare numbers are read and lengths written"
    )
    sheet: Literal["letter", "a4"] | None = Field(None, description="paper; letter for ft-in, a4 for mm")
    notes: tuple[Line, ...] = ()


class PracticeEntry(Entry):
    """The shop's own defaults; what is left out is Gageline's default for the job's units."""

    tape: PositiveLength | None = Field(None, description="smallest division of the tape")
    bolt: Text | None = None
    bolt_grade: Text | None = None
    hole: HoleKind | None = None
    cope_radius: LengthText | None = None
    drop: PositiveLength | None = None
    pitch: PositiveLength | None = None
    end_distance: PositiveLength | None = None
    projection: LengthText | None = None
    weld: PositiveLength | None = None
    template_rows: PositiveLengths | None = Field(None, description="rows of the hole template from its stop")
    template_gages: Annotated[int, Field(strict=True, ge=1, le=12)] | None = None
    opening_radius: LengthText | None = None
    finish: Text | None = None


class PieceEntry(Entry):
    """One piece as drawn, or the opposite hand of another."""

    mark: Mark
    quantity: Quantity = 1
    as_hand_of: Mark | None = Field(
        None, description="the mark of the piece that this is the mirror image of"
    )
    stock: Text | None = Field(None, description="W16x26, HSS6x6x3/8, L4x3x1/4, IPE 300, PL1/2x8 ...")
    grade: Text | None = Field(None, description="usual grade of that section when left out")
    finish: Text | None = None
    length: PositiveLength | None = Field(
        None, description="overall, between the furthest points of the ends"
    )
    left: EndEntry = EndEntry()
    right: EndEntry = EndEntry()
    copes: Annotated[tuple[CopeEntry, ...], BeforeValidator(listed)] = ()
    trims: Annotated[tuple[TrimEntry, ...], BeforeValidator(listed)] = ()
    clips: Annotated[tuple[ClipEntry, ...], BeforeValidator(listed)] = ()
    holes: Annotated[tuple[HolesEntry, ...], BeforeValidator(listed)] = ()
    openings: Annotated[tuple[OpeningEntry, ...], BeforeValidator(listed)] = ()
    angles: Annotated[tuple[AnglesEntry, ...], BeforeValidator(listed)] = ()
    plates: Annotated[tuple[PlateEntry, ...], BeforeValidator(listed)] = ()
    end_plates: Annotated[tuple[EndPlateEntry, ...], BeforeValidator(listed)] = ()
    base_plates: Annotated[tuple[EndPlateEntry, ...], BeforeValidator(listed)] = ()
    cap_plates: Annotated[tuple[EndPlateEntry, ...], BeforeValidator(listed)] = ()
    stiffeners: Annotated[tuple[StiffenerEntry, ...], BeforeValidator(listed)] = ()


class JobDocument(Entry):
    """A whole job document."""

    job: JobFacts
    practice: PracticeEntry = PracticeEntry()
    pieces: Annotated[
        tuple[PieceEntry, ...],
        BeforeValidator(listed),
        Field(alias="piece", min_length=1, max_length=_MOST_PIECES),
    ]
