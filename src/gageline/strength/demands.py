"""What the end of a piece must carry: given, from its loads, or what the Manual suggests."""

from __future__ import annotations

from typing import NamedTuple

from gageline.errors import ValueProblem
from gageline.job import LoadEntry, PieceLoads
from gageline.part import Assembly, End
from gageline.steel import Section
from gageline.strength.beams import largest_uniform_load
from gageline.strength.check import Method
from gageline.strength.loads import Case, Load, combinations, worst
from gageline.strength.steels import material_of

__all__ = ["SUGGESTED", "Demand", "loads_on", "reaction_at"]

SUGGESTED = "none given: half of the beam's largest uniform load, Manual Table 3-6"


class Demand(NamedTuple):
    """What an end must carry.

    Args:
        V: reaction, kips.
        N: axial force, kips.
        load: where it comes from, in words.
    """

    V: float
    N: float
    load: str


def reaction_at(assembly: Assembly, end: End, given: PieceLoads, method: Method) -> Demand:
    """The reaction of one end of a piece.

    Args:
        assembly: the piece.
        end: which end.
        given: what its document says that it carries.
        method: design method.

    Returns:
        The reaction given; else the worst of the combinations of its loads; else half of the largest uniform
        load of a simple beam of its length.

    Raises:
        ValueProblem: nothing is given for a piece that is no beam, or a load is not on it.

    Source: Manual Part 10 with Table 3-6, for what is suggested.
    """
    entry = given.left if end is End.LEFT else given.right
    N = entry.axial.kips if entry.axial else 0.0
    if entry.reaction:
        return Demand(entry.reaction.kips, N, "given")
    length = assembly.main.length.inches
    if given.loads:
        pair, which = worst(loads_on(given.loads, length), length, method)
        V, index = (pair.left, which.left) if end is End.LEFT else (pair.right, which.right)
        return Demand(V, N, f"from the loads, {combinations(method)[int(index)].name}")
    section = assembly.main.stock
    if not isinstance(section, Section):
        raise ValueProblem("no reaction is given: give it at the end")
    half = largest_uniform_load(section, material_of(assembly.main), length, method) / 2
    return Demand(half, N, SUGGESTED)


def loads_on(entries: tuple[LoadEntry, ...], length: float) -> tuple[Load, ...]:
    """The loads of a document on a beam.

    Args:
        entries: its tables.
        length: of the beam, in.

    Raises:
        ValueProblem: a load that is neither uniform nor point, or a point load without a place.
    """
    return tuple(_load(entry, length) for entry in entries)


def _load(entry: LoadEntry, length: float) -> Load:
    if (entry.uniform is None) == (entry.point is None):
        raise ValueProblem("a load is either uniform or point: give one of them")
    case = Case(entry.case)
    if entry.uniform is not None:
        end = entry.end.inches if entry.end else length
        return Load(case, entry.uniform.kips_per_inch, entry.start.inches, end)
    if entry.point is None or entry.at is None:
        raise ValueProblem("a point load has no place: give at, from the left end")
    return Load(case, entry.point.kips, entry.at.inches)
