from __future__ import annotations

from dataclasses import replace

import pytest

from connections import of_step, worked_out
from gageline.errors import ValueProblem
from gageline.steel import Section, find
from gageline.strength import Case, Load, Material, Method, SimpleBeam, check_beam, largest_uniform_load

A992 = Material("A992", 50.0, 65.0)


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


BEAM = SimpleBeam(
    section("W18x50"), A992, 420.0,
    (Load(Case.DEAD, 0.45 / 12, 0.0, 420.0), Load(Case.LIVE, 0.75 / 12, 0.0, 420.0)),
    unbraced=0.0, live_limit=360, total_limit=240,
)  # fmt: skip


@pytest.mark.parametrize(("method", "M", "capacity"), [(Method.LRFD, 266, 379), (Method.ASD, 184, 252)])
def test_example_f1_1(method: Method, M: float, capacity: float) -> None:
    """AISC Design Examples v16, F.1-1A: W18x50 over 35 ft, braced all along; live load within L/360."""
    bending, _, live, _ = check_beam(BEAM, method)
    assert bending.demand / 12 == pytest.approx(M, rel=0.003)
    assert bending.capacity / 12 == pytest.approx(capacity, rel=0.003)
    assert live.demand == pytest.approx(5 * 0.75 / 12 * 420**4 / (384 * 29000 * 800), rel=1e-3)
    assert live.capacity == pytest.approx(1.17, rel=0.005)
    assert live.utilisation == pytest.approx(746 / 800, rel=0.01)


def test_example_f1_2b_braced_at_thirds() -> None:
    """F.1-2B: middle third governs, C_b 1.01, 304 and 202 kip-ft."""
    for method, value in ((Method.LRFD, 304), (Method.ASD, 202)):
        bending = check_beam(replace(BEAM, unbraced=140.0), method)[0]
        assert bending.capacity / 12 == pytest.approx(value, rel=0.01)


def test_example_f1_3a_braced_in_the_middle() -> None:
    """F.1-3A: C_b 1.30, 289 and 192 kip-ft."""
    for method, value in ((Method.LRFD, 289), (Method.ASD, 192)):
        bending = check_beam(replace(BEAM, unbraced=210.0), method)[0]
        assert bending.capacity / 12 == pytest.approx(value, rel=0.01)


@pytest.mark.parametrize(
    ("name", "load"),
    [("W18x50", 152), ("W18x35", 99.8), ("W24x62", 230), ("W21x44", 143), ("W16x26", 66.3), ("W12x40", 85.5)],
)
def test_largest_uniform_load_of_table_3_6(name: str, load: float) -> None:
    """AISC Manual Table 3-6 at 20 ft, φW_c/L, LRFD."""
    found = largest_uniform_load(section(name), A992, 240.0, Method.LRFD)
    assert found == pytest.approx(load, rel=0.005)


def test_a_short_beam_is_limited_by_shear() -> None:
    """Twice φV_n of W18x50, 192 kips (Manual Table 3-6)."""
    found = largest_uniform_load(section("W18x50"), A992, 36.0, Method.LRFD)
    assert found == pytest.approx(2 * 192, rel=0.005)


def test_a_point_load_off_the_middle_deflects_as_the_textbook_says() -> None:
    """P at a from the left and b from the right, a > b: P b (L² - b²)^1.5/(9 sqrt(3) E I L)."""
    L, a, P = 360.0, 240.0, 20.0
    beam = replace(BEAM, length=L, loads=(Load(Case.LIVE, P, a),), unbraced=L)
    live = check_beam(beam, Method.ASD)[2]
    b = L - a
    exact = P * b * (L**2 - b**2) ** 1.5 / (9 * 3**0.5 * 29000 * beam.section.Ix * L)
    assert live.demand == pytest.approx(exact, rel=1e-3)


def test_a_beam_without_loads_is_refused() -> None:
    with pytest.raises(ValueProblem, match="the beam has 0 loads"):
        check_beam(replace(BEAM, loads=()), Method.LRFD)


