"""Simple shear connections against AISC, Companion to the Manual, Volume 1: Design Examples, v16.0 (2023).

Each test is one example with its page; the intermediate values are held as well as the last one. Values are
printed to three figures and rounded at each step, so they are held to 1 %.
"""

from __future__ import annotations

import pytest

from gageline.strength import Method, Strength
from gageline.strength.aisc360 import (
    d_tension,
    j2_welds,
    j3_bolts,
    j3_spacing,
    j4_elements,
    j10_forces,
    manual_copes,
    manual_prying,
    manual_seats,
    manual_welds,
)

F_Y, F_U = 50.0, 65.0  # A992 and A572 Gr. 50
D_34, H_34 = 0.75, 13 / 16
D_78, H_78 = 0.875, 15 / 16


def near(value: float) -> object:
    return pytest.approx(value, rel=0.01)


def both(strength: Strength) -> tuple[float, float]:
    return strength.available(Method.LRFD), strength.available(Method.ASD)


def pair(lrfd: float, asd: float) -> object:
    return pytest.approx((lrfd, asd), rel=0.01)


def step_of(strength: Strength, symbol: str) -> float:
    return next(line.value for line in strength.steps if line.symbol == symbol)


def net(d_h: float) -> float:
    return d_tension.hole_for_net_area(d_h)


def edge(l_e: float, d_h: float, t: float) -> Strength:
    return j3_bolts.tear_out(F_U, j3_spacing.clear_to_edge(l_e, d_h).value, t)


def inner(s: float, d_h: float, t: float) -> Strength:
    return j3_bolts.tear_out(F_U, j3_spacing.clear_between_holes(s, d_h).value, t)


@pytest.mark.parametrize(
    ("d", "planes", "lrfd", "asd"),
    [(D_34, 1, 17.9, 11.9), (D_34, 2, 35.8, 23.9), (D_78, 1, 24.3, 16.2), (D_78, 2, 48.7, 32.5)],
)
def test_bolt_shear_of_manual_table_7_1(d: float, planes: int, lrfd: float, asd: float) -> None:
    assert both(j3_bolts.bolt_shear("120", "N", d, planes)) == pair(lrfd, asd)


@pytest.mark.parametrize(
    ("d", "d_h", "edge_lrfd", "edge_asd", "bearing_lrfd", "bearing_asd"),
    [(D_34, H_34, 49.4, 32.9, 87.8, 58.5), (D_78, H_78, 45.7, 30.5, 102, 68.3)],
)
def test_bearing_per_inch_of_manual_tables_7_4_and_7_5(
    d: float, d_h: float, edge_lrfd: float, edge_asd: float, bearing_lrfd: float, bearing_asd: float
) -> None:
    assert both(edge(1.25, d_h, 1.0)) == pair(edge_lrfd, edge_asd)
    at_pitch = j3_bolts.effective_bolt([j3_bolts.bearing(F_U, d, 1.0), inner(3.0, d_h, 1.0)])
    assert both(at_pitch) == pair(bearing_lrfd, bearing_asd)


def test_bearing_governs_two_inches_from_an_edge() -> None:
    found = j3_bolts.effective_bolt([j3_bolts.bearing(F_U, D_34, 1.0), edge(2.0, H_34, 1.0)])
    assert both(found) == pair(87.8, 58.5)


def test_weld_per_sixteenth_of_manual_equation_8_2() -> None:
    assert both(j2_welds.fillet_weld(1 / 16, 1.0)) == pytest.approx((1.392, 0.928), rel=0.001)


@pytest.mark.parametrize(("sides", "factor"), [(1, 3.09), (2, 6.19)])
def test_minimum_thickness_of_manual_equations_9_6_and_9_7(sides: int, factor: float) -> None:
    found = manual_welds.minimum_thickness_at_weld(5 / 16, F_U, sides)
    assert found.value == pytest.approx(factor * 5 / F_U, rel=0.002)


