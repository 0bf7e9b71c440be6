from __future__ import annotations

import pytest

from gageline.detail.values import bolt_value, row_value, sizes_under, slip_value
from gageline.errors import ValueProblem
from gageline.steel import HoleKind, bolt
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


@pytest.mark.parametrize(
    ("grade", "hole", "value"),
    [
        # AISC Design Examples v16, J.5: 9.49 kip in one plane; J.4A: 19.0 in two; J.4B: 13.3 in two
        ("A325-SC", HoleKind.STD, 9.49),
        ("A325-N-SC-A", HoleKind.SSL, 19.0 / 2),
        ("F1852-SC", HoleKind.LSL, 13.3 / 2),
        # 0.50 x 1.13 x 28, and group 150 with 35 kip
        ("A325-SC-B", HoleKind.STD, 15.82),
        ("A490-X-SC", HoleKind.STD, 11.87),
        ("A325-SC", HoleKind.OVS, 0.85 * 9.492),
    ],
)
def test_a_slip_critical_bolt_is_held_by_friction(grade: str, hole: HoleKind, value: float) -> None:
    assert slip_value(bolt("3/4"), grade, hole) == pytest.approx(value, abs=0.03)


def test_slip_of_a_metric_bolt_is_in_kilonewton() -> None:
    # AISC 360-05M Table J3.1M: 142 kN
    assert slip_value(bolt("M20"), "A325-SC", HoleKind.STD) == pytest.approx(0.3 * 1.13 * 142, rel=1e-3)


@pytest.mark.parametrize("grade", ["A325-N", "8.8", "8.8-SC", "SCRAP"])
def test_no_slip_where_bolts_bear_or_no_pretension_is_known(grade: str) -> None:
    assert slip_value(bolt("3/4"), grade, HoleKind.STD) is None
