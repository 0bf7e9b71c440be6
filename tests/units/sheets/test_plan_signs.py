"""Signs of the plan."""

import pytest

from gageline.sheets import Polygon, extent, texts
from gageline.sheets.plan_members import PlanColumn
from gageline.sheets.plan_regions import Region
from gageline.sheets.plan_signs import SIGN_WORDS, PlanView, column_sign, end_sign, legend
from gageline.steel import Section, find

VIEW = PlanView(Region(0, 0, 100, 100), 1.0, 0.0, 100.0)


def column(name: str, depth: tuple[float, float], *, below: bool = False) -> PlanColumn:
    stock = find(name)
    assert isinstance(stock, Section)
    return PlanColumn("C1", "C1", stock, (50.0, 50.0), depth, below)


@pytest.mark.parametrize(("depth", "size"), [((1.0, 0.0), (18.0, 7.5)), ((0.0, 1.0), (7.5, 18.0))])
def test_column_is_to_scale_and_stands_as_it_is_turned(
    depth: tuple[float, float], size: tuple[float, float]
) -> None:
    # AISC Manual Table 1-1: W18X50 is 18.0 deep and 7.50 wide.
    box = extent(tuple(column_sign(column("W18X50", depth), VIEW)))
    assert (box.width, box.height) == pytest.approx(size)


def test_column_too_small_to_be_read_is_drawn_larger() -> None:
    small = PlanView(Region(0, 0, 100, 100), 0.05, 0.0, 100.0)
    box = extent(tuple(column_sign(column("W18X50", (1.0, 0.0)), small)))
    assert box.width == pytest.approx(2.4)


def test_hollow_column_is_drawn_hollow() -> None:
    (shape,) = column_sign(column("HSS6X6X3/8", (1.0, 0.0)), VIEW)
    assert isinstance(shape, Polygon)
    assert len(shape.openings) == 1


@pytest.mark.parametrize("kind", SIGN_WORDS)
def test_every_connection_has_a_sign_of_its_own(kind: str) -> None:
    own = end_sign(kind, (0.0, 0.0), (1.0, 0.0))
    assert own
    assert all(own != end_sign(other, (0.0, 0.0), (1.0, 0.0)) for other in SIGN_WORDS if other != kind)


def test_legend_names_what_is_on_the_sheet_and_no_more() -> None:
    words = [text.text for text in texts(legend(("double angles",), 60.0).items)]
    assert "double angles" in words
    assert "shear end plate" not in words