def test_block_shear_parts_of_manual_tables_9_3() -> None:
    # through II.A-28A: leh 1 1/4, 39.6 and 26.4 kip/in; lev 1 1/4, four rows, shear yielding 231 kip/in
    found = j4_elements.block_shear(F_Y, F_U, 10.25, 10.25 - 3.5 * net(H_34), 1.25 - 0.5 * net(H_34))
    assert 0.75 * step_of(found, "R_t") == near(39.6)
    assert step_of(found, "R_t") / 2 == near(26.4)
    assert 0.75 * step_of(found, "R_y") == near(231)


def test_block_shear_parts_of_manual_table_10_1c() -> None:
    # through II.A-8, IIA-108: top edge 1 1/2, 31.1 and 20.7 kip/in; each pitch of 3 in, 62.2 and 41.4
    assert both(j4_elements.shear_rupture(F_U, 1.5 - 0.5 * net(H_34))) == pair(31.1, 20.7)
    assert both(j4_elements.shear_rupture(F_U, 3.0 - net(H_34))) == pair(62.2, 41.4)


def test_example_1a_angles() -> None:
    # II.A-1A, IIA-5 ff.: 2L5x3-1/2x5/16, 1'-11 1/2" long, eight rows of 3/4 bolts
    t, rows = 2 * 5 / 16, 8
    length = 3 * (rows - 1) + 2.5
    yielding = j4_elements.shear_yielding(F_Y, length * t)
    assert step_of(yielding, "R_n") == near(441)
    assert both(yielding) == pair(441, 294)
    A_nv = (length - rows * net(H_34)) * t
    assert A_nv == near(10.3)
    assert both(j4_elements.shear_rupture(F_U, A_nv)) == pair(302, 201)
    A_gv = (length - 1.25) * t
    assert A_gv == near(13.9)
    assert A_gv - 7.5 * net(H_34) * t == near(9.80)
    # tension area as printed: the edge distance behind it is not legible
    assert both(j4_elements.block_shear(F_Y, F_U, A_gv, 9.80, 0.586)) == pair(315, 210)


def test_example_1a_bolts() -> None:
    # II.A-1A, IIA-6 ff.: the bottom bolt tears out of the angles, the others shear; 282 and 187 kip
    angle, web, flange = 5 / 16, 0.760, 0.710
    assert edge(1.25, H_34, angle).steps[-1].values[0][1] == near(0.844)
    assert step_of(j3_bolts.bearing(F_U, D_34, angle), "R_n") == near(36.6)
    assert both(j3_bolts.bearing(F_U, D_34, angle)) == pair(27.5, 18.3)
    assert both(edge(1.25, H_34, angle)) == pair(15.5, 10.3)
    assert both(inner(3.0, H_34, angle)) == pair(40.1, 26.7)
    assert both(j3_bolts.bearing(F_U, D_34, web)) == pair(66.7, 44.5)
    assert both(inner(3.0, H_34, web)) == pair(97.5, 65.0)
    assert both(j3_bolts.bearing(F_U, D_34, flange)) == pair(62.3, 41.6)
    assert both(inner(3.0, H_34, flange)) == pair(90.8, 60.5)
    shear = j3_bolts.bolt_shear("120", "N", D_34, 2)
    bottom = j3_bolts.effective_bolt([shear, edge(1.25, H_34, 2 * angle)])
    others = j3_bolts.effective_bolt(
        [shear, j3_bolts.bearing(F_U, D_34, 2 * angle), j3_bolts.bearing(F_U, D_34, web)]
    )
    assert both(bottom) == pair(31.0, 20.6)
    assert both(others) == pair(35.8, 23.8)
    assert both(j3_bolts.bolt_group([bottom] + 7 * [others])) == pair(282, 187)


