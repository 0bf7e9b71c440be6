"""The command line itself."""

import pytest

from typed import Run


def test_the_version(run: Run) -> None:
    code, out, _ = run("--version")
    assert (code, out.strip()) == (0, "0.1.0")


def test_help_is_short_and_names_every_command(run: Run) -> None:
    code, out, _ = run("--help")
    assert code == 0
    for command in (
        "cards", "parts", "marks", "dxf", "verify", "checks", "why", "frame", "cut", "receive", "inspect",
        "odds", "section", "length", "demo", "serve", "backup", "restore",
    ):  # fmt: skip
        assert command in out


def test_what_is_stopped_says_so(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("gageline.cli.pieces.opened", stopped)
    assert run("parts", "mezzanine.toml") == (130, "", "stopped\n")
