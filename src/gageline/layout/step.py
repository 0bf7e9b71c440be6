"""One numbered step of a card."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from gageline.layout.reading import Datum, Reading
from gageline.part import Face

__all__ = ["Step", "numbered", "source"]


@dataclass(frozen=True, slots=True)
class Step:
    """What the fitter does next.

    Args:
        title: what it is about, in a few words.
        face: the face it is done on; None where it is no face in particular.
        tool: what is taken in hand.
        from_: where the tape is hooked, in words.
        readings: the tape readings, in the order they are struck.
        text: what to do, two lines at the most.
        check: what to measure afterwards with the same tape, and what it must read.
        for_: the feature it is for, the same name as on its marks.
        number: in the order of work, from 1.
    """

    title: str
    face: Face | None
    tool: str
    from_: str
    readings: tuple[Reading, ...]
    text: str
    check: str
    for_: str = ""
    number: int = 0


def numbered(steps: Iterable[Step]) -> tuple[Step, ...]:
    """The steps with their numbers, from 1."""
    return tuple(replace(step, number=number) for number, step in enumerate(steps, 1))


def source(datum: Datum) -> str:
    """Where a tape is hooked, without the side that it runs to: `centre line`."""
    return datum.split(",")[0]
