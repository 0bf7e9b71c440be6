"""Is it strong enough: clauses of the standards, eccentric groups, and the checks they give."""

from gageline.strength.check import Check, Clause, Factors, Method, Step, Strength, figure, step
from gageline.strength.clause import clause_of, clauses_in
from gageline.strength.groups import (
    BoltGroups,
    eccentric_bolts,
    elastic_bolts,
    share_of_full_strength,
    wrench,
)
from gageline.strength.weld_groups import WeldGroups, eccentric_welds, elastic_welds, manual_coefficient

__all__ = [
    "BoltGroups",
    "Check",
    "Clause",
    "Factors",
    "Method",
    "Step",
    "Strength",
    "WeldGroups",
    "clause_of",
    "clauses_in",
    "eccentric_bolts",
    "eccentric_welds",
    "elastic_bolts",
    "elastic_welds",
    "figure",
    "manual_coefficient",
    "share_of_full_strength",
    "step",
    "wrench",
]
