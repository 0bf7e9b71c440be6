from __future__ import annotations

import pytest

from gageline.detail.values import bolt_value, row_value, sizes_under
from gageline.errors import ValueProblem
from gageline.steel import bolt
from gageline.units import parse_length

THREE = parse_length("3")


def test_the_table_agrees_with_its_formula() -> None:
    # AISC 360-22 J3.7 and J3.11: 0.75 x 54 ksi x area; 0.75 x 2.4 x d x 65 ksi
    for text in ("5/8", "3/4", "7/8", "1", "1-1/8", "1-1/4"):
        size = bolt(text)
        d = size.diameter.inches
        value = bolt_value(size)
        assert value.shear == pytest.approx(0.75 * 54 * 3.14159265 * d * d / 4, rel=0.005)
        assert value.bearing == pytest.approx(0.75 * 2.4 * d * 65, rel=0.005)


def test_a_thin_web_governs_over_two_shear_planes() -> None:
    # Design Examples v16, II.A-4: 0.355 x 87.8 = 31.2 kip at each bolt in the web of W18X50
    assert row_value(bolt("3/4"), 2, parse_length("0.355in"), THREE) == pytest.approx(31.2, abs=0.05)
    assert row_value(bolt("3/4"), 1, parse_length("0.355in"), THREE) == 17.9


def test_a_size_without_a_value() -> None:
    with pytest.raises(ValueProblem, match='bolt "1/2" has no value in the table: use one of 5/8'):
        bolt_value(bolt("1/2"))


def test_rows_that_are_close_tear_out_between_the_bolts() -> None:
    # AISC 360-22 J3.11a: 1.2 x (2 1/4 - 13/16) is less than 2.4 x 3/4, so that 87.8 kip/in become 84.1
    web = parse_length("0.2in")
    assert row_value(bolt("3/4"), 2, web, parse_length("2 1/4")) == pytest.approx(87.8 * 0.2 * 1.725 / 1.8)
    assert row_value(bolt("3/4"), 2, web, THREE) == pytest.approx(87.8 * 0.2)


def test_smaller_bolts_are_of_the_same_system_the_largest_first() -> None:
    assert [one.size for one in sizes_under(bolt("1"))] == ["7/8", "3/4", "5/8"]
    assert [one.size for one in sizes_under(bolt("M24"))] == ["M20", "M16"]
    assert sizes_under(bolt("5/8")) == ()
