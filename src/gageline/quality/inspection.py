"""The finished piece as measured: good, rework, or ask the engineer."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from functools import partial

from gageline.errors import ValueProblem
from gageline.job import Inspected, say
from gageline.layout import Layout
from gageline.part import Finding
from gageline.quality.codes import own_limits
from gageline.quality.fabrication import GAP_FREE, Rules
from gageline.quality.items import Item, Remedy, items_of
from gageline.quality.limits import FINEST, Judgement, Verdict, overridden
from gageline.quality.spread import Act
from gageline.units import ZERO, Length, System

__all__ = ["Outcome", "Report", "Row", "blank_report", "inspect", "records_of"]


# What nobody makes and everybody mistypes; common practice, no source.
_SHARE, _TAPED = Fraction(1, 4), Length.from_inches(12)  # of what the tape reads, and the least of it
_GAUGED = Length.from_inches(4)  # of what a gauge, a square or a feeler reads
_BOW = Fraction(1, 20)  # of the length


class Outcome(StrEnum):
    """What is to be done with a piece, or with one reading of it."""

    GOOD = "good"
    REWORK = "rework"
    ASK = "ask the engineer"
    NOT_READ = "not read"
    NOT_JUDGED = "not checked"


@dataclass(frozen=True, slots=True)
class Row:
    """One line of an inspection sheet.

    Args:
        item: what is read.
        judgement: what was read, beside what is wanted and allowed.
        outcome: what is to be done.
    """

    item: Item
    judgement: Judgement
    outcome: Outcome


@dataclass(frozen=True, slots=True)
class Report:
    """A piece as inspected, or the blank sheet for it.

    Args:
        layout: of the piece.
        rows: in the order one walks around it.
        inspected: who measured which piece and when; None for a blank sheet.
    """

    layout: Layout
    rows: tuple[Row, ...]
    inspected: Inspected | None

    @property
    def outcome(self) -> Outcome:
        """The most serious outcome of any row; not read where no row was."""
        found = {row.outcome for row in self.rows}
        for serious in (Outcome.ASK, Outcome.REWORK, Outcome.GOOD, Outcome.NOT_JUDGED):
            if serious in found:
                return serious
        return Outcome.NOT_READ

    @property
    def complete(self) -> bool:
        """Whether everything on the sheet was read."""
        return all(row.judgement.read is not None for row in self.rows)

    def division(self, row: Row) -> Length:
        """What a row is read to: the shop's tape, or what a gauge or a feeler shows."""
        return self.layout.tape if row.item.taped else FINEST

    def findings(self, system: System) -> tuple[Finding, ...]:
        """The readings that are out, as findings with their remedies."""
        mark = self.layout.assembly.mark
        return tuple(
            row.judgement.finding(mark, system, self.division(row))
            for row in self.rows
            if row.judgement.verdict is Verdict.OUT
        )


def blank_report(layout: Layout, rules: Rules, tolerances: Mapping[str, Length] | None = None) -> Report:
    """The sheet to fill for a piece, nothing read on it yet.

    Args:
        layout: of the piece.
        rules: that it is inspected by.
        tolerances: the shop's own limits by the code of the rule.

    Raises:
        ValueProblem: when a tolerance has a code that no limit has.
    """
    own = own_limits(tolerances)
    return Report(layout, tuple(_row(item, None, own, ZERO) for item in items_of(layout, rules)), None)


