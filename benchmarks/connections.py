"""How fast connections are checked: 1,000 with double angles, all limit states.

Run it with `python benchmarks/connections.py`. It builds a job of coped beams from its document, reads 1,000
connections off it, checks each by LRFD, and gives the time of the checks as a ratio to the time of building
the pieces. Each has a reaction of its own, since alike connections of a job are worked out once; equal bolt
patterns and welds are solved once, as in any job.
"""

from __future__ import annotations

import time
from dataclasses import replace

from gageline.job import read_job
from gageline.strength import Method, bolt_steel, check_connection, check_strength, connections_of

_PIECES = 500
_HEAD = '[job]\nname = "benchmark"\n'


def _piece(number: int) -> str:
    depth = ("1 1/2", "1 3/4", "2")[number % 3]
    out = ("bolted", "welded")[number % 2]
    return f"""
[[piece]]
mark = "B{number}"
stock = "{("W16x26", "W16x31", "W18x35", "W18x50", "W21x44")[number % 5]}"
length = "{10 + number % 30}'-{number % 12}"
copes = [{{ end = "both", length = "4", depth = "{depth}" }}]
left = {{ support = "W21x62" }}
[[piece.angles]]
end = "both"
stock = "L4x3-1/2x5/16"
rows = 3
drop = "3 1/2"
out = "{out}"
"""


def main() -> None:
    """Time building and checking, and print the ratio."""
    text = _HEAD + "".join(_piece(number) for number in range(_PIECES))
    start = time.perf_counter()
    job = read_job(text)
    building = time.perf_counter() - start
    steel = bolt_steel(job.practice.bolt_grade)
    start = time.perf_counter()
    drawn = [one for piece in job.assemblies for one in connections_of(piece, steel, job.practice.weld)]
    connections = [one.connection for one in drawn if one.connection is not None]
    reading = time.perf_counter() - start
    connections = [replace(one, V=20 + number / 100) for number, one in enumerate(connections)]
    start = time.perf_counter()
    checks = sum(len(check_connection(one, Method.LRFD).checks) for one in connections)
    checking = time.perf_counter() - start
    start = time.perf_counter()
    whole = check_strength(job)
    together = time.perf_counter() - start
    print(f"{_PIECES} pieces read and built in {building:.2f} s")
    print(f"{len(connections)} connections read off them in {reading:.2f} s")
    print(
        f"{checks} limit states checked in {checking:.2f} s: {checking / building:.2f} of building the pieces"
    )
    print(f"the whole job with its reactions: {len(whole.connections)} connections in {together:.2f} s")


if __name__ == "__main__":
    main()
