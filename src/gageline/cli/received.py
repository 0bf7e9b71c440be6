"""The steel that came and the piece that was made: received, inspected, and its odds of fit-up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from enum import StrEnum
from functools import partial
from pathlib import Path
from typing import Annotated

import typer

from gageline import quality
from gageline.cli.opening import buildable, opened, write_sheet
from gageline.cli.screen import AsJson, JobFile, Mark, Out, aside, end_without, say, tracked
from gageline.detail import FullJob
from gageline.errors import GagelineError, ValueProblem
from gageline.exchange import json_text
from gageline.job import (
    Inspected,
    Job,
    JobProblems,
    Measurements,
    Note,
    parse,
    placed,
    read_measurements,
    read_text,
)
from gageline.layout import Choice, StickReading, Way, decide, lay_out, lay_out_on
from gageline.part import Assembly, End, Face, Finding
from gageline.quality import Judgement, Odds, Outcome, Report, Rules, Spread, Verdict
from gageline.sheets import ReceivingCard, inspection_sheets, odds_sheets, receiving_cards
from gageline.units import Length, System, counted

_TELLING = 0.00005  # a gain that two places of a per cent show
SheetFile = Annotated[Path, typer.Argument(help="the sheet of measurements, a .toml file", metavar="SHEET")]


class WayWord(StrEnum):
    """A way to lay a piece on its stick, as it is typed."""

    TRIM = "trim"
    AS_IS = "as-is"
    HOLD_LEFT = "hold-left"
    HOLD_RIGHT = "hold-right"
    SPLIT = "split"

    @property
    def way(self) -> Way:
        """What is meant."""
        return _WAYS[self]


_WAYS = {
    WayWord.TRIM: Way(Choice.TRIM),
    WayWord.AS_IS: Way(Choice.AS_IS),
    WayWord.HOLD_LEFT: Way(Choice.HOLD, End.LEFT),
    WayWord.HOLD_RIGHT: Way(Choice.HOLD, End.RIGHT),
    WayWord.SPLIT: Way(Choice.SPLIT),
}


class RowsFrom(StrEnum):
    """The face that rows are held from, as it is typed."""

    TOP = "top"
    BOTTOM = "bottom"


def receive(
    job_file: JobFile,
    sheet_file: SheetFile,
    piece: Mark = None,
    way: Annotated[
        WayWord | None, typer.Option("--way", help="how to lay it; what is advised when left out")
    ] = None,
    rows: Annotated[RowsFrom, typer.Option("--rows", help="the edge that rows are held from")] = RowsFrom.TOP,
    out: Out = None,
    as_json: AsJson = False,
) -> None:
    """The sticks that came: judged by their standard, laid out as they are, each with its card, as a PDF.

    Exit code 1 when a piece cannot be made of its stick.
    """
    full = opened(job_file)
    job, wrong = full.job, buildable(full, piece).wrong
    sheet = _open_sheet(sheet_file, job)
    own = _own_limits(job, sheet)
    _check_readings(sheet_file, job, sheet)
    sticks = tuple(one for one in sheet.sticks if piece in {None, one.piece})
    if not sticks:
        raise ValueProblem(f"{sheet_file}: no stick was measured{_for(piece)}: add a [[measured]] table")
    cards = []
    for stick in tracked(tuple(one for one in sticks if one.piece not in wrong), "receiving"):
        assembly = job.piece(stick.piece)
        decision = decide(assembly, stick, job.practice.tape, job.system)
        laid = lay_out(assembly, job.practice, job.system)
        on = lay_out_on(laid, stick, way.way if way else decision.chosen.way, Face(rows.value))
        web_off = stick.web_off.inches if stick.web_off is not None else None
        odds = quality.odds_of(assembly, web_off=web_off, met=full.met_of(assembly.mark))
        cards.append(
            ReceivingCard(
                on, quality.receive(assembly.main, on.stick, own, job.practice.tape), decision, odds
            )
        )
    if as_json:
        print(json_text([_card_facts(card) for card in cards], job.system))
    else:
        for card in cards:
            _show_card(card, job.system)
    if cards and (out or not as_json):
        write_sheet(receiving_cards(job, cards), out, job_file, "received")
    end_without(tuple(mark for mark in wrong if any(one.piece == mark for one in sticks)))
    if not all(card.on.placed.possible for card in cards):
        raise typer.Exit(1)


def inspect(
    job_file: JobFile,
    sheet_file: Annotated[
        Path | None,
        typer.Argument(help="the sheet of measurements; blank sheets without one", metavar="[SHEET]"),
    ] = None,
    piece: Mark = None,
    out: Out = None,
    as_json: AsJson = False,
) -> None:
    """The finished piece: a blank sheet to walk around it with, or what was read judged, as a PDF.

    Exit code 1 when a reading is out of its limit.
    """
    full = opened(job_file)
    job, result = full.job, buildable(full, piece)
    if sheet_file is None:
        marks = [one.mark for one in result.job.assemblies]
        every = tuple(Inspected(mark, 1, "", "", ()) for mark in marks)
        own = _own_limits(job, None)
    else:
        sheet = _open_sheet(sheet_file, job)
        every = tuple(one for one in sheet.inspected if piece in {None, one.piece})
        own = _own_limits(job, sheet)
    if sheet_file is not None and not every:
        raise ValueProblem(f"{sheet_file}: no piece was inspected{_for(piece)}: add an [[inspected]] table")
    reports = _reports(full, tuple(one for one in every if one.piece not in result.wrong), own)
    if as_json:
        print(json_text([_report_facts(report) for report in reports], job.system))
    else:
        for report in reports:
            _show_report(report, job.system)
    if reports and (out or not as_json):
        write_sheet(inspection_sheets(job, reports), out, job_file, "inspection")
    end_without(result.wrong)
    if any(report.findings(job.system) for report in reports):
        raise typer.Exit(1)


def odds(
    job_file: JobFile,
    sheet_files: Annotated[
        list[Path] | None,
        typer.Argument(help="sheets of measurements, for this shop's own spread", metavar="[SHEET...]"),
    ] = None,
    piece: Mark = None,
    out: Out = None,
    as_json: AsJson = False,
) -> None:
    """The odds that each piece bolts up without reaming, and what would better them; a PDF with --out.

    The spread is an assumption until sheets with inspected pieces tell the shop's own.
    """
    full = opened(job_file)
    job = full.job
    reports = [report for path in sheet_files or () for report in _reports_in(full, path)]
    spread, _ = quality.spread_from(quality.records_of(reports))
    result = buildable(full, piece)
    pieces = tracked(result.job.assemblies, "reckoning odds")
    told = []
    try:
        for assembly in pieces:
            one = quality.odds_of(assembly, spread, met=full.met_of(assembly.mark))
            told.append((assembly, one))
    except KeyboardInterrupt:
        of = len(result.job.assemblies)
        aside.print(f"stopped after {len(told)} of {counted(of, 'piece')}: nothing was written")
        raise typer.Exit(130) from None
    if as_json:
        print(json_text({assembly.mark: one for assembly, one in told}, job.system))
    else:
        _show_odds(told, spread)
    if out and told:
        write_sheet(odds_sheets(job, told), out, job_file, "odds")
    end_without(result.wrong)


def _for(piece: str | None) -> str:
    return f' for piece "{piece}"' if piece else ""


def _open_sheet(path: Path, job: Job) -> Measurements:
    """The sheet of measurements in a file; every problem in it said with the file's name."""
    text = read_text(path)
    try:
        return read_measurements(text, job.system, [assembly.mark for assembly in job.assemblies])
    except JobProblems as wrong:
        lines = (f"{path}: {problem.text()}" for problem in wrong.problems)
        raise GagelineError("\n".join(lines)) from None