def test_example_2a_angles_and_web_bolts() -> None:
    # II.A-2A, IIA-41 ff.: 2L4x3-1/2x3/8, 1'-11 1/2" long
    t = 2 * 3 / 8
    assert both(j4_elements.shear_yielding(F_Y, 23.5 * t)) == pair(528, 352)
    assert both(j4_elements.shear_rupture(F_U, (23.5 - 8 * net(H_34)) * t)) == pair(363, 242)
    A_gv = (23.5 - 1.25) * t
    assert A_gv == near(16.7)
    # tension area as printed: it closes with 1 3/8 in, the text prints 1 5/8 in
    block = j4_elements.block_shear(F_Y, F_U, A_gv, A_gv - 7.5 * net(H_34) * t, 0.703)
    assert block.nominal == near(506)
    assert both(block) == pair(380, 253)
    assert both(j3_bolts.bearing(F_U, D_34, 3 / 8)) == pair(32.9, 22.0)
    assert both(edge(1.25, H_34, 3 / 8)) == pair(18.5, 12.4)
    assert both(inner(3.0, H_34, 3 / 8)) == pair(48.1, 32.1)
    bolts = [j3_bolts.bolt_shear("120", "N", D_34, 2)] * 8
    assert both(j3_bolts.bolt_group(bolts)) == pair(286, 190)
    assert manual_welds.minimum_thickness_at_weld(5 / 16, F_U).value == near(0.238)


def test_example_2b_bolts_in_shear_and_tension() -> None:
    # II.A-2B, IIA-52 ff.: ten 7/8 bolts, V 75 / 50 kip, T 60 / 40 kip
    assert edge(1.25, H_78, 0.5).steps[-1].values[0][1] == near(0.781)
    outer = edge(1.25, H_78, 2 * 0.5)
    assert outer.nominal == near(60.9)
    assert both(outer) == pair(45.7, 30.5)
    group = j3_bolts.bolt_group([outer] + 4 * [j3_bolts.bolt_shear("120", "N", D_78, 2)])
    assert both(group) == pair(241, 161)
    for method, stress, reduced, total in (
        (Method.LRFD, 12.5, 89.2, 402),
        (Method.ASD, 8.32, 89.3, 268),
    ):
        V_r = 75 / 10 if method is Method.LRFD else 50 / 10
        found = j3_bolts.bolt_tension_with_shear("120", "N", D_78, V_r, method)
        assert step_of(found, "f_rv") == near(stress)
        assert step_of(found, "F'_nt") == near(reduced)
        assert 10 * found.available(method) == near(total)


def test_example_2b_prying() -> None:
    # II.A-2B, IIA-55 ff.
    for method, total, t_c, capacity in ((Method.LRFD, 402, 1.33, 93.7), (Method.ASD, 268, 1.34, 62.4)):
        steps = manual_prying.prying(
            total / 10, F_U, 0.5, b=2.32, a=1.43, p=2.90, d_b=D_78, d_hole=H_78, method=method
        )
        found = {line.symbol: line.value for line in steps}
        assert (found["a'"], found["b'"]) == pair(1.87, 1.88)
        assert found["ρ"] == near(1.01)
        assert found["δ"] == near(0.677)
        assert found["t_c"] == near(t_c)
        assert found["α'"] == near(4.54)
        assert found["Q"] == near(0.233)
        assert 10 * found["T_c"] == near(capacity)


def test_example_2b_angles_and_beam_web() -> None:
    # II.A-2B, IIA-57 ff.: 2L4x3-1/2x1/2, 1'-2 1/2" long; W18x50
    assert both(j4_elements.shear_yielding(F_Y, 14.5 * 1.0)) == pair(435, 290)
    assert both(j4_elements.shear_rupture(F_U, (14.5 - 5 * 1.0) * 1.0)) == pair(278, 186)
    block = j4_elements.block_shear(F_Y, F_U, 13.3, 8.80, 0.930)
    assert block.nominal == near(404)
    assert both(block) == pair(303, 202)
    assert both(j4_elements.shear_yielding(F_Y, 18.0 * 0.355)) == pair(192, 128)
    web = j4_elements.block_shear(F_Y, F_U, 1.95, 1.95, 5.15)
    assert web.nominal == near(393)
    assert both(web) == pair(295, 197)
    assert manual_welds.minimum_thickness_at_weld(1.64 / 16, F_U, 2).value == near(0.156)


