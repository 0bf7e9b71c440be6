"""The working that a sheet prints is worked out again from its own text, for every clause and branch."""

from __future__ import annotations

from collections.abc import Iterable
from types import ModuleType

import pytest

from connections import worked_out
from gageline.strength import Method, Step, Strength, clauses_in
from gageline.strength import aisc360 as rules
from gageline.strength.aisc360 import (
    d_shear_lag,
    d_tension,
    f_bars,
    f_flexure,
    g_shear,
    h_combined,
    j2_welds,
    j3_bolts,
    j3_spacing,
    j4_elements,
    j7_bearing,
    j10_forces,
    manual_bases,
    manual_copes,
    manual_plates,
    manual_prying,
    manual_seats,
    manual_welds,
)

LRFD, ASD = Method.LRFD, Method.ASD
W18X50 = {"Z_x": 101.0, "S_x": 88.9, "r_y": 1.65, "r_ts": 1.98, "J": 1.24, "h_o": 17.4}
COPED = manual_copes.coped_section(18.0, 0.355, 7.5, 0.57, 2.0)
SHALLOW = manual_copes.coped_section(18.0, 1.0, 7.5, 0.57, 2.0)
DEEP = manual_copes.coped_section(21.0, 0.25, 8.24, 0.615, 8.0)
SIDESWAY = {"t_w": 0.25, "t_f": 0.5, "b_f": 7.0, "h": 20.0, "M_y": 1000.0}
PRY = {"b": 2.32, "a": 1.43, "p": 2.9, "d_b": 0.875, "d_hole": 0.9375}
SEAT = {"F_yw": 50, "t_w": 0.31, "t_f": 0.515, "d": 14.1, "k": 0.915}

Found = Strength | Step | tuple[Step, ...]

