"""What every command says of files."""

from pathlib import Path

from typed import Run


def test_a_place_that_cannot_be_written_is_said(run: Run, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    code, _, err = run("cards", "mezzanine.toml", "--piece", "B1", "--out", "file/b1.pdf")
    assert code == 2
    assert "cannot be written" in err
    assert "choose another place with --out" in err
