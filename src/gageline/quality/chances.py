"""Exact probabilities of simple joints, through the normal, the Rayleigh and the Rice distribution."""

from __future__ import annotations

from math import exp, isclose, pi, sqrt

import numpy as np
from scipy.integrate import quad
from scipy.special import chndtr, ndtr

from gageline.quality.joint import Joint

__all__ = ["exact", "pair", "uneven_pair", "within"]

_NODES = 96  # of each Gauss-Hermite rule: the last digits that two rules agree in are the twelfth


def pair(clear: float, sigma: float, off: float = 0.0) -> float:
    """That one bolt enters a pair of holes whose distance apart is spread alike each way.

    The distance has a Rayleigh distribution, or with a known offset a Rice distribution.

    Args:
        clear: how far apart they may be, in.
        sigma: standard deviation each way, in.
        off: what they are known to be apart, in.

    Source: the Rice distribution; its square over sigma² is non-central chi-square with two degrees.
    """
    if sigma == 0:
        return 1.0 if off <= clear else 0.0
    return float(chndtr((clear / sigma) ** 2, 2, (off / sigma) ** 2))


def uneven_pair(clear: float, sigma: tuple[float, float], off: tuple[float, float] = (0.0, 0.0)) -> float:
    """The same where the two ways are spread unlike: one integral over a circle.

    Args:
        clear: how far apart they may be, in.
        sigma: standard deviations across and up, in; a way without any comes second best to `pair`.
        off: what they are known to be apart, in.
    """
    sx, sy = sigma
    if isclose(sx, sy, rel_tol=1e-12):
        return pair(clear, sx, float(np.hypot(*off)))
    if sx == 0 or sy == 0:
        fixed, moving, spread = (off[0], off[1], sy) if sx == 0 else (off[1], off[0], sx)
        reach = clear * clear - fixed * fixed
        return within(sqrt(reach), sqrt(reach), spread, moving) if reach >= 0 else 0.0

    def slice_at(x: float) -> float:
        half = sqrt(max(clear * clear - x * x, 0.0))
        density = exp(-(((x - off[0]) / sx) ** 2) / 2) / (sx * sqrt(2 * pi))
        return density * within(half, half, sy, off[1])

    value, _ = quad(slice_at, -clear, clear, points=(0.0,), limit=200)
    return float(value)


def within(under: float, over: float, sigma: float, off: float = 0.0) -> float:
    """That a normal error stays between so much under and so much over.

    Args:
        under: as a length above zero, in.
        over: in.
        sigma: standard deviation, in.
        off: mean, in.
    """
    if sigma == 0:
        return 1.0 if -under <= off <= over else 0.0
    return float(ndtr((over - off) / sigma) - ndtr((-under - off) / sigma))


def exact(joint: Joint) -> float | None:
    """The probability that every bolt of a joint enters, where there is a closed form; None where not.

    There is one for round holes: of a joint that can be shifted when it has one bolt, or two of equal
    clearance; of one that cannot be shifted when it has no turn and its bolts are independent,
    perfectly correlated, or independent given one common place.
    """
    if any(bolt.slot for bolt in joint.bolts):
        return None
    if joint.free:
        return _shifted(joint)
    if joint.turn or joint.mill or len(joint.lots) > 1 or joint.lots[0].turn:
        return None
    (lot,) = joint.lots
    off = (lot.off_across, lot.off_up)
    if not joint.hole:
        return uneven_pair(min(bolt.clear for bolt in joint.bolts), (lot.across, lot.up), off)
    if not lot.across and not lot.up:
        return float(np.prod([pair(bolt.clear, joint.hole, float(np.hypot(*off))) for bolt in joint.bolts]))
    if len(joint.bolts) == 1:
        sigma = (float(np.hypot(joint.hole, lot.across)), float(np.hypot(joint.hole, lot.up)))
        return uneven_pair(joint.bolts[0].clear, sigma, off)
    return _given_common_place(joint)


def _shifted(joint: Joint) -> float | None:
    """One bolt, or two, whose holes may be apart by twice the clearance from one bolt to the other.

    The difference of the two bolts' errors is normal with a covariance of its own; a circle looks the
    same from its principal axes.
    """
    if len(joint.bolts) == 1:
        return 1.0
    if len(joint.bolts) > 2 or joint.bolts[0].clear != joint.bolts[1].clear:
        return None
    one, two = joint.bolts
    arm = np.array([-(two.up - one.up), two.across - one.across])
    spread = 2 * joint.hole**2 * np.eye(2) + joint.turn**2 * np.outer(arm, arm)
    off = np.zeros(2)
    if one.lot == two.lot:
        spread += joint.lots[one.lot].turn ** 2 * np.outer(arm, arm)
    else:
        for sign, lot in ((1, joint.lots[one.lot]), (-1, joint.lots[two.lot])):
            spread += np.diag([lot.across**2, lot.up**2])
            off += sign * np.array([lot.off_across, lot.off_up])
    squares, axes = np.linalg.eigh(spread)
    first, second = np.sqrt(np.maximum(squares, 0.0))
    along = axes.T @ off
    return uneven_pair(2 * one.clear, (float(first), float(second)), (float(along[0]), float(along[1])))


def _given_common_place(joint: Joint) -> float:
    """Independent bolts given where the whole pattern lies, averaged over that place."""
    (lot,) = joint.lots
    nodes, weights = np.polynomial.hermite_e.hermegauss(_NODES)
    weights = weights / weights.sum()
    x = lot.off_across + lot.across * nodes[:, np.newaxis]
    y = lot.off_up + lot.up * nodes[np.newaxis, :]
    apart = (x * x + y * y) / joint.hole**2
    chance = np.ones_like(apart)
    for bolt in joint.bolts:
        chance = chance * chndtr((bolt.clear / joint.hole) ** 2, 2, apart)
    return float(weights @ chance @ weights)
