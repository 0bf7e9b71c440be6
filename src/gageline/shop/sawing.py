"""What is done at the saw: a stick taken, its pieces cut in order, the rest put back into the yard."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from django.db import transaction
from django.utils import timezone

from gageline.errors import GagelineError, ValueProblem
from gageline.sheets import SawCard, Scribe, drop_marks, saw_card
from gageline.shop.cut_already import Source, blank_key
from gageline.shop.logbook import note
from gageline.shop.models import Copy, Cut, Cutting, Job, Person, Search, Stick, Where
from gageline.shop.plans import jobs_of, plan_of, planned_of, sources_of
from gageline.shop.racks import yard_system
from gageline.shop.shearing import CutLine, cut_line, freed
from gageline.shop.sheeting import keep_rest, lay_sheet_back, sheet_card, take_rest_up, take_sheet
from gageline.shop.sticks import add_revision, free_mark, save_stick
from gageline.shop.ticking import Answer, Stroke, may_take_back, once
from gageline.stock import Held, SheetPlan, StickPlan
from gageline.units import ZERO, Length, exact_text, round_down

__all__ = ["DROP", "TAKE", "SawLine", "card_name", "card_of_cutting", "heats_of", "saw_lines", "strike_saw"]

TAKE, DROP = "saw-take", "saw-rest"
_LONGEST = 80  # characters of a heat number
_PICTURE = 125.0  # mm of paper: on a tablet its lengths are then read at arm's length


@dataclass(frozen=True, slots=True)
class SawLine:
    """A task at the saw with who ticked it; `cut` is None while it is to be done.

    `sheared` has the cuts of a shear that are made for it.
    """

    task: str
    number: int
    mark: str
    length: str
    tape: str
    ends: str
    cut: Cut | None
    sheared: tuple[CutLine, ...] = ()


def card_name(cutting: Cutting) -> str:
    """The card of a stick at the saw, as ticks name it."""
    return f"saw-{cutting.plan_id}"


def card_of_cutting(cutting: Cutting) -> SawCard:
    """The stick, or the sheet, with its picture and its cuts."""
    plan, planned = plan_of(cutting.plan), planned_of(cutting)
    job = jobs_of(cutting.plan.asked)[0]
    if isinstance(planned, SheetPlan):
        return sheet_card(job, planned, plan.question.rack.burner, _PICTURE)
    of_mark = {piece.mark: piece for piece in plan.question.pieces}
    return saw_card(job, planned, of_mark, plan.question.rack.saw.kerf, _PICTURE)


def saw_lines(cutting: Cutting, card: SawCard) -> tuple[SawLine, ...]:
    """The cuts of a stick, or the plates of a sheet, in order, each with its tick."""
    ticks = {cut.task: cut for cut in cutting.cuts.all()}
    sheared = _sheared(cutting)
    return tuple(
        SawLine(
            f"saw-{one.number}",
            one.number,
            one.mark,
            one.length,
            one.tape,
            one.ends,
            ticks.get(f"saw-{one.number}"),
            sheared.get(one.number, ()),
        )
        for one in card.cuts
    )


def _sheared(cutting: Cutting) -> dict[int, tuple[CutLine, ...]]:
    """The cuts of a shear by the number of the plate that they are made for; none of a stick."""
    plan, planned = plan_of(cutting.plan), planned_of(cutting)
    if not isinstance(planned, SheetPlan):
        return {}
    scribe = Scribe.of(jobs_of(cutting.plan.asked)[0])
    made = enumerate(freed(planned, plan.question.rack.burner), 1)
    return {number: tuple(cut_line(cut, scribe) for cut in cuts) for number, (_, cuts) in made}


def strike_saw(person: Person, stroke: Stroke) -> Answer:
    """Tick a task at the saw, or take the tick back; sent again it is answered the same and does nothing."""
    with transaction.atomic():
        cutting = (
            Cutting.objects.select_for_update(of=("self",))
            .select_related("plan", "stick")
            .filter(pk=stroke.copy)
            .first()
        )
        return once(stroke.key, lambda: _strike(person, stroke, cutting))


def _strike(person: Person, stroke: Stroke, cutting: Cutting | None) -> Answer:
    if cutting is None or cutting.plan.state != Search.CHOSEN or stroke.card != card_name(cutting):
        return Answer("conflict", "this cutting plan was put aside: open the saw again")
    stick = planned_of(cutting)
    ticks = {cut.task: cut for cut in cutting.cuts.all()}
    order = [TAKE, *(f"saw-{n}" for n in range(1, len(stick.pieces) + 1))]
    if stroke.task not in {*order, DROP}:
        return Answer("conflict", "this stick has no such cut: open its card again")
    known = ticks.get(stroke.task)
    if known is not None and stroke.done:
        same = known.by == person.name
        return Answer("done", "ticked already" if same else f"ticked already by {known.by}")
    if known is None and not stroke.done:
        return Answer("done", "")
    try:
        with transaction.atomic():  # what is refused half way leaves nothing behind
            if known is not None:
                return _untick(person, cutting, known, ticks, order)
            return _tick(person, stroke, cutting, stick, ticks, order)
    except GagelineError as refused:
        return Answer("conflict", str(refused).replace("\n", "; ")[:280])


def _tick(
    person: Person,
    stroke: Stroke,
    cutting: Cutting,
    stick: StickPlan | SheetPlan,
    ticks: dict[str, Cut],
    order: list[str],
) -> Answer:
    if cutting.done:
        raise ValueProblem("the rest of this stick was put back already: nothing more is cut from it")
    first = next((task for task in order if task not in ticks), None)
    if stroke.task == DROP and not set(ticks) - {TAKE}:
        raise ValueProblem("nothing was cut from it yet: take the tick of taking it back instead")
    any_order = isinstance(stick, SheetPlan) and TAKE in ticks
    if stroke.task not in {DROP, first} and not any_order:
        raise ValueProblem(f"{_words(str(first), stick)} comes first")
    now = timezone.now()
    made: dict[str, Any] = {"by": person.name, "at": min(stroke.at, now) if stroke.at else now}
    do: dict[str, Callable[[], dict[str, Any]]] = {
        TAKE: lambda: _take(person, stroke, cutting, stick),
        DROP: lambda: _put_back(person, stroke, cutting, stick, len(ticks) - 1),
    }
    made |= do.get(stroke.task, lambda: _cut(person, stroke, cutting, stick))()
    Cut.objects.create(cutting=cutting, task=stroke.task, **made)
    return Answer("done", "")


def _words(task: str, stick: StickPlan | SheetPlan) -> str:
    if task == TAKE:
        return "taking the sheet" if isinstance(stick, SheetPlan) else "taking the stick"
    number = int(task.removeprefix("saw-")) if task != "None" else 0
    return f"cut {number}, {stick.pieces[number - 1].mark}," if number else "putting back the rest"


def _heat(typed: str) -> str:
    heat = typed.strip()
    if not heat:
        raise ValueProblem("no heat number was given: type it, or a dash where none can be read")
    if len(heat) > _LONGEST or not heat.isprintable():
        raise ValueProblem(f"a heat number has at most {_LONGEST} plain signs: type it again")
    return heat


def _take(person: Person, stroke: Stroke, cutting: Cutting, stick: StickPlan | SheetPlan) -> dict[str, Any]:
    """The stick comes to the saw: one of the yard, or one that was bought, by its heat or its mark there."""
    if isinstance(stick, SheetPlan):
        take_sheet(person, cutting, stick, stick.sheet.heat or _heat(stroke.note))
        return {}
    row = cutting.stick
    if row is None:
        typed = _heat(stroke.note)
        row = Stick.objects.filter(
            mark=typed, where=Where.YARD, stock=stick.stock.steel.section, grade=stick.stock.steel.grade,
            ticks=stick.stock.length.ticks, copy=None,
        ).first()  # fmt: skip
        cutting.heat = row.heat if row else typed
        cutting.stick = row
    if row is not None:
        row = Stick.objects.select_for_update(of=("self",)).get(pk=row.pk)
        if row.where != Where.YARD or row.copy_id is not None:
            raise ValueProblem(f"{row.mark} is not free in the yard any more: plan again")
        cutting.heat = row.heat or _heat(stroke.note)
        row.where = Where.SAW
        add_revision(person, row, f"took stick {row.mark} to the saw")
    cutting.save()
    if row is None:
        note(person.name, f"took a bought stick of {cutting.steel}, heat {cutting.heat}, to the saw")
    return {}


def _cut(person: Person, stroke: Stroke, cutting: Cutting, stick: StickPlan | SheetPlan) -> dict[str, Any]:
    """A piece is cut: which, of which job, and the thing itself where it is a piece of its own."""
    placed = stick.pieces[int(stroke.task.removeprefix("saw-")) - 1]
    source: Source = sources_of(cutting.plan)[placed.mark]
    job = Job.objects.get(pk=source.job)
    free = Copy.objects.filter(
        piece__job=job, piece__mark=source.mark, active=True, cuts=None, stick=None
    ).select_related("piece")
    copy = free.order_by("number").first()
    name = copy.name if copy else source.mark
    piece = copy.piece if copy else None
    note(person.name, f"cut {name} from {_of(cutting, stick)}, heat {cutting.heat}", job=job, piece=piece)
    return {"job": job, "mark": source.mark, "blank": blank_key(source.blank), "copy": copy}


def _of(cutting: Cutting, stick: StickPlan | SheetPlan) -> str:
    if isinstance(stick, SheetPlan):
        return f"a sheet of {cutting.steel}"
    return cutting.stick.mark if cutting.stick else f"a bought stick of {cutting.steel}"


def _put_back(
    person: Person, stroke: Stroke, cutting: Cutting, stick: StickPlan | SheetPlan, cuts: int
) -> dict[str, Any]:
    """What is left goes back to the yard, or is scrap; the stick is done."""
    if isinstance(stick, SheetPlan):
        return {"mark": keep_rest(person, cutting, stick, stroke.note)}
    plan = plan_of(cutting.plan)
    saw = plan.question.rack.saw
    whole = cuts == len(stick.pieces)
    rest = stick.drop if whole else card_of_cutting(cutting).cuts[cuts - 1].rest
    if rest > ZERO and rest >= saw.keep:
        credit = (
            stick.credit
            if whole
            else stick.stock.cents * saw.drop_percent * rest.ticks // (100 * stick.stock.length.ticks)
        )
        cutting.drop = _drop(person, cutting, stick, rest, credit)
    else:
        note(person.name, f"the rest of {_of(cutting, stick)}, heat {cutting.heat}, is scrap")
    cutting.done = True
    cutting.save()
    if cutting.stick is not None:
        row = cutting.stick
        row.where = Where.CUT
        add_revision(person, row, f"stick {row.mark} is cut")
    return {}


def _drop(person: Person, cutting: Cutting, stick: StickPlan, rest: Length, credit: int) -> Stick:
    plan = plan_of(cutting.plan)
    tape = jobs_of(cutting.plan.asked)[0].practice.tape
    steel = stick.stock.steel
    table: dict[str, Any] = {
        "mark": free_mark(drop_marks(plan).get((cutting.steel, cutting.number), "D1")),
        "stock": steel.section, "grade": steel.grade, "length": exact_text(round_down(rest, tape)),
        "value": f"{credit / 100:.2f}", "heat": cutting.heat,
    }  # fmt: skip
    if steel.finish:
        table["finish"] = steel.finish
    if stick.stock.certificate:
        table["certificate"] = True
    made = save_stick(person, None, table, 0, yard_system())
    if not isinstance(made, Stick):
        raise ValueProblem("the drop could not be put into the yard: add it there by hand")
    return made


def _untick(person: Person, cutting: Cutting, known: Cut, ticks: dict[str, Cut], order: list[str]) -> Answer:
    if not may_take_back(person, known.by):
        raise ValueProblem(f"ticked by {known.by}, who takes it back or asks the office")
    stick = planned_of(cutting)
    last = DROP if DROP in ticks else next(task for task in reversed(order) if task in ticks)
    any_order = isinstance(stick, SheetPlan) and DROP not in ticks and known.task != TAKE
    if known.task != last and not any_order:
        raise ValueProblem("something was done after it: take that back first")
    if known.task == DROP:
        _take_up_again(person, cutting, stick, known)
    elif known.task == TAKE:
        _lay_back(person, cutting, stick)
    else:
        whose = "" if known.by == person.name else f", ticked by {known.by}"
        note(person.name, f"took back: cut {known.mark} from {_of(cutting, stick)}{whose}", job=known.job)
    known.delete()
    return Answer("done", "")


def _take_up_again(person: Person, cutting: Cutting, stick: StickPlan | SheetPlan, back: Cut) -> None:
    if isinstance(stick, SheetPlan):
        take_rest_up(person, cutting, stick, back)
        return
    drop = cutting.drop
    if drop is not None:
        drop = Stick.objects.select_for_update(of=("self",)).get(pk=drop.pk)
        if drop.where != Where.YARD or drop.current != 1:
            raise ValueProblem(f"{drop.mark}, the rest of it, was changed or used since: it stays")
        drop.where = Where.GONE
        add_revision(person, drop, f"{drop.mark} is back on its stick at the saw")
    cutting.drop, cutting.done = None, False
    cutting.save()
    if cutting.stick is not None:
        cutting.stick.where = Where.SAW
        add_revision(person, cutting.stick, f"stick {cutting.stick.mark} is at the saw again")


def _lay_back(person: Person, cutting: Cutting, stick: StickPlan | SheetPlan) -> None:
    if isinstance(stick, SheetPlan):
        lay_sheet_back(person, cutting, stick)
        return
    planned = stick.stock
    if cutting.stick is not None:
        cutting.stick.where = Where.YARD
        add_revision(person, cutting.stick, f"stick {cutting.stick.mark} is back from the saw")
    if not isinstance(planned, Held):
        cutting.stick = None
    cutting.heat = planned.heat or ""
    cutting.save()


def heats_of(copies: list[Copy]) -> dict[int, str]:
    """The heat number of pieces that are cut, or that were given a stick, by the piece's key."""
    heats = {
        cut.copy_id: cut.cutting.heat for cut in Cut.objects.filter(copy__in=copies).select_related("cutting")
    }
    given = {stick.copy_id: stick.heat for stick in Stick.objects.filter(copy__in=copies)}
    found = {**given, **heats}
    return {pk: heat for pk, heat in found.items() if pk is not None and heat}
