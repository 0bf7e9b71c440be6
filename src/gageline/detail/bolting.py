"""Bolts that are put in at the site: how long they must be."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.detail.reason import Reason
from gageline.detail.shop import Shop
from gageline.steel import Bolt, Measure
from gageline.units import Length, round_up

__all__ = ["FieldBolts", "bolt_length", "field_bolts_of", "length_reason", "size_named"]

_STEP = {Measure.US: Length.from_inches(1) / 4, Measure.EU: Length.from_mm(5)}
_LENGTHS = (
    "RCSC Specification, commentary to 2.3 and Table C-2.2: grip, washers and allowance, next 1/4 in or 5 mm"
)


@dataclass(frozen=True, slots=True)
class FieldBolts:
    """Bolts that are put in at the site, of one connection and one grip.

    Args:
        connection: the end they belong to, or what is joined.
        piece: own name of the piece that is put in, its assembly's mark where it is placed.
        support: own name of the piece that carries it.
        bolt: size.
        count: how many.
        grip: through which thickness of steel.
        length: to order.
        washers: flat washers to each bolt.
    """

    connection: str
    piece: str
    support: str
    bolt: str
    count: int
    grip: Length
    length: Length
    washers: int = 1


def bolt_length(size: Bolt, grip: Length, washers: int = 1) -> Length:
    """The length of a bolt to order.

    Args:
        size: the bolt.
        grip: thickness of all plies.
        washers: flat washers under head and nut.

    Source: RCSC Specification, Table C-2.2; for metric bolts nut, washers and two threads, next 5 mm.
    """
    add = size.grip_add
    if add is None:
        add = size.nut_height + (size.pitch or size.diameter / 8) * 2
    return round_up(grip + size.washer * washers + add, _STEP[size.system])


def length_reason(size: Bolt, grip: Length, word: str, shop: Shop) -> Reason:
    """Why a bolt is as long as it is."""
    add = size.grip_add or size.nut_height + (size.pitch or size.diameter / 8) * 2
    return Reason(
        f"field bolts {size.size} x {shop.say(bolt_length(size, grip))}",
        f"grip {shop.exact(grip)}, one washer {shop.exact(size.washer)} and {shop.exact(add)} for the nut "
        f"make {shop.exact(grip + size.washer + add)}, rounded up",
        _LENGTHS,
        word,
    )


def field_bolts_of(
    connection: str, pieces: tuple[str, str], size: Bolt, count: int, grip: Length
) -> FieldBolts:
    """Bolts of a connection with their length.

    Args:
        connection: the end they belong to, or what is joined.
        pieces: own names of the piece that is put in and of the one that carries it.
        size: the bolt.
        count: how many.
        grip: through which thickness of steel.
    """
    return FieldBolts(connection, *pieces, size.size, count, grip, bolt_length(size, grip))


def size_named(size: Bolt) -> str:
    """A size in words: `3/4`, `1 in`, `M20`."""
    return f"{size.size} in" if size.size.isdigit() else size.size
