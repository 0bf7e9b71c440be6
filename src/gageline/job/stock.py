"""Stock by its designation, in the tables of the job's own units first."""

from __future__ import annotations

from functools import lru_cache

from gageline.errors import ValueProblem
from gageline.steel import Measure, Stock, find
from gageline.units import System, Unit

__all__ = ["stock_named"]


@lru_cache(maxsize=4096)  # a job names the same few sections over and over
def stock_named(text: str, system: System) -> Stock:
    """The section or plate of a designation; a bare size of a plate is in the job's units.

    Raises:
        ValueProblem: when no table has it, with the nearest that they have.
    """
    metric = system is System.MM
    unit, own = (Unit.MM, Measure.EU) if metric else (Unit.INCH, Measure.US)
    try:
        return find(text, own, unit)
    except ValueProblem:
        return find(text, None, unit)
