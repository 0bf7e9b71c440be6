from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.steel import DENSITY, Measure, Plate, Profile, foot_weight
from gageline.units import Length


def inches(value: float) -> Length:
    return Length.from_inches(value)


def test_a_plate_weighs_its_volume() -> None:
    plate = Plate(inches(0.5), inches(8))
    # AISC Manual: a square foot of 1 in plate weighs 40.8 lb
    assert Plate(inches(1), inches(12)).weight == pytest.approx(40.8, abs=0.05)
    assert plate.area == 4.0
    assert plate.weight == pytest.approx(4 * 12 * DENSITY)
    assert plate.profile is Profile.PLATE


def test_a_foot_of_steel_weighs_three_point_four_times_its_area() -> None:
    assert foot_weight(1.0) == pytest.approx(3.4028, abs=5e-5)


def test_the_outline_is_the_rectangle() -> None:
    (loop,) = Plate(inches(0.5), inches(8)).outline()
    assert sorted(loop) == [(-0.25, -4.0), (-0.25, 4.0), (0.25, -4.0), (0.25, 4.0)]


@pytest.mark.parametrize(
    ("thickness", "width", "name"),
    [(0.5, 8, "PL1/2X8"), (1.25, 6.5, "PL1-1/4X6-1/2"), (0.1875, 3, "PL3/16X3"), (0.3, 5, "PL0.3X5")],
)
def test_a_plate_in_inches_is_named_in_fractions(thickness: float, width: float, name: str) -> None:
    assert Plate(inches(thickness), inches(width)).designation == name


def test_a_plate_in_millimetres_is_named_in_millimetres() -> None:
    assert Plate(Length.from_mm(12), Length.from_mm(200), Measure.EU).designation == "PL 12x200"


def test_a_plate_thicker_than_wide_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match="plate thickness 8 is more than the width 1/2: write the thickness"
    ):
        Plate(inches(8), inches(0.5))


def test_a_plate_of_nothing_is_refused() -> None:
    with pytest.raises(ValueProblem, match="plate thickness 0 is not above zero"):
        Plate(inches(0), inches(8))