def test_example_3_angles() -> None:
    # II.A-3, IIA-65: 2L4x3-1/2x5/16, 2'-0" long
    assert both(j4_elements.shear_yielding(F_Y, 24 * 5 / 8)) == pair(450, 300)
    assert both(j4_elements.shear_rupture(F_U, 24 * 5 / 8)) == pair(439, 293)
    assert manual_welds.minimum_thickness_at_weld(3 / 16, F_U, 2).value == near(0.286)
    assert manual_welds.minimum_thickness_at_weld(1 / 4, F_U).value == near(0.190)


def test_example_4_bolts() -> None:
    # II.A-4, IIA-68 ff.: W18x50 web 0.355, 2L5x3-1/2x1/4, three rows of 3/4 bolts
    shear, web, angles = j3_bolts.bolt_shear("120", "N", D_34, 2), 0.355, 0.5
    top = j3_bolts.effective_bolt([shear, edge(1.25, H_34, web)])
    middle = j3_bolts.effective_bolt([shear, j3_bolts.bearing(F_U, D_34, web), inner(3.0, H_34, web)])
    bottom = j3_bolts.effective_bolt([shear, edge(1.25, H_34, angles)])
    assert both(top) == pair(17.5, 11.7)
    assert both(middle) == pair(31.2, 20.8)
    assert both(bottom) == pair(24.8, 16.5)
    assert both(j3_bolts.bolt_group([top, middle, bottom])) == pair(73.5, 49.0)
    assert both(j3_bolts.bolt_group([bottom, shear, shear])) == pair(96.4, 64.1)


def test_example_4_coped_web() -> None:
    # II.A-4, IIA-70 ff.: cope 4 in long and 2 in deep, e = 4 1/2 in
    section = manual_copes.coped_section(18.0, 0.355, 7.50, 0.570, 2.0)
    assert section.h_o == 16.0
    assert section.Z_c == near(42.5)
    assert section.S_c == near(23.4)
    found = manual_copes.single_cope_flexure(F_Y, 18.0, 0.355, 4.0, 4.5, section)
    published = {"f": 0.444, "k": 21.7, "λ": 45.1, "k_1": 9.63, "λ_p": 35.5, "M_p": 2130, "M_y": 1170}
    for symbol, value in (published | {"M_n": 1870, "R_n": 416}).items():
        assert step_of(found, symbol) == near(value)
    assert both(found) == pair(374, 249)
    assert both(j4_elements.shear_yielding(F_Y, 16.0 * 0.355)) == pair(170, 113)


def test_example_4_block_shear() -> None:
    # II.A-4, IIA-73: the beam taken 1/4 in short
    t, edge_down, edge_along = 0.355, 1.25, 1.625 - 0.25
    A_gv = (edge_down + 6.0) * t
    A_nv, A_nt = A_gv - 2.5 * net(H_34) * t, (edge_along - 0.5 * net(H_34)) * t
    assert (A_gv, A_nv, A_nt) == pytest.approx((2.57, 1.79, 0.333), rel=0.01)
    found = j4_elements.block_shear(F_Y, F_U, A_gv, A_nv, A_nt)
    assert found.nominal == near(91.5)
    assert both(found) == pair(68.6, 45.8)


def test_example_5_block_shear_of_a_welded_coped_web() -> None:
    # II.A-5, IIA-78
    A_gv, A_nt = (8.5 + 3 / 8) * 0.355, (3.5 - 3 / 4) * 0.355
    assert (A_gv, A_nt) == pair(3.15, 0.976)
    found = j4_elements.block_shear(F_Y, F_U, A_gv, A_gv, A_nt)
    assert found.nominal == near(158)
    assert both(found) == pair(119, 79.0)


