"""Stock found by its designation."""

from __future__ import annotations

import difflib
import math
from functools import cache

from gageline.errors import ValueProblem
from gageline.steel.families import Measure
from gageline.steel.names import PLATE_WORDS, clean, keys, word_and_sizes
from gageline.steel.plate import Plate
from gageline.steel.section import Section
from gageline.steel.table import lines, section
from gageline.units import Unit, parse_length

__all__ = ["Stock", "all_sections", "find"]

Stock = Section | Plate

_FORMS = "W16X26, HSS6X6X3/8, L4X3-1/2X5/16, Pipe6STD, IPE 300 or PL1/2X8"
_LONGEST = 40  # characters; no designation is longer
_DEPTH_AND_WEIGHT = 2
_Parts = tuple[str, list[tuple[int, int]], str]


def find(text: str, system: Measure | None = None, units: Unit = Unit.INCH) -> Stock:
    """The section or plate that a designation names, typed the way people type it.

    Reads `w16x26`, `W16 X 26`, `HSS6x6x.375`, `L4x3 1/2x5/16`, `IPE300`, `HE 200 A`, and plates and flat
    bar by thickness and width: `PL1/2x8`, `FL 3/8 x 4`, `PL12x200`.

    Args:
        text: the designation.
        system: look in these tables only; in both when None.
        units: what a bare number of a plate is.

    Returns:
        The section or the plate.

    Raises:
        ValueProblem: when no table has it, with the nearest that they have.
    """
    tidy = clean(text) if len(text) <= _LONGEST else ""
    start = tidy.partition(" ")[0].rstrip("0123456789./X-\"'")
    if start in PLATE_WORDS:
        return _plate(text, tidy[len(start) :], units)
    for measure in (system,) if system else tuple(Measure):
        index = _index(measure)
        for key in keys(tidy):
            if key in index:
                return section(measure, index[key])
    raise ValueProblem(_unknown(text, tidy, system))


def all_sections(system: Measure | None = None) -> tuple[Section, ...]:
    """Every section of the tables, in their order.

    Args:
        system: the tables of this system only; of both when None.
    """
    measures = (system,) if system else tuple(Measure)
    return tuple(section(measure, name) for measure in measures for name in lines(measure))


@cache
def _index(system: Measure) -> dict[str, str]:
    """Designations by every key they are filed under."""
    index: dict[str, str] = {}
    for column in ("alias", "designation"):  # the printed name goes before another's alias
        for name, line in lines(system).items():
            index.update(dict.fromkeys(keys(line[column].upper()), name))
    return index


def _plate(text: str, sizes: str, units: Unit) -> Plate:
    """A plate or flat bar from the text behind its word."""
    parts = sizes.split("X")
    if len(parts) != 2:
        raise ValueProblem(f'"{text}" is not a plate: write thickness by width like PL1/2X8 or PL12x200')
    thickness, width = (parse_length(part.strip().lower(), bare=units) for part in parts)
    metric = "MM" in sizes or (units is Unit.MM and '"' not in sizes)
    return Plate(thickness, width, Measure.EU if metric else Measure.US)


def _unknown(text: str, tidy: str, system: Measure | None) -> str:
    """What to say about a designation that no table has."""
    shown = text if len(text) <= _LONGEST else f"{text[:_LONGEST]}..."
    nearest = _nearest(tidy, system)
    if not nearest:
        return f'section "{shown}" is not in the tables: write it like {_FORMS}'
    return f'section "{shown}" is not in the tables: did you mean {" or ".join(nearest)}?'


def _nearest(tidy: str, system: Measure | None) -> list[str]:
    """Up to three designations that are nearest to what was typed, by size or else by spelling."""
    names = [name for measure in ((system,) if system else tuple(Measure)) for name in lines(measure)]
    wanted = word_and_sizes(tidy)
    if wanted is not None and wanted[0] == "HE":  # HE 200 A is filed as HEA 200
        wanted = wanted[0] + wanted[2], wanted[1], ""
    ranked = sorted((apart, name) for name in names if (apart := _apart(wanted, name)) is not None)
    if ranked:
        return [name for _, name in ranked[:3]]
    folded = {name.upper().replace(" ", ""): name for name in names}
    return [folded[key] for key in difflib.get_close_matches(tidy.replace(" ", ""), folded, n=3)]


def _apart(wanted: _Parts | None, name: str) -> tuple[bool, tuple[float, ...]] | None:
    """How far a designation is from the one wanted: digits only swapped or not, then size by size.

    Depth weighs before width, width before thickness or weight. None when it is of another series.
    """
    if wanted is None:
        return None
    word, sizes, suffix = wanted
    have = word_and_sizes(name.upper())
    if have is None or have[0] != word or have[2] != suffix or len(have[1]) != len(sizes):
        return None
    if len(sizes) > _DEPTH_AND_WEIGHT:  # legs and sides get typed the other way round
        sizes, own = sorted(sizes, reverse=True), sorted(have[1], reverse=True)
    else:
        own = have[1]
    swapped = all(sorted(str(a)) == sorted(str(b)) for (a, _), (b, _) in zip(sizes, own, strict=True))
    steps = (abs(math.log(max(a, 1) / max(b, 1))) for (a, _), (b, _) in zip(sizes, own, strict=True))
    return not swapped, tuple(steps)
