"""What a job takes: parts, weights, bolts and weld."""

from gageline.takeoff.materials import (
    BoltLine,
    PartLine,
    PieceBill,
    WeldLine,
    bill_of_piece,
    bolts_of_job,
    parts_of_job,
)
from gageline.takeoff.weights import weight_number, weight_text, weight_unit

__all__ = [
    "BoltLine",
    "PartLine",
    "PieceBill",
    "WeldLine",
    "bill_of_piece",
    "bolts_of_job",
    "parts_of_job",
    "weight_number",
    "weight_text",
    "weight_unit",
]
