"""Labels along a line that keep their order and never touch, each as near to its place as can be.

Source: the exact least-squares answer is an isotonic regression, found by pooling adjacent violators
(R. E. Barlow et al., Statistical Inference under Order Restrictions, Wiley 1972, ch. 1; from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise

__all__ = ["needed_span", "spread"]


def needed_span(widths: Sequence[float], gap: float) -> float:
    """The shortest line that these labels fit on, in the unit of the widths."""
    return sum(widths) + gap * max(0, len(widths) - 1)


def spread(
    wanted: Sequence[float], widths: Sequence[float], gap: float, limits: tuple[float, float]
) -> list[float] | None:
    """Centres of labels with the least sum of squared shifts, in order, apart by `gap`, inside the limits.

    Args:
        wanted: where each centre would like to be, in rising order, mm.
        widths: the width of each label along the line, mm.
        gap: free space between neighbours, mm.
        limits: the ends of the line, mm.

    Returns:
        The centres in mm, or None if the labels do not fit between the limits.
    """
    if not wanted:
        return []
    if needed_span(widths, gap) > limits[1] - limits[0] + 1e-9:
        return None
    # Taking off the least distance from the first label turns "apart" into "not falling".
    steps = [(a + b) / 2 + gap for a, b in pairwise(widths)]
    offsets = list(accumulate(steps, initial=0.0))
    low = limits[0] + widths[0] / 2
    high = limits[1] - widths[-1] / 2 - offsets[-1]
    level = _isotonic([w - o for w, o in zip(wanted, offsets, strict=True)])
    # Clipping an isotonic regression to bounds gives the regression under those bounds.
    return [min(max(z, low), max(low, high)) + o for z, o in zip(level, offsets, strict=True)]


def _isotonic(values: Sequence[float]) -> list[float]:
    """The nearest sequence that never falls, by least squares."""
    blocks: list[tuple[float, int]] = []
    for value in values:
        total, count = value, 1
        while blocks and blocks[-1][0] * count >= total * blocks[-1][1]:
            before, many = blocks.pop()
            total, count = total + before, count + many
        blocks.append((total, count))
    return [total / count for total, count in blocks for _ in range(count)]
