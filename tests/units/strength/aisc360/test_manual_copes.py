from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import manual_copes

SECTION = manual_copes.coped_section(18.0, 0.355, 7.5, 0.57, 2.0)


def test_a_cope_that_leaves_the_flange_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"cope depth d_c = 0.5 in must lie between the flange, 0.57 in"):
        manual_copes.coped_section(18.0, 0.355, 7.5, 0.57, 0.5)


def test_a_cope_longer_than_the_method_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"cope length c = 37 in must be at most 2d = 36 in: shorten the cope"
    ):
        manual_copes.single_cope_flexure(50, 18, 0.355, 37, 37.5, SECTION)


def test_a_cope_deeper_than_the_method_is_refused() -> None:
    deep = manual_copes.coped_section(18.0, 0.355, 7.5, 0.57, 9.5)
    with pytest.raises(
        ValueProblem, match=r"cope depth d_c = 9.5 in must be at most d/2 = 9 in: make it shallower"
    ):
        manual_copes.single_cope_flexure(50, 18, 0.355, 4, 4.5, deep)


def test_two_copes_deeper_than_the_method_are_refused() -> None:
    with pytest.raises(ValueProblem, match=r"cope depth 8 in must be at most 0.4d = 7.2 in: make the cope"):
        manual_copes.double_cope_flexure(50, 18, 0.355, c_t=6, c_b=6, d_ct=8, d_cb=2, e=6.5)


def test_two_copes_longer_than_the_method_are_refused() -> None:
    with pytest.raises(ValueProblem, match=r"cope length 40 in must be at most 2d = 36 in: shorten the cope"):
        manual_copes.double_cope_flexure(50, 18, 0.355, c_t=6, c_b=40, d_ct=2, d_cb=2, e=40.5)


def test_the_last_two_ranges_of_local_buckling_meet() -> None:
    # at twice the limit the elastic stress is F_y within a thousandth
    section = SECTION
    found = manual_copes.single_cope_flexure(50, 18, 0.355, 30, 30.5, section)
    limits = {line.symbol: line.value for line in found.steps}
    t_w = section.h_o / (2 * limits["λ_p"])
    below, above = (
        manual_copes.single_cope_flexure(50, 18, t_w * f, 30, 30.5, section).nominal for f in (0.9999, 1.0001)
    )
    assert below == pytest.approx(above, rel=0.002)


def test_gradient_of_two_copes() -> None:
    # Equation 9-21 for c_t = d: (3 + 0)(1 - 1/9); the shorter bottom cope takes the least value
    assert manual_copes.double_cope_C_b(18, 18, 18, 2).value == pytest.approx(3 * 8 / 9)
    assert manual_copes.double_cope_C_b(18, 6, 5, 2).value == 1.84


def test_a_tee_of_two_rectangles() -> None:
    # b 4 x 1 flange, 1 x 4 stem: area 8, centroid 1.75 from the flange's face
    section = manual_copes.coped_section(9.0, 1.0, 4.0, 1.0, 4.0)
    inertia = 4 / 12 + 4 * 1.25**2 + 64 / 12 + 4 * 1.25**2
    assert section.S_c == pytest.approx(inertia / 3.25)
    assert section.Z_c == pytest.approx(4 * 0.5 + 4 * 2.0)
