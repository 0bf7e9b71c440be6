"""Cutting-stock instances: what is proven in what time, beside a CP-SAT model and best-fit decreasing.

    python benchmarks/cutting.py [FOLDER] [--seconds 60] [--cp-seconds 20] [--only shop]

Every plan is verified by the checker, which shares no code with the planner. The planner uses one thread;
CP-SAT uses --cp-workers. "Worked" is the planner's time of the processor, which a busy machine
stretches less. A ratio marked > is a lower limit: CP-SAT had not proven its plan when time ran out.
"""

from __future__ import annotations

import argparse
import json
import sys
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from time import monotonic, process_time
from typing import Any

from ortools.sat.python import cp_model

from gageline.stock.check import check_counts
from gageline.stock.heuristics import best_fit
from gageline.stock.problem import Packing, Problem, Stick, packing
from gageline.stock.search import search
from gageline.stock.watch import start_watch

HERE = Path(__file__).resolve().parents[1]


@dataclass(frozen=True, slots=True)
class Result:
    """One instance solved."""

    name: str
    of: str
    cost: int | None
    bound: int
    proven: bool
    seconds: float
    worked: float
    best_fit: int | None
    other_cost: int | None
    other_proven: bool
    other_seconds: float
    faults: tuple[str, ...]


def problem_of(instance: dict[str, Any]) -> Problem:
    items = instance["items"]
    sticks = tuple(Stick(length, cost, limit) for length, cost, limit in instance["stocks"])
    return Problem(tuple(n for n, _ in items), tuple(d for _, d in items), sticks)


def faults_of(instance: dict[str, Any], plan: Packing | None, bound: int) -> list[str]:
    if plan is None:
        return ["no plan"]
    used = [(p.stick, dict(p.counts), n) for p, n in plan.patterns]
    faults = check_counts(instance["stocks"], instance["items"], used, plan.cost)
    known = instance["opt"]
    if known is not None and not bound <= known <= plan.cost:
        faults.append(f"known optimum {known} is outside {bound} to {plan.cost}")
    return faults


