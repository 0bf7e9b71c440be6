"""An independent check of cutting plans: it shares no code with the planner and adds everything up again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence


def check_counts(
    stocks: Sequence[tuple[int, int, int | None]],
    items: Sequence[tuple[int, int]],
    used: Iterable[tuple[int, dict[int, int], int]],
    cost: int,
) -> list[str]:
    """Check a plan in whole numbers, as benchmark instances have it.

    Args:
        stocks: (length, cost, number on hand or None) of each kind of stick.
        items: (length, demand) of each kind of piece.
        used: (kind of stick, {kind of piece: count}, number of sticks cut so).
        cost: what the plan says it costs.

    Returns:
        What is wrong, one sentence each; empty where the plan is right.
    """
    wrong = []
    made: Counter[int] = Counter()
    taken: Counter[int] = Counter()
    spent = 0
    for kind, counts, times in used:
        length, price, _ = stocks[kind]
        fill = sum(items[i][0] * n for i, n in counts.items())
        if times < 1 or min(counts.values(), default=0) < 1:
            wrong.append(f"stick of {length} cut {times} times to {counts}: counts start at 1")
        if fill > length:
            wrong.append(f"stick of {length} is filled to {fill}")
        taken[kind] += times
        spent += price * times
        for i, n in counts.items():
            made[i] += n * times
    for i, (length, demand) in enumerate(items):
        if made[i] != demand:
            wrong.append(f"piece of {length}: {made[i]} cut, {demand} wanted")
    for kind, (length, _, limit) in enumerate(stocks):
        if limit is not None and taken[kind] > limit:
            wrong.append(f"stick of {length}: {taken[kind]} used, {limit} on hand")
    if spent != cost:
        wrong.append(f"the plan says it costs {cost}, the sticks cost {spent}")
    return wrong
