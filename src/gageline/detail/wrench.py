"""Room that a bolt and its wrench want, of sizes that the table has and of those that it has not."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from gageline.steel import Bolt, Measure, all_bolts
from gageline.units import Length

__all__ = ["ROOM", "Wrench", "bolt_end", "wrench_of"]

ROOM = "AISC Manual, LRFD 2nd ed., Table 8-4 (later Tables 7-15 and 7-16)"
_THREADS = 0.25  # inches that a bolt stands out of its nut


@dataclass(frozen=True, slots=True)
class Wrench:
    """What a bolt wants to be put in and tightened.

    Args:
        size: the bolt whose line of the table it is.
        enter: bolt centre to the nearest obstruction, to put the bolt in (C2).
        tighten: the same, to tighten it (C1).
        fillet: bolt centre to the start of a fillet, round washer (C3).
        socket: diameter of the wrench's socket.
        stick_out: room for the shank beyond the nut while tightening (H2).

    Source: AISC Manual, LRFD 2nd ed., Table 8-4 (later Tables 7-15 and 7-16).
    """

    size: Bolt
    enter: Length
    tighten: Length
    fillet: Length
    socket: Length
    stick_out: Length


@cache
def wrench_of(size: Bolt) -> Wrench | None:
    """The room that a size of bolt wants; None where no line of the table holds for it.

    The table gives inch bolts only. For another bolt the least inch bolt is taken that is larger in
    diameter, across the flats, in nut and in washer, so that the room is never too small for it: common
    practice, no source.
    """
    lines = (one for one in map(_line, all_bolts().values()) if one is not None)
    return next((one for one in lines if one.size == size or _covers(one.size, size)), None)


def bolt_end(size: Bolt) -> float:
    """How far the end of a bolt stands out past the steel under its nut, inches.

    Source: common practice, no source, for the threads past the nut.
    """
    return size.nut_height.inches + _THREADS


def _line(size: Bolt) -> Wrench | None:
    room = (size.clear_enter, size.clear_tighten, size.clear_fillet, size.socket, size.stick_out)
    enter, tighten, fillet, socket, out = room
    if enter is None or tighten is None or fillet is None or socket is None or out is None:
        return None
    return Wrench(size, enter, tighten, fillet, socket, out)


def _covers(large: Bolt, small: Bolt) -> bool:
    """Whether a bolt is at least as large as another one in all that a wrench has to go around."""
    ones = zip(_sizes(large), _sizes(small), strict=True)
    return large.system is Measure.US and all(one >= two for one, two in ones)


def _sizes(size: Bolt) -> tuple[Length, ...]:
    return size.diameter, size.head_width, size.nut_height, size.washer_diameter
