"""Commands as a person types them, in a folder that holds the demo jobs."""

from __future__ import annotations

from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

DEMO = files("gageline") / "demo"
Run = Callable[..., tuple[int, str, str]]
"""Runs a command: its exit code, what it printed, what it said aside."""


def broken(folder: Path, change: tuple[str, str], of: str = "mezzanine.toml") -> str:
    """The name of a job file beside the demo's, with one text changed."""
    text = (folder / of).read_text("utf8")
    assert change[0] in text
    (folder / "broken.toml").write_text(text.replace(*change, 1), "utf8")
    return "broken.toml"
