"""How fast eccentric bolt groups are solved, against one root search of SciPy for each group.

    python benchmarks/groups.py

Both solve the same equations of the instantaneous-centre method. `scipy.optimize.root` (hybr) is given each
group alone, with its instantaneous centre as the two unknowns, from the elastic centre as a start: its
residuals are the force across the load and the moment about the centre, vectorised over the bolts. It is
timed on a sample, which is scaled up, because 10,000 searches would only take longer. Either time is the
least of five runs. The share of the sample on which both agree is printed beside the ratio.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import TypeVar

import numpy as np
from scipy.optimize import root

from gageline.strength import eccentric_bolts, elastic_bolts, wrench

GROUPS, SAMPLE, ROWS, COLUMNS = 10_000, 300, 6, 2
RUNS = 5
AGREE = 1e-9
Result = TypeVar("Result")


def cases() -> tuple[np.ndarray, np.ndarray]:
    """Two columns of six bolts with random pitch, gage, eccentricity and angle of load."""
    chance = np.random.default_rng(4)
    pitch, gage = chance.uniform(2.5, 4.0, GROUPS), chance.uniform(3.0, 6.0, GROUPS)
    grid = np.array(
        [(c - (COLUMNS - 1) / 2, r - (ROWS - 1) / 2) for c in range(COLUMNS) for r in range(ROWS)]
    )
    points = grid[None] * np.stack([gage, pitch], axis=1)[:, None]
    return points, wrench(chance.uniform(0, 75, GROUPS), chance.uniform(2, 30, GROUPS))


def pull(centre: np.ndarray, points: np.ndarray) -> tuple[np.ndarray, float]:
    """Force and moment about the instantaneous centre, turning counter-clockwise."""
    arm = points - centre
    radius = np.hypot(arm[:, 0], arm[:, 1])
    share = (1 - np.exp(-3.4 * radius / radius.max())) ** 0.55
    along = share / radius
    return np.array([-(along * arm[:, 1]).sum(), (along * arm[:, 0]).sum()]), (share * radius).sum()


def alone(points: np.ndarray, load: np.ndarray, start: np.ndarray) -> float:
    """Coefficient of one group by a root search for its centre."""
    direction, moment = load[:2], load[2]
    sense = np.sign(moment)

    def residual(centre: np.ndarray) -> tuple[float, float]:
        force, turn = pull(centre, points)
        lever = moment - (centre[0] * direction[1] - centre[1] * direction[0])
        size = sense * (force @ direction)
        return force[0] * direction[1] - force[1] * direction[0], sense * turn - size * lever

    found = root(residual, start, tol=1e-12)
    force, _ = pull(found.x, points)
    return float(sense * (force @ direction))


def least_time(work: Callable[[], Result]) -> tuple[float, Result]:
    """The least time of a few runs, and what the last one gave."""
    times = []
    for _ in range(RUNS):
        begin = time.perf_counter()
        result = work()
        times.append(time.perf_counter() - begin)
    return min(times), result


def main() -> None:
    points, loads = cases()
    starts = elastic_bolts(points[:SAMPLE], loads[:SAMPLE]).centre
    ours, together = least_time(lambda: eccentric_bolts(points, loads))
    sample, single = least_time(
        lambda: np.array([alone(points[i], loads[i], starts[i]) for i in range(SAMPLE)])
    )
    theirs = sample * GROUPS / SAMPLE
    apart = np.abs(single / together.coefficient[:SAMPLE] - 1)
    forces = together.forces.sum(axis=1) - together.coefficient[:, None] * loads[:, :2]
    print(f"{GROUPS} groups of {ROWS * COLUMNS} bolts in one call: {ours:.3f} s")
    print(f"one root search a group, {SAMPLE} timed and scaled to {GROUPS}: {theirs:.2f} s")
    print(f"ratio: {theirs / ours:.0f} times faster")
    print(f"coefficients agree within {AGREE:g} in {np.mean(apart < AGREE):.1%} of the sample")
    print(f"largest imbalance of forces of all groups: {np.abs(forces).max():.1e} bolt strengths")


if __name__ == "__main__":
    main()
