"""The strength of a job on its pages: what each connection carries, what governs, what was not checked."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, render
from django.views.decorators.http import require_GET

from gageline.shop.engine import job_of, strength_of
from gageline.shop.jobs import current_text
from gageline.shop.models import Job
from gageline.strength import (
    SUGGESTED,
    BelowLoads,
    CheckedBeam,
    CheckedColumn,
    CheckedConnection,
    JobStrength,
    NotChecked,
    amount_text,
    below_text,
    broken_text,
    force_text,
    percent,
    summary_of,
)
from gageline.units import System

__all__ = ["CARE", "StrengthLine", "show", "strength_lines", "unchecked_of"]

CARE = (
    "These checks cover the limit states listed here and on the check sheet, and no others. A licensed "
    "engineer answers for the design; local code governs. What was not checked is listed as not checked."
)


@dataclass(frozen=True, slots=True)
class StrengthLine:
    """What is known of one connection, of one beam under its loads, or of the foot of one column.

    Args:
        piece: mark of the piece it belongs to; empty for a column, which may be one of several equal ones.
        name: of the connection, the beam or the column.
        what: kind of connection and its material.
        carries: its capacity.
        needs: what is asked of it, and where that comes from.
        governs: limit state and clause.
        used: how much of the capacity, in per cent; empty where no load is known.
        state: enough, not enough, or capacity only.
        kind: note, warning or error, for how it is shown.
        rules: rules of detail that are not kept, and a reaction given below what the loads ask for.
    """

    piece: str
    name: str
    what: str
    carries: str
    needs: str
    governs: str
    used: str
    state: str
    kind: str
    rules: tuple[str, ...] = ()


def strength_lines(
    strength: JobStrength, system: System, names: frozenset[str] | None = None
) -> tuple[StrengthLine, ...]:
    """The checks of a job or of one of its pieces, line by line.

    Args:
        strength: of the job.
        system: its units.
        names: the mark of the piece and the members it stands for; None for all.
    """
    ends = (
        _connection(one, strength.below, system)
        for one in strength.connections
        if names is None or one.piece in names
    )
    beams = (_beam(one, system) for one in strength.beams if names is None or one.piece in names)
    columns = (_column(one, system) for one in strength.columns if names is None or one.member in names)
    return (*ends, *beams, *columns)


def _connection(one: CheckedConnection, below: Sequence[BelowLoads], system: System) -> StrengthLine:
    verdict, connection = one.verdict, one.verdict.connection
    governing, capacity = verdict.governing, verdict.capacity
    needs = ""
    if connection.load:
        pulled = f" and {force_text(connection.N, system)} axial" if connection.N else ""
        needs = f"{force_text(connection.V, system)}{pulled} ({connection.load})"
    state, kind = ("enough", "note") if governing.passes else ("NOT ENOUGH", "error")
    if not connection.load:
        state, kind = "capacity only: no reaction is given", "note"
    elif connection.load == SUGGESTED and not governing.passes:
        state, kind = "less than the reaction that the Manual suggests", "warning"
    rules = [broken_text(rule, system) for rule in verdict.broken_rules]
    rules += [below_text(low, system) for low in below if low.name == connection.name]
    return StrengthLine(
        one.piece, connection.name, f"{connection.kind} {connection.fitting.name}",
        "with an axial force" if capacity is None else force_text(capacity, system), needs,
        f"{governing.title} ({governing.clause.number})",
        percent(governing) if connection.load else "", state, kind, tuple(rules),
    )  # fmt: skip


def _beam(beam: CheckedBeam, system: System) -> StrengthLine:
    worst = max(beam.checks, key=lambda check: check.utilisation)
    carries, needs = (amount_text(value, worst.unit, system) for value in (worst.capacity, worst.demand))
    state, kind = ("enough", "note") if worst.passes else ("NOT ENOUGH", "error")
    alone = "" if " over " in beam.piece else " as a simple beam"
    return StrengthLine(
        beam.piece, beam.piece, f"{beam.section}{alone}", carries, f"{needs} (from the loads)",
        f"{worst.title} ({worst.clause.number})", percent(worst), state, kind,
    )  # fmt: skip


def _column(column: CheckedColumn, system: System) -> StrengthLine:
    needs = f"{force_text(column.P, system)} come down ({column.load})"
    if not column.checks:
        return StrengthLine(
            "", column.member, column.section, "-", needs, "", "", "base plate not checked", "note"
        )
    worst = max(column.checks, key=lambda check: check.utilisation)
    carries, asked = (amount_text(value, worst.unit, system) for value in (worst.capacity, worst.demand))
    state, kind = ("enough", "note") if worst.passes else ("NOT ENOUGH", "error")
    return StrengthLine(
        "", column.member, f"base plate of {column.section}", carries, f"{asked}: {needs}",
        f"{worst.title} ({worst.clause.number})", percent(worst), state, kind,
    )  # fmt: skip


def unchecked_of(strength: JobStrength, names: frozenset[str] | None = None) -> tuple[NotChecked, ...]:
    """What was not checked of a job or of one of its pieces, each once with its reason.

    Args:
        strength: of the job.
        names: the mark of the piece and the members it stands for; None for all.
    """
    return tuple(dict.fromkeys(_unchecked(strength, names)))


def _unchecked(strength: JobStrength, names: frozenset[str] | None) -> Iterator[NotChecked]:
    if names is None:
        yield from strength.refused
    else:
        yield from (one for one in strength.refused if names & set(re.split("[ ,]+", one.what)))
    for one in strength.connections:
        if names is None or one.piece in names:
            yield from one.verdict.not_checked
    for column in strength.columns:
        if names is None or column.member in names:
            yield from column.not_checked
    for whole in strength.not_checked:
        subject, as_beam, _ = whole.what.partition(" as a beam")
        if names is None or not as_beam or subject in names:
            yield whole


@require_GET
def show(request: HttpRequest, pk: int) -> HttpResponse:
    """The strength of a whole job."""
    job = get_object_or_404(Job, pk=pk)
    text = current_text(job)
    strength = strength_of(text)
    context = {
        "job": job,
        "lines": strength_lines(strength, job_of(text).system),
        "unchecked": unchecked_of(strength),
        "summary": summary_of(strength).removeprefix("strength: "),
        "method": strength.method.value,
        "care": CARE,
        "pages": dict(job.pieces.filter(active=True).values_list("mark", "pk")),
    }
    return render(request, "shop/strength.html", context)
