"""Whether every beam stands on something: no ring of members that only carry one another."""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Iterator

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from gageline.detail.line import Frame, Line
from gageline.detail.site import Site
from gageline.detail.space import Vec
from gageline.detail.supports import Supports, work_point
from gageline.job import Note, say
from gageline.part import Finding, Severity
from gageline.units import Length, System

__all__ = ["hung", "rings"]

_SAME_PLACE = 24.0  # inches: ends this near each other are at one place


def rings(frame: Frame, supports: Supports, system: System) -> Iterator[Note]:
    """Members that carry one another in a ring, so that no load of theirs comes down to a column.

    Args:
        frame: every member where it stands.
        supports: what carries what.
        system: the units that messages are written in.
    """
    names = list(frame.lines)
    number = {name: n for n, name in enumerate(names)}
    pairs = np.array(
        [(number[site.member.name], number[site.support.name]) for site in supports.sites], dtype=int
    ).reshape(-1, 2)
    size = len(names)
    graph = coo_array((np.ones(len(pairs)), (pairs[:, 0], pairs[:, 1])), shape=(size, size))
    _, groups = connected_components(graph, directed=True, connection="strong")
    inside: dict[int, list[Site]] = defaultdict(list)
    for site, (one, two) in zip(supports.sites, pairs, strict=True):
        if groups[one] == groups[two]:
            inside[int(groups[one])].append(site)
    for sites in inside.values():
        yield _ring(sites, frame, system)


def _ring(sites: list[Site], frame: Frame, system: System) -> Note:
    hangs = " and ".join(
        f'the {site.word} of "{site.member.name}" on "{site.support.name}"' for site in sites
    )
    place = _end(sites[0])
    near = sorted((math.dist(place[:2], one.start[:2]), one.name) for one in frame.columns)[:3]
    columns = ", ".join(f'"{name}" {say(Length.from_inches(away), system)} away' for away, name in near)
    nearest = f"the nearest columns are {columns}" if near else "the frame has no columns"
    places = " and ".join(_places([_end(site) for site in sites], frame, system))
    line = sites[0].member
    message = (
        f"they only carry one another: {hangs}, and nothing stands under them at {places}; {nearest}: "
        "put a column there, or let one of them run on to something that stands"
    )
    return (*line.path, sites[0].word), message


def _end(site: Site) -> Vec:
    return work_point(site.member, site.end)


def _places(points: list[Vec], frame: Frame, system: System) -> Iterator[str]:
    """Each place once: by the crossing that is there, else by its distances in the plan."""
    told: list[Vec] = []
    for point in points:
        if all(math.dist(point[:2], other[:2]) > _SAME_PLACE for other in told):
            told.append(point)
            yield _place(point, frame, system)


def _place(point: Vec, frame: Frame, system: System) -> str:
    lines = (frame.grid_x, frame.grid_y)
    names = [
        min(((abs(at - value), name) for name, at in grid.items()), default=(math.inf, ""))
        for grid, value in zip(lines, point, strict=False)
    ]
    if all(off <= _SAME_PLACE for off, _ in names):
        return f'"{names[0][1]}/{names[1][1]}"'
    x, y = (say(Length.from_inches(value), system) for value in point[:2])
    return f"x {x}, y {y}"


def hung(frame: Frame, supports: Supports) -> Iterator[Finding]:
    """Beams that one support carries or none: a shear connection holds no cantilever.

    Args:
        frame: every member where it stands.
        supports: what carries what.
    """
    if not frame.lines:
        yield Finding(
            "nothing-framed",
            Severity.WARNING,
            "frame",
            "it has no columns and no members: there is nothing to detail",
            "give [[frame.column]] and [[frame.member]] tables, or leave the frame out",
        )
    rests = Counter(site.member.name for site in supports.sites)
    rests.update(Counter(site.member.name for site in supports.through))  # an error that is said already
    rests.update(Counter(bearing.member.name for bearing in supports.bearings))
    free = Counter(line.name for line, _ in supports.free)
    for line in frame.beams:
        count = rests[line.name]
        if count + free[line.name] >= 2 > count:
            yield _hung(line, count)


def _hung(line: Line, count: int) -> Finding:
    what = (
        "nothing of the frame carries it: both of its ends are free"
        if count == 0
        else "it rests on one support only, and no connection that is detailed here holds a cantilever"
    )
    return Finding(
        "hung-free",
        Severity.WARNING,
        line.name,
        what,
        "end it on a second member or column, or have what holds it designed and enter it as drawn",
        "common practice, no source",
    )
