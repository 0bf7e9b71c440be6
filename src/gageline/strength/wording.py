"""Checks in words: what a connection carries, what governs, the whole working."""

from __future__ import annotations

from collections.abc import Iterator
from math import isinf

from gageline.strength.bases import CheckedColumn
from gageline.strength.check import Check, figure
from gageline.strength.demands import SUGGESTED, BelowLoads
from gageline.strength.jobs import CheckedBeam, CheckedConnection, JobStrength
from gageline.strength.remedies import lighter, remedy
from gageline.strength.verdict import NotChecked, Verdict
from gageline.units import System

__all__ = [
    "amount_text",
    "below_text",
    "broken_text",
    "force_text",
    "percent",
    "ratio",
    "report_of",
    "suggestion_text",
    "summary_of",
]

_KIP = 4.4482216152605
_MM = 25.4
_METRIC = {"in": (_MM, "mm"), "kip-in": (_KIP * _MM / 1000, "kN m")}


def force_text(kips: float, system: System) -> str:
    """A force in the units of the job, to a tenth of a kip or a whole kilonewton.

    Args:
        kips: the force.
        system: units of the job.
    """
    return f"{kips:.1f} kip" if system is System.FT_IN else f"{kips * _KIP:.0f} kN"


def amount_text(value: float, unit: str, system: System) -> str:
    """A demand or a capacity of a check in the units of the job; what has no metric unit here stays.

    Args:
        value: of the check.
        unit: of the check.
        system: units of the job.

    Source: NIST SP 811, appendix B.8: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, at 9.80665 m/s2, all exact.
    """
    if unit == "kip":
        return force_text(value, system)
    if system is System.MM and unit in _METRIC:
        scale, unit = _METRIC[unit]
        value *= scale
    return f"{figure(value)} {unit}"


def percent(check: Check) -> str:
    """How much of a capacity is used, in per cent; a bolt that shear uses up has none left for tension."""
    return _used(check, f"{check.utilisation * 100:.0f} %")


def ratio(check: Check) -> str:
    """How much of a capacity is used, as a number beside the working; in words where none was left."""
    return _used(check, f"{check.utilisation:.2f}")


def _used(check: Check, text: str) -> str:
    return "all used up" if isinf(check.utilisation) else text


def report_of(strength: JobStrength, system: System, *, working: bool = False) -> Iterator[str]:
    """Everything there is to say on the strength of a job, line by line.

    Args:
        strength: of the job.
        system: its units.
        working: with the whole calculation.
    """
    checked = strength.connections or strength.refused or strength.beams or strength.columns
    if not checked and not strength.openings:
        return
    yield f"strength by {strength.method.value}, ANSI/AISC 360-22; the reactions are at the ends as shown"
    if working and system is System.MM:
        yield "the working is in kips and inches, as the standard is written; results are in the job's units"
    for one in strength.connections:
        yield from _connection(one, system, working=working)
    for beam in strength.beams:
        yield from _beam(beam, working=working)
    for column in strength.columns:
        yield from _column(column, system, working=working)
    for item in strength.refused:
        yield f"{item.what}: not checked: {item.why}"
    for below in strength.below:
        yield f"warning: {below_text(below, system)}"
    yield from (f"warning: {text}" for text in _below_suggested(strength, system))
    for item in strength.openings:
        yield f"warning: {item.what}: not checked: {item.why}"
    for item in _once(strength):
        yield f"not checked: {item.what}: {item.why}"


def summary_of(strength: JobStrength) -> str:
    """The strength of a job in a few words: what was checked, and what of it is not enough."""
    counts = (
        (len(strength.connections), "connection"),
        (sum(1 for one in strength.beams if one.beam is not None), "beam"),
        (len(strength.columns), "column"),
    )
    named = [f"{count} {what}{'s' if count != 1 else ''}" for count, what in counts if count]
    if not named:
        return "strength: not checked"
    parts = [f"{' and '.join(filter(None, (', '.join(named[:-1]), named[-1])))} checked"]
    forbidden = sum(1 for one in strength.connections if one.verdict.forbidden)
    if weak := len(strength.failed) - forbidden:
        parts.append(f"{weak} not strong enough")
    if forbidden:
        parts.append(f"{forbidden} not allowed")
    if short := len(strength.below_suggested):
        parts.append(f"{short} without a reaction below what the Manual suggests")
    if strength.refused:
        parts.append(f"{len(strength.refused)} not checked")
    return f"strength: {', '.join(parts)}"


def _connection(one: CheckedConnection, system: System, *, working: bool) -> Iterator[str]:
    verdict, connection = one.verdict, one.verdict.connection
    governing, capacity = verdict.governing, verdict.capacity
    carries = f"carries {force_text(capacity, system)}" if capacity is not None else "with an axial force"
    by = f"{governing.title} ({governing.clause.number})"
    yield f"{connection.name}: {connection.kind} {connection.fitting.name}, {carries}; governed by {by}"
    if connection.load:
        pulled = f" and {force_text(connection.N, system)} axial" if connection.N else ""
        used = percent(governing)
        state = "" if governing.passes else ": NOT ENOUGH"
        if connection.load == SUGGESTED and not governing.passes:
            state = ": less than the reaction that the Manual suggests"
        words = f"needs {force_text(connection.V, system)}{pulled} ({connection.load}): {used}{state}"
    else:
        words = "no reaction is given: capacity only"
    yield f"    {words}{': NOT ALLOWED' if verdict.forbidden else ''}"
    for rule in verdict.broken_rules:
        yield f"    detail: {broken_text(rule, system)}"
    if suggestion := suggestion_text(verdict, system):
        yield f"    {suggestion}"
    if working:
        yield from _working(verdict)


