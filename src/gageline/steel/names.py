"""Designations as people type them, brought to one key."""

from __future__ import annotations

import re
import unicodedata

__all__ = ["PLATE_WORDS", "clean", "keys", "word_and_sizes"]

PLATE_WORDS = frozenset({"PL", "PLATE", "FL", "FLAT", "FB", "BAR"})

_VULGAR = re.compile("[\u00bc-\u00be\u2150-\u215e]")
_SAME = str.maketrans(
    {"×": "X", "✕": "X", "*": "X", "⁄": "/", "–": "-", "—": "-", "″": '"', "”": '"', "“": '"'}
)
_NAME = re.compile(r"([A-Z]+)[\s.]*([\d./\s\"X-]*?)\s*(STD|XXS|XS|SCH\s*\d+|[ABM])?")
_SIZE = re.compile(r"(?P<whole>\d*\.?\d+|\d+\.)(?:[\s-]+(?P<over>\d+)/(?P<under>\d+))?|(?P<o>\d+)/(?P<u>\d+)")


def clean(text: str) -> str:
    """The text in capitals with plain signs: × is X, ½ is 1/2, blanks single."""
    spaced = _VULGAR.sub(lambda found: f" {found.group()}", text)
    plain = unicodedata.normalize("NFKC", spaced).translate(_SAME).upper()
    return " ".join(plain.split())


def word_and_sizes(text: str) -> tuple[str, list[tuple[int, int]], str] | None:
    """A cleaned designation taken apart.

    Args:
        text: the designation, cleaned.

    Returns:
        The word before the sizes, the sizes in 1/1000 (each as the whole number below and above it),
        and the word after them; None when it does not look like a designation.
    """
    found = _NAME.fullmatch(text)
    if found is None:
        return None
    sizes = []
    for part in found[2].replace('"', "").split("X"):
        size = _size(part.strip(" -"))
        if size is None:
            return None
        sizes.append(size)
    return found[1], sizes, (found[3] or "").replace(" ", "")


def keys(text: str) -> list[str]:
    """The keys a cleaned designation may be filed under.

    Decimal sizes are printed to three places (5/16 as .312 or .313), so a fraction that is not whole in
    1/1000 is filed under both neighbours.
    """
    parts = word_and_sizes(text)
    if parts is None:
        return []
    word, sizes, suffix = parts
    found = [word]
    for count, (low, high) in enumerate(sizes):
        joint = "X" if count else " "
        found = [f"{key}{joint}{size}" for key in found for size in ((low,) if low == high else (low, high))]
    return [f"{key} {suffix}" if suffix else key for key in found]


def _size(text: str) -> tuple[int, int] | None:
    """A size in 1/1000: the whole numbers below and above it."""
    found = _SIZE.fullmatch(text)
    if found is None:
        return None
    whole, over, under = (
        found["whole"] or "0",
        found["over"] or found["o"] or "0",
        found["under"] or found["u"] or "1",
    )
    before, _, after = whole.partition(".")
    if int(under) == 0 or len(after) > 9 or len(text) > 24:
        return None
    scale = 10 ** len(after)
    # (whole + over/under) * 1000 as one fraction
    top = (int(before + after or "0") * int(under) + int(over) * scale) * 1000
    bottom = scale * int(under)
    return top // bottom, -(-top // bottom)
