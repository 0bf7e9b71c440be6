"""From framing to parts: the frame's members worked out, every dimension with its reason."""

from gageline.detail.bolting import FieldBolts, bolt_length
from gageline.detail.detail import Detailed, Placed, Progress, detail_frame
from gageline.detail.line import Frame, Line
from gageline.detail.reason import Reason

__all__ = [
    "Detailed",
    "FieldBolts",
    "Frame",
    "Line",
    "Placed",
    "Progress",
    "Reason",
    "bolt_length",
    "detail_frame",
]
