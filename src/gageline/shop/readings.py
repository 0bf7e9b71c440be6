"""What is read on pieces and on their sticks: kept once and in order, judged, and laid out anew."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

from django.db import transaction
from django.utils import timezone

from gageline.errors import GagelineError, ValueProblem
from gageline.job import Inspected, Job
from gageline.job import Stick as Steel
from gageline.layout import Decision, Layout, Step, StickLayout, decide, lay_out_on
from gageline.part import End, extent_y
from gageline.quality import Outcome, Report, Row, check_readings, inspect, records_of
from gageline.shop.engine import full_of, items_for, job_of, layout_of, rules_for
from gageline.shop.jobs import current_text
from gageline.shop.logbook import note
from gageline.shop.models import Copy, Person, Reading, Stage, Stick
from gageline.shop.receiving import read_table, way_of
from gageline.shop.selectors import ReadingLine
from gageline.shop.sticks import HELD, MEASURED, part_of
from gageline.shop.ticking import Answer, Stroke, held_copy, once
from gageline.steel import Profile
from gageline.units import ZERO, Length, System, Unit, exact_text, parse_length

__all__ = [
    "STICK_ITEMS",
    "OnStick",
    "StickItem",
    "half_read",
    "item_code",
    "on_stick",
    "readings_on",
    "report_of",
    "shop_records",
    "stick_items",
    "take",
    "taken",
    "words_of",
]

_MOST_RECORDS = 300  # pieces, the newest: what a shop was years ago tells little
_READ, _STICK = "read-", "stick-"


@dataclass(frozen=True, slots=True)
class StickItem:
    """Something read on the stick before a piece is laid out on it.

    Args:
        name: of the reading; its task is `stick-` and this.
        label: what to read, in the trade's words.
        choices: of what is chosen and not read with a tape.
        way: of a reading, the name of what tells to which side it is; it counts only together with that.
    """

    name: str
    label: str
    choices: tuple[str, ...] = ()
    way: str = ""

    @property
    def task(self) -> str:
        """Its name as a task of a tablet."""
        return f"{_STICK}{self.name}"


STICK_ITEMS = (
    StickItem("length", "Overall length, between the furthest points"),
    StickItem("left-gap", "Left end: a square held across the depth stands open by", way="left-long"),
    StickItem("left-long", "Left end: the square touches at the", ("top", "bottom")),
    StickItem("right-gap", "Right end: a square held across the depth stands open by", way="right-long"),
    StickItem("right-long", "Right end: the square touches at the", ("top", "bottom")),
    StickItem("left-depth", "Left end: depth"),
    StickItem("right-depth", "Right end: depth"),
    StickItem("camber", "Camber: a string along the edge stands off in the middle by", way="camber-way"),
    StickItem("camber-way", "Camber: the middle is", ("up", "down")),
    StickItem("sweep", "Sweep: a string along the side stands off in the middle by", way="sweep-way"),
    StickItem("sweep-way", "Sweep: the middle is to the side", ("near", "far")),
    StickItem("web-off", "Web: off the middle of the flanges by", way="web-toward"),
    StickItem("web-toward", "Web: it is off toward the side", ("near", "far")),
)
_CORNERS = ("top_near", "top_far", "bottom_near", "bottom_far")
_OF_WEBS = ("web-off", "web-toward")


@dataclass(frozen=True, slots=True)
class OnStick:
    """A piece on the stick that it is made of.

    Args:
        layout: its readings for this stick.
        decision: the way it is laid, and why.
    """

    layout: StickLayout
    decision: Decision


def item_code(number: int) -> str:
    """The task of a tablet for a line of the inspection sheet, counted from 1."""
    return f"{_READ}{number}"


def taken(copy: Copy, place: str) -> dict[str, Reading]:
    """The readings of a piece that count: the newest of each name, at Check only those of its present card.

    Args:
        copy: the piece.
        place: `bench` for its stick, `check` for the finished piece.
    """
    found: dict[str, Reading] = {}
    for reading in copy.readings.filter(place=place).order_by("id"):
        if place == "bench" or reading.card == copy.piece.card:
            found[reading.name] = reading
    return {name: reading for name, reading in found.items() if reading.value}


def stick_items(profile: Profile) -> tuple[StickItem, ...]:
    """What can be read on a stick of a shape."""
    return tuple(one for one in STICK_ITEMS if profile is Profile.I_SHAPE or one.name not in _OF_WEBS)


def half_read(copy: Copy) -> tuple[str, ...]:
    """The readings of a stick that do not count yet, since nobody said to which side they are."""
    found = {name: one.value for name, one in taken(copy, "bench").items()}
    return tuple(one.label for one in STICK_ITEMS if one.name in found and not _counts(one, found))


def _counts(item: StickItem, found: Mapping[str, str]) -> bool:
    """Whether a reading counts: it was read and has its side, or needs none since there is nothing."""
    if item.name not in found:
        return False
    return not item.way or item.way in found or _length(found[item.name]) == ZERO


def take(person: Person, stroke: Stroke) -> Answer:
    """Keep a reading that came from a tablet; sent again it is answered the same and does nothing.

    An empty reading takes the one before it back; nothing is ever changed.
    """
    with transaction.atomic():
        copy = held_copy(stroke.copy)
        return once(stroke.key, lambda: _answer(person, stroke, copy))


def _answer(person: Person, stroke: Stroke, copy: Copy | None) -> Answer:
    try:
        with transaction.atomic():  # what is refused is not kept either
            return Answer("done", _take(person, stroke, copy))
    except GagelineError as refused:
        return Answer("conflict", str(refused))


def _take(person: Person, stroke: Stroke, copy: Copy | None) -> str:
    """Keep the reading; returns what it is judged as."""
    if copy is None or not copy.active or not copy.piece.active:
        raise ValueProblem("this piece was taken out of the job: ask the office")
    piece = copy.piece
    name = copy.name
    if copy.stage == Stage.GONE:
        raise ValueProblem(f"{name} was sent off already")
    text = current_text(piece.job)
    if stroke.task.startswith(_STICK):
        item = next((one for one in STICK_ITEMS if one.task == stroke.task), None)
        if item is None:
            raise ValueProblem("there is no such reading of a stick: open the card again")
        value = _value(stroke.note, job_of(text).system, item.choices)
        _keep(person, stroke, copy, "bench", item.name, value, f"the stick of {name}")
        return ""
    if stroke.card != piece.card:
        raise ValueProblem(f"the drawing of {piece.mark} was changed: open the new card and read again")
    if copy.stage in {Stage.BENCH, Stage.FIT}:
        raise ValueProblem(f"{name} is not fitted yet: it is at {Stage(copy.stage).label}")
    items = items_for(text, piece.mark)
    number = stroke.task.removeprefix(_READ)
    if not (number.isascii() and number.isdigit()) or not 1 <= int(number[:6]) <= len(items):
        raise ValueProblem("this sheet has no such line: open it again")
    line = items[int(number) - 1]
    value = _value(stroke.note, job_of(text).system, ())
    _keep(person, stroke, copy, "check", line.name, value, name)
    row = next(row for row in report_of(copy).rows if row.item.name == line.name)
    return words_of(row, job_of(text).system)


def _value(typed: str, system: System, choices: tuple[str, ...]) -> str:
    """A reading as it is kept: exact, with its unit, whatever the job's unit becomes."""
    typed = typed.strip()
    if choices and typed and typed not in choices:
        raise ValueProblem(f'"{typed}" is none of {" or ".join(choices)}: choose one')
    if choices or not typed:
        return typed
    return exact_text(parse_length(typed, Unit.MM if system is System.MM else Unit.INCH), system)


