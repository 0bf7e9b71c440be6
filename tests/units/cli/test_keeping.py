"""The commands that keep the shop: its file and back."""

from pathlib import Path

import pytest

from typed import Run


def test_a_file_that_no_backup_wrote_is_refused(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("GAGELINE_HOME", str(tmp_path / "home"))
    (tmp_path / "letter.txt").write_text("dear shop", "utf8")
    code, _, err = run("restore", "letter.txt")
    assert code == 2
    assert "letter.txt" in err
