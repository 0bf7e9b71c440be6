"""The check sheet: every limit state of every connection with its working, for an engineer to sign."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import accumulate, groupby

from gageline.job import Job
from gageline.sheets.connection_facts import facts_of
from gageline.sheets.formula import math_of, symbol_of
from gageline.sheets.member_facts import facts_of_beam, facts_of_column
from gageline.sheets.pdf import literal
from gageline.sheets.scene import Paper, Sheet, Typeset
from gageline.strength import (
    Check,
    CheckedBeam,
    CheckedColumn,
    CheckedConnection,
    Connection,
    JobStrength,
    Method,
    NotChecked,
    Step,
    below_text,
    figure,
    force_text,
    ratio,
    suggestion_text,
)
from gageline.units import System

__all__ = ["check_sheet"]

_CARE = (
    "These checks cover the limit states listed here and no others. A licensed engineer answers for the "
    "design; local code governs. What was not checked is listed as not checked."
)
_TALL = re.compile("/|sqrt")
_HEAD = """#set text(size: 10pt)
#set par(leading: 0.5em, spacing: 0.65em)
#show math.equation: set text(size: 9pt, top-edge: "bounds", bottom-edge: "bounds")
#let head(body) = block(above: 1.1em, below: 0.5em, sticky: true, text(size: 12pt, weight: 700, body))
#let state(title, clause, share, body) = block(above: 0.9em, below: 0.3em, width: 100%, breakable: false, {
  block(sticky: true, below: 0.45em, grid(columns: (1fr, auto), column-gutter: 4mm, text(weight: 700, title)
    + h(2mm) + box(text(fill: luma(25%), clause)), text(weight: 700, share)))
  body
})
#let working(body, note: none) = block(inset: (left: 3mm), above: 0.55em, below: 0.55em,
  if note == none { body } else { body + h(2mm) + text(size: 8pt, fill: luma(25%), note) })
