"""How the stick is laid down: natural camber up, where no hand and no hole forbids it."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.job import Stick
from gageline.steel import Profile, Stock
from gageline.units import ZERO, Length

__all__ = ["Laid", "camber_lean", "lay_down"]

_NOW = "Ends and sides are named as it lies then."
_ROLLS = frozenset({Profile.I_SHAPE, Profile.BOX, Profile.TUBE, Profile.PLATE})


@dataclass(frozen=True, slots=True)
class Laid:
    """A stick as it is laid on the benches.

    Args:
        stick: its readings as it lies now.
        turned: whether it was turned over.
        note: what was done and why, one sentence; empty where it has no camber.
    """

    stick: Stick
    turned: bool
    note: str


def lay_down(stick: Stick, stock: Stock) -> Laid:
    """Lay a stick with its natural camber up.

    A shape that is alike top and bottom is rolled half over; a channel, whose toes must stay on their
    side, is turned end for end and upside down. A tee or an angle cannot be turned over at all, and
    neither can a stick that has holes or cuts in it.

    Source: common practice; AISC 303, 6.4.3 (from memory: camber of a beam detailed without goes up).
    """
    camber = stick.camber
    if camber is None or not camber:
        return Laid(stick, turned=False, note="")
    if camber > ZERO:
        return Laid(stick, turned=False, note="Its natural camber is up as it lies: leave it so.")
    if stick.worked:
        note = "Its camber is down and it has holes or cuts in it: it cannot be turned over."
        return Laid(stick, turned=False, note=note)
    if stock.profile in _ROLLS:
        note = f"Rolled half over so that its natural camber is up. {_NOW}"
        return Laid(stick.turned(upside_down=True), turned=True, note=note)
    if stock.profile is Profile.CHANNEL:
        note = f"Turned end for end and upside down: camber up, toes still on their side. {_NOW}"
        return Laid(stick.turned(upside_down=True, end_for_end=True), turned=True, note=note)
    note = f"Its camber is down and {stock.designation} is not alike top and bottom: it stays as it is."
    return Laid(stick, turned=False, note=note)


def camber_lean(camber: Length, length: Length, depth: Length) -> Length:
    """How far camber leans an end that is square to the steel, from top to bottom.

    A flat arc of mid-ordinate m over L has the slope 4 m / L at its ends, so that over the depth d the
    convex edge runs out further by 4 m d / L.

    Source: geometry of a flat circular arc.
    """
    return camber * 4 * depth.ratio(length)
