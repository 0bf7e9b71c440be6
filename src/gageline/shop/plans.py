"""Cutting plans of the shop: asked of jobs and yard, kept, read again, and chosen to be cut."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from datetime import timedelta
from functools import lru_cache
from typing import Any

from django.db import transaction
from django.utils import timezone
from pydantic import TypeAdapter

from gageline.errors import GagelineError, ValueProblem
from gageline.job import Job as BuiltJob
from gageline.shop.cut_already import Source, plates_done, rack_of_now, sources_among
from gageline.shop.engine import job_of
from gageline.shop.logbook import note
from gageline.shop.models import Cut, Cutting, Job, Person, Plan, Revision, Search
from gageline.shop.shearing import freed
from gageline.shop.sticks import held_tables
from gageline.stock import (
    CutPlan,
    Effort,
    Held,
    PlatePlan,
    PlateQuestion,
    Progress,
    Question,
    Rack,
    SectionPlan,
    SheetPlan,
    ShopPlan,
    Steel,
    StickPlan,
    answer,
    ask,
    blanks_of,
    read_rack,
)
from gageline.units import System, exact_text

__all__ = [
    "broke_off",
    "choose_plan",
    "jobs_of",
    "plan_of",
    "planned_of",
    "search",
    "sources_of",
    "start_plan",
    "stop_plan",
    "trouble_of",
]

Table = dict[str, Any]
_ANSWER = TypeAdapter(tuple[CutPlan, tuple[PlatePlan, ...]])
_SILENT = timedelta(seconds=60)  # without a word from a search it is taken for broken off
_MOST_JOBS = 50


def start_plan(person: Person, jobs: Sequence[Job], seconds: int) -> Plan:
    """Ask for a cutting plan; what stands against any plan is said at once.

    Args:
        person: who asks.
        jobs: what is to be cut.
        seconds: the most that one section may take.

    Raises:
        GagelineError: with everything that is wrong with the question, or while a stick is half cut.
    """
    if not 0 < len(jobs) <= _MOST_JOBS:
        raise ValueProblem(f"{len(jobs)} jobs are chosen: choose 1 to {_MOST_JOBS}")
    half = Cutting.objects.filter(done=False, cuts__isnull=False).distinct()
    if half.exists():
        names = ", ".join(f"{one.steel} stick {one.number}" for one in half[:10])
        raise ValueProblem(f"half cut: {names}: cut it to the end, or put the rest back, and plan then")
    for other in Plan.objects.filter(state=Search.RUNNING):
        if not broke_off(other):
            raise ValueProblem(f"cutting plan {other.pk} is being planned: wait for it, or stop it first")
    built = [(job.pk, job_of(job.revisions.get(number=job.current).text)) for job in jobs]
    for job, (_, one) in zip(jobs, built, strict=True):
        if not one.assemblies:
            raise ValueProblem(f"{job.name} has no pieces yet: leave it out, or add pieces first")
    alone = tuple(one for _, one in built)
    rack = rack_of_now(built, lambda text: _ask(alone, text))
    plates = plates_done(built, _ask(alone, rack))
    known = {
        "jobs": [(job.pk, job.current) for job in jobs], "rack": rack, "cuts": Cut.objects.count(),
        "plates": plates,
    }  # fmt: skip
    asked = json.dumps(known)
    with transaction.atomic():
        plan = Plan.objects.create(asked=asked, seconds=seconds, by=person.name)
        note(person.name, f"asked for cutting plan {plan.pk}: {', '.join(job.name for job in jobs)}")
    return plan


def jobs_of(asked: str) -> tuple[BuiltJob, ...]:
    """The jobs that a plan was asked for, as they were then."""
    return tuple(job for _, job in _jobs(asked))


def _jobs(asked: str) -> list[tuple[int, BuiltJob]]:
    found = []
    for pk, number in json.loads(asked)["jobs"]:
        found.append((int(pk), job_of(Revision.objects.get(job_id=pk, number=number).text)))
    return found


def sources_of(plan: Plan) -> dict[str, Source]:
    """The marks of a plan, with the job and the mark there."""
    return sources_among(_jobs(plan.asked))


@lru_cache(maxsize=16)  # the plans that are cut by
def _question(asked: str) -> Question:
    known = json.loads(asked)
    return _less(_ask(jobs_of(asked), known["rack"]), known.get("plates", {}))


def _less(question: Question, done: dict[str, int]) -> Question:
    """The question without the plates that were cut already."""
    asked = []
    for one in question.plates:
        left = (replace(plate, quantity=plate.quantity - done.get(plate.mark, 0)) for plate in one.plates)
        plates = tuple(plate for plate in left if plate.quantity > 0)
        if plates:
            asked.append(replace(one, plates=plates))
    return replace(question, plates=tuple(asked))


def _ask(jobs: tuple[BuiltJob, ...], text: str) -> Question:
    """The question of jobs and a rack document; wishes for pieces of other jobs are left out."""
    return ask(jobs, _for_these(read_rack(text), {blank.mark for blank in blanks_of(jobs)}))


def _for_these(rack: Rack, marks: set[str]) -> Rack:
    wishes = (replace(w, pieces=tuple(m for m in w.pieces if m in marks)) for w in rack.wishes)
    done = (replace(d, pieces=tuple(m for m in d.pieces if m in marks)) for d in rack.done)
    return replace(rack, wishes=tuple(w for w in wishes if w.pieces), done=tuple(d for d in done if d.pieces))


def search(pk: int, stop: Callable[[], bool], tell: Callable[[str], None]) -> None:
    """Search the plan that was asked for, and keep it, or why there is none.

    Args:
        pk: of the plan.
        stop: asked between steps; True ends the search with the best plan kept.
        tell: given bound and best in words.
    """
    plan = Plan.objects.get(pk=pk)

    def said(steel: Steel, found: Progress) -> None:
        best = "no plan yet" if found.best is None else f"best {found.best / 100:,.2f}"
        tell(f"{steel}: {best}, none below {found.bound / 100:,.2f}, {found.seconds:.0f} s")

    try:
        found = answer(_question(plan.asked), Effort(plan.seconds, stop, said))
    except (GagelineError, ArithmeticError) as refused:
        Plan.objects.filter(pk=pk).update(state=Search.FAILED, trouble=str(refused)[:20_000])
        return
    text = _ANSWER.dump_json((found.cuts, found.plates)).decode()
    Plan.objects.filter(pk=pk).update(
        state=Search.READY, answer=text, cents=found.cents, bound=found.bound, said=""
    )


def stop_plan(person: Person, plan: Plan) -> None:
    """End a search with the best plan kept."""
    with transaction.atomic():
        if Plan.objects.filter(pk=plan.pk, state=Search.RUNNING, stop=False).update(stop=True):
            note(person.name, f"stopped the search of cutting plan {plan.pk}")


def plan_of(plan: Plan) -> ShopPlan:
    """The plan that was found.

    Raises:
        ValueProblem: while there is none.
    """
    if not plan.answer:
        raise ValueProblem(f"cutting plan {plan.pk} has no sticks yet: wait for it, or plan again")
    return _plan(plan.asked, plan.answer)


@lru_cache(maxsize=16)
def _plan(asked: str, found: str) -> ShopPlan:
    return ShopPlan(_question(asked), *_ANSWER.validate_json(found))


def planned_of(cutting: Cutting) -> StickPlan | SheetPlan:
    """The stick or the sheet of a plan that a cutting is of; the plates of a sheet as they come free."""
    plan = plan_of(cutting.plan)
    for section in plan.cuts.sections:
        for stick in section.sticks:
            if str(section.steel) == cutting.steel and stick.number == cutting.number:
                return stick
    for asked, sheet in _sheets(plan):
        if str(asked.steel) == cutting.steel and sheet.number == cutting.number:
            return replace(sheet, pieces=tuple(laid for laid, _ in freed(sheet, plan.question.rack.burner)))
    raise ValueProblem(f"cutting plan {cutting.plan_id} has no stick {cutting.number} of {cutting.steel}")


def _sheets(plan: ShopPlan) -> Iterator[tuple[PlateQuestion, SheetPlan]]:
    for asked, plates in zip(plan.question.plates, plan.plates, strict=True):
        yield from ((asked, sheet) for sheet in plates.sheets)


def broke_off(plan: Plan) -> bool:
    """Whether the search of a plan has not been heard of for so long that it is taken for dead."""
    return plan.state == Search.RUNNING and plan.seen + _SILENT < timezone.now()


def trouble_of(plan: Plan) -> str:
    """Why a plan cannot be chosen to be cut by; empty where it can."""
    if broke_off(plan):
        return "the search broke off: plan again"
    if plan.state != Search.READY:
        return f"it is {Search(plan.state).label}"
    asked = json.loads(plan.asked)
    if Cut.objects.count() != asked["cuts"]:
        return "something was cut since it was planned: plan again"
    current = dict(Job.objects.filter(pk__in=[pk for pk, _ in asked["jobs"]]).values_list("pk", "current"))
    if any(current.get(pk) != number for pk, number in asked["jobs"]):
        return "a job was changed since it was planned: plan again"
    there = {row.mark: held for row, held in held_tables() if row.copy is None}
    marks = [stick.stock for _, stick in _to_cut(plan_of(plan)) if isinstance(stick.stock, Held)]
    missing = [held.mark for held in marks if not _same(there.get(held.mark), held)]
    if missing:
        return f"changed or no longer in the yard: {', '.join(missing[:10])}: plan again"
    return ""


def _same(table: Table | None, held: Held) -> bool:
    """Whether the stick in the yard is still the one that was planned with."""
    if table is None:
        return False
    length = table["length"] in {exact_text(held.length, system) for system in System}
    return length and (table.get("heat") or None) == held.heat


def _to_cut(plan: ShopPlan) -> list[tuple[SectionPlan, StickPlan]]:
    return [(section, stick) for section in plan.cuts.sections for stick in section.sticks if not stick.done]


def choose_plan(person: Person, plan: Plan) -> None:
    """Cut by a plan from now on; the one before is put aside, what was cut by it stays.

    Raises:
        ValueProblem: when yard, jobs or saw went on since it was planned.
    """
    with transaction.atomic():
        plan = Plan.objects.select_for_update().get(pk=plan.pk)
        if trouble := trouble_of(plan):
            raise ValueProblem(f"cutting plan {plan.pk} cannot be cut by: {trouble}")
        Cutting.objects.filter(plan__state=Search.CHOSEN, done=False).delete()
        Plan.objects.filter(state=Search.CHOSEN).update(state=Search.PAST)
        rows = {row.mark: row for row, _ in held_tables()}
        for section, stick in _to_cut(plan_of(plan)):
            row = rows.get(stick.stock.mark) if isinstance(stick.stock, Held) else None
            Cutting.objects.create(
                plan=plan, steel=str(section.steel), number=stick.number, stick=row, heat=stick.heat or ""
            )
        for asked, sheet in _sheets(plan_of(plan)):
            Cutting.objects.create(
                plan=plan, steel=str(asked.steel), number=sheet.number, heat=sheet.sheet.heat or ""
            )
        Plan.objects.filter(pk=plan.pk).update(state=Search.CHOSEN)
        note(person.name, f"cutting plan {plan.pk} is cut by from now on")
