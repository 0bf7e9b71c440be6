"""The worked example of docs/received-steel.md, figure by figure, beside the hand calculation it prints."""

import re
import subprocess
import sys
from math import exp, sqrt
from pathlib import Path

import pytest
from scipy.stats import norm

from gageline.job import Stick, read_job, read_measurements
from gageline.layout import Choice, Decision, Layout, StickLayout, decide, lay_out, lay_out_on
from gageline.part import Assembly, End
from gageline.quality import CODES, Act, Outcome, Verdict, inspect, odds_of, receive, rules_of
from gageline.units import System
from jobs import inches

PAGE = (Path(__file__).resolve().parents[2] / "docs" / "received-steel.md").read_text("utf8")
SHEET, JOB = re.findall(r"^```toml\n(.*?)^```", PAGE, re.MULTILINE | re.DOTALL)


@pytest.fixture(scope="module")
def piece() -> Assembly:
    return read_job(JOB).piece("B1")


@pytest.fixture(scope="module")
def stick() -> Stick:
    return read_measurements(SHEET, System.FT_IN).stick("B1")


@pytest.fixture(scope="module")
def layout(piece: Assembly) -> Layout:
    return lay_out(piece, read_job(JOB).practice, System.FT_IN)


@pytest.fixture(scope="module")
def decision(piece: Assembly, stick: Stick) -> Decision:
    return decide(piece, stick, inches("1/16"), System.FT_IN)


@pytest.fixture(scope="module")
def card(layout: Layout, stick: Stick, decision: Decision) -> StickLayout:
    return lay_out_on(layout, stick, decision.chosen.way)


def test_the_receipt(piece: Assembly, stick: Stick) -> None:
    found = {one.name: one for one in receive(piece.main, stick).judgements}
    assert found["length"].verdict is Verdict.WITHIN
    assert found["left end depth"].verdict is Verdict.WITHIN
    assert found["left end out of square"].by.inches == pytest.approx(0.25 - 12.2 / 64, abs=1e-5)
    assert round(found["left end out of square"].by.inches, 3) == 0.059
    assert round(found["camber"].by.inches, 3) == 0.267


def test_the_ways_and_the_decision(decision: Decision) -> None:
    trim, as_is, hold, split = decision.options
    row = 0.25 * 9.2 / 12.2
    assert trim.spare == -inches("7/8")
    assert (as_is.left.least, as_is.left.most, as_is.right.most) == (
        inches("0"),
        inches("1/4"),
        inches("3/8"),
    )
    assert as_is.worst == inches("3/8")
    assert hold.worst.inches == pytest.approx(0.375 + row, abs=1e-5)
    assert min(one.left_over.inches for one in hold.edgings) == pytest.approx(1.125 - row, abs=1e-5)
    assert (hold.possible, split.possible) == (False, True)
    assert split.worst.inches == pytest.approx(0.1875 + row, abs=1e-5)
    assert [round(value, 3) for value in (row, 0.375 + row, 1.125 - row, 0.1875 + row)] == [
        0.189, 0.564, 0.936, 0.376,
    ]  # fmt: skip
    assert (decision.chosen.way.choice, decision.ask) == (Choice.AS_IS, True)
    right = next(one for one in decision.chosen.edgings if one.end is End.RIGHT)
    assert (right.left_over, right.limit) == (inches("1 1/8"), inches("1"))
    assert (as_is.left.gap_least, as_is.left.gap_most, as_is.right.gap_most) == (
        inches("1/2"), inches("3/4"), inches("7/8"),
    )  # fmt: skip


def test_the_card(card: StickLayout) -> None:
    assert card.datum == "left end, bottom edge"
    assert card.laid.note == "Its natural camber is up as it lies: leave it so."
    rows = {
        (one.nominal.text, one.actual.text) for one in card.readings if one.nominal.from_ == "bottom edge"
    }
    assert {('9 3/16"', '9 5/16"'), ('6 3/16"', '6 5/16"')} <= rows
    down = {(one.nominal.text, one.actual.text) for one in card.readings if one.nominal.from_ == "top edge"}
    assert {('3"', '3"'), ('6"', '6"')} <= down
    assert card.lean.inches == pytest.approx(4 * 0.5 * 12.2 / 222.875, abs=1e-5)


