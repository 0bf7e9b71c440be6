"""Steel that would stand in the same place twice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from gageline.part import Assembly, Finding, Severity
from gageline.solid.bodies import Body, Box, bodies_of
from gageline.units import Length, System, write_length

__all__ = ["TOLERANCE", "clashes"]

TOLERANCE = 0.01
"""Overlap that is let go, in3: what the chords of a tube stand out past its circle at a long joint."""


def clashes(
    assembly: Assembly, system: System = System.FT_IN, tolerance: float = TOLERANCE
) -> tuple[Finding, ...]:
    """Where two bodies of a piece overlap; faces that touch do not.

    Args:
        assembly: the piece.
        system: the units that messages are written in.
        tolerance: overlap that is let go, in3.

    Returns:
        One error for each two bodies that clash.

    Raises:
        ValueProblem: when a part has no body, see `body_of`.
    """
    return tuple(_clashes(assembly.mark, bodies_of(assembly), system, tolerance))


def _clashes(mark: str, bodies: Sequence[Body], system: System, tolerance: float) -> Iterator[Finding]:
    boxed = [(body, body.box) for body in bodies]
    for (one, one_box), (two, two_box) in combinations(boxed, 2):
        if not _boxes_overlap(one_box, two_box):
            continue
        overlap = one.solid ^ two.solid
        if overlap.volume() > tolerance:
            yield _finding(mark, one, two, Body("overlap", overlap).box, system)


def _boxes_overlap(one: Box, two: Box) -> bool:
    return all(
        low < other_high and other_low < high for (low, high), (other_low, other_high) in zip(one, two)
    )


def _finding(mark: str, one: Body, two: Body, box: Box, system: System) -> Finding:
    def say(length: Length) -> str:
        return write_length(length, system, 64)

    along, up, across = (say(high - low) for low, high in box)
    name = "the main part" if one.name == mark else one.name
    return Finding(
        "clash",
        Severity.ERROR,
        f"{mark} {two.name}",
        f"runs into {name} from {say(box[0][0])} to {say(box[0][1])} along the piece: "
        f"the overlap is {along} long, {up} high and {across} across",
        "move it, shorten it, or cut it to clear",
    )
