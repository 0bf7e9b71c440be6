"""Laws of the clauses: more steel or better steel is never weaker, a deeper cope never stronger."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gageline.strength import Method
from gageline.strength.aisc360 import (
    f_bars,
    f_flexure,
    g_shear,
    j2_welds,
    j3_bolts,
    j4_elements,
    j10_forces,
    manual_copes,
    manual_prying,
    manual_seats,
)

ENOUGH = 1 + 1e-9
W18X50 = {"Z_x": 101.0, "S_x": 88.9, "r_y": 1.65, "r_ts": 1.98, "J": 1.24, "h_o": 17.4}
THICK = st.floats(0.1, 2.0)
YIELD = st.floats(36, 65)


def in_order(values: st.SearchStrategy[float]) -> st.SearchStrategy[list[float]]:
    return st.lists(values, min_size=2, max_size=2).map(sorted)


@given(in_order(THICK), st.floats(0.6, 3))
def test_a_thicker_part_bears_and_tears_no_less(t: list[float], l_c: float) -> None:
    for rule in (j3_bolts.bearing, j3_bolts.tear_out):
        thin, thick = (rule(65, l_c, each).nominal for each in t)
        assert thin <= thick * ENOUGH


@given(in_order(THICK), st.floats(2, 20), st.floats(0.1, 0.9), st.floats(0.1, 4))
def test_a_thicker_part_has_no_less_block_shear(
    t: list[float], shear: float, share: float, tension: float
) -> None:
    thin, thick = (
        j4_elements.block_shear(50, 65, shear * each, share * shear * each, tension * each).nominal
        for each in t
    )
    assert thin <= thick * ENOUGH


@given(in_order(THICK), st.floats(2, 30), st.floats(0, 60), st.floats(1, 2))
def test_a_thicker_bar_bends_no_earlier(t: list[float], d: float, L_b: float, C_b: float) -> None:
    # below the step between F11-2 and F11-3, which is the standard's own
    thin, thick = (f_bars.bar_lateral_buckling(50, d, each, L_b, C_b).nominal for each in t)
    assert thin <= thick * 1.03


@given(in_order(st.floats(0, 600)), st.floats(1, 3))
def test_a_longer_unbraced_length_is_no_stronger(L_b: list[float], C_b: float) -> None:
    # up to the 0.12 % step at L_r that the rounded constants of the standard leave
    short, long = (f_flexure.lateral_torsional_buckling(50, each, **W18X50, C_b=C_b).nominal for each in L_b)
    assert long <= short * 1.002


@given(in_order(YIELD), st.floats(0, 600))
def test_a_higher_grade_bends_no_earlier(F_y: list[float], L_b: float) -> None:
    low, high = (f_flexure.lateral_torsional_buckling(each, L_b, **W18X50).nominal for each in F_y)
    assert low <= high * 1.003


@given(in_order(st.floats(0.15, 1.0)), st.floats(8, 40))
def test_a_thicker_web_shears_no_earlier(t_w: list[float], d: float) -> None:
    thin, thick = (
        g_shear.web_shear(50, d, each, 0.9 * d / each, rolled_i=True).available(Method.LRFD) for each in t_w
    )
    assert thin <= thick * ENOUGH


@given(in_order(st.floats(1, 8.9)), st.floats(1, 30), st.floats(0.2, 0.8))
def test_a_deeper_cope_is_never_stronger(d_c: list[float], c: float, t_w: float) -> None:
    shallow, deep = (
        manual_copes.single_cope_flexure(
            50, 18, t_w, c, c + 0.5, manual_copes.coped_section(18, t_w, 7.5, 0.57, each)
        ).nominal
        for each in d_c
    )
    assert deep <= shallow * ENOUGH


@given(in_order(st.floats(1, 30)), st.floats(1, 8.9), st.floats(0.2, 0.8))
def test_a_longer_cope_is_never_stronger(c: list[float], d_c: float, t_w: float) -> None:
    section = manual_copes.coped_section(18, t_w, 7.5, 0.57, d_c)
    short, long = (
        manual_copes.single_cope_flexure(50, 18, t_w, each, each + 0.5, section).nominal for each in c
    )
    assert long <= short * ENOUGH


@given(in_order(st.floats(0.2, 0.8)), st.floats(1, 8.9), st.floats(1, 30))
def test_a_thicker_coped_web_is_never_weaker(t_w: list[float], d_c: float, c: float) -> None:
    thin, thick = (
        manual_copes.single_cope_flexure(
            50, 18, each, c, c + 0.5, manual_copes.coped_section(18, each, 7.5, 0.57, d_c)
        ).nominal
        for each in t_w
    )
    assert thin <= thick * 1.001


@given(in_order(THICK), st.floats(5, 60), st.sampled_from(Method))
def test_a_thicker_fitting_pries_no_more(t: list[float], B_c: float, method: Method) -> None:
    thin, thick = (
        manual_prying.prying(B_c, 65, each, b=2.0, a=1.5, p=3.0, d_b=0.75, d_hole=0.8125, method=method)[
            -1
        ].value
        for each in t
    )
    assert thin <= thick * ENOUGH
    assert thick <= B_c


@given(in_order(st.floats(0, 30)), st.sampled_from(["120", "144", "150"]), st.sampled_from(Method))
def test_more_shear_leaves_no_more_tension(V_r: list[float], group: str, method: Method) -> None:
    little, much = (j3_bolts.bolt_tension_with_shear(group, "N", 0.875, each, method).nominal for each in V_r)
    assert much <= little
    assert little <= j3_bolts.bolt_tension(group, 0.875).nominal * ENOUGH


@given(in_order(st.floats(0, 90)))
def test_a_weld_is_stronger_the_more_the_load_crosses_it(theta: list[float]) -> None:
    along, across = (j2_welds.fillet_weld(0.25, 10, theta=each).nominal for each in theta)
    assert along <= across * ENOUGH


@given(in_order(st.floats(0.1, 80)))
def test_a_longer_weld_is_never_weaker(length: list[float]) -> None:
    short, long = (j2_welds.long_weld_length(0.25, each)[-1].value for each in length)
    assert short <= long * ENOUGH


@given(in_order(st.floats(0, 12)), st.floats(0, 60))
def test_a_longer_bearing_is_never_weaker(l_b: list[float], y_end: float) -> None:
    short, long = (j10_forces.web_local_yielding(50, 0.3, 1, each, 18, y_end).nominal for each in l_b)
    assert short <= long * ENOUGH
    short, long = (j10_forces.web_local_crippling(50, 0.3, 0.5, 18, each, y_end).nominal for each in l_b)
    assert short <= long * ENOUGH


@given(st.floats(0.1, 150), st.sampled_from(Method))
def test_the_bearing_that_is_asked_for_is_enough(R: float, method: Method) -> None:
    d, t_w, t_f, k = 17.7, 0.300, 0.425, 0.827
    l_b = manual_seats.required_bearing_length(R, 50, t_w, t_f, d, k, method)[-1].value
    for found in (
        j10_forces.web_local_yielding(50, t_w, k, l_b, d, 0.0),
        j10_forces.web_local_crippling(50, t_w, t_f, d, l_b, 0.0),
    ):
        assert found.check(R, method).passes


@given(st.floats(0.1, 100), st.floats(0.1, 100))
def test_utilisation_is_demand_over_capacity(demand: float, A_gv: float) -> None:
    check = j4_elements.shear_yielding(50, A_gv).check(demand, Method.LRFD)
    assert check.utilisation == pytest.approx(demand / (0.6 * 50 * A_gv))