def test_the_odds(piece: Assembly) -> None:
    odds = odds_of(piece)
    assert round(1 - exp(-9), 5) == 0.99988
    # The turn of the square acts at right angles to the line of the two bolts, 3 in apart.
    along, across = sqrt(2) / 48, sqrt(2 / 48**2 + 2 * (3 / 64 / 12) ** 2)
    between = 1 - exp(-(0.125**2) / (along**2 + across**2))
    assert [joint.value for joint in odds.joints] == pytest.approx([between] * 4, abs=5e-6)
    assert round(odds.joints[0].value, 5) == 0.99986
    assert odds.span is not None
    assert odds.span.value == pytest.approx(float(norm.cdf(sqrt(2)) - norm.cdf(-2 * sqrt(2))), abs=1e-9)
    assert (round(odds.span.value, 3), round(odds.whole.value, 3)) == (0.919, 0.918)
    assert (odds.worst[0].act, round(odds.worst[0].value, 3)) == (Act.SUPPORTS, 0.977)
    assert (odds.gains[0].act, round(odds.gains[0].value, 3)) == (Act.SUPPORTS, 0.96)


def test_the_inspection(layout: Layout) -> None:
    (read,) = read_measurements(SHEET, System.FT_IN).inspected
    report = inspect(layout, read, rules_of(layout.main.part, metric=False))
    rows = {row.item.name: row for row in report.rows if row.judgement.read is not None}
    assert [row.outcome for row in rows.values()] == [Outcome.ASK, Outcome.REWORK, Outcome.GOOD]
    assert rows["overall"].judgement.by == inches("5/16")
    assert round(rows["left end square"].judgement.by.inches, 3) == 0.059


def test_the_page_lists_every_code() -> None:
    assert [code for code in CODES if f"`{code}`" not in PAGE] == []


def test_the_page_prints_these_figures() -> None:
    figures = "0.059 0.267 0.189 0.564 0.936 0.376 0.99988 0.99986 0.919 0.918 0.977 0.960"
    for figure in figures.split():
        assert figure in PAGE


def test_the_commands_print_what_the_page_shows(tmp_path: Path) -> None:
    """A stick that can be used and a blank sheet end with 0, a piece that is out with 1."""
    (tmp_path / "short.toml").write_text(JOB, "utf8")
    (tmp_path / "measured.toml").write_text(SHEET, "utf8")
    blocks = re.findall(r"^```console\n(.*?)^```", PAGE, re.MULTILINE | re.DOTALL)
    shown = "".join(blocks).removeprefix("$ gageline ").split("$ gageline ")
    codes = []
    for one in shown:
        command, printed = one.split("\n", 1)
        done = subprocess.run(
            [sys.executable, "-m", "gageline", *command.split()],
            cwd=tmp_path,
            capture_output=True,
            text=True,
            encoding="utf8",
            check=False,
        )
        assert (done.stdout, done.stderr) == (printed, "")
        codes.append(done.returncode)
    assert codes == [0, 0, 1, 0]
    assert {path.name for path in tmp_path.glob("*.pdf")} == {"short-received.pdf", "short-inspection.pdf"}


def test_the_library_example_runs(tmp_path: Path) -> None:
    (script,) = re.findall(r"^```python\n(.*?)^```", PAGE, re.MULTILINE | re.DOTALL)
    (tmp_path / "short.toml").write_text(JOB, "utf8")
    (tmp_path / "measured.toml").write_text(SHEET, "utf8")
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        encoding="utf8",
        check=False,
    )
    assert done.returncode == 0, done.stderr
    first, *changed = done.stdout.splitlines()
    assert first == "False as it is ask the engineer 0.918"
    assert all(line.endswith("deeper than drawn") for line in changed)
    assert changed
