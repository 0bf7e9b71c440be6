"""A large job: 2,000 pieces of 300 lengths in 12 sections, with drops on the rack, kerf, trims and grip.

    python benchmarks/cutting_scale.py [--seconds 30] [--drops]

Prints cost, bound and time for each section, and the most memory used; the checker, which shares no code
with the planner, verifies the plan.
"""

from __future__ import annotations

import argparse
import resource
import sys
from fractions import Fraction
from random import Random
from time import monotonic

from gageline.stock import Effort, Held, Offer, Piece, Saw, Steel, by_weight, check_plan, plan_cuts
from gageline.units import Length

SECTIONS = 12
LENGTHS = 300
PIECES = 2000


def sixteenths(count: int) -> Length:
    return Length.from_inches(Fraction(count, 16))


def job() -> tuple[list[Piece], list[Offer | Held]]:
    random = Random(12)  # noqa: S311  # made-up job
    pieces: list[Piece] = []
    stocks: list[Offer | Held] = []
    for s in range(SECTIONS):
        steel = Steel(f"W{8 + 2 * s}X{20 + 5 * s}", "A992")
        most = 16 * (90 if s % 3 == 0 else 360)
        share = LENGTHS // SECTIONS
        extra = PIECES // SECTIONS + (s < PIECES % SECTIONS) - share
        counts = [1] * share
        for _ in range(extra):
            counts[random.randrange(share)] += 1
        pieces += [
            Piece(f"{s + 1}-{k + 1}", steel, sixteenths(random.randint(16 * 6, most)), n)
            for k, n in enumerate(counts)
        ]
        stocks += [
            by_weight(steel, Length.from_inches(12 * feet), Fraction(20 + 5 * s), Fraction(70))
            for feet in (20, 40, 60)
        ]
        for k in range(6):
            length = sixteenths(16 * random.randint(40, 220))
            stocks.append(
                Held(f"R{s + 1}-{k + 1}", steel, length, round(length.inches * (20 + 5 * s) * 4), f"H{k}")
            )
    return pieces, stocks


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    parser.add_argument("--seconds", type=float, default=30.0, help="limit a section")
    parser.add_argument("--drops", action="store_true", help="credit drops of 3 ft or more at half price")
    given = parser.parse_args()
    pieces, stocks = job()
    inches = Length.from_inches
    saw = Saw(inches(0.125), inches(0.5), inches(0.5), inches(6))
    if given.drops:
        saw = Saw(inches(0.125), inches(0.5), inches(0.5), inches(6), keep=inches(36), drop_percent=50)
    begun = monotonic()
    plan = plan_cuts(pieces, stocks, saw, effort=Effort(given.seconds))
    spent = monotonic() - begun
    for section in plan.sections:
        proven = "proven" if section.proven else f"within {100 * section.gap / section.bound:.3f} %"
        print(
            f"{section.steel!s:14} {len(section.sticks):4} sticks {section.setups:4} set-ups  "
            f"cost {section.cents / 100:12.2f}  {proven:16} yield {100 * section.yield_:5.1f} %  "
            f"{section.seconds:6.2f} s"
        )
    faults = check_plan(plan, pieces, stocks, saw)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(
        f"{sum(p.quantity for p in pieces)} pieces of {len(pieces)} lengths: {spent:.1f} s, {memory:.0f} MB"
    )
    print(f"checker: {'; '.join(faults) or 'no fault'}")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
