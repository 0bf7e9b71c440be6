"""Bolts of the two legs of a connection angle: the wrench between them, and rows that are staggered."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.rows import Ladder
from gageline.detail.shop import Shop
from gageline.detail.wrench import Wrench, bolt_end, wrench_of
from gageline.steel import Bolt
from gageline.units import Length

__all__ = ["Legs", "legs_of", "staggered"]

_CORNERS = 2 / math.sqrt(3)  # across the corners of a hexagon, of its width across the flats
_ROOM = 0.125  # inches between the wrench and a bolt


@dataclass(frozen=True, slots=True)
class Legs:
    """The bolt lines of an angle's two legs.

    Args:
        size: of the bolts in both legs.
        wrench: what they want.
        off: from the line of bolts in the support to the face of the web leg, inches.
    """

    size: Bolt
    wrench: Wrench
    off: float

    @property
    def clear(self) -> float:
        """What is left beside the ends of the bolts in the web leg, inches."""
        return self.off - bolt_end(self.size)

    @property
    def wanted(self) -> float:
        """Half of the wrench's socket, inches.

        Source: AISC Manual, LRFD 2nd ed., Table 8-4 (later Table 7-15).
        """
        return self.wrench.socket.inches / 2

    @property
    def goes(self) -> bool:
        """Whether the wrench passes between the bolts without a stagger."""
        return self.clear >= self.wanted - 1e-6

    @property
    def stagger(self) -> float:
        """The least stagger at which the wrench passes nut and shank of a bolt in the web leg, inches.

        The nut is taken across its corners, the shank with the extension of the table (H2); an eighth of an
        inch is kept clear. Common practice, no source; Table 7-16 prints stagger for some gages.
        """
        nut = self._past(
            self.size.nut_height.inches + self.size.washer.inches, self.size.head_width.inches * _CORNERS
        )
        return max(nut, self._past(self.wrench.stick_out.inches, self.size.diameter.inches))

    def _past(self, high: float, wide: float) -> float:
        """The stagger that clears something so high over the web leg and so wide, inches."""
        beside = max(0.0, self.off - high)
        if beside >= self.wanted:
            return 0.0
        return math.sqrt(self.wanted**2 - beside**2) + wide / 2 + _ROOM


def staggered(ladder: Ladder, legs: Legs, word: str, shop: Shop) -> tuple[Ladder, Reason | None]:
    """The rows of an angle, those in the support half a pitch lower where the wrench wants it and it helps.

    Args:
        ladder: rows at one height in both legs.
        legs: of the angle.
        word: the end as the document calls it.
        shop: the practice.

    Returns:
        The rows as given, or staggered with the reason.
    """
    half = ladder.pitch / 2
    lower = replace(ladder, first=ladder.first - half.inches, stagger=half)
    if legs.goes or legs.stagger > half.inches + 1e-6 or not lower.fits(lower.first):
        return ladder, None
    return lower, Reason(
        f"rows of the outstanding leg {shop.say(half)} lower, material {shop.say(lower.length)} long",
        f"beside the bolts of the web leg {shop.say(legs.clear)} is left and the wrench wants "
        f"{shop.say(legs.wanted)}; a stagger of {shop.say(legs.stagger)} clears it, "
        f"half of the pitch is taken",
        PRACTICE,
        word,
    )


def legs_of(size: Bolt, spread: Length, web: Length, leg: Length) -> Legs | None:
    """The bolt lines of a connection angle; None where no wrench is known for the bolts.

    Args:
        size: of the bolts.
        spread: of the two lines of bolts in the support.
        web: thickness of the beam's web.
        leg: thickness of the angle.
    """
    wrench = wrench_of(size)
    return Legs(size, wrench, (spread - web).inches / 2 - leg.inches) if wrench else None
