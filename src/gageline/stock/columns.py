"""Column generation: the linear program over cutting patterns, priced by the knapsack."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from gageline.stock.knapsack import Knapsack, Table, as_pattern, earnings, groups
from gageline.stock.problem import Ints, Pattern, Problem
from gageline.stock.program import INFINITE, add_columns, add_rows, new_model
from gageline.stock.watch import Watch

_ROUNDING = 1e-9  # relative to the dearest stick
_EXTRA = 8  # further patterns taken from one table at least, each forced to hold another piece
_SHARE = 4  # for one of so many kinds; where kinds are many a table costs more than the patterns


@dataclass(frozen=True, slots=True)
class Relaxed:
    """Solution of the linear program.

    Args:
        value: its cost.
        short: pieces it could not place.
        uses: how often each pattern of the master is used.
        duals: price of each piece kind.
        finished: whether no pattern is left that would improve it.
    """

    value: float
    short: float
    uses: Table
    duals: Table
    finished: bool


class Master:
    """The patterns found so far and the linear program over them.

    Args:
        problem: the question.
    """

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.patterns: list[Pattern] = []
        self._known: set[Pattern] = set()
        self._kinds = len(problem.lengths)
        self._dear = float(max(s.cost for s in problem.sticks))
        self._model = new_model()
        rows = self._kinds + len(problem.sticks)
        add_rows(self._model, np.zeros(rows), np.full(rows, INFINITE))
        missing = [([i], [1.0]) for i in range(self._kinds)]
        add_columns(self._model, np.zeros(self._kinds), np.full(self._kinds, INFINITE), missing)
        self._earned = [earnings(s)[::-1] for s in problem.sticks]

    def add(self, patterns: list[Pattern]) -> None:
        """Take patterns in, those known already left out."""
        fresh = [p for p in dict.fromkeys(patterns) if p not in self._known]
        if not fresh:
            return
        self._known.update(fresh)
        entries = [
            ([i for i, _ in p.counts] + [self._kinds + p.stick], [float(n) for _, n in p.counts] + [1.0])
            for p in fresh
        ]
        costs = np.array([float(self.problem.cost(p)) for p in fresh])
        add_columns(self._model, costs, np.full(len(fresh), INFINITE), entries)
        self.patterns += fresh

    def solve(
        self, demand: Ints, limits: Ints, watch: Watch, *, shortfall: bool = False, tilt: Table | None = None
    ) -> Relaxed:
        """Least cost of covering the demand within the limits, fractions of patterns allowed.

        Args:
            demand: pieces of each kind.
            limits: the most of each kind of stick.
            watch: when to stop.
            shortfall: count only the pieces that cannot be placed, not the cost.
            tilt: small amounts added to the demand, which lead to other prices of the same bound.

        Returns:
            The solution over all patterns, or over those known when time ran out.
        """
        self._bound(demand, limits, tilt)
        self._price(shortfall=shortfall)
        tables = [
            (members, Knapsack(self.problem, demand, self.problem.sticks[members[0]], capacity))
            for members, capacity in groups(self.problem)
        ]
        finished = False
        while True:
            self._model.run()
            solution = self._model.getSolution()
            rows = np.array(solution.row_dual)
            duals = np.maximum(rows[: self._kinds], 0.0)
            fresh: list[Pattern] = []
            for members, table in tables:
                fresh += self._improving(
                    members, table, duals, rows[self._kinds :], demand, shortfall=shortfall
                )
            before = len(self.patterns)
            self.add(fresh)
            if len(self.patterns) == before:
                finished = True
                break
            if watch.over():
                break
            self._fresh_bounds(before, shortfall=shortfall)
        uses = np.array(solution.col_value)
        short = float(uses[: self._kinds].sum())
        value = float(self._model.getInfo().objective_function_value)
        padded = np.zeros(len(self.patterns))
        padded[: len(uses) - self._kinds] = uses[self._kinds :]
        return Relaxed(value, short, padded, duals, finished)

    def _bound(self, demand: Ints, limits: Ints, tilt: Table | None) -> None:
        """Set demand and limits, and close patterns that hold more than is wanted."""
        rows = self._kinds + len(limits)
        wanted = demand.astype(float) if tilt is None else np.where(demand > 0, demand + tilt, 0.0)
        lower = np.concatenate([wanted, np.full(len(limits), -INFINITE)])
        upper = np.concatenate([np.full(self._kinds, INFINITE), limits.astype(float)])
        self._model.changeRowsBounds(rows, np.arange(rows, dtype=np.int32), lower, upper)
        count = len(self.patterns)
        if count:
            useful = [all(n <= demand[i] for i, n in p.counts) for p in self.patterns]
            index = np.arange(self._kinds, self._kinds + count, dtype=np.int32)
            self._model.changeColsBounds(count, index, np.zeros(count), np.where(useful, INFINITE, 0.0))

    def _price(self, *, shortfall: bool) -> None:
        """Set the costs: of patterns, or of missing pieces alone."""
        count = self._kinds + len(self.patterns)
        missing = np.full(self._kinds, 1.0 if shortfall else 10.0 * self._dear)
        costs = [0.0 if shortfall else float(self.problem.cost(p)) for p in self.patterns]
        self._model.changeColsCost(
            count, np.arange(count, dtype=np.int32), np.concatenate([missing, np.array(costs)])
        )

    def _fresh_bounds(self, before: int, *, shortfall: bool) -> None:
        """Patterns that were just added cost nothing while only the shortfall counts."""
        if shortfall:
            index = np.arange(self._kinds + before, self._kinds + len(self.patterns), dtype=np.int32)
            self._model.changeColsCost(len(index), index, np.zeros(len(index)))

    def _improving(
        self,
        members: list[int],
        table: Knapsack,
        duals: Table,
        limit_duals: Table,
        demand: Ints,
        *,
        shortfall: bool,
    ) -> list[Pattern]:
        """Patterns of a group of sticks that would lower the value: the best of each stick and near ones."""
        best = table.fill(duals)
        edge = _ROUNDING * (1.0 if shortfall else self._dear)
        found: list[tuple[float, Pattern]] = []
        for s in members:
            stick = self.problem.sticks[s]
            if limit_duals[s] < -1e18:
                continue
            earned = best[: stick.length + 1] + (0 if shortfall else self._earned[s])
            cost = (0.0 if shortfall else float(stick.cost)) - limit_duals[s]
            at = int(np.argmax(earned))
            if earned[at] <= cost + edge:
                continue
            found.append((earned[at] - cost, as_pattern(s, table.counts(at))))
        if not found:
            return []
        found.sort(key=lambda item: -item[0])
        s = found[0][1].stick
        cost = (0.0 if shortfall else float(self.problem.sticks[s].cost)) - limit_duals[s]
        found += self._forced(s, table, best, duals, demand, cost + edge)
        return [p for _, p in found]

    def _forced(
        self, s: int, table: Knapsack, best: Table, duals: Table, demand: Ints, cost: float
    ) -> list[tuple[float, Pattern]]:
        """The best patterns that hold one piece of a given kind, for the kinds where that pays most."""
        stick = self.problem.sticks[s]
        room = stick.length - np.array(self.problem.lengths)
        fits = room >= 0
        if stick.fits:
            fits &= np.array(stick.fits)
        value = np.where(fits & (demand > 0), best[np.maximum(room, 0)] + duals, 0.0)
        found = []
        for i in np.argsort(-value, kind="stable")[: max(_EXTRA, self._kinds // _SHARE)]:
            if value[i] <= cost:
                break
            counts = table.counts(int(room[i]))
            counts[int(i)] = counts.get(int(i), 0) + 1
            if counts[int(i)] <= demand[i]:
                found.append((float(value[i]) - cost, as_pattern(s, counts)))
        return found