def _keep(person: Person, stroke: Stroke, copy: Copy, place: str, name: str, value: str, on: str) -> None:
    now = timezone.now()
    at = min(stroke.at, now) if stroke.at else now
    Reading.objects.create(
        copy=copy, place=place, card=stroke.card, name=name, value=value, by=person.name, at=at
    )
    what = f"read {name} {value} on {on}" if value else f"took back the reading of {name} on {on}"
    note(person.name, what, job=copy.piece.job, piece=copy.piece)


def words_of(row: Row, system: System) -> str:
    """What a reading is judged as, with its limit, and the remedy where it is out."""
    match row.outcome:
        case Outcome.NOT_READ:
            return ""
        case Outcome.GOOD | Outcome.NOT_JUDGED:
            return str(row.outcome)
    limit = f", allowed {row.judgement.limit.text(system)}" if row.judgement.limit else ""
    return f"{row.outcome}: {row.judgement.remedy}{limit}"


def report_of(copy: Copy) -> Report:
    """A piece as inspected by the readings that count; blank lines where nothing was read."""
    text = current_text(copy.piece.job)
    job = job_of(text)
    layout = layout_of(text, copy.piece.mark)
    found = taken(copy, "check")
    rules = rules_for(layout, full_of(text))
    known = {item.name for item in items_for(text, copy.piece.mark)}
    read = tuple((name, _length(one.value)) for name, one in found.items() if name in known)
    last = max(found.values(), key=lambda one: one.pk, default=None)
    by, date = (last.by, last.at.date().isoformat()) if last else ("", "")
    inspected = Inspected(copy.piece.mark, copy.number, by, date, read)
    return inspect(layout, inspected, rules, job.practice.tolerances)


