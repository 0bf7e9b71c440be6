"""The job document: read, checked, built into pieces, and written back."""

from gageline.job.document import JobDocument, JobFacts, PieceEntry, PracticeEntry
from gageline.job.job import Job, build_job, check_job, open_job, read_job
from gageline.job.measured import Corner, Edge, EndReadings, SquareGap, Stick
from gageline.job.measuring import Inspected, Measurements, read_measurements
from gageline.job.practice import Practice, default_practice
from gageline.job.problems import JobProblems, Problem
from gageline.job.reading import read_document, read_text
from gageline.job.schema import schema_text
from gageline.job.writing import write_document

__all__ = [
    "Corner",
    "Edge",
    "EndReadings",
    "Inspected",
    "Job",
    "JobDocument",
    "JobFacts",
    "JobProblems",
    "Measurements",
    "PieceEntry",
    "Practice",
    "PracticeEntry",
    "Problem",
    "SquareGap",
    "Stick",
    "build_job",
    "check_job",
    "default_practice",
    "open_job",
    "read_document",
    "read_job",
    "read_measurements",
    "read_text",
    "schema_text",
    "write_document",
]
