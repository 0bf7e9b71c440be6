"""The cutting plan: which stick, which piece, which cut."""

from gageline.stock.blanks import Blank, blanks_of
from gageline.stock.check import check_plan
from gageline.stock.check_plates import check_plates
from gageline.stock.document import HeldEntry, RackDocument
from gageline.stock.effort import Effort
from gageline.stock.plan import plan_cuts
from gageline.stock.plates import Burner, Laid, Plate, PlatePlan, Sheet, SheetPlan, plan_plates
from gageline.stock.question import (
    PlateQuestion,
    Question,
    ShopPlan,
    Trace,
    answer,
    ask,
    check_answer,
    traces,
)
from gageline.stock.rack import Done, Rack, Wish, open_rack, read_rack
from gageline.stock.records import (
    SQUARE_END,
    CutPlan,
    End,
    Held,
    Offer,
    Piece,
    Placed,
    Saw,
    SectionPlan,
    Steel,
    StickPlan,
    by_weight,
)
from gageline.stock.schema import rack_schema_text
from gageline.stock.shearing import ShearCut, shear_cuts
from gageline.stock.watch import Progress
from gageline.stock.weights import Weights, weigh_plan, weigh_plates, weigh_section

__all__ = [
    "SQUARE_END",
    "Blank",
    "Burner",
    "CutPlan",
    "Done",
    "Effort",
    "End",
    "Held",
    "HeldEntry",
    "Laid",
    "Offer",
    "Piece",
    "Placed",
    "Plate",
    "PlatePlan",
    "PlateQuestion",
    "Progress",
    "Question",
    "Rack",
    "RackDocument",
    "Saw",
    "SectionPlan",
    "ShearCut",
    "Sheet",
    "SheetPlan",
    "ShopPlan",
    "Steel",
    "StickPlan",
    "Trace",
    "Weights",
    "Wish",
    "answer",
    "ask",
    "blanks_of",
    "by_weight",
    "check_answer",
    "check_plan",
    "check_plates",
    "open_rack",
    "plan_cuts",
    "plan_plates",
    "rack_schema_text",
    "read_rack",
    "shear_cuts",
    "traces",
    "weigh_plan",
    "weigh_plates",
    "weigh_section",
]
