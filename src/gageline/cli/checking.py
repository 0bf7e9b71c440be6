"""What is wrong with a job and whether its connections are strong enough: verify and checks."""

from __future__ import annotations

from typing import Annotated

import typer

from gageline.cli.opening import opened, sound, spoken, write_sheet
from gageline.cli.screen import JobFile, Out, end_without, say
from gageline.errors import ValueProblem
from gageline.job import check_job
from gageline.part import Severity
from gageline.quality import own_limits
from gageline.sheets import check_sheet, check_texts, findings_by_card
from gageline.strength import Method, check_strength, report_of, summary_of
from gageline.units import counted

DesignMethod = Annotated[
    str | None, typer.Option("--method", help="lrfd or asd; what the job says when left out")
]


def verify(
    job_file: JobFile,
    working: Annotated[bool, typer.Option("--working", help="the full calculation of every check")] = False,
    method: DesignMethod = None,
) -> None:
    """The problems of a job and the strength of its connections; exit code 1 when any is an error.

    Exit code 1 also where a connection, a beam or a base plate is not strong enough for a load that the job
    gives, or a rule is broken that no strength makes good: a kind of hole, a plate that would punch through.
    """
    full = opened(job_file)
    own_limits(full.job.practice.tolerances)  # refuses a mistyped code, as receive and inspect do
    job, findings = full.job, (*full.findings, *check_job(full.job), *check_texts(full.job))
    for finding in findings_by_card(spoken(findings), full.detailed):
        say.print(finding.text(), markup=False, soft_wrap=True)
    strength = check_strength(job, _method(method), full.detailed)
    for line in report_of(strength, job.system, working=working):
        say.print(line, markup=False, soft_wrap=True)
    counts = [counted(sum(f.severity is kind for f in findings), kind) for kind in Severity]
    line = f"{counted(len(job.assemblies), 'piece')}: {', '.join(counts)}; {summary_of(strength)}"
    say.print(line, markup=False, soft_wrap=True)
    if strength.failed or any(finding.severity is Severity.ERROR for finding in findings):
        raise typer.Exit(1)


def checks(job_file: JobFile, method: DesignMethod = None, out: Out = None) -> None:
    """The check sheet: every limit state of every connection with its working, as a PDF to sign.

    It is of the whole job, since one piece hands its forces to another; pieces with an error are said, and
    the exit code is 1.
    """
    full = opened(job_file)
    job, result = full.job, sound(full)
    strength = check_strength(job, _method(method), full.detailed)
    write_sheet(check_sheet(job, strength), out, job_file, "checks")
    say.print(summary_of(strength), markup=False, soft_wrap=True)
    end_without(result.wrong, "checked with their errors, not to be built yet")


def _method(text: str | None) -> Method | None:
    """The design method that was typed."""
    if text is None:
        return None
    if text.upper() not in Method.__members__:
        raise ValueProblem(f'method "{text}" is neither lrfd nor asd: give one of them')
    return Method[text.upper()]
