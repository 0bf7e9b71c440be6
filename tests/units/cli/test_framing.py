"""The commands of a frame."""

import json
from pathlib import Path

import pypdfium2

from typed import Run, broken


def test_why(run: Run) -> None:
    code, out, _ = run("why", "mezzanine-frame.toml", "--piece", "G1")
    assert code == 0
    assert "because" in out
    _, out, _ = run("why", "mezzanine-frame.toml", "--piece", "B1")
    assert '  start (left end): setback 1/2"' in out
    code, out, _ = run("why", "mezzanine.toml")
    assert out.strip() == "every piece of this job is as drawn: its dimensions come from the job document"
    code, out, _ = run("why", "mezzanine.toml", "--piece", "B1")
    assert "as drawn: its dimensions come from the job document" in out
    code, out, _ = run("why", "mezzanine-frame.toml", "--piece", "G1", "--json")
    assert json.loads(out)["G1"][0]["decision"]


def test_the_sheets_of_a_frame(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("frame", "mezzanine-frame.toml", "--out", "frame.pdf")
    assert (code, out.strip()) == (0, "written: frame.pdf")
    pages = pypdfium2.PdfDocument(tmp_path / "frame.pdf")
    text = "".join(page.get_textpage().get_text_bounded() for page in pages)
    for title in ("Framing plan", "Elevation", "Column schedule", "Field bolts", "Reasons"):
        assert title in text


def test_a_job_without_a_frame_has_no_sheets_of_one(run: Run) -> None:
    code, _, err = run("frame", "mezzanine.toml")
    assert code == 2
    assert "no frame" in err


def test_sheets_and_reasons_of_a_frame_with_errors_say_so(run: Run, tmp_path: Path) -> None:
    job = broken(tmp_path, ("ends = { reaction = 44 }", "ends = { rows = 9 }"), "mezzanine-frame.toml")
    code, _, err = run("frame", job, "--out", "frame.pdf")
    assert code == 1
    assert "error: G4 start: 9 rows are given" in err
    assert err.endswith("shown with their errors, not to be built yet: G4\n")
    for page in pypdfium2.PdfDocument(tmp_path / "frame.pdf"):
        assert "Do not build: errors in" in page.get_textpage().get_text_bounded()
    code, out, err = run("why", job, "--piece", "G4")
    assert code == 1
    assert "as given; no reaction" in out
    assert err.endswith("shown with their errors, not to be built yet: G4\n")
    code, _, err = run("why", job, "--piece", "G3")
    assert (code, err) == (0, "")
