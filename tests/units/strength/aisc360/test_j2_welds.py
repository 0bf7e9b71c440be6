from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import j2_welds


@pytest.mark.parametrize("angle", [-1.0, 90.1])
def test_an_angle_outside_the_method_is_refused(angle: float) -> None:
    with pytest.raises(
        ValueProblem, match=r"θ = .* degrees must lie between 0 and 90: measure the acute angle"
    ):
        j2_welds.fillet_weld(0.25, 10, theta=angle)


def test_a_weld_without_length_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"L = -3 must be more than 0"):
        j2_welds.fillet_weld(0.25, -3)


@pytest.mark.parametrize(
    ("t", "least"),
    [(0.25, 1 / 8), (0.26, 3 / 16), (0.5, 3 / 16), (0.51, 1 / 4), (0.75, 1 / 4), (2.0, 5 / 16)],
)
def test_least_fillet(t: float, least: float) -> None:
    # Table J2.4
    assert j2_welds.minimum_fillet(t).value == least


@pytest.mark.parametrize(("t", "most"), [(3 / 16, 3 / 16), (1 / 4, 3 / 16), (3 / 8, 5 / 16)])
def test_most_fillet_along_an_edge(t: float, most: float) -> None:
    assert j2_welds.maximum_fillet(t).value == pytest.approx(most)


def test_a_weld_across_the_load_is_half_as_strong_again() -> None:
    assert j2_welds.directional_increase(90).value == pytest.approx(1.5)


def test_a_short_weld_counts_a_quarter_of_its_length() -> None:
    assert j2_welds.effective_fillet_size(0.25, 0.8).value == pytest.approx(0.2)


@pytest.mark.parametrize(
    ("length", "counts"), [(10.0, 10.0), (25.0, 25.0), (50.0, 40.0), (75.0, 45.0), (100.0, 45.0)]
)
def test_long_welds(length: float, counts: float) -> None:
    # legs of 1/4 in: 100, 200, 300 and 400 times the leg
    assert j2_welds.long_weld_length(0.25, length)[-1].value == pytest.approx(counts)
