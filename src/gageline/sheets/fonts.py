"""The widths of text exactly as it will be set, from the font that prints it.

Kerning and ligatures are switched off in every back end, so the width of a text is the sum of its glyphs'
advances. The figures of the family are tabular: every one is as wide as the next.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

import fontpkg_ibm_plex_sans_condensed as plex
from fontTools.ttLib import TTFont

from gageline.errors import ValueProblem
from gageline.sheets.style import MM_PER_PT, Weight

__all__ = ["FAMILY", "FONT_FILES", "FONT_FOLDER", "FontMetrics", "font_metrics", "text_width"]

FAMILY: str = plex.FAMILY
"""The one family of all sheets."""

FONT_FOLDER: Path = Path(plex.ROOT) / "files"
"""Where its files are installed."""

FONT_FILES = {
    Weight.REGULAR: "IBMPlexSansCondensed-Regular.ttf",
    Weight.BOLD: "IBMPlexSansCondensed-Bold.ttf",
}
"""Weight -> name of its file."""

_INSTEAD = {
    "⌀": "Ø",
    "φ": "Ø",
    "Φ": "Ø",
    "∅": "Ø",
    "Ω": "omega",
    "Δ": "delta",
    "▸": "→",
    "►": "→",
    "▲": "a drawn triangle",
    "\u2009": "a plain space",
    "\u202f": "a no-break space",
    "\u2044": "/",
}


@dataclass(frozen=True, slots=True)
class FontMetrics:
    """The measures of one weight, all as fractions of the text size.

    Attributes:
        ascent: from the baseline to the top of the em box.
        descent: from the baseline to the bottom of the em box, a positive number.
        cap_height: height of a capital, as of a figure.
        advances: character -> its width.
    """

    ascent: float
    descent: float
    cap_height: float
    advances: dict[str, float]


@cache
def font_metrics(weight: Weight) -> FontMetrics:
    """Read the measures of one weight from its font file.

    Source: the tables hmtx, cmap and OS/2 of the file (OpenType specification).
    """
    with TTFont(FONT_FOLDER / FONT_FILES[weight], lazy=True) as font:
        em = font["head"].unitsPerEm
        widths = font["hmtx"].metrics
        os2 = font["OS/2"]
        advances = {chr(code): widths[glyph][0] / em for code, glyph in font.getBestCmap().items()}
        return FontMetrics(os2.sTypoAscender / em, -os2.sTypoDescender / em, os2.sCapHeight / em, advances)


@lru_cache(maxsize=1 << 16)
def _em_width(text: str, weight: Weight) -> float:
    advances = font_metrics(weight).advances
    total = 0.0
    for character in text:
        advance = advances.get(character)
        if advance is None or character < " ":
            raise _missing(text, character)
        total += advance
    return total


def _missing(text: str, character: str) -> ValueProblem:
    remedy = _INSTEAD.get(character)
    if character < " ":
        remedy = "a text of one line each"
    return ValueProblem(
        f'text "{text}" has the character {character!r} (U+{ord(character):04X}), which '
        f"{FAMILY} cannot print: write {remedy or 'it in letters that the font has'} instead"
    )


def text_width(text: str, size: float, weight: Weight = Weight.REGULAR) -> float:
    """Width of a line of text as printed.

    Args:
        text: one line.
        size: points.
        weight: regular or bold.

    Returns:
        Width in mm.

    Raises:
        ValueProblem: a character that the font lacks, or a line break.
    """
    return _em_width(text, weight) * size * MM_PER_PT
