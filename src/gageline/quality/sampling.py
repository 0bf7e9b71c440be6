"""Joints by the million: sampled errors, and whether the bolts of each would enter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray
from scipy.special import betaincinv

from gageline.errors import ValueProblem
from gageline.quality.joint import Joint

__all__ = ["Sampled", "enters", "sample", "sample_alike"]

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
        low = float(betaincinv(self.hits, misses + 1, tail)) if self.hits else 0.0
        high = float(betaincinv(self.hits + 1, misses, 1 - tail)) if misses else 1.0
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
    return sample_alike([joint], count, seed)[0]


def sample_alike(joints: Sequence[Joint], count: int, seed: int) -> tuple[Sampled, ...]:
    """Joints that differ in what goes wrong and in their play only, all from the same samples.

    Args:
        joints: with the same number of bolts in the same lots.
        count: of samples.
        seed: of the random numbers; the same seed gives the same answer.

    Raises:
        ValueProblem: when the count is less than one.
    """
    if count < 1:
        raise ValueProblem(f"{count} samples tell nothing: give 1 or more")
    draw = np.random.default_rng(seed)
    hits = [0] * len(joints)
    for start in range(0, count, _CHUNK):
        drawn = _draws(joints, min(_CHUNK, count - start), draw)
        for number, joint in enumerate(joints):
            hits[number] += int(_entering(joint, drawn).sum())
    return tuple(Sampled(one, count) for one in hits)


def enters(joint: Joint, count: int, draw: np.random.Generator) -> Flags:
    """Whether every bolt enters, sample by sample.

    Returns:
        Shape (count,).
    """
    return _entering(joint, _draws([joint], count, draw))


def _entering(joint: Joint, drawn: _Draws) -> Flags:
    x, y = _errors(joint, drawn)
    clear = np.array([bolt.clear for bolt in joint.bolts])[:, np.newaxis]
    slot = np.array([bolt.slot for bolt in joint.bolts])[:, np.newaxis]
    if joint.free:
        return _some_shift(x, y, clear, slot)
    return _no_shift(x, y, clear, slot)


@dataclass(frozen=True, slots=True)
class _Draws:
    """Standard errors of so many samples; None for what no joint feels.

    Args:
        holes: shape (2, bolts, samples).
        places: of each lot, shape (lots, 2, samples).
        turns: of each lot, shape (lots, samples).
        turn: of the whole pattern, shape (samples,).
        mill: uniform from -1 to 1, shape (samples,).
    """

    holes: Array
    places: Array | None
    turns: Array | None
    turn: Array | None
    mill: Array | None


def _draws(joints: Sequence[Joint], count: int, draw: np.random.Generator) -> _Draws:
    lots = len(joints[0].lots)

    def normals(*shape: int, wanted: bool) -> Array | None:
        return draw.standard_normal((*shape, count)) if wanted else None

    every = [lot for joint in joints for lot in joint.lots]
    felt = any(_felt(joint) for joint in joints)
    return _Draws(
        draw.standard_normal((2, len(joints[0].bolts), count)),
        normals(lots, 2, wanted=felt and any(lot.across or lot.up for lot in every)),
        normals(lots, wanted=any(lot.turn for lot in every)),
        normals(wanted=any(joint.turn for joint in joints)),
        draw.uniform(-1, 1, count) if felt and any(joint.mill for joint in joints) else None,
    )


def _felt(joint: Joint) -> bool:
    """Whether the place of a lot matters: what all bolts share is taken up by the shift."""
    return not joint.free or len(joint.lots) > 1


def _errors(joint: Joint, drawn: _Draws) -> tuple[Array, Array]:
    """How far the two holes of every bolt are apart across and up, shape (bolts, samples)."""
    bolts, felt = joint.bolts, _felt(joint)
    x, y = drawn.holes * joint.hole
    places = np.array([(bolt.across, bolt.up) for bolt in bolts])
    for number, lot in enumerate(joint.lots):
        of = [n for n, bolt in enumerate(bolts) if bolt.lot == number]
        for axis, way, sigma, off in ((0, x, lot.across, lot.off_across), (1, y, lot.up, lot.off_up)):
            if felt and off:
                way[of] += off
            if felt and sigma and drawn.places is not None:
                way[of] += sigma * drawn.places[number, axis]
        if lot.turn and drawn.turns is not None:
            _turn(x, y, of, places[of] - places[of].mean(axis=0), lot.turn * drawn.turns[number])
    if joint.turn and drawn.turn is not None:
        _turn(x, y, list(range(len(bolts))), places - places.mean(axis=0), joint.turn * drawn.turn)
    if joint.mill and felt and drawn.mill is not None:
        x += joint.mill * drawn.mill
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
    function of the shift up, whose least value a golden section finds. Most samples need no search:
    the middle of their errors fits, or two bolts alone have no shift in common.
    """
    good = _middle_fits(x, y, clear, slot)
    left = np.flatnonzero(~good)
    for one, two in combinations(range(len(x)), 2):
        away_x = np.maximum(np.abs(x[one, left] - x[two, left]) - (slot[one] + slot[two]), 0.0)
        away_y = y[one, left] - y[two, left]
        left = left[away_x * away_x + away_y * away_y <= (clear[one] + clear[two]) ** 2]
    if left.size:
        x, y = x[:, left], y[:, left]
        good[left] = _search(x, y, (clear, slot), ((y - clear).max(axis=0), (y + clear).min(axis=0)))
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
