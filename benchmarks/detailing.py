"""Time of detailing a generated frame, for 60, 120, 250, 500 and 1,000 members.

    python benchmarks/detailing.py

The frame is a floor of bays: columns, girders, infill beams of four sections with drops, some skewed.
Printed, in seconds of processor time: detailing (with reading of its tables), the same a member,
building the solids of the same pieces in the same run, the ratio of the two, and how much slower than
in proportion to the smallest frame each is.
"""

from __future__ import annotations

import sys
import time
from itertools import pairwise

from gageline.detail import Detailed, detail_frame
from gageline.job import FrameEntry, default_practice
from gageline.solid import bodies_of, body_of
from gageline.units import System

SIZES = (60, 120, 250, 500, 1000)
BAYS_ACROSS = 5
INFILL = ("W12X26", "W14X30", "W16X26", "W16X31")
SYSTEM = System.FT_IN


def frame(members: int) -> dict[str, object]:
    """A floor of about so many members: each bay has a column, two girders and three infill beams."""
    rows = max(1, round((members - 11) / 26))  # a row has 6 columns, 5 girders and 15 infill beams
    xs, ys = [f"{n}" for n in range(1, BAYS_ACROSS + 2)], [f"R{n}" for n in range(1, rows + 2)]
    columns = [
        {"name": f"P{x}{y}", "at": f"{x}/{y}", "stock": "W10X49", "base": 0, "top": "Floor"}
        for x in xs
        for y in ys
    ]
    made: list[dict[str, object]] = []
    for row in ys:
        made += [
            {
                "name": f"G{x}{row}",
                "stock": "W21X62",
                "from": f"{x}/{row}",
                "to": f"{after}/{row}",
                "top": "Floor",
            }
            for x, after in pairwise(xs)
        ]
    for number, (low, high) in enumerate(pairwise(ys)):
        for bay, x in enumerate(xs[:-1]):
            for place in (72, 144, 216):
                skew = 24 if (number + bay) % 4 == 0 and place == 216 else 0
                made.append(
                    {
                        "name": f"B{x}{low}-{place}",
                        "stock": INFILL[(number + bay) % 4],
                        "from": {"on": f"G{x}{low}", "at": place},
                        "to": {"on": f"G{x}{high}", "at": place + skew},
                        "top": "Floor",
                        "drop": (number % 3) * 0.5,
                        "ends": {"reaction": 20 + 5 * (bay % 3)},
                    }
                )
    return {
        "grid": {
            "x": {"names": xs, "spacing": ["24'-0"] * BAYS_ACROSS},
            "y": {"names": ys, "spacing": ["18'-0"] * rows},
        },
        "level": [{"name": "Floor", "elevation": 168}],
        "column": columns,
        "member": made,
    }


def tell(done: int, of: int) -> None:
    """Progress on one line of the screen."""
    if sys.stderr.isatty() and (done % 20 == 0 or done == of):
        print(f"\r{done} of {of} beams detailed", end="", file=sys.stderr)


def measure(members: int) -> tuple[Detailed, float, float]:
    """The frame detailed, with the seconds of detailing and those of building the solids."""
    start = time.process_time()
    entry = FrameEntry.model_validate(frame(members), context={"system": SYSTEM})
    result, notes = detail_frame(entry, default_practice(SYSTEM), SYSTEM, progress=tell)
    detailing = time.process_time() - start
    if notes:
        raise SystemExit(f"the generated frame is wrong: {notes[0]}")
    start = time.process_time()
    for placed in result.placed:
        for body in bodies_of(placed.assembly):
            body.placed(placed.placement, body.name)
    return result, detailing, time.process_time() - start


def main() -> None:
    """Print the table."""
    measure(SIZES[0])  # tables of sections are read once
    print(" members  pieces  detailing s  ms each  solids s  ratio  growth")
    first = 0.0
    for size in SIZES:
        body_of.cache_clear()
        result, detailing, solids = measure(size)
        count = len(result.placed)
        each = detailing / count
        first = first or each
        print(
            f"{count:>8} {len(result.assemblies):>7} {detailing:>12.2f} {each * 1000:>8.2f} {solids:>9.2f} "
            f"{detailing / solids:>6.2f} {each / first:>7.2f}"
        )


if __name__ == "__main__":
    main()
