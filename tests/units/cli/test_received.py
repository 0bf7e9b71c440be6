"""The steel that came, from the command line; every reading is invented."""

import json
from pathlib import Path

import pypdfium2
import pytest

from typed import Run

JOB = """
[job]
name = "A stick that came short"

[practice]
tolerances = { a6-camber = "3/8" }

[[piece]]
mark = "B1"
stock = "W12x26"
length = "18'-7 1/4"

[[piece.angles]]
end = "both"
sides = "near"
stock = "L4x3-1/2x5/16"
rows = 2
projection = "1/2"

[[piece]]
mark = "B2"
stock = "W12x26"
length = "10'"
"""
SHORT = """
[[measured]]
piece = "B1"
heat = "7K2214"
length = "18'-6 7/8"
left = { top_near = "-1/4", top_far = "-1/4", bottom_near = "0", bottom_far = "0", depth = "12.325in" }
camber = "1/2"

[[measured]]
piece = "B2"
length = "10'-3"
left = { web_gap = "1/4", web_blade = "12", web_long = "top" }
"""
FINISHED = """
[[inspected]]
piece = "B1"
number = 2
by = "second shift"
readings = { overall = "18'-6 7/8", "left end square" = "1/4" }

[[inspected]]
piece = "B2"
readings = { overall = "10'" }
"""


@pytest.fixture(autouse=True)
def _files(tmp_path: Path) -> None:
    for name, text in (("job", JOB), ("yard", SHORT), ("done", FINISHED)):
        (tmp_path / f"{name}.toml").write_text(text, "utf8")


def pdf(path: Path) -> str:
    return "".join(page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(path))


def test_sticks_are_judged_and_laid_out_and_their_cards_written(run: Run, tmp_path: Path) -> None:
    code, out, err = run("receive", "job.toml", "yard.toml")
    assert (code, err) == (0, "")
    lines = out.splitlines()
    assert lines[0] == "B1: W12X26, heat 7K2214"
    assert 'left end out of square: 1/4": out by 0.059", limit at most +0.191"' in lines[1]
    assert 'camber: 1/2": out by 0.125", limit ±3/8"' in lines[2]
    assert lines[3].startswith("  within: length, left end depth")
    assert lines[4].startswith("  not read, taken as nominal: left end top width")
    assert lines[5] == "  Its natural camber is up as it lies: leave it so."
    assert 'B1: can be made: as it is, trim nothing: Trimmed square it would be 7/8" too short.' in lines[6]
    changed = "  deeper than drawn: 8 readings are other than drawn from the bottom edge, see the card"
    assert lines.count(changed) == 1
    assert 'B2: can be made: trim square, trim 1/2" at the left end and 2 1/2" at the right' in out
    text = pdf(tmp_path / "job-received.pdf")
    assert "Receiving card" in text
    assert "Odds that it bolts up" in text


def test_one_stick_can_be_laid_otherwise_by_choice(run: Run, tmp_path: Path) -> None:
    typed = ("receive", "job.toml", "yard.toml", "--piece", "B1", "--out", "card.pdf")
    code, out, _ = run(*typed, "--way", "split", "--rows", "bottom")
    assert code == 0
    assert "laid by choice: split the difference, can be done" in out
    assert "deeper than drawn: 8 readings are other than drawn from the top edge, see the card" in out
    assert "B2" not in out
    assert "It was laid otherwise by choice." in pdf(tmp_path / "card.pdf")
    code, out, _ = run(*typed, "--way", "hold-right")
    assert code == 1
    assert "laid by choice: hold the right end, cannot be done" in out


def test_a_stick_that_is_too_short_ends_with_1(run: Run, tmp_path: Path) -> None:
    (tmp_path / "yard.toml").write_text('[[measured]]\npiece = "B1"\nlength = "18\'"\n', "utf8")
    code, out, _ = run("receive", "job.toml", "yard.toml")
    assert code == 1
    assert "error: B1: cannot be made of this stick as drawn" in out


