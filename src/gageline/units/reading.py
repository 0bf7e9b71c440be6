"""Lengths as the trade writes them, read into exact lengths."""

from __future__ import annotations

import re
from enum import StrEnum
from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.units.length import Length

__all__ = ["Unit", "parse_length"]

_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5",
    "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_SAME = str.maketrans({
    "′": "'", "’": "'", "‘": "'", "ʹ": "'", "″": '"', "”": '"', "“": '"', "ʺ": '"', "⁄": "/", "∕": "/",
    "–": "-", "—": "-", "−": "-", "‐": "-", "‑": "-", "\u00a0": " ", "\u2009": " ", "\u202f": " ",
})  # fmt: skip
_AMOUNT = (
    r"(?:(?P<{0}w>\d+(?:\.\d+)?|\.\d+)(?:[ -]+(?P<{0}n>\d+)/(?P<{0}d>\d+))?|(?P<{0}N>\d+)/(?P<{0}D>\d+))"
)
_FOOT = r"(?:'|ft\.?|feet|foot)"
_INCH = r"(?:\"|''|inches|inch|in\.?)"
_INCHES = re.compile(rf"{_AMOUNT.format('i')}\s*(?P<mark>{_INCH})?", re.IGNORECASE)
_FEET_INCHES = re.compile(
    rf"{_AMOUNT.format('f')}\s*{_FOOT}(?:\s*-?\s*{_AMOUNT.format('i')}\s*{_INCH}?)?", re.IGNORECASE
)
_DASHED = re.compile(rf"(?P<fw>\d+)\s*-\s*{_AMOUNT.format('i')}\s*{_INCH}?", re.IGNORECASE)
_METRIC = re.compile(r"(?P<value>\d+(?:\.\d+)?|\.\d+)\s*(?P<unit>mm|cm|m)", re.IGNORECASE)
_PLAIN = re.compile(r"\d+(?:\.\d+)?|\.\d+")
_COMMA = re.compile(r"\d+,\d+\s*(?:mm|cm|m|\"|in)?")
_MM_OF = {"mm": 1, "cm": 10, "m": 1000}
_LONGEST = 64  # characters; a longer text is no length
_FORMS = "18'-7 1/4\", 18-7 1/4, 7/8, 223.25in or 5670mm"


class Unit(StrEnum):
    """What a bare number means: inches or millimetres."""

    INCH = "in"
    MM = "mm"


def _amount(found: re.Match[str], which: str) -> Fraction:
    """The number of one group of `_AMOUNT`: whole, decimal, fraction, or whole and fraction."""
    parts = found.groupdict()
    whole, over, under = parts[which + "w"], parts.get(which + "n"), parts.get(which + "d")
    if whole is None:
        whole, over, under = "0", parts[which + "N"], parts[which + "D"]
    if over is None or under is None:
        return Fraction(whole)
    if "." in whole or int(under) == 0:
        raise ZeroDivisionError
    return Fraction(whole) + Fraction(int(over), int(under))


def _read(text: str, bare: Unit) -> Length | None:
    """The length of cleaned text without sign, or None when no form fits."""
    if metric := _METRIC.fullmatch(text):
        return Length.from_mm(Fraction(metric["value"]) * _MM_OF[metric["unit"].lower()])
    if bare is Unit.MM and _PLAIN.fullmatch(text):
        return Length.from_mm(Fraction(text))
    if dashed := _DASHED.fullmatch(text):
        inches = _amount(dashed, "i")
        # `7-1/4` is seven and a quarter; `18-7` and `18-7 1/4` are feet and inches.
        if dashed["iw"] is None:
            return Length.from_inches(int(dashed["fw"]) + inches) if inches < 1 else None
        return Length.from_inches(int(dashed["fw"]) * 12 + inches) if inches < 12 else None
    if feet := _FEET_INCHES.fullmatch(text):
        has_inches = feet["iw"] is not None or feet["iN"] is not None
        inches = _amount(feet, "i") if has_inches else Fraction(0)
        return Length.from_inches(_amount(feet, "f") * 12 + inches)
    if plain := _INCHES.fullmatch(text):
        if bare is Unit.MM and plain["mark"] is None:
            return None  # a bare fraction in a metric job: 1/2 what?
        return Length.from_inches(_amount(plain, "i"))
    return None


def parse_length(text: str, bare: Unit = Unit.INCH) -> Length:
    """The length written in any way the trade writes one.

    Reads `18-7 1/4`, `18'-7 1/4"`, `18' 7.25"`, `7/8`, `1 1/2`, `1-1/2`, `223.25in`, `5670 mm`,
    `5.67m`, unicode fractions and primes, and a leading minus. Sixteenths and other binary
    fractions down to 1/256 in are exact, others come to the nearest 1/6400 mm.

    Args:
        text: the length as typed.
        bare: what a number without a unit is; in a metric job a bare fraction is refused.

    Returns:
        The exact length.

    Raises:
        ValueProblem: when the text is not a length, with the forms that are.
    """
    clean = text.translate(_SAME).strip() if len(text) <= _LONGEST else ""
    for mark, plain in _VULGAR.items():
        clean = clean.replace(mark, f" {plain}")
    clean = " ".join(clean.split())
    negative = clean.startswith("-")
    body = clean[1:].strip() if negative else clean
    try:
        length = _read(body, bare)
    except ZeroDivisionError:
        length = None
    if length is None:
        shown = text if len(text) <= _LONGEST else text[:_LONGEST] + "..."
        if _COMMA.fullmatch(body):
            raise ValueProblem(f'"{shown}" is not a length: write a decimal point, {body.replace(",", ".")}')
        forms = "5670, 5670mm, 5.67m or 18'-7 1/4\"" if bare is Unit.MM else _FORMS
        raise ValueProblem(f'"{shown}" is not a length: write it like {forms}')
    return -length if negative else length
