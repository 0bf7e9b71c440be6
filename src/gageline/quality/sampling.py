"""Joints by the million: sampled errors, and whether the bolts of each would enter."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray
from scipy.stats import beta

from gageline.errors import ValueProblem
from gageline.quality.joint import Joint

__all__ = ["Sampled", "enters", "sample"]

Array: TypeAlias = NDArray[np.float64]
Flags: TypeAlias = NDArray[np.bool_]
_CHUNK = 20_000  # joints at a time: what fits the fast memory of the machine
_GOLDEN = (5**0.5 - 1) / 2
_ROUNDS = 34  # 0.618**34 is 8e-8 of the first stretch
_CONFIDENCE = 0.95


@dataclass(frozen=True, slots=True)
class Sampled:
    """A probability told from samples.

    Args:
        hits: samples in which every bolt entered.
        count: of samples.
    """

    hits: int
    count: int

    @property
    def value(self) -> float:
        """The share of hits."""
        return self.hits / self.count

    @property
    def interval(self) -> tuple[float, float]:
        """The interval that holds the true value 95 times in 100.

        Source: Clopper and Pearson, Biometrika 26 (1934) 404, through the beta distribution.
        """
        tail, misses = (1 - _CONFIDENCE) / 2, self.count - self.hits
        low = float(beta.ppf(tail, self.hits, misses + 1)) if self.hits else 0.0
        high = float(beta.ppf(1 - tail, self.hits + 1, misses)) if misses else 1.0
        return low, high


def sample(joint: Joint, count: int, seed: int) -> Sampled:
    """The probability that every bolt of a joint enters, from so many samples.

    Args:
        joint: the joint.
        count: of samples.
        seed: of the random numbers; the same seed gives the same answer.

    Raises:
        ValueProblem: when the count is less than one.
    """
    if count < 1:
        raise ValueProblem(f"{count} samples tell nothing: give 1 or more")
    draw = np.random.default_rng(seed)
    hits = 0
    for start in range(0, count, _CHUNK):
        hits += int(enters(joint, min(_CHUNK, count - start), draw).sum())
    return Sampled(hits, count)


def enters(joint: Joint, count: int, draw: np.random.Generator) -> Flags:
    """Whether every bolt enters, sample by sample.

    Returns:
        Shape (count,).
    """
    x, y = _errors(joint, count, draw)
    clear = np.array([bolt.clear for bolt in joint.bolts])[:, np.newaxis]
    slot = np.array([bolt.slot for bolt in joint.bolts])[:, np.newaxis]
    if joint.free:
        return _some_shift(x, y, clear, slot)
    return _no_shift(x, y, clear, slot)


def _errors(joint: Joint, count: int, draw: np.random.Generator) -> tuple[Array, Array]:
    """How far the two holes of every bolt are apart across and up, shape (bolts, samples)."""
    bolts = joint.bolts
    errors = draw.standard_normal((2, len(bolts), count))
    errors *= joint.hole
    x, y = errors
    places = np.array([(bolt.across, bolt.up) for bolt in bolts])
    felt = not joint.free or len(joint.lots) > 1  # what all bolts share is taken up by the shift
    for number, lot in enumerate(joint.lots):
        of = [n for n, bolt in enumerate(bolts) if bolt.lot == number]
        arms = places[of] - places[of].mean(axis=0)
        for way, sigma, off in ((x, lot.across, lot.off_across), (y, lot.up, lot.off_up)):
            if felt and (sigma or off):
                way[of] += off + sigma * draw.standard_normal(count)
        if lot.turn:
            _turn(x, y, of, arms, lot.turn * draw.standard_normal(count))
    if joint.turn:
        arms = places - places.mean(axis=0)
        _turn(x, y, list(range(len(bolts))), arms, joint.turn * draw.standard_normal(count))
    if joint.mill and felt:
        x += draw.uniform(-joint.mill, joint.mill, count)
    return x, y


def _turn(x: Array, y: Array, of: list[int], arms: Array, angle: Array) -> None:
    x[of] -= arms[:, 1:] * angle
    y[of] += arms[:, :1] * angle


def _no_shift(x: Array, y: Array, clear: Array, slot: Array) -> Flags:
    beyond = np.maximum(np.abs(x) - slot, 0.0) if slot.any() else x
    return np.asarray((beyond * beyond + y * y <= clear * clear).all(axis=0))


def _some_shift(x: Array, y: Array, clear: Array, slot: Array) -> Flags:
    """Whether some shift of one ply brings every pair of holes within its play.

    A shift up leaves to each bolt an interval of shifts across; all intervals have a point in common
    when the largest lower end is no more than the smallest upper end. Their difference is a convex
    function of the shift up, whose least value a golden section finds.
    """
    good = _middle_fits(x, y, clear, slot)
    low, high = (y - clear).max(axis=0), (y + clear).min(axis=0)
    reach = clear + slot
    hopeless = (low > high) | ((x - reach).max(axis=0) > (x + reach).min(axis=0))
    left = np.flatnonzero(~good & ~hopeless)
    if left.size:
        good[left] = _search(x[:, left], y[:, left], (clear, slot), (low[left], high[left]))
    return good


def _middle_fits(x: Array, y: Array, clear: Array, slot: Array) -> Flags:
    middle_x = (x.max(axis=0) + x.min(axis=0)) / 2
    middle_y = (y.max(axis=0) + y.min(axis=0)) / 2
    return _no_shift(x - middle_x, y - middle_y, clear, slot)


def _overlap(x: Array, y: Array, play: tuple[Array, Array], shift: Array) -> Array:
    """By how much the intervals of shifts across miss one another; zero or below where they meet."""
    clear, slot = play
    away = y - shift
    half = np.sqrt(np.maximum(clear * clear - away * away, 0.0)) + slot
    return np.asarray((x - half).max(axis=0) - (x + half).min(axis=0))


def _search(x: Array, y: Array, play: tuple[Array, Array], between: tuple[Array, Array]) -> Flags:
    """The golden section, for many joints at once; those that are found to fit are let go."""
    found = np.zeros(x.shape[1], dtype=np.bool_)
    active = np.arange(x.shape[1])
    low, high = between
    one, two = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
    at_one, at_two = _overlap(x, y, play, one), _overlap(x, y, play, two)
    for _ in range(_ROUNDS):
        fits = (at_one <= 0) | (at_two <= 0)
        found[active[fits]] = True
        keep = ~fits
        if not keep.any():
            break
        active, x, y = active[keep], x[:, keep], y[:, keep]
        low, high, one, two = low[keep], high[keep], one[keep], two[keep]
        at_one, at_two = at_one[keep], at_two[keep]
        lower = at_one < at_two
        low, high = np.where(lower, low, one), np.where(lower, two, high)
        fresh = np.where(lower, high - _GOLDEN * (high - low), low + _GOLDEN * (high - low))
        at_fresh = _overlap(x, y, play, fresh)
        one, two = np.where(lower, fresh, two), np.where(lower, one, fresh)
        at_one, at_two = np.where(lower, at_fresh, at_two), np.where(lower, at_one, at_fresh)
    return found
