"""The steel that came: a stick's readings judged, the ways a piece can be laid on it, its receiving card."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import tomlkit

from gageline.errors import ValueProblem
from gageline.job import JobProblems, Problem, read_measurements, say, say_finely, stock_named
from gageline.job import Stick as Readings
from gageline.layout import Decision, StickLayout, Way, decide, lay_out_on
from gageline.part import Finding, Part
from gageline.quality import (
    Act,
    Chance,
    Judgement,
    Odds,
    Receipt,
    Verdict,
    check_readings,
    odds_of,
    receive,
    slips_of,
    spread_from,
    usable,
)
from gageline.sheets import ReceivingCard, receiving_cards, to_pdf
from gageline.shop.engine import full_of, job_of, layout_of
from gageline.shop.jobs import current_text
from gageline.shop.models import Stick
from gageline.shop.racks import yard_system
from gageline.shop.sticks import HELD, MEASURED, WAY, part_of, read_held
from gageline.units import Length, System

__all__ = [
    "Judged", "card_pdf", "judge", "judgement_rows", "odds_words", "read_table", "stick_odds", "told_odds",
    "way_of", "way_rows", "wrong_readings",
]  # fmt: skip

Table = dict[str, Any]
_PIECE = "X"  # a stick that is for no piece yet is read under a mark of its own


@dataclass(frozen=True, slots=True)
class Judged:
    """A stick as it came, judged.

    Args:
        system: the units it is shown in.
        receipt: every reading beside its limit.
        measured: whether anything was read at all.
        decision: the ways the piece can be laid on it; None while it is for no piece.
        on: the piece laid out on it the way that was chosen, or that is advised.
        usable: whether the piece can be made of it, and what comes off.
        text: of the piece's job.
    """

    system: System
    receipt: Receipt
    measured: bool
    decision: Decision | None = None
    on: StickLayout | None = None
    usable: Finding | None = None
    text: str = ""

    @property
    def chosen(self) -> str:
        """The way that the piece is laid, in words."""
        return self.on.placed.way.words if self.on else ""


def read_table(table: Table, system: System, mark: str = _PIECE, heat: str = "") -> Readings:
    """The readings of a stick.

    Args:
        table: as it was typed.
        system: the units of the yard.
        mark: of the piece that is to be made of it.
        heat: its heat number.

    Raises:
        JobProblems: with everything that is wrong with them.
    """
    named = {**table, "piece": mark} | ({"heat": heat} if heat else {})
    return read_measurements(tomlkit.dumps({"measured": [named]}), system).sticks[0]


def judge(stick: Stick) -> Judged:
    """Judge a stick as it was measured, by itself or for the piece that is to be made of it.

    Raises:
        ValueProblem: when the piece it is for was taken out of its job, or with every reading that cannot
            be of its section.
    """
    kept, measured = part_of(stick, HELD), part_of(stick, MEASURED)
    system = _system_of(measured)
    typed = {"ordered": kept["length"], **_typed(measured)}
    copy = stick.copy
    if copy is None:
        readings = read_table(typed, system, heat=stick.heat)
        part = _bare(stick)
        check_readings(part, replace(readings, piece=stick.mark), system)
        return Judged(system, receive(part, readings), bool(_typed(measured)))
    if not copy.piece.active:
        raise ValueProblem(f"{copy.piece.mark} was taken out of its job: take the stick from the piece")
    text = current_text(copy.piece.job)
    job = job_of(text)
    layout = layout_of(text, copy.piece.mark)
    # what was bought is what is there until somebody measures it
    readings = read_table({"length": kept["length"], **typed}, system, copy.piece.mark, stick.heat)
    part = layout.main.part
    check_readings(part, readings, job.system)
    decision = decide(layout.assembly, readings, job.practice.tape, job.system)
    on = lay_out_on(layout, readings, way_of(stick, decision))
    receipt = receive(part, on.stick, job.practice.tolerances, job.practice.tape)
    fits = usable(decision, part, job.system)
    return Judged(job.system, receipt, bool(_typed(measured)), decision, on, fits, text)


def judgement_rows(judged: Judged) -> tuple[tuple[str, ...], ...]:
    """Every reading as a row for a page: name, wanted, read, allowed, verdict, source of the limit."""
    return tuple(_row(one, judged.system) for one in judged.receipt.judgements)


def _row(one: Judgement, system: System) -> tuple[str, ...]:
    read = "nominal" if one.read is None else say(one.read, system)
    allowed = one.limit.text(system) if one.limit else "-"
    verdict = str(one.verdict)
    if one.verdict is Verdict.OUT:
        verdict = f"out by {say_finely(one.by, system)}"
    elif one.verdict is Verdict.NO_LIMIT:
        verdict = "not checked"
    source = one.limit.cited if one.limit else "no limit held"
    return one.name, say(one.wanted, system), read, allowed, verdict, source


def way_rows(judged: Judged) -> tuple[tuple[str, ...], ...]:
    """The ways that the piece can be laid as rows for a page: way, can be done, each end short by."""
    if judged.decision is None:
        return ()
    rows = []
    for option in judged.decision.options:
        words = option.way.words
        taken = " (taken)" if words == judged.chosen else ""
        advised = " (advised)" if option is judged.decision.chosen else ""
        able = "yes" if option.within_design else "ask first" if option.possible else "no"
        short = (_span(fit.least, fit.most, judged.system) for fit in (option.left, option.right))
        rows.append((words, f"{words}{taken}{advised}", able, *short))
    return tuple(rows)


def _span(low: Length, high: Length, system: System) -> str:
    return say(low, system) if low == high else f"{say(low, system)} to {say(high, system)}"


def _typed(measured: Table) -> Table:
    return {key: value for key, value in measured.items() if key != "units"}


def _system_of(measured: Table) -> System:
    return System.MM if measured.get("units") == System.MM.value else System.FT_IN


def way_of(stick: Stick, decision: Decision) -> Way:
    """The way that was chosen in the yard to lay the piece on its stick, else the one that is advised."""
    words = part_of(stick, WAY).get("way", "")
    placed = (option for option in decision.options if option.way.words == words)
    return next(placed, decision.chosen).way


def _bare(stick: Stick) -> Part:
    """A stick as it was bought, before anything is made of it."""
    held, _ = read_held(part_of(stick, HELD), yard_system())
    stock = stock_named(held.steel.section, yard_system())
    return Part(stick.mark, stock, held.steel.grade, held.length)


def wrong_readings(table: Table, system: System, stick: Stick | None = None) -> tuple[Problem, ...]:
    """What is wrong with readings as they are typed; nothing where they can be kept.

    Args:
        table: as it was typed.
        system: the units of the yard.
        stick: that they were read on, so that a slip of the pen shows; None while it is not known.
    """
    try:
        readings = read_table(table, system)
    except JobProblems as wrong:
        return wrong.problems
    if stick is None:
        return ()
    slips = slips_of(_bare(stick), readings, system)
    return tuple(Problem(" → ".join(("stick", *one.path)), f"{stick.mark} {one.text}") for one in slips)


def told_odds(
    text: str, mark: str, records: Mapping[Act, Sequence[float]], web_off: Length | None = None
) -> Odds:
    """The odds that a piece bolts up without reaming.

    Args:
        text: of its job.
        mark: of the piece.
        records: the errors that the shop's own inspections tell, by act, in.
        web_off: what was read of its stick's web off the middle of the flanges; None where nothing was.
    """
    spread, _ = spread_from(records)
    off = web_off.inches if web_off is not None else None
    return odds_of(job_of(text).piece(mark), spread, web_off=off, met=full_of(text).met_of(mark))


def stick_odds(stick: Stick, records: Mapping[Act, Sequence[float]]) -> Odds:
    """The odds of the piece that is to be made of a stick, with its web where it was read.

    Raises:
        ValueProblem: while the stick is for no piece.
    """
    judged, on, _ = _for_its_piece(stick)
    return told_odds(judged.text, on.layout.assembly.mark, records, on.stick.web_off)


def odds_words(odds: Odds) -> dict[str, object]:
    """The odds as a page shows them."""
    return {
        "any": bool(odds.joints or odds.span),
        "joints": [(one.name, _per_cent(one), one.how) for one in (*odds.joints, *filter(None, [odds.span]))],
        "whole": _per_cent(odds.whole),
        "worst": [(one.change, f"{one.gain * 100:.1f}") for one in odds.worst[:3] if one.gain > 0],
        "gains": [(one.change, f"{one.gain * 100:.1f}") for one in odds.gains[:3] if one.gain > 0],
        "left_out": odds.left_out,
        "source": odds.spread.source,
    }


def _per_cent(chance: Chance) -> str:
    return f"{chance.value * 100:.1f} %"


def _for_its_piece(stick: Stick) -> tuple[Judged, StickLayout, Decision]:
    judged = judge(stick)
    if judged.on is None or judged.decision is None:
        raise ValueProblem(f"stick {stick.mark} is for no piece yet: say which first")
    return judged, judged.on, judged.decision


def card_pdf(stick: Stick, records: Mapping[Act, Sequence[float]]) -> bytes:
    """The receiving card of a stick with the odds of its piece, to print.

    Args:
        stick: that came.
        records: the errors that the shop's own inspections tell, by act, in.

    Raises:
        ValueProblem: while it is for no piece.
    """
    judged, on, decision = _for_its_piece(stick)
    odds = told_odds(judged.text, on.layout.assembly.mark, records, on.stick.web_off)
    card = ReceivingCard(on, judged.receipt, decision, odds)
    return to_pdf(receiving_cards(job_of(judged.text), (card,)))
