"""A bolted joint as drawn, and the same as a shop makes it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum
from math import hypot, sqrt

from gageline.quality.joint import BoltPlace, Joint, Lot
from gageline.quality.spread import Spread

__all__ = ["Bolted", "Hold", "Joining"]

_TWO = sqrt(2)


class Joining(Enum):
    """How two plies come together."""

    SHOP = "a fitting on the part it is bolted to"
    SUPPORT = "the fittings of an end on their support"
    PART = "the part on what is bolted to it at the site"
    FITTING = "a fitting on what is bolted to it at the site"


@dataclass(frozen=True, slots=True)
class Hold:
    """Whether the piece can be shifted on its supports, and how far its web may be off.

    Args:
        free: it can be shifted; where something else holds it, the web off the middle is felt.
        web_off: what was read of that, in; None to take it as anything that the mill is permitted.
        permitted: what the mill is permitted, in.
    """

    free: bool
    web_off: float | None
    permitted: float


@dataclass(frozen=True, slots=True)
class Bolted:
    """What the drawing says of a joint, without what goes wrong.

    Args:
        name: what it joins.
        way: how its plies come together.
        bolts: with the supports' holes round.
        slotted: the same with horizontal short slots in the supports.
        set_across: of each lot, whether it is set across by hand too.
    """

    name: str
    way: Joining
    bolts: tuple[BoltPlace, ...]
    slotted: tuple[BoltPlace, ...]
    set_across: tuple[bool, ...] = (True,)

    def joint(self, spread: Spread, hold: Hold, *, slotted: bool = False) -> Joint:
        """The joint as a shop makes it.

        Args:
            spread: of the shop.
            hold: of the piece at its supports.
            slotted: the supports have horizontal short slots.
        """
        bolts, hole = self.slotted if slotted else self.bolts, _TWO * spread.hole
        match self.way:
            case Joining.SUPPORT:
                off = hold.web_off or 0.0
                lots = tuple(
                    Lot(spread.setting if across else 0.0, spread.setting, spread.square, off)
                    for across in self.set_across
                )
                mill = hold.permitted if hold.web_off is None else 0.0
                return Joint(self.name, bolts, lots, hole, spread.square, mill, hold.free, field=True)
            case Joining.FITTING:
                lot = Lot(hypot(spread.tape, spread.setting), hypot(spread.gage, spread.setting))
            case _:
                lot = Lot(_TWO * spread.tape, _TWO * spread.gage)
        field, turn = self.way is not Joining.SHOP, _TWO * spread.square
        count = 1 + max(bolt.lot for bolt in bolts)
        if count > 1:  # lines far apart are squared each by itself
            return Joint(self.name, bolts, (replace(lot, turn=turn),) * count, hole, field=field)
        return Joint(self.name, bolts, (lot,), hole, turn, field=field)
