"""Cards, parts, marks and the demo as a person asks for them."""

import json
import re
from pathlib import Path

import ezdxf
import pypdfium2
from ezdxf import bbox

from typed import Run, broken


def test_cards_of_one_piece(run: Run, tmp_path: Path) -> None:
    code, out, err = run("cards", "mezzanine.toml", "--piece", "B1", "--out", "b1.pdf")
    assert (code, out.strip(), err) == (0, "written: b1.pdf", "")
    pages = pypdfium2.PdfDocument(tmp_path / "b1.pdf")
    text = "".join(page.get_textpage().get_text_bounded() for page in pages)
    assert "18'-5 3/4\"" in text
    assert "Bench card" in text
    assert "Piece drawing" in text


def test_cards_leave_out_a_piece_with_an_error_and_say_so(run: Run, tmp_path: Path) -> None:
    job = broken(tmp_path, ('down = "4"', 'down = "20"'))
    code, _, err = run("cards", job, "--piece", "B4")
    assert code == 1
    assert "error: B4 right web, row 1, hole at" in err
    assert "left out for their errors: B4" in err
    assert not (tmp_path / "broken-cards.pdf").exists()


def test_parts(run: Run) -> None:
    code, out, _ = run("parts", "mezzanine.toml")
    assert code == 0
    assert "W16X26" in out
    assert "18'-7 1/4\"" in out
    assert "field bolts 3/4 A325-N" in out


def test_parts_for_other_programs(run: Run) -> None:
    code, out, _ = run("parts", "mezzanine.toml", "--json")
    data = json.loads(out)
    assert code == 0
    first = data["parts"][0]
    assert (first["mark"], first["quantity"], first["length"]["in"]) == ("B1", 4, 223.25)


def test_marks(run: Run) -> None:
    code, out, _ = run("marks", "mezzanine.toml", "--piece", "C2")
    assert code == 0
    assert "C2: C12X20.7, 14'-2\", 2 wanted, opposite hand of C1" in out
    assert "Check the steel" in out


def test_marks_for_other_programs(run: Run) -> None:
    code, out, _ = run("marks", "mezzanine.toml", "--piece", "B1", "--json")
    (layout,) = json.loads(out)
    assert code == 0
    assert layout["main"]["steps"][0]["title"] == "Check the steel"
    assert any(mark["kind"] == "hole centre" for mark in layout["main"]["marks"])


def test_weights_of_a_metric_job_are_kilograms(run: Run) -> None:
    code, out, _ = run("parts", "metric.toml")
    assert code == 0
    assert "each bare, kg" in out
    assert "lb" not in out


def test_parts_and_marks_leave_out_a_piece_with_an_error(run: Run, tmp_path: Path) -> None:
    job = broken(tmp_path, ('down = "4"', 'down = "20"'))
    for command in ("parts", "marks"):
        code, out, err = run(command, job)
        assert code == 1
        assert err.endswith("left out for their errors: B4\n")
        assert "B1" in out
        assert "B4" not in out


def test_drawing_files_are_one_to_one(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("dxf", "mezzanine.toml", "--piece", "B1", "--out", "files")
    assert (code, out.strip()) == (0, "written: 3 files in files")
    first, second, angle = sorted(path.name for path in (tmp_path / "files").iterdir())
    assert (first, second) == ("B1-flat.dxf", "B1.dxf")
    assert re.fullmatch(r"a\d{4}-flat\.dxf", angle)
    flat = ezdxf.readfile(tmp_path / "files" / "B1-flat.dxf")  # type: ignore[attr-defined] # no types of its own
    assert flat.header["$INSUNITS"] == 1  # inches
    assert round(bbox.extents(flat.modelspace()).size.x, 6) == 223.25


NINE_ROWS = ("ends = { reaction = 44 }", "ends = { rows = 9 }")


def test_a_piece_with_an_error_of_the_frame_is_left_out_everywhere(run: Run, tmp_path: Path) -> None:
    job = broken(tmp_path, NINE_ROWS, "mezzanine-frame.toml")
    for command in (("parts", job), ("marks", job), ("marks", job, "--json")):
        code, out, err = run(*command)
        assert code == 1
        assert "error: G4 start: 9 rows are given, 6 rows fit in the clear height" in err
        assert err.endswith("left out for their errors: G4\n")
        assert "G3" in out
        assert "G4" not in out
    code, _, err = run("cards", job, "--piece", "G4")
    assert (code, err.endswith("left out for their errors: G4\n")) == (1, True)
    assert not (tmp_path / "broken-cards.pdf").exists()
    code, _, err = run("cards", job, "--piece", "B1", "--out", "b1.pdf")
    assert (code, err) == (0, "")
