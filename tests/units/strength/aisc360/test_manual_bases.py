from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength import Method
from gageline.strength.aisc360 import manual_bases


def test_a_plate_smaller_than_its_column_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"plate 12 x 22 in must cover the column, 12.7 x 12.2 in: make"):
        manual_bases.base_plate_cantilever(12, 22, 12.7, 12.2)


def test_a_load_above_the_concrete_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"P_r = 900 kip must be at most the bearing strength, 800 kip: enlarge"
    ):
        manual_bases.base_plate_cantilever(22, 22, 12.7, 12.2, 900, 800)


def test_a_light_load_bends_only_the_middle() -> None:
    found = {s.symbol: s.value for s in manual_bases.base_plate_cantilever(13, 13, 12.7, 12.2, 100, 800)}
    assert found["λ"] < 1
    assert found["n'"] == pytest.approx(found["λ"] * (12.7 * 12.2) ** 0.5 / 4)


def test_thickness_grows_with_the_root_of_the_load() -> None:
    one, four = (manual_bases.base_plate_thickness(6, P, 50, 22, 22, Method.ASD).value for P in (100, 400))
    assert four == pytest.approx(2 * one)


def test_a_hollow_column_bends_its_plate_at_0_95_of_its_sides() -> None:
    """(12 - 5.7)/2 = 3.15 and (14 - 7.6)/2 = 3.2 in."""
    found = {s.symbol: s.value for s in manual_bases.hollow_base_cantilever(12, 14, 6, 8)}
    assert found == pytest.approx({"m": 3.15, "n": 3.2, "l": 3.2})


def test_a_plate_smaller_than_a_hollow_column_is_refused() -> None:
    with pytest.raises(ValueProblem, match="plate 5 x 14 in must cover the column, 6 x 8 in"):
        manual_bases.hollow_base_cantilever(5, 14, 6, 8)