def _check_readings(path: Path, job: Job, sheet: Measurements) -> None:
    """Refuse every reading that cannot be of its section, of all sticks at once, each at its field."""
    notes: list[Note] = [
        (("measured", index, *slip.path), slip.text)
        for index, stick in enumerate(sheet.sticks)
        for slip in quality.slips_of(job.piece(stick.piece).main, stick, job.system)
    ]
    if notes:
        text = read_text(path)
        wrong = placed(notes, parse(text), text)
        raise GagelineError("\n".join(f"{path}: {problem.text()}" for problem in wrong.problems))


def _own_limits(job: Job, sheet: Measurements | None) -> Mapping[str, Length]:
    """The shop's own limits: the sheet's, then the job's."""
    return {**job.practice.tolerances, **dict(sheet.tolerances if sheet else ())}


def _reports_in(full: FullJob, path: Path) -> tuple[Report, ...]:
    sheet = _open_sheet(path, full.job)
    return _reports(full, sheet.inspected, _own_limits(full.job, sheet))


def _reports(full: FullJob, every: tuple[Inspected, ...], own: Mapping[str, Length]) -> tuple[Report, ...]:
    """Every piece judged, or blank where nothing was read; what is wrong with their readings at once."""
    job = full.job
    reports, wrong = [], []
    for read in tracked(every, "inspecting"):
        assembly = job.piece(read.piece)
        layout = lay_out(assembly, job.practice, job.system)
        rules = _rules(full, assembly, read)
        make = partial(quality.inspect, inspected=read) if read.readings else quality.blank_report
        try:
            reports.append(make(layout, rules=rules, tolerances=own))
        except ValueProblem as problem:
            wrong.append(str(problem))
    if wrong:
        raise ValueProblem("\n".join(dict.fromkeys(wrong)))
    return tuple(reports)


