import math

import numpy as np
import pytest

from gageline.solid.toes import flat_area, round_toes
from gageline.steel import Section, find


def section(name: str) -> Section:
    stock = find(name)
    assert isinstance(stock, Section)
    return stock


def outline(stock: Section) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    return np.array(stock.outline()[0])


def test_the_area_of_a_triangle() -> None:
    triangle = np.array([(0.0, 0.0), (3.0, 0.0), (0.0, 4.0)])
    assert flat_area(triangle) == pytest.approx(6)
    assert flat_area(triangle[::-1]) == pytest.approx(-6)


@pytest.mark.parametrize("name", ["W16X26", "HP10X57", "IPE 300", "UPN 200", "HSS6X6X3/8"])
def test_square_and_printed_toes_stay(name: str) -> None:
    stock = section(name)
    assert round_toes(stock, outline(stock)) is not None
    assert len(round_toes(stock, outline(stock))) == len(outline(stock))


# toes of an S-shape, a tee, a channel and an angle: 4, 2, 2 and 2 arcs of 7 points for one corner each
@pytest.mark.parametrize(("name", "toes"), [("S20X86", 4), ("ST12X45", 2), ("MC10X33.6", 2), ("L6X4X1/2", 2)])
def test_rolled_toes_are_rounded_down_to_the_printed_area(name: str, toes: int) -> None:
    stock = section(name)
    rounded = round_toes(stock, outline(stock))
    assert len(rounded) == len(outline(stock)) + 6 * toes
    assert abs(flat_area(outline(stock))) > stock.area * 1.005
    assert abs(flat_area(rounded)) == pytest.approx(stock.area, rel=5e-4)
    assert rounded.min(axis=0) == pytest.approx(outline(stock).min(axis=0))
    assert rounded.max(axis=0) == pytest.approx(outline(stock).max(axis=0))


def test_an_angles_toe_is_a_true_arc_at_the_inside_of_its_legs() -> None:
    stock = section("L6X4X1/2")
    rounded = round_toes(stock, outline(stock))
    lying = rounded[(rounded[:, 0] > 3) & (rounded[:, 1] > 0)]
    radius = 4 - lying[:, 0].min()
    centre = (4 - radius, 0.5 - radius)
    assert [math.dist(point, centre) for point in lying] == pytest.approx([radius] * 7)
    # the excess of the sharp outline over the table is what two toes leave out
    excess = abs(flat_area(outline(stock))) - stock.area
    assert 2 * (1 - math.pi / 4) * radius**2 == pytest.approx(excess)


def test_a_toe_is_never_larger_than_its_flange_is_thick() -> None:
    stock = section("L3X3X3/16")
    rounded = round_toes(stock, outline(stock))
    assert abs(flat_area(rounded)) > stock.area * 1.005
    lying = rounded[(rounded[:, 0] > 2.5) & (rounded[:, 1] > 1e-6)]
    assert 3 - lying[:, 0].min() == pytest.approx(3 / 16)


def test_an_outline_of_less_than_the_printed_area_stays() -> None:
    stock = section("L8X6X1")
    assert abs(flat_area(outline(stock))) < stock.area
    assert len(round_toes(stock, outline(stock))) == len(outline(stock))
