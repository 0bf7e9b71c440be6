"""Time of a job from file to marks, for 10, 100 and 1,000 pieces, with the share of each room.

    python benchmarks/growth.py

The job is the demo's pieces over and over under new marks. Printed: the seconds of reading and
validating, of the rules, of laying out; how much slower than in proportion each tenfold job is; and
the whole as a ratio to only reading and validating the same file, all in the same run.
"""

from __future__ import annotations

import re
import time
from importlib.resources import files

from gageline.job import check_job, read_document, read_job
from gageline.layout import lay_out

SIZES = (10, 100, 1000)


def job_text(count: int) -> str:
    """The demo's pieces repeated until there are `count`, each under a mark of its own."""
    demo = (files("gageline") / "demo" / "mezzanine.toml").read_text("utf8")
    head, *pieces = re.split(r"^(?=\[\[piece\]\])", demo, flags=re.MULTILINE)
    texts = [head]
    for number in range(count):
        again, which = divmod(number, len(pieces))
        texts.append(
            re.sub(r'^((?:mark|as_hand_of) = ")(\w+)"', rf'\1\2-{again}"', pieces[which], flags=re.MULTILINE)
        )
    return "".join(texts)


def measure(count: int) -> dict[str, float]:
    """Seconds of each room for a job of `count` pieces."""
    text = job_text(count)
    times = {}
    start = time.perf_counter()
    read_document(text)
    times["reading and validating"] = time.perf_counter() - start
    start = time.perf_counter()
    job = read_job(text)
    times["job (reading, validating, building)"] = time.perf_counter() - start
    start = time.perf_counter()
    check_job(job)
    times["part (rules)"] = time.perf_counter() - start
    start = time.perf_counter()
    for assembly in job.assemblies:
        lay_out(assembly, job.practice, job.system)
    times["layout (marks, steps, set-ups)"] = time.perf_counter() - start
    return times


def main() -> None:
    """Print the table."""
    measure(SIZES[0])  # tables of sections are read once
    before: dict[str, float] = {}
    for count in SIZES:
        times = measure(count)
        whole = sum(seconds for name, seconds in times.items() if not name.startswith("reading"))
        print(f"\n{count} pieces: {whole:.2f} s from file to marks")
        for name, seconds in times.items():
            growth = f", {seconds / before[name] / 10:.2f} times in proportion" if before else ""
            share = "" if name.startswith("reading") else f" ({seconds / whole:.0%})"
            print(f"  {name}: {seconds:.3f} s{share}{growth}")
        print(f"  whole / only reading and validating: {whole / times['reading and validating']:.1f}")
        before = times


if __name__ == "__main__":
    main()