def _length(value: str) -> Length:
    return parse_length(value, Unit.INCH)


def on_stick(copy: Copy) -> OnStick | None:
    """A piece laid out on the stick that it is made of; None while nothing was measured on it.

    What was read at the Bench goes before what was read in the Yard: it is younger.

    Raises:
        GagelineError: when the readings do not go together, or cannot be of the piece's section.
    """
    text = current_text(copy.piece.job)
    job, layout = job_of(text), layout_of(text, copy.piece.mark)
    table = _yard_table(copy)
    table = _with_bench(table, copy, layout)
    if not table:
        return None
    steel = _steel(table, copy, job)
    check_readings(layout.main.part, steel, job.system)
    decision = decide(layout.assembly, steel, job.practice.tape, job.system)
    stick = Stick.objects.filter(copy=copy).first()
    way = way_of(stick, decision) if stick else decision.chosen.way
    return OnStick(lay_out_on(layout, steel, way), decision)


def readings_on(step: Step | None, on: OnStick | None) -> tuple[ReadingLine, ...]:
    """The readings of a step as they are struck on the stick in hand, each beside that of steel as drawn.

    Args:
        step: of the bench card; None of a weld.
        on: the piece on its stick; None while nothing was measured on it.
    """
    if step is None:
        return ()
    known = {one.nominal: one for one in on.layout.readings if one.for_ == step.for_} if on else {}
    lines = []
    for reading in step.readings:
        one = known.get(reading)
        if one is None or not one.changed:
            lines.append(ReadingLine(reading.text))
            continue
        hook = "" if one.actual.from_ is one.nominal.from_ else str(one.actual.from_)
        lines.append(ReadingLine(one.actual.text, reading.text, one.why, hook))
    return tuple(lines)


def _yard_table(copy: Copy) -> dict[str, Any]:
    """What the yard measured on the stick of a piece, nothing where it measured nothing."""
    stick = Stick.objects.filter(copy=copy).first()
    measured = part_of(stick, MEASURED) if stick else {}
    typed = {key: value for key, value in measured.items() if key != "units"}
    if not stick or not typed:
        return {}
    return {"length": part_of(stick, HELD)["length"], **typed, "units": measured.get("units", "")}


def _with_bench(table: dict[str, Any], copy: Copy, layout: Layout) -> dict[str, Any]:
    """The readings of the Bench put into a stick's table."""
    found = {name: one.value for name, one in taken(copy, "bench").items()}
    if "length" in found:
        table = {key: value for key, value in table.items() if key != "along"} | {"length": found["length"]}
    counted = {one.name: one for one in STICK_ITEMS if _counts(one, found)}
    for name in ("camber", "sweep", "web-off"):
        if item := counted.get(name):
            side = {item.way.replace("-", "_"): found[item.way]} if item.way in found else {}
            table = {**table, name.replace("-", "_"): found[name], **side}
    low, high = extent_y(layout.main.part.stock)
    for end in End:
        read = dict(table.get(str(end), {}))
        if f"{end}-depth" in counted:
            read["depth"] = found[f"{end}-depth"]
        if f"{end}-gap" in counted:
            read = {key: value for key, value in read.items() if key not in _CORNERS}
            blade = exact_text(high - low, System.FT_IN)
            long = found.get(f"{end}-long", "top")  # of an end that is square it does not matter
            read |= {"web_gap": found[f"{end}-gap"], "web_blade": blade, "web_long": long}
        if read:
            table = {**table, str(end): read}
    return table


def _steel(table: dict[str, Any], copy: Copy, job: Job) -> Steel:
    units = table.get("units") or job.system.value
    system = System.MM if units == System.MM.value else System.FT_IN
    return read_table({key: value for key, value in table.items() if key != "units"}, system, copy.piece.mark)


def shop_records() -> dict[Any, tuple[float, ...]]:
    """The errors that the shop's own inspections tell, by act, for the odds of fit-up."""
    copies = (
        Copy.objects.filter(active=True, piece__active=True, readings__place="check")
        .select_related("piece__job")
        .distinct()
        .order_by("-id")[:_MOST_RECORDS]
    )
    return records_of(_reports_of(copies))


def _reports_of(copies: Iterable[Copy]) -> Iterator[Report]:
    """The reports of pieces; a piece whose readings no longer make sense tells nothing of the shop."""
    for copy in copies:
        with suppress(ValueProblem):
            yield report_of(copy)
