"""Integer programs whose answers are known by hand."""

from __future__ import annotations

from itertools import product
from random import Random
from typing import Any

import numpy as np

from gageline.stock.program import INFINITE, Answer, Outcome, add_columns, add_rows, new_model, whole
from gageline.stock.watch import start_watch


def covering(least: float, weights: list[float], most: float = 9.0, limit: float = INFINITE) -> Any:
    """Columns of unit cost that must together weigh at least so much, and at most the limit."""
    model = new_model()
    add_rows(model, np.array([least]), np.array([limit]))
    count = len(weights)
    add_columns(model, np.ones(count), np.full(count, most), [([0], [w]) for w in weights])
    return model


def test_the_least_number_of_whole_columns() -> None:
    # 20/7 is above two, so three columns are needed where fractions would do with 2.86
    found = whole(covering(20.0, [7.0, 4.0]), start_watch(5.0), first=False)
    assert found.answer is Answer.BEST
    assert found.values is not None
    assert found.values.sum() == 3
    assert found.values @ np.array([7, 4]) >= 20
    assert found.values.dtype == np.int64


def test_columns_stop_at_their_upper_bound() -> None:
    found = whole(covering(20.0, [7.0, 4.0], most=2.0), start_watch(5.0), first=False)
    assert found.values is not None
    assert (found.answer, found.values.tolist()) == (Answer.BEST, [2, 2])


def test_what_cannot_be_is_none() -> None:
    # fractions could weigh 5 exactly, whole columns of 3 cannot
    found = whole(covering(5.0, [3.0], limit=5.0), start_watch(5.0), first=False)
    assert (found.answer, found.values) == (Answer.NONE, None)


def test_the_first_solution_is_a_solution() -> None:
    found = whole(covering(20.0, [7.0, 4.0]), start_watch(5.0), first=True)
    assert found.answer in {Answer.BEST, Answer.FOUND}
    assert found.values is not None
    assert found.values @ np.array([7, 4]) >= 20


def test_rows_and_values_of_a_column_go_together() -> None:
    # x counts 2 in the second row alone, y counts 1 in both: the least x + y is y = 3, x = 1
    model = new_model()
    add_rows(model, np.array([3.0, 5.0]), np.full(2, INFINITE))
    add_columns(model, np.ones(2), np.full(2, INFINITE), [([1], [2.0]), ([0, 1], [1.0, 1.0])])
    found = whole(model, start_watch(5.0), first=False)
    assert found.values is not None
    assert (found.answer, found.values.tolist()) == (Answer.BEST, [1, 3])


def test_no_time_is_no_proof() -> None:
    # choose some of ten so that both sums come to half, as equal splits of a market: one in a thousand
    random = Random(1)  # noqa: S311  # test data
    sizes = np.array([[random.randint(1, 99) for _ in range(10)] for _ in range(2)])
    half = sizes.sum(axis=1) // 2
    assert not any((sizes @ np.array(take) == half).all() for take in product((0, 1), repeat=10))
    for seconds, answer in ((0.0, Answer.UNKNOWN), (60.0, Answer.NONE)):
        model = new_model()
        add_rows(model, half.astype(float), half.astype(float))
        add_columns(model, np.ones(10), np.ones(10), [([0, 1], [float(n) for n in c]) for c in sizes.T])
        assert whole(model, start_watch(seconds), first=False) == Outcome(answer, None)