def test_example_6_deep_cope() -> None:
    # II.A-6, IIA-82 ff.: W21x62, cope 9 in long and 8 in deep, e = 9 1/2 in
    section = manual_copes.coped_section(21.0, 0.400, 8.24, 0.615, 8.0)
    assert section.Z_c == near(32.2)
    assert section.S_c == near(17.8)
    found = manual_copes.single_cope_flexure(F_Y, 21.0, 0.400, 9.0, 9.5, section)
    published = {"f": 0.858, "k": 4.04, "λ": 32.5, "k_1": 3.47, "λ_p": 21.3, "M_p": 1610, "M_y": 890}
    for symbol, value in (published | {"M_n": 1230, "R_n": 129}).items():
        assert step_of(found, symbol) == near(value)
    assert both(found) == pair(116, 77.2)
    assert both(j4_elements.shear_yielding(F_Y, 13.0 * 0.400)) == pair(156, 104)
    assert both(j4_elements.shear_rupture(F_U, 13.0 * 0.400)) == pair(152, 102)


def test_example_9_shared_bolts() -> None:
    # II.A-9, IIA-113: 20.0 kip a bolt against shear and against bearing on the girder web
    assert both(j3_bolts.bolt_shear("120", "N", D_34, 2)) == pair(35.8, 23.9)
    assert both(j3_bolts.bearing(F_U, D_34, 0.355)) == pair(31.2, 20.8)
    check = j3_bolts.bearing(F_U, D_34, 0.355).check(2 * 60 / 6, Method.LRFD)
    assert check.utilisation == near(20.0 / 31.2)


def test_example_11a_end_plate() -> None:
    # II.A-11A, IIA-123 ff.: PL1/4x6x0'-8 1/2", three rows of 3/4 bolts
    t = 2 * 0.25
    yielding = j4_elements.shear_yielding(F_Y, 8.5 * t)
    assert both(yielding) == pair(128, 85.3)
    A_nv = (8.5 - 3 * net(H_34)) * t
    assert A_nv == near(2.94)
    assert both(j4_elements.shear_rupture(F_U, A_nv)) == pair(86.3, 57.5)
    A_gv = (8.5 - 1.25) * t
    block = j4_elements.block_shear(F_Y, F_U, A_gv, A_gv - 2.5 * net(H_34) * t, (1.25 - 0.5 * net(H_34)) * t)
    assert tuple(step_of(block, name) for name in ("R_v", "R_y", "R_t")) == pytest.approx(
        (0.6 * 65 * 2.54, 0.6 * 50 * 3.63, 65 * 0.406), rel=0.01
    )
    assert both(block) == pair(93.8, 62.5)
    weld = j2_welds.fillet_weld(3 / 16, 2 * (8.5 - 2 * 3 / 16))
    assert both(weld) == pair(67.9, 45.3)


def test_example_11b_end_plate_pulled() -> None:
    # II.A-11B, IIA-131 ff.: PL1/2x8-1/2x1'-2 1/2", five rows of 7/8 bolts
    for method, total, capacity in ((Method.LRFD, 402, 83.6), (Method.ASD, 268, 55.7)):
        steps = manual_prying.prying(
            total / 10, F_U, 0.5, b=2.57, a=1.50, p=2.90, d_b=D_78, d_hole=H_78, method=method
        )
        found = {line.symbol: line.value for line in steps}
        assert (found["a'"], found["b'"]) == pair(1.94, 2.13)
        assert found["ρ"] == near(1.10)
        assert found["t_c"] == near(1.42)
        assert found["α'"] == near(4.97)
        assert found["Q"] == near(0.208)
        assert 10 * found["T_c"] == near(capacity)
    assert both(j4_elements.shear_yielding(F_Y, 14.5)) == pair(435, 290)
    assert both(j4_elements.shear_rupture(F_U, 14.5 - 5 * net(H_78))) == pair(278, 186)
    assert manual_welds.minimum_thickness_at_weld(2.08 / 16, F_U, 2).value == near(0.198)
    assert both(d_tension.tensile_rupture(F_U, 326 / F_U)) == pair(245, 163)


def test_example_28a_angle_and_web_bolts() -> None:
    # II.A-28A, IIA-268 ff.: L4x3x3/8x0'-11 1/2", four rows of 3/4 bolts, W18x35 web 0.300
    t = 3 / 8
    assert both(j4_elements.shear_yielding(F_Y, 11.5 * t)) == pair(129, 86.0)
    assert both(j4_elements.shear_rupture(F_U, (11.5 - 4 * net(H_34)) * t)) == pair(87.8, 58.5)


