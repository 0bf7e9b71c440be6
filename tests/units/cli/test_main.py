"""The command line itself."""

import inspect
import subprocess
import sys
from importlib import import_module

import pytest

from gageline.cli.main import COMMANDS
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


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_is_listed_with_the_first_line_of_its_help(name: str) -> None:
    command = getattr(import_module(f"gageline.cli.{COMMANDS[name].module}"), name)
    assert COMMANDS[name].line == (inspect.getdoc(command) or "").split("\n\n")[0].replace("\n", " ")


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help_of_its_own(run: Run, name: str) -> None:
    code, out, _ = run(name, "-h")
    assert code == 0
    assert f"gageline {name}" in out
    assert COMMANDS[name].line[:40] in out


def test_a_mistyped_command_is_answered_with_the_nearest(run: Run) -> None:
    code, _, err = run("card")
    assert code == 2
    assert "No such command 'card'" in err
    assert "'cards'" in err


def test_a_sum_does_not_wait_for_the_sheets_to_be_read() -> None:
    heavy = "{'gageline.sheets', 'gageline.detail', 'scipy', 'django'}"
    looked = f"import sys; import gageline.cli.tables; print({heavy} & set(sys.modules))"
    said = subprocess.run([sys.executable, "-c", looked], capture_output=True, text=True, check=True)
    assert said.stdout.strip() == "set()"
