"""A main part with the fittings that are bolted or welded to it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from gageline.part.faces import End, Face
from gageline.part.part import Part
from gageline.part.placing import Placement
from gageline.units import Length

__all__ = ["Assembly", "BoltSet", "Fitting", "FittingKind", "Join", "Weld"]


class FittingKind(StrEnum):
    """What a fitting is for."""

    ANGLE = "connection angle"
    PLATE = "single plate"
    END_PLATE = "end plate"
    STIFFENER = "stiffener"
    BASE_PLATE = "base plate"
    CAP_PLATE = "cap plate"
    END_CAP = "end cap"
    TONGUE = "tongue"


class Join(StrEnum):
    """How a fitting is joined to the main part in the shop."""

    BOLTED = "bolted"
    WELDED = "welded"


@dataclass(frozen=True, slots=True)
class Fitting:
    """A part that is joined to the main part in the shop.

    Args:
        name: unique in its assembly ("left near angle").
        kind: what it is for.
        part: its own geometry of record; equal fittings share one mark.
        placement: where it stands in the main part's space.
        on: the face of the main part that it lies against, or stands on; None at an end.
        end: the end it belongs to, None in between.
        join: bolted or welded to the main part.
    """

    name: str
    kind: FittingKind
    part: Part
    placement: Placement
    on: Face | None
    end: End | None
    join: Join


@dataclass(frozen=True, slots=True)
class Weld:
    """A weld that joins a fitting to the main part.

    Args:
        fitting: the fitting's name.
        size: leg of the fillet.
        length: of one run.
        runs: how many runs of that length.
        where: along which edges, in the trade's words.
        both_sides: on both sides of the joint.
        all_around: around the whole of the joint.
    """

    fitting: str
    size: Length
    length: Length
    runs: int
    where: str
    both_sides: bool = False
    all_around: bool = False


@dataclass(frozen=True, slots=True)
class BoltSet:
    """Bolts of one size and grip.

    Args:
        fittings: names of the fittings they pass through.
        bolt: size as text ("3/4", "M20").
        count: how many.
        grip: total thickness of the plies; None where the other ply is not in this job.
        field: put in at the site, not in the shop.
    """

    fittings: tuple[str, ...]
    bolt: str
    count: int
    grip: Length | None
    field: bool


@dataclass(frozen=True, slots=True)
class Assembly:
    """A piece as it leaves the shop: a main part and what is joined to it.

    Args:
        main: the main part; its mark is the piece mark.
        quantity: how many are wanted.
        fittings: joined in the shop.
        welds: shop welds.
        bolts: shop bolts, and field bolts as far as known.
        finish: paint, galvanizing or none, as text.
        hand_of: the mark it is the opposite hand of, None for a piece of its own.
    """

    main: Part
    quantity: int
    fittings: tuple[Fitting, ...] = ()
    welds: tuple[Weld, ...] = ()
    bolts: tuple[BoltSet, ...] = ()
    finish: str = ""
    hand_of: str | None = None

    @property
    def mark(self) -> str:
        """The piece mark."""
        return self.main.mark
