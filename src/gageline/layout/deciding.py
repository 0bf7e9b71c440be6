"""Which way a piece is laid on the stick that came, and why."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from gageline.job import Stick, say, say_finely
from gageline.layout.turning import lay_down
from gageline.layout.ways import SAW_TRIM, UNDERRUN, Choice, Placed, Way, place
from gageline.part import Assembly, End
from gageline.units import ZERO, Length, System, round_to

__all__ = ["Decision", "decide"]


@dataclass(frozen=True, slots=True)
class Decision:
    """The ways a piece can be laid on a stick, and the one to take.

    Args:
        options: trim, as it is, hold the right end, split; each worked out.
        chosen: the one to take; the least bad one where none can be done.
        because: why, in one or two sentences.
        ask: whether the engineer must be asked first.
        tape: the smallest division of the tape, which lengths in words are rounded to.
    """

    options: tuple[Placed, ...]
    chosen: Placed
    because: str
    ask: bool
    tape: Length

    @property
    def can_be_made(self) -> bool:
        """Whether the piece can be made of this stick at all."""
        return self.chosen.possible


def decide(
    assembly: Assembly, stick: Stick, tape: Length, system: System, saw_trim: Length = SAW_TRIM
) -> Decision:
    """Choose how a piece is laid on a stick: trimmed where there is steel for it, else where it loses least.

    Args:
        assembly: the piece as drawn.
        stick: as measured; it is laid with its camber up first.
        tape: the smallest division of the tape.
        system: the units of the reason.
        saw_trim: the least that the saw takes off cleanly.

    Source: the allowance of 1/4 in from AISC Design Examples v16; the order of preference is common
    practice, no source.
    """
    lies = lay_down(stick, assembly.main.stock).stick
    ways = (
        Way(Choice.TRIM, saw_trim=saw_trim),
        Way(Choice.AS_IS, saw_trim=saw_trim),
        Way(Choice.HOLD, End.RIGHT, saw_trim),
        Way(Choice.SPLIT, saw_trim=saw_trim),
    )
    options = tuple(place(assembly, lies, way, tape) for way in ways)
    trim, *as_found = options

    exact = partial(say, system=system)

    def told(length: Length) -> str:
        return exact(round_to(length, tape))

    if _fits(as_found[0], tape):
        return Decision(options, as_found[0], _fitting(as_found[0], lies), ask=False, tape=tape)

    def past(length: Length, limit: Length) -> str:
        """What is more than a limit, in decimals where the tape's divisions do not show it."""
        if round_to(length, tape) > limit or length <= limit:
            return told(length)
        return say_finely(length, system)

    if trim.possible:
        spare = f"{told(trim.length - assembly.main.length)} longer than the piece"
        return Decision(
            options,
            trim,
            f"The stick is {spare}: enough to cut it to length, both ends square.",
            ask=False,
            tape=tape,
        )
    short = f"Trimmed square it would be {told(-trim.spare)} too short. "
    for option in as_found:
        if option.within_design:
            lost = f"no connection loses more than {told(max(option.worst, ZERO))} of its end distance"
            limit = f"the design allows {exact(UNDERRUN)}"
            return Decision(
                options, option, f"{short}{_named(option)}, {lost}; {limit}.", ask=False, tape=tape
            )
    possible = [option for option in as_found if option.possible]
    best = min(
        possible or as_found, key=lambda option: max(option.worst, option.free_short, option.free_long)
    )
    if possible and best.off_length:
        because = _off(best, past(best.off_length, best.allowance), exact(best.allowance))
    else:
        because = (_asking if possible else _refusing)(best, past(best.worst, UNDERRUN), exact(UNDERRUN))
    return Decision(options, best, short + because, ask=True, tape=tape)


def _fits(as_is: Placed, tape: Length) -> bool:
    """Whether a stick can be used as it came: square ends, and as long as fabrication may make it."""
    square = all(fit.as_came and fit.plane.out_of_square <= tape for fit in (as_is.left, as_is.right))
    return square and abs(as_is.right.start) <= as_is.allowance and as_is.within_design


def _fitting(as_is: Placed, stick: Stick) -> str:
    """That there is nothing to cut, with what was taken for granted."""
    if stick.length is None:
        return "Its length was not read and is taken as drawn: there is nothing to cut."
    if as_is.left.plane.assumed or as_is.right.plane.assumed:
        return "It is of its length, and what was not read of its ends is taken as square: nothing to cut."
    return "It is square and of its length: there is nothing to cut."


def _named(option: Placed) -> str:
    words = {
        Choice.AS_IS: "With the datum at the furthest corner of the left end",
        Choice.HOLD: f"Held at the {option.way.held} end",
        Choice.SPLIT: "With the difference split",
    }
    return words.get(option.way.choice, str(option.way.choice))


def _asking(option: Placed, lost: str, limit: str) -> str:
    return (
        f"{_named(option)} the worst connection loses {lost} of its end distance, the least of all "
        f"ways; that is more than the {limit} of connection design: ask the engineer before it is drilled."
    )


def _off(option: Placed, off: str, limit: str) -> str:
    way = "short" if option.free_short >= option.free_long else "long"
    return (
        f"{_named(option)} it is {off} {way} at an end where no connection makes up for it; AISC 303 allows "
        f"{limit}: ask the engineer before it is drilled."
    )


def _refusing(option: Placed, lost: str, _: str) -> str:
    if option.too_long:
        return f"{_named(option)} the steel runs past its place: cut it as near to its line as the saw can."
    if option.left.touches or option.right.touches:
        return f"{_named(option)} the steel meets the support: cut it back, or take another stick."
    return (
        f"{_named(option)} the worst hole loses {lost} of its distance to the end and comes too near it: "
        "take another stick, or ask the engineer for a weld-on or another connection."
    )
