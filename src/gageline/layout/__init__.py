"""Layout: what to strike on the steel, from where, in what order, and how exactly."""

from gageline.layout.accuracy import Accuracy, accuracy
from gageline.layout.holes import Column, Pattern, patterns
from gageline.layout.mark import Bench, Mark, MarkKind, Spot
from gageline.layout.marks import marks_of
from gageline.layout.reading import Datum, Reading, printed_length
from gageline.layout.result import Layout, PartLayout, lay_out
from gageline.layout.seats import Seat
from gageline.layout.setups import FaceSetups, Placing, Template, plan_setups
from gageline.layout.step import Step
from gageline.layout.steps import part_steps

__all__ = [
    "Accuracy",
    "Bench",
    "Column",
    "Datum",
    "FaceSetups",
    "Layout",
    "Mark",
    "MarkKind",
    "PartLayout",
    "Pattern",
    "Placing",
    "Reading",
    "Seat",
    "Spot",
    "Step",
    "Template",
    "accuracy",
    "lay_out",
    "marks_of",
    "part_steps",
    "patterns",
    "plan_setups",
    "printed_length",
]