def _rules(full: FullJob, assembly: Assembly, read: Inspected) -> Rules:
    """The rules for a piece; a column is in compression."""
    return quality.rules_of(
        assembly.main,
        metric=full.job.system is System.MM,
        tolerance_class=full.job.practice.tolerance_class,
        bearing=read.bearing,
        camber=read.camber,
        compression=read.compression or full.is_column(assembly.mark),
    )


def _show_card(card: ReceivingCard, system: System) -> None:
    """A stick judged, and what is laid out otherwise on it than on steel as drawn."""
    on, part = card.on, card.on.layout.assembly.main
    heat = f", heat {card.receipt.stick.heat}" if card.receipt.stick.heat else ""
    say.print(f"{part.mark}: {part.stock.designation}{heat}", style="bold", markup=False, soft_wrap=True)
    for finding, one in zip(card.receipt.findings(system), card.receipt.judgements, strict=True):
        if one.verdict in {Verdict.OUT, Verdict.NO_LIMIT}:
            _tell(_finding_text(finding, one))
    for verdict, words in ((Verdict.WITHIN, "within"), (Verdict.NOT_READ, "not read, taken as nominal")):
        names = [one.name for one in card.receipt.judgements if one.verdict is verdict]
        if names:
            _tell(f"{words}: {', '.join(names)}")
    if on.laid.note:
        _tell(on.laid.note)
    _tell(quality.usable(card.decision, part, system).text())
    if on.placed.way != card.decision.chosen.way:
        able = "can be done" if on.placed.possible else "cannot be done"
        _tell(f"laid by choice: {on.placed.way.words}, {able}")
    if on.placed.possible:
        for line in _changed_texts(on.changed):
            _tell(line)


def _changed_texts(changed: Sequence[StickReading]) -> Iterator[str]:
    """A line for every reason and datum, for the card has the readings; one for each mark off the steel."""
    apart = {(one.for_, one.nominal, one.actual): one for one in changed}.values()
    counts = Counter((one.why, one.nominal.from_.hook) for one in apart)
    for (why, hook), count in counts.items():
        told = "1 reading is" if count == 1 else f"{count} readings are"
        yield f"{why}: {told} other than drawn from the {hook}, see the card"
    for one in apart:
        if one.actual.outside and not one.nominal.outside:
            hook, actual = one.nominal.from_.hook, one.actual.length_text
            yield (
                f"{one.for_}: drawn {one.nominal.length_text} from the {hook}, on this stick "
                f"{actual} outside the {hook}, where there is no steel"
            )


