"""The commands that say what is wrong and whether it is strong enough."""

from pathlib import Path

from typed import Run, broken


def test_verify_ends_with_a_count(run: Run) -> None:
    code, out, _ = run("verify", "mezzanine.toml")
    assert code == 0
    assert "14 pieces: 0 errors, 0 warnings, 0 notes" in out


def test_verify_fails_on_an_error(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("verify", broken(tmp_path, ('down = "4"', 'down = "20"')))
    assert code == 1
    assert "error: B4 right web, row 1, hole at" in out


def test_a_text_that_cannot_be_printed_is_an_error_before_the_cards_are(run: Run, tmp_path: Path) -> None:
    job = broken(tmp_path, ('name = "', 'name = "漢 '))
    code, out, _ = run("verify", job)
    assert code == 1
    assert "error: job name: text" in out
    code, _, err = run("cards", job)
    assert code == 2
    assert "error: job name: text" in err
    assert not list(tmp_path.glob("*.pdf"))


def test_checks_of_pieces_with_errors_say_so(run: Run, tmp_path: Path) -> None:
    job = broken(tmp_path, ("ends = { reaction = 44 }", "ends = { rows = 9 }"), "mezzanine-frame.toml")
    code, out, err = run("checks", job, "--out", "checks.pdf")
    assert code == 1
    assert "30 connections, 16 beams and 8 columns checked" in out
    assert "error: G4 start: 9 rows are given" in err
    assert err.endswith("checked with their errors, not to be built yet: G4\n")


def test_a_beam_that_is_not_strong_enough_counts_in_summary_and_exit_code(run: Run, tmp_path: Path) -> None:
    """20 ft at 9 kip/ft on a W16x26: it is far from enough, and it has no connection to be checked."""
    piece = '[[piece]]\nmark = "B1"\nstock = "W16x26"\nlength = "20\'-0"\nloads = [{ uniform = "9 klf" }]\n'
    job = tmp_path / "weak.toml"
    job.write_text(f'[job]\nname = "weak"\n{piece}')
    code, out, _ = run("verify", str(job))
    assert code == 1
    assert "strength: 1 beam checked, 1 not strong enough" in out
