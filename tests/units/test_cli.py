"""The commands as a person types them: what they print, write and refuse."""

import json
import sys
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pypdfium2
import pytest

from gageline.cli import main

Run = Callable[..., tuple[int, str, str]]
DEMO = files("gageline") / "demo"


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Run:
    """Run a command in an empty folder that holds the demo jobs; its exit code, output and refusals."""
    for name in ("mezzanine.toml", "mezzanine-frame.toml", "rack.toml"):
        (tmp_path / name).write_bytes((DEMO / name).read_bytes())
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "200")

    def work(*arguments: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["gageline", *arguments])
        with pytest.raises(SystemExit) as ended:
            main()
        printed = capsys.readouterr()
        return int(ended.value.code or 0), printed.out, printed.err

    return work


def broken(tmp_path: Path, change: tuple[str, str]) -> str:
    text = (tmp_path / "mezzanine.toml").read_text("utf8").replace(*change, 1)
    (tmp_path / "broken.toml").write_text(text, "utf8")
    return "broken.toml"


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
    assert "error: B4 right web, hole at" in err
    assert "left out for their errors: B4" in err
    assert not (tmp_path / "broken-cards.pdf").exists()


def test_a_place_that_cannot_be_written_is_said(run: Run, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    code, _, err = run("cards", "mezzanine.toml", "--piece", "B1", "--out", "file/b1.pdf")
    assert code == 2
    assert "cannot be written" in err
    assert "choose another place with --out" in err


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


def test_an_unknown_piece_is_refused_with_the_known(run: Run) -> None:
    code, _, err = run("marks", "mezzanine.toml", "--piece", "Z9")
    assert (code, err.strip()[:49]) == (2, 'there is no piece "Z9": the job has B1, B2, B3, G')


def test_verify_ends_with_a_count(run: Run) -> None:
    code, out, _ = run("verify", "mezzanine.toml")
    assert code == 0
    assert "14 pieces: 0 errors, 0 warnings, 0 notes" in out


def test_verify_fails_on_an_error(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("verify", broken(tmp_path, ('down = "4"', 'down = "20"')))
    assert code == 1
    assert "error: B4 right web, hole at" in out


def test_every_problem_of_a_document_is_said_with_its_line(run: Run, tmp_path: Path) -> None:
    job = broken(tmp_path, ('stock = "W16x26"\nlength', 'stock = "W16x27"\nlenght'))
    code, out, err = run("verify", job)
    assert (code, out) == (2, "")
    assert 'did you mean "length"?' in err
    assert "W16X26" in err
    assert err.count("line ") >= 2


def test_a_missing_file_is_said(run: Run) -> None:
    code, _, err = run("parts", "nothing.toml")
    assert (code, err.strip()) == (2, "nothing.toml: there is no such file: check the name")


def test_why(run: Run) -> None:
    code, out, _ = run("why", "mezzanine-frame.toml", "--piece", "G1")
    assert code == 0
    assert "because" in out
    code, out, _ = run("why", "mezzanine.toml")
    assert out.strip() == "every piece of this job is as drawn: its dimensions come from the job document"
    code, out, _ = run("why", "mezzanine.toml", "--piece", "B1")
    assert "as drawn: its dimensions come from the job document" in out
    code, out, _ = run("why", "mezzanine-frame.toml", "--piece", "G1", "--json")
    assert json.loads(out)["G1"][0]["decision"]


def test_section(run: Run) -> None:
    code, out, _ = run("section", "w16", "x", "26")
    assert code == 0
    assert "W16X26" in out
    assert "15.7" in out
    code, out, _ = run("section", "W16x26", "--json")
    assert json.loads(out)["d"]["value"]
    code, _, err = run("section", "W16x27")
    assert code == 2
    assert "W16X26" in err


@pytest.mark.parametrize(
    ("terms", "answer"),
    [
        (("18-7 1/4", "+", "3/8"), "18'-7 5/8\""),
        (("5'", "-", "6"), "4'-6\""),
        (("3", "x", "5"), "1'-3\""),
        (("1'", "/", "8"), '1 1/2"'),
        (("7/8",), '7/8"'),
    ],
)
def test_length(run: Run, terms: tuple[str, ...], answer: str) -> None:
    code, out, _ = run("length", *terms)
    assert code == 0
    assert out.startswith(f"{answer}  =  ")


def test_a_length_that_fractions_cannot_say_is_given_exactly(run: Run) -> None:
    _, out, _ = run("length", "1mm")
    assert "exactly 1 mm; the fractions above are rounded to 1/64" in out


@pytest.mark.parametrize(
    ("terms", "message"),
    [
        (("5", "+"), '"+" has nothing after it'),
        (("5", "?", "6"), '"?" is no sign between lengths: use +, -, x or /'),
        (("5", "x", "y"), '"y" is not a number to multiply or divide by'),
        (("5", "/", "0"), '"0" is not a number to multiply or divide by'),
        (("five",), '"five" is not a length'),
    ],
)
def test_a_sum_that_makes_no_sense_is_refused(run: Run, terms: tuple[str, ...], message: str) -> None:
    code, _, err = run("length", *terms)
    assert code == 2
    assert message in err


def test_the_cutting_plan(run: Run, tmp_path: Path) -> None:
    code, out, err = run("cut", "mezzanine.toml", "--rack", "rack.toml", "--out", "cut.pdf")
    assert (code, err) == (0, "")
    assert "no plan can cost less than" in out
    text = "".join(
        page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(tmp_path / "cut.pdf")
    )
    assert "To order" in text
    assert "7K2214" in text


def test_the_cutting_plan_as_json_traces_every_piece_to_its_heat(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("cut", "mezzanine.toml", "--rack", "rack.toml", "--json")
    assert code == 0
    facts = json.loads(out)
    assert facts["bound"] <= facts["cents"]
    assert any(trace["piece"] == "B1" and trace["heat"] == "7K2214" for trace in facts["traces"])
    assert not list(tmp_path.glob("*.pdf"))


def test_steel_that_the_rack_has_not_is_named(run: Run, tmp_path: Path) -> None:
    rack = (tmp_path / "rack.toml").read_text("utf8").replace('"W16x31"', '"W16x36"')
    (tmp_path / "rack.toml").write_text(rack, "utf8")
    code, _, err = run("cut", "mezzanine.toml", "--rack", "rack.toml")
    assert code == 2
    assert 'W16X31 A992: piece "B2"' in err
    assert "there is no stick of this steel: order some, or add what is on the rack" in err


def test_the_version(run: Run) -> None:
    code, out, _ = run("--version")
    assert (code, out.strip()) == (0, "0.1.0")


def test_help_is_short_and_names_every_command(run: Run) -> None:
    code, out, _ = run("--help")
    assert code == 0
    for command in ("cards", "parts", "marks", "verify", "why", "cut", "section", "length", "demo"):
        assert command in out
