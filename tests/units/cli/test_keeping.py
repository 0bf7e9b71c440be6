"""The commands that keep the shop: its file and back."""

import os
import subprocess
import sys
from pathlib import Path


def test_a_file_that_no_backup_wrote_is_refused(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("dear shop", "utf8")
    done = subprocess.run(
        [sys.executable, "-m", "gageline", "restore", "letter.txt"],
        cwd=tmp_path,
        env={**os.environ, "GAGELINE_HOME": str(tmp_path / "home"), "DATABASE_URL": ""},
        capture_output=True,
        text=True,
        encoding="utf8",
        check=False,
    )
    assert (done.returncode, done.stdout) == (2, "")
    assert "letter.txt is no backup of the shop, or is damaged: nothing was changed" in done.stderr
