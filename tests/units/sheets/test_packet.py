"""What a packet holds, and what of a job goes into it."""

from __future__ import annotations

import re
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pypdfium2
import pytest

from gageline.detail import open_full
from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.layout import lay_out
from gageline.sheets import Sheet, frame_packet, packet, to_pdf

DEMO = Path(str(files("gageline"))) / "demo"


def words(sheet: Sheet) -> str:
    return "".join(page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(to_pdf(sheet)))


def only(mark: str) -> Job:
    job = open_full(DEMO / "mezzanine.toml").job
    return replace(job, assemblies=(job.piece(mark),))


def printed(job: Job) -> str:
    return words(packet(job, tuple(lay_out(piece, job.practice, job.system) for piece in job.assemblies)))


def test_a_packet_goes_from_the_cards_to_the_parts_list() -> None:
    text = printed(only("B1"))
    places = [text.index(title) for title in ("Bench card", "Piece drawing", "ull size", "Parts list")]
    assert places == sorted(places)


def test_a_piece_without_fittings_needs_no_template() -> None:
    bare = only("B1")
    bare = replace(bare, assemblies=tuple(replace(piece, fittings=()) for piece in bare.assemblies))
    assert "ull size" not in printed(bare)


def test_a_job_without_a_frame_has_no_sheets_of_one() -> None:
    with pytest.raises(ValueProblem, match="no frame"):
        frame_packet(open_full(DEMO / "mezzanine.toml"))


def test_a_mark_never_runs_into_a_length() -> None:
    """`a1 1/2"` is read as a1 and a half: where a mark stands in a sentence, no figure follows it."""
    for name in ("mezzanine.toml", "mezzanine-frame.toml", "metric.toml"):
        job = open_full(DEMO / name).job
        for piece in job.assemblies:
            marks = {piece.mark, *(fitting.part.mark for fitting in piece.fittings)}
            merged = re.compile(rf"(?<![\w.-])(?:{'|'.join(map(re.escape, sorted(marks)))}) [\d.]")
            layout = lay_out(piece, job.practice, job.system)
            for laid in (layout.main, *layout.fittings):
                for step in laid.steps:
                    for text in (step.title, step.text, step.check):
                        assert not merged.search(text), text