def below_text(below: BelowLoads, system: System) -> str:
    """A reaction that is given although the loads ask for more, in words.

    Args:
        below: the reaction.
        system: units of the job.
    """
    given, asked = force_text(below.given, system), force_text(below.asked, system)
    return f"{below.name}: {given} is given as the reaction, its loads ask for {asked} ({below.load})"


def _below_suggested(strength: JobStrength, system: System) -> Iterator[str]:
    """The ends without a reaction that carry less than the Manual suggests, alike ones together, in words."""
    names: dict[tuple[str, str], list[str]] = {}
    for verdict in strength.below_suggested:
        has = "not enough" if verdict.capacity is None else force_text(verdict.capacity, system)
        asked = force_text(verdict.connection.V, system)
        names.setdefault((has, asked), []).append(verdict.connection.name)
    for (has, asked), ends in names.items():
        carries = "it carries" if len(ends) == 1 else "each carries"
        yield (
            f"{', '.join(ends)}: no reaction is given, and {carries} "
            f"{has} where half of the largest uniform load that the beam itself can carry is {asked}: "
            "give the reaction, or the loads of the beam"
        )


def broken_text(rule: Check, system: System) -> str:
    """A rule of detail that is not kept, in words; what is not measured is said by its title.

    Args:
        rule: the rule.
        system: units of the job.
    """
    if not rule.unit:
        return rule.title
    metric = system is System.MM and rule.unit == "in"
    scale, unit = (_MM, "mm") if metric else (1.0, rule.unit)
    return f"{rule.title}: {figure(rule.demand * scale)} against {figure(rule.capacity * scale)} {unit}"


def suggestion_text(verdict: Verdict, system: System) -> str:
    """The first remedy of what fails, or something lighter for what has much to spare; empty without any.

    Args:
        verdict: of a connection.
        system: units of the job, whose sizes are tried.
    """
    if not verdict.connection.load:
        return ""
    if verdict.passes:
        less = lighter(verdict, system)
        if less is None or less.verdict is None:
            return ""
        return f"{less.change} would do: {percent(less.verdict.governing)}"
    found = remedy(verdict, system)
    if found is None:
        nothing = "no ordinary remedies are enough, not even together: use another connection"
        return "" if verdict.governing.passes else nothing
    return f"try {found.change}" + (f": {percent(found.verdict.governing)}" if found.verdict else "")


def _working(verdict: Verdict) -> Iterator[str]:
    for check in verdict.checks:
        yield f"  {check.title} ({check.clause.number})"
        yield from (f"      {step.line}" for step in check.steps)
        if verdict.connection.load:
            yield f"      {figure(check.demand)} / {figure(check.capacity)} {check.unit} = {percent(check)}"
    for rule in verdict.rules:
        kept = "kept" if rule.passes else "NOT KEPT"
        measured = f": {figure(rule.demand)} <= {figure(rule.capacity)} {rule.unit}" if rule.unit else ""
        yield f"  {rule.title}{measured}, {kept}"


def _beam(beam: CheckedBeam, *, working: bool) -> Iterator[str]:
    alone = "" if " over " in beam.piece else " as a simple beam"
    yield f"{beam.piece} {beam.section}{alone}: {_worst(beam.checks)}"
    if working:
        yield from _worked(beam.checks)


def _column(column: CheckedColumn, system: System, *, working: bool) -> Iterator[str]:
    parts = ", ".join(f"{case} {force_text(amount, system)}" for case, amount in column.total)
    down = f"{force_text(column.P, system)} come down ({parts}; {column.load})"
    base = f"; {_worst(column.checks)}" if column.checks else ""
    yield f"{column.member} {column.section}: {down}{base}"
    if working:
        yield from _worked(column.checks)


def _worst(checks: tuple[Check, ...]) -> str:
    """What governs, with how much of it is used."""
    worst = max(checks, key=lambda check: check.utilisation)
    return f"{worst.title}, {percent(worst)}{'' if worst.passes else ': NOT ENOUGH'}"


def _worked(checks: tuple[Check, ...]) -> Iterator[str]:
    for check in checks:
        yield f"  {check.title} ({check.clause.number})"
        yield from (f"      {step.line}" for step in check.steps)
        yield f"      {figure(check.demand)} / {figure(check.capacity)} {check.unit} = {percent(check)}"


def _once(strength: JobStrength) -> tuple[NotChecked, ...]:
    """What was not checked, each with the connections it concerns, said once."""
    found: dict[NotChecked, None] = {}
    for one in strength.connections:
        found.update(dict.fromkeys(one.verdict.not_checked))
    found.update(dict.fromkeys(item for item in strength.not_checked if item not in strength.openings))
    return tuple(found)
