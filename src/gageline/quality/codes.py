"""The codes of all limits, by which a shop can set its own."""

from __future__ import annotations

import difflib
from collections.abc import Mapping

from gageline.errors import ValueProblem
from gageline.units import Length

__all__ = ["CODES", "own_limits"]

CODES = (
    "a500-length", "a500-side", "a500-straight", "a53-diameter", "a6-camber", "a6-depth", "a6-depth-max",
    "a6-flat-straight", "a6-flat-width", "a6-leg", "a6-length", "a6-square", "a6-sweep", "a6-tee-depth",
    "a6-tee-straight", "a6-tilt", "a6-web-off", "a6-width", "aisc303-camber", "aisc303-length",
    "aisc303-mill-camber", "aisc303-straight", "cope", "cope-radius", "d11-gap", "d11-leg", "en10034-depth",
    "en10034-length", "en10034-straight", "en10034-tilt", "en10034-web-off", "en10034-width", "en10056-leg",
    "en10056-length", "en10056-straight", "en10056-tilt", "en10058-straight", "en10058-width",
    "en10219-length", "en10219-side", "en10219-straight", "en10279-depth", "en10279-length",
    "en10279-straight", "en10279-tilt", "en10279-width", "en1090-bow", "en1090-camber", "en1090-fitting",
    "en1090-hole", "en1090-holes", "en1090-leg", "en1090-length", "en1090-notch", "en1090-radius",
    "en1090-spacing", "en1090-square", "fitting-place", "gouge", "hole-place", "hole-spacing", "rcsc-hole",
)  # fmt: skip
"""Every code of a limit."""


def own_limits(tolerances: Mapping[str, Length] | None) -> Mapping[str, Length]:
    """The shop's own limits by code, none of them mistyped.

    Args:
        tolerances: as given; None for none.

    Raises:
        ValueProblem: with every code that no limit has.
    """
    wrong = [_stranger(code) for code in tolerances or {} if code not in CODES]
    if wrong:
        raise ValueProblem("\n".join(wrong))
    return tolerances or {}


def _stranger(code: str) -> str:
    near = difflib.get_close_matches(code, CODES, n=1, cutoff=0.4)
    meant = f'did you mean "{near[0]}"?' if near else f"use one of {', '.join(CODES)}"
    return f'tolerance "{code}" is the code of no limit: {meant}'