CASES: dict[str, list[Found]] = {
    "net_width": [d_tension.net_width(8, 0.8125, 2, [(2, 3)])],
    "effective_net_area": [d_tension.effective_net_area(3.0, 0.85)],
    "all_joined": [d_shear_lag.all_joined()],
    "part_joined": [d_shear_lag.part_joined(1.13, 9.0)],
    "transverse_welds": [d_shear_lag.transverse_welds(2.0, 3.5)],
    "welded_plate": [d_shear_lag.welded_plate(6.0, 4.0), d_shear_lag.welded_plate(6.0, 4.0, 0.8)],
    "flange_or_web_rows": [
        d_shear_lag.flange_or_web_rows(4, 8.0, b_f, flange=flange)
        for b_f, flange in ((5.25, True), (6.5, True), (5.25, False))
    ],
    "angle_rows": [d_shear_lag.angle_rows(n) for n in (3, 4)],
    "tensile_yielding": [
        j4_elements.tensile_yielding(50, 3),
        d_tension.tensile_yielding(50, 3),
    ],
    "tensile_rupture": [j4_elements.tensile_rupture(65, 3), d_tension.tensile_rupture(65, 3)],
    "shear_yielding": [j4_elements.shear_yielding(50, 3)],
    "shear_rupture": [j4_elements.shear_rupture(65, 3)],
    "block_shear": [j4_elements.block_shear(50, 65, 3, 2, 0.4, u) for u in (0.5, 1.0)],
    "compression": [j4_elements.compression(50, 3, L, 0.1) for L in (1, 8, 20)],
    "flexural_yielding": [j4_elements.flexural_yielding(50, 3)],
    "flexural_rupture": [j4_elements.flexural_rupture(65, 3)],
    "moment_gradient": [f_flexure.moment_gradient(10, 5, 9, 6)],
    "channel_c": [f_flexure.channel_c(14.4, 8.07, 358)],
    "plastic_moment": [f_flexure.plastic_moment(50, 101)],
    "lateral_torsional_buckling": [
        f_flexure.lateral_torsional_buckling(50, L, **W18X50) for L in (10, 120, 400)
    ],
    "flange_local_buckling": [f_flexure.flange_local_buckling(50, 107, 93, f) for f in (9.0, 9.47)],
    "weak_axis_yielding": [f_flexure.weak_axis_yielding(50, 16.6, 10.7)],
    "weak_axis_flange_local_buckling": [
        f_flexure.weak_axis_flange_local_buckling(50, 16.6, 10.7, f) for f in (6.0, 12.0)
    ],
    "bar_yielding": [f_bars.bar_yielding(50, 12, 0.5)],
    "bar_lateral_buckling": [f_bars.bar_lateral_buckling(50, 12, 0.5, L, 1.2) for L in (0.5, 9, 40)],
    "rupture_at_holes": [f_bars.rupture_at_holes(50, 65, 4.0, n, 88, 101) for n in (2.0, 3.9)],
    "stocky_web_shear": [g_shear.stocky_web_shear(50, 18, 0.355, 45)],
    "other_web_shear": [g_shear.other_web_shear(50, 18, 0.2, h) for h in (45, 90)],
    "web_shear": [g_shear.web_shear(50, 18, 0.355, 45, rolled_i=i) for i in (True, False)],
    "leg_or_stem_shear": [g_shear.leg_or_stem_shear(50, 8, t) for t in (0.5, 0.25, 0.15)],
    "axial_and_flexure": [h_combined.axial_and_flexure(P, 100, 20, 90, 3, 40) for P in (5, 50)],
    "axial_shear_and_flexure": [h_combined.axial_shear_and_flexure(5, 20, 7, 30, 9, 40)],
    "shear_and_flexure": [h_combined.shear_and_flexure(7, 30, 9, 40)],
    "minimum_fillet": [j2_welds.minimum_fillet(0.6)],
    "maximum_fillet": [j2_welds.maximum_fillet(t) for t in (0.2, 0.25)],
    "effective_fillet_size": [j2_welds.effective_fillet_size(0.25, 0.9)],
    "long_weld_length": [j2_welds.long_weld_length(0.1875, L) for L in (10, 27, 80)],
    "directional_increase": [j2_welds.directional_increase(37)],
    "fillet_weld": [j2_welds.fillet_weld(0.25, 10, 80, 30)],
    "fillet_lines_along_and_across": [j2_welds.fillet_lines_along_and_across(20, 30)],
    "minimum_groove_throat": [j2_welds.minimum_groove_throat(1.0)],
    "groove_shear": [j2_welds.groove_shear(0.25, 10)],
    "groove_tension": [j2_welds.groove_tension(0.25, 10)],
    "bolt_tension": [j3_bolts.bolt_tension("150", 0.875)],
    "bolt_shear": [j3_bolts.bolt_shear("120", "X", 1, 2, end_loaded_length=L) for L in (0, 40)],
    "bolt_tension_with_shear": [
        j3_bolts.bolt_tension_with_shear("120", "N", 0.75, V, m) for V in (1, 8, 40) for m in (LRFD, ASD)
    ],
    "slip": [j3_bolts.slip(28, h, fillers=f) for h in j3_bolts.Hole for f in (1, 2)],
    "slip_with_tension": [j3_bolts.slip_with_tension(28, 8, 70, m) for m in (LRFD, ASD)],
    "bearing": [
        j3_bolts.bearing(65, 0.75, 0.25, h, deformation=d)
        for h in (j3_bolts.Hole.STANDARD, j3_bolts.Hole.LONG_PERPENDICULAR)
        for d in (True, False)
    ],
    "tear_out": [
        j3_bolts.tear_out(65, 0.75, 0.25, h, deformation=d)
        for h in (j3_bolts.Hole.STANDARD, j3_bolts.Hole.LONG_PERPENDICULAR)
        for d in (True, False)
    ],
    "bolt_group": [j3_bolts.bolt_group([j3_bolts.bolt_shear("120", "N", 0.75)] * 3)],
    "minimum_spacing": [j3_spacing.minimum_spacing(0.75, h) for h in (0.0, 1.875)],
    "maximum_edge_distance": [j3_spacing.maximum_edge_distance(t) for t in (0.25, 1)],
    "maximum_spacing": [j3_spacing.maximum_spacing(0.25, weathering=w) for w in (True, False)],
    "clear_to_edge": [j3_spacing.clear_to_edge(1.25, 0.8125)],
    "clear_between_holes": [j3_spacing.clear_between_holes(3, 0.8125)],
    "surface_bearing": [j7_bearing.surface_bearing(50, 3)],
    "concrete_bearing": [j7_bearing.concrete_bearing(3, 100, A) for A in (100, 200, 900)],
    "flange_local_bending": [j10_forces.flange_local_bending(50, 0.5, y) for y in (1, 10)],
    "web_local_yielding": [j10_forces.web_local_yielding(50, 0.3, 1, 3, 18, y) for y in (0, 40)],
    "web_local_crippling": [
        j10_forces.web_local_crippling(50, 0.3, 0.5, 18, b, y) for y in (0, 40) for b in (2, 6)
    ],
    "web_sidesway_buckling": [
        j10_forces.web_sidesway_buckling(**SIDESWAY, L_b=400.0, M_r=M, method=ASD, restrained=r)
        for r in (True, False)
        for M in (500, 900)
    ],
    "web_compression_buckling": [j10_forces.web_compression_buckling(50, 0.3, 16, 18, y) for y in (0, 40)],
    "base_plate_cantilever": [
        manual_bases.base_plate_cantilever(22, 22, 12.7, 12.2),
        manual_bases.base_plate_cantilever(22, 22, 12.7, 12.2, 500, 900),
    ],
    "hollow_base_cantilever": [manual_bases.hollow_base_cantilever(12, 14, 6, 8)],
    "base_plate_thickness": [manual_bases.base_plate_thickness(6, 500, 50, 22, 22, m) for m in (LRFD, ASD)],
    "single_cope_flexure": [
        manual_copes.single_cope_flexure(50, 18, 0.355, 4, 4.5, COPED),
        manual_copes.single_cope_flexure(50, 18, 1.0, 4, 4.5, SHALLOW),
        manual_copes.single_cope_flexure(50, 21, 0.25, 30, 30.5, DEEP),
    ],
    "double_cope_C_b": [manual_copes.double_cope_C_b(18, c, 9, 2) for c in (6, 12)],
    "double_cope_flexure": [
        manual_copes.double_cope_flexure(50, 18, t, c_t=6, c_b=6, d_ct=2, d_cb=2, e=6.5)
        for t in (0.1, 0.355, 1.5)
    ],
    "conventional_plate": [
        manual_plates.conventional_plate(n, 0.75, 3, j3_bolts.Hole.STANDARD).e for n in (3, 8)
    ],
    "maximum_plate_thickness": [manual_plates.maximum_plate_thickness(50, 12, 54, 0.44, 25)],
    "single_plate_weld": [manual_plates.single_plate_weld(0.5)],
    "plate_without_stabilizer": [manual_plates.plate_without_stabilizer(12, 0.5, 9)],
    "prying": [
        manual_prying.prying(40, 65, t, **PRY, method=m) for t in (0.5, 1.2, 2.0) for m in (LRFD, ASD)
    ],
    "required_bearing_length": [
        manual_seats.required_bearing_length(R, **SEAT, method=m) for R in (20, 50, 90) for m in (LRFD, ASD)
    ],
    "seat_eccentricity": [manual_seats.seat_eccentricity(2, 0.75, 0.5)],
    "seat_leg_flexure": [manual_seats.seat_leg_flexure(50, 6, 0.5, 0.8)],
    "seat_weld": [manual_seats.seat_weld(0.25, 6, 2)],
    "stiffened_seat_weld": [manual_seats.stiffened_seat_weld(0.25, 12.0, 6.0)],
    "minimum_thickness_at_weld": [manual_welds.minimum_thickness_at_weld(0.25, 65, n) for n in (1, 2)],
}
WITHOUT_WORKING = {
    "hole_for_net_area",
    "flange_slenderness",
    "web_slenderness",
    "strong_axis_flexure",
    "nominal_tensile_stress",
    "nominal_shear_stress",
    "coped_section",
}


