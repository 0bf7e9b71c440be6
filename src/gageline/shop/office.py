"""The Office: jobs, their facts, what is brought in, taken out and printed, and their history."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import tomlkit
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from gageline.errors import GagelineError, ValueProblem
from gageline.job import JobDocument, JobProblems, Problem, parse, read_document
from gageline.part import Severity
from gageline.shop import jobs
from gageline.shop.engine import findings_of, full_of, job_of, strength_of
from gageline.shop.fields import Section, form_of, table_of, tables_of
from gageline.shop.models import Job, Person
from gageline.shop.pictures import qr_svg
from gageline.shop.prints import PRINTS, parts_csv, printed, prints_of
from gageline.shop.saying import Said, say_all, spoken
from gageline.shop.selectors import jobs_with_counts, piece_lines
from gageline.shop.strengths import strength_lines
from gageline.strength import summary_of
from gageline.units import System

__all__ = [
    "export",
    "facts_form",
    "history",
    "import_document",
    "labels",
    "list_jobs",
    "look_facts",
    "new_job",
    "parts",
    "print_pdf",
    "show_conflict",
    "show_job",
    "undo",
]

_FACTS = {key: model for key, model in tables_of(JobDocument).items() if key != "frame"}
_LARGEST_DOCUMENT = 20_000_000  # bytes


def typed_fields(request: HttpRequest) -> dict[str, str]:
    """The fields of a form by their names."""
    return {key: value for key, value in request.POST.items() if isinstance(value, str)}


def person_of(request: HttpRequest) -> Person:
    """Who is signed in; the gatekeeper has seen to it that somebody is."""
    if not isinstance(request.user, Person):
        raise GagelineError("nobody is signed in: sign in")
    return request.user


@require_GET
def list_jobs(request: HttpRequest) -> HttpResponse:
    """The jobs of the shop."""
    return render(request, "shop/jobs.html", {"jobs": jobs_with_counts()})


@require_http_methods(["GET", "POST"])
def new_job(request: HttpRequest) -> HttpResponse:
    """A new job: its name, its number and its units."""
    typed = {key: request.POST.get(key, "").strip() for key in ("name", "number", "units")}
    problem = ""
    if request.method == "POST":
        units = System.MM if typed["units"] == System.MM.value else System.FT_IN
        try:
            return redirect(
                "job", jobs.make_job(person_of(request), typed["name"], typed["number"], units).pk
            )
        except JobProblems as wrong:
            problem = "; ".join(
                replace(one, line=None).text() for one in wrong.problems
            )  # nobody typed lines
    return render(
        request, "shop/job_new.html", {"typed": typed, "problem": problem}, status=422 if problem else 200
    )


@require_http_methods(["GET", "POST"])
def import_document(request: HttpRequest) -> HttpResponse:
    """A job from a job document."""
    problems: tuple[str, ...] = ()
    if request.method == "POST":
        file = request.FILES.get("document")
        try:
            if file is None:
                raise ValueProblem("no file came with the form: choose a job document")
            if (file.size or 0) > _LARGEST_DOCUMENT:
                raise ValueProblem(f"the file is larger than {_LARGEST_DOCUMENT / 1e6:.0f} MB: split the job")
            return redirect("job", jobs.import_job(person_of(request), file.read()).pk)
        except JobProblems as wrong:
            problems = tuple(problem.text() for problem in wrong.problems[:100])
        except GagelineError as wrong:
            problems = (str(wrong),)
    return render(request, "shop/job_import.html", {"problems": problems}, status=422 if problems else 200)


@require_GET
def show_job(request: HttpRequest, pk: int) -> HttpResponse:
    """A job's pieces with state, weight and quantity, and what the rules say."""
    job = get_object_or_404(Job, pk=pk)
    jobs.weigh_some(job)
    lines, text = piece_lines(job), jobs.current_text(job)
    known = [line.weight for line in lines if line.weight is not None]
    full, strength = full_of(text), strength_of(text)
    context = {
        "job": job,
        "lines": lines,
        "system": full.job.system,
        "weight": sum(known),
        "unweighed": len(lines) - len(known),
        "findings": [one for one in spoken(findings_of(text)) if lines or one.severity is Severity.ERROR],
        "strength": summary_of(strength).removeprefix("strength: "),
        "short": sum(one.kind == "warning" for one in strength_lines(strength, full.job.system)),
        "prints": {name: one.title for name, one in prints_of(full).items()},
        "framed": frozenset(one.mark for one in full.detailed.assemblies) if full.detailed else frozenset(),
    }
    template = "shop/part_pieces.html" if getattr(request, "htmx", False) else "shop/job.html"
    return render(request, template, context)


