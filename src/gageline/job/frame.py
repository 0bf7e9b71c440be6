"""The frame in the job document: grid, levels, columns and members, and how their ends are joined."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, PlainValidator, ValidationInfo

from gageline.errors import ValueProblem
from gageline.job.fields import (
    BoltText,
    Count,
    Entry,
    GradeText,
    LengthText,
    Mark,
    PositiveLength,
    SignedLength,
    SlopeText,
    StockText,
    Text,
)
from gageline.job.forces import read_force
from gageline.job.frame_practice import FramePracticeEntry
from gageline.job.loading import AreaLoadEntry, LoadEntry, SpanEntry
from gageline.job.wording import shown
from gageline.steel import HoleKind
from gageline.units import System

__all__ = [
    "ColumnEntry",
    "ColumnPlateEntry",
    "ConnectionName",
    "FrameEndEntry",
    "FrameEntry",
    "GridEntry",
    "GridLinesEntry",
    "LevelEntry",
    "MemberEntry",
    "OpeningInFrameEntry",
    "PlaceEntry",
    "PointEntry",
    "SpliceEntry",
]

_MOST_MEMBERS = 20_000
_MOST_NAMES = 400
_MOST_LOADS = 100
_MOST_CORNERS = 40
_MOST_REACTION = 5000
_ROUND = 360

ConnectionName = Literal[
    "double angles", "single angle", "single plate", "extended plate", "end plate", "seat", "bearing", "free"
]


class GridLinesEntry(Entry):
    """Grid lines one behind the other, each with its name."""

    names: Annotated[tuple[Text, ...], Field(min_length=1, max_length=_MOST_NAMES)]
    spacing: Annotated[tuple[PositiveLength, ...], Field(max_length=_MOST_NAMES)] = Field(
        (), description="from each line to the next"
    )
    start: SignedLength | None = Field(None, description="where the first line lies; zero when left out")


class GridEntry(Entry):
    """The grid: lines across x, which run up the plan, and lines across y, which run along it."""

    x: GridLinesEntry
    y: GridLinesEntry


class LevelEntry(Entry):
    """A named elevation; tops of steel are given by it."""

    name: Text
    elevation: SignedLength
    loads: Annotated[tuple[AreaLoadEntry, ...], Field(max_length=_MOST_LOADS)] = Field(
        (), description="carried by its members over their tributary widths"
    )


def _place(value: object) -> object:
    """A bare text is the name of a point or of a grid crossing."""
    return {"point": value} if isinstance(value, str) else value


class PlaceEntry(Entry):
    """A place in the plan: a point or a crossing, on a member, or between two points."""

    point: Text | None = Field(None, description='a named point, or a crossing of the grid like "2/B"')
    on: Text | None = Field(None, description="the name of a member that it lies on")
    between: tuple[Text, Text] | None = Field(None, description="two points or crossings")
    at: SignedLength | None = Field(
        None, description="distance from the start of the member, or from the first of two points"
    )
    x: SignedLength | None = Field(None, description="from there along x")
    y: SignedLength | None = Field(None, description="from there along y")


Place = Annotated[PlaceEntry, BeforeValidator(_place, json_schema_input_type=PlaceEntry | str)]


class PointEntry(Entry):
    """A point of the plan with a name."""

    name: Text
    at: Place


def _level(value: object) -> object:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise ValueProblem('is neither a level\'s name nor an elevation: write top = "Floor" or "12\'-6"')
    return str(value)


LevelText = Annotated[Text, BeforeValidator(_level, json_schema_input_type=str | int | float)]


def _degrees(value: object) -> float:
    number = isinstance(value, int | float) and not isinstance(value, bool)
    if not number or not -_ROUND <= float(value) <= _ROUND:  # type: ignore[arg-type] # a number by now
        raise ValueProblem(f"{shown(value)} is no angle: give degrees from -360 to 360, like turn = 90")
    return float(value)  # type: ignore[arg-type] # a number by now


Degrees = Annotated[
    float, PlainValidator(_degrees, json_schema_input_type=Annotated[float, Field(ge=-_ROUND, le=_ROUND)])
]


def _reaction(value: object, info: ValidationInfo) -> float:
    """A bare number is in the job's unit; a text has its own."""
    context: Any = info.context
    metric = bool(context) and context["system"] is System.MM
    if isinstance(value, str):
        return read_force(value).kilonewtons if metric else read_force(value).kips
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 <= value <= _MOST_REACTION:
        raise ValueProblem(
            f"{shown(value)} is no reaction: give 0 to {_MOST_REACTION} in {'kN' if metric else 'kip'}, "
            'or a text with its unit, "30 kip"'
        )
    return float(value)


Reaction = Annotated[
    float,
    PlainValidator(_reaction, json_schema_input_type=Annotated[float, Field(ge=0, le=_MOST_REACTION)] | str),
]


class ColumnPlateEntry(Entry):
    """A base plate or a cap plate; what is left out follows by rule."""

    thickness: PositiveLength | None = None
    width: PositiveLength | None = Field(None, description="across the column's depth")
    length: PositiveLength | None = Field(None, description="along the column's depth")
    pitch: PositiveLength | None = Field(None, description="between holes along the depth")
    gage: PositiveLength | None = Field(None, description="between holes across it")
    diameter: PositiveLength | None = Field(None, description="of the holes")
    rod: PositiveLength | None = Field(None, description="diameter of the anchor rods")
    projection: PositiveLength | None = Field(None, description="of the anchor rods over the concrete")
    embedment: PositiveLength | None = Field(None, description="of the anchor rods in the concrete")
    weld: PositiveLength | None = None


