"""Is it strong enough: clauses of the standards, eccentric groups, and the checks they give."""

from gageline.strength.check import Check, Clause, Factors, Method, Step, Strength, figure, step
from gageline.strength.clause import clause_of, clauses_in

__all__ = [
    "Check",
    "Clause",
    "Factors",
    "Method",
    "Step",
    "Strength",
    "clause_of",
    "clauses_in",
    "figure",
    "step",
]
