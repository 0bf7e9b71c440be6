"""Linear and integer programs handed to HiGHS, one thread, within the watch."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Any

import highspy
import numpy as np

from gageline.stock.knapsack import Table
from gageline.stock.problem import Ints
from gageline.stock.watch import Watch

INFINITE = float(highspy.kHighsInf)


class Answer(Enum):
    """How an integer program ended."""

    BEST = "best"
    FOUND = "found"
    NONE = "none"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Outcome:
    """End of an integer program: the answer, and the values where there are any."""

    answer: Answer
    values: Ints | None


class _Silent(highspy.Highs):
    """The solver without its banner, which is else printed when callbacks are enabled at the start."""

    def enableCallbacks(self) -> None:
        self.setOptionValue("output_flag", False)  # noqa: FBT003  # the solver's own signature
        super().enableCallbacks()  # type: ignore[no-untyped-call]  # the library has no types


def new_model() -> Any:
    """An empty, silent, single-threaded model."""
    model = _Silent()  # type: ignore[no-untyped-call]  # the library has no types
    model.setOptionValue("threads", 1)
    model.setOptionValue("dual_feasibility_tolerance", 1e-9)
    return model


def add_rows(model: Any, lower: Table, upper: Table) -> None:
    """Add rows without entries."""
    none = np.zeros(0, dtype=np.int32)
    model.addRows(len(lower), lower, upper, 0, np.zeros(len(lower), dtype=np.int32), none, np.zeros(0))


def add_columns(model: Any, costs: Table, upper: Table, entries: list[tuple[list[int], list[float]]]) -> None:
    """Add columns from 0 to `upper`, each with its (rows, values)."""
    starts = np.cumsum([0] + [len(rows) for rows, _ in entries[:-1]]).astype(np.int32)
    index = np.array([r for rows, _ in entries for r in rows], dtype=np.int32)
    value = np.array([v for _, values in entries for v in values], dtype=np.float64)
    model.addCols(len(entries), costs, np.zeros(len(entries)), upper, len(index), starts, index, value)


def whole(model: Any, watch: Watch, *, first: bool) -> Outcome:
    """Solve with every column a whole number.

    Args:
        model: the program.
        watch: when to stop.
        first: whether the first solution will do.

    Returns:
        The outcome; a solution found before time ran out is FOUND.
    """
    count = model.getNumCol()
    kinds = np.full(count, int(highspy.HighsVarType.kInteger), dtype=np.uint8)
    model.changeColsIntegrality(count, np.arange(count, dtype=np.int32), kinds)
    model.setOptionValue("time_limit", watch.left())
    model.setOptionValue("mip_rel_gap", 0.0)
    if first:
        model.setOptionValue("mip_max_improving_sols", 1)
    model.cbMipInterrupt += lambda event: event.interrupt(watch.over())
    model.run()
    status = model.getModelStatus()
    if status == highspy.HighsModelStatus.kInfeasible:
        return Outcome(Answer.NONE, None)
    info = model.getInfo()
    if info.primal_solution_status != 2:
        return Outcome(Answer.UNKNOWN, None)
    values = np.rint(np.array(model.getSolution().col_value)).astype(np.int64)
    return Outcome(Answer.BEST if status == highspy.HighsModelStatus.kOptimal else Answer.FOUND, values)
