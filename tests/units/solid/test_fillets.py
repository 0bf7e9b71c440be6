import math

import pytest
from shapely import Polygon

from gageline.solid.fillets import as_rolled
from gageline.steel import Section, find


def section(name: str) -> Section:
    stock = find(name)
    assert isinstance(stock, Section)
    return stock


@pytest.mark.parametrize("name", ["W16X26", "WT8X18", "IPE 300", "UPN 200", "HSS6X6X3/8", "Pipe6STD"])
def test_radii_that_are_known_stay(name: str) -> None:
    assert as_rolled(section(name)) == section(name)


@pytest.mark.parametrize(
    "name", ["M8X6.5", "S12X35", "HP10X57", "C8X11.5", "MC10X33.6", "L4X4X3/8", "ST3X6.25"]
)
def test_the_radius_is_settled_by_the_printed_area(name: str) -> None:
    stock = section(name)
    assert Polygon(stock.outline()[0]).area > stock.area * 1.005
    assert Polygon(as_rolled(stock).outline()[0]).area == pytest.approx(stock.area, rel=1e-5)


def test_the_radius_of_an_angle_by_hand() -> None:
    # L4X4X3/8, A = 2.86 (AISC Manual Table 1-7): legs 4 x 3/8 and 3 5/8 x 3/8 leave 0.0006 for the fillet
    radius = as_rolled(section("L4X4X3/8")).fillet
    assert radius is not None
    by_hand = math.sqrt((2.86 - 0.375 * (4 + 3.625)) / (1 - math.pi / 4))
    assert radius.inches == pytest.approx(by_hand, abs=5e-4)


def test_no_fillet_is_left_where_the_legs_alone_are_over_the_printed_area() -> None:
    stock = section("L3X3X3/16")
    assert pytest.approx(stock.area, abs=5e-3) == 3 / 16 * (6 - 3 / 16)
    radius = as_rolled(stock).fillet
    assert radius is not None
    assert radius.inches < 0.05


def test_the_radius_never_reaches_past_k() -> None:
    stock = section("L8X6X1")
    assert Polygon(stock.outline()[0]).area < stock.area
    assert as_rolled(stock).fillet == stock.fillet
