"""The cutting plan: which stick, which piece, which cut."""

from gageline.stock.check import check_plan
from gageline.stock.plan import Effort, plan_cuts
from gageline.stock.records import (
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
from gageline.stock.watch import Progress

__all__ = [
    "CutPlan",
    "Effort",
    "End",
    "Held",
    "Offer",
    "Piece",
    "Placed",
    "Progress",
    "Saw",
    "SectionPlan",
    "Steel",
    "StickPlan",
    "by_weight",
    "check_plan",
    "plan_cuts",
]
