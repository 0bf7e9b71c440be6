"""Plates with known perfect packings: sheets cut apart edge to edge at random, laid out again.

    python benchmarks/plates.py [--seconds 10]

Prints sheets used, the bound, the yield, how full all sheets but the last are, and the time, for shear (edge
to edge) and plasma (free) cutting; the checker, which shares no code with the planner, verifies every plan.
"""

from __future__ import annotations

import argparse
import sys
from random import Random
from time import monotonic

from gageline.stock import Effort, Steel
from gageline.stock.check_plates import check_plates
from gageline.stock.plates import Burner, Plate, Sheet, plan_plates
from gageline.units import ZERO, Length

STEEL = Steel("PL1/2", "A36")
LONG, WIDE = 240, 96


def cut_apart(random: Random, count: int, mark: str) -> list[Plate]:
    parts = [(LONG, WIDE)]
    while len(parts) < count:
        along, across = parts.pop(max(range(len(parts)), key=lambda k: parts[k][0] * parts[k][1]))
        size = max(along, across)
        at = random.randint(size // 4, size - size // 4)
        parts += (
            [(at, across), (along - at, across)] if along >= across else [(along, at), (along, across - at)]
        )
    inches = Length.from_inches
    return [Plate(f"{mark}-{k}", STEEL, inches(a), inches(b)) for k, (a, b) in enumerate(parts)]


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    parser.add_argument("--seconds", type=float, default=10.0)
    given = parser.parse_args()
    sheet = Sheet(STEEL, Length.from_inches(LONG), Length.from_inches(WIDE), 1)
    wrong = 0
    for shear in (True, False):
        for sheets, count in ((1, 6), (1, 12), (4, 10), (10, 15)):
            random = Random(sheets * 100 + count)  # noqa: S311  # made-up plates
            plates = [p for k in range(sheets) for p in cut_apart(random, count, f"S{k}")]
            burner = Burner(ZERO, shear=shear)
            begun = monotonic()
            plan = plan_plates(plates, [sheet], burner, Effort(given.seconds))
            faults = check_plates(plan, plates, [sheet], burner)
            wrong += bool(faults)
            full = max(1, len(plan.sheets) - 1)
            filled = sum(p.along.inches * p.across.inches for s in plan.sheets[:full] for p in s.pieces)
            print(
                f"{'shear' if shear else 'plasma':6} perfect on {sheets:2} sheets, {len(plates):3} pieces: "
                f"{len(plan.sheets):2} sheets, bound {plan.bound:2}, yield {100 * plan.yield_:5.1f} %, "
                f"all but the last filled to {100 * filled / (full * LONG * WIDE):5.1f} %, "
                f"{monotonic() - begun:5.1f} s {' '.join(faults)}"
            )
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