"""


def check_sheet(job: Job, strength: JobStrength) -> Sheet:
    """The check sheet of a job: one run of pages for each type of connection, then the beams and the rest.

    Args:
        job: the job.
        strength: its checks.

    Returns:
        The sheet; it is set as PDF only.
    """
    paper = Paper(job.facts.sheet) if job.facts.sheet else _usual(job.system)
    title = f"{job.facts.name}: checks of strength"
    runs = [
        (_type_page(job, strength, group), f"{_what(group)}: {group[0].verdict.connection.name}")
        for group in _types(strength)
    ]
    runs.append((_last_page(job, strength), "beams and what is left"))
    pages = [
        Typeset(_HEAD + "\n".join(lines), paper, title=name, foot=f"{title} - {name}") for lines, name in runs
    ]
    return Sheet(tuple(pages), title)


def _what(group: list[CheckedConnection]) -> str:
    """What kind of connection, and its fitting."""
    connection = group[0].verdict.connection
    return f"{connection.kind.value.capitalize()}: {connection.fitting.name}"


def _usual(system: System) -> Paper:
    return Paper.LETTER if system is System.FT_IN else Paper.A4


def _types(strength: JobStrength) -> list[list[CheckedConnection]]:
    """The connections that differ in nothing but where they are and what they carry, the worst first."""
    found: dict[Connection, list[CheckedConnection]] = {}
    for one in strength.connections:
        found.setdefault(_alike(one.verdict.connection), []).append(one)
    return [sorted(group, key=lambda one: -one.verdict.utilisation) for group in found.values()]


def _alike(connection: Connection) -> Connection:
    """A connection without where it is, what it carries and what its place leaves to change."""
    support = connection.support
    if support is not None and support.opposite:
        support = replace(support, opposite=1.0)
    return replace(connection, name="", V=1.0, N=0.0, load="", support=support, leeway=None)


def _say(text: str) -> str:
    """Text as markup that shows it as it is."""
    return f"#{literal(text)}"


def _top(job: Job, strength: JobStrength, title: str) -> Iterator[str]:
    number = f", job {job.facts.number}" if job.facts.number else ""
    yield f"#text(size: 15pt, weight: 700, {literal(title)})"
    yield ""
    by = f"{job.facts.name}{number}. {strength.method.value}, ANSI/AISC 360-22 with the 16th edition Manual."
    yield _say(f"{by} Working in kips and inches.")
    yield ""
    yield "#line(length: 100%, stroke: 0.6pt)"


def _type_page(job: Job, strength: JobStrength, group: list[CheckedConnection]) -> Iterator[str]:
    worst = group[0].verdict
    connection = worst.connection
    yield from _top(job, strength, _what(group))
    yield _facts(facts_of(connection, job.system))
    yield from _repeats(job, group)
    if suggestion := suggestion_text(worst, job.system):
        yield f"#block(above: 0.7em, {literal(f'For {connection.name}: {suggestion}.')})"
    yield from _sign()
    yield f"#head({literal(f'Limit states, worked for {connection.name}')})"
    yield from _in_two(worst.checks, known=bool(connection.load))
    if worst.rules:
        yield "#block(breakable: false, above: 1.2em)["
        yield '#head("Rules of detail")'
        yield from _rules(worst.rules)
        yield "]"
    yield from _not_checked(worst.not_checked)


def _facts(facts: Iterable[tuple[str, str]]) -> str:
    cells = "".join(f"{_named(name)}, {literal(text)}, " for name, text in facts)
    grid = f"grid(columns: (34mm, 1fr), row-gutter: 1.6mm, {cells})"
    return f"#block(above: 0.8em, breakable: false, sticky: true, {grid})"


def _named(name: str) -> str:
    """A name of a fact; one with an index is a symbol."""
    return f"${symbol_of(name)}$" if "_" in name else literal(name)


def _repeats(job: Job, group: list[CheckedConnection]) -> Iterator[str]:
    cells = ["[*where*], [*pieces*], [*must carry*], [*can carry*], [*used*], [*reaction*],"]
    for one in group:
        verdict, connection = one.verdict, one.verdict.connection
        demand = force_text(connection.V, job.system) if connection.load else "-"
        if connection.N:
            demand += f" + {force_text(connection.N, job.system)} axial"
        capacity = force_text(verdict.capacity, job.system) if verdict.capacity is not None else "-"
        share = ratio(verdict.governing) if connection.load else "-"
        texts = (connection.name, str(one.quantity), demand, capacity, share, connection.load or "not given")
        cells.append(" ".join(f"{literal(text)}," for text in texts))
    table = "\n".join(cells)
    yield (
        "#block(above: 0.9em, table(columns: (auto, auto, auto, auto, auto, 1fr), stroke: 0.4pt, "
        f"inset: 1.6mm, {table}))"
    )


def _state(check: Check, *, known: bool) -> Iterator[str]:
    shown = f"{figure(check.demand)} / {figure(check.capacity)} {check.unit}"
    share = f"{shown} = {ratio(check)}" if known else f"{figure(check.capacity)} {check.unit}"
    lines = "\n".join(_lines(check.steps))
    head = f"{literal(check.title)}, {literal(check.clause.number)}, {literal(share)}"
    yield f"#state({head}, {{\n{lines}\n}})"


def _in_two(checks: tuple[Check, ...], *, known: bool) -> Iterator[str]:
    """Limit states in two columns of about the same height, the governing ones on the left."""
    heights = [_height(check) for check in checks]
    left = sum(1 for total in accumulate(heights) if total <= sum(heights) / 2 + heights[0] / 2)
    yield "#grid(columns: (1fr, 1fr), column-gutter: 7mm, ["
    for number, check in enumerate(checks):
        if number == left:
            yield "], ["
        yield from _state(check, known=known)
    yield "])"


def _height(check: Check) -> float:
    """Lines of text that a limit state takes, a fraction or a root counted as two."""
    return 2.0 + sum(1.9 if {"/", "sqrt"} & set(_TALL.findall(step.formula)) else 1.2 for step in check.steps)


def _lines(steps: tuple[Step, ...]) -> Iterator[str]:
    """The working as calls of typst, lines of bolts that are alike written once."""
    for _, run in groupby(steps, key=_likeness):
        alike = list(run)
        symbols, rest = math_of(alike[0]).split(" = ", 1)
        if len(alike) > 1:
            between = ", " if len(alike) == 2 else " dots "
            symbols += f"{between}{symbol_of(alike[-1].symbol)}"
        note = f", note: {literal(alike[0].note)}" if alike[0].note else ""
        yield f"working(${symbols} = {rest}${note})"


def _likeness(step: Step) -> object:
    """What the lines of bolts that carry the same have in common; any other line is alone."""
    return (step.formula, step.values) if step.symbol.startswith("r_") else step


def _rules(rules: tuple[Check, ...]) -> Iterator[str]:
    cells = ["[*rule: lower no more than upper, in*], [*clause*], [*lower*], [*upper*], [],"]
    for rule in rules:
        state = "kept" if rule.passes else "NOT KEPT"
        measured = (figure(rule.demand), figure(rule.capacity)) if rule.unit else ("", "")
        texts = (rule.title, rule.clause.number, *measured, state)
        cells.append(" ".join(f"{literal(text)}," for text in texts))
    table = "\n".join(cells)
    yield f"#table(columns: (1fr, auto, auto, auto, auto), stroke: 0.4pt, inset: 1.4mm, {table})"


def _not_checked(items: tuple[NotChecked, ...]) -> Iterator[str]:
    if not items:
        return
    yield '#head("Not checked")'
    for item in dict.fromkeys(items):
        yield f"- {_say(item.what)}: {_say(item.why)}"


def _sign() -> Iterator[str]:
    blank = "box(width: 1fr, line(start: (0pt, 2pt), length: 100%, stroke: 0.5pt))"
    yield (
        "#block(above: 1.1em, breakable: false, stroke: 0.6pt, inset: 3mm, width: 100%, "
        f"{{ {literal(_CARE)}; v(4mm); grid(columns: (auto, 1fr, auto, 1fr, auto, 1fr), column-gutter: 2mm, "
        f'"Checked by", {blank}, "Licence", {blank}, "Date", {blank}) }})'
    )


def _last_page(job: Job, strength: JobStrength) -> Iterator[str]:
    what = "Beams, columns" if strength.columns else "Beams"
    yield from _top(job, strength, f"{what}, and what was not checked")
    yield from _sign()
    for beam in strength.beams:
        yield from _beam(beam, strength.method, job.system)
    for column in strength.columns:
        yield from _column(column, job.system)
    if strength.beams:
        yield ""
        yield _say("Each beam is taken as simple, on two supports. This is no analysis of a frame.")
    if strength.below:
        yield '#head("Reactions given below what the loads ask for")'
        yield from (f"- {_say(below_text(one, job.system))}" for one in strength.below)
    yield from _not_checked((*strength.refused, *strength.not_checked))


def _beam(beam: CheckedBeam, method: Method, system: System) -> Iterator[str]:
    yield f"#head({literal(f'{beam.piece}, {beam.section}')})"
    if beam.beam is not None:
        yield _facts(facts_of_beam(beam.beam, method, system))
    for check in beam.checks:
        yield from _state(check, known=True)


def _column(column: CheckedColumn, system: System) -> Iterator[str]:
    yield f"#head({literal(f'{column.member}, {column.section}')})"
    yield _facts(facts_of_column(column, system))
    for check in column.checks:
        yield from _state(check, known=True)