def _finding_text(finding: Finding, judgement: Judgement) -> str:
    """A finding under the heading of its piece, which is not named again."""
    return f"{finding.severity}: {judgement.name}: {finding.message}: {finding.remedy}"


def _tell(text: str) -> None:
    say.print(f"  {text}", markup=False, soft_wrap=True)


def _judgement_facts(one: Judgement) -> dict[str, object]:
    return {
        "name": one.name, "wanted": one.wanted, "read": one.read, "verdict": one.verdict, "out_by": one.by,
        "limit": one.limit, "remedy": one.remedy,
    }  # fmt: skip


def _card_facts(card: ReceivingCard) -> dict[str, object]:
    """A received stick for other programs."""
    on, decision = card.on, card.decision
    return {
        "piece": card.receipt.part.mark,
        "stick": on.stick,
        "accepted": card.receipt.accepted,
        "judgements": [_judgement_facts(one) for one in card.receipt.judgements],
        "can_be_made": on.placed.possible,
        "ask": decision.ask,
        "advised": decision.chosen.way.words,
        "because": decision.because,
        "way": on.placed.way.words,
        "laid": on.laid.note,
        "datum": on.datum,
        "readings": on.readings,
        "odds": card.odds,
    }


def _show_report(report: Report, system: System) -> None:
    read = sum(row.judgement.read is not None for row in report.rows)
    mark, count = report.layout.assembly.mark, len(report.rows)
    if report.inspected is None:
        say.print(f"{mark}: blank sheet, {count} readings", markup=False)
        return
    number = report.inspected.number
    head = f"{mark} no. {number}: {report.outcome}, {read} of {count} readings"
    say.print(head, style="bold", markup=False, soft_wrap=True)
    out = (row.judgement for row in report.rows if row.judgement.verdict is Verdict.OUT)
    for finding, judgement in zip(report.findings(system), out, strict=True):
        _tell(_finding_text(finding, judgement))


def _report_facts(report: Report) -> dict[str, object]:
    """An inspected piece for other programs."""
    return {
        "piece": report.layout.assembly.mark,
        "inspected": report.inspected,
        "outcome": report.outcome if report.inspected else Outcome.NOT_READ,
        "complete": report.complete,
        "rows": [
            {"station": row.item.station, "tool": row.item.tool, "outcome": row.outcome}
            | _judgement_facts(row.judgement)
            for row in report.rows
        ],
    }


def _show_odds(told: list[tuple[Assembly, Odds]], spread: Spread) -> None:
    for assembly, one in told:
        chances = [*one.joints, *([one.span] if one.span else [])]
        if not chances:
            say.print(f"{assembly.mark}: nothing is bolted, no odds to tell", style="bold", markup=False)
            _show_left_out(one)
            continue
        whole = f"{assembly.mark}: {one.whole.value:.2%} goes together without reaming"
        how = "exact" if one.whole.low == one.whole.high else f"{one.whole.low:.2%} to {one.whole.high:.2%}"
        say.print(f"{whole} ({how})", style="bold", markup=False, soft_wrap=True)
        weakest = min(chances, key=lambda chance: chance.value)
        _tell(f"weakest: {weakest.name}, {weakest.value:.2%}")
        for words, gain in (("matters most", one.worst[0]), ("helps most", one.gains[0])):
            if gain.gain >= _TELLING:
                _tell(f"{words}: {gain.change}, {gain.value:.2%} ({gain.gain:+.2%})")
        _show_left_out(one)
    say.print(f"spread: {spread.source}", markup=False, soft_wrap=True)


def _show_left_out(odds: Odds) -> None:
    for words in odds.left_out:
        _tell(f"not reckoned: {words}")