def test_received_sticks_as_json(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("receive", "job.toml", "yard.toml", "--json")
    assert code == 0
    first, second = json.loads(out)
    assert (first["piece"], first["stick"]["heat"], first["accepted"]) == ("B1", "7K2214", False)
    assert (first["way"], first["can_be_made"], first["ask"]) == ("as it is", True, True)
    assert (second["way"], second["datum"]) == ("trim square", "left end, after the trim")
    (camber,) = (one for one in first["judgements"] if one["name"] == "camber")
    assert (camber["verdict"], camber["limit"]["trust"]) == ("out", "the shop's own")
    assert not list(tmp_path.glob("*.pdf"))


def test_everything_wrong_with_a_sheet_is_said_at_once_with_its_file(run: Run, tmp_path: Path) -> None:
    wrong = '[[measured]]\npiece = "B11"\nsteel_temperature = 60\n'
    (tmp_path / "yard.toml").write_text(wrong, "utf8")
    code, _, err = run("receive", "job.toml", "yard.toml")
    assert code == 2
    assert err.splitlines() == [
        "yard.toml: line 1: measured 1: one temperature alone corrects nothing: give steel and tape",
        'yard.toml: line 2: measured 1 → piece: the job has no piece "B11": did you mean "B1"?',
    ]


@pytest.mark.parametrize("typed", ["receive job.toml yard.toml", "inspect job.toml", "verify job.toml"])
def test_a_mistyped_code_of_a_limit_is_refused_by_every_command(run: Run, tmp_path: Path, typed: str) -> None:
    (tmp_path / "job.toml").write_text(JOB.replace("a6-camber", "a6-cambre"), "utf8")
    code, out, err = run(*typed.split())
    assert (code, out) == (2, "")
    assert err == 'tolerance "a6-cambre" is the code of no limit: did you mean "a6-camber"?\n'


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        (("receive", "job.toml", "done.toml"), "done.toml: no stick was measured: add a [[measured]] table"),
        (("receive", "job.toml", "done.toml", "-p", "B2"), 'no stick was measured for piece "B2"'),
        (("receive", "job.toml", "yard.toml", "-p", "X"), 'there is no piece "X": the job has B1, B2'),
        (("inspect", "job.toml", "yard.toml"), "no piece was inspected: add an [[inspected]] table"),
        (("inspect", "job.toml", "gone.toml"), "gone.toml: there is no such file: check the name"),
        (("inspect", "job.toml", "-p", "X"), 'there is no piece "X": the job has B1, B2'),
        (("odds", "job.toml", "-p", "X"), 'there is no piece "X": the job has B1, B2'),
    ],
)
def test_what_cannot_be_is_said(run: Run, typed: tuple[str, ...], message: str) -> None:
    code, _, err = run(*typed)
    assert code == 2
    assert message in err


def test_readings_that_cannot_be_are_said_for_all_sticks(run: Run, tmp_path: Path) -> None:
    wrong = '[[measured]]\npiece = "{}"\nleft = {{ depth = "22" }}\n'
    (tmp_path / "yard.toml").write_text(wrong.format("B1") + wrong.format("B2"), "utf8")
    code, _, err = run("receive", "job.toml", "yard.toml")
    assert code == 2
    assert [line.split(" is more")[0] for line in err.splitlines()] == [
        "yard.toml: line 3: measured 1 → left → depth: left end depth 1'-10\"",
        "yard.toml: line 6: measured 2 → left → depth: left end depth 1'-10\"",
    ]


def test_a_reading_that_comes_to_lie_past_an_edge_is_said_so(run: Run, tmp_path: Path) -> None:
    """bf 6.49, lines 6 1/4 apart: 0.12 from each edge; a flange 6.1 wide ends 0.075 before them."""
    pins = '{ face = "top", x = "2\'", gage = "6 1/4", diameter = "1/16" }'
    job = JOB.replace('length = "10\'"\n', f'length = "10\'"\nholes = [{pins}]\n')
    (tmp_path / "job.toml").write_text(job, "utf8")
    narrow = '[[measured]]\npiece = "B2"\nleft = { top_width = "6.1in" }\n'
    (tmp_path / "yard.toml").write_text(narrow, "utf8")
    _, out, _ = run("receive", "job.toml", "yard.toml")
    assert (
        '  holes 1: drawn 1/8" from the near edge, on this stick 1/16" outside the near edge, '
        "where there is no steel"
    ) in out.splitlines()


