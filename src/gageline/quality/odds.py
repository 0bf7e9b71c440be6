"""Odds of fit-up: will every bolt enter without reaming, and will the piece go between its supports?"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import exp, pi, prod, sqrt

from scipy.stats import norm

from gageline.job import Stick
from gageline.layout import Choice, Way, place
from gageline.part import Assembly
from gageline.quality.chances import exact, within
from gageline.quality.fit_up import Span, joints_of, span_of
from gageline.quality.joint import Joint
from gageline.quality.receipt import length_limit
from gageline.quality.sampling import sample
from gageline.quality.spread import ASSUMED, Act, Spread
from gageline.units import ZERO

__all__ = ["CHECKED", "Chance", "Gain", "Odds", "odds_of"]

_MANY = 100_000
CHECKED = sqrt(1 - 2 * exp(-0.5) / sqrt(2 * pi) / (2 * float(norm.cdf(1)) - 1))
"""What one extra check leaves of a spread: an act is done again when it is off by more than one standard
deviation, so that errors follow a normal distribution cut off there. Its standard deviation is 0.540."""


@dataclass(frozen=True, slots=True)
class Chance:
    """The probability that one joint goes together, or that the piece goes in.

    Args:
        name: of the joint.
        value: the probability.
        low: of the interval that holds it 95 times in 100; the value itself where it is exact.
        high: likewise.
        how: "exact", or how many samples.
    """

    name: str
    value: float
    low: float
    high: float
    how: str


@dataclass(frozen=True, slots=True)
class Gain:
    """What a change would do for the whole piece.

    Args:
        change: in words.
        value: the probability then.
        gain: what it gains; within the samples' noise it may be below zero.
        act: the act that is checked or done without error; None for a change of holes.
    """

    change: str
    value: float
    gain: float
    act: Act | None


@dataclass(frozen=True, slots=True)
class Odds:
    """The odds of a piece.

    Args:
        joints: of each of its joints, in the order of the shop, then of the site.
        span: that it goes between its supports; None where it has no fittings at both ends.
        whole: that all of it goes together without reaming.
        steel: that the steel stays clear of the supports where a stick of any permitted length is used
            as it came; not part of the whole, for a long stick can be cut. None where nothing stands out
            past the steel or no limit is held.
        worst: the whole without each act's error, the most telling first.
        gains: the whole with one extra check of each act, and with slotted supports, best first.
        spread: what it was reckoned with.
    """

    joints: tuple[Chance, ...]
    span: Chance | None
    whole: Chance
    steel: Chance | None
    worst: tuple[Gain, ...]
    gains: tuple[Gain, ...]
    spread: Spread


def odds_of(
    assembly: Assembly,
    spread: Spread = ASSUMED,
    *,
    off: float = 0.0,
    free: bool = True,
    web_off: float | None = None,
    seed: int = 1,
    count: int = _MANY,
) -> Odds:
    """The odds of a piece, which error matters most, and what a check or a slot would gain.

    Joints and span are independent of one another here: a shift that is common to a joint is taken up
    by hand, and only the span feels the length.

    Args:
        assembly: the piece.
        spread: of the shop.
        off: what out-to-out is known to be off, in.
        free: the piece can be shifted on its supports, see `joints_of`.
        web_off: what was read of the web off the middle of the flanges, in.
        seed: of the samples.
        count: of samples for each joint without a closed form.
    """

    def chances(of: Spread, *, slotted: bool = False) -> tuple[tuple[Chance, ...], Chance | None]:
        joints = joints_of(assembly, of, slotted_support=slotted, free=free, web_off=web_off)
        span = span_of(assembly, of, off=off)
        return _joint_chances(joints, seed, count), _span_chance(span) if span else None

    def whole(of: Spread, *, slotted: bool = False) -> Chance:
        return _all(*chances(of, slotted=slotted))

    joints, span = chances(spread)
    now = _all(joints, span)
    acts = [act for act in Act if spread.of(act)]
    worst = [_gain(f"no error of the {act}", whole(spread.scaled(act, 0.0)), now, act) for act in acts]
    gains = [
        _gain(f"check the {act} once more", whole(spread.scaled(act, CHECKED)), now, act) for act in acts
    ]
    if any(joint.field for joint in joints_of(assembly, spread)):
        gains.append(_gain("horizontal short slots at the supports", whole(spread, slotted=True), now, None))
    return Odds(
        joints,
        span,
        now,
        _steel(assembly),
        tuple(sorted(worst, key=lambda one: -one.gain)),
        tuple(sorted(gains, key=lambda one: -one.gain)),
        spread,
    )


def _gain(change: str, then: Chance, now: Chance, act: Act | None) -> Gain:
    return Gain(change, then.value, then.value - now.value, act)


def _joint_chances(joints: tuple[Joint, ...], seed: int, count: int) -> tuple[Chance, ...]:
    """Joints that are alike but for where they are have the same chance, told once."""
    known: dict[Joint, Chance] = {}
    found = []
    for number, joint in enumerate(joints):
        alike = _at_origin(joint)
        if alike not in known:
            known[alike] = _chance(alike, seed + number, count)
        found.append(replace(known[alike], name=joint.name))
    return tuple(found)


def _at_origin(joint: Joint) -> Joint:
    """The joint without its name, from its first bolt on, the bolts of each lot from the lowest up."""
    bolts = sorted(joint.bolts, key=lambda bolt: (bolt.across, bolt.up))
    first = bolts[0]
    order = list(dict.fromkeys(bolt.lot for bolt in bolts))
    moved = tuple(
        replace(
            bolt,
            across=round(bolt.across - first.across, 6),
            up=round(bolt.up - first.up, 6),
            lot=order.index(bolt.lot),
        )
        for bolt in bolts
    )
    return replace(joint, name="", bolts=moved, lots=tuple(joint.lots[lot] for lot in order))


def _chance(joint: Joint, seed: int, count: int) -> Chance:
    value = exact(joint)
    if value is not None:
        return Chance(joint.name, value, value, value, "exact")
    told = sample(joint, count, seed)
    return Chance(joint.name, told.value, *told.interval, f"{count:,} samples")


def _span_chance(span: Span) -> Chance:
    value = within(span.short, span.long, span.sigma, span.off)
    return Chance("between its supports", value, value, value, "exact")


def _steel(assembly: Assembly) -> Chance | None:
    """A stick of any length the mill is permitted, all equally likely, its error thrown to the right end."""
    limit = length_limit(assembly.main)
    clear = place(assembly, Stick(assembly.mark), Way(Choice.AS_IS), ZERO).right.clear
    if limit is None or limit.over is None or limit.under is None or clear is None:
        return None
    room, range_ = (clear + limit.under).inches, (limit.over + limit.under).inches
    value = min(1.0, room / range_) if range_ else 1.0
    return Chance("the steel clear of the supports, uncut", value, value, value, "exact")


def _all(joints: tuple[Chance, ...], span: Chance | None) -> Chance:
    """All of them together; the interval is that of every part at its end at once, so on the safe side."""
    chances = [*joints, *([span] if span else [])]
    value, low, high = (prod(getattr(one, name) for one in chances) for name in ("value", "low", "high"))
    sampled = any(one.how != "exact" for one in chances)
    return Chance("the whole piece", value, low, high, "product of the above" if sampled else "exact")
