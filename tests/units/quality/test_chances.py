"""Exact odds against closed forms and against scipy's own distributions."""

from math import exp, sqrt

import pytest
from scipy.integrate import dblquad
from scipy.stats import multivariate_normal, norm, rayleigh, rice

from gageline.quality.chances import exact, pair, uneven_pair, within
from gageline.quality.joint import BoltPlace, Joint, Lot

ONE = (BoltPlace(0, 0, 1 / 16),)
THREE = tuple(BoltPlace(0, 3 * n, 1 / 16) for n in range(3))


def fixed(bolts: tuple[BoltPlace, ...], lot: Lot = Lot(), hole: float = 0.0) -> Joint:  # noqa: B008 - frozen
    return Joint("joint", bolts, (lot,), hole, free=False)


def test_one_pair_is_rayleigh() -> None:
    assert pair(1 / 16, 1 / 48) == pytest.approx(float(rayleigh.cdf(1 / 16, scale=1 / 48)), abs=1e-12)
    # By hand: 1 - exp(-(1/16)^2 / (2 x (1/48)^2)) = 1 - exp(-4.5).
    assert pair(1 / 16, 1 / 48) == pytest.approx(1 - exp(-4.5), abs=1e-12)


def test_one_pair_known_to_be_off_is_rice() -> None:
    sigma, off = 1 / 48, 1 / 32
    assert pair(1 / 16, sigma, off) == pytest.approx(
        float(rice.cdf(1 / 16, off / sigma, scale=sigma)), abs=1e-9
    )


def test_no_spread_is_yes_or_no() -> None:
    assert (pair(1 / 16, 0, 1 / 16), pair(1 / 16, 0, 1 / 15)) == (1, 0)
    assert (within(1, 1, 0, 1), within(1, 1, 0, 1.1), within(1, 2, 0, -1.1)) == (1, 0, 0)


def test_unequal_ways_against_a_double_integral() -> None:
    clear, sigma, off = 0.0625, (0.02, 0.04), (0.01, -0.015)
    density = multivariate_normal(off, [[sigma[0] ** 2, 0], [0, sigma[1] ** 2]]).pdf
    volume, _ = dblquad(
        lambda y, x: density((x, y)), -clear, clear,
        lambda x: -sqrt(clear**2 - x * x), lambda x: sqrt(clear**2 - x * x), epsabs=1e-9,
    )  # fmt: skip
    assert uneven_pair(clear, sigma, off) == pytest.approx(volume, abs=1e-7)
    assert uneven_pair(clear, (0.03, 0.03)) == pair(clear, 0.03)


def test_one_way_alone_is_normal() -> None:
    assert uneven_pair(1, (0, 0.5), (0.6, 0)) == pytest.approx(
        float(norm.cdf(1.6) - norm.cdf(-1.6)), abs=1e-12
    )
    assert uneven_pair(1, (0.5, 0), (0, 0.6)) == uneven_pair(1, (0, 0.5), (0.6, 0))
    assert uneven_pair(1, (0, 0.5), (1.1, 0)) == 0


def test_independent_bolts_multiply() -> None:
    assert exact(fixed(THREE, hole=1 / 48)) == pytest.approx((1 - exp(-4.5)) ** 3, abs=1e-12)


def test_bolts_that_are_wrong_together_are_one() -> None:
    assert exact(fixed(THREE, Lot(1 / 48, 1 / 48))) == pytest.approx(1 - exp(-4.5), abs=1e-12)
    mixed = (*THREE, BoltPlace(3, 0, 1 / 32))
    assert exact(fixed(mixed, Lot(1 / 48, 1 / 48))) == pytest.approx(pair(1 / 32, 1 / 48), abs=1e-12)


def test_one_bolt_feels_both_errors_as_one() -> None:
    joint = fixed(ONE, Lot(0.03, 0.0), 0.02)
    assert exact(joint) == pytest.approx(uneven_pair(1 / 16, (sqrt(0.03**2 + 0.02**2), 0.02)), abs=1e-12)
    alike = fixed(ONE, Lot(0.03, 0.03), 0.04)
    assert exact(alike) == pytest.approx(pair(1 / 16, 0.05), abs=1e-12)


def test_a_common_place_and_own_places_lie_between_the_two_limits() -> None:
    """One bolt by quadrature is the closed form; three are worse than one and better than three alone."""
    both = Lot(0.015, 0.015)
    value = exact(fixed(THREE, both, 0.02))
    one = pair(1 / 16, 0.025)
    assert value is not None
    assert one**3 < value < one
    twin = (ONE[0], BoltPlace(0, 3, 10.0))  # the second can hardly fail
    assert exact(fixed(twin, both, 0.02)) == pytest.approx(one, abs=1e-9)


def test_what_can_be_shifted_lets_one_bolt_in_always_and_two_by_their_difference() -> None:
    two = (BoltPlace(0, 0, 1 / 16), BoltPlace(0, 3, 1 / 16))
    assert exact(Joint("j", ONE, hole=1)) == 1
    # Difference of two: sigma sqrt 2 within 1/8: 1 - exp(-(1/8)^2/(4/48^2)) = 1 - exp(-9).
    assert exact(Joint("j", two, (Lot(1, 1),), 1 / 48)) == pytest.approx(1 - exp(-9), abs=1e-12)
    turned = exact(Joint("j", two, (Lot(turn=0.01),), 1 / 48, turn=0.01))
    across = sqrt(2 / 48**2 + 2 * (0.01 * 3) ** 2)
    assert turned == pytest.approx(uneven_pair(1 / 8, (sqrt(2) / 48, across)), abs=1e-12)


def test_two_lots_of_one_bolt_each_feel_their_setting() -> None:
    two = (BoltPlace(0, 0, 1 / 16, lot=0), BoltPlace(5, 0, 1 / 16, lot=1))
    joint = Joint("j", two, (Lot(0.01, 0.02), Lot(0.01, 0.02, off_up=0.03)), 0.02)
    sigma = (sqrt(2 * 0.02**2 + 2 * 0.01**2), sqrt(2 * 0.02**2 + 2 * 0.02**2))
    assert exact(joint) == pytest.approx(uneven_pair(1 / 8, sigma, (0, 0.03)), abs=1e-12)


@pytest.mark.parametrize(
    "joint",
    [
        Joint("three shifted", THREE, hole=0.02),
        Joint("unequal play", (*ONE, BoltPlace(0, 3, 1 / 8)), hole=0.02),
        Joint("slot", (BoltPlace(0, 0, 1 / 16, 0.1),), hole=0.02),
        Joint("turned", THREE, (Lot(turn=0.01),), 0.02, free=False),
        Joint("mill", THREE, hole=0.02, mill=0.1, free=False),
        Joint("two lots", (*ONE, BoltPlace(0, 3, 1 / 16, lot=1)), (Lot(), Lot()), 0.02, free=False),
    ],
)
def test_other_joints_have_no_closed_form(joint: Joint) -> None:
    assert exact(joint) is None
