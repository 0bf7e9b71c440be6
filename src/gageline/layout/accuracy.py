"""How far rounding to the tape puts marks from their true places."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from gageline.layout.holes import Pattern
from gageline.layout.mark import Mark
from gageline.part import Face
from gageline.units import ZERO, Length

__all__ = ["Accuracy", "accuracy"]


@dataclass(frozen=True, slots=True)
class Accuracy:
    """The largest errors of a layout, all from rounding readings to the tape.

    Args:
        mark: of any reading of any mark.
        hole_to_hole: of the distance between any two holes of one face.
        in_pattern: of the distance between any two holes of one mating pattern; zero by design where the
            tape has its spacings, as it has all but those on slopes and skews.
    """

    mark: Length
    hole_to_hole: Length
    in_pattern: Length


def accuracy(marks: tuple[Mark, ...], patterns: tuple[Pattern, ...]) -> Accuracy:
    """The largest errors of a part's marks and of the distances between its holes.

    Args:
        marks: of the part.
        patterns: of the part.
    """
    readings = (reading for mark in marks for spot in mark.spots for reading in (spot.x, spot.y, spot.y_back))
    by_face: dict[Face, list[Pattern]] = {}
    for pattern in patterns:
        by_face.setdefault(pattern.face, []).append(pattern)
    return Accuracy(
        mark=max((abs(reading.error) for reading in readings), default=ZERO),
        hole_to_hole=max((_apart(found) for found in by_face.values()), default=ZERO),
        in_pattern=max((_apart([pattern]) for pattern in patterns if pattern.group.mates), default=ZERO),
    )


def _apart(patterns: list[Pattern]) -> Length:
    """The largest error of a distance between two of the holes, in whole ticks upward."""
    spots = [spot for pattern in patterns for spot in pattern.spots]
    true, struck = (
        _distances(np.array([(x.ticks, y.ticks) for x, y in places], dtype=float))
        for places in ([spot.at for spot in spots], [spot.struck for spot in spots])
    )
    return Length(int(np.ceil(np.abs(struck - true).max())))


def _distances(
    places: np.ndarray[tuple[int, int], np.dtype[np.float64]],
) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    """Every distance between two of the places, shape (n, n)."""
    apart = places[:, np.newaxis, :] - places[np.newaxis, :, :]
    return np.asarray(np.hypot(apart[..., 0], apart[..., 1]))
