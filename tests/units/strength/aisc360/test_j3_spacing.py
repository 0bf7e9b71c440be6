from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import j3_spacing


def test_slots_need_a_diameter_of_steel_between_them() -> None:
    assert j3_spacing.minimum_spacing(0.75).value == pytest.approx(2.0)
    assert j3_spacing.minimum_spacing(0.75, 1.875).value == pytest.approx(2.625)


@pytest.mark.parametrize(("t", "most"), [(0.25, 3.0), (1.0, 6.0)])
def test_most_edge_distance(t: float, most: float) -> None:
    assert j3_spacing.maximum_edge_distance(t).value == most


@pytest.mark.parametrize(
    ("t", "weathering", "most"), [(0.25, False, 6.0), (1, False, 12.0), (0.25, True, 3.5), (1, True, 7.0)]
)
def test_most_spacing(t: float, weathering: bool, most: float) -> None:
    assert j3_spacing.maximum_spacing(t, weathering=weathering).value == most


def test_a_hole_at_the_edge_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"l_e = 0.4 in must be more than half the hole, 0.40625 in: move"):
        j3_spacing.clear_to_edge(0.4, 0.8125)


def test_holes_that_meet_are_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"s = 0.8 in must be more than the hole, 0.8125 in: give the holes"
    ):
        j3_spacing.clear_between_holes(0.8, 0.8125)