def cp_sat(problem: Problem, start: Packing, seconds: float, workers: int) -> tuple[int | None, bool, float]:
    """One variable a piece kind and stick; sticks in order of fill; the best-fit plan is given as a start."""
    begun = monotonic()
    model = cp_model.CpModel()
    cost: list[Any] = []
    placed: list[list[Any]] = [[] for _ in problem.lengths]
    for s, stick in enumerate(problem.sticks):
        alike = [p for p, n in start.patterns if p.stick == s for _ in range(n)]
        alike.sort(key=lambda p: -problem.fill(p))
        affordable = problem.pieces if stick.cost == 0 else start.cost // stick.cost
        count = min(problem.pieces, affordable, problem.pieces if stick.limit is None else stick.limit)
        before: Any = None
        for b in range(count):
            counts = dict(alike[b].counts) if b < len(alike) else {}
            on = model.new_bool_var(f"on{b}")
            model.add_hint(on, bool(counts))
            fill: list[Any] = []
            for i, (length, wanted) in enumerate(zip(problem.lengths, problem.demand, strict=True)):
                top = min(wanted, stick.length // length)
                if top:
                    x = model.new_int_var(0, top, f"x{i},{b}")
                    model.add_hint(x, counts.get(i, 0))
                    placed[i].append(x)
                    fill.append(length * x)
            load = sum(fill)
            model.add(load <= stick.length * on)
            cost.append(stick.cost * on)
            if before is not None:
                model.add(before >= load)
            before = load
    for i, wanted in enumerate(problem.demand):
        model.add(sum(placed[i]) == wanted)
    model.minimize(sum(cost))
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = max(0.1, seconds - (monotonic() - begun))
    solver.parameters.num_workers = workers
    # probing these models takes up the whole time limit before the search begins
    solver.parameters.cp_model_probing_level = 0
    status = solver.solve(model)
    proven = status == cp_model.OPTIMAL
    has_plan = status in {cp_model.OPTIMAL, cp_model.FEASIBLE}
    return (int(solver.objective_value) if has_plan else None), proven, monotonic() - begun


def run(path: Path, seconds: float, cp_seconds: float, workers: int) -> Result:
    instance = json.loads(path.read_text(encoding="utf-8"))
    problem = problem_of(instance)
    watch, before = start_watch(seconds), process_time()
    found = search(problem, watch)
    spent, worked = watch.seconds(), process_time() - before
    simple = best_fit(problem)
    simple_plan = None if simple is None else packing(problem, simple)
    other: tuple[int | None, bool, float] = (None, False, 0.0)
    start = simple_plan or found.packing
    if cp_seconds > 0 and start is not None:
        other = cp_sat(problem, start, cp_seconds, workers)
    faults = faults_of(instance, found.packing, found.bound)
    if other[1] and found.proven and found.packing is not None and other[0] != found.packing.cost:
        faults.append(f"CP-SAT proves {other[0]}, the planner {found.packing.cost}")
    return Result(
        instance["name"],
        instance["cls"],
        None if found.packing is None else found.packing.cost,
        found.bound,
        found.proven,
        spent,
        worked,
        None if simple_plan is None else simple_plan.cost,
        *other,
        tuple(faults),
    )


def line(result: Result, *, with_other: bool) -> str:
    other = ""
    if with_other:
        mark = "" if result.other_proven else ">"
        ratio = result.other_seconds / max(result.seconds, 1e-3)
        other = f" | CP-SAT {result.other_cost} {result.other_seconds:7.2f} s, ratio {mark}{ratio:.0f}"
    return (
        f"{result.name:34} {result.cost} (bound {result.bound}) {'proven' if result.proven else 'OPEN':6} "
        f"{result.seconds:6.2f} s (worked {result.worked:.2f}) | best fit {result.best_fit}{other} "
        f"{' '.join(result.faults)}"
    )


def summary(of: str, results: list[Result], *, with_other: bool) -> str:
    proven = sum(r.proven for r in results)
    times = [r.seconds for r in results]
    worked = [r.worked for r in results]
    saved = [
        1 - r.cost / r.best_fit
        for r in results
        if r.best_fit is not None and r.cost is not None and r.best_fit
    ]
    text = (
        f"{of:12} {proven:3}/{len(results):<3} proven  "
        f"median {median(times):6.2f} s  worst {max(times):6.2f} s  "
        f"worked median {median(worked):5.2f} worst {max(worked):5.2f}  "
        f"cheaper than best fit by {100 * sum(saved) / max(1, len(saved)):5.2f} %"
    )
    if with_other:
        ratios = [r.other_seconds / max(r.seconds, 1e-3) for r in results]
        text += (
            f"  | CP-SAT {sum(r.other_proven for r in results)}/{len(results)} proven, "
            f"time ratio median {median(ratios):.0f} least {min(ratios):.1f}"
        )
    return text


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    parser.add_argument(
        "folder", nargs="?", type=Path, default=HERE.parent / "shared" / "benchmarks" / "cutting"
    )
    parser.add_argument("--seconds", type=float, default=60.0, help="limit of the planner an instance")
    parser.add_argument("--cp-seconds", type=float, default=20.0, help="limit of CP-SAT; 0 leaves it out")
    parser.add_argument("--cp-workers", type=int, default=2, help="threads of CP-SAT")
    parser.add_argument("--only", default="", help="instances whose file name holds this")
    given = parser.parse_args()
    with_other = given.cp_seconds > 0
    results = []
    for path in sorted(p for p in given.folder.glob("*.json") if given.only in p.name):
        results.append(run(path, given.seconds, given.cp_seconds, given.cp_workers))
        print(line(results[-1], with_other=with_other), flush=True)
    print()
    for of in sorted({r.of for r in results}):
        print(summary(of, [r for r in results if r.of == of], with_other=with_other))
    wrong = [r.name for r in results if r.faults]
    print(f"{len(results)} instances, checker found fault with {len(wrong)}: {', '.join(wrong) or 'none'}")
    return 1 if wrong or not results else 0


if __name__ == "__main__":
    sys.exit(main())
