"""Samples against exact results; the search for a shift against cases worked by hand."""

from math import sqrt

import numpy as np
import pytest

from gageline.errors import ValueProblem
from gageline.quality import sampling
from gageline.quality.chances import exact
from gageline.quality.joint import BoltPlace, Joint, Lot
from gageline.quality.sampling import Sampled, sample, sample_alike

TWO = (BoltPlace(0, 0, 1 / 16), BoltPlace(0, 3, 1 / 16))
FOUR = tuple(BoltPlace(0, 3 * n, 1 / 16) for n in range(4))
COUNT = 200_000


@pytest.mark.parametrize(
    "joint",
    [
        Joint("independent", FOUR, hole=0.025, free=False),
        Joint("together", FOUR, (Lot(0.03, 0.02, off_across=0.01),), free=False),
        Joint("given one place", FOUR, (Lot(0.02, 0.02),), 0.02, free=False),
        Joint("two shifted", TWO, (Lot(0.5, 0.5, turn=0.01),), 0.03, turn=0.01),
        Joint(
            "two lots", (TWO[0], BoltPlace(0, 3, 1 / 16, lot=1)), (Lot(0.03, 0.02), Lot(off_up=0.02)), 0.02
        ),
    ],
    ids=lambda joint: joint.name,
)
def test_samples_agree_with_the_exact_result(joint: Joint) -> None:
    """Within four standard deviations, whatever the seed: a wrong model would miss by hundreds."""
    value = exact(joint)
    assert value is not None
    told = sample(joint, COUNT, seed=7)
    assert abs(told.value - value) < 4 * sqrt(value * (1 - value) / COUNT) + 1e-9


def test_a_uniform_error_of_the_mill_alone() -> None:
    """Uniform over ±1/8 with 1/16 of play: half of them enter."""
    told = sample(Joint("mill", TWO, mill=1 / 8, free=False), COUNT, seed=3)
    assert told.value == pytest.approx(0.5, abs=0.005)
    assert sample(Joint("mill", TWO, mill=1 / 8), 1000, seed=3).value == 1


def test_the_same_seed_gives_the_same_answer() -> None:
    joint = Joint("j", FOUR, hole=0.03)
    assert sample(joint, 50_000, 1) == sample(joint, 50_000, 1)
    assert sample(joint, 50_000, 1) != sample(joint, 50_000, 2)


def fits(points: list[tuple[float, float]], clear: list[float], slot: float = 0.0) -> bool:
    x, y = (np.array(axis, dtype=float)[:, np.newaxis] for axis in zip(*points, strict=True))
    play = np.array(clear)[:, np.newaxis]
    return bool(sampling._some_shift(x, y, play, np.full_like(play, slot))[0])


@pytest.mark.parametrize(("reach", "enters"), [(0.999, True), (1.001, False)])
def test_three_at_the_corners_of_a_triangle_need_its_circle(reach: float, enters: bool) -> None:
    """An equilateral triangle about (5, 5) has the circle of its corners, here of radius 1."""
    angles = np.radians([90, 210, 330])
    points = [(5 + reach * np.cos(a), 5 + reach * np.sin(a)) for a in angles]
    assert fits(points, [1.0] * 3) is enters


@pytest.mark.parametrize(("apart", "enters"), [(2.999, True), (3.001, False)])
def test_two_of_unlike_play_need_the_sum(apart: float, enters: bool) -> None:
    assert fits([(0, 0), (apart * 0.6, apart * 0.8)], [1.0, 2.0]) is enters


@pytest.mark.parametrize(("apart", "enters"), [(2.999, True), (3.001, False)])
def test_slots_add_their_length_across_only(apart: float, enters: bool) -> None:
    assert fits([(0, 0), (apart, 0)], [1.0, 1.0], slot=0.5) is enters
    assert fits([(0, 0), (0, apart)], [1.0, 1.0], slot=0.5) is False
    assert fits([(0, 0), (0, 1.999)], [1.0, 1.0], slot=0.5) is True


def test_an_obtuse_triangle_needs_only_its_longest_side() -> None:
    assert fits([(0, 0), (1.99, 0), (1.0, 0.3)], [1.0] * 3)
    assert not fits([(0, 0), (2.01, 0), (1.0, 0.3)], [1.0] * 3)


def test_the_interval_is_that_of_clopper_and_pearson() -> None:
    """9 of 10: 55.50 % to 99.75 % (any table of exact binomial intervals; by the beta distribution)."""
    low, high = Sampled(9, 10).interval
    assert (low, high) == pytest.approx((0.5550, 0.99747), abs=5e-5)
    # None or all of n: 1 - 0.025^(1/n) is left on the open side.
    assert Sampled(0, 10).interval == pytest.approx((0.0, 1 - 0.025**0.1), abs=1e-12)
    assert Sampled(10, 10).interval == pytest.approx((0.025**0.1, 1.0), abs=1e-12)


def test_alike_joints_share_their_samples() -> None:
    """Told together each is what it is alone, and a joint with less wrong is never worse off."""
    one, two = Joint("j", FOUR, hole=0.03), Joint("j", FOUR, hole=0.025)
    together = sample_alike([one, two], 50_000, 1)
    assert together == (sample(one, 50_000, 1), sample(two, 50_000, 1))
    assert together[1].hits > together[0].hits


def test_no_samples_are_refused() -> None:
    with pytest.raises(ValueProblem, match="0 samples tell nothing: give 1 or more"):
        sample(Joint("j", TWO), 0, 1)