@require_http_methods(["GET", "POST"])
def facts_form(request: HttpRequest, pk: int) -> HttpResponse:
    """What the job is, and the shop's practice for it."""
    job = get_object_or_404(Job, pk=pk)
    document = parse(jobs.current_text(job))
    tables: dict[str, Any] = {key: document.get(key, {}) for key in _FACTS}
    problems: tuple[Problem, ...] = ()
    base = job.current
    if request.method == "POST":
        posted = typed_fields(request)
        base = whole(posted.get("on-revision", ""))
        typed = {key: table_of(model, posted, key) for key, model in _FACTS.items()}
        tables = {key: table for key, table in typed.items() if table or key in document}
        try:
            saved = jobs.save_facts(person_of(request), job, tables, base)
            if isinstance(saved, int):
                return redirect("job", job.pk)
            return show_conflict(request, job, "Facts and practice", saved)
        except JobProblems as wrong:
            problems = wrong.problems
    system = job_of(jobs.current_text(job)).system
    forms = [form_of(model, tables.get(key, {}), key, key) for key, model in _FACTS.items()]
    said = _facts_said(forms, problems, system)
    context = {"job": job, "forms": forms, "said": said, "base": base, "metric": system is System.MM}
    return render(request, "shop/job_facts.html", context, status=422 if problems else 200)


@require_POST
def look_facts(request: HttpRequest, pk: int) -> HttpResponse:
    """What is to be said at each field of facts and practice while it is typed."""
    job = get_object_or_404(Job, pk=pk)
    document, posted = parse(jobs.current_text(job)), typed_fields(request)
    typed = {key: table_of(model, posted, key) for key, model in _FACTS.items()}
    problems: tuple[Problem, ...] = ()
    try:
        read_document(tomlkit.dumps({**document, **{key: table for key, table in typed.items() if table}}))
    except JobProblems as wrong:
        problems = wrong.problems
    forms = [form_of(model, typed[key], key, key) for key, model in _FACTS.items()]
    system = job_of(jobs.current_text(job)).system
    return render(request, "shop/part_said.html", {"said": _facts_said(forms, problems, system).values()})


def _facts_said(forms: list[Section], problems: tuple[Problem, ...], system: System) -> dict[str, Said]:
    """What is said at each field of facts and practice."""
    said: dict[str, Said] = {}
    for form in forms:
        own = (one for one in problems if one.path.split(" → ")[0] == form.name)
        placed = (Problem(f"- → {problem.path}", problem.message) for problem in own)
        said |= {one.id: one for one in say_all(form, placed, (), system)}
    names = {form.name for form in forms}
    rest = [one.text() for one in problems if one.path.split(" → ")[0] not in names]
    return said | ({"form": Said("form", "error", " | ".join(rest))} if rest else {})


