"""The commands: thin, each a call into the rooms with what a person typed."""

from __future__ import annotations

import signal
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from fractions import Fraction
from importlib.metadata import version
from importlib.resources import files
from pathlib import Path
from typing import Annotated, TypeVar

import typer
from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn, track
from rich.table import Table

from gageline.detail import FullJob, open_full
from gageline.errors import GagelineError, ValueProblem
from gageline.exchange import json_text
from gageline.job import Job, check_job
from gageline.layout import Layout, PartLayout, lay_out
from gageline.part import Finding, Severity, check_assembly
from gageline.sheets import (
    Sheet,
    bench_cards,
    check_sheet,
    cutting_sheet,
    fitting_templates,
    parts_list,
    piece_drawings,
    to_pdf,
)
from gageline.shop import backup as back_up
from gageline.shop import restore as put_back
from gageline.shop import serve as serve_shop
from gageline.steel import facts, find
from gageline.stock import Effort, ShopPlan, Steel, answer, ask, open_rack, traces, weigh_plan
from gageline.stock import Progress as Search
from gageline.strength import Method, check_strength, report_of, summary_of
from gageline.takeoff import bill_of_piece, bolts_of_job, parts_of_job
from gageline.units import Length, System, exact_text, feet_inches, inches_text, millimetres, parse_length

