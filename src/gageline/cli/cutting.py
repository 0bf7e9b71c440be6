"""The cutting plan of one job or more."""

from __future__ import annotations

import signal
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Annotated

import typer
from rich.progress import Progress, TextColumn
from rich.table import Table

from gageline.cli.opening import buildable, opened, write_sheet
from gageline.cli.screen import AsJson, Out, aside, end_without, say, written
from gageline.exchange import json_text
from gageline.sheets import cutting_sheet
from gageline.stock import Effort, ShopPlan, Steel, answer, ask, open_rack, shear_cuts, traces, weigh_plan
from gageline.stock import Progress as Search
from gageline.units import System, counted


def cut(
    job_files: Annotated[list[Path], typer.Argument(help="one job document or more", metavar="JOB...")],
    rack: Annotated[Path, typer.Option("--rack", "-r", help="the rack document: saw, sticks, prices")],
    out: Out = None,
    as_json: AsJson = False,
    seconds: Annotated[
        float, typer.Option("--seconds", min=0, help="the most that one section may take")
    ] = 60.0,
) -> None:
    """The cutting plan: what to order, which piece from which stick, as sheets to tick off.

    The cost is proven least, or said with the bound below it. Ctrl-C ends the search with the best plan.
    Exit code 1 when a piece is left out for its errors.
    """
    results = tuple(buildable(opened(job_file)) for job_file in job_files)
    jobs, wrong = tuple(result.job for result in results), [mark for one in results for mark in one.wrong]
    question = ask(jobs, open_rack(rack))
    with _search(seconds) as effort:
        plan = answer(question, effort)
    if as_json:
        print(json_text(_plan_facts(plan), question.rack.system))
    else:
        _show_plan(plan, jobs[0].system)
    if out or not as_json:
        write_sheet(cutting_sheet(jobs, plan), out, job_files[0], "cutting")
    end_without(tuple(wrong))


@contextmanager
def _search(seconds: float) -> Iterator[Effort]:
    """A search that shows bound and best on a screen, and that Ctrl-C ends with the best plan kept."""
    asked: list[int] = []

    def stop(number: int, _frame: object) -> None:
        asked.append(number)
        signal.signal(signal.SIGINT, before)  # a second Ctrl-C ends the program

    before = signal.signal(signal.SIGINT, stop)
    try:
        column = TextColumn("{task.description}", markup=False)
        with Progress(column, console=aside, transient=True, disable=not aside.is_terminal) as shown:
            task = shown.add_task("planning cuts", total=None)

            def tell(steel: Steel, search: Search) -> None:
                best = "no plan yet" if search.best is None else f"best {search.best / 100:,.2f}"
                bound = f"none below {search.bound / 100:,.2f}"
                shown.update(task, description=f"{steel}: {best}, {bound}, {search.seconds:.0f} s")

            yield Effort(seconds, lambda: bool(asked), tell)
    finally:
        signal.signal(signal.SIGINT, before)
    if asked:
        aside.print("stopped: this is the best plan so far")


def _plan_facts(plan: ShopPlan) -> dict[str, object]:
    """A cutting plan for other programs: every stick, the order, and piece to stick to heat."""
    burner = plan.question.rack.burner
    return {
        "cents": plan.cents,
        "bound": plan.bound,
        "proven": plan.cents == plan.bound,
        "weights": weigh_plan(plan),
        "order": [{"offer": offer, "sticks": count} for offer, count in plan.cuts.order()],
        "order_sheets": [
            {"sheet": sheet, "sheets": count} for plates in plan.plates for sheet, count in plates.order()
        ],
        "sections": plan.cuts.sections,
        "plates": plan.plates,
        "shear": [
            {"steel": sheet.sheet.steel, "sheet": sheet.number, "cuts": shear_cuts(sheet, burner)}
            for plates in plan.plates
            for sheet in plates.sheets
            if burner.shear
        ],
        "traces": traces(plan),
    }


def _show_plan(plan: ShopPlan, system: System) -> None:
    table = Table("steel", "sticks", "set-ups", "yield", "cost", "none below")
    for section in plan.cuts.sections:
        counts = str(len(section.sticks)), str(section.setups), f"{100 * section.yield_:.1f} %"
        table.add_row(str(section.steel), *counts, _amount(section.cents), _amount(section.bound))
    for asked, plates in zip(plan.question.plates, plan.plates, strict=True):
        counts = counted(len(plates.sheets), "sheet"), "", f"{100 * plates.yield_:.1f} %"
        table.add_row(str(asked.steel), *counts, _amount(plates.cents), _amount(plates.bound))
    table.add_section()
    table.add_row("total", "", "", "", _amount(plan.cents), _amount(plan.bound))
    say.print(table)
    for offer, count in plan.cuts.order():
        say.print(
            f"order {counted(count, 'stick')} {offer.steel} {written(offer.length, system)}", markup=False
        )
    for plates in plan.plates:
        for sheet, count in plates.order():
            size = f"{written(sheet.width, system)} x {written(sheet.length, system)}"
            say.print(f"order {counted(count, 'sheet')} {sheet.steel} {size}", markup=False)
    gap = plan.cents - plan.bound
    below = f"{_amount(gap)} below this one" if gap else "which is what this one costs"
    say.print(f"no plan can cost less than {_amount(plan.bound)}, {below}")


def _amount(cents: int) -> str:
    return f"{cents / 100:,.2f}"
