"""Plates with known perfect packings, for tests of the plate planner."""

from __future__ import annotations

from random import Random

from gageline.stock.rectangles import Box

__all__ = ["cut_apart"]


def cut_apart(seed: int, count: int, long: int = 120, wide: int = 60) -> list[Box]:
    """One sheet cut edge to edge at random into so many pieces: laid back they fill it."""
    random = Random(seed)  # noqa: S311  # test data
    parts = [(long, wide)]
    while len(parts) < count:
        along, across = parts.pop(max(range(len(parts)), key=lambda k: parts[k][0] * parts[k][1]))
        size = max(along, across)
        at = random.randint(size // 4, size - size // 4)
        parts += (
            [(at, across), (along - at, across)] if along >= across else [(along, at), (along, across - at)]
        )
    return [Box(along, across, grain=False) for along, across in parts]