app = typer.Typer(
    help="From the drawing of a beam to the marks on the steel.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)
say = Console(highlight=False)
aside = Console(stderr=True, highlight=False)

Item = TypeVar("Item")
JobFile = Annotated[Path, typer.Argument(help="the job document, a .toml file", metavar="JOB")]
AsJson = Annotated[bool, typer.Option("--json", help="the full result for other programs")]
Out = Annotated[Path | None, typer.Option("--out", "-o", help="where to write", show_default=False)]
DesignMethod = Annotated[
    str | None, typer.Option("--method", help="lrfd or asd; what the job says when left out")
]
Mark = Annotated[str | None, typer.Option("--piece", "-p", help="only the piece of this mark")]


def main() -> None:
    """Run the command line; a refusal is said in plain words with exit code 2."""
    try:
        app()
    except GagelineError as refusal:
        aside.print(str(refusal), markup=False, soft_wrap=True, style="red")
        sys.exit(2)
    except KeyboardInterrupt:
        aside.print("stopped")
        sys.exit(130)


def _tracked(items: tuple[Item, ...], what: str) -> Iterable[Item]:
    """The items one by one, with a line of progress where there is a screen to show it."""
    return track(items, description=what, console=aside, transient=True, disable=not aside.is_terminal)


def _opened(job_file: Path) -> FullJob:
    """The job of a file, its frame detailed, with a line of progress where there is a screen."""
    columns = (TextColumn("{task.description}"), BarColumn(), TextColumn("{task.completed}/{task.total}"))
    with Progress(*columns, console=aside, transient=True, disable=not aside.is_terminal) as shown:
        task = shown.add_task("detailing", total=None)
        return open_full(job_file, lambda done, total: shown.update(task, completed=done, total=total))


def _write(path: Path, content: bytes) -> None:
    """Write a file, and say where it is."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    except OSError as refused:
        reason = (refused.strerror or "it cannot be written").lower()
        raise GagelineError(
            f"{path} cannot be written ({reason}): choose another place with --out"
        ) from refused
    say.print(f"written: {path}", markup=False, soft_wrap=True)


def _chosen(job: Job, mark: str | None) -> Job:
    """The whole job, or one piece of it."""
    return job if mark is None else replace(job, assemblies=(job.piece(mark),))


def _show_findings(findings: tuple[Finding, ...]) -> None:
    styles = {Severity.ERROR: "red", Severity.WARNING: "yellow", Severity.NOTE: "dim"}
    for finding in findings:
        aside.print(finding.text(), markup=False, soft_wrap=True, style=styles[finding.severity])


def _packet(job: Job) -> Sheet:
    """Everything that is printed for a job, in the order it is used."""
    sheets = [bench_cards(job, _layouts(job)), piece_drawings(job)]
    if any(assembly.fittings for assembly in job.assemblies):
        sheets.append(fitting_templates(job))
    sheets.append(parts_list(job))
    return Sheet(tuple(page for sheet in sheets for page in sheet.pages), job.facts.name)


def _sound(job: Job) -> tuple[Job, tuple[str, ...]]:
    """The job without the pieces that have errors, and the marks of those, after saying what is wrong."""
    wrong = []
    for assembly in job.assemblies:
        findings = check_assembly(assembly, job.system)
        _show_findings(findings)
        if any(finding.severity is Severity.ERROR for finding in findings):
            wrong.append(assembly.mark)
    return replace(job, assemblies=tuple(a for a in job.assemblies if a.mark not in wrong)), tuple(wrong)


def _layouts(job: Job) -> tuple[Layout, ...]:
    pieces = _tracked(job.assemblies, "laying out")
    return tuple(lay_out(assembly, job.practice, job.system) for assembly in pieces)


@app.command()
def cards(job_file: JobFile, piece: Mark = None, out: Out = None) -> None:
    """Bench cards, piece drawings, fitting templates and the parts list, as one PDF.

    Each card has the unfolded stick with every mark to strike and the numbered steps. What the rules of
    the trade find is printed; a piece with an error is left out, and the exit code is 1.
    """
    full = _opened(job_file)
    _show_findings(full.findings)
    job, wrong = _sound(_chosen(full.job, piece))
    if job.assemblies:
        _write(out or Path(f"{job_file.stem}-cards.pdf"), to_pdf(_packet(job)))
    if wrong:
        aside.print(
            f"left out for their errors: {', '.join(wrong)}", markup=False, soft_wrap=True, style="red"
        )
        raise typer.Exit(1)


@app.command()
def parts(job_file: JobFile, as_json: AsJson = False) -> None:
    """The parts list: quantities, sections, lengths, weights, bolts."""
    job = _opened(job_file).job
    bills = tuple(bill_of_piece(assembly) for assembly in _tracked(job.assemblies, "weighing"))
    lines, bolts = parts_of_job(bills), bolts_of_job(job)
    if as_json:
        print(json_text({"parts": lines, "bolts": bolts, "pieces": bills}, job.system))
        return
    table = Table("mark", "qty", "section", "length", "grade", "each lb", "total lb")
    for line in lines:
        length = _written(line.length, job.system)
        weights = f"{line.weight:.1f}", f"{line.total_weight:.1f}"
        table.add_row(line.mark, str(line.quantity), line.designation, length, line.grade, *weights)
    total = sum(line.total_weight for line in lines)
    table.add_section()
    table.add_row("total", "", "", "", "", "", f"{total:.0f}")
    say.print(table)
    for bolt_line in bolts:
        grip = f", grip {_written(bolt_line.grip, job.system)}" if bolt_line.grip else ""
        where = "field" if bolt_line.field else "shop"
        say.print(
            f"{bolt_line.quantity} {where} bolts {bolt_line.bolt} {bolt_line.grade}{grip}", markup=False
        )


def _written(length: Length, system: System) -> str:
    return feet_inches(length, 64) if system is System.FT_IN else millimetres(length)


@app.command()
def marks(job_file: JobFile, piece: Mark = None, as_json: AsJson = False) -> None:
    """What to mark on each piece, step by step, with the tape readings."""
    job = _chosen(_opened(job_file).job, piece)
    layouts = _layouts(job)
    if as_json:
        print(json_text(layouts, job.system))
        return
    for assembly, layout in zip(job.assemblies, layouts, strict=True):
        hand = f", opposite hand of {assembly.hand_of}" if assembly.hand_of else ""
        _show_steps(layout.main, f"{assembly.quantity} wanted{hand}", job.system)
        for fitting in layout.fittings:
            _show_steps(fitting, f"{fitting.quantity} for each {assembly.mark}", job.system)


def _show_steps(laid: PartLayout, wanted: str, system: System) -> None:
    """One part's steps, with the readings to strike and the check after each."""
    part = laid.part
    head = f"{part.mark}: {part.stock.designation}, {_written(part.length, system)}, {wanted}"
    say.print(head, style="bold", markup=False, soft_wrap=True)
    for step in laid.steps:
        face = f" [{step.face} face]" if step.face else ""
        say.print(f"{step.number:>3}. {step.title}{face}: {step.text}", markup=False, soft_wrap=True)
        if step.readings:
            readings = ", ".join(reading.text for reading in step.readings)
            say.print(f"     from the {step.from_}: {readings}", markup=False, soft_wrap=True)
        if step.check:
            say.print(f"     check: {step.check}", markup=False, soft_wrap=True, style="dim")


@app.command()
def verify(
    job_file: JobFile,
    working: Annotated[bool, typer.Option("--working", help="the full calculation of every check")] = False,
    method: DesignMethod = None,
) -> None:
    """The problems of a job and the strength of its connections; exit code 1 when any is an error.

    Exit code 1 also where a connection or a beam is not strong enough for a load that the job gives.
    """
    full = _opened(job_file)
    job, findings = full.job, (*full.findings, *check_job(full.job))
    for finding in findings:
        say.print(finding.text(), markup=False, soft_wrap=True)
    strength = check_strength(job, _method(method), full.detailed)
    for line in report_of(strength, job.system, working=working):
        say.print(line, markup=False, soft_wrap=True)
    counts = [f"{sum(f.severity is kind for f in findings)} {kind}s" for kind in Severity]
    line = f"{len(job.assemblies)} pieces: {', '.join(counts)}; {summary_of(strength)}"
    say.print(line, markup=False, soft_wrap=True)
    if strength.failed or any(finding.severity is Severity.ERROR for finding in findings):
        raise typer.Exit(1)


@app.command()
def checks(job_file: JobFile, method: DesignMethod = None, out: Out = None) -> None:
    """The check sheet: every limit state of every connection with its working, as a PDF to sign."""
    full = _opened(job_file)
    job = full.job
    strength = check_strength(job, _method(method), full.detailed)
    _write(out or Path(f"{job_file.stem}-checks.pdf"), to_pdf(check_sheet(job, strength)))
    say.print(summary_of(strength), markup=False, soft_wrap=True)


def _method(text: str | None) -> Method | None:
    """The design method that was typed."""
    if text is None:
        return None
    if text.upper() not in Method.__members__:
        raise ValueProblem(f'method "{text}" is neither lrfd nor asd: give one of them')
    return Method[text.upper()]


@app.command()
def why(job_file: JobFile, piece: Mark = None, as_json: AsJson = False) -> None:
    """Why each dimension of a piece of the frame is what it is: the rule, the numbers, the source."""
    full = _opened(job_file)
    reasons = full.detailed.reasons if full.detailed else {}
    marks = [full.job.piece(piece).mark] if piece else list(reasons)
    if as_json:
        print(json_text({mark: reasons.get(mark, ()) for mark in marks}, full.job.system))
        return
    for mark in marks:
        say.print(mark, style="bold", markup=False)
        for reason in reasons.get(mark, ()):
            say.print(f"  {reason.text()}", markup=False, soft_wrap=True)
        if mark not in reasons:
            say.print("  as drawn: its dimensions come from the job document", markup=False)
    if not marks:
        say.print("every piece of this job is as drawn: its dimensions come from the job document")


@app.command()
def section(
    designation: Annotated[
        list[str], typer.Argument(help="W16x26, HSS6x6x3/8, L4x3x1/4, IPE 300, PL1/2x8 ...")
    ],
    as_json: AsJson = False,
) -> None:
    """What the tables say of a section or plate."""
    stock = find(" ".join(designation))
    if as_json:
        print(json_text({fact.name: {"value": fact.value, "unit": fact.unit} for fact in facts(stock)}))
        return
    table = Table("", stock.designation, "unit")
    for fact in facts(stock):
        table.add_row(fact.name, fact.value, fact.unit)
    say.print(table)


@app.command(context_settings={"ignore_unknown_options": True})
def length(
    terms: Annotated[
        list[str],
        typer.Argument(help='lengths with + and - between, "18-7 1/4" + "3/8"; x and / by a number'),
    ],
) -> None:
    """Add, subtract, multiply and divide lengths as the trade writes them."""
    total = _sum(terms)
    texts = (
        feet_inches(total, 64),
        inches_text(total, 64),
        f"{total.inches:.6g} in",
        f"{millimetres(total, 2)} mm",
    )
    say.print("  =  ".join(texts), markup=False)
    if parse_length(texts[0]) != total:
        say.print(f"exactly {exact_text(total)}; the fractions above are rounded to 1/64", markup=False)


def _sum(terms: list[str]) -> Length:
    """The value of a chain of terms, worked from left to right."""
    total = parse_length(terms[0])
    if len(terms) % 2 == 0:
        raise ValueProblem(f'"{terms[-1]}" has nothing after it: write a length, or a number after x and /')
    for sign, term in zip(terms[1::2], terms[2::2], strict=True):
        match sign:
            case "+":
                total += parse_length(term)
            case "-":
                total -= parse_length(term)
            case "x" | "×" | "*" | "/":
                total = total * (_factor(term) if sign != "/" else 1 / _factor(term))
            case _:
                raise ValueProblem(f'"{sign}" is no sign between lengths: use +, -, x or /')
    return total


def _factor(text: str) -> Fraction:
    try:
        factor = Fraction(text)
    except (ValueError, ZeroDivisionError):
        factor = Fraction(0)
    if not factor:
        raise ValueProblem(f'"{text}" is not a number to multiply or divide by: write one like 3 or 1/2')
    return factor


@app.command()
def cut(
    job_files: Annotated[list[Path], typer.Argument(help="one job document or more", metavar="JOB...")],
    rack: Annotated[Path, typer.Option("--rack", "-r", help="the rack document: saw, sticks, prices")],
    out: Out = None,
    as_json: AsJson = False,
    seconds: Annotated[
        float, typer.Option("--seconds", min=0, help="the most that one section may take")
    ] = 60.0,
) -> None:
    """The cutting plan: what to order, which piece from which stick, as sheets to tick off.

    The cost is proven least, or said with the bound below it. Ctrl-C ends the search with the best plan.
    """
    jobs = tuple(_opened(job_file).job for job_file in job_files)
    question = ask(jobs, open_rack(rack))
    with _search(seconds) as effort:
        plan = answer(question, effort)
    if as_json:
        print(json_text(_plan_facts(plan), question.rack.system))
    else:
        _show_plan(plan, jobs[0].system)
    if out or not as_json:
        _write(out or Path(f"{job_files[0].stem}-cutting.pdf"), to_pdf(cutting_sheet(jobs, plan)))


@contextmanager
def _search(seconds: float) -> Iterator[Effort]:
    """A search that shows bound and best on a screen, and that Ctrl-C ends with the best plan kept."""
    asked: list[int] = []

    def stop(number: int, _frame: object) -> None:
        asked.append(number)
        signal.signal(signal.SIGINT, before)  # a second Ctrl-C ends the program

    before = signal.signal(signal.SIGINT, stop)
    try:
        column = TextColumn("{task.description}", markup=False)
        with Progress(column, console=aside, transient=True, disable=not aside.is_terminal) as shown:
            task = shown.add_task("planning cuts", total=None)

            def tell(steel: Steel, search: Search) -> None:
                best = "no plan yet" if search.best is None else f"best {search.best / 100:,.2f}"
                bound = f"none below {search.bound / 100:,.2f}"
                shown.update(task, description=f"{steel}: {best}, {bound}, {search.seconds:.0f} s")

            yield Effort(seconds, lambda: bool(asked), tell)
    finally:
        signal.signal(signal.SIGINT, before)
    if asked:
        aside.print("stopped: this is the best plan so far")


def _plan_facts(plan: ShopPlan) -> dict[str, object]:
    """A cutting plan for other programs: every stick, the order, and piece to stick to heat."""
    return {
        "cents": plan.cents,
        "bound": plan.bound,
        "proven": plan.cents == plan.bound,
        "weights": weigh_plan(plan),
        "order": [{"offer": offer, "sticks": count} for offer, count in plan.cuts.order()],
        "sections": plan.cuts.sections,
        "plates": plan.plates,
        "traces": traces(plan),
    }


def _show_plan(plan: ShopPlan, system: System) -> None:
    table = Table("steel", "sticks", "set-ups", "yield", "cost", "none below")
    for section in plan.cuts.sections:
        counts = str(len(section.sticks)), str(section.setups), f"{100 * section.yield_:.1f} %"
        table.add_row(str(section.steel), *counts, _amount(section.cents), _amount(section.bound))
    for asked, plates in zip(plan.question.plates, plan.plates, strict=True):
        counts = f"{len(plates.sheets)} sheets", "", f"{100 * plates.yield_:.1f} %"
        table.add_row(str(asked.steel), *counts, _amount(plates.cents), _amount(plates.bound))
    table.add_section()
    table.add_row("total", "", "", "", _amount(plan.cents), _amount(plan.bound))
    say.print(table)
    for offer, count in plan.cuts.order():
        say.print(f"order {count} {offer.steel} {_written(offer.length, system)}", markup=False)
    gap = plan.cents - plan.bound
    say.print(f"no plan can cost less than {_amount(plan.bound)}, {_amount(gap)} below this one")


def _amount(cents: int) -> str:
    return f"{cents / 100:,.2f}"


@app.command()
def demo(out: Annotated[Path, typer.Option("--out", "-o", help="folder to write to")] = Path("out")) -> None:
    """The demo job, an invented mezzanine: writes its document, the rack's and the PDF of the cards."""
    source = files("gageline") / "demo"
    job_file = out / "mezzanine.toml"
    _write(job_file, (source / "mezzanine.toml").read_bytes())
    _write(out / "rack.toml", (source / "rack.toml").read_bytes())
    cards(job_file, None, out / "mezzanine-cards.pdf")


@app.command()
def serve(
    lan: Annotated[
        bool, typer.Option("--lan", help="let the shop's network in, not this machine alone")
    ] = False,
    port: Annotated[int, typer.Option("--port", min=1, max=65535, help="of the server")] = 8700,
) -> None:
    """The shop in the browser, on this machine; the first visit makes the owner."""
    serve_shop(lan=lan, port=port, say=lambda text: print(text, flush=True))


@app.command()
def backup(
    file: Annotated[Path, typer.Argument(help="to write", metavar="FILE")],
) -> None:
    """Everything the shop keeps, in one file; works while the shop runs."""
    say.print(f"{back_up(file)} records are in {file}", markup=False, soft_wrap=True)


@app.command()
def restore(
    file: Annotated[Path, typer.Argument(help="that backup wrote", metavar="FILE")],
) -> None:
    """The shop as it was in a backup; what it keeps now is replaced, and everybody signs in again."""
    say.print(f"{put_back(file)} records were put back from {file}", markup=False, soft_wrap=True)


@app.callback(invoke_without_command=True)
def _version(
    show: Annotated[
        bool, typer.Option("--version", help="the version, and nothing else", is_eager=True)
    ] = False,
) -> None:
    if show:
        print(version("gageline"))
        raise typer.Exit