def inspect(
    layout: Layout, inspected: Inspected, rules: Rules, tolerances: Mapping[str, Length] | None = None
) -> Report:
    """Judge a finished piece by what was read on it.

    A fillet whose gap is over 1/16 in must have its leg grown by the gap.

    Args:
        layout: of the piece.
        inspected: what was read.
        rules: that it is inspected by.
        tolerances: the shop's own limits by the code of the rule.

    Raises:
        ValueProblem: with every reading whose name is not on the sheet of this piece, that is below zero
            where nothing can be or so far off that it is a slip of the pen, or when a tolerance has a
            code that no limit has.

    Source: of the gap rule AWS D1.1:2020, 7.21.1.
    """
    items = items_of(layout, rules)
    readings = dict(inspected.readings)
    mark = layout.assembly.mark
    known = {item.name for item in items}
    wrong = [_stranger(name, items, mark) for name in readings if name not in known]
    wrong += [
        f'"{item.name}" of piece {mark} is below zero: read how far it is open or off, without a sign'
        for item in items
        if not item.signed and readings.get(item.name, ZERO) < ZERO
    ]
    wrong += [
        _absurd(item, readings[item.name], layout)
        for item in items
        if item.name in readings
        and (item.signed or readings[item.name] >= ZERO)  # below zero it is refused for that
        and abs(readings[item.name] - item.wanted) > _most_off(item, layout)
    ]
    if wrong:
        raise ValueProblem("\n".join(wrong))
    own = own_limits(tolerances)
    rows = tuple(
        _row(item, readings.get(item.name), own, readings.get(_gap_of(item.name), ZERO)) for item in items
    )
    return Report(layout, rows, inspected)


def _most_off(item: Item, layout: Layout) -> Length:
    """How far off a reading may be and still be one: no slip of the pen, no other unit."""
    if item.bow:
        return layout.assembly.main.length * _BOW
    return max(item.wanted * _SHARE, _TAPED) if item.taped else _GAUGED


def _absurd(item: Item, read: Length, layout: Layout) -> str:
    told = partial(say, system=layout.system)
    return (
        f'"{item.name}" of piece {layout.assembly.mark} is {told(read)}, more than '
        f"{told(_most_off(item, layout))} off the {told(item.wanted)} that is wanted: "
        "check the reading, and its unit"
    )


def _stranger(name: str, items: tuple[Item, ...], mark: str) -> str:
    """What is wrong with a reading that no line of the sheet has."""
    near = difflib.get_close_matches(name, [item.name for item in items], n=1, cutoff=0.4)
    meant = f'did you mean "{near[0]}"?' if near else "use the names that its blank sheet prints"
    return f'"{name}" is not read on piece {mark}: {meant}'


def _gap_of(name: str) -> str:
    """The name of the gap that goes with a weld's leg."""
    return f"{name.removesuffix(' leg')} gap" if name.endswith(" leg") else ""


def _row(item: Item, read: Length | None, own: Mapping[str, Length], gap: Length) -> Row:
    if gap > GAP_FREE and item.limit is not None and item.limit.code == "d11-leg":
        item = replace(item, wanted=item.wanted + gap)
    limit = overridden(item.limit, own) if item.limit else None
    remedy = item.under if read is not None and read < item.wanted else item.over
    judgement = Judgement(item.name, item.wanted, read, limit, remedy.text)
    return Row(item, judgement, _outcome(judgement, remedy))


def _outcome(judgement: Judgement, remedy: Remedy) -> Outcome:
    match judgement.verdict:
        case Verdict.NOT_READ:
            return Outcome.NOT_READ
        case Verdict.NO_LIMIT:
            return Outcome.NOT_JUDGED
        case Verdict.WITHIN:
            return Outcome.GOOD
        case _:
            return Outcome.ASK if remedy.ask else Outcome.REWORK


def records_of(reports: Iterable[Report]) -> dict[Act, tuple[float, ...]]:
    """The errors of each act in a shop's inspection reports, for `spread_from`.

    Args:
        reports: filled ones.

    Returns:
        Errors in inches, of the square in inches for each inch.
    """
    found: dict[Act, list[float]] = {}
    for report in reports:
        for row in report.rows:
            off = row.judgement.off
            if off is not None and row.item.act is not None:
                found.setdefault(row.item.act, []).append(off.inches / row.item.per)
    return {act: tuple(errors) for act, errors in found.items()}
