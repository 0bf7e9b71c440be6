"""Which line of a TOML text each key stands on, for messages."""

from __future__ import annotations

import re
from collections.abc import Iterator

__all__ = ["line_of", "lines_of_keys"]

Path = tuple[str | int, ...]
_HEADER = re.compile(r"\s*(\[\[?)\s*([^\[\]]+?)\s*\]\]?\s*(?:#.*)?$")
_KEY = re.compile(r"\s*((?:[A-Za-z0-9_-]+|\"[^\"\n]*\"|'[^'\n]*')(?:\s*\.\s*[A-Za-z0-9_-]+)*)\s*=")
_TRIPLE = re.compile(r'"""|' + "'''")


def lines_of_keys(text: str) -> dict[Path, int]:
    """The line, counted from 1, of every table header and key of a well-formed TOML text.

    Keys inside inline tables stand on the line of the key that holds them.

    Args:
        text: a text that `tomllib` has read.

    Returns:
        Paths such as ("piece", 3, "copes", 0, "depth") and their lines.
    """
    found: dict[Path, int] = {}
    counts: dict[Path, int] = {}
    here: Path = ()
    for number, line in _plain_lines(text):
        if header := _HEADER.match(line):
            here = _open(header[2], counts, array=header[1] == "[[")
            found.setdefault(here, number)
        elif key := _KEY.match(line):
            path = here
            for name in _names(key[1]):
                path = (*path, name)
                found.setdefault(path, number)
    return found


def _plain_lines(text: str) -> Iterator[tuple[int, str]]:
    """Lines that do not lie inside a string of several lines."""
    closing: str | None = None
    for number, line in enumerate(text.splitlines(), 1):
        inside = closing is not None
        for quote in _TRIPLE.findall(line):
            if closing is None:
                closing = quote
            elif closing == quote:
                closing = None
        if not inside:
            yield number, line


def _names(dotted: str) -> list[str]:
    return [name.strip().strip("\"'") for name in dotted.split(".")]


def _open(dotted: str, counts: dict[Path, int], *, array: bool) -> Path:
    """The path of a table header: names, with the number of the current item after each list."""
    path: Path = ()
    names = _names(dotted)
    for depth, name in enumerate(names):
        path = (*path, name)
        if array and depth == len(names) - 1:
            counts[path] = counts.get(path, -1) + 1
        if path in counts:
            path = (*path, counts[path])
    return path


def line_of(path: Path, lines: dict[Path, int]) -> int | None:
    """The line of a path, or of the nearest table or list around it."""
    for length in range(len(path), 0, -1):
        if path[:length] in lines:
            return lines[path[:length]]
    return None