def show_conflict(request: HttpRequest, job: Job, what: str, found: jobs.Conflict) -> HttpResponse:
    """Two people changed the same: both side by side, key by key, with the choice."""
    base, theirs, mine = (_flat(table) for table in (found.base, found.theirs, found.mine))
    rows = [
        (key, base.get(key), theirs.get(key), mine.get(key))
        for key in dict.fromkeys((*theirs, *mine))
        if theirs.get(key) != mine.get(key)
    ]
    context = {
        "job": job, "rows": rows, "sides": (), "by": found.by, "base": found.number, "what": what,
        "mine": sorted(typed_fields(request).items()), "gone": found.theirs is None,
    }  # fmt: skip
    return render(request, "shop/conflict.html", context, status=409)


def _flat(table: dict[str, Any] | None) -> dict[str, Any]:
    """The keys of a table and of the tables in it, as `practice, tape`."""
    found: dict[str, Any] = {}
    for key, value in (table or {}).items():
        if isinstance(value, dict):
            found |= {f"{key}, {inner}": one for inner, one in _flat(value).items()}
        else:
            found[key] = value
    return found


def whole(text: str) -> int:
    """A number that a page put into its form; zero for what is none."""
    return int(text) if text.isascii() and text.isdigit() and len(text) < 10 else 0


@require_GET
def export(_request: HttpRequest, pk: int) -> HttpResponse:
    """The job document, as it can be brought in again."""
    job = get_object_or_404(Job, pk=pk)
    response = HttpResponse(jobs.current_text(job), content_type="application/toml; charset=utf-8")
    return _as_file(response, job, "toml")


def _as_file(response: HttpResponse, job: Job, ending: str, what: str = "") -> HttpResponse:
    """An answer to be saved under the job's name, of which only plain letters are kept."""
    kept = "".join(c if c.isascii() and c.isalnum() else "-" for c in job.name).strip("-")[:40] or "job"
    response["Content-Disposition"] = f'attachment; filename="{kept}{what}.{ending}"'
    return response


@require_GET
def print_pdf(_request: HttpRequest, pk: int, name: str) -> HttpResponse:
    """A print of the job as PDF."""
    job = get_object_or_404(Job, pk=pk)
    if name not in PRINTS:
        raise ValueProblem(f'there is no print "{name}": choose one of {", ".join(PRINTS)}')
    full = full_of(jobs.current_text(job))
    if not full.job.assemblies:
        raise ValueProblem("the job has no pieces yet: add one and print then")
    response = HttpResponse(printed(full, name), content_type="application/pdf")
    return _as_file(response, job, "pdf", f"-{name}")


@require_GET
def parts(_request: HttpRequest, pk: int) -> HttpResponse:
    """The parts of the job for a spreadsheet."""
    job = get_object_or_404(Job, pk=pk)
    response = HttpResponse(parts_csv(job_of(jobs.current_text(job))), content_type="text/csv; charset=utf-8")
    return _as_file(response, job, "csv", "-parts")


@require_GET
def labels(request: HttpRequest, pk: int) -> HttpResponse:
    """A label for every piece, with a QR code that opens its page."""
    job = get_object_or_404(Job, pk=pk)
    rows = []
    for piece in job.pieces.filter(active=True):
        code = qr_svg(request.build_absolute_uri(reverse("piece", args=(piece.pk,))))
        rows += [(piece, copy, code) for copy in piece.copies.filter(active=True).order_by("number")]
    return render(request, "shop/labels.html", {"job": job, "labels": rows})


@require_GET
def history(request: HttpRequest, pk: int) -> HttpResponse:
    """The log and the revisions of a job."""
    job = get_object_or_404(Job, pk=pk)
    revisions = job.revisions.order_by("-number").only("number", "what", "by", "at")[:200]
    context = {"job": job, "log": job.log.all()[:500], "revisions": revisions}
    return render(request, "shop/history.html", context)


@require_POST
def undo(request: HttpRequest, pk: int, number: int) -> HttpResponse:
    """Bring the whole job back to a revision."""
    job = get_object_or_404(Job, pk=pk)
    get_object_or_404(job.revisions, number=number)
    jobs.take_back(person_of(request), job, number)
    return HttpResponseRedirect(reverse("job-log", args=(pk,)))