def test_blank_sheets_of_every_piece_or_of_one(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("inspect", "job.toml")
    assert code == 0
    assert out.splitlines() == [
        "B1: blank sheet, 18 readings", "B2: blank sheet, 5 readings", "written: job-inspection.pdf",
    ]  # fmt: skip
    assert "Walk around the piece in this order" in pdf(tmp_path / "job-inspection.pdf")
    code, out, _ = run("inspect", "job.toml", "--piece", "B2", "--json")
    assert (code, json.loads(out)[0]["outcome"]) == (0, "not read")


def test_what_was_read_is_judged_and_what_is_out_ends_with_1(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("inspect", "job.toml", "done.toml")
    assert code == 1
    lines = out.splitlines()
    assert lines[0] == "B1 no. 2: ask the engineer, 2 of 18 readings"
    assert '  warning: overall: 18\'-6 7/8", 3/8" under: out by 0.312", limit ±1/16"' in lines[1]
    assert "grind it square" in lines[2]
    assert lines[3] == "B2 no. 1: good, 1 of 5 readings"
    assert "What to do" in pdf(tmp_path / "job-inspection.pdf")
    code, out, _ = run("inspect", "job.toml", "done.toml", "--piece", "B2")
    assert code == 0


def test_readings_of_no_line_are_named_all_at_once(run: Run, tmp_path: Path) -> None:
    wrong = FINISHED.replace("overall", "overal").replace('"left end square"', '"left square"')
    (tmp_path / "done.toml").write_text(wrong, "utf8")
    code, _, err = run("inspect", "job.toml", "done.toml")
    assert code == 2
    assert err.splitlines() == [
        '"overal" is not read on piece B1: did you mean "overall"?',
        '"left square" is not read on piece B1: did you mean "left end square"?',
        '"overal" is not read on piece B2: did you mean "overall"?',
    ]


def test_a_sheet_can_say_what_the_piece_is(run: Run, tmp_path: Path) -> None:
    said = '[[inspected]]\npiece = "B2"\ncompression = true\nbearing = true\nreadings = {{ {} }}\n'
    (tmp_path / "done.toml").write_text(said.format(""), "utf8")
    code, out, _ = run("inspect", "job.toml", "done.toml", "--json")
    rows = {row["name"]: row["limit"] for row in json.loads(out)[0]["rows"]}
    assert code == 0
    assert rows["overall"]["rule"] == "both ends finished for bearing"
    assert rows["camber"]["rule"] == "compression members: L/1000 between supports"


def test_a_column_of_a_frame_is_in_compression(run: Run) -> None:
    code, out, _ = run("inspect", "mezzanine-frame.toml", "--json")
    assert code == 0
    limits = [row["limit"] for piece in json.loads(out) for row in piece["rows"] if row["name"] == "sweep"]
    rules = {limit["rule"] for limit in limits if limit}
    assert any(rule.startswith("compression members") for rule in rules)
    assert any(rule.startswith("1/8 in each") for rule in rules)


def test_the_odds_of_every_piece(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("odds", "job.toml")
    assert code == 0
    assert out.splitlines() == [
        "B1: 91.85% goes together without reaming (exact)",
        "  weakest: between its supports, 91.90%",
        "  matters most: no error of the supports, 97.67% (+5.82%)",
        "  helps most: check the supports once more, 96.00% (+4.16%)",
        "B2: nothing is bolted, no odds to tell",
        "spread: an assumption of Gageline, not measured in any shop",
    ]
    assert not list(tmp_path.glob("*.pdf"))
    code, out, _ = run("odds", "job.toml", "--out", "odds.pdf")
    assert code == 0
    text = pdf(tmp_path / "odds.pdf")
    assert "Odds of fit-up" in text
    assert "there are no odds to tell" in text


def test_odds_that_are_stopped_end_with_one_line(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("gageline.quality.odds_of", stopped)
    code, out, err = run("odds", "job.toml", "--out", "odds.pdf")
    assert (code, out, err) == (130, "", "stopped after 0 of 2 pieces: nothing was written\n")


def test_every_piece_of_a_frame_has_its_odds_or_the_reason(run: Run) -> None:
    code, out, _ = run("odds", "mezzanine-frame.toml", "-p", "P1")
    assert code == 0
    lines = out.splitlines()
    assert lines[0].startswith("P1: 99.")
    assert lines[1].startswith("  weakest: right cap plate, bolt holes")
    assert lines[-2] == "  not reckoned: left base plate, bolt holes: over anchor rods"


def test_the_shops_own_sheets_tell_its_spread(run: Run, tmp_path: Path) -> None:
    name = '"left near angle past the end"'
    read = [f'[[inspected]]\npiece = "B1"\nreadings = {{ {name} = "{out}" }}\n' for out in ("5/8", "3/8") * 3]
    (tmp_path / "done.toml").write_text("".join(read), "utf8")
    code, out, _ = run("odds", "job.toml", "done.toml", "--json")
    assert code == 0
    spread = json.loads(out)["B1"]["spread"]
    assert spread["setting"] == pytest.approx(1 / 8)
    assert spread["source"].startswith("the shop's own records: setting from 6 readings")
    assert spread["tape"] == 1 / 32


@pytest.mark.parametrize(
    "command", [("receive", "sheet.toml"), ("inspect", "sheet.toml"), ("inspect",), ("odds",)]
)
def test_a_piece_with_an_error_is_left_out(run: Run, tmp_path: Path, command: tuple[str, ...]) -> None:
    cope = 'copes = [{ end = "left", flange = "both", length = "4", depth = "7" }]'
    (tmp_path / "wrong.toml").write_text(f"{JOB}{cope}\n", "utf8")
    (tmp_path / "sheet.toml").write_text(SHORT + FINISHED, "utf8")
    name, *sheets = command
    code, out, err = run(name, "wrong.toml", *sheets, "--out", "made.pdf")
    assert code == 1
    assert err.endswith("left out for their errors: B2\n")
    assert "B1" in out
    assert "B2" not in out
    code, _, err = run(name, "wrong.toml", *sheets, "--piece", "B2", "--out", "none.pdf")
    assert (code, err.endswith("left out for their errors: B2\n")) == (1, True)
    assert not (tmp_path / "none.pdf").exists()
