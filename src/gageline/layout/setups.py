"""How often the square or the hole template must be set down to mark a part."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

from gageline.errors import ValueProblem
from gageline.layout.cover import fewest
from gageline.layout.holes import Pattern
from gageline.part import Face
from gageline.units import Length

__all__ = ["FaceSetups", "Placing", "Template", "plan_setups"]

Spot = tuple[int, int]
"""A hole as struck, in ticks along and across the face."""


@dataclass(frozen=True, slots=True)
class Template:
    """An adjustable hole template: fixed rows from a stop, and gage lines that are set and carried across.

    Laid across the part its rows run down and its gage lines are cross lines; laid along the part
    its rows are cross lines and its gage lines run lengthwise. It can be turned end for end. Gage lines
    can be set anywhere, no further apart than its rows reach.

    Args:
        rows: distances of the fixed rows from the stop.
        gages: how many gage lines can be set at a time.

    Raises:
        ValueProblem: when there is no row or no gage line.
    """

    rows: tuple[Length, ...]
    gages: int

    def __post_init__(self) -> None:
        if not self.rows:
            raise ValueProblem("template rows are none: give at least one distance from the stop")
        if self.gages < 1:
            raise ValueProblem(f"template gages {self.gages} is less than 1: give how many lines can be set")


@dataclass(frozen=True, slots=True)
class Placing:
    """One placing of the template: the holes it strikes.

    Args:
        holes: where, as (x, y) from the left end and along the face's own y, as struck.
    """

    holes: tuple[tuple[Length, Length], ...]


@dataclass(frozen=True, slots=True)
class FaceSetups:
    """The two ways to mark the holes of one face.

    Args:
        face: the face.
        by_hand: placements of the square when every cross line and every row is squared by hand.
        placings: the fewest placings of the template.
    """

    face: Face
    by_hand: int
    placings: tuple[Placing, ...]

    @property
    def with_template(self) -> int:
        """How many placings of the template it takes."""
        return len(self.placings)

    @property
    def saving(self) -> int:
        """Placements saved by the template; below zero where the square is quicker."""
        return self.by_hand - self.with_template


def plan_setups(patterns: tuple[Pattern, ...], template: Template) -> tuple[FaceSetups, ...]:
    """Both plans for every face that has holes.

    By hand each cross line and each row line of a pattern is one placement of the square.

    Args:
        patterns: of the part.
        template: the shop's.

    Returns:
        One plan a face, in the order of the patterns.
    """
    return tuple(
        _plan(face, [pattern for pattern in patterns if pattern.face is face], template)
        for face in dict.fromkeys(pattern.face for pattern in patterns)
    )


def _plan(face: Face, patterns: list[Pattern], template: Template) -> FaceSetups:
    by_hand = sum(len(pattern.columns) + len(pattern.rows) for pattern in patterns)
    spots = sorted(
        {(spot.struck[0].ticks, spot.struck[1].ticks) for pattern in patterns for spot in pattern.spots}
    )
    rows = tuple(sorted({row.ticks for row in template.rows}))
    placings = [placing for island in _islands(spots, rows) for placing in _placings(island, rows, template)]
    return FaceSetups(face, by_hand, tuple(placings))


def _islands(spots: list[Spot], rows: tuple[int, ...]) -> list[list[Spot]]:
    """Holes so far apart along the part that no placing reaches from one lot to the next."""
    reach = rows[-1] - rows[0]
    islands: list[list[Spot]] = []
    for spot in spots:
        if islands and spot[0] - islands[-1][-1][0] <= reach:
            islands[-1].append(spot)
        else:
            islands.append([spot])
    return islands


def _placings(island: list[Spot], rows: tuple[int, ...], template: Template) -> list[Placing]:
    x0, y0 = island[0][0], min(y for _, y in island)
    shape = tuple((x - x0, y - y0) for x, y in island)
    chosen = _fewest_placings(shape, rows, template.gages)
    return [
        Placing(tuple((Length(island[hole][0]), Length(island[hole][1])) for hole in sorted(held)))
        for held in chosen
    ]


@lru_cache(maxsize=4096)
def _fewest_placings(
    shape: tuple[Spot, ...], rows: tuple[int, ...], gages: int
) -> tuple[frozenset[int], ...]:
    """The fewest placings for a shape of holes; equal shapes, of which a job is full, are planned once."""
    candidates = _maximal(
        {
            held
            for laid in (shape, tuple((y, x) for x, y in shape))
            for turned in (rows, tuple(-row for row in reversed(rows)))
            for held in _reached(laid, turned, gages)
        }
    )
    return tuple(candidates[number] for number in fewest(candidates, len(shape)))


def _reached(shape: tuple[Spot, ...], rows: tuple[int, ...], gages: int) -> set[frozenset[int]]:
    """What each placing strikes: one stop, and as many gage lines as can be set within the reach.

    Only stops that bring a row onto a hole can strike one.
    """
    reach = rows[-1] - rows[0]
    stops = {across - row for _, across in shape for row in rows}
    found: set[frozenset[int]] = set()
    for hit in _maximal({_hit(shape, stop, rows) for stop in stops}):
        lines: dict[int, set[int]] = {}
        for hole in hit:
            lines.setdefault(shape[hole][0], set()).add(hole)
        places = sorted(lines)
        for number, first in enumerate(places):
            within = [place for place in places[number + 1 :] if place - first <= reach]
            for others in combinations(within, min(gages - 1, len(within))):
                found.add(frozenset(hole for place in (first, *others) for hole in lines[place]))
    return found


def _hit(shape: tuple[Spot, ...], stop: int, rows: tuple[int, ...]) -> frozenset[int]:
    struck = {stop + row for row in rows}
    return frozenset(number for number, (_, across) in enumerate(shape) if across in struck)


def _maximal(sets: set[frozenset[int]]) -> tuple[frozenset[int], ...]:
    """The sets that are not part of another one, in a fixed order."""
    ordered = sorted(sets, key=lambda held: (-len(held), sorted(held)))
    kept: list[frozenset[int]] = []
    for held in ordered:
        if not any(held < other for other in kept):
            kept.append(held)
    return tuple(kept)