class SpliceEntry(Entry):
    """A bolted splice of a column with flange plates."""

    at: LevelText = Field(description="a level's name or an elevation")
    above: SignedLength | None = Field(None, description="how far over it; 4 ft by practice")


class ColumnEntry(Entry):
    """A column, or the stack of its shafts between splices."""

    name: Mark
    mark: Mark | None = Field(None, description="kept as given; else found from equal pieces")
    at: Place
    stock: StockText
    grade: GradeText | None = None
    finish: Text | None = None
    turn: Degrees = Field(0.0, description="degrees from x to the way its depth lies")
    base: LevelText = Field(description="level or elevation of the underside of its base plate")
    top: LevelText | None = Field(None, description="level or elevation of its top, over the cap plate")
    top_drop: SignedLength | None = Field(None, description="how far under that level it ends")
    under: Text | None = Field(None, description="the member that bears on it: it ends at its underside")
    base_plate: ColumnPlateEntry | None = ColumnPlateEntry()
    cap_plate: ColumnPlateEntry | None = None
    splices: tuple[SpliceEntry, ...] = ()


class FrameEndEntry(Entry):
    """How an end of a member is joined; what is left out follows by rule."""

    connection: ConnectionName | None = None
    reaction: Reaction | None = Field(
        None, description="factored; a bare number is in kip, or in kN where the job is in mm"
    )
    rows: Annotated[Count, Field(le=20)] | None = Field(None, description="of bolts; else from the reaction")
    to_beam: Literal["bolted", "welded"] | None = Field(None, description="how angles are joined to the beam")
    to_support: Literal["bolted", "welded"] | None = Field(
        None, description="how angles are joined to the support"
    )
    side: Literal["near", "far"] | None = Field(None, description="of a single angle or plate")
    angle: StockText | None = Field(None, description="connection or seat angle")
    thickness: PositiveLength | None = Field(None, description="of a connection plate")
    bolt: BoltText | None = None
    hole: HoleKind | None = Field(None, description="in the outstanding leg or the plate")
    drop: PositiveLength | None = Field(None, description="top of steel to the first row")
    overhang: LengthText | None = Field(None, description="past the last point, as a cantilever")


class MemberEntry(Entry):
    """A beam between two places."""

    name: Mark
    mark: Mark | None = Field(None, description="kept as given; else found from equal pieces")
    stock: StockText
    grade: GradeText | None = None
    finish: Text | None = None
    from_: Place = Field(alias="from")
    to: Place
    top: LevelText | None = Field(None, description="level or elevation of its top of steel")
    below: Text | None = Field(None, description="a member; its top of steel less the drop, at the start")
    drop: SignedLength | None = Field(None, description="under that level or that member's top")
    offset: SignedLength | None = Field(
        None,
        description="sideways from the line, minus to the near side (right of the way from start to end)",
    )
    rise: SlopeText | None = Field(None, description="slope upward from start to end: 2 in 12, 1:20 or 3°")
    fall: SlopeText | None = Field(None, description="slope downward from start to end: 2 in 12, 1:20 or 3°")
    tributary: PositiveLength | None = Field(
        None, description="width of the strip whose area loads it carries; none when left out"
    )
    loads: Annotated[tuple[LoadEntry, ...], Field(max_length=_MOST_LOADS)] = Field(
        (), description="from its start work point, along its top of steel"
    )
    span: SpanEntry = SpanEntry()
    ends: FrameEndEntry = Field(FrameEndEntry(), description="both ends, where an end says nothing")
    start: FrameEndEntry = FrameEndEntry()
    end: FrameEndEntry = FrameEndEntry()

    def joint(self, which: Literal["start", "end"]) -> FrameEndEntry:
        """What is said of one end: its own table first, then what holds for both."""
        own: FrameEndEntry = getattr(self, which)
        both: dict[str, Any] = {name: getattr(self.ends, name) for name in self.ends.model_fields_set}
        given = {name: getattr(own, name) for name in own.model_fields_set}
        return FrameEndEntry.model_construct(**{**both, **given})


class OpeningInFrameEntry(Entry):
    """An opening in a floor, for a stair or a shaft; nothing of that level may cross it."""

    name: Text
    level: LevelText = Field(description="a level's name or an elevation")
    corners: Annotated[tuple[Place, ...], Field(max_length=_MOST_CORNERS)] = Field(
        description="one after the other; two make a rectangle along x and y"
    )


class FrameEntry(Entry):
    """The frame: what stands where; the program details it."""

    practice: FramePracticeEntry = FramePracticeEntry()
    grid: GridEntry | None = None
    points: Annotated[tuple[PointEntry, ...], Field(alias="point", max_length=_MOST_MEMBERS)] = ()
    levels: Annotated[tuple[LevelEntry, ...], Field(alias="level", max_length=_MOST_NAMES)] = ()
    columns: Annotated[tuple[ColumnEntry, ...], Field(alias="column", max_length=_MOST_MEMBERS)] = ()
    members: Annotated[tuple[MemberEntry, ...], Field(alias="member", max_length=_MOST_MEMBERS)] = ()
    openings: Annotated[
        tuple[OpeningInFrameEntry, ...], Field(alias="opening", max_length=_MOST_MEMBERS)
    ] = ()
