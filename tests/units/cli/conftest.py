"""The command line, run inside this process."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from gageline.cli import main
from typed import DEMO, Run


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Run:
    """Run a command in an empty folder that holds the demo jobs."""
    for name in ("mezzanine.toml", "mezzanine-frame.toml", "metric.toml", "rack.toml"):
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
