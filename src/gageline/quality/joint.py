"""A bolted joint as the odds see it: where its bolts are, what play they have, what goes wrong."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.errors import ValueProblem

__all__ = ["BoltPlace", "Joint", "Lot"]


@dataclass(frozen=True, slots=True)
class BoltPlace:
    """One bolt through two plies.

    Args:
        across: its place in the plane of the joint, in.
        up: likewise, in.
        clear: how far the two holes may be apart for the bolt to enter: the mean of their diameters
            less the bolt's, in.
        slot: how much further they may be apart along `across` where a hole is slotted, each way, in.
        lot: the number of the lot it belongs to.
    """

    across: float
    up: float
    clear: float
    slot: float = 0.0
    lot: int = 0


@dataclass(frozen=True, slots=True)
class Lot:
    """Holes that are wrong together, such as those of one fitting.

    Args:
        across: standard deviation of their common place, in.
        up: likewise, in.
        turn: standard deviation of their common turn, radians.
        off_across: what they are known to be off, in.
        off_up: likewise, in.
    """

    across: float = 0.0
    up: float = 0.0
    turn: float = 0.0
    off_across: float = 0.0
    off_up: float = 0.0


@dataclass(frozen=True, slots=True)
class Joint:
    """A bolted joint of two plies.

    Args:
        name: what it joins.
        bolts: at least one.
        lots: at least one.
        hole: standard deviation of one pair of holes about its place, each way, in.
        turn: standard deviation of a turn of the whole pattern, radians.
        mill: half the width of a uniform error that all bolts share across, in.
        free: the two plies can be shifted by hand until the bolts enter.
        field: bolted at the site.
    """

    name: str
    bolts: tuple[BoltPlace, ...]
    lots: tuple[Lot, ...] = (Lot(),)
    hole: float = 0.0
    turn: float = 0.0
    mill: float = 0.0
    free: bool = True
    field: bool = False

    def __post_init__(self) -> None:
        if not self.bolts:
            raise ValueProblem(f"joint {self.name} has no bolts: give at least one")
        for bolt in self.bolts:
            if not 0 <= bolt.lot < len(self.lots):
                raise ValueProblem(
                    f"joint {self.name} has a bolt of lot {bolt.lot} and {len(self.lots)} lots: number from 0"
                )
            if bolt.clear < 0:
                raise ValueProblem(
                    f"joint {self.name} has a hole {-bolt.clear:.3g} in smaller than its bolt: enlarge it"
                )
