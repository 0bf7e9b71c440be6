"""What a piece is made from and how it is marked: cards, parts, marks, and the demo job."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Annotated

import typer
from rich.table import Table

from gageline.cli.opening import layouts, opened, show_findings, sound, write_sheet
from gageline.cli.screen import AsJson, JobFile, Mark, Out, aside, end_without, save, say, tracked, write
from gageline.exchange import json_text
from gageline.job import Job
from gageline.layout import PartLayout
from gageline.sheets import (
    FRAME_BOLTS,
    Scribe,
    bolt_rows,
    check_texts,
    face_name,
    packet,
    part_dxf,
    piece_dxf,
)
from gageline.takeoff import bill_of_piece, bolts_of_job, parts_of_job, weight_text, weight_unit
from gageline.units import counted


def cards(job_file: JobFile, piece: Mark = None, out: Out = None) -> None:
    """Bench cards, piece drawings, fitting templates and the parts list, as one PDF.

    Each card has the unfolded stick with every mark to strike and the numbered steps. What the rules of
    the trade find is printed; a piece with an error is left out, and the exit code is 1.
    """
    full = opened(job_file, piece)
    show_findings(texts := check_texts(full.job))
    if texts:
        raise typer.Exit(2)
    result = sound(full)
    if result.job.assemblies:
        laid = layouts(result.job)
        with aside.status("drawing the sheets"):
            sheet = packet(result.job, laid, full.detailed)
        write_sheet(sheet, out, job_file, "cards")
    end_without(result.wrong)


def dxf(
    job_file: JobFile,
    piece: Mark = None,
    out: Annotated[Path, typer.Option("--out", "-o", help="folder to write to")] = Path("dxf"),
) -> None:
    """Every piece and part as a DXF file one to one, in inches or millimetres as the job.

    PIECE.dxf has the views of the piece as its drawing shows them, PIECE-flat.dxf its steel folded open
    flat; each fitting has its own -flat file. A piece with an error is left out, and the exit code is 1.
    """
    result = sound(opened(job_file, piece))
    job = result.job
    drawings: dict[str, str] = {}
    for assembly in tracked(job.assemblies, "drawing"):
        drawings[assembly.mark] = piece_dxf(job, assembly)
        for part in (assembly.main, *(fitting.part for fitting in assembly.fittings)):
            if f"{part.mark}-flat" not in drawings:
                drawings[f"{part.mark}-flat"] = part_dxf(part, job.system)
    for name, text in drawings.items():
        save(out / f"{name}.dxf", text.encode())
    say.print(f"written: {counted(len(drawings), 'file')} in {out}", markup=False, soft_wrap=True)
    end_without(result.wrong)


def parts(job_file: JobFile, as_json: AsJson = False) -> None:
    """The parts list: quantities, sections, lengths, weights, bolts.

    A piece with an error is left out and said, and the exit code is 1.
    """
    full = opened(job_file)
    result = sound(full)
    job = result.job
    bills = tuple(bill_of_piece(assembly) for assembly in tracked(job.assemblies, "weighing"))
    lines, bolts = parts_of_job(bills), bolts_of_job(job, full.detailed)
    if as_json:
        print(json_text({"parts": lines, "bolts": bolts, "pieces": bills}, job.system))
        end_without(result.wrong)
        return
    unit, scribe = weight_unit(job.system), Scribe.of(job)
    table = Table("mark", "qty", "section", "length", "grade", f"each bare, {unit}", f"all bare, {unit}")
    for line in lines:
        length = scribe.tell(line.length)
        weights = weight_text(line.weight, job.system), weight_text(line.total_weight, job.system)
        table.add_row(line.mark, str(line.quantity), line.designation, length, line.grade, *weights)
    total = sum(line.total_weight for line in lines)
    table.add_section()
    table.add_row("total", "", "", "", "", "", weight_text(total, job.system, 0))
    say.print(table)
    say.print("bare: the part alone as cut; the parts list of the cards weighs pieces with their fittings")
    for row in bolt_rows(job, full.detailed):
        grip = f", grip {row.grip}" if row.grip else ""
        length = f", length {row.length}" if row.length else ""
        bolts_text = counted(row.quantity, f"{'field' if row.field else 'shop'} bolt")
        say.print(f"{bolts_text} {row.bolt} {row.grade}{grip}{length}", markup=False)
    if job.frame is not None:
        say.print(FRAME_BOLTS, markup=False)
    end_without(result.wrong)


def marks(job_file: JobFile, piece: Mark = None, as_json: AsJson = False) -> None:
    """What to mark on each piece, step by step, with the tape readings.

    A piece with an error is left out and said, and the exit code is 1.
    """
    result = sound(opened(job_file, piece))
    job = result.job
    laid = layouts(job)
    if as_json:
        print(json_text(laid, job.system))
        end_without(result.wrong)
        return
    for assembly, layout in zip(job.assemblies, laid, strict=True):
        hand = f", opposite hand of {assembly.hand_of}" if assembly.hand_of else ""
        _show_steps(layout.main, f"{assembly.quantity} wanted{hand}", job)
        for fitting in layout.fittings:
            _show_steps(fitting, f"{fitting.quantity} for each {assembly.mark}", job)
    end_without(result.wrong)


def _show_steps(laid: PartLayout, wanted: str, job: Job) -> None:
    """One part's steps, with the readings to strike and the check after each."""
    part = laid.part
    head = f"{part.mark}: {part.stock.designation}, {Scribe.of(job, part).tell(part.length)}, {wanted}"
    say.print(head, style="bold", markup=False, soft_wrap=True)
    for step in laid.steps:
        name = face_name(part.stock.profile, step.face) if step.face else ""
        face = f" [{name[:1].lower()}{name[1:]}]" if name else ""
        say.print(f"{step.number:>3}. {step.title}{face}: {step.text}", markup=False, soft_wrap=True)
        if step.readings:
            readings = ", ".join(reading.text for reading in step.readings)
            say.print(f"     from the {step.from_}: {readings}", markup=False, soft_wrap=True)
        if step.check:
            say.print(f"     check: {step.check}", markup=False, soft_wrap=True, style="dim")


def demo(out: Annotated[Path, typer.Option("--out", "-o", help="folder to write to")] = Path("out")) -> None:
    """The demo jobs, an invented mezzanine: their documents, the rack's, and the PDF of the cards.

    The mezzanine as drawn, the same kind of floor as a frame to be detailed, a metric job, and the rack.
    """
    for name in ("mezzanine.toml", "mezzanine-frame.toml", "metric.toml", "rack.toml"):
        write(out / name, (files("gageline") / "demo" / name).read_bytes())
    cards(out / "mezzanine.toml", None, out / "mezzanine-cards.pdf")
