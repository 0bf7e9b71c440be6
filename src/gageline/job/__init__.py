"""The job document: read, checked, built into pieces, and written back."""

from gageline.job.angles import join_angles
from gageline.job.cutting import HoleMaker
from gageline.job.document import JobDocument, JobFacts, PieceEntry, PracticeEntry
from gageline.job.end_plates import join_end_plates
from gageline.job.features import EndEntry, HoleSize, without_face
from gageline.job.fields import (
    Count,
    Date,
    Entry,
    Flag,
    GradeText,
    LengthText,
    Mark,
    PositiveLength,
    StockText,
    Text,
)
from gageline.job.fittings import AnglesEntry, EndPlateEntry, StiffenerEntry
from gageline.job.forces import AreaLoad, Force, LineLoad
from gageline.job.forms import filled
from gageline.job.frame import (
    ColumnEntry,
    ColumnPlateEntry,
    FrameEndEntry,
    FrameEntry,
    GridEntry,
    GridLinesEntry,
    LevelEntry,
    MemberEntry,
    OpeningInFrameEntry,
    PlaceEntry,
    PointEntry,
)
from gageline.job.frame_practice import FramePractice, frame_practice
from gageline.job.job import CheckedJob, Job, build_job, check_job, checked, open_job, read_job
from gageline.job.joining import Joined, grade_of, plate_stock, rows_down
from gageline.job.loading import AreaLoadEntry, LoadEntry, PieceLoads, SpanEntry, StrengthEntry
from gageline.job.marking import FittingMarks
from gageline.job.measured import Corner, Edge, EndReadings, SquareGap, Stick
from gageline.job.measuring import Inspected, MeasuredEntry, Measurements, read_measurements
from gageline.job.plates import join_stiffeners
from gageline.job.practice import Practice, default_practice
from gageline.job.problems import JobProblems, Note, Path, Problem, placed
from gageline.job.reading import parse, read_document, read_text
from gageline.job.schema import schema_text
from gageline.job.stock import stock_named
from gageline.job.wording import say, say_finely
from gageline.job.writing import write_document

__all__ = [
    "AnglesEntry",
    "AreaLoad",
    "AreaLoadEntry",
    "CheckedJob",
    "ColumnEntry",
    "ColumnPlateEntry",
    "Corner",
    "Count",
    "Date",
    "Edge",
    "EndEntry",
    "EndPlateEntry",
    "EndReadings",
    "Entry",
    "FittingMarks",
    "Flag",
    "Force",
    "FrameEndEntry",
    "FrameEntry",
    "FramePractice",
    "GradeText",
    "GridEntry",
    "GridLinesEntry",
    "HoleMaker",
    "HoleSize",
    "Inspected",
    "Job",
    "JobDocument",
    "JobFacts",
    "JobProblems",
    "Joined",
    "LengthText",
    "LevelEntry",
    "LineLoad",
    "LoadEntry",
    "Mark",
    "MeasuredEntry",
    "Measurements",
    "MemberEntry",
    "Note",
    "OpeningInFrameEntry",
    "Path",
    "PieceEntry",
    "PieceLoads",
    "PlaceEntry",
    "PointEntry",
    "PositiveLength",
    "Practice",
    "PracticeEntry",
    "Problem",
    "SpanEntry",
    "SquareGap",
    "Stick",
    "StiffenerEntry",
    "StockText",
    "StrengthEntry",
    "Text",
    "build_job",
    "check_job",
    "checked",
    "default_practice",
    "filled",
    "frame_practice",
    "grade_of",
    "join_angles",
    "join_end_plates",
    "join_stiffeners",
    "open_job",
    "parse",
    "placed",
    "plate_stock",
    "read_document",
    "read_job",
    "read_measurements",
    "read_text",
    "rows_down",
    "say",
    "say_finely",
    "schema_text",
    "stock_named",
    "without_face",
    "write_document",
]
