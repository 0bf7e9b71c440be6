"""What a packet holds, and what of a job goes into it."""

from __future__ import annotations

import re
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pypdfium2
import pytest

from frames import bays
from gageline.detail import Detailed, open_full, read_full
from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.layout import lay_out
from gageline.sheets import Sheet, field_bolt_list, frame_packet, framing_plans, packet, to_pdf
from pages import page_texts

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


@pytest.mark.parametrize("units", ["ft-in", "mm"])
def test_equal_pieces_and_opposite_hands_have_one_mark_on_every_sheet(units: str) -> None:
    """Two beams askew to the left and one to the right between the same girders; one mark is given."""
    text = bays([480], [240], 0, units=units)
    for name, start, end, more in (
        ("B1", 96, 132, ""), ("B2", 192, 228, ""), ("B3", 384, 348, 'mark = "K7"\n'),
    ):  # fmt: skip
        text += f'[[frame.member]]\nname = "{name}"\nstock = "W14x22"\ntop = "L1"\n{more}'
        text += f'from = {{ on = "GL11A", at = "{start} in" }}\nto = {{ on = "GL11B", at = "{end} in" }}\n'
    full = read_full(text)
    pieces = {piece.mark: (piece.quantity, piece.hand_of) for piece in full.job.assemblies}
    assert pieces["K7"] == (1, None)
    assert pieces["B1"] == (2, "K7")
    job = replace(full.job, assemblies=(full.job.piece("B1"),))
    (layout,) = (lay_out(piece, job.practice, job.system) for piece in job.assemblies)
    assert "Opposite hand of K7" in page_texts(packet(job, (layout,), full.detailed))[0]
    plan = [text for page in page_texts(framing_plans(full)) for text in page]
    assert plan.count("B1") == 2
    assert plan.count("K7") == 1
    assert any("place B2" in text for text in plan)
    bolts = [text for page in page_texts(field_bolt_list(full)) for text in page]
    assert bolts[bolts.index("left end, place B2") - 1] == "B1"


def test_a_mark_stays_when_an_unrelated_member_goes() -> None:
    text = bays([240, 240], [240], 2)
    before = {one.member: one.mark for one in _detailed(text).placed}
    cut = text.index('[[frame.member]]\nname = "BL12A2"')
    after = {one.member: one.mark for one in _detailed(text[:cut]).placed}
    assert set(before) - set(after) == {"BL12A2"}
    alone = [name for name in after if name.startswith("B")]
    assert {name: after[name] for name in alone} == {name: before[name] for name in alone}


def _detailed(text: str) -> Detailed:
    detailed = read_full(text).detailed
    assert detailed is not None
    return detailed