def test_a_hollow_beam_is_refused() -> None:
    with pytest.raises(ValueProblem, match="HSS6X6X3/8 is no rolled I-shape or channel"):
        replace(BEAM, section=section("HSS6x6x3/8"))


@pytest.mark.parametrize(
    ("constant", "loads"),
    [
        (161.1, (Load(Case.LIVE, 0.1, 0.0, 240.0),)),
        (201.4, (Load(Case.LIVE, 20.0, 120.0),)),
        (157.6, (Load(Case.LIVE, 10.0, 80.0), Load(Case.LIVE, 10.0, 160.0))),
    ],
)
def test_deflection_by_the_short_form_of_the_manual(constant: float, loads: tuple[Load, ...]) -> None:
    """M L^2/(C I_x), M in kip-ft and L in ft (Manual Part 3, constants re-derived in the notes)."""
    beam = replace(BEAM, length=240.0, loads=loads)
    deflection = next(check for check in check_beam(beam, Method.ASD) if "live" in check.title)
    moment = {161.1: 0.1 * 240**2 / 8, 201.4: 20 * 240 / 4, 157.6: 10 * 80}[constant] / 12
    assert deflection.demand == pytest.approx(moment * 20**2 / (constant * 800), rel=1e-3)


def test_loads_that_are_given_with_their_factors_are_in_no_combination() -> None:
    given = replace(BEAM, loads=(Load(Case.GIVEN, 20.0, 210.0),))
    bending, shear, *_ = check_beam(given, Method.LRFD)
    assert bending.title == "bending of the beam, as given"
    assert shear.title == "shear of the beam, as given"


HALF = (Load(Case.DEAD, 0.05, 0.0, 210.0), Load(Case.LIVE, 0.1, 100.0, 300.0))


@pytest.mark.parametrize(
    ("loads", "formula"),
    [
        (BEAM.loads, "5 w L^4/(384 E I_x)"),
        ((*HALF, Load(Case.LIVE, 12.0, 70.0)), "Q/(E I_x)"),
        ((Load(Case.LIVE, 12.0, 70.0),), "Q/(E I_x)"),
        (HALF, "Q/(E I_x)"),
    ],
)
def test_a_deflection_is_worked_with_its_formula_its_numbers_and_its_limit(
    loads: tuple[Load, ...], formula: str
) -> None:
    """Manual Table 3-23, case 1, for a uniform load; the conjugate beam for others."""
    for check in check_beam(replace(BEAM, loads=loads), Method.LRFD)[2:]:
        *_, sag, bound = check.steps
        assert (sag.symbol, sag.formula) == ("Δ", formula)
        assert (bound.symbol, bound.formula, bound.value) == ("Δ_max", "L/n", check.capacity)
        assert sag.value == check.demand
        assert all(worked_out(line) == pytest.approx(line.value, rel=1e-12) for line in check.steps)


def test_a_uniform_load_and_its_two_halves_deflect_the_same() -> None:
    """The formula of the whole load against the moments of its halves."""
    halves = (Load(Case.LIVE, 0.08, 0.0, 210.0), Load(Case.LIVE, 0.08, 210.0, 420.0))
    whole = (Load(Case.LIVE, 0.08, 0.0, 420.0),)
    one, other = (check_beam(replace(BEAM, loads=loads), Method.ASD)[2].demand for loads in (whole, halves))
    assert other == pytest.approx(one, rel=1e-5)


def test_the_place_of_the_largest_deflection_is_told() -> None:
    """P at a from the left, a > b: at sqrt(a (a + 2 b)/3) from the left (Manual Table 3-23, case 8)."""
    beam = replace(BEAM, loads=(Load(Case.LIVE, 20.0, 280.0),))
    at = of_step(check_beam(beam, Method.ASD)[2], "x")
    assert at == pytest.approx((280 * (280 + 2 * 140) / 3) ** 0.5, abs=0.5)
