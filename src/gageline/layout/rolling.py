"""Which face is worked on when, so that the piece is rolled as little as possible."""

from __future__ import annotations

from functools import cache
from itertools import pairwise, permutations

from gageline.layout.step import Step
from gageline.part import Face

__all__ = ["face_up", "face_walk", "quarter_turns", "roll_step"]

_AROUND = {
    Face.TOP: 0, Face.NEAR: 1, Face.BOTTOM: 2, Face.FAR: 3, Face.LEG_A: 1, Face.LEG_B: 2, Face.FACE: 1,
}  # fmt: skip
_NAMES = {
    Face.TOP: "top flange", Face.NEAR: "near web", Face.BOTTOM: "bottom flange", Face.FAR: "far web",
    Face.LEG_A: "leg A", Face.LEG_B: "leg B", Face.FACE: "marked face",
}  # fmt: skip
# As seen with the left end at the left hand (design, section 5: y is up, z points at the reader).
_TOWARD_YOU = {
    Face.TOP: "near side", Face.NEAR: "bottom edge", Face.BOTTOM: "far side", Face.FAR: "top edge",
    Face.LEG_A: "heel", Face.LEG_B: "toe", Face.FACE: "bottom edge",
}  # fmt: skip


def face_up(face: Face, *, hollow: bool = False) -> str:
    """What a face is called when it is turned up; the faces of hollow sections are walls."""
    return f"{face} wall" if hollow else _NAMES[face]


def quarter_turns(one: Face, two: Face) -> int:
    """How many quarter turns bring another face up, the shorter way round."""
    apart = abs(_AROUND[one] - _AROUND[two])
    return min(apart, 4 - apart)


@cache
def face_walk(phases: tuple[tuple[Face, ...], ...]) -> tuple[tuple[Face, ...], ...]:
    """The order of faces within each phase of work that takes the fewest quarter turns in all.

    Every order is tried; of equal ones that nearest to the order given is taken.

    Args:
        phases: the faces each phase works on; a phase may be empty.
    """
    best: dict[Face | None, tuple[int, tuple[tuple[Face, ...], ...]]] = {None: (0, ())}
    for phase in phases:
        reached: dict[Face | None, tuple[int, tuple[tuple[Face, ...], ...]]] = {}
        for last, (turns, walk) in best.items():
            for order in permutations(phase):
                steps = ([last] if last else []) + list(order)
                total = turns + sum(quarter_turns(a, b) for a, b in pairwise(steps))
                at = order[-1] if order else last
                if at not in reached or total < reached[at][0]:
                    reached[at] = total, (*walk, order)
        best = reached
    return min(best.values(), key=lambda found: found[0])[1]


def roll_step(before: Face, after: Face, *, hollow: bool = False) -> Step:
    """The step that turns another face up."""
    how = "a quarter turn" if quarter_turns(before, after) == 1 else "half over"
    return Step(
        "Roll",
        after,
        "hook or chain",
        "",
        (),
        f"Roll it {how}: {face_up(after, hollow=hollow)} up.",
        f"Left end still at your left, {_TOWARD_YOU[after]} toward you.",
    )