@pytest.mark.parametrize(
    ("rows", "t", "lrfd", "asd"),
    [
        (2, 1 / 4, 54.8, 36.6),
        (3, 1 / 4, 85.9, 57.3),
        (5, 1 / 4, 148, 98.7),
        (8, 5 / 16, 302, 201),
        (8, 3 / 8, 362, 241),
    ],
)
def test_angles_of_manual_table_10_1a(rows: int, t: float, lrfd: float, asd: float) -> None:
    length = 3 * (rows - 1) + 2.5
    rupture = j4_elements.shear_rupture(F_U, 2 * t * (length - rows * net(H_34)))
    assert both(rupture) == pair(lrfd, asd)
    assert both(j4_elements.shear_yielding(F_Y, 2 * t * length)) > both(rupture)


def test_example_18_web_edge_and_block_shear() -> None:
    # II.A-18, IIA-202 ff.: W18x35 web 0.300, lev 1 1/2: 64.0 and 42.7 kip/in
    assert both(edge(1.5, H_34, 1.0)) == pair(64.0, 42.7)
    assert both(edge(1.5, H_34, 0.300)) == pair(19.2, 12.8)
    # Table 10-10c parts as printed: 31.1, 62.2 and, for the tension area, 76.2 kip/in
    A_gv = 1.5 + 9.0
    found = j4_elements.block_shear(
        F_Y, F_U, A_gv * 0.3, (A_gv - 3.5 * net(H_34)) * 0.3, 76.2 / (0.75 * F_U) * 0.3
    )
    assert both(found) == pair(88.2, 58.7)


def test_example_16_seat() -> None:
    # II.A-16, IIA-161 ff.: W14x38 (d 14.1, tw 0.310, tf 0.515, kdes 0.915) on a seat 6 in long, 5/8 in thick
    d, t_w, t_f, k = 14.1, 0.310, 0.515, 0.915
    at_zero = j10_forces.web_local_yielding(F_Y, t_w, k, 0.0, d, 0.0)
    at_one = j10_forces.web_local_yielding(F_Y, t_w, k, 1.0, d, 0.0)
    assert both(at_zero) == pair(35.5, 23.6)
    assert (at_one.nominal - at_zero.nominal, (at_one.nominal - at_zero.nominal) / 1.5) == pair(15.5, 10.3)
    cripple_zero = j10_forces.web_local_crippling(F_Y, t_w, t_f, d, 0.0, 0.0)
    cripple_one = j10_forces.web_local_crippling(F_Y, t_w, t_f, d, 1.0, 0.0)
    assert both(cripple_zero) == pair(44.7, 29.8)
    more = cripple_one.nominal - cripple_zero.nominal
    assert (0.75 * more, more / 2) == pair(4.45, 2.96)
    assert both(j4_elements.shear_yielding(F_Y, 6 * 5 / 8)) == pair(113, 75.0)
    weld = manual_seats.seat_weld(5 / 16, 7.0, (4.0 + 0.75) / 2)
    assert both(weld) == pair(53.4, 35.6)


def test_a_seat_needs_the_bearing_that_its_web_strength_gives_back() -> None:
    # closes II.A-16 on itself: the length that is needed for the strength of a length is that length
    d, t_w, t_f, k = 14.1, 0.310, 0.515, 0.915
    for l_b in (1.0, 2.0, 5.0):
        least = min(
            j10_forces.web_local_yielding(F_Y, t_w, k, l_b, d, 0.0).available(Method.LRFD),
            j10_forces.web_local_crippling(F_Y, t_w, t_f, d, l_b, 0.0).available(Method.LRFD),
        )
        found = manual_seats.required_bearing_length(least, F_Y, t_w, t_f, d, k, Method.LRFD)
        assert found[-1].value == pytest.approx(l_b)
