from __future__ import annotations

import numpy as np
import pytest

from gageline.errors import GagelineError
from gageline.strength.balance import Balance, Law, Pattern, Resultant, balance, resultant, settled


def linear(x: np.ndarray, y: np.ndarray) -> Law:
    """Fasteners that resist in proportion to their movement, the one that moves most with a force of one."""

    def law(q: np.ndarray, rows: np.ndarray) -> Resultant:
        points = Pattern.of(x[:, rows], y[:, rows], q)
        first = np.argmax(points.move, axis=0)
        most = points.move.max(axis=0)
        force = points.move / most
        t = np.stack([part[first, np.arange(len(rows))] for part in points.along()])
        return resultant(points, force, force, None, -t / most)

    return law


X = np.array([[-1.0, -1.0], [1.0, 1.0], [1.0, 1.0], [-1.0, -1.0]])
Y = np.array([[-2.0, -2.0], [-2.0, -2.0], [2.0, 2.0], [2.0, 2.0]])


def test_a_linear_law_gives_the_elastic_answer() -> None:
    target = np.array([[0.0, 0.0], [-0.6, -1.0], [-0.8, 0.0]])
    found = balance(linear(X, Y), target)
    # stiffness 4, 4 and Σr² = 20; the farthest fastener moves by the sum of the shift and the turn
    shift, turn = 0.6 / 4, 0.8 / 20
    most = np.hypot(shift + turn * 1.0, turn * 2.0)
    assert found.size == pytest.approx([1 / most, 4.0])
    assert found.q[:, 0] / found.q[2, 0] == pytest.approx([0.0, shift / turn, 1.0])


def test_the_tangent_is_the_derivative() -> None:
    law, rows = linear(X[:, :1], Y[:, :1]), np.array([0])
    q = np.array([[0.3], [-0.5], [0.4]])
    found = law(q, rows)
    for i in range(3):
        step = np.zeros((3, 1))
        step[i] = 1e-6
        slope = (law(q + step, rows).W - law(q - step, rows).W) / 2e-6
        assert found.tangent[:, i] == pytest.approx(slope, abs=1e-8)


def test_the_secant_gives_back_the_resultant() -> None:
    q = np.array([[0.3, 0.1], [-0.5, 0.2], [0.4, 0.9]])
    found = linear(X, Y)(q, np.arange(2))
    assert np.einsum("ijn,jn->in", found.secant, q) == pytest.approx(found.W)


def test_an_open_end_is_told() -> None:
    open_end = Balance(np.zeros((3, 2)), np.array([1.0, np.nan]))
    with pytest.raises(
        GagelineError, match=r"no balance found for 1 of 2 groups: check their layout and load"
    ):
        settled(open_end)
