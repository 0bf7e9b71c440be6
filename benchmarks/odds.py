"""A million sampled pieces with 12 bolts at each end: seconds, and as ratios.

    python benchmarks/odds.py [--count 1000000] [--loops 20000]

Printed in one run: the time of the sampled odds; that of a bare numpy draw of as many normals; that of
the same odds in plain Python loops, for fewer pieces and carried to as many; and both shares of hits,
which must agree. Run for joints that can be shifted (the usual case) and for joints that cannot.
"""

from __future__ import annotations

import argparse
import math
import random
import time

import numpy as np

from gageline.quality import BoltPlace, Joint, Lot, enters

ROWS, PITCH, ACROSS, CLEAR = 6, 3.0, 5.25, 1 / 16
HOLE, TURN, SETTING = 1 / 48, 1 / 64 / 12, 1 / 32
CHUNK = 20_000


def joint(*, free: bool) -> Joint:
    """Two angles of six rows each."""
    bolts = tuple(
        BoltPlace(side * ACROSS / 2, (row - (ROWS - 1) / 2) * PITCH, CLEAR, lot=lot)
        for lot, side in enumerate((-1, 1))
        for row in range(ROWS)
    )
    lot = Lot(0.0, SETTING if free else SETTING / 4, TURN)
    return Joint("end", bolts, (lot, lot), HOLE, TURN, free=free)


def vectorised(one: Joint, count: int) -> tuple[float, float]:
    """Seconds, and the share of pieces whose both ends enter."""
    draw = np.random.default_rng(1)
    begun = time.perf_counter()
    hits = 0
    for start in range(0, count, CHUNK):
        size = min(CHUNK, count - start)
        hits += int((enters(one, size, draw) & enters(one, size, draw)).sum())
    return time.perf_counter() - begun, hits / count


def bare_draw(one: Joint, count: int) -> float:
    """Seconds to draw as many normals and to do nothing with them."""
    normals = 2 * (2 * len(one.bolts) + 2 * len(one.lots) + 1)
    draw = np.random.default_rng(1)
    begun = time.perf_counter()
    for start in range(0, count, CHUNK):
        draw.standard_normal((normals, min(CHUNK, count - start)))
    return time.perf_counter() - begun


def looped(one: Joint, count: int) -> tuple[float, float]:
    """The same in plain Python: errors one by one, the shift sought by the same golden section."""
    draw = random.Random(1)  # noqa: S311 - a simulation, no secret
    begun = time.perf_counter()
    hits = sum(end_enters(one, draw) and end_enters(one, draw) for _ in range(count))
    return time.perf_counter() - begun, hits / count


def end_enters(one: Joint, draw: random.Random) -> bool:
    whole = draw.gauss(0, one.turn)
    middle = [sum(b.up for b in one.bolts if b.lot == n) / ROWS for n in range(len(one.lots))]
    set_ = [(draw.gauss(0, lot.across), draw.gauss(0, lot.up), draw.gauss(0, lot.turn)) for lot in one.lots]
    errors = []
    for bolt in one.bolts:
        dx, dy, turn = set_[bolt.lot]
        x = dx - turn * (bolt.up - middle[bolt.lot]) - whole * bolt.up + draw.gauss(0, one.hole)
        y = dy + whole * bolt.across + draw.gauss(0, one.hole)
        errors.append((x, y))
    if not one.free:
        return all(x * x + y * y <= CLEAR * CLEAR for x, y in errors)
    return some_shift(errors)


def some_shift(errors: list[tuple[float, float]]) -> bool:
    xs, ys = zip(*errors, strict=True)
    mx, my = (max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2
    if all((x - mx) ** 2 + (y - my) ** 2 <= CLEAR * CLEAR for x, y in errors):
        return True
    low, high = max(ys) - CLEAR, min(ys) + CLEAR
    if low > high or max(xs) - min(xs) > 2 * CLEAR:
        return False

    def overlap(shift: float) -> float:
        halves = [math.sqrt(max(CLEAR * CLEAR - (y - shift) ** 2, 0.0)) for y in ys]
        lows, highs = zip(*((x - h, x + h) for x, h in zip(xs, halves, strict=True)), strict=True)
        return float(max(lows) - min(highs))

    golden = (math.sqrt(5) - 1) / 2
    one, two = high - golden * (high - low), low + golden * (high - low)
    at_one, at_two = overlap(one), overlap(two)
    for _ in range(34):
        if at_one <= 0 or at_two <= 0:
            return True
        if at_one < at_two:
            high, two, at_two = two, one, at_one
            one = high - golden * (high - low)
            at_one = overlap(one)
        else:
            low, one, at_one = one, two, at_two
            two = low + golden * (high - low)
            at_two = overlap(two)
    return False


def main() -> None:
    options = argparse.ArgumentParser()
    options.add_argument("--count", type=int, default=1_000_000)
    options.add_argument("--loops", type=int, default=20_000)
    wanted = options.parse_args()
    for free in (True, False):
        one = joint(free=free)
        seconds, share = vectorised(one, wanted.count)
        bare = bare_draw(one, wanted.count)
        loop_seconds, loop_share = looped(one, wanted.loops)
        loops = loop_seconds * wanted.count / wanted.loops
        noise = 4 * math.sqrt(max(share * (1 - share), 1e-9) / wanted.loops)
        agree = "agree" if abs(share - loop_share) <= noise else "DO NOT AGREE"
        print(f"{'shifted by hand' if free else 'held'}: {wanted.count:,} pieces, 12 bolts at each end")
        print(f"  sampled odds    {seconds:8.2f} s   all enter {share:.4f}")
        times = f"{agree}; {loops / seconds:.0f} times"
        print(f"  plain loops     {loops:8.2f} s   all enter {loop_share:.4f}, {times}")
        print(f"  bare draw       {bare:8.2f} s   the odds take {seconds / bare:.1f} times a bare draw")


if __name__ == "__main__":
    main()
