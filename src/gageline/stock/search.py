"""The search for the cheapest packing of one section, with its bound.

The question is split in two. A small integer program says which numbers of sticks could at best do
(`mix`); column generation, the listing of all affordable patterns and dives then pack that mix or refute it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from gageline.stock.affordable import Choice, Listing, affordable, choose
from gageline.stock.bounds import Prices, exact_prices, unlimited_prices
from gageline.stock.columns import Master
from gageline.stock.heuristics import best_fit, dive, fill_rooms
from gageline.stock.mix import Knowledge, Mix, cheapest_mix, least_cost
from gageline.stock.problem import Ints, Packing, Pattern, Problem, packing, without_spares
from gageline.stock.program import Answer
from gageline.stock.watch import Progress, Watch

_FEW = 3000  # patterns tried before a dive
_MANY = 30_000  # patterns tried after it
_POOL_SECONDS = 5.0
_LIST_SECONDS = 2.0  # for all mixes at once
_NEAR = 0.05  # of the cost; farther off, all mixes at once are tried only for drops, whose mixes are many
_TILT = 1e-4  # of a piece
_OPEN = 12  # mixes put aside without proof before the search gives up
_WAYS = 4  # dives a turn, each a little different
_TURNS = 8
_FAILED = 3  # mixes, before a dive looks for a good plan of any mix
_IDLE = 4  # dives without a better plan before the search gives up
_MIX_SHARE = 0.2  # of the time left, for one choice of a mix
_PATIENCE = 5.0  # seconds for an integer program, to the power of the turn


@dataclass(frozen=True, slots=True)
class Found:
    """What a search came to.

    Args:
        packing: the best plan, or None where there is none.
        bound: no plan costs less.
        patterns: every pattern the search met, for choosing among plans of equal cost.
        proven: whether the packing is the best, or, where there is none, that there is none.
    """

    packing: Packing | None
    bound: int
    patterns: tuple[Pattern, ...]
    proven: bool


class _Search:
    """State of one search: best plan so far, bound, and what is known about mixes."""

    def __init__(self, problem: Problem, watch: Watch) -> None:
        self.problem = problem
        self.watch = watch
        self.master = Master(problem)
        self.demand = np.array(problem.demand, dtype=np.int64)
        self.step = problem.step()
        self.limits = problem.limits()
        self.best: Packing | None = None
        self.bound = 0
        self.known = Knowledge()
        self.open = 0  # mixes put aside without proof

    def offer(self, patterns: list[Pattern] | None) -> bool:
        """Keep a plan if it is the best so far."""
        if patterns is None:
            return False
        plan = packing(self.problem, patterns)
        self.master.add([p for p, _ in plan.patterns])
        if self.best is not None and plan.cost >= self.best.cost:
            return False
        if plan.cost < self.bound:
            raise ArithmeticError(f"plan of cost {plan.cost} below the bound {self.bound}")
        self.best = plan
        return True

    def reach(self, patterns: list[Pattern] | None, target: int) -> bool:
        """Keep a plan if it is the best so far; whether a plan of the target cost is there."""
        self.offer(patterns)
        return self.best is not None and self.best.cost <= target

    def raise_bound(self, bound: int) -> None:
        """Raise the bound to the next cost that a plan can have."""
        self.bound = max(self.bound, -(-bound // self.step) * self.step)

    def tell(self, stage: str) -> None:
        cost = None if self.best is None else self.best.cost
        self.watch.tell(Progress(stage, cost, self.bound, self.watch.seconds()))

    def target(self) -> int:
        """The most that a better plan may cost."""
        if self.best is not None:
            return self.best.cost - self.step
        return sum(int(n) * s.cost for n, s in zip(self.limits, self.problem.sticks, strict=True))

    def done(self) -> bool:
        return self.best is not None and self.best.cost <= self.bound

    def list_and_choose(self, limits: Ints, prices: Prices, target: int, most: int, seconds: float) -> Answer:
        """Decide by listing all affordable patterns."""
        if prices.scaled_bound(limits) > target * prices.scale:
            return Answer.NONE
        kinds = self._longest_first()
        listing = affordable(self.problem, self.demand, limits, prices, target, most, kinds)
        if listing is None:
            return Answer.UNKNOWN
        choice = self._choose(limits, prices, target, listing, seconds)
        if choice.patterns:
            self.offer(choice.patterns)
        return choice.answer

    def core(self, limits: Ints, target: int, seconds: float) -> Answer:
        """Decide over the kinds that have a price, then place the rest in the rooms left.

        Kinds priced at nothing are fillers: where the others cannot be packed, all cannot.
        """
        lengths = np.array(self.problem.lengths) / max(self.problem.lengths)
        for tilt in (_TILT * lengths, np.full(len(lengths), _TILT), np.full(len(lengths), -_TILT)):
            relaxed = self.master.solve(self.demand, limits, self.watch, tilt=tilt)
            prices = exact_prices(self.problem, self.demand, relaxed.duals)
            if prices.scaled_bound(limits) > target * prices.scale:
                return Answer.NONE
            kinds = tuple(i for i in self._longest_first() if prices.pieces[i] > 0)
            listing = affordable(self.problem, self.demand, limits, prices, target, _FEW, kinds)
            if listing is None:
                continue
            choice = self._choose(limits, prices, target, listing, seconds)
            if choice.answer is Answer.NONE:
                return Answer.NONE
            if choice.patterns:
                settled = without_spares(self.problem, choice.patterns)
                if self.reach(fill_rooms(self.problem, settled, self.watch), target):
                    return Answer.FOUND
        return Answer.UNKNOWN

    def _longest_first(self) -> tuple[int, ...]:
        return tuple(int(i) for i in np.argsort(-np.array(self.problem.lengths), kind="stable"))

    def _choose(self, limits: Ints, prices: Prices, target: int, listing: Listing, seconds: float) -> Choice:
        """Run the integer program over a listing; the first plan will do where none can cost less."""
        first = target - prices.bound(limits) < self.step
        soon = self.watch.within(seconds)
        return choose(
            self.problem, self.demand, limits, listing.patterns, listing.kinds, target, soon, first=first
        )

    def pool(self, limits: Ints, target: int, seconds: float) -> bool:
        """Cover the demand with the patterns met so far, at no more than the target."""
        kinds = tuple(range(len(self.demand)))
        soon = self.watch.within(seconds)
        choice = choose(
            self.problem, self.demand, limits, self.master.patterns, kinds, target, soon, first=False
        )
        return self.reach(choice.patterns or None, target)

    def pack(self, mix: Mix, target: int) -> Answer:
        """Find a plan of at most the target cost inside a mix, or refute it."""
        relaxed = self.master.solve(self.demand, mix.sticks, self.watch)
        if relaxed.short > 1e-6:
            short = self.master.solve(self.demand, mix.sticks, self.watch, shortfall=True)
            prices = exact_prices(self.problem, self.demand, short.duals, counts_cost=False)
            if prices.scaled_bound(mix.sticks) > 0:
                self.known = self.known.learn(prices)
                return Answer.NONE
        prices = exact_prices(self.problem, self.demand, relaxed.duals)
        self.known = self.known.learn(prices)
        answer = self.list_and_choose(mix.sticks, prices, target, _FEW, _PATIENCE)
        if answer is not Answer.UNKNOWN:
            return answer
        if self.reach(dive(self.problem, self.master, mix.sticks, target, self.watch), target):
            if self.problem.has_drops:
                self.pool(mix.sticks, self.target(), _POOL_SECONDS)
            return Answer.FOUND
        return self.hard(mix.sticks, target, prices)

    def hard(self, limits: Ints, target: int, prices: Prices) -> Answer:
        """Decide a mix that one dive could not pack: other dives and programs in turn, ever more patient."""
        if self.dives(limits, target, range(_WAYS)) or self.pool(limits, target, _POOL_SECONDS):
            return Answer.FOUND
        for turn in range(1, (1 if self.problem.has_drops else _TURNS) + 1):
            answer = Answer.UNKNOWN
            if not self.problem.has_drops:
                answer = self.core(limits, target, _PATIENCE**turn)
            if answer is Answer.UNKNOWN:
                answer = self.list_and_choose(limits, prices, target, _MANY, _PATIENCE**turn)
            if answer is not Answer.UNKNOWN:
                return answer
            if self.dives(limits, target, range(turn * _WAYS, (turn + 1) * _WAYS)):
                return Answer.FOUND
        return Answer.UNKNOWN

    def dives(self, limits: Ints, target: int, ways: range) -> bool:
        """Go down other ways, each with slightly different demands; the same ones in every run."""
        for way in ways:
            if self.watch.over():
                return False
            tilt = np.random.default_rng(way).uniform(-_TILT, _TILT, len(self.demand))
            if self.reach(dive(self.problem, self.master, limits, target, self.watch, tilt), target):
                return True
        return False

    def begin(self) -> None:
        """First plans and first bound."""
        self.offer(best_fit(self.problem))
        lengths = np.array(self.problem.lengths, dtype=float)
        rate = min(s.cost / s.length for s in self.problem.sticks)
        self.known = self.known.learn(exact_prices(self.problem, self.demand, rate * lengths))
        self.raise_bound(self.known.prices[-1].bound(self.limits))
        self.tell("best fit")
        if self.done():
            return
        relaxed = self.master.solve(self.demand, self.limits, self.watch)
        if relaxed.short > 1e-6:
            short = self.master.solve(self.demand, self.limits, self.watch, shortfall=True)
            self.known = self.known.learn(
                exact_prices(self.problem, self.demand, short.duals, counts_cost=False)
            )
        prices = unlimited_prices(self.problem, self.demand, relaxed.duals)
        self.known = self.known.learn(prices)
        self.raise_bound(prices.bound(self.limits))
        self.tell("linear program")
        if self.done():
            return
        if len(self.problem.sticks) == 1 and not self.problem.has_drops:
            return
        soon = self.watch.within(_MIX_SHARE * self.watch.left())
        if not self.problem.has_drops:
            self.raise_bound(least_cost(self.problem, prices, self.target()))
        mix = cheapest_mix(self.problem, self.known, self.target(), soon, self.bound)
        if isinstance(mix, Mix):
            self.raise_bound(mix.cost)
            near = self.target() - prices.bound(self.limits) <= _NEAR * self.target()
            answer = Answer.UNKNOWN
            if near or self.problem.has_drops:
                answer = self.list_and_choose(self.limits, prices, self.target(), _FEW, _LIST_SECONDS)
        else:
            answer = mix
        if self.best is not None and answer in {Answer.NONE, Answer.BEST}:
            self.raise_bound(self.best.cost)

    def mixes(self) -> bool:
        """Go through the mixes in order of cost; whether every mix below the best plan was refuted."""
        failed = 0
        while not self.done() and not self.watch.over():
            soon = self.watch.within(_MIX_SHARE * self.watch.left())
            mix = cheapest_mix(self.problem, self.known, self.target(), soon, self.bound)
            if mix is Answer.NONE:
                return not self.open
            if isinstance(mix, Answer):
                return False
            if not self.open:
                self.raise_bound(mix.cost)
            self.tell("mix")
            if self.done():
                break
            answer = self.pack(mix, self.target() if self.problem.has_drops else mix.cost)
            self.tell("packing")
            failed += not self.done()
            if failed == _FAILED:
                self.offer(dive(self.problem, self.master, self.limits, None, self.watch))
            if answer is Answer.NONE and self._excluded(mix):
                continue
            self.known = self.known.exclude(mix.sticks)
            if answer in {Answer.NONE, Answer.BEST} or self.done():
                continue
            self.open += 1
            if self.open >= _OPEN:
                break
        return self.done()

    def improve(self) -> None:
        """Better the plan where mixes are not decided: dives over all sticks, programs over what they met."""
        idle = turn = 0
        while idle < _IDLE and not self.done() and not self.watch.over():
            before = self.best
            turn += 1
            tilt = np.random.default_rng(turn).uniform(-_TILT, _TILT, len(self.demand))
            self.offer(dive(self.problem, self.master, self.limits, self.target(), self.watch, tilt))
            if self.best is before:
                self.pool(self.limits, self.target(), _POOL_SECONDS)
            idle = idle + 1 if self.best is before else 0
            self.tell("dive")

    def _excluded(self, mix: Mix) -> bool:
        """Whether the newest row speaks against a mix at its cost."""
        prices = self.known.prices[-1]
        target = mix.cost * prices.scale if prices.counts_cost else 0
        return prices.scaled_bound(mix.sticks) > target


def search(problem: Problem, watch: Watch) -> Found:
    """Find the cheapest packing, or the best that time allows, with its bound.

    Where drops earn something back, a plan that is cheapest before they do is the first one to better.

    Args:
        problem: the question; every piece fits some stick.
        watch: when to stop, and whom to tell.

    Returns:
        What was found.
    """
    state = _Search(problem, watch)
    if problem.has_drops:
        plain = replace(problem, sticks=tuple(replace(s, drop=None) for s in problem.sticks))
        start = search(plain, watch.within(watch.left() / 3))
        state.master.add(list(start.patterns))
        if start.packing is not None:
            state.offer([p for p, n in start.packing.patterns for _ in range(n)])
    state.begin()
    exhausted = state.done() or state.mixes()
    if not exhausted and len(problem.sticks) > 1:
        state.improve()
    if exhausted and state.best is not None:
        state.raise_bound(state.best.cost)
    state.tell("end")
    return Found(state.best, state.bound, tuple(state.master.patterns), exhausted or state.done())
