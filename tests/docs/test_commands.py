"""The commands, the job and the program that the documents show are run as they stand there."""

import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from gageline.job import read_job

ROOT = Path(__file__).resolve().parents[2]
PAGES = [ROOT / "README.md", *sorted((ROOT / "docs").glob("*.md"))]


def blocks(language: str) -> list[str]:
    pattern = re.compile(rf"^```{language}\n(.*?)^```", re.MULTILINE | re.DOTALL)
    return [block for page in PAGES for block in pattern.findall(page.read_text("utf8"))]


def commands() -> list[str]:
    lines = [line for block in blocks("sh") for line in block.splitlines()]
    return [line.removeprefix("gageline ") for line in lines if line.startswith("gageline ")]


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """What each command of the documents printed, run in their order in one folder."""
    folder = tmp_path_factory.mktemp("shop")
    printed = {}
    for line in commands():
        done = subprocess.run(
            [sys.executable, "-m", "gageline", *shlex.split(line)],
            cwd=folder,
            capture_output=True,
            text=True,
            encoding="utf8",
            check=False,
        )
        assert done.returncode == 0, f"{line}\n{done.stdout}\n{done.stderr}"
        printed[line] = done.stdout
    printed["files"] = " ".join(path.name for path in sorted((folder / "out").iterdir()))
    script = next(block for block in blocks("python") if "lay_out" in block)
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=folder,
        capture_output=True,
        text=True,
        encoding="utf8",
        check=False,
    )
    assert done.returncode == 0, done.stderr
    printed["library"] = done.stdout
    return printed


def test_the_files_are_written(shown: dict[str, str]) -> None:
    assert shown["files"] == (
        "B2.pdf cards.pdf checks.pdf cutting.pdf dxf frame.pdf inspection.pdf metric.toml "
        "mezzanine-cards.pdf mezzanine-frame.toml mezzanine.toml rack.toml"
    )


def test_the_commands_say_what_they_should(shown: dict[str, str]) -> None:
    assert "18'-7 5/8\"" in shown['length "18-7 1/4" + "3/8"']
    assert "15.7" in shown["section W16x26"]
    assert "strength: 13 connections checked" in shown["verify out/mezzanine.toml"]
    assert "0.60 F_u A_nv" in shown["verify out/mezzanine.toml --working --method asd"]
    assert "1. Check the steel" in shown["marks out/mezzanine.toml --piece B1"]
    assert '"text": "18\'-7 1/4\\""' in shown["marks out/mezzanine.toml --piece B1 --json"]
    assert "W16X26" in shown["parts out/mezzanine.toml"]
    assert "double angles, because" in shown["why out/mezzanine-frame.toml --piece B4"]
    assert "goes together without reaming" in shown["odds out/mezzanine.toml --piece B1"]


def test_the_library_example_prints_the_steps(shown: dict[str, str]) -> None:
    assert shown["library"].startswith("1 Check the steel")


def test_the_job_of_the_readme_builds() -> None:
    (text,) = (block for block in blocks("toml") if 'name = "One beam"' in block)
    assert read_job(text).piece("B1").main.stock.designation == "W16X26"
