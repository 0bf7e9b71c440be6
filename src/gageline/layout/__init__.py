"""Layout: what to strike on the steel, from where, in what order, and how exactly."""

from gageline.layout.accuracy import Accuracy, accuracy
from gageline.layout.deciding import Decision, decide
from gageline.layout.ends import EndPlane, fit_end
from gageline.layout.holes import Column, Pattern, patterns
from gageline.layout.long_tape import ALPHA, LongTape, tape_of
from gageline.layout.mark import Bench, Mark, MarkKind, Spot, bench_of
from gageline.layout.marks import marks_of
from gageline.layout.on_stick import SeatOnStick, StickLayout, StickReading, lay_out_on, tape_from
from gageline.layout.reading import Datum, Reading, printed_length
from gageline.layout.result import Layout, PartLayout, lay_out
from gageline.layout.seats import Seat
from gageline.layout.setups import FaceSetups, Placing, Template, plan_setups
from gageline.layout.step import Step
from gageline.layout.steps import part_steps
from gageline.layout.turning import Laid, camber_lean, lay_down
from gageline.layout.ways import UNDERRUN, Choice, Edging, EndFit, Placed, Way, place, plane_of, stick_length

__all__ = [
    "ALPHA",
    "UNDERRUN",
    "Accuracy",
    "Bench",
    "Choice",
    "Column",
    "Datum",
    "Decision",
    "Edging",
    "EndFit",
    "EndPlane",
    "FaceSetups",
    "Laid",
    "Layout",
    "LongTape",
    "Mark",
    "MarkKind",
    "PartLayout",
    "Pattern",
    "Placed",
    "Placing",
    "Reading",
    "Seat",
    "SeatOnStick",
    "Spot",
    "Step",
    "StickLayout",
    "StickReading",
    "Template",
    "Way",
    "accuracy",
    "bench_of",
    "camber_lean",
    "decide",
    "fit_end",
    "lay_down",
    "lay_out",
    "lay_out_on",
    "marks_of",
    "part_steps",
    "patterns",
    "place",
    "plan_setups",
    "plane_of",
    "printed_length",
    "stick_length",
    "tape_from",
    "tape_of",
]
