"""Odds of fit-up: will every bolt enter without reaming, and will the piece go between its supports?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import exp, hypot, pi, prod, sqrt

from scipy.special import ndtr

from gageline.job import Stick
from gageline.layout import Choice, Way, place
from gageline.part import Assembly
from gageline.quality.bolted import Joining
from gageline.quality.chances import exact, within
from gageline.quality.drilled import Met, bolted_of, left_out
from gageline.quality.fit_up import Span, hold_of, span_of
from gageline.quality.joint import BoltPlace, Joint, Lot
from gageline.quality.receipt import length_limit
from gageline.quality.sampling import Sampled, sample_alike
from gageline.quality.spread import ASSUMED, Act, Spread
from gageline.units import ZERO

__all__ = ["CHECKED", "Chance", "Gain", "Odds", "odds_of"]

_MANY = 100_000
CHECKED = sqrt(1 - 2 * exp(-0.5) / sqrt(2 * pi) / (2 * float(ndtr(1)) - 1))
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
        left_out: holes that no odds are told of, each with the reason.
    """

    joints: tuple[Chance, ...]
    span: Chance | None
    whole: Chance
    steel: Chance | None
    worst: tuple[Gain, ...]
    gains: tuple[Gain, ...]
    spread: Spread
    left_out: tuple[str, ...] = ()


def odds_of(
    assembly: Assembly,
    spread: Spread = ASSUMED,
    *,
    off: float = 0.0,
    free: bool = True,
    web_off: float | None = None,
    met: Met | None = None,
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
        met: what its holes meet in their frame, see `bolted_of`.
        seed: of the samples.
        count: of samples for each joint without a closed form.
    """
    hold = hold_of(assembly, free=free, web_off=web_off)
    bolted = bolted_of(assembly, met)
    acts = [act for act in Act if spread.of(act)]
    cases = [_Case("", None, spread)]
    cases += [_Case(f"no error of the {act}", act, spread.scaled(act, 0.0)) for act in acts]
    cases += [_Case(f"check the {act} once more", act, spread.scaled(act, CHECKED)) for act in acts]
    if any(one.way is Joining.SUPPORT for one in bolted):
        cases.append(_Case("horizontal short slots at the supports", None, spread, slotted=True))
    told = [
        _chances([one.joint(case.spread, hold, slotted=case.slotted) for case in cases], seed, count)
        for one in bolted
    ]
    spans = [span_of(assembly, case.spread, off=off) for case in cases]
    goes = [_span_chance(span) if span else None for span in spans]
    wholes = [_all([joint[n] for joint in told], goes[n]) for n in range(len(cases))]
    now, *then = wholes
    gains = [
        Gain(case.words, one.value, one.value - now.value, case.act)
        for case, one in zip(cases[1:], then, strict=True)
    ]
    return Odds(
        tuple(joint[0] for joint in told),
        goes[0],
        now,
        _steel(assembly),
        _ranked(gains[: len(acts)]),
        _ranked(gains[len(acts) :]),
        spread,
        left_out(assembly, met),
    )


def _ranked(gains: Sequence[Gain]) -> tuple[Gain, ...]:
    return tuple(sorted(gains, key=lambda one: -one.gain))


@dataclass(frozen=True, slots=True)
class _Case:
    """The piece as it is, or with one change.

    Args:
        words: of the change.
        act: that is done better.
        spread: then.
        slotted: the supports have slots.
    """

    words: str
    act: Act | None
    spread: Spread
    slotted: bool = False


def _chances(joints: Sequence[Joint], seed: int, count: int) -> tuple[Chance, ...]:
    """One joint in every case; those without a closed form from the same samples."""
    bare = [_bare(joint) for joint in joints]
    values = {one: exact(one) for one in dict.fromkeys(bare)}
    open_ = tuple(one for one, value in values.items() if value is None)
    told = dict(zip(open_, _sampled(open_, seed, count), strict=True))
    name = joints[0].name
    found = {
        one: Chance(name, told[one].value, *told[one].interval, f"{count:,} samples")
        if value is None
        else Chance(name, value, value, value, "exact")
        for one, value in values.items()
    }
    return tuple(found[one] for one in bare)


@lru_cache(maxsize=1024)
def _sampled(joints: tuple[Joint, ...], seed: int, count: int) -> tuple[Sampled, ...]:
    """Kept, for the pieces of a job have the same few joints again and again."""
    return sample_alike(joints, count, seed) if joints else ()


def _bare(joint: Joint) -> Joint:
    """The joint without its name and without what cannot be felt, the same wherever it is.

    Of one lot that can be shifted only its turn is felt, which is a turn of the whole.
    """
    lots, turn, mill = joint.lots, joint.turn, joint.mill
    if joint.free and len(lots) == 1:
        lots, turn, mill = (Lot(),), hypot(turn, lots[0].turn), 0.0
    known = any(lot.off_across or lot.off_up for lot in lots)
    ways = [(1, 1)] if known else [(1, 1), (-1, 1), (1, -1), (-1, -1)]  # alike seen from any side
    seen = min(_from_first(joint.bolts, *way) for way in ways)
    order = list(dict.fromkeys(lot for *_, lot in seen))
    bolts = tuple(BoltPlace(x, y, clear, slot, order.index(lot)) for x, y, clear, slot, lot in seen)
    return Joint("", bolts, tuple(lots[lot] for lot in order), joint.hole, turn, mill, joint.free)


def _from_first(
    bolts: Sequence[BoltPlace], across: int, up: int
) -> list[tuple[float, float, float, float, int]]:
    """The bolts in order, counted from the first of them on: place, play, slot and lot."""
    x, y = min((one.across * across, one.up * up) for one in bolts)
    return sorted(
        (round(one.across * across - x, 3), round(one.up * up - y, 3), one.clear, one.slot, one.lot)
        for one in bolts
    )


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


def _all(joints: Sequence[Chance], span: Chance | None) -> Chance:
    """All of them together; the interval is that of every part at its end at once, so on the safe side."""
    chances = [*joints, *([span] if span else [])]
    value, low, high = (prod(getattr(one, name) for one in chances) for name in ("value", "low", "high"))
    sampled = any(one.how != "exact" for one in chances)
    return Chance("the whole piece", value, low, high, "product of the above" if sampled else "exact")
