from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength import Method
from gageline.strength.aisc360 import manual_prying

PRY = {"b": 2.32, "a": 1.43, "p": 2.9, "d_b": 0.875, "d_hole": 0.9375}


def test_a_thick_fitting_does_not_pry() -> None:
    assert manual_prying.prying(40, 65, 2.0, **PRY, method=Method.LRFD)[-1].value == 40


def test_a_thin_fitting_is_fully_pried() -> None:
    steps = {line.symbol: line.value for line in manual_prying.prying(40, 65, 0.5, **PRY, method=Method.LRFD)}
    assert steps["Q"] == pytest.approx((0.5 / steps["t_c"]) ** 2 * (1 + steps["δ"]))


def test_an_edge_far_away_does_not_count() -> None:
    near, far = (
        manual_prying.prying(40, 65, 0.5, **(PRY | {"a": a}), method=Method.LRFD) for a in (1.25 * 2.32, 9.0)
    )
    assert near[-1].value == pytest.approx(far[-1].value)


def test_a_bolt_against_the_stem_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"b = 0.4 in must be more than half the bolt, 0.4375 in: move the bolt"
    ):
        manual_prying.prying(40, 65, 0.5, **(PRY | {"b": 0.4}), method=Method.LRFD)


def test_a_pitch_within_the_hole_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"p = 0.9 in must be more than the hole, 0.9375 in: give the bolts"
    ):
        manual_prying.prying(40, 65, 0.5, **(PRY | {"p": 0.9}), method=Method.LRFD)