def lines_of(found: Found) -> Iterable[Step]:
    if isinstance(found, Strength):
        return found.steps
    return (found,) if isinstance(found, Step) else found


def modules() -> list[ModuleType]:
    return [getattr(rules, name) for name in rules.__all__ if name.islower()]


def test_every_clause_is_worked_out() -> None:
    listed = {name for module in modules() for name in clauses_in(module)}
    assert listed == set(CASES) | WITHOUT_WORKING


@pytest.mark.parametrize("name", CASES)
def test_each_line_comes_to_its_value(name: str) -> None:
    for case in CASES[name]:
        for line in lines_of(case):
            if line.values:
                assert worked_out(line) == pytest.approx(line.value, rel=1e-9), line.line


@pytest.mark.parametrize("name", CASES)
def test_each_number_was_given_or_found_above(name: str) -> None:
    for case in CASES[name]:
        known: dict[str, float] = {}
        for line in lines_of(case):
            for symbol, value in line.values:
                if symbol in known:
                    assert value == pytest.approx(known[symbol], rel=1e-12), line.line
            known[line.symbol] = line.value


def test_the_standard_is_named_once() -> None:
    clauses = [clause for module in modules() for clause in clauses_in(module).values()]
    assert {clause.standard for clause in clauses} == {rules.SPECIFICATION, rules.MANUAL}
    assert all(clause.title and clause.number for clause in clauses)
