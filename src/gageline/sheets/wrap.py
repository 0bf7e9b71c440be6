"""Text broken into lines that fit a column."""

from __future__ import annotations

import re
from collections.abc import Iterator

from gageline.sheets.fonts import text_width
from gageline.sheets.style import Weight

__all__ = ["words", "wrap"]

_BREAK = re.compile(r"\s+(?!\d+/\d)|(?<!\d)\s+(?=\d+/\d)")
"""White space, but not the one between the inches and the fraction of a tape reading."""


def words(text: str) -> list[str]:
    """The parts of a text that stay on one line; the fraction of a reading stays with its inches."""
    return [word for word in _BREAK.split(text) if word]


def wrap(text: str, width: float, size: float, weight: Weight = Weight.REGULAR) -> list[str]:
    """Break a text into lines no wider than a column; a word too wide for it is broken where it must be.

    Args:
        text: what to set; a line break in it starts a new line.
        width: of the column, mm.
        size: points.
        weight: regular or bold.

    Returns:
        The lines, at least one.

    Raises:
        ValueProblem: a character that the font lacks.
    """
    return [line for paragraph in text.split("\n") for line in _lines(words(paragraph), width, size, weight)]


def _lines(parts: list[str], width: float, size: float, weight: Weight) -> Iterator[str]:
    space = text_width(" ", size, weight)
    line: list[str] = []
    free = width
    for word in parts:
        for part in _parts(word, width, size, weight):
            wide = text_width(part, size, weight)
            if line and wide > free + 1e-9:
                yield " ".join(line)
                line, free = [], width
            line.append(part)
            free -= wide + space
    yield " ".join(line)


def _parts(word: str, width: float, size: float, weight: Weight) -> Iterator[str]:
    while text_width(word, size, weight) > width + 1e-9 and len(word) > 1:
        fits = next(
            n for n in range(len(word) - 1, 0, -1) if n == 1 or text_width(word[:n], size, weight) <= width
        )
        yield word[:fits]
        word = word[fits:]
    yield word
