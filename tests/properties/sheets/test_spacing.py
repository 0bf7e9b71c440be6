"""The spreading of labels against a general optimiser (scipy, SLSQP)."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import LinearConstraint, minimize

from gageline.sheets.spacing import needed_span, spread

cases = st.lists(st.tuples(st.floats(0, 50), st.floats(0, 8)), min_size=1, max_size=6)


def apart(centres: list[float], widths: list[float], gap: float, limits: tuple[float, float]) -> bool:
    edges = [(c - w / 2, c + w / 2) for c, w in zip(centres, widths, strict=True)]
    return (
        edges[0][0] >= limits[0] - 1e-6
        and edges[-1][1] <= limits[1] + 1e-6
        and all(b[0] - a[1] >= gap - 1e-6 for a, b in pairwise(edges))
    )


@settings(max_examples=150, deadline=None)
@given(cases, st.floats(0, 2), st.floats(0, 60))
def test_no_allowed_placing_is_nearer(case: list[tuple[float, float]], gap: float, length: float) -> None:
    wanted = sorted(at for at, _ in case)
    widths = [w for _, w in case]
    limits = (0.0, length)
    centres = spread(wanted, widths, gap, limits)
    if centres is None:
        assert needed_span(widths, gap) > length
        return
    assert apart(centres, widths, gap, limits)
    n = len(case)
    between = np.eye(n)[1:] - np.eye(n)[:-1]
    least = [(a + b) / 2 + gap for a, b in pairwise(widths)]
    target = np.array(wanted, dtype=np.float64)

    def cost(x: np.ndarray[tuple[int], np.dtype[np.float64]]) -> float:
        return float(np.sum((x - target) ** 2))

    found = minimize(
        cost,
        centres,
        method="SLSQP",
        bounds=[(w / 2, max(w / 2, length - w / 2)) for w in widths],
        constraints=[LinearConstraint(between, lb=least)] if n > 1 else [],
    )
    ours = sum((c - w) ** 2 for c, w in zip(centres, wanted, strict=True))
    assert ours <= found.fun + 1e-4 * (1 + found.fun)
