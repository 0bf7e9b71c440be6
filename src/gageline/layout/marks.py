"""Every mark of a part, face by face."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.layout.cuts import clip_marks, cope_marks, end_marks, opening_marks, trim_marks
from gageline.layout.holes import Pattern, centre_marks, hole_marks, patterns
from gageline.layout.mark import Bench, Mark
from gageline.part import End

__all__ = ["marks_of"]


def marks_of(bench: Bench, found: tuple[Pattern, ...] | None = None) -> tuple[Mark, ...]:
    """Every line to strike and every point to punch on a part, in the order of work.

    Args:
        bench: the part and the tape.
        found: the part's patterns where they are at hand already.

    Returns:
        Ends, copes, trims, clips, centre lines, openings, then holes.
    """
    return tuple(_marks(bench, patterns(bench) if found is None else found))


def _marks(bench: Bench, found: tuple[Pattern, ...]) -> Iterator[Mark]:
    part = bench.part
    for end in End:
        yield from end_marks(bench, end)
    for cope in part.copes:
        yield from cope_marks(bench, cope)
    for trim in part.trims:
        yield from trim_marks(bench, trim)
    for clip in part.clips:
        yield from clip_marks(bench, clip)
    yield from centre_marks(bench)
    for number, opening in enumerate(part.openings, 1):
        yield from opening_marks(bench, opening, f"opening {number}")
    for pattern in found:
        yield from hole_marks(bench, pattern)
